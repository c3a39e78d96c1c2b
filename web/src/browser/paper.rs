//! What the page puts on paper.

use std::cell::RefCell;

use leptos::prelude::{Callable, Callback};
use wasm_bindgen::JsCast;
use web_sys::{Element, KeyboardEvent};

use super::page;

/// The place of the sheet: styles show it on paper alone, and nothing else there while it has elements.
const SHEET: &str = "sheet";

thread_local! {
    /// What the sheet is of that stands there.
    static SUBJECT: RefCell<String> = const { RefCell::new(String::new()) };
}

fn sheet() -> Option<Element> {
    web_sys::window()?.document()?.get_element_by_id(SHEET)
}

/// Puts a sheet there and prints it.
pub fn print(subject: String, html: &str) {
    let (Some(sheet), Some(window)) = (sheet(), web_sys::window()) else { return };
    sheet.set_inner_html(html);
    SUBJECT.set(subject);
    // A browser that does not print says so itself.
    let _ = window.print();
}

/// Hears the keys that print, unless a dialog is open: that is printed as itself.
pub fn listen(on_keys: Callback<()>) {
    let Some(window) = web_sys::window() else { return };
    let heard = move |event: web_sys::Event| {
        let Some(key) = event.dyn_ref::<KeyboardEvent>() else { return };
        let held = (key.ctrl_key() || key.meta_key()) && !key.alt_key() && !key.shift_key();
        if held && key.key() == "p" && page::open_dialog().is_none() {
            key.prevent_default();
            on_keys.run(());
        }
    };
    page::listen(&window, &["keydown"], Callback::new(heard));
}

/// Before anything is printed: where the sheet is of something else than what is there now, a drawing and a line take
/// its place. There is no time to wait for another sheet.
pub fn before(now: Callback<(), [String; 3]>) {
    let Some(window) = web_sys::window() else { return };
    let about_to = move |_| {
        let [subject, drawing, line] = now.run(());
        let is_old = SUBJECT.with_borrow(|known| *known != subject);
        if let Some(sheet) = sheet().filter(|_| is_old) {
            sheet.set_inner_html(&drawing);
            // A line is always taken.
            let _ = sheet.append_with_str_1(&line);
        }
    };
    page::listen(&window, &["beforeprint"], Callback::new(about_to));
}
