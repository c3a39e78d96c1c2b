//! Plain decimal numbers in texts: read and written the same everywhere, and in little code.

use core::fmt;

use crate::units::rounding::round_half_away;

/// Reads a plain decimal number: digits with at most one point, a sign before them, no exponent.
///
/// Exact for up to 15 digits; `None` beyond, or for anything else.
///
/// ```
/// assert_eq!(slotwright_core::units::decimal::read_decimal("-1640.5"), Some(-1640.5));
/// assert_eq!(slotwright_core::units::decimal::read_decimal("1e3"), None);
/// ```
// Source: Clinger, "How to read floating point numbers accurately", PLDI 1990: a whole number below
// 2⁵³ over a power of ten up to 10²² rounds once, hence correctly.
pub fn read_decimal(text: &str) -> Option<f64> {
    let (negative, digits) = text.strip_prefix('-').map_or((false, text), |rest| (true, rest));
    let (whole, rest) = digits.split_once('.').unwrap_or((digits, ""));
    let count = whole.len() + rest.len();
    if whole.is_empty() || count > 15 || digits.ends_with('.') {
        return None;
    }
    let (mut value, mut scale) = (0.0, 1.0);
    for (part, scaled) in [(whole, false), (rest, true)] {
        for byte in part.bytes() {
            if !byte.is_ascii_digit() {
                return None;
            }
            value = value * 10.0 + f64::from(byte - b'0');
            scale *= if scaled { 10.0 } else { 1.0 };
        }
    }
    let value = value / scale;
    Some(if negative { -value } else { value })
}

/// A plain decimal number with at most three decimals, as it is written: what [`read_decimal`] reads.
///
/// Beyond 15 digits before the point it is not exact. It writes a tenth of the code that [`f64`] needs to write
/// itself, and the page has to be small.
///
/// ```
/// use slotwright_core::units::decimal::Plain;
/// assert_eq!(Plain::of(-0.25, 3).to_string(), "-0.25");
/// assert_eq!(Plain::of(1640.004, 2).to_string(), "1640");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Plain {
    thousandths: i64,
}

impl Plain {
    /// A number rounded to so many decimals, at most three.
    pub fn of(value: f64, decimals: u32) -> Self {
        let step = [1000, 100, 10, 1].get(decimals as usize).copied().unwrap_or(1);
        #[expect(clippy::cast_possible_truncation, reason = "`as` saturates")]
        let steps = round_half_away(value * 1000.0 / f64::from(step)) as i64;
        Self { thousandths: steps.saturating_mul(step.into()) }
    }
}

impl fmt::Display for Plain {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (whole, rest) = (self.thousandths.unsigned_abs() / 1000, self.thousandths.unsigned_abs() % 1000);
        let sign = if self.thousandths < 0 { "-" } else { "" };
        match (rest, rest % 100, rest % 10) {
            (0, ..) => write!(f, "{sign}{whole}"),
            (_, 0, _) => write!(f, "{sign}{whole}.{}", rest / 100),
            (_, _, 0) => write!(f, "{sign}{whole}.{:02}", rest / 10),
            _ => write!(f, "{sign}{whole}.{rest:03}"),
        }
    }
}
