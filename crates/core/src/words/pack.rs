//! What is said of a cut pack: what came of its orders, what its sheets are, and why there is none.

use crate::input::entry::Refused;

/// A text of a pack that holds no figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each says in the catalogue what it stands for")]
pub enum Label {
    // What to do where there is no pack.
    CheckOrders,
    PartExample,
    OtherSheets,
    MoreSheets,
    ThinnerCutter,
    OffcutsExample,
    NotAPack,
    // Why an order is not cut otherwise than it was ordered.
    Loose,
    // In the tool's report.
    Orders,
    Aside,
    Sheets,
    Offcuts,
    Machine,
    Pack,
    Again,
    Mind,
    Late,
    Begins,
    Booked,
    AsBefore,
    Name,
    // What an earlier pack was cut by.
    Cutter,
    Allowance,
}

/// The same with what it is about; money, shares and lengths are texts already.
#[derive(Clone, Copy, Debug)]
pub enum Message<'a> {
    /// So many orders with so many parts.
    Orders {
        /// How many are cut.
        taken: usize,
        /// How many parts.
        parts: usize,
    },
    /// An order is not cut.
    Aside {
        /// Its file.
        file: &'a str,
        /// Why.
        reason: &'a str,
    },
    /// It was given before.
    Again(&'a str),
    /// It does not hold any more: what differs or stops it.
    DoesNotHold(&'a [String]),
    /// It holds, but not as it would be cut here: what stops it.
    NotAsCut(&'a [String]),
    /// A part that is cut again.
    CutAgain {
        /// Its mark.
        mark: &'a str,
        /// What it is.
        part: &'a str,
        /// Whose.
        customer: &'a str,
        /// Name of its finish.
        finish: &'a str,
        /// For which thickness its slots are, without coats, in millimetres.
        uncoated: &'a str,
    },
    /// Sheets of a lot.
    Lot {
        /// Name of the board.
        board: &'a str,
        /// Name of the finish.
        finish: &'a str,
        /// How many sheets.
        sheets: usize,
        /// How many parts.
        parts: usize,
        /// Which share of them ends up in parts.
        used: &'a str,
        /// What they cost less what is kept.
        cost: &'a str,
    },
    /// So many offcuts are kept.
    Kept(usize),
    /// Minutes of the machine, and metres of its cuts.
    Machine {
        /// Minutes.
        minutes: &'a str,
        /// Metres.
        metres: &'a str,
    },
    /// So many files were written.
    Written {
        /// How many.
        files: usize,
        /// Where.
        folder: &'a str,
    },
    /// No order is left that could be cut.
    NoOrder,
    /// No order has that part.
    NoPart(&'a str),
    /// A part fits no sheet.
    TooLarge {
        /// Its mark.
        mark: &'a str,
        /// Its board.
        board: &'a str,
    },
    /// There are too few sheets.
    TooFewSheets {
        /// Of which board.
        board: &'a str,
        /// So many parts are left.
        left: u32,
    },
    /// A part is too narrow somewhere for the cutter.
    Cutter {
        /// Its mark.
        mark: &'a str,
        /// The widest cutter that it takes, in millimetres.
        most: &'a str,
    },
    /// Promises that would not be kept.
    Late {
        /// The orders.
        orders: &'a str,
        /// The day after which work begins.
        from: &'a str,
    },
    /// Work begins later than it was set to, since it was ordered only then.
    SetBefore {
        /// The day that was set.
        set: &'a str,
        /// The day after which it begins.
        from: &'a str,
    },
    /// A document that could not be written.
    Unwritten(&'a str),
    /// Sizes or prices are beyond what can be nested.
    Bounds,
    /// A text does not name a part of an order.
    PartWanted(&'a str),
    /// A text that has to be one of these.
    OneOf(&'a [&'a str]),
    /// A text does not say how many sheets of a format there are.
    SheetsWanted(&'a str),
    /// A length that is no number of millimetres within its bounds.
    LengthWanted {
        /// What was given.
        text: &'a str,
        /// The least.
        least: &'a str,
        /// The most.
        most: &'a str,
    },
    /// A time that cannot be read, or is out of bounds.
    TimeWanted(&'a str, Refused),
    /// A text that books no work at a stage.
    BookedWanted(&'a str),
    /// What is booked: each stage with its minutes.
    Booked(&'a [(&'a str, u32)]),
    /// What a pack stands for on its papers, and which version of the program made it.
    Named(&'a str, &'a str),
    /// Of which earlier pack a part is cut again, and what is set otherwise.
    AsBefore {
        /// The name of that pack.
        pack: &'a str,
        /// What is different, each in words.
        otherwise: &'a [String],
    },
    /// Something is set otherwise than in the earlier pack: what, as it is now, as it was then.
    Instead {
        /// What.
        what: &'a str,
        /// Now.
        now: &'a str,
        /// Then.
        then: &'a str,
    },
    /// A board was measured since: which, its mean.
    MeasuredSince(&'a str, &'a str),
    /// Another version of the program made the earlier pack.
    OtherProgram(&'a str),
    /// The parts of an order come out otherwise than in the earlier pack.
    OtherParts(u32),
    /// An order was not in the earlier pack.
    NotBefore(u32),
    /// A line of a list of offcuts is none.
    Offcut {
        /// Which line.
        line: u64,
        /// What its reader says, or the member that cannot be.
        what: &'a str,
    },
}
