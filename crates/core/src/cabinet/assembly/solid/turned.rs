//! What is left of a plate round a turned slot: the slot with its box is cut out, and what of the box is wood is put back.

use smallvec::SmallVec;

use super::{Bound, Patch};
use crate::cabinet::panel::{Panel, TurnedSlot};
use crate::geometry::outline::Point;
use crate::geometry::space::Prism;
use crate::range::relief_radius;
use crate::units::quantity::Length;

/// How deep the wood is that a core has behind the walls of a slot: enough to be met, and less than any ligament.
const SKIN: Length = Length::mm(0.05);

/// The rectangle along the panel's axes that is cut out: round the slot, for a core round its reliefs as well.
pub(super) fn cleared(slot: TurnedSlot, panel: &Panel, bound: Bound) -> Patch {
    let grown = if bound == Bound::Core { relief_radius(panel.cutter) } else { Length::ZERO };
    let (long, wide) = (slot.length / 2.0 + grown, slot.width / 2.0 + grown);
    let corners = [(long, wide), (-long, wide), (-long, -wide), (long, -wide)].map(|(u, v)| slot.point(u, v));
    let [first, others @ ..] = corners;
    let (low, high) = others.into_iter().fold((first, first), |(low, high), at| {
        (Point::new(low.u.min(at.u), low.v.min(at.v)), Point::new(high.u.max(at.u), high.v.max(at.v)))
    });
    Patch::between(low, high)
}

/// What of that rectangle is wood: for a hull all that is not slot, for a core what lies behind the middles of its walls.
pub(super) fn walls(slot: TurnedSlot, panel: &Panel, bound: Bound) -> SmallVec<[Prism; 4]> {
    let (long, wide) = (slot.length / 2.0, slot.width / 2.0);
    let prism = |corners: &[Point]| {
        let spots = corners.iter().map(|at| panel.case_from_panel.spot(*at, Length::ZERO));
        let under = panel.case_from_panel.origin.z;
        Prism { plan: spots.map(|spot| (spot.x, spot.y)).collect(), under, over: under + panel.thickness }
    };
    match bound {
        Bound::Hull => {
            let corners = [(-long, -wide), (long, -wide), (long, wide), (-long, wide)].map(|(u, v)| slot.point(u, v));
            let sides = corners.into_iter().zip(corners.into_iter().cycle().skip(1));
            sides.filter_map(|(from, to)| Some(prism(&[from, beyond(from, to)?, to]))).collect()
        }
        Bound::Core => {
            // A relief takes two of its radii of a wall at each end at most.
            let kept = relief_radius(panel.cutter) * 2.0;
            let (along, across) = (long - kept, wide - kept);
            let slab = |u: (Length, Length), v: (Length, Length)| {
                let corners = [(u.0, v.0), (u.1, v.0), (u.1, v.1), (u.0, v.1)].map(|(u, v)| slot.point(u, v));
                (u.0 < u.1 && v.0 < v.1).then(|| prism(&corners))
            };
            let slabs = [
                slab((-along, along), (wide, wide + SKIN)),
                slab((-along, along), (-wide - SKIN, -wide)),
                slab((long, long + SKIN), (-across, across)),
                slab((-long - SKIN, -long), (-across, across)),
            ];
            slabs.into_iter().flatten().collect()
        }
    }
}

/// The corner of the box that lies beyond a side of the slot, if that is askew.
fn beyond(from: Point, to: Point) -> Option<Point> {
    let (u, v) = ((to.u - from.u).in_mm(), (to.v - from.v).in_mm());
    let is_right = |at: &Point| u * (at.v - from.v).in_mm() - v * (at.u - from.u).in_mm() < -1e-9;
    [Point::new(from.u, to.v), Point::new(to.u, from.v)].into_iter().find(is_right)
}
