//! What somebody meant who mistyped a name.

/// The known name that is nearest to what was typed, if any is near: one letter in three may differ, or the end lack.
///
/// The distance counts letters put in, left out and exchanged.
// Source: Wagner and Fischer, "The string-to-string correction problem", JACM 21(1), 1974.
pub(crate) fn meant<'a>(typed: &str, known: impl IntoIterator<Item = &'a str>) -> Option<String> {
    let far = |name: &str| if !typed.is_empty() && name.starts_with(typed) { 1 } else { distance(typed, name) };
    let (distance, name) = known.into_iter().map(|name| (far(name), name)).min()?;
    (distance <= (typed.chars().count() / 3).max(1)).then(|| name.into())
}

fn distance(one: &str, other: &str) -> usize {
    let other: Vec<char> = other.chars().collect();
    let mut row: Vec<usize> = (0..=other.len()).collect();
    for (at, letter) in one.chars().enumerate() {
        let mut next = vec![at + 1];
        for ((before, over), known) in row.iter().zip(row.iter().skip(1)).zip(&other) {
            let put_in = next.last().map_or(0, |last| last + 1);
            next.push((before + usize::from(letter != *known)).min(over + 1).min(put_in));
        }
        row = next;
    }
    row.last().copied().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_is_understood_and_another_name_is_not() {
        let known = ["birch-18", "birch-12"];
        for (typed, name) in [
            ("birch18", Some("birch-18")),
            ("brich-12", Some("birch-12")),
            ("birch", Some("birch-12")),
            ("oak", None),
            ("", None),
        ] {
            assert_eq!(meant(typed, known).as_deref(), name, "{typed}");
        }
        // Published: "kitten" and "sitting" are three apart.
        assert_eq!((distance("kitten", "sitting"), distance("", "abc")), (3, 3));
    }
}
