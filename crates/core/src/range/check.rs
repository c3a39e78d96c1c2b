//! Judging a range as a whole: what it refers to is there, and its figures are in proportion.

mod labour;
mod problems;
mod relations;
mod work;

use super::{
    BAYS_MOST, Batch, Board, DimRange, FORMAT, Fill, HoleShape, Key, Model, Range, Use, Wrong, read_by, repeated,
};
use crate::units::money::Money;
use problems::Problems;

/// Values of one size that a model can have: keeps the answer to a change within a frame.
const SIZES_MOST: i32 = 400;

/// Bounds of a plinth's height: laps are cut into half of it. Each height is an answer of its own.
const PLINTH: (f64, f64) = (40.0, 300.0);
const PLINTHS_MOST: i32 = 40;

/// Most shelves that a model can allow in a bay.
const SHELVES_MOST: u8 = 12;

/// Everything wrong with what could be read of a range, with its path.
pub(super) fn check(range: &Range, unread: Vec<String>) -> Vec<(String, Wrong)> {
    judged(range, unread).all()
}

/// What a figure or list may be, whatever else stands in the range.
#[cfg(any(test, feature = "schema"))]
#[derive(Clone, Debug, PartialEq)]
pub struct Bound {
    /// Where it stands: `model.sedge.bays.most`; entries of lists by key or number.
    pub path: String,
    /// What it may be.
    pub limits: Limits,
}

/// What a figure or list may be.
#[cfg(any(test, feature = "schema"))]
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Limits {
    /// A figure from the least to the most.
    Figure(f64, f64),
    /// A list with so many entries.
    Entries(usize, usize),
    /// A list that names nothing twice.
    Distinct,
}

/// Every bound that judging this range looks at.
#[cfg(any(test, feature = "schema"))]
pub(super) fn bounds(range: &Range) -> Vec<Bound> {
    judged(range, Vec::new()).bounds
}

fn judged(range: &Range, unread: Vec<String>) -> Problems {
    let mut out = Problems::new(unread);
    if range.format != FORMAT {
        let wrong = Wrong::Format { found: range.format, known: FORMAT, read_by: read_by(range.format) };
        out.push(("format".into(), wrong));
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
    work::check(&mut out, range);
    labour::check(&mut out, range);
    relations::check(&mut out, range);
    out
}

/// A list with as many entries as may be.
fn list(out: &mut Problems, prefix: &str, name: &str, found: usize, least: usize, most: usize) {
    let path = joined(prefix, name);
    #[cfg(any(test, feature = "schema"))]
    out.bounds.push(Bound { path: path.clone(), limits: Limits::Entries(least, most) });
    length(out, path, found, least, most);
}

fn joined(prefix: &str, name: &str) -> String {
    if prefix.is_empty() { name.into() } else { format!("{prefix}.{name}") }
}

fn length(out: &mut Problems, path: String, found: usize, least: usize, most: usize) {
    if found < least || found > most {
        out.push((path, Wrong::Length { found, least, most }));
    }
}

/// A figure with its bounds: its name, what it is, the least and the most.
type Bounded<'a> = (&'a str, f64, f64, f64);

/// Figures of one section.
fn each(out: &mut Problems, prefix: &str, figures: &[Bounded<'_>]) {
    for (name, found, least, most) in figures {
        #[cfg(any(test, feature = "schema"))]
        out.bounds.push(Bound { path: format!("{prefix}.{name}"), limits: Limits::Figure(*least, *most) });
        if !(*least..=*most).contains(found) {
            let wrong = Wrong::Bounds { found: *found, least: *least, most: *most };
            out.push((format!("{prefix}.{name}"), wrong));
        }
    }
}

fn keys(out: &mut Problems, prefix: &str, name: &str, keys: &mut dyn Iterator<Item = &Key>, least: usize) {
    let keys: Vec<&Key> = keys.collect();
    list(out, prefix, name, keys.len(), least, 64);
    for key in repeated(keys.into_iter()) {
        out.push((format!("{}.{key}", joined(prefix, name)), Wrong::Repeated(key.clone())));
    }
}

fn lists(out: &mut Problems, range: &Range) {
    keys(out, "", "board", &mut range.boards.iter().map(|board| &board.key), 1);
    keys(out, "", "finish", &mut range.finishes.iter().map(|finish| &finish.key), 1);
    keys(out, "", "hole", &mut range.holes.iter().map(|hole| &hole.key), 0);
    keys(out, "", "plug", &mut range.plugs.iter().map(|plug| &plug.key), 0);
    keys(out, "", "device", &mut range.devices.iter().map(|device| &device.key), 0);
    keys(out, "", "model", &mut range.models.iter().map(|model| &model.key), 1);
    keys(out, "", "stage", &mut range.stages.iter().map(|stage| &stage.key), 1);
    keys(out, "", "carrier", &mut range.carriers.iter().map(|carrier| &carrier.key), 1);
}

fn boards(out: &mut Problems, range: &Range) {
    for board in &range.boards {
        let prefix = format!("board.{}", board.key);
        keys(out, &prefix, "sheet", &mut board.sheets.iter().map(|sheet| &sheet.key), 1);
        each(out, &prefix, &[("nominal_mm", board.nominal_mm.in_mm(), 3.0, 60.0)]);
        if let Some(mean) = board.measured_mm {
            each(out, &prefix, &[("measured_mm", mean.in_mm(), 3.0, 60.0)]);
        }
        list(out, &prefix, "uses", board.uses.len(), 1, 2);
        relations::distinct(out, &prefix, "uses", &mut board.uses.iter().map(|used| used.word().into()));
        for (point, mm) in (1..).zip(board.measured_points_mm.iter().flat_map(Batch::points)) {
            each(out, &prefix, &[(&format!("measured_points_mm.{point}"), mm.in_mm(), 3.0, 60.0)]);
        }
        if let Some(batch) = &board.measured_points_mm {
            list(out, &prefix, "measured_points_mm", batch.points().len(), Batch::POINTS, Batch::POINTS);
        }
        if board.measured_mm.is_some() && board.measured_points_mm.is_some() {
            out.push((format!("{prefix}.measured_mm"), Wrong::Twice("measured_points_mm")));
        }
        each(
            out,
            &prefix,
            &[
                ("density_kg_per_m3", board.density_kg_per_m3.in_kg_per_m3(), 100.0, 1500.0),
                ("e_along_n_per_mm2", board.e_along_n_per_mm2.in_n_per_mm2(), 100.0, 50_000.0),
                ("e_across_n_per_mm2", board.e_across_n_per_mm2.in_n_per_mm2(), 100.0, 50_000.0),
                ("e_plane_across_n_per_mm2", board.e_plane_across_n_per_mm2.in_n_per_mm2(), 100.0, 50_000.0),
                ("shear_modulus_n_per_mm2", board.shear_modulus_n_per_mm2.in_n_per_mm2(), 10.0, 10_000.0),
                ("planar_shear_modulus_n_per_mm2", board.planar_shear_modulus_n_per_mm2.in_n_per_mm2(), 10.0, 10_000.0),
                ("planar_shear_n_per_mm2", board.planar_shear_n_per_mm2.in_n_per_mm2(), 0.1, 500.0),
                ("bearing_n_per_mm2", board.bearing_n_per_mm2.in_n_per_mm2(), 0.1, 500.0),
            ],
        );
        for sheet in &board.sheets {
            let prefix = format!("board.{}.sheet.{}", board.key, sheet.key);
            each(
                out,
                &prefix,
                &[
                    ("length_mm", sheet.length_mm.in_mm(), 300.0, 6000.0),
                    ("width_mm", sheet.width_mm.in_mm(), 300.0, 6000.0),
                ],
            );
            money(out, &prefix, "price_minor", sheet.price_minor);
        }
    }
}

/// An amount of a range: not negative, and small enough that no order overflows.
fn money(out: &mut Problems, prefix: &str, name: &str, amount: Money) {
    let most = 1_000_000_000;
    #[cfg(any(test, feature = "schema"))]
    out.bounds.push(Bound { path: format!("{prefix}.{name}"), limits: Limits::Figure(0.0, 1e9) });
    if amount.in_minor() < 0 || amount.in_minor() > most {
        let found = f64::from(i32::try_from(amount.in_minor()).unwrap_or(i32::MAX));
        out.push((format!("{prefix}.{name}"), Wrong::Bounds { found, least: 0.0, most: 1e9 }));
    }
}

fn finishes(out: &mut Problems, range: &Range) {
    for finish in &range.finishes {
        let prefix = format!("finish.{}", finish.key);
        let digits = finish.colour.strip_prefix('#').filter(|digits| digits.len() == 6);
        if !digits.is_some_and(|digits| digits.bytes().all(|byte| byte.is_ascii_hexdigit())) {
            out.push((format!("{prefix}.colour"), Wrong::Colour(finish.colour.chars().take(20).collect())));
        }
        each(
            out,
            &prefix,
            &[
                ("coats_before", finish.coats_before.into(), 0.0, 20.0),
                ("coats_after", finish.coats_after.into(), 0.0, 20.0),
                ("wet_film_um", finish.wet_film_um, 0.0, 1000.0),
                ("volume_solids_percent", finish.volume_solids_percent, 0.0, 100.0),
                ("film_kg_per_m3", finish.film_kg_per_m3.in_kg_per_m3(), 100.0, 5000.0),
                ("loss_per_mille", finish.loss_per_mille.into(), 0.0, 900.0),
            ],
        );
        money(out, &prefix, "litre_minor", finish.litre_minor);
    }
}

fn holes(out: &mut Problems, range: &Range) {
    for hole in &range.holes {
        let prefix = format!("hole.{}", hole.key);
        each(out, &prefix, &[("rise_mm", hole.rise_mm.in_mm(), 0.0, 2000.0)]);
        let (long, high) = hole.shape.extent();
        let figures = match hole.shape {
            HoleShape::Round { .. } => vec![("shape.round.diameter_mm", high.in_mm(), 5.0, 400.0)],
            HoleShape::Slotted { .. } => vec![
                ("shape.slotted.height_mm", high.in_mm(), 5.0, 400.0),
                ("shape.slotted.length_mm", long.in_mm(), 5.0, 1000.0),
            ],
        };
        each(out, &prefix, &figures);
    }
    for plug in &range.plugs {
        let prefix = format!("plug.{}", plug.key);
        each(
            out,
            &prefix,
            &[
                ("width_mm", plug.width_mm.in_mm(), 1.0, 300.0),
                ("height_mm", plug.height_mm.in_mm(), 1.0, 300.0),
                ("bend_mm", plug.bend_mm.unwrap_or_default().in_mm(), 0.0, 500.0),
            ],
        );
    }
}

fn devices(out: &mut Problems, range: &Range) {
    for device in &range.devices {
        let prefix = format!("device.{}", device.key);
        for (name, value, least) in [
            ("width_mm", device.width_mm, 10.0),
            ("height_mm", device.height_mm, 10.0),
            ("depth_mm", device.depth_mm, 10.0),
            ("air_beside_mm", device.air_beside_mm, 0.0),
            ("air_over_mm", device.air_over_mm, 0.0),
            ("plug_behind_mm", device.plug_behind_mm, 0.0),
        ] {
            each(out, &prefix, &[(name, value.in_mm(), least, 2000.0)]);
        }
    }
}

fn check_model(out: &mut Problems, range: &Range, model: &Model) {
    let prefix = format!("model.{}", model.key);
    let (boards, finishes) = (out.is_listed("board"), out.is_listed("finish"));
    let board =
        |key: &Key, wanted: Use| !boards || range.board(key).is_some_and(|board: &Board| board.uses.contains(&wanted));
    if !board(&model.body, Use::Body) {
        out.push((format!("{prefix}.body"), Wrong::Unknown { what: "board", key: model.body.clone() }));
    }
    list(out, &prefix, "backs", model.backs.len(), 1, 64);
    for (number, key) in (1..).zip(&model.backs) {
        if !board(key, Use::Back) {
            out.push((format!("{prefix}.backs.{number}"), Wrong::Unknown { what: "board", key: key.clone() }));
        }
    }
    list(out, &prefix, "finishes", model.finishes.len(), 1, 64);
    for (number, key) in (1..).zip(&model.finishes) {
        if finishes && range.finish(key).is_none() {
            out.push((format!("{prefix}.finishes.{number}"), Wrong::Unknown { what: "finish", key: key.clone() }));
        }
    }
    for (name, limits) in [("width_mm", model.width_mm), ("height_mm", model.height_mm), ("depth_mm", model.depth_mm)] {
        sizes(out, &format!("{prefix}.{name}"), limits, (100.0, 6000.0));
    }
    if let Some(limits) = model.plinth_mm {
        sizes(out, &format!("{prefix}.plinth_mm"), limits, PLINTH);
    }
    if let Some(limits) = model.bow_mm {
        bows(out, &format!("{prefix}.bow_mm"), limits);
    }
    list(out, &prefix, "corner_radii_mm", model.corner_radii_mm.len(), 1, 16);
    for (number, radius) in (1..).zip(&model.corner_radii_mm) {
        each(out, &prefix, &[(&format!("corner_radii_mm.{number}"), (*radius).into(), 0.0, 300.0)]);
    }
    #[expect(clippy::cast_precision_loss, reason = "a small constant")]
    each(
        out,
        &prefix,
        &[
            ("bays.least", model.bays.least.into(), 1.0, BAYS_MOST as f64),
            ("bays.most", model.bays.most.into(), 1.0, BAYS_MOST as f64),
            ("shelves_most", model.shelves_most.into(), 0.0, SHELVES_MOST.into()),
            ("stile_mm", model.stile_mm.in_mm(), 20.0, 200.0),
            ("leaves_most", model.leaves_most.into(), 0.0, BAYS_MOST as f64),
        ],
    );
    list(out, &prefix, "start_bays", model.start_bays.len(), 1, BAYS_MOST);
    let (holes, devices) = (out.is_listed("hole"), out.is_listed("device"));
    for (number, bay) in (1..).zip(&model.start_bays) {
        each(out, &prefix, &[(&format!("start_bays.{number}.share"), bay.share.into(), 1.0, 9.0)]);
        if let Fill::Shelves(shelves) = bay.fill {
            let name = format!("start_bays.{number}.fill.shelves");
            each(out, &prefix, &[(&name, shelves.into(), 1.0, SHELVES_MOST.into())]);
        }
        if let Some(hole) = bay.hole.as_ref().filter(|hole| holes && range.hole(&hole.kind).is_none()) {
            let wrong = Wrong::Unknown { what: "hole", key: hole.kind.clone() };
            out.push((format!("{prefix}.start_bays.{number}.hole.kind"), wrong));
        }
        if let Some(key) = bay.device.as_ref().filter(|key| devices && range.device(key).is_none()) {
            let wrong = Wrong::Unknown { what: "device", key: key.clone() };
            out.push((format!("{prefix}.start_bays.{number}.device"), wrong));
        }
    }
    each(
        out,
        &prefix,
        &[
            ("shelf_load_kg_per_m2", model.shelf_load_kg_per_m2.in_kg_per_m2(), 0.0, 2000.0),
            ("top_load_kg_per_m2", model.top_load_kg_per_m2.in_kg_per_m2(), 0.0, 2000.0),
        ],
    );
}

fn sizes(out: &mut Problems, path: &str, limits: DimRange, (low, high): (f64, f64)) {
    let (least, most) = (limits.least.into(), limits.most.into());
    let figures = [("least", least, low, high), ("most", most, low, high)];
    each(out, path, &figures);
    let figures = [("step", limits.step.into(), 0.1, 1000.0), ("start", limits.start.into(), low, high)];
    each(out, path, &figures);
}

/// Square ends are always on offer.
fn bows(out: &mut Problems, path: &str, limits: DimRange) {
    let (least, most, start) = (limits.least.into(), limits.most.into(), limits.start.into());
    each(out, path, &[("least", least, 0.0, 0.0), ("most", most, 0.0, 1000.0)]);
    each(out, path, &[("step", limits.step.into(), 0.1, 1000.0), ("start", start, 0.0, 1000.0)]);
}

/// Steps of a size whose figures are right: not too many, and the start on one of them.
fn steps(out: &mut Problems, path: &str, limits: DimRange, sizes_most: i32) {
    let (least, most) = (f64::from(limits.least), f64::from(limits.most));
    let count = (limits.most.in_tenths() - limits.least.in_tenths()) / limits.step.in_tenths().max(1);
    if count > sizes_most {
        let least = (most - least) / f64::from(sizes_most);
        out.push((format!("{path}.step"), Wrong::Bounds { found: limits.step.into(), least, most: 1000.0 }));
    }
    if !limits.holds(limits.start) {
        let wrong = Wrong::OffStep { found: limits.start.into(), step: limits.step.into(), least };
        out.push((format!("{path}.start"), wrong));
    }
}

#[cfg(test)]
mod tests;
