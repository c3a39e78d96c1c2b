//! What the whole-system tests share.

pub mod paper;
pub mod parity;

use slotwright_core::range::{Range, RangeProblems};

/// The demo range as the app fetches it.
pub const DEMO: &str = include_str!("../../web/ranges/fenland.toml");

/// The demo range.
///
/// # Errors
///
/// What is wrong with it.
pub fn demo() -> Result<Range, RangeProblems> {
    Range::parse(DEMO)
}
