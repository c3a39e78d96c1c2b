//! What is wrong with JSON that was read. As beside every place of a file, without a capital and a stop.

use crate::input::fault::{Fault, NotJson, ReadError, Wanted};
use crate::input::seal::NotADigest;
use crate::units::day::NotADay;
use crate::units::decimal::Plain;
use crate::units::quantity::NotADim;

pub(in crate::words) fn unread(error: &ReadError) -> String {
    match error {
        ReadError::NotJson(not) => not_json(not),
        ReadError::Field { pointer, fault: of } if pointer.is_empty() => fault(of),
        ReadError::Field { pointer, fault: of } => format!("{pointer}: {}", fault(of)),
    }
}

fn not_json(not: &NotJson) -> String {
    match not {
        NotJson::Empty => "the file is empty".into(),
        NotJson::Marked => "not JSON: it begins with a byte order mark; save it as UTF-8 without one".into(),
        NotJson::EndsEarly { line } => {
            format!("not JSON: it ends in line {line} before it is complete; part of the file is missing")
        }
        NotJson::Several { line } => {
            format!("there is more than one document in this file: the second begins in line {line}")
        }
        NotJson::More { line, column } => {
            format!("not JSON: something follows the end of the document, in line {line}, column {column}")
        }
        NotJson::Twice { name, line } => {
            format!("not JSON: the member \"{name}\" stands twice in one object, again in line {line}")
        }
        NotJson::Other(said) => format!("not JSON: {said}"),
    }
}

fn fault(fault: &Fault) -> String {
    match fault {
        Fault::Kind { wanted: of, found } => format!("expected {}, found {found}", wanted(of)),
        Fault::Missing(name) => format!("the member \"{name}\" is missing"),
        Fault::Misspelt { meant } => format!("no member of this name is known; did you mean \"{meant}\"?"),
        Fault::Strange => "no member of this name is known".into(),
        Fault::OtherWay { own: None } => "this says nothing, and an order leaves out what says nothing".into(),
        Fault::OtherWay { own: Some(own) } => format!("an order says the same by {own}"),
        Fault::Dim(wrong) => dim(*wrong),
        Fault::Day(wrong) => day(wrong),
        Fault::Digest(NotADigest(text)) => format!("{text:?} is not a digest of 64 lower-case hexadecimal digits"),
        Fault::Key(text) => key(text),
        Fault::Currency => "expected three capital letters of a currency (ISO 4217)".into(),
    }
}

fn wanted(wanted: &Wanted) -> String {
    match wanted {
        Wanted::Number => "a number".into(),
        Wanted::Whole { least, most } => format!("a whole number from {least} to {most}"),
        Wanted::Text => "a text".into(),
        Wanted::Flag => "true or false".into(),
        Wanted::List => "a list".into(),
        Wanted::Pair => "a list of two".into(),
        Wanted::Object => "an object".into(),
        Wanted::Words(words) => one_of(words),
    }
}

pub(super) fn one_of(words: &[&str]) -> String {
    format!("\"{}\"", words.join("\" or \""))
}

pub(super) fn dim(NotADim(mm): NotADim) -> String {
    format!("{} is not a length in millimetres with at most one decimal, up to 100000", Plain::of(mm, 3))
}

pub(in crate::words) fn day(NotADay(text): &NotADay) -> String {
    format!("{text:?} is not a day written YYYY-MM-DD")
}

pub(in crate::words) fn key(text: &str) -> String {
    format!("{text:?} is not a key: lower-case letters, digits and hyphens, a letter first, at most 32")
}
