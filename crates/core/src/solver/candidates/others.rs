//! Other answers than the present one, those first that a person would rather have.

use crate::choice::{Bay, Fill, Hole};
use crate::range::{Model, Range};
use crate::solver::fills;
use crate::units::quantity::Dim;
use crate::units::short;

/// All places but the present one, the nearest first; they come in their order.
pub(super) fn nearest(places: impl Iterator<Item = i32>, now: i32) -> Vec<i32> {
    let (below, above): (Vec<i32>, Vec<i32>) = places.filter(|place| *place != now).partition(|place| *place < now);
    let mut nearest = Vec::with_capacity(below.len() + above.len());
    let mut above = above.into_iter().peekable();
    for low in below.into_iter().rev() {
        let nearer = || above.next_if(|high| high.abs_diff(now) < low.abs_diff(now));
        nearest.extend(core::iter::from_fn(nearer));
        nearest.push(low);
    }
    nearest.extend(above);
    nearest
}

/// Other fit-outs: the same kind first, then none, then the rest.
pub(super) fn fill_candidates(model: &Model, now: Fill) -> Vec<Fill> {
    let rank = |fill: &Fill| match (now, fill) {
        (Fill::Shelves(now), Fill::Shelves(count)) => (0, now.abs_diff(*count)),
        (Fill::Leaf(_), Fill::Leaf(_)) => (0, 0),
        (_, Fill::Open) => (1, 0),
        (_, Fill::Shelves(count)) => (2, *count),
        (_, Fill::Leaf(_)) => (3, 0),
    };
    let mut candidates: Vec<Fill> = fills(model).filter(|fill| *fill != now).collect();
    short::sort(&mut candidates, rank);
    candidates
}

/// Other holes: the same kind in the middle, the other kinds where it is and in the middle, then none.
pub(super) fn hole_candidates(range: &Range, bay: &Bay) -> Vec<Option<Hole>> {
    let middle = Dim::mm(0);
    let Some(now) = &bay.hole else {
        return range.holes.iter().map(|kind| Some(Hole { kind: kind.key.clone(), offset_mm: middle })).collect();
    };
    let places: &[Dim] = if now.offset_mm == middle { &[middle] } else { &[now.offset_mm, middle] };
    let own = (now.offset_mm != middle).then(|| Some(Hole { kind: now.kind.clone(), offset_mm: middle }));
    let others = range.holes.iter().filter(|kind| kind.key != now.kind);
    let others =
        others.flat_map(|kind| places.iter().map(|place| Some(Hole { kind: kind.key.clone(), offset_mm: *place })));
    own.into_iter().chain(others).chain([None]).collect()
}
