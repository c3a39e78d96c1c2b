//! What an audit has to say, and typos, as data; [`crate::words`] says it.

use crate::range::Key;
use crate::rules::finding::Finding;
use crate::units::quantity::Length;

/// What is to be said of a place of a range file.
#[derive(Clone, Debug, PartialEq)]
pub enum Remark {
    /// The unit that a model begins with cannot be made.
    StartStops(Finding),
    /// No stage does this work.
    NoStage {
        /// The work, by its word in range files.
        work: &'static str,
    },
    /// A stage does the work that another one does.
    StageAgain {
        /// The work, by its word in range files.
        work: &'static str,
        /// The other stage.
        first: Key,
    },
    /// No model is made of this board.
    BoardUnused,
    /// No model comes in this finish.
    FinishUnused,
    /// This plug passes no hole.
    PlugPassesNone {
        /// The most that a hole has for it.
        gives: Length,
        /// What it needs there.
        needs: Length,
    },
    /// No plug passes this hole.
    HolePassesNone,
    /// No unit of the model can be made with this answer.
    AnswerNeverMade,
    /// No bay has room for this hole.
    HoleWithoutRoom,
    /// No bay has room for this device.
    DeviceWithoutRoom,
}

/// A typo that leaves a range file unreadable.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Typo<'a> {
    /// A mark that is no quotation mark there.
    NoQuote(char),
    /// A number with a comma for its decimals: what stands before it and after it.
    Comma(&'a str, &'a str),
    /// A text without quotation marks, as it should be written.
    Bare(&'a str),
}
