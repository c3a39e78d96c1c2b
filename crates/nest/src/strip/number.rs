//! Whole numbers as real ones, and back. No length here has more than 53 bits.

/// A whole number as a real one.
#[expect(clippy::cast_precision_loss, reason = "no length has more than 53 bits")]
pub(crate) const fn real(whole: i64) -> f64 {
    whole as f64
}

/// How many, as a real number.
#[expect(clippy::cast_precision_loss, reason = "no count has more than 53 bits")]
pub(crate) const fn count(many: usize) -> f64 {
    many as f64
}

/// The nearest whole number.
pub(crate) fn nearest(real: f64) -> i64 {
    floor(real.round())
}

/// The whole number below or at a real one.
#[expect(clippy::cast_possible_truncation, reason = "a cast keeps what is too large at the bound, and lengths are not")]
pub(crate) fn floor(real: f64) -> i64 {
    real.floor() as i64
}

/// The place among so many cells that a real number from 0 up falls into; the last one for all beyond.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a cast keeps what is outside at the bound"
)]
pub(crate) fn cell(real: f64, many: usize) -> usize {
    let cell = real as usize;
    if cell < many { cell } else { many - 1 }
}
