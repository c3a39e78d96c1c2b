//! Money in integer minor units (ISO 4217), with checked arithmetic.

use core::fmt;
use core::iter::Sum;
use core::ops::{Add, Sub};

use serde::Serialize;

use crate::units::rounding::round_half_away;

/// An amount in the minor unit of the range's currency (cents for EUR).
///
/// Arithmetic saturates instead of wrapping; [`Money::LARGEST`] is far above any order.
///
/// ```
/// use slotwright_core::units::money::Money;
/// // 8 % of 1.25 is 0.10: half away from zero, once per tax total.
/// assert_eq!(Money::minor(125).share(80), Money::minor(10));
/// ```
#[derive(Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(transparent)]
pub struct Money(i64);

impl Money {
    /// Nothing.
    pub const ZERO: Self = Self(0);
    /// 2⁵³ − 1: every amount survives a JSON number.
    pub const LARGEST: Self = Self(9_007_199_254_740_991);

    /// An amount in minor units.
    pub const fn minor(value: i64) -> Self {
        Self(if value > Self::LARGEST.0 {
            Self::LARGEST.0
        } else if value < -Self::LARGEST.0 {
            -Self::LARGEST.0
        } else {
            value
        })
    }

    /// The amount in minor units.
    pub const fn in_minor(self) -> i64 {
        self.0
    }

    /// Rounds a computed amount to whole minor units, half away from zero.
    #[expect(clippy::cast_possible_truncation, reason = "rounded and finite; `as` saturates, `minor` bounds")]
    pub fn to_minor(value: f64) -> Self {
        Self::minor(round_half_away(value) as i64)
    }

    /// The given per-mille share, half away from zero in integers.
    // Source: HMRC VATREC12030: below half a penny down, from half a penny up.
    #[must_use]
    pub fn share(self, per_mille: u32) -> Self {
        let product = i128::from(self.0) * i128::from(per_mille);
        let half = if product < 0 { -500 } else { 500 };
        Self::saturated((product + half) / 1000)
    }

    /// The price whose given per-mille share is margin, over this cost: p = c / (1 − m).
    ///
    /// Half away from zero; a margin of 1000 or more is taken as 999.
    #[must_use]
    pub fn with_margin(self, per_mille: u32) -> Self {
        let rest = i128::from(1000 - per_mille.min(999));
        let product = i128::from(self.0) * 2000;
        let half = if product < 0 { -rest } else { rest };
        Self::saturated((product + half) / (2 * rest))
    }

    fn saturated(value: i128) -> Self {
        let largest = i128::from(Self::LARGEST.0);
        let bounded = value.clamp(-largest, largest);
        Self(i64::try_from(bounded).unwrap_or(Self::LARGEST.0))
    }
}

/// The sign of a currency of that ISO 4217 code; the code itself where none is usual.
pub fn symbol_of(currency: &str) -> &str {
    match currency {
        "EUR" => "€",
        "GBP" => "£",
        "USD" => "$",
        other => other,
    }
}

impl Add for Money {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::minor(self.0.saturating_add(other.0))
    }
}

impl Sub for Money {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::minor(self.0.saturating_sub(other.0))
    }
}

impl Sum for Money {
    fn sum<I: Iterator<Item = Self>>(amounts: I) -> Self {
        amounts.fold(Self::ZERO, Add::add)
    }
}

impl fmt::Debug for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} minor", self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Source: worked from p = c / (1 − m): 40 % on 80 is 133.33, 20 % on 80 is 100.
    #[test]
    fn margin_is_a_share_of_the_price() {
        assert_eq!(Money::minor(8000).with_margin(400), Money::minor(13_333));
        assert_eq!(Money::minor(8000).with_margin(200), Money::minor(10_000));
    }

    // Source: public bookkeeping example: 10 % of 2.48 is 0.25 on the total.
    #[test]
    fn ties_go_away_from_zero() {
        assert_eq!(Money::minor(248).share(100), Money::minor(25));
        assert_eq!(Money::minor(125).share(100), Money::minor(13));
        assert_eq!(Money::minor(-125).share(100), Money::minor(-13));
        assert_eq!(Money::to_minor(12.5), Money::minor(13));
        assert_eq!(Money::to_minor(-12.5), Money::minor(-13));
    }

    #[test]
    fn nothing_wraps() {
        let most = Money::LARGEST;
        assert_eq!(most + most, most);
        assert_eq!(most.with_margin(1000), most);
        assert_eq!(Money::to_minor(f64::INFINITY), most);
        assert_eq!(Money::to_minor(f64::NAN), Money::ZERO);
    }
}
