//! The link of the unit as it was seen last, with its price and the range of that time, range by range: who comes back by
//! an address without a link is told all the same what became different.

use slotwright_core::range::Key;

fn name(range: &Key) -> String {
    ["slotwright-seen-1-", range.as_str()].concat()
}

fn storage() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok()?
}

/// Keeps it; where nothing can be stored nothing is told the next time.
pub fn save(range: &Key, link: &str) {
    if let Some(storage) = storage() {
        let _ = storage.set_item(&name(range), link);
    }
}

/// What was kept.
pub fn load(range: &Key) -> Option<String> {
    storage()?.get_item(&name(range)).ok()?
}

/// Takes it away: somebody else has not seen it.
pub fn forget(range: &Key) {
    if let Some(storage) = storage() {
        let _ = storage.remove_item(&name(range));
    }
}
