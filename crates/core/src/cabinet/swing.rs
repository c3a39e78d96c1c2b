//! What the swing of a leaf takes: the gaps beside it, and where the stop stands against which it shuts.
//!
//! The stop is an upright strip of the body board behind the free edge, its narrow edge to the front: a push against the leaf
//! goes into it along its depth. It meets the flat of the leaf, behind the rounding of its edge, and keeps a ligament to the
//! upright beside it, so that the slots of both have wood between them in base and top. Of what both let it choose it stands
//! nearest to the upright, where it takes least of the opening.

use crate::range::Build;
use crate::units::quantity::Length;

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

/// From the face of the upright at the free side to the far face of the stop there, where the opening begins so far from that
/// upright.
pub fn stop(build: &Build, thickness: Length, opening: Length) -> Length {
    let flat = opening + build.leaf_gap_mm + rounding(build, thickness);
    let beside = build.ligament_mm + build.clearance_loose_mm;
    beside.max(flat + build.stop_overlap_mm - thickness) + thickness
}

/// What a leaf that stands open at a right angle takes of its opening, at the side where it hangs.
pub fn open(build: &Build, thickness: Length) -> Length {
    hinge_gap(build, thickness) + build.pivot_inset_mm + thickness / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::demo;

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

    // Worked for 18 mm, a gap of 2.5 and a rounding of 6 mm: beside a divider the opening begins 14 mm from its face, and the wood
    // between two slots, 20.3 mm, decides; the leaf's flat begins at 22.5, so it is met over 15.8 mm. Beside an end it begins at
    // 28 mm, and 10 mm are met, from 36.5 on.
    #[test]
    fn a_stop_stands_as_near_to_its_upright_as_wood_and_leaf_let_it() {
        let (build, thick) = (demo().build, Length::mm(18.0));
        for (opening, far) in [(14.0, 38.3), (28.0, 46.5)] {
            let found = stop(&build, thick, Length::mm(opening));
            assert!((found.in_mm() - far).abs() < 1e-9, "{found:?}");
        }
    }
}
