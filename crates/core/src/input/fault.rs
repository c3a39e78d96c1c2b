//! What can be wrong with JSON that was read, as data; `words` says it.

use crate::input::seal::NotADigest;
use crate::units::day::NotADay;
use crate::units::quantity::NotADim;

/// Why a JSON text is not what was asked for.
#[derive(Clone, Debug, PartialEq)]
pub enum ReadError {
    /// Not JSON.
    NotJson(NotJson),
    /// An unknown, missing or mistyped member.
    Field {
        /// Where, as a JSON pointer; empty for the whole.
        pointer: String,
        /// What is wrong.
        fault: Fault,
    },
}

/// Why a text is not one JSON document; lines and columns count from 1.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotJson {
    /// Nothing, or nothing but white space.
    Empty,
    /// It begins with a byte order mark.
    Marked,
    /// It ends before it is complete.
    EndsEarly {
        /// The last line.
        line: usize,
    },
    /// A second document follows the first.
    Several {
        /// The line on which it begins.
        line: usize,
    },
    /// Something that is no document follows the first.
    More {
        /// Its line.
        line: usize,
        /// Its column.
        column: usize,
    },
    /// A member stands twice in one object.
    Twice {
        /// Its name.
        name: String,
        /// The line of the second.
        line: usize,
    },
    /// What the parser says of it, with line and column, in its own words.
    Other(String),
}

/// What is wrong at a place of a JSON document.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// Something else was expected.
    Kind {
        /// What.
        wanted: Wanted,
        /// What stands there.
        found: String,
    },
    /// A member is missing.
    Missing(&'static str),
    /// No member of this name is known, but one of nearly the same.
    Misspelt {
        /// The name that was probably meant.
        meant: &'static str,
    },
    /// No member of this name is known.
    Strange,
    /// The same is said here in another way, in a document that has one way to say it.
    OtherWay {
        /// What stands here in that way; nothing if the member is left out.
        own: Option<String>,
    },
    /// No length.
    Dim(NotADim),
    /// No day.
    Day(NotADay),
    /// No digest.
    Digest(NotADigest),
    /// No key of a range.
    Key(String),
    /// No code of a currency.
    Currency,
}

/// What was expected.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// A number.
    Number,
    /// A whole number between two bounds.
    Whole {
        /// The least.
        least: i64,
        /// The most.
        most: i64,
    },
    /// A text.
    Text,
    /// True or false.
    Flag,
    /// A list.
    List,
    /// A list of two.
    Pair,
    /// An object.
    Object,
    /// One word of these.
    Words(Vec<&'static str>),
}

impl From<NotADim> for Fault {
    fn from(wrong: NotADim) -> Self {
        Self::Dim(wrong)
    }
}

impl From<NotADay> for Fault {
    fn from(wrong: NotADay) -> Self {
        Self::Day(wrong)
    }
}

impl From<NotADigest> for Fault {
    fn from(wrong: NotADigest) -> Self {
        Self::Digest(wrong)
    }
}
