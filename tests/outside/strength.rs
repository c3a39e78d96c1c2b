//! Figures of strength of seeded units: what stands out of parts, what bends, and what racks.

use serde_json::{Value, json};
use slotwright_core::business::built::Built;
use slotwright_core::business::promise::Backlog;
use slotwright_core::cabinet::layout::Picked;
use slotwright_core::cabinet::panel::{Edge, Feature, Panel, PanelId, Stock};
use slotwright_core::choice::Choice;
use slotwright_core::order::derive::derive;
use slotwright_core::order::parts::Parts;
use slotwright_core::range::{Board, Detent, Range, relief_radius};
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::statics::detent::Tongue;
use slotwright_core::statics::knock::{Bears, Stub};
use slotwright_core::statics::sag::{Beam, sag_of_point};
use slotwright_core::statics::stability::push::pushes;
use slotwright_core::statics::twist::corner;
use slotwright_core::units::quantity::Length;
use slotwright_core::words;

type Fault = Box<dyn std::error::Error>;

/// Each model as it begins, and so many seeded units.
const UNITS: usize = 12;

pub(crate) fn all(range: &Range) -> Result<Value, Fault> {
    let starting: Vec<Choice> = range.models.iter().filter_map(Choice::starting).collect();
    let (mut units, backlog) = (Vec::new(), Backlog::default());
    for choice in starting.into_iter().chain(choices(range, 101, Wanted::Valid).take(UNITS)) {
        let today = "2026-11-25".parse().map_err(|wrong| words::no_day(&wrong))?;
        let derived = derive(range, &choice, today, &backlog);
        let Some((built, picked)) = derived.built.as_ref().zip(Picked::of(range, &choice)) else { continue };
        let [_, _, left, right] =
            pushes(picked, &choice, &built.layout, &built.cut.parts).map(|push| push.tied.in_newton());
        units.push(json!({
            "model": choice.model, "tips": left.min(right), "height": built.layout.clear_height().in_mm(), "floor": built.layout.floor.in_mm(),
            "ceiling": built.layout.ceiling.in_mm(), "parts": Parts::of(built), "boards": boards(picked),
            "stubs": stubs(built, picked), "slender": slender(built, picked),
        }));
    }
    let limits = &range.strength;
    Ok(json!({
        "knock": limits.knock_n.in_newton(), "push": limits.push_n.in_newton(), "push_span_over": limits.push_span_over, "short": limits.knock_strength / limits.material_factor,
        "units": units, "detents": detents(range)?,
    }))
}

/// Cutter, height of the tongue and depth of its slit: as the range has it, and round that.
const TONGUES: [(f64, f64, f64); 5] =
    [(6.0, 6.5, 89.0), (8.0, 6.5, 89.0), (4.0, 8.0, 89.0), (6.0, 5.0, 60.0), (8.0, 10.0, 120.0)];

/// Stops with their tongues, the force that lifts the nose by a millimetre, what the root bears then, and how far the nose is lifted
/// as the tongue meets the top.
fn detents(range: &Range) -> Result<Vec<Value>, Fault> {
    let (mut detents, backlog) = (Vec::new(), Backlog::default());
    for (cutter, tongue, root) in TONGUES {
        let mut range = range.clone();
        let build = &mut range.build;
        [build.cutter_mm, build.detent_tongue_mm, build.detent_root_mm] = [cutter, tongue, root].map(Length::mm);
        // A tab as long as the range's stands behind the slit.
        build.stop_depth_mm = Length::mm(root + cutter + 21.0);
        let choice = range.models.iter().find_map(Choice::starting).ok_or("no model")?;
        let today = "2026-11-25".parse().map_err(|wrong| words::no_day(&wrong))?;
        let derived = derive(&range, &choice, today, &backlog);
        let (built, picked) = derived.built.as_ref().zip(Picked::of(&range, &choice)).ok_or("nothing is built")?;
        let detent = Detent::of(&range.build, built.layout.body).ok_or("no detent")?;
        let (tongue, by) = (Tongue::of(detent, picked.body), Length::mm(1.0));
        let stop = Parts::of(built).panels.into_iter().find(|panel| matches!(panel.id, PanelId::Stop(_)));
        detents.push(json!({
            "outline": stop.ok_or("no stop")?.outline, "board": board(picked.body), "force": tongue.lifted(by).in_newton(),
            "stress": tongue.bears(by).bending.in_n_per_mm2(), "travel": detent.travel.in_mm(), "lifts": detent.lifts_by().in_mm(),
        }));
    }
    Ok(detents)
}

fn board(board: &Board) -> Value {
    json!({
        "thickness": board.thickness().in_mm(), "along": board.e_along_n_per_mm2.in_n_per_mm2(),
        "across": board.e_across_n_per_mm2.in_n_per_mm2(), "plane_across": board.e_plane_across_n_per_mm2.in_n_per_mm2(),
        "panel_shear": board.shear_modulus_n_per_mm2.in_n_per_mm2(), "planar": board.planar_shear_modulus_n_per_mm2.in_n_per_mm2(),
        "bearing": board.bearing_n_per_mm2.in_n_per_mm2(), "planar_strength": board.planar_shear_n_per_mm2.in_n_per_mm2(),
    })
}

fn boards(picked: Picked<'_>) -> Value {
    json!({ "body": board(picked.body), "back": board(picked.back) })
}

/// The first tab of each part that has one, and the first hook of the first upright: where it stands out, and what its sections bear,
/// as `rules/knock` judges them; its tests hold its list to what is cut.
fn stubs(built: &Built, picked: Picked<'_>) -> Vec<Value> {
    let stubs = built.cut.case.panels.iter().flat_map(|panel| {
        let tab = panel.features.iter().find_map(|feature| tab(panel, *feature, picked));
        let hook = panel.features.iter().find_map(|feature| hook(panel, *feature, picked));
        tab.into_iter().chain(hook.filter(|_| panel.id == PanelId::Upright(1)))
    });
    stubs.collect()
}

fn tab(panel: &Panel, feature: Feature, picked: Picked<'_>) -> Option<Value> {
    let Feature::Tab { edge, from, to, depth, .. } = feature else { return None };
    let (long, name) = match edge {
        Edge::Bottom => (panel.width, "bottom"),
        Edge::Top => (panel.width, "top"),
        Edge::Left => (panel.height, "left"),
        Edge::Right => (panel.height, "right"),
    };
    // An ear has one root, at the end of its edge.
    if from <= Length::ZERO || to >= long {
        return None;
    }
    let width = to - from - relief_radius(panel.cutter) * 2.0;
    let thickness = picked.board(panel.stock).thickness();
    let stub = Stub { reach: depth, width, thickness, beside: (to - from) / 2.0 };
    Some(json!({
        "part": panel.id, "edge": name, "from": from.in_mm(), "to": to.in_mm(), "out": depth.in_mm(),
        "stock": stock(panel), "sections": { "root": section(stub, picked) },
    }))
}

fn hook(panel: &Panel, feature: Feature, picked: Picked<'_>) -> Option<Value> {
    let Feature::Hook(hook) = feature else { return None };
    let (relief, neck, thickness) = (relief_radius(panel.cutter), hook.to - hook.from, picked.body.thickness());
    let stub = |reach, width, beside| section(Stub { reach, width, thickness, beside }, picked);
    let thin = neck - relief;
    Some(json!({
        "part": panel.id, "edge": "right", "from": hook.from.in_mm(), "to": hook.to.in_mm(), "out": hook.out().in_mm(),
        "stock": stock(panel), "neck": hook.neck.in_mm(), "rise": hook.rise.in_mm(), "relief": relief.in_mm(),
        "sections": {
            "root": stub(hook.out(), neck, hook.rise + neck / 2.0),
            "thin": stub(hook.nose + relief, thin, hook.rise + neck - thin / 2.0),
            "nose": stub(hook.rise, hook.nose, Length::ZERO),
        },
    }))
}

const fn stock(panel: &Panel) -> &'static str {
    match panel.stock {
        Stock::Body => "body",
        Stock::Back => "back",
    }
}

fn section(stub: Stub, picked: Picked<'_>) -> Value {
    let told = |bears: Bears| [bears.bending.in_n_per_mm2(), bears.shear.in_n_per_mm2()];
    let knock = picked.range.strength.knock_n;
    json!({
        "reach": stub.reach.in_mm(), "width": stub.width.in_mm(), "thickness": stub.thickness.in_mm(), "beside": stub.beside.in_mm(),
        "in_plane": told(stub.in_plane(knock)), "across": told(stub.across(knock)),
    })
}

/// What a push at its free corner twists a leaf by, as `rules/slender` has it.
fn twist(panel: &Panel, pivot: Length, picked: Picked<'_>) -> f64 {
    let (board, wide) = (picked.body, pivot.max(panel.width - pivot));
    let push = picked.range.strength.push_n;
    corner(push, [wide, panel.height], board.thickness(), board.shear_modulus_n_per_mm2).in_mm()
}

/// What a push in its middle bends a part by, as `rules/slender` has it: by bending, and with plies that slide.
fn slender(built: &Built, picked: Picked<'_>) -> Vec<Value> {
    let push = picked.range.strength.push_n;
    let beam = Beam::along(picked.body);
    let slender = built.cut.case.panels.iter().filter(|panel| {
        matches!(panel.id, PanelId::Stile(_) | PanelId::Stop(_) | PanelId::Stave { .. } | PanelId::Leaf(_))
    });
    let told = slender.map(|panel| {
        let bow = |beam| sag_of_point(panel.height, panel.height / 2.0, push, panel.width, beam).in_mm();
        let pivot = panel.features.iter().find_map(|feature| match *feature {
            Feature::Pivot { at, .. } => Some(at),
            _ => None,
        });
        json!({
            "part": panel.id, "height": panel.height.in_mm(), "width": panel.width.in_mm(), "pivot": pivot.map(Length::in_mm),
            "twist": pivot.map(|at| twist(panel, at, picked)), "bow": bow(beam), "bent": bow(Beam { planar: None, ..beam }),
        })
    });
    told.collect()
}
