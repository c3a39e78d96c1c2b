//! Compact texts of choices.

use proptest::prelude::*;
use slotwright_core::choice::Choice;
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_tests::demo;

use crate::edits::{Edited, edited};
use crate::{runs, unit};

/// Compact texts of seeded choices, absurd ones too.
fn good() -> impl Strategy<Value = String> {
    let range = demo().expect("the demo range");
    (any::<u64>(), 0..range.models.len(), any::<bool>()).prop_map(move |(seed, model, valid)| {
        let wanted = if valid { Wanted::Valid } else { Wanted::Any };
        let choice = choices(&range, seed, wanted).nth(model).expect("an endless row");
        choice.to_compact()
    })
}

/// The same with something wrong in them.
pub(crate) fn compact_texts() -> impl Strategy<Value = Edited> {
    edited(good(), 3)
}

#[test]
fn no_bytes_as_a_compact_text_make_it_panic() {
    let bytes = proptest::collection::vec(any::<u8>(), 0..300);
    let texts = "[a-z_]{1,8} ?= ?[\\[{\"'0-9a-z.,= -]{0,40}\n";
    let lines = proptest::collection::vec(texts, 0..8).prop_map(|lines| lines.concat().into_bytes());
    runs::check("compact texts of any bytes", 2000, &prop_oneof![bytes, lines], |bytes| {
        let _ = Choice::of_compact(&String::from_utf8_lossy(&bytes));
        true
    });
}

#[test]
fn no_choice_of_a_compact_text_makes_it_panic() {
    let range = demo().unwrap();
    runs::check("edited compact texts", 60, &compact_texts(), |compact| {
        let choice = Choice::of_compact(&compact.text);
        if let Some(choice) = &choice {
            assert_eq!(Choice::of_compact(&choice.to_compact()).as_ref(), Some(choice));
            unit::ask(&range, choice);
        }
        choice.is_some()
    });
}
