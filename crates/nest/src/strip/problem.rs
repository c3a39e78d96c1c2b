//! What is to be nested on a strip.

use core::fmt;

use super::point::Turn;
use super::polygon::Polygon;

/// The greatest height of a strip: as far as a corner may be from the origin.
pub const HIGHEST: i64 = super::polygon::FARTHEST;

/// The most copies of all items together.
pub const MOST_COPIES: u32 = 500;

/// The most items.
pub const MOST_ITEMS: usize = 100;

/// A polygon, and how many of it there are.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Item {
    /// Its outline.
    pub polygon: Polygon,
    /// How it may be turned about its own origin; one turn at least.
    pub turns: Vec<Turn>,
    /// How many copies there are.
    pub count: u32,
}

/// A strip of fixed height that runs along x from 0, and what is to lie on it: on as short a piece of it as possible.
///
/// Polygons may touch each other and the edges. Lengths are whole numbers in one unit of the caller's choice.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Strip {
    /// Along y; at least 1 and at most [`HIGHEST`].
    pub height: i64,
    /// What is to lie on it.
    pub items: Vec<Item>,
}

impl Strip {
    /// Twice the area of all copies, in the square of the caller's unit.
    pub fn double_area(&self) -> i128 {
        self.items.iter().map(|item| item.polygon.double_area() * i128::from(item.count)).sum()
    }
}

/// Why something cannot be nested on a strip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoStrip {
    /// A height or a count is not within its bounds, or polygons are too intricate.
    Bounds,
    /// This item is higher than the strip, whichever way it may be turned.
    Item {
        /// Its place in the list of items.
        item: u32,
    },
}

impl fmt::Display for NoStrip {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Bounds => f.write_str("a size or a count is out of bounds, or polygons are too intricate"),
            Self::Item { item } => write!(f, "item {item} is higher than the strip"),
        }
    }
}

impl core::error::Error for NoStrip {}
