//! What the unit tests of this crate share: the demo range.

use crate::range::Range;

/// The demo range as text.
pub(crate) const DEMO: &str = include_str!("../../../web/ranges/fenland.toml");

/// The demo range.
pub(crate) fn demo() -> Range {
    Range::parse(DEMO).expect("the demo range is right")
}
