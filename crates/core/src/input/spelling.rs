//! Names that are nearly right.

/// The name that is nearest, if it is near: one letter in three differs at most.
// Our own bound.
pub(crate) fn nearest<'a>(name: &str, names: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    let near = names.map(|other| (distance(name, other), other)).filter(|(distance, other)| {
        let letters = name.chars().count().max(other.chars().count());
        *distance > 0 && *distance * 3 <= letters
    });
    near.min_by_key(|(distance, _)| *distance).map(|(_, other)| other)
}

/// How many letters have to be put in, left out, changed, or changed with their neighbour.
// Source: optimal string alignment; L. Boytsov, "Indexing methods for approximate dictionary searching", 2011.
fn distance(one: &str, other: &str) -> usize {
    let other: Vec<char> = other.chars().collect();
    let (mut before, mut last): (Vec<usize>, Vec<usize>) = (Vec::new(), (0..=other.len()).collect());
    let mut letter_before = None;
    for (row, letter) in one.chars().enumerate() {
        let mut now = vec![row + 1];
        for (column, with) in other.iter().enumerate() {
            let cell = |line: &[usize], at: usize| line.get(at).copied().unwrap_or(usize::MAX / 2);
            let changed = cell(&last, column) + usize::from(letter != *with);
            let mut least = changed.min(cell(&last, column + 1) + 1).min(cell(&now, column) + 1);
            let swapped = column > 0 && letter_before == Some(*with) && other.get(column - 1) == Some(&letter);
            if swapped {
                least = least.min(cell(&before, column - 1) + 1);
            }
            now.push(least);
        }
        before = core::mem::replace(&mut last, now);
        letter_before = Some(letter);
    }
    last.last().copied().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_are_counted() {
        for (one, other, expected) in [
            ("", "", 0),
            ("", "mm", 2),
            ("rise_mm", "rise_mm", 0),
            ("raise_mm", "rise_mm", 1),
            ("handlung", "handling", 1),
            ("finsih", "finish", 1),
            ("kitten", "sitting", 3),
        ] {
            assert_eq!(distance(one, other), expected, "{one} {other}");
            assert_eq!(distance(other, one), expected, "{other} {one}");
        }
    }

    #[test]
    fn what_is_far_is_not_meant() {
        let names = ["tab_mm", "chase_mm", "cutter_mm"];
        assert_eq!(nearest("cuter_mm", names.into_iter()), Some("cutter_mm"));
        assert_eq!(nearest("price", names.into_iter()), None);
        assert_eq!(nearest("tab_mm", [].into_iter()), None);
    }
}
