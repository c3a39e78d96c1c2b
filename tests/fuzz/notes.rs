//! Notes of choices.

use proptest::prelude::*;
use slotwright_core::choice::Choice;
use slotwright_core::sample::{Wanted, choices};
use slotwright_tests::demo;

use crate::edits::{Edited, edited};
use crate::{runs, unit};

/// Notes of seeded choices, absurd ones too.
fn good() -> impl Strategy<Value = String> {
    let range = demo().expect("the demo range");
    (any::<u64>(), 0..range.models.len(), any::<bool>()).prop_map(move |(seed, model, valid)| {
        let wanted = if valid { Wanted::Valid } else { Wanted::Any };
        let choice = choices(&range, seed, wanted).nth(model).expect("an endless row");
        choice.to_note()
    })
}

/// The same with something wrong in them.
pub(crate) fn notes() -> impl Strategy<Value = Edited> {
    edited(good(), 3)
}

#[test]
fn no_bytes_as_a_note_make_it_panic() {
    let bytes = proptest::collection::vec(any::<u8>(), 0..300);
    let texts = "[a-z_]{1,8} ?= ?[\\[{\"'0-9a-z.,= -]{0,40}\n";
    let lines = proptest::collection::vec(texts, 0..8).prop_map(|lines| lines.concat().into_bytes());
    runs::check("notes of any bytes", 2000, &prop_oneof![bytes, lines], |bytes| {
        let _ = Choice::of_note(&String::from_utf8_lossy(&bytes));
        true
    });
}

#[test]
fn no_choice_of_a_note_makes_it_panic() {
    let range = demo().unwrap();
    runs::check("edited notes", 60, &notes(), |note| {
        let choice = Choice::of_note(&note.text);
        if let Some(choice) = &choice {
            assert_eq!(Choice::of_note(&choice.to_note()).as_ref(), Some(choice));
            unit::ask(&range, choice);
        }
        choice.is_some()
    });
}
