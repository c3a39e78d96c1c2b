//! Keys for undo and redo, and whether a slider is held.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Event, HtmlInputElement, KeyboardEvent};

use super::page;

/// What a hand or a key asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stroke {
    /// The step before.
    Undo,
    /// The step after.
    Redo,
    /// A slider is held.
    Hold,
    /// It is let go.
    Release,
}

const EVENTS: [&str; 9] =
    ["keydown", "keyup", "input", "change", "focusin", "pointerdown", "pointerup", "pointercancel", "blur"];

/// Hears them all over the page.
pub fn listen(on_stroke: Callback<Stroke>) {
    // Whether something was typed into the present field that the page has not heard of.
    let typing = RwSignal::new(false);
    let on_event = move |event: Event| {
        if let Some(stroke) = event.dyn_ref::<KeyboardEvent>().and_then(stroke) {
            // The browser's own undo belongs to what is being typed; behind a dialog nothing changes.
            if !typing.get_untracked() && page::open_dialog().is_none() {
                event.prevent_default();
                on_stroke.run(stroke);
            }
            return;
        }
        match event.type_().as_str() {
            "input" => typing.set(!is_slider(&event)),
            "change" | "focusin" => typing.set(false),
            // A key that stays down moves a slider as a hand does.
            "pointerdown" if is_slider(&event) => on_stroke.run(Stroke::Hold),
            "keydown" if is_slider(&event) && moves(&event) => on_stroke.run(Stroke::Hold),
            // Who goes to another window lets go as well: no key comes back from there.
            "pointerup" | "pointercancel" | "keyup" | "blur" => on_stroke.run(Stroke::Release),
            _ => {}
        }
    };
    if let Some(window) = web_sys::window() {
        page::listen(&window, &EVENTS, Callback::new(on_event));
    }
}

/// Whether something happens to a slider.
fn is_slider(event: &Event) -> bool {
    let input = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
    input.is_some_and(|input| input.type_() == "range")
}

/// Whether a key moves a slider.
fn moves(event: &Event) -> bool {
    let key = event.dyn_ref::<KeyboardEvent>().map(KeyboardEvent::key).unwrap_or_default();
    matches!(
        key.as_str(),
        "ArrowLeft" | "ArrowRight" | "ArrowUp" | "ArrowDown" | "PageUp" | "PageDown" | "Home" | "End"
    )
}

fn stroke(key: &KeyboardEvent) -> Option<Stroke> {
    if key.type_() != "keydown" || !(key.ctrl_key() || key.meta_key()) || key.alt_key() {
        return None;
    }
    match (key.key().as_str(), key.shift_key()) {
        ("z" | "Z", false) => Some(Stroke::Undo),
        ("z" | "Z", true) | ("y" | "Y", false) => Some(Stroke::Redo),
        _ => None,
    }
}
