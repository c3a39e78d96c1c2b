//! Rigid bodies, and when one is past another.

use super::cell::{Axis, Cell, Convex, Plan, SAME_MM, holds, overlaps};
use super::direction::Direction;
use super::solid::Solids;
use crate::geometry::space::{Block, Spot};
use crate::units::quantity::Length;

/// A rigid body: a union of boxes and upright prisms.
#[derive(Clone, Debug)]
pub struct Body {
    /// The boxes, then those round the prisms.
    pub(super) cells: Vec<Cell>,
    /// The plans of the last of them.
    plans: Vec<Plan>,
    /// The box round each so many of them.
    groups: Vec<Cell>,
    pub(super) hull: Option<Cell>,
}

/// So many neighbours are passed over at once where nothing of them is near.
pub(super) const GROUP: usize = 8;

impl Body {
    /// The body of these boxes.
    pub fn of(blocks: impl IntoIterator<Item = Block>) -> Self {
        Self::made(blocks.into_iter().map(Cell::of).collect(), Vec::new())
    }

    /// The body of these boxes and prisms.
    pub fn of_solids(Solids { blocks, prisms }: Solids) -> Self {
        let (round, plans): (Vec<Cell>, Vec<Plan>) = prisms.iter().map(Cell::round).unzip();
        let mut cells: Vec<Cell> = blocks.into_iter().map(Cell::of).collect();
        cells.sort_unstable_by(|a, b| a.x.0.total_cmp(&b.x.0));
        cells.extend(round);
        Self::made(cells, plans)
    }

    fn made(cells: Vec<Cell>, plans: Vec<Plan>) -> Self {
        let around = |cells: &[Cell]| cells.iter().copied().reduce(Cell::around);
        let groups: Vec<Cell> = cells.chunks(GROUP).filter_map(around).collect();
        let hull = around(&groups);
        Self { cells, plans, groups, hull }
    }

    /// What it is made of.
    pub(super) fn pieces(&self) -> impl Iterator<Item = Convex<'_>> {
        self.groups().flat_map(|(_, pieces)| pieces)
    }

    /// The same in groups of neighbours, each with the box round it.
    pub(super) fn groups(&self) -> impl Iterator<Item = (Cell, impl Iterator<Item = Convex<'_>>)> {
        let boxes = self.cells.len() - self.plans.len();
        self.groups.iter().zip(self.cells.chunks(GROUP)).enumerate().map(move |(group, (around, cells))| {
            let pieces = cells.iter().enumerate().map(move |(at, cell)| {
                let plan = (group * GROUP + at).checked_sub(boxes).and_then(|at| self.plans.get(at));
                Convex { cell: *cell, plan }
            });
            (*around, pieces)
        })
    }

    /// How far it has to go along a direction until its bounding box is past that of another body in
    /// its way; nothing if the other one is not. Upwards or downwards, where what reaches over the other one may leave it
    /// beside the rest, until each of its boxes that lies over it is, and it stands astride of it no more.
    pub fn clear_of(&self, other: &Self, direction: Direction) -> Length {
        let (Some(own), Some(others)) = (self.hull, other.hull) else { return Length::ZERO };
        let (axis, _) = direction.axis();
        let beside = |own: Cell| match axis {
            Axis::X => [(own.y, others.y), (own.z, others.z)],
            Axis::Y => [(own.x, others.x), (own.z, others.z)],
            Axis::Z => [(own.x, others.x), (own.y, others.y)],
        };
        let is_beside = |own: Cell| beside(own).into_iter().all(|(own, others)| overlaps(own, others));
        let far = |own: Cell| own.far(others, direction.axis());
        if !is_beside(own) {
            return Length::ZERO;
        }
        if axis != Axis::Z {
            return Length::mm(far(own).max(0.0));
        }
        // Neighbours that stand turned pass each other where the boxes round them do not.
        if !self.footprint(own).lies_over(other.footprint(others)) {
            return Length::ZERO;
        }
        let furthest = |of: &dyn Fn(Cell) -> bool| {
            self.cells.iter().copied().filter(|cell| of(*cell)).map(far).fold(0.0, f64::max)
        };
        // Whichever side comes past it first.
        let astride = |across: Axis, level: Axis| {
            let is_level = |cell: Cell| overlaps(cell.along(level), others.along(level));
            let before = furthest(&|cell| is_level(cell) && cell.along(across).1 <= others.along(across).0 + SAME_MM);
            let behind = furthest(&|cell| is_level(cell) && cell.along(across).0 + SAME_MM >= others.along(across).1);
            before.min(behind)
        };
        Length::mm(furthest(&is_beside).max(astride(Axis::X, Axis::Y)).max(astride(Axis::Y, Axis::X)))
    }

    /// The same for all of some bodies.
    pub(super) fn clear_of_all<'a>(&self, others: impl Iterator<Item = &'a Self>, direction: Direction) -> Length {
        others.fold(Length::ZERO, |most, other| {
            // It is clear of a body where the box round it is clear of the one round the other.
            let far = self.hull.zip(other.hull).map_or(0.0, |(own, others)| own.far(others, direction.axis()));
            if far > most.in_mm() { most.max(self.clear_of(other, direction)) } else { most }
        })
    }

    /// The box round it, over the one of its plans that holds all others if it is made of prisms alone.
    fn footprint(&self, hull: Cell) -> Convex<'_> {
        let is_turned = self.plans.len() == self.cells.len();
        let holds = |plan: &&Plan| is_turned && self.plans.iter().all(|other| holds(plan, other));
        Convex { cell: hull, plan: self.plans.iter().find(holds) }
    }

    /// How high it reaches.
    pub(super) fn top(&self) -> Length {
        self.hull.map_or(Length::ZERO, |hull| Length::mm(hull.z.1))
    }

    /// The same body elsewhere.
    pub(super) fn moved(&self, by: Spot) -> Self {
        let cells = self.cells.iter().map(|cell| cell.moved(by)).collect();
        let moved = |plan: &Plan| plan.iter().map(|(x, y)| (x + by.x.in_mm(), y + by.y.in_mm())).collect();
        Self::made(cells, self.plans.iter().map(moved).collect())
    }

    /// What of its boxes lies within a box; its prisms are left out.
    pub(super) fn within(&self, block: Block) -> Self {
        let window = Cell::of(block);
        let boxes = self.cells.len() - self.plans.len();
        Self::made(self.cells.iter().take(boxes).filter_map(|cell| cell.within(window)).collect(), Vec::new())
    }

    /// The least distances along `first`, up to `most`, at which the body may turn: from there on nothing of the
    /// others is in its way along `last`.
    ///
    /// A box of it that goes along `first` is in the way of another along `last` while both overlap along `first`: over
    /// an open interval of distances. It may turn at the distances that lie in none of these intervals. A prism counts as the
    /// box round it.
    pub(super) fn turns<'a>(
        &self,
        others: impl Iterator<Item = &'a Self> + Clone,
        (first, last): (Direction, Direction),
        most: Length,
    ) -> Option<(Length, Length)> {
        let (most, turn) = (most.in_mm(), Turn::of(first, last));
        let near = |other: &&Self| {
            let hulls = self.hull.zip(other.hull);
            hulls.and_then(|(own, others)| turn.stopped(own, others)).is_some_and(|(from, _)| from < most)
        };
        let others = others.filter(near);
        let mut at = 0.0;
        loop {
            let (mut next, mut to) = (at, most);
            for other in others.clone() {
                // What is not stopped by the box round some pieces is stopped by none of them.
                let near =
                    self.cells.iter().filter(|own| other.hull.is_some_and(|hull| turn.stopped(**own, hull).is_some()));
                let stopped = near.flat_map(|own| {
                    let groups = other.groups().filter(|(group, _)| turn.stopped(*own, *group).is_some());
                    groups.flat_map(|(_, pieces)| pieces).filter_map(|piece| turn.stopped(*own, piece.cell))
                });
                for (from, until) in stopped.filter(|(_, until)| *until > at + SAME_MM) {
                    if from + SAME_MM < at {
                        next = f64::max(next, until);
                    } else {
                        to = f64::min(to, from);
                    }
                }
                if next > most + SAME_MM {
                    return None;
                }
            }
            if next <= at {
                return Some((Length::mm(at), Length::mm(to.max(at))));
            }
            at = next;
        }
    }

    /// Whether two bodies are in the same place somewhere.
    pub fn shares_room(&self, other: &Self) -> bool {
        let apart = self.hull.zip(other.hull).is_none_or(|(own, others)| !own.shares_room(others));
        !apart && self.pieces().any(|piece| other.pieces().any(|other| piece.shares_room(other)))
    }
}

/// A move along one axis that goes on along another.
#[derive(Clone, Copy, Debug)]
struct Turn {
    first: (Axis, bool),
    last: (Axis, bool),
    beside: Axis,
}

impl Turn {
    fn of(first: Direction, last: Direction) -> Self {
        let (first, last) = (first.axis(), last.axis());
        let beside = Axis::ALL.into_iter().find(|axis| *axis != first.0 && *axis != last.0).unwrap_or(first.0);
        Self { first, last, beside }
    }

    /// The distances along the first move, if there are any, between which one box stops another along the last.
    fn stopped(self, own: Cell, other: Cell) -> Option<(f64, f64)> {
        let between = |(axis, forwards): (Axis, bool)| {
            let (own, other) = (own.along(axis), other.along(axis));
            if forwards { (other.0 - own.1, other.1 - own.0) } else { (own.0 - other.1, own.1 - other.0) }
        };
        let (from, until) = between(self.first);
        let is_ahead = between(self.last).1 > SAME_MM;
        (overlaps(own.along(self.beside), other.along(self.beside)) && is_ahead && until > SAME_MM)
            .then_some((from, until))
    }
}
