//! Figures that bound each other. One that is wrong by itself is no bound, and is not named again.

use super::{Problems, Wrong};
use crate::range::batch::sanded;
use crate::range::{Batch, Board, Build, Carrier, Detent, HoleShape, Model, Range, STILE_TAB, leans, relief_radius};
use crate::units::quantity::Length;

/// Largest difference within one panel that real batches show.
// Source: a mill's table of tolerances: within one panel 0.6 mm.
const WITHIN_PANEL: f64 = 0.6;
/// To how much a mean thickness is read.
// Source: EN 324-1:1993.
const READ_TO: f64 = 0.05;
/// So many times as high as the radius of its slit, and as long as high, a detent's tongue may be: what `statics::detent` says of its root
/// was found for those.
// Source: finite elements on such outlines; `tests/outside/strength.py` holds five of them.
const FOR_THEIR_RADIUS: [f64; 2] = [1.0, 4.0];
const FOR_THEIR_HEIGHT: [f64; 2] = [12.0, 22.0];

pub(super) fn check(out: &mut Problems, range: &Range) {
    build(out, range);
    bow(out, range);
    detent(out, range);
    let strength = &range.strength;
    let narrowest = ("leaf_narrowest", strength.leaf_narrowest);
    related(out, "strength", narrowest, (0.0, strength.leaf_widest), &["leaf_widest"]);
    let (one, two) = (range.handling.one_person_kg.in_kg(), range.handling.two_people_kg.in_kg());
    // Source: HSE L23: two people carry at most two thirds of the sum of what each may carry.
    related(out, "handling", ("two_people_kg", two), (one, one * 4.0 / 3.0), &["one_person_kg"]);
    let moisture = &range.moisture;
    let (least, made, most) = (moisture.least_percent, moisture.made_percent, moisture.most_percent);
    related(out, "moisture", ("least_percent", least), (0.0, made), &["made_percent"]);
    related(out, "moisture", ("made_percent", made), (0.0, most), &["most_percent"]);
    for board in &range.boards {
        thickness(out, board);
        for sheet in &board.sheets {
            let prefix = format!("board.{}.sheet.{}", board.key, sheet.key);
            related(out, &prefix, ("width_mm", sheet.width_mm.in_mm()), (0.0, sheet.length_mm.in_mm()), &["length_mm"]);
        }
    }
    for hole in &range.holes {
        if let HoleShape::Slotted { length_mm, height_mm } = hole.shape {
            let prefix = format!("hole.{}.shape.slotted", hole.key);
            let bounds = (height_mm.in_mm(), f64::INFINITY);
            related(out, &prefix, ("length_mm", length_mm.in_mm()), bounds, &["height_mm"]);
        }
    }
    for model in &range.models {
        check_model(out, model);
        wood(out, range, model);
    }
    for carrier in &range.carriers {
        hand_over(out, range, carrier);
    }
}

/// A unit is handed over on a day on which workshop and carrier both work.
fn hand_over(out: &mut Problems, range: &Range, carrier: &Carrier) {
    let path = format!("carrier.{}.weekdays", carrier.key);
    let meet = carrier.weekdays.iter().any(|day| range.calendar.weekdays.contains(day));
    if !meet && out.is_right("calendar.weekdays") && out.is_right(&path) {
        out.push((path, Wrong::NoCommonDay("calendar.weekdays")));
    }
}

/// A figure that others of its section bound, if those are right.
fn related(out: &mut Problems, section: &str, figure: (&str, f64), (least, most): (f64, f64), by: &[&str]) {
    let (name, found) = figure;
    let path = format!("{section}.{name}");
    let known = by.iter().all(|by| out.is_right(&format!("{section}.{by}")));
    if known && out.is_right(&path) && !(least..=most).contains(&found) {
        out.push((
            path,
            if most.is_infinite() { Wrong::Least { found, least } } else { Wrong::Bounds { found, least, most } },
        ));
    }
}

fn build(out: &mut Problems, range: &Range) {
    let build = &range.build;
    let (least, most) = (build.clearance_least_mm.in_mm(), build.clearance_most_mm.in_mm());
    let boards = || range.boards.iter().map(|board| board.thickness().in_mm()).filter(|mm| (3.0..=60.0).contains(mm));
    let (thinnest, thickest) = (boards().fold(60.0, f64::min), boards().fold(3.0, f64::max));
    let cutter = build.cutter_mm.in_mm();
    let mut related = |figure: (&str, f64), bounds: (f64, f64), by: &[&str]| related(out, "build", figure, bounds, by);
    related(("clearance_least_mm", least), (0.0, most), &["clearance_most_mm"]);
    related(("clearance_mm", build.clearance_mm.in_mm()), (least, most), &["clearance_least_mm", "clearance_most_mm"]);
    let close = build.clearance_mm.in_mm();
    related(("clearance_loose_mm", build.clearance_loose_mm.in_mm()), (close, f64::INFINITY), &["clearance_mm"]);
    // The cutter runs in slots as wide as a board, and its reliefs lie two in a tab's end.
    related(("cutter_mm", cutter), (0.0, thinnest), &[]);
    let reliefs = relief_radius(build.cutter_mm).in_mm() * 4.0;
    related(("tab_mm", build.tab_mm.in_mm()), (reliefs, f64::INFINITY), &["cutter_mm"]);
    // Wood beside the outermost slots of the back, and a foot that reaches under stiles and lower pivots.
    let ear = (build.ligament_mm + build.clearance_mm / 2.0).in_mm();
    let bounds = (ear, build.end_inset_mm.in_mm());
    related(("back_ear_mm", build.back_ear_mm.in_mm()), bounds, &["end_inset_mm", "ligament_mm", "clearance_mm"]);
    // Before the slots of stiles and the holes of pivots.
    let before = (build.ligament_mm + build.clearance_loose_mm.max(build.pivot_clearance_mm) / 2.0).in_mm();
    let by = ["ligament_mm", "clearance_loose_mm", "pivot_clearance_mm"];
    related(("front_inset_mm", build.front_inset_mm.in_mm()), (before, f64::INFINITY), &by);
    related(("foot_recess_mm", build.foot_recess_mm.in_mm()), (0.0, build.front_inset_mm.in_mm()), &["front_inset_mm"]);
    // Under the lower base plate, with wood before its slots.
    let toe = (build.foot_recess_mm + build.clearance_mm).in_mm();
    related(("plinth_toe_mm", build.plinth_toe_mm.in_mm()), (toe, f64::INFINITY), &["foot_recess_mm", "clearance_mm"]);
    related(("pivot_inset_mm", build.pivot_inset_mm.in_mm()), (thickest / 2.0, f64::INFINITY), &[]);
    hooks(&mut related, build, thickest);
    stop(&mut related, build, range.models.iter().filter_map(|model| range.board(&model.body)));
    // None, or one that the cutter goes into.
    if build.finger_hole_mm != Length::ZERO {
        related(("finger_hole_mm", build.finger_hole_mm.in_mm()), (cutter, f64::INFINITY), &["cutter_mm"]);
    }
}

/// Staves that stand in their plates: wood round their slots, and before them what the back passes an end by.
fn bow(out: &mut Problems, range: &Range) {
    let (row, build, most) = (&range.bow, &range.build, f64::INFINITY);
    if !out.is_right("build") {
        return;
    }
    let mut related = |figure: (&str, f64), bounds: (f64, f64), by: &[&str]| related(out, "bow", figure, bounds, by);
    let ligament = (build.ligament_mm + build.clearance_loose_mm).in_mm();
    let (wide, tab) = (row.stave_mm.in_mm(), row.tab_mm.in_mm());
    // Its corners stand a little further out than its middle.
    related(("inset_mm", row.inset_mm.in_mm()), (ligament.max(build.foot_recess_mm.in_mm()) + 1.0, most), &[]);
    related(("tab_mm", tab), (relief_radius(build.cutter_mm).in_mm() * 4.0, wide), &["stave_mm"]);
    // Between two slots and their reliefs, which are at an angle of no more than a sixth of a circle.
    let reliefs = relief_radius(build.cutter_mm).in_mm() * 2.0;
    related(("gap_mm", row.gap_mm.in_mm()), (ligament - (wide - tab - reliefs) * 0.86, most), &["stave_mm", "tab_mm"]);
    let ear = (build.back_ear_mm + build.clearance_mm).in_mm();
    // A bow never leaves more width than square ends do.
    let least = ear.max(ligament).max((build.end_inset_mm - row.inset_mm).in_mm());
    related(("behind_mm", row.behind_mm.in_mm()), (least, most), &["inset_mm"]);
}

/// A figure with its bounds and the figures that these come from.
type Related<'a> = dyn FnMut((&str, f64), (f64, f64), &[&str]) + 'a;

/// Stops that leaves reach, of a thickness that overlaps them and has room for the chamfers of tabs, with room for a tab and its wood.
fn stop<'a>(related: &mut Related<'_>, build: &Build, bodies: impl Iterator<Item = &'a Board>) {
    let (gap, most) = (build.stop_gap_mm.in_mm(), f64::INFINITY);
    related(("stop_gap_mm", gap), (build.pivot_clearance_mm.in_mm(), most), &["pivot_clearance_mm"]);
    // A thickness that is wrong by itself is no bound.
    let bodies = bodies.map(|board| board.thickness().in_mm()).filter(|mm| (3.0..=60.0).contains(mm));
    let thinnest = bodies.fold(most, f64::min);
    related(("stop_overlap_mm", build.stop_overlap_mm.in_mm()), (0.0, thinnest), &[]);
    // Half of a tab's end stays between its chamfers.
    related(("tab_chamfer_mm", build.tab_chamfer_mm.in_mm()), (0.0, thinnest / 4.0), &[]);
    // Two reliefs lie in the end of its tab, on either side of which is a sixth of its depth at least.
    let reliefs = relief_radius(build.cutter_mm) * 4.0;
    let least = (build.stop_tab_behind() * 2.0 + reliefs).max(reliefs * 1.5);
    let by = ["stop_gap_mm", "clearance_loose_mm", "ligament_mm", "cutter_mm", "pivot_clearance_mm"];
    related(("stop_depth_mm", build.stop_depth_mm.in_mm()), (least.in_mm(), most), &by);
}

/// A detent that can be cut, with wood behind its slit and room for the tab there; that leaves hang clear of, however they lean,
/// pass before the top stops it, and that stands out no further than the top. Without a rise there is none.
fn detent(out: &mut Problems, range: &Range) {
    let (build, most) = (&range.build, f64::INFINITY);
    if build.detent_rise_mm == Length::ZERO || !out.is_right("build") || !out.is_right("strength.leaf_widest") {
        return;
    }
    let mut related = |figure: (&str, f64), bounds: (f64, f64), by: &[&str]| related(out, "build", figure, bounds, by);
    let relief = relief_radius(build.cutter_mm);
    // The tab behind has a relief in its flank, and wood beside that; the slit has wood up to the rear edge.
    let tab = (build.stop_depth_mm - relief * 6.0).min(build.stop_depth_mm - build.ligament_mm);
    let by = ["stop_depth_mm", "ligament_mm", "cutter_mm"];
    related(("detent_root_mm", build.detent_root_mm.in_mm()), (relief.in_mm() * 2.0, tab.in_mm()), &by);
    // No leaf is wider for its height than that, and its corner hangs lower by as much.
    let leans = leans(build.pivot_clearance_mm, Length::mm(range.strength.leaf_widest), Length::mm(1.0));
    let bodies = range.models.iter().filter_map(|model| range.board(&model.body)).map(Board::thickness);
    for detent in bodies.filter_map(|body| Detent::of(build, body)) {
        // Half of what pivots have play is left between leaf and tongue; a nose has room for its fillet and its tip.
        let play = (leans + build.pivot_clearance_mm / 2.0).max(detent.rise_least() - detent.overlap);
        let by = ["pivot_clearance_mm", "detent_slope_per_mille", "detent_tongue_mm", "cutter_mm", "detent_rise_mm"];
        related(("detent_play_mm", build.detent_play_mm.in_mm()), (play.in_mm(), most), &by);
        let lifts = (detent.overlap + leans) * (detent.travel / detent.lifts_by());
        let by = ["detent_rise_mm", "pivot_clearance_mm", "detent_root_mm", "detent_tongue_mm"];
        related(("detent_travel_mm", build.detent_travel_mm.in_mm()), (lifts.in_mm(), most), &by);
        // The cutter rounds the inside of the leaf's corner.
        let clear = build.leaf_gap_mm + relief + leans - (detent.travel + build.detent_play_mm);
        // Of no other outline is known how far its root gives and what its corners bear.
        let [low, high] = FOR_THEIR_RADIUS.map(|times| detent.relief() * times);
        let [thickest, thinnest] = FOR_THEIR_HEIGHT.map(|times| detent.tongue_for(times));
        let bounds = (clear.max(low).max(thinnest).in_mm(), high.min(thickest).in_mm());
        let by = [
            "leaf_gap_mm",
            "cutter_mm",
            "pivot_clearance_mm",
            "detent_travel_mm",
            "detent_play_mm",
            "detent_root_mm",
            "detent_slope_per_mille",
            "detent_rise_mm",
            "stop_gap_mm",
        ];
        related(("detent_tongue_mm", build.detent_tongue_mm.in_mm()), bounds, &by);
        let before = (detent.out() - detent.before).in_mm();
        let by = ["detent_rise_mm", "detent_play_mm", "detent_tongue_mm", "detent_slope_per_mille"];
        related(("front_inset_mm", build.front_inset_mm.in_mm()), (before, most), &by);
    }
}

/// Hooks that can be cut, stand clear of each other and of the wall, and over which a board as thick as that is lifted.
fn hooks(related: &mut Related<'_>, build: &Build, thickest: f64) {
    let (cutter, most) = (build.cutter_mm.in_mm(), f64::INFINITY);
    // Two reliefs lie beside a neck's root, one in it.
    related(("hook_rise_mm", build.hook_rise_mm.in_mm()), (cutter, most), &["cutter_mm"]);
    related(("hook_neck_mm", build.hook_neck_mm.in_mm()), (cutter, most), &["cutter_mm"]);
    let nose = (build.hook_nose_mm + build.clearance_mm).in_mm();
    related(("chase_mm", build.chase_mm.in_mm()), (nose, most), &["hook_nose_mm", "clearance_mm"]);
    // Where there are more than two, they are more than half as far apart as they may be.
    let by = ["hook_neck_mm", "hook_rise_mm", "hook_play_mm", "ligament_mm", "cutter_mm"];
    let least = build.hook_least().in_mm() * 2.0;
    related(("hook_apart_mm", build.hook_apart_mm.in_mm()), (least, most), &by);
    // An upright is lifted over both base plates.
    related(("headroom_mm", build.headroom_mm.in_mm()), (thickest * 2.0, most), &[]);
}

/// From the least to the most that a board of that nominal thickness measures in the mean, read to 0.05 mm.
// Real batches run as far as that: 6.1 to 6.9 for 6.5, 8.8 to 9.5 for 9, 17.1 to 18.1 for 18 mm: a merchant's data sheet.
fn as_read(nominal: Length) -> (f64, f64) {
    let (least, most) = sanded(nominal);
    (least.in_mm() - READ_TO, most.in_mm() + READ_TO)
}

fn thickness(out: &mut Problems, board: &Board) {
    let prefix = format!("board.{}", board.key);
    let (least, most) = as_read(board.nominal_mm);
    let mut related =
        |name: &str, mm: Length, bounds| related(out, &prefix, (name, mm.in_mm()), bounds, &["nominal_mm"]);
    if let Some(mean) = board.measured_mm {
        related("measured_mm", mean, (least, most));
    }
    let Some(batch) = &board.measured_points_mm else { return };
    for (point, mm) in (1..).zip(batch.points()) {
        related(&format!("measured_points_mm.{point}"), *mm, (least - WITHIN_PANEL, most + WITHIN_PANEL));
    }
    related("measured_points_mm", Batch::mean(batch), (least, most));
}

fn check_model(out: &mut Problems, model: &Model) {
    let prefix = format!("model.{}", model.key);
    related(
        out,
        &format!("{prefix}.bays"),
        ("least", model.bays.least.into()),
        (0.0, model.bays.most.into()),
        &["most"],
    );
    if out.is_right(&format!("{prefix}.bays")) {
        let (least, most) = (usize::from(model.bays.least), usize::from(model.bays.most));
        super::length(out, format!("{prefix}.start_bays"), model.start_bays.len(), least, most);
    }
    let sizes = [("width_mm", model.width_mm), ("height_mm", model.height_mm), ("depth_mm", model.depth_mm)];
    let sizes = sizes.map(|(name, limits)| (name, limits, super::SIZES_MOST));
    let plinth = model.plinth_mm.map(|limits| ("plinth_mm", limits, super::PLINTHS_MOST));
    let bows = model.bow_mm.map(|limits| ("bow_mm", limits, super::SIZES_MOST));
    for (name, limits, most_values) in sizes.into_iter().chain(plinth).chain(bows) {
        let path = format!("{prefix}.{name}");
        let (least, most) = (limits.least.into(), limits.most.into());
        related(out, &path, ("most", most), (least, f64::INFINITY), &["least"]);
        related(out, &path, ("start", limits.start.into()), (least, most), &["least", "most"]);
        if out.is_right(&path) {
            super::steps(out, &path, limits, most_values);
        }
    }
    if let Some(bows) = model.bow_mm {
        // An arc is no more than half a circle.
        let half = f64::from(model.depth_mm.least) / 2.0;
        if out.is_right(&format!("{prefix}.depth_mm")) {
            related(out, &format!("{prefix}.bow_mm"), ("most", bows.most.into()), (0.0, half), &[]);
        }
    }
    distinct(out, &prefix, "backs", &mut model.backs.iter().map(ToString::to_string));
    distinct(out, &prefix, "finishes", &mut model.finishes.iter().map(ToString::to_string));
    distinct(out, &prefix, "corner_radii_mm", &mut model.corner_radii_mm.iter().map(ToString::to_string));
}

/// Wood that a model's own figures leave.
fn wood(out: &mut Problems, range: &Range, model: &Model) {
    let (build, Some(board)) = (&range.build, range.board(&model.body)) else { return };
    if !out.is_right("build") || !out.is_right(&format!("board.{}", model.body)) {
        return;
    }
    let relief = relief_radius(build.cutter_mm);
    if let Some(limits) = model.plinth_mm {
        // Under a lap of half its height, with reliefs in its floor.
        let least = ((build.ligament_mm + relief) * 2.0 + build.clearance_mm).in_mm();
        let path = format!("model.{}.plinth_mm", model.key);
        related(out, &path, ("least", limits.least.into()), (least, f64::INFINITY), &[]);
    }
    if model.leaves_most == 0 {
        return;
    }
    // Between the slots of stiles and the holes of the pivots beside them, which stand on one line.
    let slot = board.thickness() + build.clearance_loose_mm;
    let hole = (board.thickness() + build.pivot_clearance_mm) / 2.0;
    // From the middle of a relief, in the end of a slot, to that of the hole: along the line and across it.
    let (far, across) = ((build.ligament_mm + relief + hole).in_mm(), (slot / 2.0 - relief).in_mm());
    let along = (far * far - across * across).max(0.0).sqrt();
    let beside = (build.leaf_gap_mm + build.pivot_inset_mm - build.clearance_loose_mm / 2.0).in_mm();
    let least = (along - beside) / ((1.0 - STILE_TAB) / 2.0);
    let path = format!("model.{}", model.key);
    related(out, &path, ("stile_mm", model.stile_mm.in_mm()), (least, f64::INFINITY), &[]);
}

/// A list that names nothing twice.
pub(super) fn distinct(out: &mut Problems, prefix: &str, name: &str, all: &mut dyn Iterator<Item = String>) {
    #[cfg(any(test, feature = "schema"))]
    out.bounds.push(super::Bound { path: format!("{prefix}.{name}"), limits: super::Limits::Distinct });
    let mut seen = Vec::new();
    for (number, one) in (1..).zip(all) {
        match seen.binary_search(&one) {
            Ok(_) => out.push((format!("{prefix}.{name}.{number}"), Wrong::Again(one))),
            Err(at) => seen.insert(at, one),
        }
    }
}
