//! The core as a WebAssembly module of its own, so that a test can compare it with the native tool.

use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::input::members::{Place, parse};
use slotwright_core::order::derive::derive;
use slotwright_core::order::document::Document;
use slotwright_core::range::Range;
use slotwright_core::words;
use wasm_bindgen::prelude::wasm_bindgen;

/// The derived document of a choice, as `slotwright derive` prints it; the reason if there is none.
#[wasm_bindgen]
pub fn derived(range: &str, choice: &str, today: &str) -> String {
    document(range, choice, today).unwrap_or_else(|reason| reason)
}

/// The answer to a question of `slotwright_tests::parity`, as the native program gives it.
#[wasm_bindgen]
pub fn answer(question: &str) -> Vec<u8> {
    slotwright_tests::parity::answer(question)
}

fn document(range: &str, choice: &str, today: &str) -> Result<String, String> {
    let range = Range::parse(range).map_err(|problems| words::problems(&problems.0))?;
    let choice =
        parse(choice).and_then(|value| Choice::read(Place::whole(value))).map_err(|error| words::unread(&error))?;
    let today = today.parse().map_err(|wrong| words::no_day(&wrong))?;
    let backlog = Backlog::default();
    let document = Document::of(&derive(&range, &choice, today, &backlog));
    serde_json::to_string_pretty(&document).map_err(|error| error.to_string())
}
