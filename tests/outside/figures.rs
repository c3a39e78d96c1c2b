//! Figures of the core as JSON, for libraries that are not ours to compare.

use std::io::Write;

use serde_json::{Value, json};
use slotwright_core::business::promise::Backlog;
use slotwright_core::cabinet::assembly::{Bound, solids};
use slotwright_core::cabinet::case::Case;
use slotwright_core::cabinet::layout::{Layout, Picked};
use slotwright_core::cabinet::panel::{Feature, PanelId};
use slotwright_core::geometry::outline::Point;
use slotwright_core::geometry::space::Block;
use slotwright_core::order::derive::derive;
use slotwright_core::range::Range;
use slotwright_core::rules::judge;
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::statics::buckling::{self, Carries, Strip};
use slotwright_core::statics::fit::Clearance;
use slotwright_core::statics::sag::{Beam, sag, sag_of_point, widest_span};
use slotwright_core::statics::stability::push::{least, pushes};
use slotwright_core::statics::stability::{Leaves, Moments, burdens, steepest};
use slotwright_core::units::quantity::{AreaMass, Force, Length, Stiffness};
use slotwright_core::words;
use slotwright_tests::demo;

mod business;
mod packs;
mod strength;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let range = demo().map_err(|problems| words::problems(&problems.0))?;
    let figures = json!({
        "shelves": shelves(), "points": points(), "strips": strips(), "fits": fits(), "cabinets": cabinets(&range)?,
        "business": business::all(&range)?, "packs": packs::all(&range)?, "strength": strength::all(&range)?,
    });
    writeln!(std::io::stdout(), "{figures}")?;
    Ok(())
}

/// Thickness, modulus in bending, modulus of planar shear.
const BOARDS: [(f64, f64, f64); 3] = [(17.6, 10048.0, 170.0), (17.6, 7452.0, 210.0), (12.0, 10719.0, 170.0)];

fn beam((thickness, bending, planar): (f64, f64, f64)) -> Beam {
    let [bending, planar] = [bending, planar].map(Stiffness::n_per_mm2);
    Beam { thickness: Length::mm(thickness), bending, planar: Some(planar) }
}

/// Shelves under a load spread over them, and the widest span for L/200.
fn shelves() -> Vec<Value> {
    let each = |span: f64, board: (f64, f64, f64), load: f64| {
        let (spread, bent) = (AreaMass::kg_per_m2(load), Beam { planar: None, ..beam(board) });
        json!({
            "span": span, "thickness": board.0, "stiffness": board.1, "planar": board.2, "load": load,
            "sag": sag(Length::mm(span), spread, beam(board)).in_mm(),
            "bent": sag(Length::mm(span), spread, bent).in_mm(),
            "widest": widest_span(spread, beam(board), 200.0).in_mm(),
        })
    };
    let spans = [160.0, 400.0, 800.0, 1100.0];
    spans
        .iter()
        .flat_map(|span| BOARDS.map(|board| [195.0, 244.0].map(|load| each(*span, board, load))))
        .flatten()
        .collect()
}

/// A strip with a force somewhere on it.
fn points() -> Vec<Value> {
    let each = |span: f64, from: f64| {
        let (board, strip) = ((17.7, 10048.0, 170.0), Length::mm(250.0));
        let found = sag_of_point(Length::mm(span), Length::mm(from), Force::newton(150.0), strip, beam(board));
        json!({
            "span": span, "from": from, "force": 150.0, "strip": 250.0, "thickness": board.0, "stiffness": board.1,
            "planar": board.2, "sag": found.in_mm(),
        })
    };
    [(800.0, 400.0), (800.0, 200.0), (1000.0, 90.0), (200.0, 80.0)].map(|(span, from)| each(span, from)).to_vec()
}

/// The forces under which uprights buckle, by the strip that is held and the column that is not.
fn strips() -> Vec<Value> {
    let each = |depth: f64, height: f64, (bending, across, twisting): (f64, f64, f64)| {
        let thickness = 17.7;
        let strip = Strip {
            depth: Length::mm(depth),
            height: Length::mm(height),
            between: Length::mm(height / 4.0),
            thickness: Length::mm(thickness),
            bending: Stiffness::n_per_mm2(bending),
            twisting: Stiffness::n_per_mm2(twisting),
        };
        json!({
            "depth": depth, "height": height, "between": height / 4.0, "thickness": thickness, "bending": bending, "across": across,
            "twisting": twisting, "held": strip.held(1.0).in_newton(), "free": strip.free(1.0).in_newton(),
        })
    };
    let boards = [(10048.0, 7452.0, 620.0), (7452.0, 10048.0, 620.0), (9000.0, 9000.0, 1200.0)];
    [(300.0, 600.0), (280.0, 1200.0), (300.0, 2100.0)]
        .iter()
        .flat_map(|(depth, height)| boards.map(|board| each(*depth, *height, board)))
        .collect()
}

/// The upright that carries least of what it should: the unit's shelves and top, and how many times the core lets it.
fn upright(picked: Picked<'_>, layout: &Layout) -> Value {
    let slot = f64::from(picked.range.build.shelf_slot_per_mille) / 1000.0;
    let carries = Carries::of(buckling::strip(picked, layout), slot);
    let pressed = buckling::pressed(picked, layout).into_iter();
    let times = pressed.map(|pressed| carries.times(pressed)).fold(f64::MAX, f64::min);
    let bays = layout.bays.iter().map(|span| {
        let shelves = span.shelves.iter().map(|under| (*under - layout.floor).in_mm());
        json!({ "clear": span.clear().in_mm(), "shelves": shelves.collect::<Vec<_>>() })
    });
    let board = picked.body;
    let middles = layout.hooks.necks().map(|top| (top - layout.hooks.neck / 2.0).in_mm());
    json!({
        "hooks": middles.collect::<Vec<_>>(), "bays": bays.collect::<Vec<_>>(), "depth": layout.clear_depth().in_mm(), "top_depth": layout.depth.in_mm(),
        "height": layout.clear_height().in_mm(), "thickness": board.thickness().in_mm(), "slot": slot,
        "along": board.e_along_n_per_mm2.in_n_per_mm2(), "across": board.e_across_n_per_mm2.in_n_per_mm2(),
        "twisting": board.shear_modulus_n_per_mm2.in_n_per_mm2(), "creep": picked.range.strength.creep_factor,
        "density": board.density_kg_per_m3.in_kg_per_m3(),
        "on_shelf": picked.model.shelf_load_kg_per_m2.in_kg_per_m2(),
        "on_top": picked.model.top_load_kg_per_m2.in_kg_per_m2(), "times": times,
    })
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
        let derived = derive(range, &choice, "2026-11-25".parse().map_err(|wrong| words::no_day(&wrong))?, &backlog);
        let judged = judge(range, &choice);
        let Some((built, picked)) = derived.built.as_ref().zip(judged.picked) else { continue };
        let (case, layout) = (&built.cut.case, &built.layout);
        let parts = case.panels.iter().zip(&built.cut.parts).map(|(panel, (_, part))| {
            let at = [part.centre.x, part.centre.y, part.centre.z].map(Length::in_mm);
            json!({ "part": panel.id, "kg": part.mass.in_kg(), "at": at, "axis": axis(panel.id, case) })
        });
        let masses =
            || case.panels.iter().zip(&built.cut.parts).map(|(panel, (id, part))| (*id, panel.width, part.mass));
        let open: Vec<_> = burdens(picked, layout, Leaves::Open, masses()).collect();
        let moments = Moments::of(open.clone(), 0.0);
        let pushed = pushes(picked, &choice, layout, &built.cut.parts);
        all.push(json!({
            "foot": foot(case), "uprights": uprights(case), "parts": parts.collect::<Vec<_>>(),
            "burdens": open.iter().map(|one| [one.mass.in_kg(), one.behind.in_mm(), one.up.in_mm()]).collect::<Vec<_>>(),
            "left": moments.left(), "steepest": steepest(&open), "upright": upright(picked, layout),
            "size": [layout.width.in_mm(), layout.depth.in_mm(), layout.height.in_mm()],
            "loads": {
                "on_shelf": picked.model.shelf_load_kg_per_m2.in_kg_per_m2(),
                "on_top": picked.model.top_load_kg_per_m2.in_kg_per_m2(),
                "behind": (layout.upright_front + layout.back_front).in_mm() / 2.0,
                "shelves": layout.bays.iter().flat_map(|span| span.shelves.iter().map(|_| [
                    span.clear().in_mm() * layout.clear_depth().in_mm(), span.middle().in_mm(),
                ])).collect::<Vec<_>>(),
            },
            "top": [layout.top().0.in_mm2(), layout.top().1.in_mm()],
            // The foot's arcs at both ends: where their middle is behind the front, and their radius.
            "arcs": layout.bows.map(|bow| {
                let bow = bow.filter(|_| layout.plinth.is_none())?;
                Some([bow.chord.in_mm() / 2.0, (bow.radius - bow.recess).in_mm()])
            }),
            "pushes": pushed.map(|push| [push.empty.in_newton(), push.loaded.in_newton()]),
            "least": least(pushed).empty.in_newton(),
        }));
    }
    Ok(all)
}

/// The outermost lines of what stands on the floor: in front, behind, at the left and at the right.
fn foot(case: &Case) -> [f64; 4] {
    let standing = case.panels.iter().flat_map(|panel| solids(panel, Bound::Hull).blocks);
    let standing = standing.filter(|block| block.from.z == Length::ZERO);
    standing.fold([f64::MAX, f64::MIN, f64::MAX, f64::MIN], |[front, rear, left, right], Block { from, to }| {
        let [from_x, to_x, from_y, to_y] = [from.x, to.x, from.y, to.y].map(Length::in_mm);
        [front.min(from_y), rear.max(to_y), left.min(from_x), right.max(to_x)]
    })
}

/// The outermost lines of the uprights, without what stands out of them: in front, behind, at the left and at the right; and how high
/// they begin.
fn uprights(case: &Case) -> [f64; 5] {
    let uprights = case.panels.iter().filter(|panel| matches!(panel.id, PanelId::Upright(_)));
    let spots = uprights.flat_map(|panel| {
        let far = Point { u: panel.width, v: panel.height };
        [panel.case_from_panel.origin, panel.case_from_panel.spot(far, panel.thickness)]
    });
    let none = [f64::MAX, f64::MIN, f64::MAX, f64::MIN, f64::MAX];
    spots.fold(none, |[front, rear, left, right, low], spot| {
        let [x, y, z] = [spot.x, spot.y, spot.z].map(Length::in_mm);
        [front.min(y), rear.max(y), left.min(x), right.max(x), low.min(z)]
    })
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
