//! Lengths as people write them, in the units of both sides of the ocean.

use super::number::{Lone, amount, plain};
use super::{DIAGONAL_TENTHS, LengthUnit, Refused, Spoken, meaning};
use crate::units::quantity::Dim;
use crate::units::rounding::round_half_away;

const CM: f64 = 10.0;
const M: f64 = 1000.0;
// Source: NIST Special Publication 811 (2008), appendix B.8: the inch and the foot, exact.
const INCH: f64 = 25.4;
const FOOT: f64 = 304.8;

/// Nobody means fewer millimetres when they name no unit.
const LEAST_BARE: f64 = 10.0;

/// Reads a size in millimetres unless it names another unit: `1640`, `1 640 mm`, `164 cm`, `1,64 m`, `64 in`,
/// `64 1/2"`, `5′ 4½″`.
///
/// Without a unit a number below ten is read as metres if it has decimals (`1.64`), and refused if it has none.
///
/// # Errors
///
/// It is no size, or none above nothing and up to [`Dim::LARGEST`].
pub fn size(text: &str, spoken: &Spoken) -> Result<Dim, Refused> {
    let mm = millimetres(&plain(text), spoken).ok_or(Refused::Unread)?;
    // To a whole tenth: 64 1/2 in are 1638.3 mm.
    let dim = Dim::try_from(round_half_away(mm * 10.0) / 10.0).map_err(|_| Refused::Beyond)?;
    if dim > Dim::mm(0) { Ok(dim) } else { Err(Refused::Beyond) }
}

fn millimetres(text: &str, spoken: &Spoken) -> Option<f64> {
    match amount(text, Lone::Thousands) {
        Some(mm) if mm >= LEAST_BARE => Some(mm),
        // Nothing is nothing in any unit.
        Some(nothing) if nothing <= 0.0 => Some(nothing),
        Some(metres) if text.contains(['.', ',']) => Some(metres * M).filter(|mm| *mm >= LEAST_BARE),
        Some(_) => None,
        None => sum(text, spoken),
    }
}

/// Reads a diagonal in inches unless it names another unit, in tenths of an inch.
///
/// # Errors
///
/// It is none, or not within [`DIAGONAL_TENTHS`].
pub fn diagonal(text: &str, spoken: &Spoken) -> Result<u16, Refused> {
    let text = plain(text);
    let inches = amount(&text, Lone::Decimals).or_else(|| Some(sum(&text, spoken)? / INCH)).ok_or(Refused::Unread)?;
    let tenths = round_half_away(inches * 10.0);
    let [least, most] = DIAGONAL_TENTHS.map(f64::from);
    if !(least..=most).contains(&tenths) {
        return Err(Refused::Beyond);
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number of this range")]
    Ok(tenths as u16)
}

/// Millimetres of one or more numbers with their units, each unit smaller than the one before; inches may go without
/// their unit after feet.
fn sum(text: &str, spoken: &Spoken) -> Option<f64> {
    let is_unit = |letter: char| letter.is_ascii_alphabetic() || letter == '\'' || letter == '"';
    let (mut rest, mut sum, mut before) = (text, 0.0, f64::INFINITY);
    while !rest.is_empty() {
        let (number, more) = rest.split_at_checked(rest.find(is_unit).unwrap_or(rest.len()))?;
        let (unit, more) = more.split_at_checked(more.find(|letter| !is_unit(letter)).unwrap_or(more.len()))?;
        let (factor, lone) = match unit {
            "mm" => (1.0, Lone::Thousands),
            "cm" => (CM, Lone::Decimals),
            "m" => (M, Lone::Decimals),
            "\"" => (INCH, Lone::Decimals),
            "'" => (FOOT, Lone::Decimals),
            "" if before > INCH && before <= FOOT => (INCH, Lone::Decimals),
            word => match meaning(spoken.lengths, word)? {
                LengthUnit::Metre => (M, Lone::Decimals),
                LengthUnit::Inch => (INCH, Lone::Decimals),
                LengthUnit::Foot => (FOOT, Lone::Decimals),
            },
        };
        if factor >= before {
            return None;
        }
        sum += amount(number, lone)? * factor;
        before = factor;
        rest = more.strip_prefix(['.', ',']).unwrap_or(more).trim();
    }
    before.is_finite().then_some(sum)
}
