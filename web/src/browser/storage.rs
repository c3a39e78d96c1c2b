//! What earlier versions of the page kept: one unit of each range in the browser's plain storage. It is read once more, to
//! be kept as a draft.

use slotwright_core::choice::Choice;
use slotwright_core::choice::question::Question;
use slotwright_core::input::bundle;
use slotwright_core::range::Key;

fn name(range: &Key) -> String {
    ["slotwright-desk-1-", range.as_str()].concat()
}

fn storage() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok()?
}

/// What is there, if it can be read.
pub fn former(range: &Key) -> Option<(Choice, Vec<Question>)> {
    let texts = bundle::untie(&storage()?.get_item(&name(range)).ok()??);
    let (compact, pins) = texts.split_first()?;
    let choice = Choice::of_compact(compact)?;
    let pins = pins.iter().filter_map(|pin| pin.parse().ok()).filter(|pin| choice.has(*pin)).collect();
    Some((choice, pins))
}

/// Takes it away: it is kept as a draft now.
pub fn drop_former(range: &Key) {
    if let Some(storage) = storage() {
        // What stays is passed over, since there is a draft.
        let _ = storage.remove_item(&name(range));
    }
}
