//! `slotwright fit`: what thickness, films and cutting make of the clearances of a range.

use serde::Serialize;
use slotwright_core::range::{Board, Finish, Key, Range};
use slotwright_core::statics::fit::Clearance;
use slotwright_core::statics::fit::moisture::at_both_ends;
use slotwright_core::units::quantity::Length;

use crate::args::Fit;
use crate::error::FileError;
use crate::inputs;
use crate::output::{self, DIFFERS, GOOD};

mod text;

pub(super) use text::percent;

/// How the joints of each board fit in each finish.
#[derive(Debug, Serialize, schemars::JsonSchema)]
pub(crate) struct FitDocument {
    /// Always `slotwright-fit`.
    format: &'static str,
    /// Version of this format.
    version: u32,
    /// Key of the range.
    range: Key,
    /// The wanted clearance: slot width beyond the coated thickness.
    clearance_mm: Length,
    /// The clearance to use instead, in the middle of the wanted window, where that is another one.
    better_mm: Option<Length>,
    /// Moisture of the wood while parts are cut, in percent of its dry mass.
    made_percent: f64,
    /// The least that it has later.
    dry_percent: f64,
    /// The most.
    damp_percent: f64,
    /// The boards in the order of the range.
    boards: Vec<BoardFit>,
}

#[derive(Debug, Serialize, schemars::JsonSchema)]
struct BoardFit {
    /// Key of the board.
    board: Key,
    /// Thickness that is cut for.
    thickness_mm: Length,
    /// Standard deviation of the eight measured points; nothing if the batch was not measured so.
    deviation_mm: Option<Length>,
    /// Its finishes in the order of the range.
    finishes: Vec<FinishFit>,
}

#[derive(Debug, Serialize, schemars::JsonSchema)]
pub(super) struct FinishFit {
    /// Key of the finish.
    finish: Key,
    /// Width of a slot for one thickness.
    pub(super) slot_mm: Length,
    /// How far a clearance may be off if everything is off at once.
    worst_mm: Length,
    /// How far it is likely to be off: three standard deviations.
    likely_mm: Length,
    /// Share of joints that do not go in, at the worse end of 95 % of all batches.
    pub(super) tight: f64,
    /// Share of joints outside the wanted window, at the worse end of 95 % of all batches.
    pub(super) outside: f64,
    /// Expected share of panels with twelve joints, such as a top, of which one does not go in: they share their thickness.
    any_of_twelve_tight: f64,
    /// The clearance to be expected where the whole unit is as dry as the range says; negative if the joint is pressed.
    dry_mm: Length,
    /// The clearance to be expected where it is as damp; negative if the joint is pressed.
    damp_mm: Length,
    /// Whether more are too tight than the range allows.
    stops: bool,
}

/// Exit code 1 if some finish of a measured board has more joints too tight than the range allows.
pub(super) fn run(asked: &Fit) -> Result<u8, FileError> {
    let range = inputs::measured(inputs::range(asked.range.as_deref())?, &asked.measured)?;
    let build = &range.build;
    let middle = (build.clearance_least_mm + build.clearance_most_mm) / 2.0;
    let boards: Vec<BoardFit> = range.boards.iter().map(|board| fit(&range, board)).collect();
    let stops = boards.iter().flat_map(|board| &board.finishes).any(|finish| finish.stops);
    let document = FitDocument {
        format: "slotwright-fit",
        version: 1,
        range: range.key.clone(),
        clearance_mm: build.clearance_mm,
        better_mm: Some(middle).filter(|middle| (*middle - build.clearance_mm).abs() > Length::mm(0.001)),
        made_percent: range.moisture.made_percent,
        dry_percent: range.moisture.least_percent,
        damp_percent: range.moisture.most_percent,
        boards,
    };
    if asked.json {
        output::document(&document)?;
    } else {
        output::print(text::lines(&range, &document))?;
    }
    Ok(if stops { DIFFERS } else { GOOD })
}

fn fit(range: &Range, board: &Board) -> BoardFit {
    BoardFit {
        board: board.key.clone(),
        thickness_mm: board.thickness(),
        deviation_mm: board.measured_points_mm.as_ref().map(|batch| hundredth(batch.deviation())),
        finishes: range.finishes.iter().map(|finish| FinishFit::of(range, board, finish)).collect(),
    }
}

impl FinishFit {
    pub(super) fn of(range: &Range, board: &Board, finish: &Finish) -> Self {
        let (fit, build) = (Clearance::of(range, board, finish), &range.build);
        let outside = |fit: Clearance| fit.outside(build.clearance_least_mm, build.clearance_most_mm);
        let tight = fit.in_most_batches(Clearance::tight);
        let most = f64::from(range.fit.tight_most_per_mille) / 1000.0;
        let [dry, damp] = at_both_ends(range, board, finish);
        Self {
            finish: finish.key.clone(),
            slot_mm: hundredth(board.thickness() + finish.dry_film() * 2.0 + build.clearance_mm),
            worst_mm: hundredth(fit.worst),
            likely_mm: hundredth(fit.likely()),
            tight: millionth(tight),
            outside: millionth(fit.in_most_batches(outside)),
            any_of_twelve_tight: millionth(fit.any_tight(12)),
            dry_mm: hundredth(dry),
            damp_mm: hundredth(damp),
            stops: board.is_measured() && tight > most,
        }
    }
}

/// To a hundredth of a millimetre, a thousandth being beyond what is measured.
fn hundredth(length: Length) -> Length {
    // Without a sign before zero.
    Length::mm(length.to_hundredth_mm() + 0.0)
}

fn millionth(share: f64) -> f64 {
    (share * 1e6).round() / 1e6
}
