//! The range file, fetched when the page starts.

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
