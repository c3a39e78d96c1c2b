//! Version numbers as programs print them.

/// A released version: major, minor, patch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Version(pub(crate) u32, pub(crate) u32, pub(crate) u32);

impl Version {
    /// The first version number in a line such as `rustc 1.96.0 (…)` or `v20.20.2`.
    pub(crate) fn first_in(line: &str) -> Option<Self> {
        line.split_whitespace().find_map(Self::parse)
    }

    fn parse(word: &str) -> Option<Self> {
        let word = word.strip_prefix('v').unwrap_or(word);
        // A pre-release or build mark after the numbers does not count.
        let numbers = word.split(['-', '+']).next()?;
        let mut parts = numbers.split('.').map(str::parse);
        let version = Self(parts.next()?.ok()?, parts.next()?.ok()?, parts.next()?.ok()?);
        parts.next().is_none().then_some(version)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_version_in_a_line_is_found() {
        for (line, expected) in [
            ("rustc 1.96.0 (ac68faa20 2026-05-25) (built from a source tarball)", Some(Version(1, 96, 0))),
            ("trunk 0.21.14", Some(Version(0, 21, 14))),
            ("wasm-bindgen 0.2.130", Some(Version(0, 2, 130))),
            ("v20.20.2", Some(Version(20, 20, 2))),
            ("rustc 1.97.0-nightly (x)", Some(Version(1, 97, 0))),
            ("wasm-opt version 132 (version_132)", None),
            ("1.2", None),
            ("1.2.3.4", None),
            ("", None),
        ] {
            assert_eq!(Version::first_in(line), expected, "{line:?}");
        }
    }

    #[test]
    fn versions_compare_as_numbers_not_as_text() {
        assert!(Version(1, 100, 0) > Version(1, 95, 9));
    }
}
