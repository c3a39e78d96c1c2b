//! Typos in a range file that leave it unreadable, named as what they are.

use crate::range::{Problem, RangeProblems, Wrong};
use crate::words;
use crate::words::remark::Typo;

/// The same problems; a line that cannot be read for a usual typo has that one instead of all that follows from it.
pub(super) fn named(text: &str, problems: RangeProblems) -> RangeProblems {
    let mut all: Vec<Problem> = Vec::new();
    let mut mistyped = 0;
    for problem in problems.0 {
        // What is no TOML has no path yet.
        let unread = problem.path.is_empty() && matches!(problem.wrong, Wrong::Text(_));
        if unread && problem.line == mistyped {
            continue;
        }
        let line = text.lines().nth(problem.line.saturating_sub(1)).filter(|_| unread);
        match line.and_then(typo) {
            Some((column, said)) => {
                mistyped = problem.line;
                all.push(Problem { column, wrong: Wrong::Text(said), ..problem });
            }
            None => all.push(problem),
        }
    }
    RangeProblems(all)
}

/// A line without its comment, and with a mark in place of every character of a text that stands in quotation marks.
fn code(line: &str) -> String {
    let (mut code, mut quote) = (String::new(), None);
    for character in line.chars() {
        match quote {
            Some(mark) => {
                code.push('"');
                quote = Some(mark).filter(|mark| *mark != character);
            }
            None if character == '#' => break,
            None if character == '"' || character == '\'' => {
                code.push('"');
                quote = Some(character);
            }
            None => code.push(character),
        }
    }
    code
}

/// The first typo of a line: its column and what it is.
fn typo(line: &str) -> Option<(usize, String)> {
    let code = code(line);
    let line = code.as_str();
    let column = |rest: &str| line.strip_suffix(rest).map_or(1, |before| before.chars().count() + 1);
    if let Some((at, mark)) =
        line.char_indices().find(|(_, mark)| "\u{201c}\u{201d}\u{201e}\u{2018}\u{2019}".contains(*mark))
        && line.get(..at).is_some_and(|before| before.trim_end().ends_with(['=', '[', ',']))
    {
        return Some((column(line.get(at..)?), words::typo(Typo::NoQuote(mark))));
    }
    let mut rest = line;
    while let Some((_, value)) = rest.split_once('=') {
        let listed = value.trim_start().starts_with('[');
        let value = value.trim_start_matches([' ', '\t', '[']);
        rest = value;
        if value.starts_with('"') {
            continue;
        }
        // In a list a comma stands between two numbers.
        let said = comma(value).filter(|_| !listed).or_else(|| bare(value));
        if let Some(said) = said {
            return Some((column(value), said));
        }
    }
    None
}

/// A number whose decimals stand after a comma.
fn comma(value: &str) -> Option<String> {
    let digits = |text: &str| text.chars().take_while(char::is_ascii_digit).count();
    let whole = value.get(..digits(value)).filter(|whole| !whole.is_empty())?;
    let after = value.get(whole.len()..)?.strip_prefix(',')?;
    let rest = after.get(..digits(after)).filter(|rest| !rest.is_empty())?;
    Some(words::typo(Typo::Comma(whole, rest)))
}

/// A text without quotation marks.
fn bare(value: &str) -> Option<String> {
    let word = value.split([',', '}', ']']).next()?.trim_end();
    let known = ["true", "false", "inf", "nan"];
    let is_text = word.starts_with(|letter: char| letter.is_alphabetic()) && !known.contains(&word);
    let shown: String = word.chars().take(40).collect();
    is_text.then(|| words::typo(Typo::Bare(&shown)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn typos_are_named_with_their_column() {
        for (line, found) in [
            ("key = fenland", Some((7, "a text stands in quotation marks: write \"fenland\""))),
            ("uses = [body, \"back\"]  # body", Some((9, "a text stands in quotation marks: write \"body\""))),
            ("clearance_mm = 0,15   # common", Some((16, "0,15 has a comma for its decimals: write 0.15"))),
            ("w = { least = 900,5, most = 1 }", Some((15, "900,5 has a comma for its decimals: write 900.5"))),
            ("name = \u{201c}Fen\u{201d}", Some((8, "\u{201c} is no quotation mark here: write \" before and after"))),
            ("round = true", None),
            ("a = [17,68]", None),
            ("name = \"Fen, 0,15 = a\"", None),
            ("a = 'b = c' # d = e", None),
            ("[[board", None),
        ] {
            assert_eq!(typo(line), found.map(|(column, said)| (column, said.into())), "{line}");
        }
    }
}
