//! The door leaf: where it hangs, and where a finger opens it.

use crate::cabinet::layout::{BaySpan, Layout};
use crate::cabinet::swing::{hinge_gap, rounding};
use crate::choice::Hung;
use crate::geometry::outline::Point;
use crate::range::Build;
use crate::units::quantity::Length;

/// A leaf's edges and pivot axis in the case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leaf {
    /// Left edge.
    pub left: Length,
    /// Right edge.
    pub right: Length,
    /// Lower edge.
    pub under: Length,
    /// Upper edge.
    pub over: Length,
    /// The pivots' axis.
    pub axis: Length,
    /// How far the stop behind it reaches from its free edge.
    pub covered: Length,
}

/// So much wood is left round a finger hole, whatever the range asks.
const LEAST_WOOD: Length = Length::mm(1.0);

/// The leaf of a bay.
pub fn of(span: &BaySpan, layout: &Layout, build: &Build, hung: Hung) -> Leaf {
    let (hinge, free) = (hinge_gap(build, layout.body), build.leaf_gap_mm);
    let (left, right) = match hung {
        Hung::Left => (span.opening_left + hinge, span.opening_right - free),
        Hung::Right => (span.opening_left + free, span.opening_right - hinge),
    };
    let axis = match hung {
        Hung::Left => left + build.pivot_inset_mm,
        Hung::Right => right - build.pivot_inset_mm,
    };
    let covered = span.stop.map_or(Length::ZERO, |stop| match hung {
        Hung::Left => right - stop,
        Hung::Right => stop + layout.body - left,
    });
    Leaf { left, right, under: layout.floor + free, over: layout.ceiling - free, axis, covered }
}

impl Leaf {
    /// Centre of the hole by which a finger opens it, in the axes of the leaf: half way up, at the side that is not hung, beside
    /// the stop; `None` where the range has none, or the leaf no room for it.
    pub fn finger_hole(self, build: &Build, thickness: Length, hung: Hung) -> Option<Point> {
        let (width, height, radius) = (self.right - self.left, self.over - self.under, build.finger_hole_mm / 2.0);
        // Wood as thick as the leaf all round: the rounded edge does not count.
        let wood = build.ligament_mm.max(LEAST_WOOD);
        let from_edge = (rounding(build, thickness) + wood).max(self.covered) + radius;
        let across = match hung {
            Hung::Left => width - from_edge,
            Hung::Right => from_edge,
        };
        let room = width >= from_edge * 2.0 && height >= (wood + radius) * 2.0;
        (room && radius > Length::ZERO).then(|| Point::new(across, height / 2.0))
    }
}

#[cfg(test)]
mod sweep;

#[cfg(test)]
mod tests {
    use super::*;

    // Worked: 34 mm in a leaf of 400 × 600 mm, 20 mm of wood beside it and a rounding of 6: 43 mm from the free edge,
    // half way up, beside a stop that reaches over less than that.
    #[test]
    fn a_finger_hole_stands_at_the_free_edge() {
        let mut build = crate::testing::demo().build;
        let behind = |covered, build: &Build, width, hung| {
            let [left, right, under, over, covered] = [100.0, 100.0 + width, 40.0, 640.0, covered].map(Length::mm);
            let hole =
                Leaf { left, right, under, over, axis: left, covered }.finger_hole(build, Length::mm(18.0), hung);
            hole.map(|hole| (hole.u.in_mm(), hole.v.in_mm()))
        };
        let of = |build: &Build, width, hung| behind(22.0, build, width, hung);
        assert_eq!(of(&build, 400.0, Hung::Left), Some((357.0, 300.0)));
        assert_eq!(of(&build, 400.0, Hung::Right), Some((43.0, 300.0)));
        assert_eq!(of(&build, 86.0, Hung::Right), Some((43.0, 300.0)));
        assert_eq!(of(&build, 85.9, Hung::Right), None, "no wood is left beside it");
        // A stop that reaches further moves it: no finger goes into wood.
        assert_eq!(behind(30.0, &build, 400.0, Hung::Right), Some((47.0, 300.0)));
        build.finger_hole_mm = Length::ZERO;
        assert_eq!(of(&build, 400.0, Hung::Left), None);
    }
}
