//! What the workshop's tool says of files and arguments that it cannot use, and what to do about them.

use crate::choice::question::{NotAQuestion, Question};
use crate::range::{Key, NotABatch, NotAKey};
use crate::units::quantity::Length;

/// A text that holds no figure: what is wrong with a file, or a hint.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each says in the catalogue what it stands for")]
pub enum Label {
    // What is wrong.
    Folder,
    NotAFolder,
    NoFile,
    Utf16,
    ReadAlready,
    DiskFull,
    NothingThere,
    NotPermitted,
    Exists,
    NoChoice,
    NoBacklog,
    NoOrder,
    NoModel,
    Unorderable,
    Closed,
    PointsMissing,
    NotAPage,
    NotSeconds,
    NoInstance,
    NoManifest,
    ManifestOfAPack,
    OutOfProportion,
    PlacementUnsound,
    // What to do.
    IsTheNameRight,
    NameAFile,
    NameAFileInIt,
    NameAFolder,
    SendItToInput,
    IsItMeant,
    SaveAsUtf8,
    NameOneInput,
    MakeRoom,
    MakeRoomNotAll,
    DoesTheFolderExist,
    ForceWritesOver,
    BacklogExample,
    ChoicesAndSchemas,
    LinkExample,
    BaysOfALink,
    OneChoice,
    RangeOfThatTime,
    DemoRange,
    FindingsShown,
    RulesListed,
    ModelsListed,
    BoardsListed,
    DocumentsListed,
    OneBatch,
    RightBoard,
    BaysCounted,
    OnTheLabel,
    InstanceExample,
    PartsThatFit,
    HigherStrip,
    CornersInOrder,
    QuarterTurns,
    TellWhoKeepsThis,
}

/// The same with what it is about.
#[derive(Clone, Copy, Debug)]
pub enum Message<'a> {
    /// A file is too large.
    TooLarge {
        /// Its size.
        bytes: u64,
        /// The most that is read.
        most: u64,
    },
    /// More came in than is read.
    TooMuch(u64),
    /// Not UTF-8, from that byte on.
    NotText(usize),
    /// A choice has too many bays for a link.
    NoLinkOf(usize),
    /// An order was made with this range, not with the one at hand.
    OtherRange {
        /// Its key.
        key: &'a Key,
        /// The beginning of its digest.
        digest: &'a str,
    },
    /// The range has no such model.
    OtherModel(&'a str),
    /// No rule has that code.
    NoRule(&'a str),
    /// The range has no such board.
    NoBoard(&'a str),
    /// A board has no such format of sheets.
    NoFormat(&'a str),
    /// A board is measured twice.
    MeasuredTwice(&'a Key),
    /// A batch that is none of its board.
    Strays {
        /// What was measured.
        mean: Length,
        /// By which it is sold.
        nominal: Length,
        /// The least that is possible.
        least: Length,
        /// The most.
        most: Length,
    },
    /// The range has no such stage.
    NoStage(&'a Key),
    /// The stages that there are, and which of them was probably meant.
    Stages(&'a [String], Option<&'a str>),
    /// The unit has no such bay.
    NoBay {
        /// What should be kept.
        pin: Question,
        /// How many it has.
        bays: usize,
    },
    /// No document has that name.
    NoDocument(&'a str),
    /// A text is no key.
    Key(&'a NotAKey),
    /// A text is no measured batch.
    Batch(&'a NotABatch),
    /// A text is no question.
    Question(&'a NotAQuestion),
    /// An item of an instance, counted from 0, fits no sheet.
    FitsNowhere(u32),
    /// An item is higher than the strip.
    TooHigh(u32),
    /// The corners of an item make no simple polygon.
    NoPolygon(u32),
    /// An item may be turned in a way that is not by quarters, or in none.
    NoTurns(u32),
    /// The name that was probably meant.
    Meant(&'a str),
}
