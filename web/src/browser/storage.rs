//! What is chosen and what is kept survive a reload, range by range.

use slotwright_core::choice::Choice;
use slotwright_core::choice::question::Question;
use slotwright_core::input::bundle;
use slotwright_core::range::Key;

/// The name says the version of what is stored: another version is another name.
fn name(range: &Key) -> String {
    format!("slotwright-desk-1-{range}")
}

fn storage() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok()?
}

/// Saves a choice and what of it is kept; where nothing can be stored the page works all the same.
pub fn save(range: &Key, choice: &Choice, pins: &[Question]) {
    if let Some(storage) = storage() {
        let pins = pins.iter().map(ToString::to_string);
        let texts: Vec<String> = [choice.to_compact()].into_iter().chain(pins).collect();
        let _ = storage.set_item(&name(range), &bundle::tie(&texts));
    }
}

/// Whether anything is saved.
pub fn has(range: &Key) -> bool {
    saved(range).is_some()
}

fn saved(range: &Key) -> Option<String> {
    storage()?.get_item(&name(range)).ok()?
}

/// What is saved, if there is something that can be read.
pub fn load(range: &Key) -> Option<(Choice, Vec<Question>)> {
    let texts = bundle::untie(&saved(range)?);
    let (compact, pins) = texts.split_first()?;
    let choice = Choice::of_compact(compact)?;
    let pins = pins.iter().filter_map(|pin| pin.parse().ok()).filter(|pin| choice.has(*pin)).collect();
    Some((choice, pins))
}
