//! The six directions of the case.

use serde::Serialize;

use super::cell::Axis;
use crate::geometry::space::Spot;
use crate::units::quantity::Length;

/// One of the six directions of the case.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Direction {
    /// Upwards, +z.
    Up,
    /// To the front, −y.
    Forwards,
    /// To the left, −x.
    Left,
    /// To the right, +x.
    Right,
    /// To the rear, +y.
    Back,
    /// Downwards, −z.
    Down,
}

impl Direction {
    /// All six, in the order in which hands prefer to pull.
    pub const ALL: [Self; 6] = [Self::Up, Self::Forwards, Self::Left, Self::Right, Self::Back, Self::Down];

    /// The other way.
    #[must_use]
    pub const fn opposite(self) -> Self {
        match self {
            Self::Up => Self::Down,
            Self::Down => Self::Up,
            Self::Forwards => Self::Back,
            Self::Back => Self::Forwards,
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }

    pub(super) const fn axis(self) -> (Axis, bool) {
        match self {
            Self::Right => (Axis::X, true),
            Self::Left => (Axis::X, false),
            Self::Back => (Axis::Y, true),
            Self::Forwards => (Axis::Y, false),
            Self::Up => (Axis::Z, true),
            Self::Down => (Axis::Z, false),
        }
    }

    /// Whether it lies along the same line as another.
    pub(super) fn is_along(self, other: Self) -> bool {
        self.axis().0 == other.axis().0
    }

    /// A step of that length along it.
    pub fn step(self, by: Length) -> Spot {
        let zero = Length::ZERO;
        match self {
            Self::Right => Spot::new(by, zero, zero),
            Self::Left => Spot::new(-by, zero, zero),
            Self::Back => Spot::new(zero, by, zero),
            Self::Forwards => Spot::new(zero, -by, zero),
            Self::Up => Spot::new(zero, zero, by),
            Self::Down => Spot::new(zero, zero, -by),
        }
    }
}
