//! What can be wrong at a place of a range file, as data; `words` says it.

use super::{Key, NotAKey, NotAnAddress};
use crate::units::day::NotADay;
use crate::units::quantity::NotADim;

/// What is wrong at a place of a range file.
#[derive(Clone, Debug, PartialEq)]
#[expect(missing_docs, reason = "the catalogue says of each what it is")]
pub enum Wrong {
    Empty,
    TooLarge {
        bytes: usize,
        most: usize,
    },
    /// What is said of it already: by the reader of TOML, or by an audit.
    Text(String),
    Dim(NotADim),
    Day(NotADay),
    Key(NotAKey),
    Kind {
        wanted: Wanted,
        found: Found,
    },
    Word {
        found: String,
        wanted: Vec<&'static str>,
    },
    Missing,
    Strange,
    Format {
        found: u32,
        known: u32,
        /// The version of this program that reads it, if it is an older one.
        read_by: Option<&'static str>,
    },
    Repeated(Key),
    Again(String),
    Unknown {
        what: &'static str,
        key: Key,
    },
    Length {
        found: usize,
        least: usize,
        most: usize,
    },
    Bounds {
        found: f64,
        least: f64,
        most: f64,
    },
    Least {
        found: f64,
        least: f64,
    },
    OffStep {
        found: f64,
        step: f64,
        least: f64,
    },
    Colour(String),
    Currency(String),
    Address(String),
    Stretch,
    Twice(&'static str),
    NoCommonDay(&'static str),
}

/// What was expected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the catalogue says of each what it is")]
pub enum Wanted {
    Number,
    Whole { most: u32 },
    Text { most: usize },
    Truth,
    List,
    Table,
}

/// What stands there instead.
#[derive(Clone, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the catalogue says of each what it is")]
pub enum Found {
    /// Its beginning, and how many characters it has if that is not all of it.
    Text {
        cut: String,
        whole: Option<usize>,
    },
    Number(String),
    Truth,
    Date,
    List,
    Table,
}

impl From<NotADay> for Wrong {
    fn from(wrong: NotADay) -> Self {
        Self::Day(wrong)
    }
}

impl From<NotAKey> for Wrong {
    fn from(wrong: NotAKey) -> Self {
        Self::Key(wrong)
    }
}

impl From<NotAnAddress> for Wrong {
    fn from(NotAnAddress(text): NotAnAddress) -> Self {
        Self::Address(text)
    }
}
