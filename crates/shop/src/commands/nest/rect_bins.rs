//! Rectangles on equal sheets.

use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use std::time::Instant;

use serde::Serialize;
use slotwright_core::words;
use slotwright_core::words::tool::Message;
use slotwright_nest::bound::bounds;
use slotwright_nest::check::check;
use slotwright_nest::packing::Packing;
use slotwright_nest::problem::{NoRoom, Problem, Worth};
use slotwright_nest::search::{Progress, Search};

use super::Placement;
use crate::error::FileError;

/// The searches beside each other, one a thread.
const SEEDS: [u64; 2] = [1, 2];

/// Between two looks at the clock: some milliseconds.
const EFFORT: u32 = 20_000;

/// A part where it is placed.
#[derive(Serialize)]
struct Part {
    item: u32,
    sheet: u32,
    x: i64,
    y: i64,
    rotated: bool,
}

/// Places all parts until no placement can be better or the time is over.
///
/// # Errors
///
/// A part fits nowhere, or the placement does not pass its check.
pub(super) fn place(path: &str, problem: &Problem, until: Instant) -> Result<Placement, FileError> {
    let path = || path.to_owned();
    let refused = |no: NoRoom| match no {
        NoRoom::Item { item } => FileError::FitsNowhere { path: path(), item },
        NoRoom::Bounds | NoRoom::Sheets { .. } => FileError::OutOfProportion { path: path() },
    };
    let packing = best(problem, until).map_err(refused)?;
    check(&packing, problem).map_err(|fault| FileError::Unsound(fault.to_string()))?;
    let fewest = bounds(problem).map_err(refused)?.fewest();
    let figures = packing.figures(problem);
    #[expect(clippy::cast_precision_loss, reason = "a share to a tenth of a percent")]
    let percent = figures.yield_per_mille() as f64 / 10.0;
    let filled = Message::Percent(&words::fixed(percent, 1)).text();
    let said = Message::Placed { sheets: figures.sheets, fewest, filled: &filled }.text();
    Ok(Placement { document: document(&packing), said })
}

/// The better one of what two searches find side by side.
fn best(problem: &Problem, until: Instant) -> Result<Packing, NoRoom> {
    let is_over = AtomicBool::new(false);
    let search = |seed: u64| {
        let mut search = Search::new(problem, &Worth::default(), seed)?;
        while Instant::now() < until && !is_over.load(Ordering::Relaxed) {
            if search.step(EFFORT) == Progress::Done {
                is_over.store(true, Ordering::Relaxed);
            }
        }
        Ok(search)
    };
    let found: Vec<Result<Search, NoRoom>> = thread::scope(|scope| {
        let threads = SEEDS.map(|seed| scope.spawn(move || search(seed)));
        threads.into_iter().filter_map(|thread| thread.join().ok()).collect()
    });
    let found = found.into_iter().collect::<Result<Vec<Search>, NoRoom>>()?;
    Ok(found.iter().min_by_key(|search| search.net()).map(Search::best).unwrap_or_default())
}

/// One line a part.
fn document(packing: &Packing) -> String {
    let sheets = (0_u32..).zip(&packing.sheets);
    let parts = sheets.flat_map(|(sheet, laid)| {
        laid.parts.iter().map(move |part| Part { item: part.item, sheet, x: part.x, y: part.y, rotated: part.turned })
    });
    let lines: Vec<String> = parts.map(|part| serde_json::to_string(&part).unwrap_or_default()).collect();
    if lines.is_empty() { "[]\n".into() } else { format!("[\n{}\n]\n", lines.join(",\n")) }
}
