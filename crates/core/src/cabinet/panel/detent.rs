//! How the tongue of a detent is cut: at the left end of a panel's upper edge, out over its left one.

use core::f64::consts::FRAC_PI_2;

use crate::geometry::corner::{Bend, Heading, Turn};
use crate::geometry::outline::{Corner, Outline, Point, QUARTER};
use crate::range::Detent;
use crate::units::quantity::{Area, Length};

use super::Panel;

impl Panel {
    /// The point so far out of the left edge and down from the upper one.
    fn out_and_down(&self, out: Length, down: Length) -> Point {
        Point::new(-out, self.height - down)
    }

    /// The gap over the tongue, from the upper edge in: up to the left edge.
    fn detent_gap(&self, detent: Detent) -> [Corner; 4] {
        let (radius, free, travel) = (detent.relief(), detent.free(), detent.travel);
        // The cutter goes down to the tongue from beside the edge, and leaves as much of a quarter circle as it goes down.
        let short = ((radius - travel) / radius).max(0.0);
        let beside = radius * libm::sqrt(1.0 - short * short);
        let from = (travel - radius).max(Length::ZERO);
        let at = |inwards: Length, down, bulge| Corner { at: self.out_and_down(-inwards, down), bulge };
        [
            at(free + beside, Length::ZERO, 0.0),
            at(free + beside, from, -libm::tan(libm::acos(short) / 4.0)),
            at(free, travel, 0.0),
            at(Length::ZERO, travel, 0.0),
        ]
    }

    /// The tongue beyond the left edge, from the end of that gap to the beginning of the slit.
    fn detent_nose(&self, detent: Detent) -> [Corner; 9] {
        let ((foot, (rear, low), _), (front, middle)) = (detent.rear_flank(), detent.front_flank());
        let (slope, fillet) = (libm::atan(detent.slope), detent.fillet());
        let (half, out) = (detent.tongue / 2.0, detent.out());
        let at = |out, down, bulge| Corner { at: self.out_and_down(out, down), bulge };
        // The fillet begins as far before the foot of the flank as it ends up along it.
        let up = fillet / libm::hypot(1.0, detent.slope);
        let tip = rear + detent.round() * (2.0 * libm::sin(slope));
        [
            at(middle, detent.travel, QUARTER),
            at(out, detent.travel + half, libm::tan((FRAC_PI_2 - slope) / 4.0)),
            at(front.0, front.1, 0.0),
            at(tip, low, libm::tan(slope / 2.0)),
            at(rear, low, 0.0),
            at(foot + up, detent.under() + up * detent.slope, -libm::tan(slope / 4.0)),
            at(foot - fillet, detent.under(), 0.0),
            at(Length::ZERO, detent.under(), 0.0),
            at(Length::ZERO, detent.travel, 0.0),
        ]
    }

    /// The slit under the tongue, from the left edge in and back.
    fn detent_slit(&self, detent: Detent) -> [Corner; 4] {
        let at = |inwards: Length, down, bulge| Corner { at: self.out_and_down(-inwards, down), bulge };
        [
            at(Length::ZERO, detent.under(), 0.0),
            at(detent.free(), detent.under(), -1.0),
            at(detent.free(), detent.wood(), 0.0),
            at(Length::ZERO, detent.wood(), 0.0),
        ]
    }

    /// All corners of a detent, from the upper edge to the left one.
    pub(super) fn detent_bends(&self, detent: Detent) -> impl Iterator<Item = Bend> {
        let (gap, nose, slit) = (self.detent_gap(detent), self.detent_nose(detent), self.detent_slit(detent));
        // What the three share are places on a straight edge of the tongue.
        let whole = gap.into_iter().take(3).chain(nose.into_iter().take(7)).chain(slit.into_iter().skip(1));
        whole.map(|Corner { at, bulge }| Bend { at, leaves: Heading::Left, turn: Turn::Arc(bulge) })
    }

    /// What it adds to the panel, and what it takes from it, each as an area with its centroid.
    pub(super) fn detent_pieces(&self, detent: Detent) -> impl Iterator<Item = (Area, Point)> {
        let corner = Corner { at: self.out_and_down(Length::ZERO, Length::ZERO), bulge: 0.0 };
        let gap = Outline::through(self.detent_gap(detent).into_iter().chain([corner]));
        let pieces = [gap, Outline::through(self.detent_nose(detent)), Outline::through(self.detent_slit(detent))];
        pieces.into_iter().map(|outline| (outline.area(), outline.centroid()))
    }

    /// What it adds to the length of the outline.
    pub(super) fn detent_length(&self, detent: Detent) -> Length {
        let bends: Vec<Corner> = self.detent_bends(detent).flat_map(Bend::corners).collect();
        let (Some(first), Some(last)) = (bends.first(), bends.last()) else { return Length::ZERO };
        let instead = (first.at.u - last.at.u) + (self.height - last.at.v);
        // Closed by the straight way from its end to its beginning.
        let back = libm::hypot((first.at.u - last.at.u).in_mm(), (first.at.v - last.at.v).in_mm());
        Outline::through(bends.iter().copied()).length() - Length::mm(back) - instead
    }
}
