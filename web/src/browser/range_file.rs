//! The range file, fetched when the page starts and when somebody tries again.

use js_sys::Promise;
use slotwright_core::range::Range;
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

/// How long a line that failed is left alone, in milliseconds.
const PAUSE: i32 = 1000;

/// The same, tried once more where it failed at first.
pub async fn fetch_twice() -> Option<String> {
    if let Some(text) = fetch().await {
        return Some(text);
    }
    let pause = Promise::new(&mut |done, _| {
        let window = web_sys::window();
        // Without a clock it is tried no more.
        let _ = window.map(|window| window.set_timeout_with_callback_and_timeout_and_arguments_0(&done, PAUSE));
    });
    JsFuture::from(pause).await.ok()?;
    fetch().await
}

/// The range of a file, or why there is none.
pub fn read(fetched: Option<&str>) -> Result<Range, String> {
    match fetched.map(Range::parse) {
        Some(Ok(range)) => Ok(range),
        Some(Err(problems)) => Err(format!("The range file has problems. {problems}")),
        None => Err("The range file could not be fetched. Is there a connection?".into()),
    }
}

/// Loads the page anew with the file that is there now; what was chosen is saved.
pub fn load_anew() {
    if let Some(window) = web_sys::window() {
        // A page that does not load anew stays as it is.
        let _ = window.location().reload();
    }
}
