//! The range file, fetched when the page starts and when somebody tries again.

use slotwright_core::range::Range;
use slotwright_core::words::page::{Label, Message};
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

/// The range of a file, or why there is none.
pub fn read(fetched: Option<&str>) -> Result<Range, String> {
    match fetched.map(Range::parse) {
        Some(Ok(range)) => Ok(range),
        Some(Err(problems)) => Err(Message::RangeProblems(&problems.to_string()).text()),
        None => Err(Label::RangeNotFetched.text().into()),
    }
}

/// Loads the page anew with the file that is there now; what was chosen is saved.
pub fn load_anew() {
    if let Some(window) = web_sys::window() {
        // A page that does not load anew stays as it is.
        let _ = window.location().reload();
    }
}
