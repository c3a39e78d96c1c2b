//! Which body stops which, and how far each may go before it does.
//!
//! Directional blocking: body P is stopped by Q along d if P, moved along d, runs into Q.
// Source: R. H. Wilson and J.-C. Latombe, Geometric reasoning about mechanical assembly, Artificial
// Intelligence 71 (1994): directional blocking graphs.

use smallvec::SmallVec;

use super::body::{Body, GROUP};
use super::cell::{Axis, Cell, Gaps};
use super::direction::Direction;
use crate::units::quantity::Length;

/// How far each body may go before it runs into each other one.
#[derive(Clone, Debug)]
pub struct Blocking {
    count: usize,
    /// For each ordered pair of bodies: the gaps towards larger x, y and z; infinite if there is none.
    gaps: Vec<[f64; 3]>,
}

impl Blocking {
    /// Compares all bodies.
    pub fn of(bodies: &[Body]) -> Self {
        Self::as_far_as(bodies, |_| Length::ZERO, Length::mm(f64::MAX))
    }

    /// The same where gaps that are no more than play are none, and those of `reach` and more are left out.
    pub fn as_far_as(bodies: &[Body], play: impl Fn(Direction) -> Length, reach: Length) -> Self {
        let count = bodies.len();
        let mut gaps = vec![[f64::INFINITY; 3]; count * count];
        let mut set = |from: usize, to: usize, found: [f64; 3]| {
            if let Some(known) = gaps.get_mut(from * count + to) {
                *known = found;
            }
        };
        let along = [Direction::Right, Direction::Back, Direction::Up].map(|along| {
            let play = play(along).min(play(along.opposite()));
            Along { axis: along.axis().0, none: play.in_mm(), reach: reach.in_mm() }
        });
        for (at, body) in bodies.iter().enumerate() {
            for (to, other) in bodies.iter().enumerate().skip(at + 1) {
                let found = along.map(|along| along.between(body, other));
                set(at, to, found.map(|gaps| gaps.ahead));
                set(to, at, found.map(|gaps| gaps.behind));
            }
        }
        Self { count, gaps }
    }

    /// How far a body may go along a direction before another stops it; `None` if it never does.
    pub fn travel(&self, body: usize, direction: Direction, other: usize) -> Option<Length> {
        let (axis, forwards) = direction.axis();
        let (from, to) = if forwards { (body, other) } else { (other, body) };
        let [x, y, z] = *self.gaps.get(from * self.count + to)?;
        let gap = match axis {
            Axis::X => x,
            Axis::Y => y,
            Axis::Z => z,
        };
        gap.is_finite().then(|| Length::mm(gap))
    }

    /// Everything that must come along when a body moves that way, itself included: others that stand
    /// within `play` ahead of it, those ahead of them, and so on.
    pub fn moves_with(&self, body: usize, direction: Direction, play: Length) -> Vec<usize> {
        let mut known = vec![false; self.count];
        let mut open = vec![body];
        while let Some(next) = open.pop() {
            let Some(seen) = known.get_mut(next).filter(|seen| !**seen) else { continue };
            *seen = true;
            let ahead = |other: &usize| self.travel(next, direction, *other).is_some_and(|travel| travel <= play);
            open.extend((0..self.count).filter(ahead));
        }
        (0..self.count).filter(|at| known.get(*at) == Some(&true)).collect()
    }

    /// How many bodies there are.
    pub fn count(&self) -> usize {
        self.count
    }
}

/// How gaps are measured.
#[derive(Clone, Copy, Debug)]
pub(super) struct Along {
    /// Along which axis.
    pub(super) axis: Axis,
    /// Up to this a gap is none.
    pub(super) none: f64,
    /// From this on it is infinite.
    pub(super) reach: f64,
}

impl Along {
    /// How far two bodies may go before they meet.
    pub(super) fn between(self, own: &Body, other: &Body) -> Gaps {
        if own.cells.len() <= other.cells.len() { self.least(own, other) } else { self.least(other, own).swapped() }
    }

    /// The same for one of few pieces and one of many.
    fn least(self, own: &Body, other: &Body) -> Gaps {
        let Self { axis, none, reach } = self;
        let mut least = Gaps { ahead: reach, behind: reach };
        let meets =
            |own: Cell, other: Cell, least: Gaps| own.faces(other, axis) && own.gaps(other, axis).has_less_than(least);
        let (Some(hull), Some(others)) = (own.hull, other.hull) else { return Gaps::NONE };
        if !meets(hull, others, least) {
            return Gaps::NONE;
        }
        let near: SmallVec<[_; 2 * GROUP]> = own.pieces().filter(|piece| meets(piece.cell, others, least)).collect();
        let Some(hull) = near.iter().map(|piece| piece.cell).reduce(Cell::around) else { return Gaps::NONE };
        // No pair is nearer than the boxes round all.
        let bound = hull.gaps(others, axis);
        // Most pieces of two plates have nothing to do with each other, and most others are further than those before.
        for (group, pieces) in other.groups() {
            if !meets(hull, group, least) {
                continue;
            }
            for other in pieces {
                let beside = if meets(hull, other.cell, least) { near.as_slice() } else { &[] };
                for piece in beside {
                    if meets(piece.cell, other.cell, least) {
                        let gaps = piece.gaps(other, axis);
                        least = least.least(gaps.map(|gap| if gap <= none { 0.0 } else { gap }));
                    }
                }
            }
            if !bound.has_less_than(least) {
                break;
            }
        }
        least.map(|gap| if gap < reach { gap } else { f64::INFINITY })
    }
}

#[cfg(test)]
mod tests;
