//! The number by which each answer to a question is told apart from others.

use crate::choice::change::Change;
use crate::choice::{BAYS_MOST, Bowed, Fill, Hole, Hung};
use crate::range::{Key, Range};
use crate::solver::no_good::At;
use crate::units::quantity::Dim;

/// The number of what a key names; −1 for all that the range lacks.
fn number<T>(things: &[T], key: impl Fn(&T) -> &Key, named: &Key) -> i32 {
    let at = things.iter().position(|thing| key(thing) == named);
    at.and_then(|at| i32::try_from(at).ok()).unwrap_or(-1)
}

pub(super) fn board_number(range: &Range, named: &Key) -> i32 {
    number(&range.boards, |board| &board.key, named)
}

pub(super) fn finish_number(range: &Range, named: &Key) -> i32 {
    number(&range.finishes, |finish| &finish.key, named)
}

pub(super) fn device_number(range: &Range, named: Option<&Key>) -> i32 {
    named.map_or(At::NONE, |named| number(&range.devices, |device| &device.key, named))
}

pub(super) fn fill_number(fill: Fill) -> i32 {
    match fill {
        Fill::Open => -3,
        Fill::Shelves(count) => i32::from(count),
        Fill::Leaf(Hung::Left) => -1,
        Fill::Leaf(Hung::Right) => -2,
    }
}

pub(super) fn hole_number(range: &Range, hole: Option<&Hole>) -> i32 {
    let Some(hole) = hole else { return At::NONE };
    // A range has at most a few dozen kinds; places beyond 400 m are the same.
    let kind = number(&range.holes, |kind| &kind.key, &hole.kind) + 1;
    let place = hole.offset_mm.in_tenths().clamp(-(1 << 22), (1 << 22) - 1) + (1 << 22);
    kind.wrapping_shl(23) | place
}

/// None is further than any height: it is an answer like the others.
pub(super) fn plinth_number(plinth: Option<Dim>) -> i32 {
    plinth.map_or(i32::MAX, Dim::in_tenths)
}

/// The number of some shares, with another one for a bay; bays that no model has are left out.
///
/// A share is changed to few others: any larger one is the present one.
pub(super) fn shared(shares: i32, bay: u8, share: u8) -> i32 {
    let at = if usize::from(bay) <= BAYS_MOST { 4 * (u32::from(bay) - 1) } else { return shares };
    shares & !(15 << at) | i32::from(share.min(15)) << at
}

/// The number of which ends are bowed.
pub(super) const fn bowed_number(bowed: Bowed) -> i32 {
    match bowed {
        Bowed::Both => 0,
        Bowed::Left => 1,
        Bowed::Right => 2,
    }
}

/// The number of what a change answers, but for shares: those are numbered together.
pub(super) fn number_of(range: &Range, change: &Change) -> i32 {
    match change {
        Change::BayCount(count) => i32::from(*count),
        Change::Fill { fill, .. } => fill_number(*fill),
        Change::Hole { hole, .. } => hole_number(range, hole.as_ref()),
        Change::Device { device, .. } => device_number(range, device.as_ref()),
        Change::Back(key) => board_number(range, key),
        Change::Finish(key) => finish_number(range, key),
        Change::CornerRadiusMm(radius) => radius.in_tenths(),
        Change::PlinthMm(plinth) => plinth_number(*plinth),
        Change::Bowed(bowed) => bowed_number(*bowed),
        _ => At::NONE,
    }
}
