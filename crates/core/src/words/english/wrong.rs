//! What is wrong with a range file. As beside every place of such a file, without a capital and a stop.

use super::json::{day, dim, key, one_of};
use crate::range::{Found, NotAKey, Wanted, Wrong};
use crate::units::decimal::Plain;

pub(in crate::words) fn wrong(wrong: &Wrong) -> String {
    let plain = |value: &f64| Plain::of(*value, 3);
    match wrong {
        Wrong::Empty => "the file is empty".into(),
        Wrong::TooLarge { bytes, most } => format!("the file has {bytes} bytes; {most} are the most that is read"),
        Wrong::Text(said) => said.clone(),
        Wrong::Dim(wrong) => dim(*wrong),
        Wrong::Day(wrong) => day(wrong),
        Wrong::Key(NotAKey(text)) => key(text),
        Wrong::Kind { wanted: of, found: what } => format!("expected {}, found {}", wanted(*of), found(what)),
        Wrong::Word { found, wanted } => format!("{found:?} is not one of {}", one_of(wanted)),
        Wrong::Missing => "this is missing".into(),
        Wrong::Strange => "no section or key of this name is known".into(),
        Wrong::Format { found, known, read_by: Some(version) } => {
            format!("format {found} is read by Slotwright {version}; this program reads format {known}")
        }
        Wrong::Format { found, known, read_by: None } => {
            format!("format {found} is not known; this program reads format {known}")
        }
        Wrong::Repeated(key) => format!("the key \"{key}\" stands here more than once"),
        Wrong::Again(text) => format!("\"{text}\" stands here more than once"),
        Wrong::Unknown { what, key } => format!("no {what} \"{key}\" for this use in the range"),
        Wrong::Length { found: 1, least, most } => format!("1 entry; {least} to {most} are possible"),
        Wrong::Length { found, least, most } => format!("{found} entries; {least} to {most} are possible"),
        Wrong::Bounds { found, least, most } => {
            format!("{} is out of proportion; {} to {} is possible", plain(found), plain(least), plain(most))
        }
        Wrong::Least { found, least } => {
            format!("{} is out of proportion; the least is {}", plain(found), plain(least))
        }
        Wrong::OffStep { found, step, least } => {
            format!("{} is not on a step of {} above {}", plain(found), plain(step), plain(least))
        }
        Wrong::Colour(text) => format!("{text:?} is not a colour written #rrggbb"),
        Wrong::Currency(text) => format!("{text:?} is not a currency code of three capital letters"),
        Wrong::Address(text) => {
            format!("{text:?} is neither an address of mail nor one of a page that begins with https://")
        }
        Wrong::Stretch => "ends before it begins, or lasts longer than a year".into(),
        Wrong::Twice(other) => format!("says the same as {other}: one of them is enough"),
        Wrong::NoCommonDay(other) => format!("has no day in common with {other}: nothing would ever be handed over"),
    }
}

pub(in crate::words) fn suggestion(of: &Wrong, meant: &str) -> String {
    format!("{}; did you mean \"{meant}\"?", wrong(of))
}

fn wanted(wanted: Wanted) -> String {
    match wanted {
        Wanted::Number => "a number of at most 15 digits, without an exponent".into(),
        Wanted::Whole { most } => format!("a whole number from 0 to {most}"),
        Wanted::Text { most } => format!("a text of 1 to {most} characters that can be printed"),
        Wanted::Truth => "true or false".into(),
        Wanted::List => "a list".into(),
        Wanted::Table => "a table".into(),
    }
}

fn found(found: &Found) -> String {
    match found {
        Found::Text { cut, whole: None } => format!("{cut:?}"),
        Found::Text { cut, whole: Some(characters) } => format!("{cut:?}\u{2026} ({characters} characters)"),
        Found::Number(digits) => digits.clone(),
        Found::Truth => "a boolean".into(),
        Found::Date => "a datetime".into(),
        Found::List => "an array".into(),
        Found::Table => "a table".into(),
    }
}
