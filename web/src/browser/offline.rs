//! The page without a network, and what is new: a script of its own does both, `web/page/offline.js`.

use super::member::call;

/// There is a first answer, made with this range file: what could wait until then begins.
pub fn begin(range: Option<&str>) {
    if let Some(window) = web_sys::window() {
        call(&window, "answered", &range.unwrap_or_default().into());
    }
}
