//! The door leaf: where it hangs, and the gap that its swing needs.

use crate::choice::Hung;
use crate::layout::{BaySpan, Layout};
use crate::quantity::Length;
use crate::range::Build;

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

#[cfg(test)]
mod tests {
    use super::*;

    // Worked: a square corner 16 mm beside and 9 mm before the axis is √(16² + 9²) = 18.357… away.
    #[test]
    fn a_square_corner_reaches_its_diagonal() {
        let reach = reach(Length::mm(16.0), Length::mm(18.0), Length::ZERO);
        assert!((reach.in_mm() - 18.357_559_750_685_82).abs() < 1e-9, "{reach:?}");
    }

    /// A fully rounded edge never reaches beyond the edge itself.
    #[test]
    fn a_half_round_edge_reaches_its_inset() {
        let reach = reach(Length::mm(16.0), Length::mm(18.0), Length::mm(9.0));
        assert!((reach.in_mm() - 16.0).abs() < 1e-9, "{reach:?}");
    }
}
