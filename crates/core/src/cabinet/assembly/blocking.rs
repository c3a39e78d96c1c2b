//! Which body stops which, and how far each may go before it does.
//!
//! Directional blocking: body P is stopped by Q along d if P, moved along d, runs into Q.
// Source: R. H. Wilson and J.-C. Latombe, Geometric reasoning about mechanical assembly, Artificial
// Intelligence 71 (1994): directional blocking graphs.

use serde::Serialize;

use super::cell::{Axis, Cell, Convex, Gaps, Plan, SAME_MM, holds, overlaps};
use super::solid::Solids;
use crate::geometry::space::{Block, Spot};
use crate::units::quantity::Length;

/// One of the six directions of the case.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Direction {
    /// Upwards, +z.
    Up,
    /// To the front, −y.
    Forwards,
    /// To the left, −x.
    Left,
    /// To the right, +x.
    Right,
    /// To the rear, +y.
    Back,
    /// Downwards, −z.
    Down,
}

impl Direction {
    /// All six, in the order in which hands prefer to pull.
    pub const ALL: [Self; 6] = [Self::Up, Self::Forwards, Self::Left, Self::Right, Self::Back, Self::Down];

    /// The other way.
    #[must_use]
    pub const fn opposite(self) -> Self {
        match self {
            Self::Up => Self::Down,
            Self::Down => Self::Up,
            Self::Forwards => Self::Back,
            Self::Back => Self::Forwards,
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }

    const fn axis(self) -> (Axis, bool) {
        match self {
            Self::Right => (Axis::X, true),
            Self::Left => (Axis::X, false),
            Self::Back => (Axis::Y, true),
            Self::Forwards => (Axis::Y, false),
            Self::Up => (Axis::Z, true),
            Self::Down => (Axis::Z, false),
        }
    }

    /// Whether it lies along the same line as another.
    pub(super) fn is_along(self, other: Self) -> bool {
        self.axis().0 == other.axis().0
    }

    /// A step of that length along it.
    pub fn step(self, by: Length) -> Spot {
        let zero = Length::ZERO;
        match self {
            Self::Right => Spot::new(by, zero, zero),
            Self::Left => Spot::new(-by, zero, zero),
            Self::Back => Spot::new(zero, by, zero),
            Self::Forwards => Spot::new(zero, -by, zero),
            Self::Up => Spot::new(zero, zero, by),
            Self::Down => Spot::new(zero, zero, -by),
        }
    }
}

/// A rigid body: a union of boxes and upright prisms.
#[derive(Clone, Debug)]
pub struct Body {
    /// The boxes, then those round the prisms.
    cells: Vec<Cell>,
    /// The plans of the last of them.
    plans: Vec<Plan>,
    hull: Option<Cell>,
}

impl Body {
    /// The body of these boxes.
    pub fn of(blocks: impl IntoIterator<Item = Block>) -> Self {
        let cells: Vec<Cell> = blocks.into_iter().map(Cell::of).collect();
        let hull = cells.iter().copied().reduce(Cell::around);
        Self { cells, plans: Vec::new(), hull }
    }

    /// The body of these boxes and prisms.
    pub fn of_solids(Solids { blocks, prisms }: Solids) -> Self {
        let mut body = Self::of(blocks);
        for (cell, plan) in prisms.iter().map(Cell::round) {
            body.cells.push(cell);
            body.plans.push(plan);
            body.hull = Some(body.hull.map_or(cell, |hull| hull.around(cell)));
        }
        body
    }

    /// What it is made of.
    fn pieces(&self) -> impl Iterator<Item = Convex<'_>> {
        let boxes = self.cells.len() - self.plans.len();
        let plans = core::iter::repeat_n(None, boxes).chain(self.plans.iter().map(Some));
        self.cells.iter().zip(plans).map(|(cell, plan)| Convex { cell: *cell, plan })
    }

    /// Those that can meet the bounding box of another body at all.
    fn near<'a>(&'a self, other: &Self) -> impl Iterator<Item = Convex<'a>> {
        let hull = other.hull;
        self.pieces().filter(move |piece| hull.is_some_and(|hull| piece.cell.meets(hull)))
    }

    /// How far it has to go along a direction until its bounding box is past that of another body in
    /// its way; nothing if the other one is not. Upwards or downwards, where what reaches over the other one may leave it
    /// beside the rest, until each of its boxes that lies over it is, and it stands astride of it no more.
    pub fn clear_of(&self, other: &Self, direction: Direction) -> Length {
        let (Some(own), Some(others)) = (self.hull, other.hull) else { return Length::ZERO };
        let (axis, forwards) = direction.axis();
        let beside = |own: Cell| match axis {
            Axis::X => [(own.y, others.y), (own.z, others.z)],
            Axis::Y => [(own.x, others.x), (own.z, others.z)],
            Axis::Z => [(own.x, others.x), (own.y, others.y)],
        };
        let is_beside = |own: Cell| beside(own).into_iter().all(|(own, others)| overlaps(own, others));
        let far = |own: Cell| {
            let (own, others) = (own.along(axis), others.along(axis));
            if forwards { others.1 - own.0 } else { own.1 - others.0 }
        };
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
        let plans = self.plans.iter().map(moved).collect();
        Self { cells, plans, hull: self.hull.map(|hull| hull.moved(by)) }
    }

    /// What of its boxes lies within a box; its prisms are left out.
    pub(super) fn within(&self, block: Block) -> Self {
        let window = Cell::of(block);
        let boxes = self.cells.len() - self.plans.len();
        let cells: Vec<Cell> = self.cells.iter().take(boxes).filter_map(|cell| cell.within(window)).collect();
        let hull = cells.iter().copied().reduce(Cell::around);
        Self { cells, plans: Vec::new(), hull }
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
                let pairs = self.cells.iter().flat_map(|own| other.cells.iter().map(move |other| (*own, *other)));
                let stopped = pairs.filter_map(|(own, other)| turn.stopped(own, other));
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
        let count = bodies.len();
        let mut blocking = Self { count, gaps: vec![[f64::INFINITY; 3]; count * count] };
        let (mut own, mut others) = (Vec::new(), Vec::new());
        for (at, body) in bodies.iter().enumerate() {
            for (to, other) in bodies.iter().enumerate().skip(at + 1) {
                let meet = body.hull.zip(other.hull).is_some_and(|(own, others)| own.meets(others));
                if !meet {
                    continue;
                }
                own.clear();
                own.extend(body.near(other));
                others.clear();
                others.extend(other.near(body));
                let found = gaps(&own, &others);
                blocking.set(at, to, found.ahead);
                blocking.set(to, at, found.behind);
            }
        }
        blocking
    }

    fn set(&mut self, from: usize, to: usize, gaps: [f64; 3]) {
        if let Some(known) = self.gaps.get_mut(from * self.count + to) {
            *known = gaps;
        }
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

/// How far two bodies may go before they meet: the one towards larger x, y and z, and the other one towards it.
pub(super) fn between(own: &Body, other: &Body) -> Gaps {
    let (own, other): (Vec<_>, Vec<_>) = (own.pieces().collect(), other.pieces().collect());
    gaps(&own, &other)
}

/// The least gaps from some pieces to others towards larger x, y and z, and from the others to them.
fn gaps(own: &[Convex<'_>], others: &[Convex<'_>]) -> Gaps {
    let mut least = Gaps::NONE;
    let hull = |pieces: &[Convex<'_>]| pieces.iter().map(|piece| piece.cell).reduce(Cell::around);
    let apart = hull(own).zip(hull(others)).and_then(|(own, others)| own.apart(others));
    for piece in own {
        for other in others {
            // Most pieces of two plates have nothing to do with each other, and most others are further than those before.
            if !piece.cell.meets(other.cell) || !piece.cell.gaps(other.cell).has_less_than(&least) {
                continue;
            }
            least = least.least(piece.gaps(*other));
            // No pair is nearer than the boxes round all of them.
            if apart.is_some_and(|apart| least.has_within(apart)) {
                return least;
            }
        }
    }
    least
}
