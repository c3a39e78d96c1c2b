//! Names that are nearly right: one problem instead of two, with the name that was probably meant.

use crate::range::{Key, Range, Wrong};

/// A problem with its place.
type Placed = (usize, String, Wrong);

/// The same problems, where a misspelt name and the missing one are told as one.
///
/// `absent` are the paths of what may be left out and is.
pub(super) fn explained(problems: &[Placed], absent: &[String], range: Option<&Range>) -> Vec<Placed> {
    let missing = problems.iter().filter(|(.., wrong)| *wrong == Wrong::Missing).map(|(_, path, _)| path);
    let open: Vec<&String> = missing.chain(absent).collect();
    let mut meant: Vec<String> = Vec::new();
    let mut out = Vec::new();
    for (offset, path, wrong) in problems {
        let wrong = match wrong {
            Wrong::Strange => {
                let (section, name) = split(path);
                let names = open.iter().filter(|other| split(other).0 == section && !meant.contains(other));
                let near = nearest(name, names.map(|other| split(other).1));
                meant.extend(
                    near.map(|near| if section.is_empty() { near.into() } else { format!("{section}.{near}") }),
                );
                suggest(wrong, near)
            }
            Wrong::Unknown { what, key } => {
                let near = range.and_then(|range| nearest(key.as_str(), keys(range, what).map(Key::as_str)));
                suggest(wrong, near)
            }
            wrong => wrong.clone(),
        };
        out.push((*offset, path.clone(), wrong));
    }
    out.retain(|(_, path, wrong)| *wrong != Wrong::Missing || !meant.contains(path));
    out
}

fn suggest(wrong: &Wrong, near: Option<&str>) -> Wrong {
    near.map_or_else(|| wrong.clone(), |near| Wrong::Text(format!("{wrong}; did you mean \"{near}\"?")))
}

/// The section of a path, and the name within it.
fn split(path: &str) -> (&str, &str) {
    path.rsplit_once('.').unwrap_or(("", path))
}

/// The keys of what can be referred to.
fn keys<'a>(range: &'a Range, what: &str) -> Box<dyn Iterator<Item = &'a Key> + 'a> {
    match what {
        "board" => Box::new(range.boards.iter().map(|board| &board.key)),
        "finish" => Box::new(range.finishes.iter().map(|finish| &finish.key)),
        "hole" => Box::new(range.holes.iter().map(|hole| &hole.key)),
        _ => Box::new(range.devices.iter().map(|device| &device.key)),
    }
}

/// The name that is nearest, if it is near: one letter in three differs at most.
// Our own bound.
fn nearest<'a>(name: &str, names: impl Iterator<Item = &'a str>) -> Option<&'a str> {
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
