//! Where texts for people stand: in the core's catalogues alone.

use std::collections::BTreeSet;
use std::path::Path;

use anyhow::Result;

use super::files::texts;
use super::literals::{Literal, literals};
use crate::root::Root;

const CORE: &str = "crates/core/src/";

/// The folder of the catalogues; each is a folder in it.
const CATALOGUES: &str = "words";

/// Symbols of units are the same in all languages. Source: SI brochure, 9th edition, 5.2.
const UNITS: [&str; 2] = ["mm", "kg"];

/// Modules whose literals are parts of files.
const FILES: [(&str, &str); 1] = [("choice/compact.rs", "keys of the compact text, which is TOML")];

/// What looks like texts and is none: a module, a literal of it, and what that is.
const CODES: [(&str, &str, &str); 6] = [
    ("joint.rs", "{} in {} {}", "the code of a joint"),
    ("money.rs", "{} minor", "for debugging"),
    ("quantity.rs", "in ", "a description in schemas"),
    ("quantity.rs", "in mm, at most one decimal", "a description in schemas"),
    ("quantity.rs", "Dim", "a name in schemas"),
    ("rules/id.rs", "Rule", "a name in schemas"),
];

/// Whether a literal has words for people, and not a key or a code: several words, or a piece of a sentence.
fn is_text(literal: &str) -> bool {
    let text = without_places(literal);
    let words = text
        .split([' ', '\n'])
        .map(|word| word.trim_matches(|letter: char| letter.is_ascii_punctuation()))
        .filter(|word| {
            word.len() > 1
                && !UNITS.contains(word)
                && word.chars().all(|letter| letter.is_alphabetic() || letter == '-')
        })
        .count();
    let mut letters = text.chars();
    let is_capital = letters.next().is_some_and(char::is_uppercase) && letters.next().is_some_and(char::is_lowercase);
    let is_piece = text.starts_with([' ', ',']) || text.ends_with(' ') || is_capital;
    words > 1 || words == 1 && is_piece
}

/// A literal without the places of figures.
fn without_places(literal: &str) -> String {
    let mut depth = 0_i32;
    let is_outside = |letter: &char| {
        depth += i32::from(*letter == '{') - i32::from(*letter == '}');
        depth == 0 && *letter != '}'
    };
    literal.replace("{{", "").replace("}}", "").chars().filter(is_outside).collect()
}

/// What only a developer reads, when a check fails.
fn is_of_an_assertion(literal: &Literal<'_>) -> bool {
    literal.before.rsplit([';', '}']).next().is_some_and(|statement| statement.contains("assert!("))
}

#[test]
fn texts_for_people_stand_in_the_catalogues() -> Result<()> {
    let (mut strays, mut met) = (Vec::new(), BTreeSet::new());
    for (path, source) in texts(&Root::find()?)? {
        let Some(module) = path.strip_prefix(CORE).map(Path::new) else { continue };
        let is_catalogue = module.starts_with(CATALOGUES) && module.components().count() > 2;
        if is_catalogue || ["tests", "tests.rs", "testing.rs"].iter().any(|test| has(module, test)) {
            continue;
        }
        for found in literals(&source).iter().filter(|found| is_text(&found.text) && !is_of_an_assertion(found)) {
            let literal = found.text.as_str();
            let file = FILES.iter().find(|(file, _)| module.ends_with(file)).map(|(file, _)| *file);
            let code = CODES.iter().find(|(file, code, _)| module.ends_with(file) && *code == literal);
            match file.or(code.map(|(_, code, _)| *code)) {
                Some(known) => drop(met.insert(known)),
                None => strays.push(format!("{path}:{}: {literal:?}", found.line)),
            }
        }
    }
    assert!(strays.is_empty(), "move to {CORE}{CATALOGUES}/english:\n{}", strays.join("\n"));
    // No exception stays that nothing needs.
    let known: BTreeSet<&str> = FILES.iter().map(|(file, _)| *file).chain(CODES.iter().map(|code| code.1)).collect();
    assert_eq!(met, known);
    Ok(())
}

/// Whether a part of a path has this name.
fn has(path: &Path, name: &str) -> bool {
    path.components().any(|part| part.as_os_str() == name)
}

#[test]
fn a_text_is_told_from_keys_codes_and_messages_of_errors() {
    for (literal, is) in [
        ("The {about} is {found}; the most is {allowed}.", true),
        (" and ", true),
        ("Open", true),
        ("start_bays.{bay}.fill", false),
        ("width_mm", false),
        ("{sign}{whole}.{tenth}", false),
        ("left", false),
        ("EUR", false),
    ] {
        assert_eq!(is_text(literal), is, "{literal}");
    }
}

#[test]
fn what_is_no_text_of_the_program_is_passed_over() {
    let source = "#[error(\"the file has {bytes} bytes\")]\nstruct Large; // \"a comment of it\"\n\
        fn told() -> String {\n debug_assert!(false, \"what cannot happen\");\n format!(\"It is so.\")\n}\n\
        #[cfg(test)]\nmod tests { const SAID: &str = \"in a test\"; }";
    let found = literals(source);
    let texts: Vec<&str> =
        found.iter().filter(|found| !is_of_an_assertion(found)).map(|found| found.text.as_str()).collect();
    assert_eq!(texts, ["It is so."]);
}

/// So that another language changes nothing else.
#[test]
fn languages_are_named_in_the_catalogues_alone() -> Result<()> {
    let all = texts(&Root::find()?)?;
    let named = |path: &str, text: &str| {
        let code = text.split("#[cfg(test)]\nmod tests").next().unwrap_or_default();
        let is_catalogue = path.strip_prefix(CORE).is_some_and(|module| module.starts_with(CATALOGUES));
        let is_test = path.contains("/tests/") || path.ends_with("tests.rs") || path.starts_with("crates/xtask/");
        path.contains("/src/") && !is_catalogue && !is_test && code.contains("Locale::")
    };
    let named: Vec<&str> = all.iter().filter(|(path, text)| named(path, text)).map(|(path, _)| path.as_str()).collect();
    assert!(named.is_empty(), "a language is named in {}", named.join(", "));
    Ok(())
}

/// The compiler asks for whatever a catalogue lacks, and sentences are written out as they are read.
#[test]
fn catalogues_say_everything_and_change_no_letter() -> Result<()> {
    for (path, text) in texts(&Root::find()?)? {
        let Some(module) = path.strip_prefix(CORE).filter(|module| module.starts_with("words/")) else { continue };
        if !has(Path::new(module), "tests.rs") {
            for what in [" _ =>", "uppercase(", "lowercase("] {
                assert!(!text.contains(what), "{path} has {what:?}");
            }
        }
    }
    Ok(())
}
