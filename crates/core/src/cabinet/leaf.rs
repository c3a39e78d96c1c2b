//! The door leaf: where it hangs, and where a finger opens it.

use crate::cabinet::layout::{BaySpan, Layout};
use crate::cabinet::swing::{hinge_gap, rounding};
use crate::choice::Hung;
use crate::geometry::outline::Point;
use crate::range::{Build, Detent, leans};
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
    /// From the pivots' axis to its free edge.
    pub fn free(self) -> Length {
        (self.right - self.axis).max(self.axis - self.left)
    }

    /// From the pivots' axis to a place so far from its left edge.
    pub fn from_axis(self, across: Length) -> Length {
        (self.left + across - self.axis).abs()
    }

    /// From the pivots' axis to the middle of the stop behind it, and to the nose over it.
    pub fn to_stop(self, body: Length) -> Length {
        self.free() - self.covered + body / 2.0
    }

    /// Width and depth of what is cut off its upper free corner, for the tongue of its stop; `None` where the range has none.
    pub fn corner(self, build: &Build, layout: &Layout) -> Option<(Length, Length)> {
        let detent = Detent::of(build, layout.body)?;
        // The cutter leaves a rounded corner, beside the gap that leaves have all round.
        let wide = self.covered + build.leaf_gap_mm + detent.relief();
        let leans = leans(build.pivot_clearance_mm, self.to_stop(layout.body), layout.clear_height());
        let hangs = detent.deep() - detent.overlap;
        Some((wide, hangs - leans - (layout.ceiling - self.over)))
    }

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
mod tests;
