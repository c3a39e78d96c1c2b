//! The window: its size, scrolling, dialogs.

use wasm_bindgen::JsCast;
use web_sys::HtmlDialogElement;

/// Inner width and height of the window in pixels.
pub fn window_size() -> (f64, f64) {
    let size = web_sys::window()
        .and_then(|window| Some((window.inner_width().ok()?.as_f64()?, window.inner_height().ok()?.as_f64()?)));
    size.unwrap_or((1024.0, 768.0))
}

/// Brings an element into sight.
pub fn scroll_to(id: &str) {
    let document = web_sys::window().and_then(|window| window.document());
    if let Some(element) = document.and_then(|document| document.get_element_by_id(id)) {
        element.scroll_into_view();
    }
}

/// Leads to an entry that could not be read, if there is one.
pub fn lead_to_unread() -> bool {
    let document = web_sys::window().and_then(|window| window.document());
    let wrong = document.and_then(|document| document.query_selector(".field:has(> .wrong:not(:empty)) input").ok()?);
    let Some(input) = wrong.and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok()) else { return false };
    // Where the focus cannot go, the entry is marked all the same.
    let _ = input.focus();
    true
}

/// Opens or closes a dialog.
pub fn show(dialog: &HtmlDialogElement, open: bool) {
    if open && !dialog.open() {
        // Only fails if it is open already.
        let _ = dialog.show_modal();
    } else if !open && dialog.open() {
        dialog.close();
    }
}

/// The bay (from 0) that was touched on a drawing.
pub fn touched_bay(event: &web_sys::MouseEvent) -> Option<usize> {
    let element: web_sys::Element = event.target()?.dyn_into().ok()?;
    let group = element.closest("[data-bay]").ok()??;
    group.get_attribute("data-bay")?.parse::<usize>().ok()?.checked_sub(1)
}
