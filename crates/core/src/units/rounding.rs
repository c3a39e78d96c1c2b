//! The one rounding rule.

/// Rounds half away from zero to a whole number, the one rounding rule of this crate.
pub(crate) fn round_half_away(value: f64) -> f64 {
    libm::round(value)
}
