//! The range file, fetched when the page starts and when somebody tries again.

use slotwright_core::range::Range;
use slotwright_core::words::page::Label;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;

/// The text of `ranges/fenland.toml` beside the page; `None` if it cannot be fetched.
pub async fn fetch() -> Option<String> {
    let window = web_sys::window()?;
    let response = JsFuture::from(window.fetch_with_str("ranges/fenland.toml")).await.ok()?;
    let response: web_sys::Response = response.dyn_into().ok()?;
    if !response.ok() {
        return None;
    }
    JsFuture::from(response.text().ok()?).await.ok()?.as_string()
}

/// Why there is no range.
#[derive(Clone, Debug)]
pub struct NoRange {
    /// What is said at once.
    pub why: Label,
    /// The file that cannot be read, if there is one: the order desk tells what is wrong with it.
    pub file: Option<String>,
}

/// The range of a file, or why there is none.
pub fn read(fetched: Option<&str>) -> Result<Range, NoRange> {
    let Some(text) = fetched else { return Err(NoRange { why: Label::RangeNotFetched, file: None }) };
    Range::parse(text).map_err(|_| NoRange { why: Label::RangeUnread, file: Some(text.into()) })
}

/// Loads the page anew with the file that is there now; what was chosen is saved.
pub fn load_anew() {
    if let Some(window) = web_sys::window() {
        // A page that does not load anew stays as it is.
        let _ = window.location().reload();
    }
}
