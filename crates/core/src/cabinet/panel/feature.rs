//! What departs from a panel's rectangle.

use crate::geometry::corner::Heading;
use crate::geometry::outline::Point;
use crate::units::quantity::Length;

/// An edge of the panel's rectangle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Edge {
    /// v = 0.
    Bottom,
    /// u = width.
    Right,
    /// v = height.
    Top,
    /// u = 0.
    Left,
}

impl Edge {
    /// All edges in the order in which an outline runs along them.
    pub(super) const ALL: [Self; 4] = [Self::Bottom, Self::Right, Self::Top, Self::Left];

    /// The way the outline runs along it, counter-clockwise.
    pub(super) const fn heading(self) -> Heading {
        match self {
            Self::Bottom => Heading::Right,
            Self::Right => Heading::Up,
            Self::Top => Heading::Left,
            Self::Left => Heading::Down,
        }
    }

    /// Whether the outline runs along it towards larger figures.
    pub(super) const fn runs_forwards(self) -> bool {
        matches!(self, Self::Bottom | Self::Right)
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
    /// Cuts into an edge by `depth`, between two places along it.
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
}

impl Feature {
    /// The edge that it departs from; none for holes.
    pub(super) const fn edge(self) -> Option<Edge> {
        match self {
            Self::Tab { edge, .. } | Self::Pivot { edge, .. } | Self::Notch { edge, .. } => Some(edge),
            Self::Slot { .. } | Self::Bore { .. } | Self::Hole { .. } => None,
        }
    }

    /// Whether both cut the same shape, within a millionth of a millimetre: positions that are
    /// equal on paper may differ in their last bits.
    pub(crate) fn is_like(self, other: Self) -> bool {
        let same = |a: Length, b: Length| (a - b).abs() < Length::mm(1e-6);
        let same_point = |a: Point, b: Point| same(a.u, b.u) && same(a.v, b.v);
        match (self, other) {
            (
                Self::Tab { edge: a, from, to, depth },
                Self::Tab { edge: b, from: other_from, to: other_to, depth: other_depth },
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
