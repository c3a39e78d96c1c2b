//! The choice survives a reload.

use slotwright_core::choice::Choice;
use slotwright_core::members::{Place, parse};
use slotwright_core::seal::canonical;

/// The name says the version of what is stored: another version is another name.
const KEY: &str = "slotwright-choice-1";

fn storage() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok()?
}

/// Saves the choice; where nothing can be stored the page works all the same.
pub fn save(choice: &Choice) {
    if let Some(storage) = storage() {
        let _ = storage.set_item(KEY, &canonical(choice));
    }
}

/// The saved choice, if there is one that can be read.
pub fn load() -> Option<Choice> {
    let saved = storage()?.get_item(KEY).ok()??;
    parse(&saved).and_then(|value| Choice::read(Place::whole(value))).ok()
}

/// Takes away what the page shows while it loads.
pub fn remove_shell() {
    let shell = web_sys::window().and_then(|window| window.document()).and_then(|page| page.get_element_by_id("shell"));
    if let Some(shell) = shell {
        shell.remove();
    }
}
