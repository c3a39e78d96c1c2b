//! What people type: lengths, money and masses, read forgivingly and never guessed.
//!
//! Marks between thousands and before decimals are read as [`number`] says; no case, no kind of space and no kind of
//! inch mark matters. What is not clear is refused: [`Expected`] shows how it may be written.

mod length;
mod number;

#[cfg(test)]
mod tests;

use crate::units::money::{Money, symbol_of};
use crate::units::quantity::{Length, Mass};

pub use length::{diagonal, size};

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

/// More is out of all proportion, for money in whole units and for masses in kilograms.
const LARGEST: f64 = 1e7;

/// In kilograms: 1 lb is 0.453 592 37 kg.
// Source: NIST Special Publication 811 (2008), appendix B.8: the pound (avoirdupois), exact.
const POUND: f64 = 0.453_592_37;

/// Reads an amount of money: `1400`, `1,400`, `1.400,50`, `€1400`, `1400 EUR`, `1 400,-`. `None` if it is none, has
/// parts of a hundredth, or names another currency.
///
/// ```
/// use slotwright_core::{input::entry, units::money::Money};
/// assert_eq!(entry::money("€1,400", "EUR"), Some(Money::minor(140_000)));
/// ```
pub fn money(text: &str, currency: &str) -> Option<Money> {
    let (text, code) = (number::plain(text), currency.to_ascii_lowercase());
    let mut rest = text.as_str();
    let spoken: &[&str] = if currency == "EUR" { &["euros", "euro"] } else { &[] };
    for name in spoken.iter().copied().chain([code.as_str(), symbol_of(currency)]) {
        rest = rest.strip_prefix(name).or_else(|| rest.strip_suffix(name)).unwrap_or(rest).trim();
    }
    // A dash for no hundredths: `1400,-`.
    let rest = rest.strip_suffix(['-', '\u{2013}', '\u{2014}']).map_or(rest, |rest| rest.trim_end_matches(['.', ',']));
    let minor = amount(rest, Lone::Thousands).filter(|amount| *amount <= LARGEST)? * 100.0;
    let whole = libm::round(minor);
    ((minor - whole).abs() < 1e-6).then(|| Money::to_minor(whole))
}

/// Reads a mass, in kilograms unless it names another unit: `12`, `12,5 kg`, `800 g`, `26 lb`.
///
/// ```
/// use slotwright_core::{input::entry, units::quantity::Mass};
/// assert_eq!(entry::mass("12,5 kg"), Some(Mass::kg(12.5)));
/// ```
pub fn mass(text: &str) -> Option<Mass> {
    let text = number::plain(text);
    let (number, unit) =
        text.split_at_checked(text.find(|letter: char| letter.is_ascii_alphabetic()).unwrap_or(text.len()))?;
    let (lone, factor) = match unit.trim_end_matches('.') {
        "" | "kg" | "kilo" | "kilos" => (Lone::Decimals, 1.0),
        "g" => (Lone::Thousands, 0.001),
        "lb" | "lbs" => (Lone::Decimals, POUND),
        _ => return None,
    };
    amount(number, lone).map(|amount| amount * factor).filter(|kg| *kg <= LARGEST).map(Mass::kg)
}

/// Reads a measured thickness in millimetres: `17.61`, `17,612 mm`. A lone mark always stands before decimals, since a
/// micrometer shows three.
pub fn thickness(text: &str) -> Option<Length> {
    let text = number::plain(text);
    amount(text.strip_suffix("mm").unwrap_or(&text), Lone::Decimals).map(Length::mm)
}
