//! The door leaf: where it hangs, and the gap that its swing needs.

use crate::cabinet::layout::{BaySpan, Layout};
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
}

/// So much wood is left round a finger hole, whatever the range asks.
const LEAST_WOOD: Length = Length::mm(1.0);

/// How far the hinge-side corner reaches from the pivot axis while the leaf swings.
///
/// The axis stands `inset` from the edge in the middle of the thickness; the upright edges are
/// rounded with `rounding`. The centre of the rounded corner is (inset − r, t/2 − r) away, and
/// the corner reaches r further; r is at most the inset and half the thickness.
pub fn reach(inset: Length, thickness: Length, rounding: Length) -> Length {
    let (along, across) = (inset - rounding, thickness / 2.0 - rounding);
    Length::mm(libm::hypot(along.in_mm(), across.in_mm())) + rounding
}

/// The rounding of a leaf's upright edges: at most half its thickness and its pivots' inset.
pub fn rounding(build: &Build, thickness: Length) -> Length {
    build.leaf_rounding_mm.min(thickness / 2.0).min(build.pivot_inset_mm)
}

/// The gap at the hinge side: what the swing needs, and never less than the gap wanted all round.
pub fn hinge_gap(build: &Build, thickness: Length) -> Length {
    let beyond = reach(build.pivot_inset_mm, thickness, rounding(build, thickness)) - build.pivot_inset_mm;
    build.leaf_gap_mm.max(beyond + build.leaf_gap_mm / 2.0)
}

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
    Leaf { left, right, under: layout.floor + free, over: layout.ceiling - free, axis }
}

impl Leaf {
    /// Centre of the hole by which a finger opens it, in the axes of the leaf: half way up, at the side that is not hung;
    /// `None` where the range has none, or the leaf no room for it.
    pub fn finger_hole(self, build: &Build, thickness: Length, hung: Hung) -> Option<Point> {
        let (width, height, radius) = (self.right - self.left, self.over - self.under, build.finger_hole_mm / 2.0);
        // Wood as thick as the leaf all round: the rounded edge does not count.
        let wood = build.ligament_mm.max(LEAST_WOOD);
        let from_edge = rounding(build, thickness) + wood + radius;
        let across = match hung {
            Hung::Left => width - from_edge,
            Hung::Right => from_edge,
        };
        let room = width >= from_edge * 2.0 && height >= (wood + radius) * 2.0;
        (room && radius > Length::ZERO).then(|| Point::new(across, height / 2.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Worked: a square corner 16 mm beside and 9 mm before the axis is √(16² + 9²) = 18.357… away.
    #[test]
    fn a_square_corner_reaches_its_diagonal() {
        let reach = reach(Length::mm(16.0), Length::mm(18.0), Length::ZERO);
        assert!((reach.in_mm() - 18.357_559_750_685_82).abs() < 1e-9, "{reach:?}");
    }

    // Worked: 34 mm in a leaf of 400 × 600 mm, 20 mm of wood beside it and a rounding of 6: 43 mm from the free edge,
    // half way up.
    #[test]
    fn a_finger_hole_stands_at_the_free_edge() {
        let mut build = crate::testing::demo().build;
        let of = |build: &Build, width, hung| {
            let [left, right, under, over] = [100.0, 100.0 + width, 40.0, 640.0].map(Length::mm);
            let hole = Leaf { left, right, under, over, axis: left }.finger_hole(build, Length::mm(18.0), hung);
            hole.map(|hole| (hole.u.in_mm(), hole.v.in_mm()))
        };
        assert_eq!(of(&build, 400.0, Hung::Left), Some((357.0, 300.0)));
        assert_eq!(of(&build, 400.0, Hung::Right), Some((43.0, 300.0)));
        assert_eq!(of(&build, 86.0, Hung::Right), Some((43.0, 300.0)));
        assert_eq!(of(&build, 85.9, Hung::Right), None, "no wood is left beside it");
        build.finger_hole_mm = Length::ZERO;
        assert_eq!(of(&build, 400.0, Hung::Left), None);
    }

    /// A fully rounded edge never reaches beyond the edge itself.
    #[test]
    fn a_half_round_edge_reaches_its_inset() {
        let reach = reach(Length::mm(16.0), Length::mm(18.0), Length::mm(9.0));
        assert!((reach.in_mm() - 16.0).abs() < 1e-9, "{reach:?}");
    }
}
