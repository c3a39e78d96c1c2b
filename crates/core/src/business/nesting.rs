//! Parts and sheets as the nesting crate takes them: rectangles in hundredths of a millimetre, with the face grain
//! along their width. Parts are blown up and sheets cut down to whole hundredths, so that nothing touches.

use slotwright_nest::problem::{Format, Gaps, Item, Problem, Worth};

use crate::range::{Board, Grain, Range, Sheet};
use crate::units::quantity::Length;

/// A rectangle with its face grain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grained {
    /// Its side along the grain.
    pub along: Length,
    /// Its side across the grain.
    pub across: Length,
}

impl Grained {
    /// A sheet as it is bought.
    pub fn of(sheet: &Sheet) -> Self {
        let (long, short) = (sheet.length_mm, sheet.width_mm);
        match sheet.grain {
            Grain::Length => Self { along: long, across: short },
            Grain::Width => Self { along: short, across: long },
        }
    }
}

/// Whole hundredths of a millimetre that hold a length.
pub fn holding(length: Length) -> i64 {
    // What is a hundredth on paper may be a little more in its last bits.
    whole(libm::ceil(length.in_mm() * 100.0 - 1e-6))
}

/// Whole hundredths of a millimetre within a length.
pub fn within(length: Length) -> i64 {
    whole(libm::floor(length.in_mm() * 100.0 + 1e-6))
}

fn whole(value: f64) -> i64 {
    #[expect(clippy::cast_possible_truncation, reason = "whole; `as` saturates")]
    let whole = value as i64;
    whole
}

/// A length in hundredths of a millimetre.
pub fn length(hundredths: i64) -> Length {
    #[expect(clippy::cast_precision_loss, reason = "some metres, in hundredths of a millimetre")]
    let hundredths = hundredths as f64;
    Length::mm(hundredths / 100.0)
}

/// A part, so many times.
pub fn item(part: Grained, count: u32) -> Item {
    Item { width: holding(part.along), height: holding(part.across), turns: false, count }
}

/// A sheet that costs so much, and how many there are of it.
pub fn format(sheet: Grained, cost: i64, most: Option<u32>) -> Format {
    Format { width: within(sheet.along), height: within(sheet.across), cost, most }
}

/// What stays free between parts and round sheets.
pub fn gaps(range: &Range) -> Gaps {
    Gaps { spacing: holding(range.spacing()), trim: holding(range.build.sheet_trim_mm) }
}

/// What is kept of sheets, and what it is worth.
pub fn worth(range: &Range) -> Worth {
    let rules = &range.offcuts;
    let per_mille = u16::try_from(rules.worth_per_mille).unwrap_or(1000);
    Worth { least_width: holding(rules.least_along_mm), least_height: holding(rules.least_across_mm), per_mille }
}

/// Parts on new sheets of a board.
pub fn problem(range: &Range, board: &Board, parts: impl Iterator<Item = Grained>) -> Problem {
    let bought = |sheet: &Sheet| format(Grained::of(sheet), sheet.price_minor.in_minor(), None);
    Problem {
        formats: board.sheets.iter().map(bought).collect(),
        items: parts.map(|part| item(part, 1)).collect(),
        gaps: gaps(range),
    }
}
