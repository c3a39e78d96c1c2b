//! The edges of a panel's rectangle.

use crate::geometry::corner::Heading;

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
    pub(crate) const ALL: [Self; 4] = [Self::Bottom, Self::Right, Self::Top, Self::Left];

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
