//! What people type: lengths, money, masses and times, read forgivingly and never guessed.
//!
//! Marks between thousands and before decimals are read as [`number`] says; no case, no kind of space and no kind of
//! inch mark matters. What is not clear is refused: [`Expected`] shows how it may be written.
//!
//! Symbols of units are the same in all languages; the words for them are those of [`Spoken`], which a catalogue gives:
//! [`crate::words::entry`] reads what people type.

mod length;
mod number;
mod time;

#[cfg(test)]
mod tests;

use crate::units::money::{Money, symbol_of};
use crate::units::quantity::{Length, Mass};

pub use length::{diagonal, size};
pub use time::minutes;

use number::{Lone, amount};

/// What a field wants.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Expected {
    /// A size or a distance.
    Size,
    /// A screen's diagonal.
    Diagonal,
    /// An amount of money.
    Money,
    /// A mass.
    Mass,
}

/// Why an entry is not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refused {
    /// It cannot be read.
    Unread,
    /// It was read, and is out of bounds.
    Beyond,
}

/// A unit of length that has words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LengthUnit {
    /// A metre.
    Metre,
    /// An inch.
    Inch,
    /// A foot.
    Foot,
}

/// A unit of mass that has words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MassUnit {
    /// A kilogram.
    Kilogram,
    /// A pound.
    Pound,
}

/// A unit of time that has words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TimeUnit {
    /// An hour.
    Hour,
    /// A minute.
    Minute,
}

/// The words of a language for units, in small letters, beside their symbols.
#[derive(Clone, Copy, Debug)]
pub struct Spoken {
    /// Of length.
    pub lengths: &'static [(&'static str, LengthUnit)],
    /// Of mass.
    pub masses: &'static [(&'static str, MassUnit)],
    /// Of money, with the code of the currency; of two that begin alike the longer one first.
    pub currencies: &'static [(&'static str, &'static str)],
}

/// What a word stands for.
fn meaning<T: Copy>(words: &[(&str, T)], word: &str) -> Option<T> {
    words.iter().find(|(known, _)| *known == word).map(|(_, meaning)| *meaning)
}

/// More is out of all proportion, for money in whole units, masses in kilograms and times in minutes.
pub const LARGEST: f64 = 1e7;

/// The smallest and the largest diagonal of a screen, in tenths of an inch.
pub const DIAGONAL_TENTHS: [u16; 2] = [50, 2000];

/// What is not beyond all proportion.
fn bounded(amount: f64) -> Result<f64, Refused> {
    if amount <= LARGEST { Ok(amount) } else { Err(Refused::Beyond) }
}

/// In kilograms: 1 lb is 0.453 592 37 kg.
// Source: NIST Special Publication 811 (2008), appendix B.8: the pound (avoirdupois), exact.
const POUND: f64 = 0.453_592_37;

/// Reads an amount of money: `1400`, `1,400`, `1.400,50`, `€1400`, `1400 EUR`, `1 400,-`.
///
/// # Errors
///
/// It is no amount, has parts of a hundredth, or names another currency; or it is out of all proportion.
pub fn money(text: &str, currency: &str, spoken: &Spoken) -> Result<Money, Refused> {
    let (text, code) = (number::plain(text), currency.to_ascii_lowercase());
    let mut rest = text.as_str();
    let spoken = spoken.currencies.iter().filter(|(_, code)| *code == currency).map(|(name, _)| *name);
    for name in spoken.chain([code.as_str(), symbol_of(currency)]) {
        rest = rest.strip_prefix(name).or_else(|| rest.strip_suffix(name)).unwrap_or(rest).trim();
    }
    // A dash for no hundredths: `1400,-`.
    let rest = rest.strip_suffix(['-', '\u{2013}', '\u{2014}']).map_or(rest, |rest| rest.trim_end_matches(['.', ',']));
    let minor = bounded(amount(rest, Lone::Thousands).ok_or(Refused::Unread)?)? * 100.0;
    let whole = libm::round(minor);
    if (minor - whole).abs() < 1e-6 { Ok(Money::to_minor(whole)) } else { Err(Refused::Unread) }
}

/// Reads a mass, in kilograms unless it names another unit: `12`, `12,5 kg`, `800 g`, `26 lb`.
///
/// # Errors
///
/// It is no mass, or out of all proportion.
pub fn mass(text: &str, spoken: &Spoken) -> Result<Mass, Refused> {
    bounded(kilograms(text, spoken).ok_or(Refused::Unread)?).map(Mass::kg)
}

fn kilograms(text: &str, spoken: &Spoken) -> Option<f64> {
    let text = number::plain(text);
    let (number, unit) =
        text.split_at_checked(text.find(|letter: char| letter.is_ascii_alphabetic()).unwrap_or(text.len()))?;
    let (lone, factor) = match unit.trim_end_matches('.') {
        "" | "kg" => (Lone::Decimals, 1.0),
        "g" => (Lone::Thousands, 0.001),
        word => match meaning(spoken.masses, word)? {
            MassUnit::Kilogram => (Lone::Decimals, 1.0),
            MassUnit::Pound => (Lone::Decimals, POUND),
        },
    };
    amount(number, lone).map(|amount| amount * factor)
}

/// Reads a length in millimetres as it is measured or stamped on a tool: `17.61`, `17,612 mm`, `6,35`. A lone mark always
/// stands before decimals, since a micrometer shows three.
pub fn measured(text: &str) -> Option<Length> {
    let text = number::plain(text);
    amount(text.strip_suffix("mm").unwrap_or(&text), Lone::Decimals).map(Length::mm)
}
