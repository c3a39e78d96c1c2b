//! Range files.

use proptest::prelude::*;
use slotwright_core::choice::Choice;
use slotwright_core::range::Range;
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::words;
use slotwright_tests::DEMO;

use crate::compact::compact_texts;
use crate::edits::edited;
use crate::{runs, unit};

/// The demo range without its remarks: there is nothing to get wrong in them.
fn bare() -> String {
    let lines = DEMO.lines().filter(|line| !line.starts_with('#'));
    lines.flat_map(|line| [line.split(" #").next().unwrap_or_default().trim_end(), "\n"]).collect()
}

#[test]
fn the_demo_range_without_remarks_is_the_demo_range() {
    assert_eq!(Range::parse(&bare()), Range::parse(DEMO));
}

#[test]
fn no_bytes_as_a_range_make_it_panic() {
    let bytes = proptest::collection::vec(any::<u8>(), 0..600);
    let texts = "(\\[{1,2}[a-z.]{1,9}\\]{1,2}|[a-z_]{1,8} ?= ?[\\[{\"'0-9a-z.,= -]{0,40})\n";
    let lines = proptest::collection::vec(texts, 0..20).prop_map(|lines| lines.concat().into_bytes());
    runs::check("ranges of any bytes", 1000, &prop_oneof![bytes, lines], |bytes| {
        Range::parse(&String::from_utf8_lossy(&bytes)).map_err(|problems| words::problems(&problems.0)).is_err()
    });
}

#[test]
fn no_range_that_parsed_makes_anything_panic() {
    let given = (edited(Just(bare()), 4), compact_texts(), any::<u64>());
    runs::check("edited ranges", 60, &given, |(file, compact, seed)| {
        let range = match Range::parse(&file.text) {
            Ok(range) => range,
            Err(problems) => {
                assert!(!words::problems(&problems.0).is_empty());
                return false;
            }
        };
        let first = Choice::first_of(&range).expect("a parsed range has a model");
        let others = choices(&range, seed, Wanted::Any).skip(1).take(1);
        for choice in [first].into_iter().chain(others).chain(Choice::of_compact(&compact.text)) {
            unit::ask(&range, &choice);
        }
        true
    });
}
