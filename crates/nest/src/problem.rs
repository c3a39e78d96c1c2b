//! What is to be nested: parts, sheets, and what is kept free between them.

use core::fmt;

/// The longest side of a sheet or a part with its spacing, in the caller's unit: 200 m in hundredths of a millimetre.
/// So many squares of it as there may be copies have an area that 64 bits hold.
pub const LONGEST: i64 = 20_000_000;

/// The most copies of all items together.
pub const MOST_COPIES: u32 = 20_000;

/// The most a sheet may cost.
pub const DEAREST: i64 = 1_000_000_000_000;

/// A rectangular part, and how many of it there are.
///
/// Lengths are whole numbers in one unit of the caller's choice, at least 1 and at most [`LONGEST`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Item {
    /// Along the sheet's width.
    pub width: i64,
    /// Along the sheet's height.
    pub height: i64,
    /// Whether it may be turned by a quarter. Where the grain matters it may not.
    pub turns: bool,
    /// How many copies there are.
    pub count: u32,
}

/// Sheets of one size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Format {
    /// Width as it is bought, its trim included.
    pub width: i64,
    /// Height as it is bought.
    pub height: i64,
    /// What one costs, in the caller's minor units; at most [`DEAREST`].
    pub cost: i64,
    /// How many there are; as many as wanted for none. An offcut from stock is a format with one sheet and a low cost.
    pub most: Option<u32>,
}

/// What stays free around parts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Gaps {
    /// Between two parts, and between a part and an offcut: the cutter's diameter with its allowance. A part at the
    /// border of what is left of the trim needs none.
    pub spacing: i64,
    /// Along all four borders of a sheet.
    pub trim: i64,
}

/// What is to be nested.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Problem {
    /// Sheets that there are.
    pub formats: Vec<Format>,
    /// Parts that are wanted.
    pub items: Vec<Item>,
    /// What stays free.
    pub gaps: Gaps,
}

/// What free rectangles are worth that are left of a sheet.
///
/// Offcuts of a sheet are found one after another: the largest empty rectangle by area that is at least as wide and as
/// high as said here, then the largest of what it leaves. They do not overlap, and keep the spacing from parts and from
/// each other. Each is worth its share of the sheet's area, times the sheet's cost, times `per_mille`, rounded
/// down.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Worth {
    /// The least width of an offcut that is kept. Its grain is the sheet's, so width is not exchanged for height.
    pub least_width: i64,
    /// The least height.
    pub least_height: i64,
    /// The share of its cost that it is worth, in thousandths; 0 to 1000. With 0 offcuts are still told.
    pub per_mille: u16,
}

/// Why something cannot be nested.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoRoom {
    /// A length, a cost, a count or a share is not within its bounds.
    Bounds,
    /// This item fits none of the formats.
    Item {
        /// Its place in the list of items.
        item: u32,
    },
    /// There are too few sheets: so many parts were left over by the best packing that was found. Where formats are
    /// bounded by `most` another packing might take all.
    Sheets {
        /// How many parts were left over.
        left: u32,
    },
}

impl fmt::Display for NoRoom {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Bounds => f.write_str("a size, a cost or a count is out of bounds"),
            Self::Item { item } => write!(f, "item {item} fits no sheet"),
            Self::Sheets { left } => write!(f, "too few sheets, {left} parts are left"),
        }
    }
}

impl core::error::Error for NoRoom {}
