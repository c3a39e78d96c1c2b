//! What the workshop's tool says in its tables and reports; the text of its help stands beside its arguments.

use crate::range::Use;

/// A text of the tool that holds no figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each says in the catalogue what it stands for")]
pub enum Label {
    // Everywhere.
    Error,
    Hint,
    DemoRange,
    StandardOutput,
    // `check`
    Holds,
    DoesNotHold,
    Unreadable,
    Nothing,
    Unknown,
    Again,
    Range,
    Unit,
    Mass,
    Price,
    Arrives,
    Parts,
    CutToBatches,
    BrokeOff,
    CheckOneByOne,
    // `explain`
    What,
    Why,
    Source,
    Limit,
    NoKey,
    // `fit`
    Finish,
    Slot,
    Likely,
    Mind,
    Worst,
    TooTight,
    Outside,
    TopSticks,
    Dry,
    Damp,
    NotToBeCut,
    Shares,
    // `options`
    Makeable,
    NotMakeable,
    NoChanges,
    Open,
    WithChanges,
    Shut,
    Unsuited,
    NotFound,
    RowOfSizes,
    // `range`
    Models,
    Boards,
    Finishes,
    OrdersUntil,
    Digest,
}

/// What is known of a board's thickness.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measured {
    /// Eight points, so it varies by a figure.
    Points,
    /// Their mean alone.
    Mean,
    /// Nothing.
    Not,
}

/// A text of the tool with what it is about; lengths, masses, money and shares are texts already.
#[derive(Clone, Copy, Debug)]
pub enum Message<'a> {
    /// The order was given before, in that file.
    SameOrder(&'a str),
    /// A figure at that place of a file is not as it was promised.
    Differs {
        /// Where.
        place: &'a str,
        /// What was promised.
        promised: &'a str,
        /// What it is.
        derived: &'a str,
    },
    /// The unit of an order.
    Ordered {
        /// Name of its model.
        model: &'a str,
        /// Its sizes in millimetres.
        sizes: &'a str,
        /// Name of its finish.
        finish: &'a str,
        /// When it was ordered.
        day: &'a str,
    },
    /// A figure as it is now and as it was promised.
    WasPromised(&'a str, &'a str),
    /// A range that is at hand.
    AtHand {
        /// Its name.
        name: &'a str,
        /// Its key.
        key: &'a str,
        /// The beginning of its digest.
        digest: &'a str,
        /// The last day on which it takes orders.
        until: Option<&'a str>,
        /// Its file.
        file: &'a str,
    },
    /// The day on which an order arrives.
    ArrivesBy(&'a str),
    /// How a board is cut and fits; lengths in millimetres.
    Cut {
        /// What of the unit is made of it.
        parts: &'a [Use],
        /// What is known of its thickness.
        measured: Measured,
        /// How thick it is.
        thickness: &'a str,
        /// How thick with its film.
        coated: &'a str,
        /// How wide its slots are.
        slot: &'a str,
        /// Share of joints that are too tight.
        tight: &'a str,
        /// Share of joints outside the wanted clearance that is usual in the range.
        most: &'a str,
        /// Share of joints outside the wanted clearance.
        outside: &'a str,
    },
    /// A key of the range is not there.
    NotSet(&'a str),
    /// The clearance of a range, and what is wanted.
    Clearance {
        /// Its name.
        range: &'a str,
        /// How much wider slots are.
        clearance: &'a str,
        /// The least that is wanted.
        least: &'a str,
        /// The most that is wanted.
        most: &'a str,
    },
    /// A clearance in the middle of what is wanted.
    BetterClearance(&'a str),
    /// More than that share of the joints would not go in.
    TooManyTight(&'a str),
    /// What dry and damp stand for: moisture of the wood in percent.
    DryAndDamp {
        /// While parts are cut.
        made: &'a str,
        /// The least later.
        dry: &'a str,
        /// The most.
        damp: &'a str,
    },
    /// A board: key, name, thickness, what is known of it, how much it varies.
    Board {
        /// Its key.
        key: &'a str,
        /// Its name.
        name: &'a str,
        /// How thick it is.
        thickness: &'a str,
        /// What is known of that.
        measured: Measured,
        /// How much it varies, if eight points were measured.
        deviation: &'a str,
    },
    /// A mass.
    Kilograms(&'a str),
    /// A length.
    Millimetres(&'a str),
    /// A share.
    Percent(&'a str),
    /// A share that is almost none, below that.
    ShareUnder(&'a str),
    /// A unit: model, range, sizes in millimetres, finish.
    UnitOf {
        /// Name of its model.
        model: &'a str,
        /// Name of the range.
        range: &'a str,
        /// Its sizes in millimetres.
        sizes: &'a str,
        /// Name of its finish.
        finish: &'a str,
    },
    /// A question whose answer is kept.
    Kept(&'a str),
    /// The changes with which it can be made.
    WithThese(&'a str),
    /// What stops an answer alone, and what it goes with, as a thing to do.
    AsWell(&'a str, &'a str),
    /// Why an answer is shut, and what to do to have it all the same.
    ShutUnless(&'a str, &'a str),
    /// Sizes from one to another, in millimetres.
    FromTo(&'a str, &'a str),
    /// A range is right, with so many warnings.
    Right {
        /// Its name.
        range: &'a str,
        /// Whose it is.
        workshop: &'a str,
        /// How many warnings there are.
        warnings: usize,
    },
    /// A warning about a file, with its place.
    Warning(&'a str, &'a str),
    /// Parts are placed on so many sheets, of which they fill a share; no placement has fewer than so many.
    Placed {
        /// How many sheets.
        sheets: u32,
        /// The fewest that could be.
        fewest: u32,
        /// The share that parts are.
        filled: &'a str,
    },
    /// Parts are placed on so much of a strip, of which they fill a share.
    OnStrip {
        /// How much of the strip is taken, in the unit of the instance.
        length: &'a str,
        /// The share that parts are.
        filled: &'a str,
    },
    /// So many of so many are done.
    Progress(usize, usize),
}
