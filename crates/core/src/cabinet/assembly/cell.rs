//! Convex bodies of which others are made: boxes, and upright prisms where something stands turned.

use smallvec::SmallVec;

use crate::geometry::space::{Block, Prism, Spot};
use crate::units::quantity::Length;

/// Overlaps and gaps below this are none: positions equal on paper differ in their last bits.
pub(super) const SAME_MM: f64 = 1e-6;

/// Whether two stretches have more than an end in common.
pub(super) fn overlaps(a: (f64, f64), b: (f64, f64)) -> bool {
    a.0 + SAME_MM < b.1 && b.0 + SAME_MM < a.1
}

/// One of the three directions of the case, either way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Axis {
    X,
    Y,
    Z,
}

impl Axis {
    pub(super) const ALL: [Self; 3] = [Self::X, Self::Y, Self::Z];
}

/// A box as plain millimetres.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cell {
    pub(super) x: (f64, f64),
    pub(super) y: (f64, f64),
    pub(super) z: (f64, f64),
}

/// A convex polygon in plan, counter-clockwise.
pub(super) type Plan = SmallVec<[(f64, f64); 4]>;

/// A box, or the part of it that lies over a polygon.
#[derive(Clone, Copy, Debug)]
pub(super) struct Convex<'a> {
    pub(super) cell: Cell,
    pub(super) plan: Option<&'a Plan>,
}

impl Cell {
    pub(super) fn of(block: Block) -> Self {
        let Block { from, to } = block;
        let span = |a: Length, b: Length| (a.in_mm(), b.in_mm());
        Self { x: span(from.x, to.x), y: span(from.y, to.y), z: span(from.z, to.z) }
    }

    /// The box round a prism, and its plan.
    pub(super) fn round(prism: &Prism) -> (Self, Plan) {
        let plan: Plan = prism.plan.iter().map(|(x, y)| (x.in_mm(), y.in_mm())).collect();
        let none = (f64::INFINITY, f64::NEG_INFINITY);
        let with = |span: (f64, f64), at: f64| (span.0.min(at), span.1.max(at));
        let (x, y) = plan.iter().fold((none, none), |(x, y), at| (with(x, at.0), with(y, at.1)));
        (Self { x, y, z: (prism.under.in_mm(), prism.over.in_mm()) }, plan)
    }

    pub(super) fn along(self, axis: Axis) -> (f64, f64) {
        match axis {
            Axis::X => self.x,
            Axis::Y => self.y,
            Axis::Z => self.z,
        }
    }

    pub(super) fn moved(self, by: Spot) -> Self {
        let moved = |(low, high): (f64, f64), by: Length| (low + by.in_mm(), high + by.in_mm());
        Self { x: moved(self.x, by.x), y: moved(self.y, by.y), z: moved(self.z, by.z) }
    }

    /// What it has in common with another; nothing if they only touch.
    pub(super) fn within(self, other: Self) -> Option<Self> {
        let both = |a: (f64, f64), b: (f64, f64)| (a.0.max(b.0), a.1.min(b.1));
        self.shares_room(other).then(|| Self {
            x: both(self.x, other.x),
            y: both(self.y, other.y),
            z: both(self.z, other.z),
        })
    }

    pub(super) fn around(self, other: Self) -> Self {
        let span = |a: (f64, f64), b: (f64, f64)| (a.0.min(b.0), a.1.max(b.1));
        Self { x: span(self.x, other.x), y: span(self.y, other.y), z: span(self.z, other.z) }
    }

    /// Along which axes two boxes overlap.
    fn overlaps(self, other: Self) -> [bool; 3] {
        [overlaps(self.x, other.x), overlaps(self.y, other.y), overlaps(self.z, other.z)]
    }

    /// Whether one runs into the other along an axis, wherever they are on it.
    pub(super) fn faces(self, other: Self, axis: Axis) -> bool {
        match axis {
            Axis::X => overlaps(self.y, other.y) && overlaps(self.z, other.z),
            Axis::Y => overlaps(self.x, other.x) && overlaps(self.z, other.z),
            Axis::Z => overlaps(self.x, other.x) && overlaps(self.y, other.y),
        }
    }

    /// How far it has to go along an axis, forwards or not, until it is past the other.
    pub(super) fn far(self, other: Self, (axis, forwards): (Axis, bool)) -> f64 {
        let (own, others) = (self.along(axis), other.along(axis));
        if forwards { others.1 - own.0 } else { own.1 - others.0 }
    }

    pub(super) fn shares_room(self, other: Self) -> bool {
        self.overlaps(other) == [true; 3]
    }

    /// The gaps along an axis of two boxes that face each other; those of what lies in them are no less.
    pub(super) fn gaps(self, other: Self, axis: Axis) -> Gaps {
        let (own, others) = (self.along(axis), other.along(axis));
        let gap = |own: (f64, f64), others: (f64, f64)| {
            if others.1 > own.0 + SAME_MM { (others.0 - own.1).max(0.0) } else { f64::INFINITY }
        };
        Gaps { ahead: gap(own, others), behind: gap(others, own) }
    }

    fn corners(self) -> Plan {
        let Self { x, y, .. } = self;
        [(x.0, y.0), (x.1, y.0), (x.1, y.1), (x.0, y.1)].into_iter().collect()
    }
}

impl Convex<'_> {
    /// Whether two are in the same place somewhere.
    pub(super) fn shares_room(self, other: Self) -> bool {
        self.cell.shares_room(other.cell) && self.lies_over(other)
    }

    /// Whether two overlap in plan.
    pub(super) fn lies_over(self, other: Self) -> bool {
        let boxes = self.cell.overlaps(other.cell);
        let [x, y, _] = boxes;
        if self.plan.is_none() && other.plan.is_none() {
            return x && y;
        }
        let (own, others) = (self.outline(), other.outline());
        x && y && !is_beside(&own, &others) && !is_beside(&others, &own)
    }

    fn outline(self) -> Plan {
        self.plan.cloned().unwrap_or_else(|| self.cell.corners())
    }

    /// The gaps along an axis to another one that it faces.
    pub(super) fn gaps(self, other: Self, axis: Axis) -> Gaps {
        if self.plan.is_none() && other.plan.is_none() {
            return self.cell.gaps(other.cell, axis);
        }
        let swapped = |plan: Plan| -> Plan { plan.iter().map(|(x, y)| (*y, *x)).collect() };
        match axis {
            Axis::X => level(&self.outline(), &other.outline()),
            Axis::Y => level(&swapped(self.outline()), &swapped(other.outline())),
            Axis::Z if self.lies_over(other) => self.cell.gaps(other.cell, axis),
            Axis::Z => Gaps::NONE,
        }
    }
}

/// How far two things may go along an axis until they meet; infinite where nothing is in the way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Gaps {
    /// The one towards larger x, y or z.
    pub(super) ahead: f64,
    /// The other one.
    pub(super) behind: f64,
}

impl Gaps {
    /// Nothing is in the way of anything.
    pub(super) const NONE: Self = Self { ahead: f64::INFINITY, behind: f64::INFINITY };

    /// Whether one of them is less than that of others.
    pub(super) fn has_less_than(self, others: Self) -> bool {
        self.ahead < others.ahead || self.behind < others.behind
    }

    /// Each of them changed.
    pub(super) fn map(self, change: impl Fn(f64) -> f64) -> Self {
        Self { ahead: change(self.ahead), behind: change(self.behind) }
    }

    /// Of each the lesser one.
    pub(super) fn least(self, other: Self) -> Self {
        Self { ahead: self.ahead.min(other.ahead), behind: self.behind.min(other.behind) }
    }

    /// The same as the other one has them.
    pub(super) fn swapped(self) -> Self {
        Self { ahead: self.behind, behind: self.ahead }
    }
}

/// The gaps of two convex polygons along their first axis. At each place across it each of them is a stretch, whose ends are
/// straight lines from corner to corner: gaps are least, and overlaps largest, at a corner of one of them or where the stretch
/// of places that both have ends.
fn level(own: &Plan, others: &Plan) -> Gaps {
    let span = |plan: &Plan| {
        plan.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |span, at| (span.0.min(at.1), span.1.max(at.1)))
    };
    let (a, b) = (span(own), span(others));
    if !overlaps(a, b) {
        return Gaps::NONE;
    }
    let (low, high) = (a.0.max(b.0), a.1.min(b.1));
    let corners = own.iter().chain(others).map(|at| at.1).filter(|at| low < *at && *at < high);
    let (mut ahead, mut behind) = ((f64::INFINITY, false), (f64::INFINITY, false));
    for at in corners.chain([low, high]) {
        let (own, others) = (stretch(own, at), stretch(others, at));
        ahead = (ahead.0.min(others.0 - own.1), ahead.1 || others.1 > own.0 + SAME_MM);
        behind = (behind.0.min(own.0 - others.1), behind.1 || own.1 > others.0 + SAME_MM);
    }
    let gap = |(gap, is_there): (f64, bool)| if is_there { gap.max(0.0) } else { f64::INFINITY };
    Gaps { ahead: gap(ahead), behind: gap(behind) }
}

/// From where to where each side of a polygon goes.
fn sides(plan: &Plan) -> impl Iterator<Item = (&(f64, f64), &(f64, f64))> {
    plan.iter().zip(plan.iter().skip(1).chain(plan.first()))
}

/// From where to where a convex polygon goes along its first axis at a place across it.
fn stretch(plan: &[(f64, f64)], at: f64) -> (f64, f64) {
    let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
    let mut with = |place: f64| (least, most) = (least.min(place), most.max(place));
    let mut before = plan.last();
    for to in plan {
        let from = before.replace(to).unwrap_or(to);
        let (low, high) = (from.1.min(to.1), from.1.max(to.1));
        if at < low || at > high {
            continue;
        }
        if high > low {
            with(from.0 + (to.0 - from.0) * ((at - from.1) / (to.1 - from.1)));
        } else {
            with(from.0);
            with(to.0);
        }
    }
    (least, most)
}

/// Whether a convex polygon holds another one.
pub(super) fn holds(plan: &Plan, other: &Plan) -> bool {
    sides(plan).all(|(from, to)| other.iter().all(|at| left_of(*from, *to, *at) > -SAME_MM))
}

/// How far a place lies to the left of a straight line.
fn left_of(from: (f64, f64), to: (f64, f64), at: (f64, f64)) -> f64 {
    let (x, y) = (to.0 - from.0, to.1 - from.1);
    (x * (at.1 - from.1) - y * (at.0 - from.0)) / libm::hypot(x, y)
}

/// Whether another polygon lies wholly beyond one of the sides of one.
fn is_beside(plan: &Plan, other: &Plan) -> bool {
    sides(plan).any(|(from, to)| other.iter().all(|at| left_of(*from, *to, *at) < SAME_MM))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn prism(corners: &[(f64, f64)], z: (f64, f64)) -> (Cell, Plan) {
        let plan = corners.iter().map(|(x, y)| (Length::mm(*x), Length::mm(*y))).collect();
        Cell::round(&Prism { plan, under: Length::mm(z.0), over: Length::mm(z.1) })
    }

    fn convex((cell, plan): &(Cell, Plan)) -> Convex<'_> {
        Convex { cell: *cell, plan: Some(plan) }
    }

    /// The gaps along x, y and z.
    fn gaps(own: Convex<'_>, other: Convex<'_>) -> [Gaps; 3] {
        Axis::ALL.map(|axis| if own.cell.faces(other.cell, axis) { own.gaps(other, axis) } else { Gaps::NONE })
    }

    // Worked: a square on its corner, (0, 0) to (2, 0), half as wide at y = ±0.5; a box 3 to its right from −0.5 to 0.5.
    #[test]
    fn a_square_on_its_corner_meets_a_box_at_its_corner_and_at_its_flanks() {
        let square = prism(&[(0.0, 0.0), (1.0, -1.0), (2.0, 0.0), (1.0, 1.0)], (0.0, 1.0));
        let flat = |y: (f64, f64)| Convex { cell: Cell { x: (5.0, 6.0), y, z: (0.0, 1.0) }, plan: None };
        let to = |y| gaps(convex(&square), flat(y));
        let ahead = |gap| [Gaps { ahead: gap, ..Gaps::NONE }, Gaps::NONE, Gaps::NONE];
        assert_eq!(to((-0.5, 0.5)), ahead(3.0));
        assert_eq!(to((0.5, 4.0)), ahead(3.5));
        assert_eq!(to((1.0, 4.0)), [Gaps::NONE; 3], "they pass each other");
        assert_eq!(gaps(flat((-0.5, 0.5)), convex(&square)), ahead(3.0).map(Gaps::swapped));
        // Over it: only what lies over each other in plan meets, whatever their boxes do.
        let over = |x: (f64, f64)| Convex { cell: Cell { x, y: (0.6, 1.0), z: (3.0, 4.0) }, plan: None };
        let upwards = |x| gaps(convex(&square), over(x))[2].ahead;
        assert!(upwards((0.0, 0.4)).is_infinite());
        assert!((upwards((0.0, 0.9)) - 2.0).abs() < 1e-9);
    }

    proptest! {
        /// A box that is said to be a prism has the gaps of the box.
        #[test]
        fn a_box_as_a_prism_has_the_gaps_of_a_box(figures in prop::array::uniform12(-6i8..6)) {
            let span = |a: i8, b: i8| (f64::from(a.min(b)), f64::from(a.max(b)) + 1.0);
            let [a, b, c, d, e, f, g, h, i, j, k, l] = figures;
            let own = Cell { x: span(a, b), y: span(c, d), z: span(e, f) };
            let other = Cell { x: span(g, h), y: span(i, j), z: span(k, l) };
            let (own_plan, other_plan) = (own.corners(), other.corners());
            let plain = |cell| Convex { cell, plan: None };
            let expected = gaps(plain(own), plain(other));
            for (one, two) in [(Some(&own_plan), Some(&other_plan)), (Some(&own_plan), None), (None, Some(&other_plan))] {
                let (one, two) = (Convex { cell: own, plan: one }, Convex { cell: other, plan: two });
                prop_assert_eq!(gaps(one, two), expected);
                prop_assert_eq!(one.shares_room(two), plain(own).shares_room(plain(other)));
            }
        }

        /// By a slow twin: moved by a little less than its gap a body shares no room with the other, by a little more it does.
        #[test]
        fn gaps_are_what_moving_finds(angles in prop::array::uniform2(0.0..6.3f64), at in prop::array::uniform2(-9.0..9.0f64)) {
            let turned = |angle: f64, (x, y): (f64, f64)| {
                let (sine, cosine) = (libm::sin(angle), libm::cos(angle));
                let corner = |u: f64, v: f64| (x + u * cosine - v * sine, y + u * sine + v * cosine);
                prism(&[corner(-3.0, -1.0), corner(3.0, -1.0), corner(3.0, 1.0), corner(-3.0, 1.0)], (0.0, 1.0))
            };
            let (own, other) = (turned(angles[0], (0.0, 0.0)), turned(angles[1], (at[0], at[1])));
            prop_assume!(!convex(&own).shares_room(convex(&other)));
            let ahead = gaps(convex(&own), convex(&other)).map(|gaps| gaps.ahead);
            for (axis, step) in [(0, (1.0, 0.0)), (1, (0.0, 1.0))] {
                let moved = |by: f64| turned(angles[0], (step.0 * by, step.1 * by));
                if ahead[axis].is_finite() {
                    prop_assert!(!convex(&moved(ahead[axis] - 1e-3)).shares_room(convex(&other)));
                    // A corner that only just meets another one does so a little further on.
                    let beyond = |by: f64| convex(&moved(ahead[axis] + by)).shares_room(convex(&other));
                    let meets = beyond(1e-3) || (1..100).any(|by| beyond(f64::from(by) * 0.1));
                    prop_assert!(meets, "{ahead:?}");
                } else {
                    prop_assert!((1..400).all(|by| !convex(&moved(f64::from(by) * 0.05)).shares_room(convex(&other))));
                }
            }
        }
    }
}
