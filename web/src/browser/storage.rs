//! The choice survives a reload.

use slotwright_core::choice::Choice;

/// The name says the version of what is stored: another version is another name.
const KEY: &str = "slotwright-choice-1";

fn storage() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok()?
}

/// Saves the choice; where nothing can be stored the page works all the same.
pub fn save(choice: &Choice) {
    if let Some(storage) = storage() {
        let _ = storage.set_item(KEY, &choice.to_note());
    }
}

/// The saved choice, if there is one that can be read.
pub fn load() -> Option<Choice> {
    let saved = storage()?.get_item(KEY).ok()??;
    Choice::of_note(&saved)
}

/// Takes away what the page shows while it loads.
pub fn remove_shell() {
    let shell = web_sys::window().and_then(|window| window.document()).and_then(|page| page.get_element_by_id("shell"));
    if let Some(shell) = shell {
        shell.remove();
    }
}
