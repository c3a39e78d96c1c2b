//! What the unit tests of this crate share: the demo range.

use crate::range::Range;

/// The demo range as text.
pub(crate) const DEMO: &str = include_str!("../../../web/ranges/fenland.toml");

/// The demo range.
pub(crate) fn demo() -> Range {
    Range::parse(DEMO).expect("the demo range is right")
}

/// How many cases a law is tried on: as many as usual, or as proptest's own variable `PROPTEST_CASES` says.
pub(crate) fn cases(usual: u32) -> proptest::test_runner::Config {
    let asked = std::env::var("PROPTEST_CASES").ok().and_then(|cases| cases.parse().ok());
    proptest::test_runner::Config::with_cases(asked.unwrap_or(usual))
}
