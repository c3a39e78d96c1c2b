//! Judging a range as a whole: what it refers to is there, and its figures are in proportion.

use super::{Board, DimRange, FORMAT, HoleShape, Key, Model, Range, Use, repeated};
use crate::choice::BAYS_MOST;
use crate::decimal::Plain;
use crate::fit::Batch;

/// What is wrong at a place of a range file.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[expect(missing_docs, reason = "the message of each says what it is")]
pub enum Wrong {
    #[error("the file has {bytes} bytes; {most} are the most that is read")]
    TooLarge { bytes: usize, most: usize },
    #[error("{0}")]
    Text(String),
    #[error("expected {wanted}, found {found}")]
    Kind { wanted: String, found: String },
    #[error("{found:?} is not one of {wanted}")]
    Word { found: String, wanted: String },
    #[error("this is missing")]
    Missing,
    #[error("no section or key of this name is known")]
    Strange,
    #[error("format {found} is not known; this program reads format {known}")]
    Format { found: u32, known: u32 },
    #[error("the key \"{0}\" stands here more than once")]
    Repeated(Key),
    #[error("no {what} \"{key}\" for this use in the range")]
    Unknown { what: &'static str, key: Key },
    #[error("{found} entries; {least} to {most} are possible")]
    Length { found: usize, least: usize, most: usize },
    #[error("{} is out of proportion; {} to {} is possible", Plain::of(*.found, 3), Plain::of(*.least, 3), Plain::of(*.most, 3))]
    Bounds { found: f64, least: f64, most: f64 },
    #[error("{} is not on a step of {} above {}", Plain::of(*.found, 3), Plain::of(*.step, 3), Plain::of(*.least, 3))]
    OffStep { found: f64, step: f64, least: f64 },
    #[error("{0:?} is not a colour written #rrggbb")]
    Colour(String),
    #[error("{0:?} is not a currency code of three capital letters")]
    Currency(String),
    #[error("ends before it begins, or lasts longer than a year")]
    Stretch,
    #[error("says the same as {0}: one of them is enough")]
    Twice(&'static str),
}

/// Values of one size that a model can have: keeps the answer to a change within a frame.
const SIZES_MOST: i32 = 400;

type Problems = Vec<(String, Wrong)>;

/// Everything wrong with a range that could be read, with its path.
pub(super) fn check(range: &Range) -> Problems {
    let mut out = Problems::new();
    if range.format != FORMAT {
        out.push(("format".into(), Wrong::Format { found: range.format, known: FORMAT }));
    }
    if range.currency.len() != 3 || !range.currency.bytes().all(|byte| byte.is_ascii_uppercase()) {
        out.push(("currency".into(), Wrong::Currency(range.currency.chars().take(20).collect())));
    }
    lists(&mut out, range);
    boards(&mut out, range);
    finishes(&mut out, range);
    holes(&mut out, range);
    devices(&mut out, range);
    for model in &range.models {
        check_model(&mut out, range, model);
    }
    build(&mut out, range);
    rates(&mut out, range);
    times(&mut out, range);
    out
}

fn length(out: &mut Problems, path: impl Into<String>, found: usize, least: usize, most: usize) {
    if found < least || found > most {
        out.push((path.into(), Wrong::Length { found, least, most }));
    }
}

fn bounds(out: &mut Problems, path: impl Into<String>, found: impl Into<f64>, least: f64, most: f64) {
    let found = found.into();
    if !(least..=most).contains(&found) {
        out.push((path.into(), Wrong::Bounds { found, least, most }));
    }
}

fn keys<'a>(out: &mut Problems, path: &str, keys: impl Iterator<Item = &'a Key> + Clone, least: usize) {
    length(out, path, keys.clone().count(), least, 64);
    for key in repeated(keys) {
        out.push((format!("{path}.{key}"), Wrong::Repeated(key.clone())));
    }
}

fn lists(out: &mut Problems, range: &Range) {
    keys(out, "board", range.boards.iter().map(|board| &board.key), 1);
    keys(out, "finish", range.finishes.iter().map(|finish| &finish.key), 1);
    keys(out, "hole", range.holes.iter().map(|hole| &hole.key), 0);
    keys(out, "plug", range.plugs.iter().map(|plug| &plug.key), 0);
    keys(out, "device", range.devices.iter().map(|device| &device.key), 0);
    keys(out, "model", range.models.iter().map(|model| &model.key), 1);
    keys(out, "stage", range.stages.iter().map(|stage| &stage.key), 1);
    keys(out, "carrier", range.carriers.iter().map(|carrier| &carrier.key), 1);
}

fn boards(out: &mut Problems, range: &Range) {
    for board in &range.boards {
        let at = |name: &str| format!("board.{}.{name}", board.key);
        keys(out, &at("sheet"), board.sheets.iter().map(|sheet| &sheet.key), 1);
        bounds(out, at("nominal_mm"), board.nominal_mm.in_mm(), 3.0, 60.0);
        bounds(out, at("measured_mm"), board.thickness().in_mm(), 3.0, 60.0);
        for (point, mm) in (1..).zip(board.measured_points_mm.iter().flat_map(Batch::points)) {
            bounds(out, at(&format!("measured_points_mm.{point}")), mm.in_mm(), 3.0, 60.0);
        }
        if let Some(count) = board.measured_points_mm.as_ref().and_then(Batch::wrong_count) {
            length(out, at("measured_points_mm"), count, Batch::POINTS, Batch::POINTS);
        }
        if board.measured_mm.is_some() && board.measured_points_mm.is_some() {
            out.push((at("measured_mm"), Wrong::Twice("measured_points_mm")));
        }
        bounds(out, at("density_kg_per_m3"), board.density_kg_per_m3.in_kg_per_m3(), 100.0, 1500.0);
        bounds(out, at("e_along_n_per_mm2"), board.e_along_n_per_mm2.in_n_per_mm2(), 100.0, 50_000.0);
        bounds(out, at("e_across_n_per_mm2"), board.e_across_n_per_mm2.in_n_per_mm2(), 100.0, 50_000.0);
        bounds(out, at("shear_modulus_n_per_mm2"), board.shear_modulus_n_per_mm2.in_n_per_mm2(), 10.0, 10_000.0);
        bounds(out, at("shear_n_per_mm2"), board.shear_n_per_mm2.in_n_per_mm2(), 0.1, 500.0);
        bounds(out, at("bearing_n_per_mm2"), board.bearing_n_per_mm2.in_n_per_mm2(), 0.1, 500.0);
        for sheet in &board.sheets {
            let at = |name: &str| format!("board.{}.sheet.{}.{name}", board.key, sheet.key);
            bounds(out, at("length_mm"), sheet.length_mm.in_mm(), 300.0, 6000.0);
            bounds(out, at("width_mm"), sheet.width_mm.in_mm(), 300.0, sheet.length_mm.in_mm());
            money(out, at("price_minor"), sheet.price_minor);
        }
    }
    // A repeated measured thickness is the nominal one's problem, said once.
    out.dedup_by(|later, first| later.1 == first.1 && later.0.ends_with("measured_mm"));
}

/// An amount of a range: not negative, and small enough that no order overflows.
fn money(out: &mut Problems, path: String, amount: crate::money::Money) {
    let most = 1_000_000_000;
    if amount.in_minor() < 0 || amount.in_minor() > most {
        let found = f64::from(i32::try_from(amount.in_minor()).unwrap_or(i32::MAX));
        out.push((path, Wrong::Bounds { found, least: 0.0, most: 1e9 }));
    }
}

fn finishes(out: &mut Problems, range: &Range) {
    for finish in &range.finishes {
        let at = |name: &str| format!("finish.{}.{name}", finish.key);
        let digits = finish.colour.strip_prefix('#').filter(|digits| digits.len() == 6);
        if !digits.is_some_and(|digits| digits.bytes().all(|byte| byte.is_ascii_hexdigit())) {
            out.push((at("colour"), Wrong::Colour(finish.colour.chars().take(20).collect())));
        }
        bounds(out, at("coats_before"), finish.coats_before, 0.0, 20.0);
        bounds(out, at("coats_after"), finish.coats_after, 0.0, 20.0);
        bounds(out, at("wet_film_um"), finish.wet_film_um, 0.0, 1000.0);
        bounds(out, at("volume_solids_percent"), finish.volume_solids_percent, 0.0, 100.0);
        bounds(out, at("film_kg_per_m3"), finish.film_kg_per_m3.in_kg_per_m3(), 100.0, 5000.0);
        bounds(out, at("loss_per_mille"), finish.loss_per_mille, 0.0, 900.0);
        money(out, at("litre_minor"), finish.litre_minor);
    }
}

fn holes(out: &mut Problems, range: &Range) {
    for hole in &range.holes {
        let at = |name: &str| format!("hole.{}.{name}", hole.key);
        bounds(out, at("rise_mm"), hole.rise_mm.in_mm(), 0.0, 2000.0);
        let (long, high) = hole.shape.extent();
        bounds(out, at("shape"), high.in_mm(), 5.0, 400.0);
        if let HoleShape::Slotted { .. } = hole.shape {
            bounds(out, at("shape"), long.in_mm(), high.in_mm(), 1000.0);
        }
    }
    for plug in &range.plugs {
        let at = |name: &str| format!("plug.{}.{name}", plug.key);
        bounds(out, at("width_mm"), plug.width_mm.in_mm(), 1.0, 300.0);
        bounds(out, at("height_mm"), plug.height_mm.in_mm(), 1.0, 300.0);
        bounds(out, at("bend_mm"), plug.bend_mm.unwrap_or_default().in_mm(), 0.0, 500.0);
    }
}

fn devices(out: &mut Problems, range: &Range) {
    for device in &range.devices {
        for (name, value, least) in [
            ("width_mm", device.width_mm, 10.0),
            ("height_mm", device.height_mm, 10.0),
            ("depth_mm", device.depth_mm, 10.0),
            ("air_beside_mm", device.air_beside_mm, 0.0),
            ("air_over_mm", device.air_over_mm, 0.0),
            ("plug_behind_mm", device.plug_behind_mm, 0.0),
        ] {
            bounds(out, format!("device.{}.{name}", device.key), value.in_mm(), least, 2000.0);
        }
    }
}

fn check_model(out: &mut Problems, range: &Range, model: &Model) {
    let at = |name: &str| format!("model.{}.{name}", model.key);
    let board = |key: &Key, wanted: Use| range.board(key).is_some_and(|board: &Board| board.uses.contains(&wanted));
    if !board(&model.body, Use::Body) {
        out.push((at("body"), Wrong::Unknown { what: "board", key: model.body.clone() }));
    }
    length(out, at("backs"), model.backs.len(), 1, 64);
    for (number, key) in (1..).zip(&model.backs) {
        if !board(key, Use::Back) {
            out.push((at(&format!("backs.{number}")), Wrong::Unknown { what: "board", key: key.clone() }));
        }
    }
    length(out, at("finishes"), model.finishes.len(), 1, 64);
    for (number, key) in (1..).zip(&model.finishes) {
        if range.finish(key).is_none() {
            out.push((at(&format!("finishes.{number}")), Wrong::Unknown { what: "finish", key: key.clone() }));
        }
    }
    for (name, limits) in [("width_mm", model.width_mm), ("height_mm", model.height_mm), ("depth_mm", model.depth_mm)] {
        sizes(out, &at(name), limits);
    }
    length(out, at("corner_radii_mm"), model.corner_radii_mm.len(), 1, 16);
    for (number, radius) in (1..).zip(&model.corner_radii_mm) {
        bounds(out, at(&format!("corner_radii_mm.{number}")), *radius, 0.0, 300.0);
    }
    bounds(out, at("bays.least"), model.bays.least, 1.0, f64::from(model.bays.most));
    #[expect(clippy::cast_precision_loss, reason = "a small constant")]
    bounds(out, at("bays.most"), model.bays.most, 1.0, BAYS_MOST as f64);
    bounds(out, at("shelves_most"), model.shelves_most, 0.0, 12.0);
    let (least, most) = (usize::from(model.bays.least), usize::from(model.bays.most));
    length(out, at("start_bays"), model.start_bays.len(), least, most.min(BAYS_MOST).max(least));
    for (number, bay) in (1..).zip(&model.start_bays) {
        bounds(out, at(&format!("start_bays.{number}.share")), bay.share, 1.0, 9.0);
        if let Some(hole) = bay.hole.as_ref().filter(|hole| range.hole(&hole.kind).is_none()) {
            let wrong = Wrong::Unknown { what: "hole", key: hole.kind.clone() };
            out.push((at(&format!("start_bays.{number}.hole.kind")), wrong));
        }
        if let Some(key) = bay.device.as_ref().filter(|key| range.device(key).is_none()) {
            let wrong = Wrong::Unknown { what: "device", key: key.clone() };
            out.push((at(&format!("start_bays.{number}.device")), wrong));
        }
    }
    bounds(out, at("shelf_load_kg_per_m2"), model.shelf_load_kg_per_m2.in_kg_per_m2(), 0.0, 2000.0);
    bounds(out, at("top_load_kg_per_m2"), model.top_load_kg_per_m2.in_kg_per_m2(), 0.0, 2000.0);
}

fn sizes(out: &mut Problems, path: &str, limits: DimRange) {
    let before = out.len();
    let (least, most) = (f64::from(limits.least), f64::from(limits.most));
    bounds(out, format!("{path}.least"), limits.least, 100.0, 6000.0);
    bounds(out, format!("{path}.most"), limits.most, least, 6000.0);
    bounds(out, format!("{path}.step"), limits.step, 0.1, 1000.0);
    if least <= most {
        bounds(out, format!("{path}.start"), limits.start, least, most);
    }
    if out.len() > before {
        return;
    }
    let count = (limits.most.in_tenths() - limits.least.in_tenths()) / limits.step.in_tenths();
    if count > SIZES_MOST {
        let least = (most - least) / f64::from(SIZES_MOST);
        out.push((format!("{path}.step"), Wrong::Bounds { found: limits.step.into(), least, most: 1000.0 }));
    }
    if !limits.holds(limits.start) {
        let wrong = Wrong::OffStep { found: limits.start.into(), step: limits.step.into(), least };
        out.push((format!("{path}.start"), wrong));
    }
}

fn build(out: &mut Problems, range: &Range) {
    let build = &range.build;
    let (least, most) = (build.clearance_least_mm.in_mm(), build.clearance_most_mm.in_mm());
    bounds(out, "build.clearance_least_mm", least, 0.0, most);
    bounds(out, "build.clearance_most_mm", most, 0.0, 2.0);
    bounds(out, "build.clearance_mm", build.clearance_mm.in_mm(), least, most);
    let thickest = range.boards.iter().map(|board| board.thickness().in_mm()).fold(1.0, f64::max);
    let thinnest = range.boards.iter().map(|board| board.thickness().in_mm()).fold(25.0, f64::min);
    for (name, value, least, most) in [
        // The cutter runs in slots as wide as a board, and its reliefs lie two in a tab's end.
        ("cutter_mm", build.cutter_mm, 1.0, thinnest),
        ("ease_mm", build.ease_mm, 0.0, 5.0),
        ("end_inset_mm", build.end_inset_mm, 3.0, 200.0),
        ("front_inset_mm", build.front_inset_mm, 0.0, 200.0),
        ("rear_inset_mm", build.rear_inset_mm, 0.0, 200.0),
        ("chase_mm", build.chase_mm, 0.0, 200.0),
        // Wood beyond the last lap, and a foot that reaches under stiles and lower pivots.
        ("back_ear_mm", build.back_ear_mm, 3.0, build.end_inset_mm.in_mm()),
        ("foot_recess_mm", build.foot_recess_mm, 0.0, build.front_inset_mm.in_mm()),
        ("tab_mm", build.tab_mm, build.cutter_mm.in_mm() * 2.0, 300.0),
        ("tab_inset_mm", build.tab_inset_mm, 0.0, 300.0),
        ("tab_short_mm", build.tab_short_mm, 0.0, 5.0),
        ("stile_mm", build.stile_mm, 20.0, 200.0),
        ("pivot_inset_mm", build.pivot_inset_mm, thickest / 2.0, 100.0),
        ("pivot_clearance_mm", build.pivot_clearance_mm, 0.0, 5.0),
        ("leaf_gap_mm", build.leaf_gap_mm, 0.0, 20.0),
        ("leaf_rounding_mm", build.leaf_rounding_mm, 0.0, 50.0),
        ("ligament_mm", build.ligament_mm, 0.0, 200.0),
        ("sheet_trim_mm", build.sheet_trim_mm, 0.0, 100.0),
    ] {
        bounds(out, format!("build.{name}"), value.in_mm(), least, most);
    }
    bounds(out, "build.shelf_slot_per_mille", build.shelf_slot_per_mille, 50.0, 900.0);
    let strength = &range.strength;
    for (name, value, least, most) in [
        ("sag_span_over", strength.sag_span_over, 50.0, 2000.0),
        ("creep_factor", strength.creep_factor, 0.0, 5.0),
        ("lasting_share", strength.lasting_share, 0.0, 1.0),
        ("leaf_narrowest", strength.leaf_narrowest, 0.0, strength.leaf_widest),
        ("leaf_widest", strength.leaf_widest, 0.0, 20.0),
        ("leaf_least_mm", strength.leaf_least_mm.in_mm(), 0.0, 2000.0),
        ("leaf_most_kg", strength.leaf_most_kg.in_kg(), 0.1, 200.0),
        ("bay_least_mm", strength.bay_least_mm.in_mm(), 0.0, 2000.0),
        ("row_least_mm", strength.row_least_mm.in_mm(), 0.0, 2000.0),
        ("lasting_strength", strength.lasting_strength, 0.05, 1.0),
        ("material_factor", strength.material_factor, 1.0, 5.0),
        ("buckling_factor", strength.buckling_factor, 1.0, 100.0),
        ("push_n", strength.push_n.in_newton(), 0.0, 5000.0),
        ("lean_height_over", strength.lean_height_over, 10.0, 2000.0),
        ("tip_factor", strength.tip_factor, 1.0, 10.0),
        ("carpet_mm", strength.carpet_mm.in_mm(), 0.0, 100.0),
    ] {
        bounds(out, format!("strength.{name}"), value, least, most);
    }
    bounds(out, "fit.cut_mm", range.fit.cut_mm.in_mm(), 0.0, 2.0);
    bounds(out, "screen.kg_per_m2", range.screen.kg_per_m2.in_kg_per_m2(), 0.0, 500.0);
    bounds(out, "screen.foot_mm", range.screen.foot_mm.in_mm(), 10.0, 1000.0);
    let one = range.handling.one_person_kg.in_kg();
    bounds(out, "handling.one_person_kg", one, 0.1, 200.0);
    bounds(out, "handling.one_person_longest_mm", range.handling.one_person_longest_mm.in_mm(), 100.0, 10_000.0);
    bounds(out, "handling.two_people_kg", range.handling.two_people_kg.in_kg(), one, 400.0);
}

fn rates(out: &mut Problems, range: &Range) {
    let rates = &range.rates;
    bounds(out, "rates.sheet_yield_per_mille", rates.sheet_yield_per_mille, 100.0, 1000.0);
    bounds(out, "rates.feed_mm_per_min", rates.feed_mm_per_min, 10.0, 100_000.0);
    bounds(out, "rates.passes", rates.passes, 1.0, 50.0);
    for (name, value) in [
        ("sheet_minutes", rates.sheet_minutes),
        ("sand_minutes_per_m2", rates.sand_minutes_per_m2),
        ("coat_minutes_per_m2", rates.coat_minutes_per_m2),
        ("edge_minutes_per_m", rates.edge_minutes_per_m),
        ("pack_minutes_per_part", rates.pack_minutes_per_part),
    ] {
        bounds(out, format!("rates.{name}"), value, 0.0, 600.0);
    }
    for (name, value) in [
        ("machine_hour_minor", rates.machine_hour_minor),
        ("spray_hour_minor", rates.spray_hour_minor),
        ("bench_hour_minor", rates.bench_hour_minor),
        ("pack_minor_per_m2", rates.pack_minor_per_m2),
    ] {
        money(out, format!("rates.{name}"), value);
    }
    bounds(out, "rates.overhead_per_mille", rates.overhead_per_mille, 0.0, 5000.0);
    bounds(out, "rates.margin_per_mille", rates.margin_per_mille, 0.0, 900.0);
    bounds(out, "rates.tax_per_mille", rates.tax_per_mille, 0.0, 1000.0);
}

fn times(out: &mut Problems, range: &Range) {
    for stage in &range.stages {
        bounds(out, format!("stage.{}.minutes_per_day", stage.key), stage.minutes_per_day, 1.0, 100_000.0);
        bounds(out, format!("stage.{}.wait_days", stage.key), stage.wait_days, 0.0, 365.0);
    }
    let calendar = &range.calendar;
    length(out, "calendar.weekdays", calendar.weekdays.len(), 1, 7);
    for (number, day) in (1..).zip(&calendar.weekdays) {
        bounds(out, format!("calendar.weekdays.{number}"), *day, 1.0, 7.0);
    }
    length(out, "calendar.closed", calendar.closed.len(), 0, 1000);
    length(out, "calendar.shutdowns", calendar.shutdowns.len(), 0, 200);
    for (number, shutdown) in (1..).zip(&calendar.shutdowns) {
        if !(0..=366).contains(&shutdown.from.days_until(shutdown.to)) {
            out.push((format!("calendar.shutdowns.{number}"), Wrong::Stretch));
        }
    }
    for carrier in &range.carriers {
        let at = |name: &str| format!("carrier.{}.{name}", carrier.key);
        bounds(out, at("package_most_kg"), carrier.package_most_kg.in_kg(), 1.0, 10_000.0);
        bounds(out, at("longest_mm"), carrier.longest_mm.in_mm(), 100.0, 100_000.0);
        bounds(out, at("length_and_girth_mm"), carrier.length_and_girth_mm.in_mm(), 100.0, 100_000.0);
        bounds(out, at("days"), carrier.days, 0.0, 365.0);
        money(out, at("package_minor"), carrier.package_minor);
    }
}
