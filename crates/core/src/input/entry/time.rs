//! How long work takes, as people write it.

use super::number::{Lone, amount, plain};
use super::{LARGEST, Refused, TimeUnit, meaning};
use crate::units::rounding::round_half_away;

const HOUR: f64 = 60.0;

/// Reads how long something takes, in whole minutes, from minutes unless another unit is named: `600`, `1 200`, `1,200 min`, `10 h`,
/// `1.5 hours`, `10 h 30 min`.
///
/// # Errors
///
/// It is none, or out of all proportion.
pub fn minutes(text: &str, times: &[(&str, TimeUnit)]) -> Result<u32, Refused> {
    let text = plain(text);
    let minutes = amount(&text, Lone::Thousands).or_else(|| sum(&text, times)).ok_or(Refused::Unread)?;
    let whole = round_half_away(minutes);
    if whole > LARGEST {
        return Err(Refused::Beyond);
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number of this range")]
    Ok(whole as u32)
}

/// Hours and minutes with their units; minutes may go without theirs after hours.
fn sum(text: &str, times: &[(&str, TimeUnit)]) -> Option<f64> {
    let (mut rest, mut sum, mut before) = (text, 0.0, f64::INFINITY);
    while !rest.is_empty() {
        let is_unit = |letter: char| letter.is_ascii_alphabetic();
        let (number, more) = rest.split_at_checked(rest.find(is_unit).unwrap_or(rest.len()))?;
        let (unit, more) = more.split_at_checked(more.find(|letter| !is_unit(letter)).unwrap_or(more.len()))?;
        let (factor, lone) = match unit {
            "h" => (HOUR, Lone::Decimals),
            "min" => (1.0, Lone::Thousands),
            "" if before.is_finite() => (1.0, Lone::Thousands),
            word => match meaning(times, word)? {
                TimeUnit::Hour => (HOUR, Lone::Decimals),
                TimeUnit::Minute => (1.0, Lone::Thousands),
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
