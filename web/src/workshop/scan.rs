//! Codes of labels, read by a hand scanner: it types what it reads as a keyboard does, and ends with Enter.

use std::cell::RefCell;
use std::time::Duration;

use leptos::prelude::{Callback, GetUntracked, set_timeout};
use slotwright_protocol::packs::{Found, Question};
use wasm_bindgen::JsCast;
use web_sys::KeyboardEvent;

use super::{Saw, dialogs, put};
use crate::browser::{packs, page, speech};

/// No code of a label has fewer letters: `2/7`; and none has more.
const LETTERS: [usize; 2] = [3, 64];

thread_local! {
    /// What was typed beside all fields since the last key that is no letter.
    static TYPED: RefCell<String> = const { RefCell::new(String::new()) };
}

/// Hears what is typed beside all fields; a field takes what is typed into it.
pub(super) fn listen() {
    let Some(window) = web_sys::window() else { return };
    let heard = Callback::new(|event: web_sys::Event| {
        if let Some(event) = event.dyn_ref::<KeyboardEvent>() {
            hear(event);
        }
    });
    page::listen(&window, &["keydown"], heard);
}

fn hear(event: &KeyboardEvent) {
    let key = event.key();
    // Capitals come with a key of their own.
    if key == "Shift" {
        return;
    }
    let in_field = page::active().is_some_and(|active| {
        // In a list of choices letters lead to one of them.
        [":read-write", "select"].into_iter().any(|kind| active.matches(kind).unwrap_or(false))
    });
    let is_letter = key.chars().count() == 1 && !event.ctrl_key() && !event.meta_key() && !event.alt_key();
    if in_field || !is_letter {
        let typed = TYPED.take();
        if key == "Enter" && !in_field && is_code(&typed) {
            // Else it would press the button that has the focus.
            event.prevent_default();
            dialogs::close();
            packs::ask(&Question::Find(typed), []);
        }
        return;
    }
    TYPED.with_borrow_mut(|typed| {
        // A stroke opens the search of some browsers.
        if key == "/" && !typed.is_empty() {
            event.prevent_default();
        }
        if typed.len() >= LETTERS[1] {
            typed.clear();
        }
        typed.push_str(&key);
    });
}

/// All codes of labels have a stroke or a dash within; keys that make a sheet larger or smaller are none.
fn is_code(typed: &str) -> bool {
    let ends = [typed.chars().next(), typed.chars().next_back()];
    let is_within = ends.into_iter().all(|end| end.is_some_and(char::is_alphanumeric));
    typed.len() >= LETTERS[0] && is_within && typed.contains(['/', '-'])
}

/// Shows what was found: its sheet in large with the part marked, and its order in sight.
pub(super) fn show(saw: Saw, found: Found) {
    speech::say(&found.told);
    put(saw.trouble, String::new());
    put(saw.saved, found.told.clone());
    page::pick("[data-order]", found.order.map(|order| ["[data-order=\"", &order.to_string(), "\"]"].concat()));
    let Some((lot, sheet)) = found.sheet else { return };
    let lot = usize::try_from(lot).unwrap_or(0);
    if lot != saw.lot.get_untracked() {
        saw.turn_to(lot);
    }
    // Once the lot's sheets are there.
    let enlarge = move || {
        dialogs::enlarge(saw, &sheet.to_string());
        page::pick("#large-sheet [data-part]", Some(["#large-sheet [data-part=\"", &found.mark, "\"]"].concat()));
        page::write_to("large-title", &found.told);
    };
    set_timeout(enlarge, Duration::ZERO);
}
