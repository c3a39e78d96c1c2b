//! Names that are nearly right: one problem instead of two, with the name that was probably meant.

use crate::input::spelling::nearest;
use crate::range::{Key, Range, Wrong};
use crate::words;

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
    near.map_or_else(|| wrong.clone(), |near| Wrong::Text(words::suggestion(wrong, near)))
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
