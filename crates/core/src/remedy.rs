//! Ways out of a finding: single changes that were tried.

use crate::change::Change;
use crate::choice::{Choice, Fill, Hole};
use crate::finding::{Finding, Question, Severity};
use crate::quantity::Dim;
use crate::range::{DimRange, Model, Range};
use crate::rules::judge_stops;

/// Most ways out that a finding names.
const MOST: usize = 2;
/// Most changes that are tried for all findings of a choice: keeps the answer within a frame.
const TRIES: usize = 160;

/// Gives every finding that stops the order up to two remedies, each of another kind.
///
/// A change is one if after it the finding is gone and no other has come that stops.
pub(crate) fn add(range: &Range, choice: &Choice, findings: &mut [Finding]) {
    let stops: Vec<Finding> = findings.iter().filter(|finding| finding.severity == Severity::Stops).cloned().collect();
    let mut tries = TRIES;
    for finding in findings.iter_mut().filter(|finding| finding.severity == Severity::Stops) {
        for ways in candidates(range, choice, finding.about) {
            if finding.remedies.len() == MOST {
                break;
            }
            let found = ways.into_iter().take_while(|_| {
                let left = tries > 0;
                tries = tries.saturating_sub(1);
                left
            });
            if let Some(way) = found.into_iter().find(|way| mends(range, choice, finding, &stops, way)) {
                finding.remedies.push(way);
            }
        }
    }
}

fn mends(range: &Range, choice: &Choice, finding: &Finding, stops: &[Finding], way: &Change) -> bool {
    let after = judge_stops(range, &choice.with(way, range));
    after.layout.is_some()
        && !after.stops().any(|found| found.is_like(finding))
        && after.stops().all(|found| stops.iter().any(|known| known.is_like(found)))
}

/// Changes worth trying, kind by kind, the least intrusive kind first.
fn candidates(range: &Range, choice: &Choice, about: Question) -> Vec<Vec<Change>> {
    let Some(model) = range.model(&choice.model) else {
        return vec![range.models.iter().map(|model| Change::Model(model.key.clone())).collect()];
    };
    let width = || by_distance(model.width_mm, choice.width_mm, Change::WidthMm);
    let height = || by_distance(model.height_mm, choice.height_mm, Change::HeightMm);
    let depth = || by_distance(model.depth_mm, choice.depth_mm, Change::DepthMm);
    let afresh = || vec![Change::Model(model.key.clone())];
    match about {
        Question::Width => vec![width(), counts(model, choice), afresh()],
        Question::Height => vec![height(), afresh()],
        Question::Depth => vec![depth(), afresh()],
        Question::Bays => vec![counts(model, choice), width(), afresh()],
        Question::Bay(bay) => {
            vec![fills(model, choice, bay), counts(model, choice), shares(bay), width(), height(), afresh()]
        }
        Question::Shares => vec![all_shares(choice), width()],
        Question::Hole(bay) => vec![holes(range, choice, bay), vec![Change::Hole { bay, hole: None }], height()],
        Question::Device(bay) => vec![
            width(),
            shares(bay),
            fills(model, choice, bay),
            depth(),
            height(),
            vec![Change::Device { bay, device: None }],
        ],
        Question::Back => vec![model.backs.iter().cloned().map(Change::Back).collect()],
        Question::Finish => vec![model.finishes.iter().cloned().map(Change::Finish).collect()],
        Question::Corners => vec![model.corner_radii_mm.iter().copied().map(Change::CornerRadiusMm).collect()],
        Question::Model => vec![afresh()],
        Question::Place => vec![vec![Change::Plug(None)]],
    }
}

/// All values of a size, the nearest to the present one first.
fn by_distance(limits: DimRange, now: Dim, change: impl Fn(Dim) -> Change) -> Vec<Change> {
    nearest_first(limits.values(), |value| (i64::from(value.in_tenths()) - i64::from(now.in_tenths())).abs())
        .into_iter()
        .map(change)
        .collect()
}

/// A few things by how far they are.
fn nearest_first<T>(things: impl Iterator<Item = T>, far: impl Fn(&T) -> i64) -> Vec<T> {
    let mut sorted: Vec<T> = Vec::new();
    for thing in things {
        let distance = far(&thing);
        sorted.insert(sorted.partition_point(|known| far(known) <= distance), thing);
    }
    sorted
}

fn counts(model: &Model, choice: &Choice) -> Vec<Change> {
    let now = i64::try_from(choice.bays.len()).unwrap_or(i64::MAX);
    let counts = (model.bays.least..=model.bays.most).filter(|count| i64::from(*count) != now);
    nearest_first(counts, |count| (i64::from(*count) - now).abs()).into_iter().map(Change::BayCount).collect()
}

/// The first bay whose share is none becomes like the others.
fn all_shares(choice: &Choice) -> Vec<Change> {
    (1..=u8::MAX).zip(&choice.bays).flat_map(|(bay, _)| shares(bay)).collect()
}

fn shares(bay: u8) -> Vec<Change> {
    (1..=4).map(|share| Change::Share { bay, share }).collect()
}

/// Fewer shelves first, then none, then more.
fn fills(model: &Model, choice: &Choice, bay: u8) -> Vec<Change> {
    let chosen = usize::from(bay).checked_sub(1).and_then(|at| choice.bays.get(at));
    let now = match chosen.map(|bay| bay.fill) {
        Some(Fill::Shelves(count)) => count,
        _ => 0,
    };
    let fewer = (1..now.min(model.shelves_most.saturating_add(1))).rev().map(Fill::Shelves);
    let more = (now.saturating_add(1)..=model.shelves_most).map(Fill::Shelves);
    fewer.chain([Fill::Open]).chain(more).map(|fill| Change::Fill { bay, fill }).collect()
}

/// The same hole in the middle of its bay, then the other kinds there.
fn holes(range: &Range, choice: &Choice, bay: u8) -> Vec<Change> {
    let chosen = usize::from(bay).checked_sub(1).and_then(|at| choice.bays.get(at)).and_then(|bay| bay.hole.as_ref());
    let own = chosen.map(|hole| hole.kind.clone());
    let kinds = own.into_iter().chain(range.holes.iter().map(|kind| kind.key.clone()));
    kinds.map(|kind| Change::Hole { bay, hole: Some(Hole { kind, offset_mm: Dim::mm(0) }) }).collect()
}
