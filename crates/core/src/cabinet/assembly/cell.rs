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

    /// Along how many axes two boxes overlap.
    pub(super) fn overlaps(self, other: Self) -> [bool; 3] {
        [overlaps(self.x, other.x), overlaps(self.y, other.y), overlaps(self.z, other.z)]
    }

    /// Whether one runs into the other along some axis.
    pub(super) fn meets(self, other: Self) -> bool {
        let [x, y, z] = self.overlaps(other);
        (x && (y || z)) || (y && z)
    }

    pub(super) fn shares_room(self, other: Self) -> bool {
        self.overlaps(other) == [true; 3]
    }

    /// The gaps of two boxes; those of what lies in them are no less.
    pub(super) fn gaps(self, other: Self) -> Gaps {
        let [x, y, z] = self.overlaps(other);
        let none = (f64::INFINITY, f64::INFINITY);
        let axis = |faces: bool, own, others| if faces { between(own, others) } else { none };
        let (x, y, z) = (axis(y && z, self.x, other.x), axis(z && x, self.y, other.y), axis(x && y, self.z, other.z));
        Gaps { ahead: [x.0, y.0, z.0], behind: [x.1, y.1, z.1] }
    }

    /// How far two boxes are apart along the only axis along which they do not overlap, if there is one: then nothing in them
    /// meets along another.
    pub(super) fn apart(self, other: Self) -> Option<f64> {
        let gap = |a: (f64, f64), b: (f64, f64)| (b.0 - a.1).max(a.0 - b.1).max(0.0);
        match self.overlaps(other) {
            [false, true, true] => Some(gap(self.x, other.x)),
            [true, false, true] => Some(gap(self.y, other.y)),
            [true, true, false] => Some(gap(self.z, other.z)),
            _ => None,
        }
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

    /// The gaps to another one towards larger x, y and z, and from the other one to it: infinite where nothing is in the way.
    pub(super) fn gaps(self, other: Self) -> Gaps {
        let mut gaps = self.cell.gaps(other.cell);
        if self.plan.is_none() && other.plan.is_none() {
            return gaps;
        }
        let [x, y, z] = self.cell.overlaps(other.cell);
        let (own, others) = (self.outline(), other.outline());
        let swapped = |plan: &Plan| -> Plan { plan.iter().map(|(x, y)| (*y, *x)).collect() };
        if y && z {
            gaps.set(0, level(&own, &others));
        }
        if z && x {
            gaps.set(1, level(&swapped(&own), &swapped(&others)));
        }
        if !self.lies_over(other) {
            gaps.set(2, (f64::INFINITY, f64::INFINITY));
        }
        gaps
    }
}

/// The gaps from one thing to another towards larger x, y and z, and from the other one to it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Gaps {
    /// From the one to the other.
    pub(super) ahead: [f64; 3],
    /// From the other to the one.
    pub(super) behind: [f64; 3],
}

impl Gaps {
    /// Nothing is in the way of anything.
    pub(super) const NONE: Self = Self { ahead: [f64::INFINITY; 3], behind: [f64::INFINITY; 3] };

    fn set(&mut self, axis: usize, (ahead, behind): (f64, f64)) {
        if let (Some(own), Some(others)) = (self.ahead.get_mut(axis), self.behind.get_mut(axis)) {
            (*own, *others) = (ahead, behind);
        }
    }

    fn all(&self) -> impl Iterator<Item = f64> {
        self.ahead.into_iter().chain(self.behind)
    }

    /// Whether one of them is less than that of others.
    pub(super) fn has_less_than(&self, others: &Self) -> bool {
        self.all().zip(others.all()).any(|(own, other)| own < other)
    }

    /// Whether one of them is no more than that.
    pub(super) fn has_within(&self, most: f64) -> bool {
        self.all().any(|gap| gap <= most)
    }

    /// Of each the lesser one.
    pub(super) fn least(self, other: Self) -> Self {
        let both = |a: [f64; 3], b: [f64; 3]| {
            let ([ax, ay, az], [bx, by, bz]) = (a, b);
            [ax.min(bx), ay.min(by), az.min(bz)]
        };
        Self { ahead: both(self.ahead, other.ahead), behind: both(self.behind, other.behind) }
    }
}

/// How far one stretch may go until it meets another that is ahead of it, and the other way round.
fn between(own: (f64, f64), others: (f64, f64)) -> (f64, f64) {
    let gap = |own: (f64, f64), others: (f64, f64)| {
        if others.1 > own.0 + SAME_MM { (others.0 - own.1).max(0.0) } else { f64::INFINITY }
    };
    (gap(own, others), gap(others, own))
}

/// The same for two convex polygons along their first axis. At each place across it each of them is a stretch, whose ends are
/// straight lines from corner to corner: gaps are least, and overlaps largest, at a corner of one of them or where the stretch
/// of places that both have ends.
fn level(own: &Plan, others: &Plan) -> (f64, f64) {
    let span = |plan: &Plan| {
        plan.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |span, at| (span.0.min(at.1), span.1.max(at.1)))
    };
    let (a, b) = (span(own), span(others));
    if !overlaps(a, b) {
        return (f64::INFINITY, f64::INFINITY);
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
    (gap(ahead), gap(behind))
}

/// From where to where a convex polygon goes along its first axis at a place across it.
fn stretch(plan: &Plan, at: f64) -> (f64, f64) {
    let ends = plan.iter().cycle().skip(1);
    plan.iter().zip(ends).fold((f64::INFINITY, f64::NEG_INFINITY), |span, (from, to)| {
        let (low, high) = (from.1.min(to.1), from.1.max(to.1));
        if at < low || at > high {
            return span;
        }
        let with = |span: (f64, f64), place: f64| (span.0.min(place), span.1.max(place));
        if high > low {
            with(span, from.0 + (to.0 - from.0) * ((at - from.1) / (to.1 - from.1)))
        } else {
            with(with(span, from.0), to.0)
        }
    })
}

/// Whether a convex polygon holds another one.
pub(super) fn holds(plan: &Plan, other: &Plan) -> bool {
    let ends = plan.iter().cycle().skip(1);
    plan.iter().zip(ends).all(|(from, to)| other.iter().all(|at| left_of(*from, *to, *at) > -SAME_MM))
}

/// How far a place lies to the left of a straight line.
fn left_of(from: (f64, f64), to: (f64, f64), at: (f64, f64)) -> f64 {
    let (x, y) = (to.0 - from.0, to.1 - from.1);
    (x * (at.1 - from.1) - y * (at.0 - from.0)) / libm::hypot(x, y)
}

/// Whether another polygon lies wholly beyond one of the sides of one.
fn is_beside(plan: &Plan, other: &Plan) -> bool {
    let ends = plan.iter().cycle().skip(1);
    plan.iter().zip(ends).any(|(from, to)| other.iter().all(|at| left_of(*from, *to, *at) < SAME_MM))
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

    // Worked: a square on its corner, (0, 0) to (2, 0), half as wide at y = ±0.5; a box 3 to its right from −0.5 to 0.5.
    #[test]
    fn a_square_on_its_corner_meets_a_box_at_its_corner_and_at_its_flanks() {
        let square = prism(&[(0.0, 0.0), (1.0, -1.0), (2.0, 0.0), (1.0, 1.0)], (0.0, 1.0));
        let flat = |y: (f64, f64)| Convex { cell: Cell { x: (5.0, 6.0), y, z: (0.0, 1.0) }, plan: None };
        let to = |y| convex(&square).gaps(flat(y));
        assert_eq!(to((-0.5, 0.5)), Gaps { ahead: [3.0, f64::INFINITY, f64::INFINITY], ..Gaps::NONE });
        assert_eq!(to((0.5, 4.0)), Gaps { ahead: [3.5, f64::INFINITY, f64::INFINITY], ..Gaps::NONE });
        assert_eq!(to((1.0, 4.0)), Gaps::NONE, "they pass each other");
        let back = flat((-0.5, 0.5)).gaps(convex(&square));
        assert_eq!(back, Gaps { behind: [3.0, f64::INFINITY, f64::INFINITY], ..Gaps::NONE });
        // Over it: only what lies over each other in plan meets, whatever their boxes do.
        let over = |x: (f64, f64)| Convex { cell: Cell { x, y: (0.6, 1.0), z: (3.0, 4.0) }, plan: None };
        let ahead = |x| convex(&square).gaps(over(x)).ahead;
        assert!(ahead((0.0, 0.4)).iter().skip(2).all(|gap| gap.is_infinite()));
        assert!(ahead((0.0, 0.9)).iter().skip(2).all(|gap| (gap - 2.0).abs() < 1e-9));
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
            let expected = plain(own).gaps(plain(other));
            for (one, two) in [(Some(&own_plan), Some(&other_plan)), (Some(&own_plan), None), (None, Some(&other_plan))] {
                let (one, two) = (Convex { cell: own, plan: one }, Convex { cell: other, plan: two });
                prop_assert_eq!(one.gaps(two), expected);
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
            let Gaps { ahead, .. } = convex(&own).gaps(convex(&other));
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
