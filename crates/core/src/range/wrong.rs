//! What can be wrong at a place of a range file.

use super::Key;
use crate::units::decimal::Plain;

/// What is wrong at a place of a range file.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[expect(missing_docs, reason = "the message of each says what it is")]
pub enum Wrong {
    #[error("the file has {bytes} bytes; {most} are the most that is read")]
    TooLarge { bytes: usize, most: usize },
    #[error("{0}")]
    Text(String),
    #[error("expected {wanted}, found {found}")]
    Kind { wanted: String, found: String },
    #[error("{found:?} is not one of {wanted}")]
    Word { found: String, wanted: String },
    #[error("this is missing")]
    Missing,
    #[error("no section or key of this name is known")]
    Strange,
    #[error("format {found} is not known; this program reads format {known}")]
    Format { found: u32, known: u32 },
    #[error("the key \"{0}\" stands here more than once")]
    Repeated(Key),
    #[error("\"{0}\" stands here more than once")]
    Again(String),
    #[error("no {what} \"{key}\" for this use in the range")]
    Unknown { what: &'static str, key: Key },
    #[error("{found} {}; {least} to {most} are possible", if *found == 1 { "entry" } else { "entries" })]
    Length { found: usize, least: usize, most: usize },
    #[error("{} is out of proportion; {} to {} is possible", Plain::of(*.found, 3), Plain::of(*.least, 3), Plain::of(*.most, 3))]
    Bounds { found: f64, least: f64, most: f64 },
    #[error("{} is out of proportion; the least is {}", Plain::of(*.found, 3), Plain::of(*.least, 3))]
    Least { found: f64, least: f64 },
    #[error("{} is not on a step of {} above {}", Plain::of(*.found, 3), Plain::of(*.step, 3), Plain::of(*.least, 3))]
    OffStep { found: f64, step: f64, least: f64 },
    #[error("{0:?} is not a colour written #rrggbb")]
    Colour(String),
    #[error("{0:?} is not a currency code of three capital letters")]
    Currency(String),
    #[error("ends before it begins, or lasts longer than a year")]
    Stretch,
    #[error("says the same as {0}: one of them is enough")]
    Twice(&'static str),
    #[error("has no day in common with {0}: nothing would ever be handed over")]
    NoCommonDay(&'static str),
}
