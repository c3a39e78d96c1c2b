//! What departs from a panel's rectangle.

use crate::geometry::outline::Point;
use crate::range::Detent;
use crate::units::quantity::Length;

use super::edge::Edge;
use super::{EdgeBow, TurnedSlot};

/// How the two corners at the end of a tab are cut off, so that it finds its slot.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Taper {
    /// Along the tab's end, at each side.
    pub across: Length,
    /// Along its flanks.
    pub along: Length,
}

impl Taper {
    /// As much of it as a tab has room for: half of its end and half of its flanks stay at least.
    #[must_use]
    pub fn within(self, width: Length, depth: Length) -> Self {
        Self { across: self.across.min(width / 4.0), along: self.along.min(depth / 2.0) }
    }
}

/// A neck that stands out of the right edge, and a nose at its end that rises over it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hook {
    /// Where the neck begins along the edge.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// How long it is, up to the nose.
    pub neck: Length,
    /// How long the nose is.
    pub nose: Length,
    /// How far the nose rises over the neck.
    pub rise: Length,
}

impl Hook {
    /// How far it stands out of the edge.
    pub fn out(self) -> Length {
        self.neck + self.nose
    }

    /// Two rectangles that it is made of: from where to where along the edge, and out from it.
    pub(crate) fn rectangles(self) -> [((Length, Length), (Length, Length)); 2] {
        [((self.from, self.to), (Length::ZERO, self.out())), ((self.to, self.to + self.rise), (self.neck, self.out()))]
    }
}

/// Something that departs from the rectangle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Feature {
    /// Stands out from an edge by `depth`, between two places along it.
    Tab {
        /// The edge.
        edge: Edge,
        /// Where it begins along the edge.
        from: Length,
        /// Where it ends.
        to: Length,
        /// How far it stands out.
        depth: Length,
        /// How its end is cut off at both corners.
        taper: Taper,
    },
    /// A pin that stands out of an edge: cut square, then rounded over by hand.
    Pivot {
        /// The edge.
        edge: Edge,
        /// Its middle along the edge.
        at: Length,
        /// Its diameter, and the width of the square that it is rounded from.
        diameter: Length,
        /// How far it stands out.
        depth: Length,
    },
    /// A hook at the right edge.
    Hook(Hook),
    /// A tongue with a nose, at the left end of the upper edge.
    Detent(Detent),
    /// Cuts into an edge by `depth`, between two places along it; up to an end of the edge it takes a corner off.
    Notch {
        /// The edge.
        edge: Edge,
        /// Where it begins along the edge.
        from: Length,
        /// Where it ends.
        to: Length,
        /// How deep it cuts.
        depth: Length,
    },
    /// A square-cornered hole.
    Slot {
        /// Lower left corner.
        from: Point,
        /// Upper right corner.
        to: Point,
    },
    /// A round hole that a pivot turns in.
    Bore {
        /// Its centre.
        centre: Point,
        /// Its diameter.
        diameter: Length,
    },
    /// A lying hole with half-round ends, for cables or a finger; round if its length is its height.
    Hole {
        /// Its centre.
        centre: Point,
        /// Length over the ends.
        length: Length,
        /// Height.
        height: Length,
    },
    /// A square-cornered hole that is turned.
    TurnedSlot(TurnedSlot),
    /// An arc in place of an edge.
    Bow(EdgeBow),
}

impl Feature {
    /// The edge that it departs from; none for holes.
    pub(super) const fn edge(self) -> Option<Edge> {
        match self {
            Self::Tab { edge, .. } | Self::Pivot { edge, .. } | Self::Notch { edge, .. } => Some(edge),
            Self::Hook(_) => Some(Edge::Right),
            Self::Detent(_) => Some(Edge::Top),
            Self::Bow(bow) => Some(bow.edge),
            Self::Slot { .. } | Self::Bore { .. } | Self::Hole { .. } | Self::TurnedSlot(_) => None,
        }
    }

    /// Whether both cut the same shape, within a millionth of a millimetre: positions that are
    /// equal on paper may differ in their last bits.
    pub(crate) fn is_like(self, other: Self) -> bool {
        let same = |a: Length, b: Length| (a - b).abs() < Length::mm(1e-6);
        let same_point = |a: Point, b: Point| same(a.u, b.u) && same(a.v, b.v);
        match (self, other) {
            (
                Self::Tab { edge: a, from, to, depth, .. },
                Self::Tab { edge: b, from: other_from, to: other_to, depth: other_depth, .. },
            )
            | (
                Self::Notch { edge: a, from, to, depth },
                Self::Notch { edge: b, from: other_from, to: other_to, depth: other_depth },
            ) => a == b && same(from, other_from) && same(to, other_to) && same(depth, other_depth),
            (Self::Slot { from, to }, Self::Slot { from: other_from, to: other_to }) => {
                same_point(from, other_from) && same_point(to, other_to)
            }
            (Self::Bore { centre, diameter }, Self::Bore { centre: other_centre, diameter: other_diameter }) => {
                same_point(centre, other_centre) && same(diameter, other_diameter)
            }
            (a, b) => a == b,
        }
    }
}
