//! How boards move with the moisture of the air.

use serde::Serialize;

use super::Fields;
use crate::units::quantity::Length;

/// Moisture of the wood, in parts of a hundred of its dry mass, and what it does to a board.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Moisture {
    /// While parts are cut.
    pub made_percent: f64,
    /// The least in the rooms where units stand.
    pub least_percent: f64,
    /// The most there.
    pub most_percent: f64,
    /// For one percent of moisture a board grows thicker by so many percent.
    // From memory: Handbook of Finnish Plywood, 3.2: about 0.3.
    pub thicker_percent: f64,
    /// For one percent of moisture a board grows longer by so many percent.
    // From memory: Handbook of Finnish Plywood, 3.2: about 0.015.
    pub longer_percent: f64,
    /// So much the joints of the top may lack at the ends of that window: uprights give way to a hand.
    pub lacks_most_mm: Length,
}

impl Moisture {
    /// How far the thickness of a board may go from what it was, at the worse end of the window.
    pub fn thickens(&self, board: Length) -> Length {
        let furthest = (self.most_percent - self.made_percent).max(self.made_percent - self.least_percent);
        board * (furthest * self.thicker_percent / 100.0)
    }

    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            made_percent: fields.number("made_percent"),
            least_percent: fields.number("least_percent"),
            most_percent: fields.number("most_percent"),
            thicker_percent: fields.number("thicker_percent"),
            longer_percent: fields.number("longer_percent"),
            lacks_most_mm: fields.length("lacks_most_mm"),
        }
    }
}
