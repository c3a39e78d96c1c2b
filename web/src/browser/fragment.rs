//! The fragment of the page's address: the link of the unit.

use web_sys::Window;

/// Says in the storage of this tab which fragment it showed when it was left with something newer.
const LEFT: &str = "slotwright-left";

/// What stands after the `#`, unless it leads to a place of the page or nowhere.
pub fn read() -> Option<String> {
    let hash = web_sys::window()?.location().hash().ok()?;
    let text = hash.strip_prefix('#')?;
    let is_place = text.bytes().all(|byte| byte.is_ascii_alphabetic());
    (!is_place).then(|| text.into())
}

/// Whether the page was asked to begin afresh, as the program that a device installs of it can (`dist/manifest.rs`).
pub fn is_afresh() -> bool {
    web_sys::window().and_then(|window| window.location().hash().ok()).is_some_and(|hash| hash == "#afresh")
}

/// Whether somebody put there what stands there: entries of the history that the page made have a state.
pub fn is_new() -> bool {
    let history = web_sys::window().and_then(|window| window.history().ok());
    history.is_some_and(|history| history.state().is_ok_and(|state| state.is_null()))
}

/// Puts a link in the place of what stands there; the history gets no longer by it.
pub fn write(link: &str) {
    if read().is_none_or(|known| known != link) {
        replace(&["#", link].concat());
    }
}

/// Another address of the page in the place of the present one.
fn replace(address: &str) {
    if let Some(history) = web_sys::window().and_then(|window| window.history().ok()) {
        let state = history.state().unwrap_or_default();
        // A browser that is asked too often keeps the address as it is.
        let _ = history.replace_state_with_url(&state, "", Some(address));
    }
}

/// The page's address with a link.
pub fn address(link: &str) -> String {
    [&page(), "#", link].concat()
}

fn page() -> String {
    let address = web_sys::window().and_then(|window| window.location().href().ok()).unwrap_or_default();
    address.split('#').next().unwrap_or_default().into()
}

fn storage(window: &Window) -> Option<web_sys::Storage> {
    window.session_storage().ok()?
}

/// The page is being left, and its address can be changed no more: what stands there now is older than what is saved.
pub fn outdate() {
    if let (Some(window), Some(text)) = (web_sys::window(), read())
        && let Some(storage) = storage(&window)
    {
        // Without a storage the older unit comes back.
        let _ = storage.set_item(LEFT, &text);
    }
}

/// Whether what stands in the address is older than what was saved when this tab was left: then it goes, and is no
/// longer known as such, since somebody may mean it later.
pub fn take_outdated(text: &str) -> bool {
    let Some(storage) = web_sys::window().and_then(|window| storage(&window)) else { return false };
    let left = storage.get_item(LEFT).ok().flatten();
    // What is not there need not go.
    let _ = storage.remove_item(LEFT);
    let is_outdated = left.is_some_and(|left| left == text);
    if is_outdated {
        replace(&page());
    }
    is_outdated
}
