//! Polygons on a strip.

use std::sync::Mutex;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use std::time::Instant;

use serde::Serialize;
use slotwright_core::words;
use slotwright_core::words::tool::Message;
use slotwright_nest::search::Progress;
use slotwright_nest::strip::check::check;
use slotwright_nest::strip::layout::Layout;
use slotwright_nest::strip::point::{Point, Turn};
use slotwright_nest::strip::polygon::Polygon;
use slotwright_nest::strip::problem::{Item, NoStrip, Strip};
use slotwright_nest::strip::search::Search;
use slotwright_nest::strip::shapes::Shapes;

use super::Placement;
use super::instance::{Drawn, DrawnItem};
use crate::error::FileError;

/// The searches beside each other, one a thread.
const SEEDS: [u64; 2] = [1, 2];

/// Between two looks at the clock: some milliseconds.
const EFFORT: u32 = 10_000;

/// The share of the time that is kept for small steps at the end.
const SMALL_STEPS: f64 = 0.25;

/// A search takes over the layout of the other one before that if its own is longer than so many times that.
const FAR_BEHIND: f64 = 1.005;

/// A strip is at most so many units high, and more than a tenth of it: a unit is a power of a tenth of the instance's
/// unit. So numbers with as many decimals as there is room for are exact.
const MOST_UNITS: f64 = 1e10;

/// More decimals are rounded in any case.
const MOST_DECIMALS: i32 = 12;

/// A part where it is placed, in the unit of the instance.
#[derive(Serialize)]
struct Part {
    item: u32,
    x: f64,
    y: f64,
    rotation: u16,
}

/// Places all parts until no placement can be shorter or the time is over.
///
/// # Errors
///
/// A part is too high, or no polygon, or the placement does not pass its check.
pub(super) fn place(path: &str, drawn: &Drawn, until: Instant) -> Result<Placement, FileError> {
    let path = || path.to_owned();
    let units = (0..=MOST_DECIMALS).rev().map(|decimals| 10_f64.powi(decimals));
    let has_room = |scale: &f64| drawn.height > 0.0 && drawn.height * scale <= MOST_UNITS;
    let Some(scale) = units.into_iter().find(has_room) else {
        return Err(FileError::OutOfProportion { path: path() });
    };
    let mut items = Vec::new();
    for (number, item) in (0_u32..).zip(&drawn.items) {
        items.push(made(&path, number, item, scale)?);
    }
    // A strip whose height is not a whole number of units is not made higher.
    let strip = Strip { height: whole(drawn.height * scale + TOLERANCE - 0.5), items };
    let shapes = Shapes::of(&strip).map_err(|no| match no {
        NoStrip::Item { item } => FileError::TooHigh { path: path(), item },
        NoStrip::Bounds => FileError::OutOfProportion { path: path() },
    })?;
    let layout = shortest(&shapes, until);
    check(&layout, &strip).map_err(|fault| FileError::Unsound(fault.to_string()))?;
    let length = words::fixed(real(layout.length) / scale, 3);
    let filled = Message::Percent(&words::fixed(layout.density(&strip) * 100.0, 1)).text();
    let said = Message::OnStrip { length: &length, filled: &filled }.text();
    Ok(Placement { document: document(&layout, scale), said })
}

/// What a number of units may be short of a whole one by the rounding of real numbers.
const TOLERANCE: f64 = 1e-4;

/// An item in whole units.
fn made(path: &dyn Fn() -> String, number: u32, drawn: &DrawnItem, scale: f64) -> Result<Item, FileError> {
    let corners: Vec<Point> =
        drawn.corners.iter().map(|[x, y]| Point::new(whole(x * scale), whole(y * scale))).collect();
    let polygon = Polygon::new(&corners).map_err(|_| FileError::NoPolygon { path: path(), item: number })?;
    let turn = |degrees: &i64| Turn::ALL.into_iter().find(|turn| i64::from(turn.degrees()) == *degrees);
    let turns: Option<Vec<Turn>> = drawn.turns.iter().map(turn).collect();
    match turns {
        Some(turns) if !turns.is_empty() => Ok(Item { polygon, turns, count: drawn.count }),
        _ => Err(FileError::NoTurns { path: path(), item: number }),
    }
}

/// The shortest layout that two searches find side by side, each taking over what the other one is far ahead with.
fn shortest(shapes: &Shapes, until: Instant) -> Layout {
    let now = Instant::now();
    let small_steps = now + until.saturating_duration_since(now).mul_f64(1.0 - SMALL_STEPS);
    let is_over = AtomicBool::new(false);
    let best: Mutex<Option<Layout>> = Mutex::new(None);
    let search = |seed: u64| {
        let mut search = Search::new(shapes, seed);
        share(&mut search, &best, FAR_BEHIND);
        while Instant::now() < until && !is_over.load(Ordering::Relaxed) {
            let is_at_the_end = Instant::now() >= small_steps;
            if is_at_the_end {
                search.finish();
            }
            if search.step(EFFORT) == Progress::Done {
                is_over.store(true, Ordering::Relaxed);
            }
            share(&mut search, &best, if is_at_the_end { 1.0 } else { FAR_BEHIND });
        }
    };
    thread::scope(|scope| {
        for seed in SEEDS {
            scope.spawn(move || search(seed));
        }
    });
    best.into_inner().ok().flatten().unwrap_or_default()
}

/// Tells a shorter layout, or takes it over where one's own is longer than so many times the shortest.
fn share(search: &mut Search<'_>, best: &Mutex<Option<Layout>>, behind: f64) {
    let Ok(mut best) = best.lock() else { return };
    match best.as_ref() {
        Some(shortest) if shortest.length <= search.length() => {
            if real(search.length()) > behind * real(shortest.length) {
                search.adopt(shortest);
            }
        }
        _ => *best = Some(search.best()),
    }
}

#[expect(clippy::cast_possible_truncation, reason = "a cast keeps what is too large at the bound, which is refused")]
fn whole(real: f64) -> i64 {
    real.round() as i64
}

#[expect(clippy::cast_precision_loss, reason = "no length has more than 53 bits")]
fn real(whole: i64) -> f64 {
    whole as f64
}

/// One line a part.
fn document(layout: &Layout, scale: f64) -> String {
    let parts = layout.placed.iter().map(|placed| Part {
        item: placed.item,
        x: real(placed.at.x) / scale,
        y: real(placed.at.y) / scale,
        rotation: placed.turn.degrees(),
    });
    let lines: Vec<String> = parts.map(|part| serde_json::to_string(&part).unwrap_or_default()).collect();
    if lines.is_empty() { "[]\n".into() } else { format!("[\n{}\n]\n", lines.join(",\n")) }
}
