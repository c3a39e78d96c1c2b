//! What people read stands in the core's catalogue: no crate that shows something holds English of its own.

use std::collections::BTreeSet;
use std::path::Path;

use anyhow::Result;

use super::files::texts;
use super::literals::{Literal, literals};
use crate::root::Root;

/// Whether a file shows people something: what is checked. Arguments and errors of the tool are not, since their texts
/// stand beside the types that they explain.
fn shows(path: &str) -> bool {
    let folders = [
        "web/src/",
        "web/orders/src/",
        "web/packs/src/",
        "web/adviser/src/",
        "web/scene/src/",
        "crates/stage/src/",
        "crates/cutpack/src/",
        "crates/shop/src/commands",
    ];
    let files = ["crates/shop/src/output.rs", "crates/shop/src/table.rs"];
    Path::new(path).extension().is_some_and(|end| end == "rs")
        && !path.ends_with("/tests.rs")
        && (files.contains(&path) || folders.iter().any(|folder| path.starts_with(folder)))
}

/// Attributes of elements and of components whose value is read by people.
const READ: [&str; 8] = ["alt", "aria-label", "aria-valuetext", "label", "placeholder", "title", "unit", "wrong"];

/// Classes that have no style of their own: marks for scripts and tests.
const UNSTYLED: [&str; 3] = ["bay", "hint", "tops"];

/// Words with a capital that are no English: keys' names by the DOM, and the program's own.
const NAMES: [&str; 7] = ["Control+Enter", "End", "Enter", "Home", "Shift", "Slotwright", "Tab"];

/// Whether people would read a literal as English.
fn is_english(literal: &Literal<'_>, classes: &BTreeSet<String>) -> bool {
    let text = without_markup(&literal.text);
    let has_letters = has_letters(&text);
    let is_name = NAMES.contains(&text.as_str());
    let is_class = text.split_whitespace().all(|word| word == "{}" || classes.contains(word));
    if !has_letters || is_name || is_message_of_a_check(literal) || is_attribute_of_html(literal) {
        return false;
    }
    if is_read(literal) {
        return true;
    }
    let is_query = text.starts_with('(') && text.ends_with(')');
    !is_class && !is_query && (is_capitalised(&text) || has_two_words(&text))
}

fn has_letters(text: &str) -> bool {
    text.bytes().any(|byte| byte.is_ascii_alphabetic())
}

/// A text with `{}` for each place that is filled, and without tags and attributes.
fn without_markup(text: &str) -> String {
    let (mut plain, mut rest) = (String::new(), text);
    while let Some(letter) = rest.chars().next() {
        let after = |close: char| rest.split_once(close).map(|(_, after)| after);
        rest = match letter {
            '{' if after('}').is_some() => {
                plain.push_str("{}");
                after('}').unwrap_or_default()
            }
            '<' => after('>').unwrap_or_default(),
            '=' if rest.starts_with("=\"") => {
                // The name before the sign, and the value after it.
                plain.truncate(plain.trim_end_matches(|c: char| c.is_ascii_alphanumeric() || "-:".contains(c)).len());
                rest.get(2..).and_then(|value| value.split_once('"')).map_or("", |(_, after)| after)
            }
            _ => {
                plain.push(letter);
                rest.get(letter.len_utf8()..).unwrap_or_default()
            }
        };
    }
    plain.trim().to_string()
}

/// `Close`, but neither `ArrowUp` nor `POSITION`.
fn is_capitalised(text: &str) -> bool {
    let word: String = text.chars().take_while(char::is_ascii_alphanumeric).collect();
    let mut letters = word.chars();
    letters.next().is_some_and(|first| first.is_ascii_uppercase())
        && letters.next().is_some()
        && letters.all(|letter| !letter.is_ascii_uppercase())
        && word.chars().any(|letter| letter.is_ascii_lowercase())
}

/// Two words side by side, or a word beside a place that is filled: `is there by`, `{} kg`, `{}: less`.
fn has_two_words(text: &str) -> bool {
    let words: Vec<&str> = text.split([' ', '\n']).collect();
    words.iter().zip(words.iter().skip(1)).any(|(one, other)| {
        let first = one.trim_end_matches([',', '.', ':', ';', ')']);
        let second = other.trim_start_matches('(').trim_end_matches([',', '.', ':', ';', ')', '?']);
        (is_word(first) || first == "{}") && is_word(second) || is_word(first) && second == "{}"
    })
}

fn is_word(text: &str) -> bool {
    let letter = |letter: char| letter.is_ascii_alphabetic() || "-'\u{2019}".contains(letter);
    text.starts_with(|first: char| first.is_ascii_alphabetic()) && text.chars().all(letter)
}

/// The value of an attribute that is read, or what stands between two tags.
fn is_read(literal: &Literal<'_>) -> bool {
    let before = literal.before.trim_end();
    let is_value = READ.iter().any(|name| {
        let name = literal.before.strip_suffix('=').and_then(|before| before.strip_suffix(name));
        name.is_some_and(|rest| rest.ends_with([' ', '\n']))
    });
    let after_tag = before.ends_with('>') && !before.ends_with("=>") && !before.ends_with("->");
    is_value || (after_tag && !before.ends_with(" >")) || literal.after.trim_start().starts_with("</")
}

/// What only a developer reads, when a check fails.
fn is_message_of_a_check(literal: &Literal<'_>) -> bool {
    let statement = literal.before.rsplit([';', '}']).next().unwrap_or_default();
    statement.contains("assert!(") || statement.contains("assert_eq!(") || statement.contains("panic!(")
}

/// The value in a pair whose first half is an attribute that browsers read.
fn is_attribute_of_html(literal: &Literal<'_>) -> bool {
    literal.before.ends_with("(\"ar-modes\", ")
}

/// Classes that a style sheet names, and those without a style.
fn classes(sheet: &str) -> BTreeSet<String> {
    let name = |rest: &str| -> String {
        rest.chars().take_while(|letter| letter.is_ascii_alphanumeric() || *letter == '-').collect()
    };
    let named = sheet.split('.').skip(1).map(name).filter(|name| has_letters(name));
    named.chain(UNSTYLED.map(String::from)).collect()
}

#[test]
fn no_english_stands_outside_the_catalogue() -> Result<()> {
    let texts = texts(&Root::find()?)?;
    let is_style = |path: &str| path.starts_with("web/styles/");
    let sheets: String = texts.iter().filter(|(path, _)| is_style(path)).map(|(_, text)| text.as_str()).collect();
    let classes = classes(&sheets);
    let mut found = Vec::new();
    for (path, text) in texts.iter().filter(|(path, _)| shows(path)) {
        let english = literals(text).into_iter().filter(|literal| is_english(literal, &classes));
        found.extend(english.map(|literal| format!("{path}:{}: {:?}", literal.line, literal.text)));
    }
    assert!(found.is_empty(), "move these to crates/core/src/words:\n{}", found.join("\n"));
    Ok(())
}

/// The page writes labels into HTML as they are, and every text of the catalogue is said somewhere.
#[test]
fn labels_are_plain_and_used() -> Result<()> {
    let texts = texts(&Root::find()?)?;
    let text = |wanted: &str| texts.iter().find(|(path, _)| path == wanted).map_or("", |(_, text)| text);
    for (catalogue, users) in [("page", "web/src/"), ("tool", "crates/shop/src/"), ("help", "crates/shop/src/args")] {
        let catalogue = text(&format!("crates/core/src/words/english/{catalogue}.rs"));
        let labels = catalogue.split("fn message").next().unwrap_or_default();
        let names: Vec<&str> = labels.lines().filter_map(|line| line.trim().strip_prefix("Label::")).collect();
        assert!(names.len() > 30, "{names:?}");
        let used: String =
            texts.iter().filter(|(path, _)| path.starts_with(users)).map(|(_, text)| text.as_str()).collect();
        for name in names.iter().filter_map(|line| line.split(' ').next()) {
            let name = format!("Label::{name}");
            let whole = |rest: &str| !rest.starts_with(|next: char| next.is_ascii_alphanumeric());
            assert!(used.split(&name).skip(1).any(whole), "nobody says {name}");
        }
        for literal in literals(labels) {
            assert!(!literal.text.is_empty() && !literal.text.contains(['<', '>', '&']), "{}", literal.text);
        }
    }
    Ok(())
}

#[test]
fn english_is_told_from_what_programs_read() {
    let classes = classes(".tell.stop { color: red } .bay { } p.lit, .choices:hover { } .row { }");
    for (code, english) in [
        ("say(\"Close\")", true),
        ("say(\"is there by\")", true),
        ("format!(\"{} kg\", mass)", true),
        ("format!(\"{label}: less\")", true),
        ("format!(\"Bay {number}\")", true),
        ("<h3>\"any\"</h3>", true),
        ("<b>{word}</b>\"any\"</p>", true),
        ("<Field unit=\"mm\" show/>", true),
        ("<p title=\"any\">", true),
        ("push(\"<title>Step {n}</title>\")", true),
        ("Some(true) => \"cannot be had\"", true),
        ("Some(true) => \"shut\"", false),
        ("say(&[\"turn\", \"0.3\"])", false),
        ("(\"tell stop\", 1)", false),
        ("<p class=\"bay lit\">", false),
        ("format!(\"choices {look}\")", false),
        ("format!(\"M{from} 0H{to}V6Z\")", false),
        ("write(\"<path class=\\\"{class}\\\" d=\\\"M2 2\\\"/>\")", false),
        ("put(\" fill=\\\"none\\\" stroke-dasharray=\\\"12 9\\\"\")", false),
        ("prefers(\"(prefers-color-scheme: dark)\")", false),
        ("match key { \"ArrowUp\" | \"Home\" => 1 }", false),
        ("json!({ \"POSITION\": positions, \"baseColorFactor\": 1 })", false),
        ("// It says \"Close\" here.\nsay(1)", false),
        ("#[expect(dead_code, reason = \"it is said later\")]\nfn a() {}", false),
        ("debug_assert!(lies, \"a leaf faces the front\")", false),
        ("fn a() {}\n#[cfg(test)]\nmod tests { say(\"is there by\") }", false),
    ] {
        let found = literals(code).iter().any(|literal| is_english(literal, &classes));
        assert_eq!(found, english, "{code}");
    }
}
