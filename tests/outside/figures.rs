//! Figures of the core as JSON, for libraries that are not ours to compare.

use std::io::Write;

use serde_json::{Value, json};
use slotwright_core::case::Case;
use slotwright_core::derive::derive;
use slotwright_core::fit::Clearance;
use slotwright_core::panel::{Feature, PanelId};
use slotwright_core::promise::Backlog;
use slotwright_core::quantity::{AreaMass, Force, Length, Stiffness};
use slotwright_core::range::Range;
use slotwright_core::rules::sag::{sag, sag_of_point, widest_span};
use slotwright_core::rules::{frame, judge};
use slotwright_core::sample::{Wanted, choices};
use slotwright_core::stability::{Leaves, Moments, burdens, steepest};
use slotwright_tests::demo;

mod business;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let range = demo()?;
    let figures = json!({
        "shelves": shelves(), "points": points(), "buckling": buckling(), "fits": fits(), "cabinets": cabinets(&range)?,
        "business": business::all(&range)?,
    });
    writeln!(std::io::stdout(), "{figures}")?;
    Ok(())
}

const BOARDS: [(f64, f64); 3] = [(17.6, 10048.0), (17.6, 7452.0), (12.0, 10719.0)];

/// Shelves under a load spread over them, and the widest span for L/200.
fn shelves() -> Vec<Value> {
    let each = |span: f64, (thickness, stiffness): (f64, f64), load: f64| {
        let (thick, stiff, spread) =
            (Length::mm(thickness), Stiffness::n_per_mm2(stiffness), AreaMass::kg_per_m2(load));
        json!({
            "span": span, "thickness": thickness, "stiffness": stiffness, "load": load,
            "sag": sag(Length::mm(span), spread, thick, stiff).in_mm(),
            "widest": widest_span(spread, thick, stiff, 200.0).in_mm(),
        })
    };
    let spans = [400.0, 800.0, 1100.0];
    spans
        .iter()
        .flat_map(|span| BOARDS.map(|board| [195.0, 244.0].map(|load| each(*span, board, load))))
        .flatten()
        .collect()
}

/// A strip with a force somewhere on it.
fn points() -> Vec<Value> {
    let each = |span: f64, from: f64| {
        let strip = (Length::mm(250.0), Length::mm(17.7));
        let found = sag_of_point(
            Length::mm(span),
            Length::mm(from),
            Force::newton(150.0),
            strip,
            Stiffness::n_per_mm2(10048.0),
        );
        json!({
            "span": span, "from": from, "force": 150.0, "strip": 250.0, "thickness": 17.7, "stiffness": 10048.0,
            "sag": found.in_mm(),
        })
    };
    [(800.0, 400.0), (800.0, 200.0), (1000.0, 90.0)].map(|(span, from)| each(span, from)).to_vec()
}

/// The force under which an upright's free edge buckles.
fn buckling() -> Vec<Value> {
    let each = |depth: f64, height: f64| {
        let (thickness, stiffness) = (17.7, 7452.0);
        let found = frame::critical(
            Length::mm(depth),
            Length::mm(height),
            Length::mm(thickness),
            Stiffness::n_per_mm2(stiffness),
        );
        json!({ "depth": depth, "height": height, "thickness": thickness, "stiffness": stiffness, "force": found.in_newton() })
    };
    [(300.0, 600.0), (280.0, 1200.0), (300.0, 2100.0)].map(|(depth, height)| each(depth, height)).to_vec()
}

/// Clearances with what panels share and what each joint has for itself.
fn fits() -> Vec<Value> {
    let each = |mean: f64, shared: f64, own: f64| {
        let [at, of_panel, of_joint] = [mean, shared, own].map(Length::mm);
        let fit = Clearance { mean: at, shared: of_panel, own: of_joint, worst: Length::ZERO };
        json!({
            "mean": mean, "shared": shared, "own": own, "tight": fit.tight(),
            "outside": fit.outside(Length::mm(0.1), Length::mm(0.2)), "any_of_12": fit.any_tight(12),
        })
    };
    [(0.15, 0.06, 0.05), (0.15, 0.025, 0.03), (0.3, 0.1, 0.1 / 3.0)]
        .map(|(mean, shared, own)| each(mean, shared, own))
        .to_vec()
}

/// Seeded cabinets: each part with its mass and its exact centre of gravity, and what the core makes of them.
fn cabinets(range: &Range) -> Result<Vec<Value>, Box<dyn std::error::Error>> {
    let backlog = Backlog::default();
    let mut all = Vec::new();
    for choice in choices(range, 97, Wanted::Valid).take(30) {
        let derived = derive(range, &choice, "2026-11-25".parse()?, &backlog);
        let judged = judge(range, &choice);
        let Some((built, picked)) = derived.built.as_ref().zip(judged.picked) else { continue };
        let (case, layout) = (&built.case, &built.layout);
        let parts = case.panels.iter().zip(&built.parts).map(|(panel, (_, part))| {
            let at = [part.centre.x, part.centre.y, part.centre.z].map(Length::in_mm);
            json!({ "kg": part.mass.in_kg(), "at": at, "axis": axis(panel.id, case) })
        });
        let masses = || case.panels.iter().zip(&built.parts).map(|(panel, (id, part))| (*id, panel.width, part.mass));
        let open: Vec<_> = burdens(picked, layout, Leaves::Open, masses()).collect();
        let moments = Moments::of(open.clone(), 0.0);
        all.push(json!({
            "edge": range.build.foot_recess_mm.in_mm(), "parts": parts.collect::<Vec<_>>(),
            "burdens": open.iter().map(|one| [one.mass.in_kg(), one.behind.in_mm(), one.up.in_mm()]).collect::<Vec<_>>(),
            "left": moments.left(), "steepest": steepest(&open),
        }));
    }
    Ok(all)
}

/// The pivot axis of a leaf from front to rear and from left to right.
fn axis(id: PanelId, case: &Case) -> Option<[f64; 2]> {
    let PanelId::Leaf(_) = id else { return None };
    let panel = case.panel(id)?;
    let along = panel.features.iter().find_map(|feature| match feature {
        Feature::Pivot { at, .. } => Some(*at),
        _ => None,
    })?;
    let origin = panel.case_from_panel.origin;
    Some([(origin.x + along).in_mm(), (origin.y + panel.thickness / 2.0).in_mm()])
}
