//! Where polygons lie on a strip.

use super::point::{Point, Turn};
use super::problem::Strip;

/// Where all polygons lie.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Layout {
    /// How much of the strip is taken: the greatest x of any corner; 0 without a polygon.
    pub length: i64,
    /// Each copy, by item.
    pub placed: Vec<Placed>,
}

/// A copy of an item on a strip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placed {
    /// Its place in the list of items.
    pub item: u32,
    /// How it is turned about its own origin.
    pub turn: Turn,
    /// How it is shifted after that.
    pub at: Point,
}

impl Layout {
    /// The share of the strip's taken piece that polygons are, 0 to 1; 0 without a polygon.
    pub fn density(&self, strip: &Strip) -> f64 {
        let piece = 2 * i128::from(self.length) * i128::from(strip.height);
        #[expect(clippy::cast_precision_loss, reason = "rounded the same everywhere")]
        let share = strip.double_area() as f64 / piece.max(1) as f64;
        share
    }
}
