//! What the reader of orders says of a file that is none, or that cannot be checked; the shop's tool says it.

use crate::input::fault::ReadError;
use crate::range::Key;

/// What is known of a change that broke a seal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Changed<'a> {
    /// Nothing: the range of the order is not at hand.
    Unknown,
    /// What was picked: other parts come of it than those that were promised.
    Picked,
    /// These figures of what was promised, and nothing else.
    Promised(&'a [Figure<'a>]),
    /// Neither what was picked nor what was promised, but the rest: the customer, the remark, the day or the backlog.
    Other,
}

/// A figure that was promised and changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Figure<'a> {
    /// Which.
    pub of: Promise,
    /// What stood there.
    pub before: &'a str,
    /// What stands there.
    pub now: &'a str,
}

/// What an order promises.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each says in the catalogue what it stands for")]
pub enum Promise {
    Price,
    Currency,
    Mass,
    Day,
    Parts,
    Range,
}

/// What is said of an order file.
#[derive(Clone, Copy, Debug)]
pub enum Message<'a> {
    /// The file is too large.
    TooLarge {
        /// Its size.
        bytes: usize,
        /// The most that is read.
        most: usize,
    },
    /// It is not UTF-8, from that byte on.
    NotText(usize),
    /// It is not JSON, or a member is wrong.
    Unread(&'a ReadError),
    /// It does not say what it is.
    NoFormat,
    /// It says that it is something else.
    OtherFormat {
        /// What it says.
        found: &'a str,
        /// What an order says.
        known: &'a str,
    },
    /// It is a choice.
    Choice,
    /// A version that this program does not know.
    Version {
        /// What it says.
        found: &'a str,
        /// The one that is known.
        known: u32,
        /// The version of this program that reads it, if it is an older one.
        read_by: Option<&'a str>,
    },
    /// The seal does not fit.
    Changed {
        /// What was changed.
        what: Changed<'a>,
        /// The digest that it states.
        stated: &'a str,
        /// The digest of its content.
        computed: &'a str,
    },
    /// Its range is not at hand.
    UnknownRange(&'a str),
    /// Work is booked where its range has nothing.
    UnknownStage(&'a Key),
    /// A text is empty, at that place.
    Empty(&'a str),
    /// A text is too long.
    TooLong {
        /// Where.
        place: &'a str,
        /// Characters found.
        found: usize,
        /// The most.
        most: usize,
    },
    /// A text holds what cannot be printed.
    Unprintable(&'a str),
    /// No address lines, or too many.
    AddressLines {
        /// Lines found.
        found: usize,
        /// The most.
        most: usize,
    },
}

/// What to do about it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each says in the catalogue what it stands for")]
pub enum Label {
    IsItTheOrder,
    EmptyOrder,
    OneOrderAFile,
    MakeAnOrder,
    NewerProgram,
    OlderProgram,
    SaveAgain,
    Original,
    AskTheWriter,
    NameTheRange,
}
