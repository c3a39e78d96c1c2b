//! What people type for a size.

use crate::decimal::read_decimal;
use crate::quantity::{Dim, round_half_away};

/// Reads a size in millimetres unless it names another unit: `1640`, `1 640 mm`, `164 cm`, `1,64 m`,
/// `64 in`, `64 1/2"`. `None` if it is no size.
///
/// ```
/// use slotwright_core::{entry, quantity::Dim};
/// assert_eq!(entry::size("64 1/2 in"), Some(Dim::tenths(16_383)));
/// ```
pub fn size(text: &str) -> Option<Dim> {
    let text = text.trim().to_ascii_lowercase().replace(['\u{202f}', '\u{a0}', '\u{2009}'], " ").replace(',', ".");
    let text = text.replace('\u{2033}', "\"").replace('\u{2032}', "'");
    let end = text.rfind(|letter: char| letter.is_ascii_digit()).map_or(0, |at| at + 1);
    let (number, unit) = text.split_at_checked(end)?;
    let factor = match unit.trim() {
        "" | "mm" => 1.0,
        "cm" => 10.0,
        "m" => 1000.0,
        "in" | "inch" | "inches" | "\"" => 25.4,
        "ft" | "feet" | "'" => 304.8,
        _ => return None,
    };
    let number = if matches!(unit.trim(), "" | "mm") { without_thousands(number) } else { number.into() };
    let mm = amount(&number)? * factor;
    // To a whole tenth: 64 1/2 in are 1638.3 mm.
    Dim::try_from(round_half_away(mm * 10.0) / 10.0).ok()
}

/// A point or comma before exactly three digits stands between thousands: no size has three decimals.
fn without_thousands(number: &str) -> String {
    match number.trim().rsplit_once('.') {
        Some((whole, rest)) if rest.len() == 3 && !whole.is_empty() => format!("{whole}{rest}"),
        _ => number.into(),
    }
}

/// A decimal number, spaces between thousands, or a whole number with a fraction.
fn amount(text: &str) -> Option<f64> {
    if let Some((before, below)) = text.split_once('/') {
        let below = read_decimal(below.trim())?;
        let (whole, above) = before.trim().rsplit_once([' ', '-']).unwrap_or(("0", before));
        let (whole, above) = (read_decimal(whole.trim())?, read_decimal(above.trim())?);
        return Some(whole + above / below).filter(|sum| sum.is_finite());
    }
    let plain: String = text.split_whitespace().collect();
    read_decimal(&plain)
}

/// Reads a diagonal in inches unless it names another unit, in tenths of an inch.
pub fn diagonal(text: &str) -> Option<u16> {
    let bare = text.trim().ends_with(|letter: char| letter.is_ascii_digit());
    let read = if bare { size(&format!("{text} in")) } else { size(text) }?;
    let tenths = round_half_away(f64::from(read) / 2.54);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number of this range")]
    (50.0..=2000.0).contains(&tenths).then_some(tenths as u16)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_are_read_as_people_write_them() {
        for (text, tenths) in [
            ("1640", 16_400),
            (" 1\u{202f}640 mm ", 16_400),
            ("1 640", 16_400),
            ("164cm", 16_400),
            ("1,64 m", 16_400),
            ("1640.5", 16_405),
            ("1,640", 16_400),
            ("1.640 mm", 16_400),
            ("64 in", 16_256),
            ("64 1/2\"", 16_383),
            ("1/2 in", 127),
            ("5 ft", 15_240),
        ] {
            assert_eq!(size(text), Some(Dim::tenths(tenths)), "{text}");
        }
        for text in ["", "wide", "12 stone", "1/0 in", "--5", "1e400", "9999999"] {
            assert_eq!(size(text), None, "{text}");
        }
    }

    #[test]
    fn diagonals_are_inches() {
        assert_eq!(diagonal("55"), Some(550));
        assert_eq!(diagonal("139,7 cm"), Some(550));
        assert_eq!(diagonal("0"), None);
        assert_eq!(diagonal("tall"), None);
    }
}
