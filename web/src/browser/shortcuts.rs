//! Keys for undo and redo, and whether a slider is held.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, HtmlInputElement, KeyboardEvent};

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

const EVENTS: [&str; 7] = ["keydown", "input", "change", "focusin", "pointerdown", "pointerup", "pointercancel"];

/// Hears them all over the page.
pub fn listen(on_stroke: Callback<Stroke>) {
    // Whether something was typed into the present field that the page has not heard of.
    let typing = RwSignal::new(false);
    let on_event = move |event: Event| match event.type_().as_str() {
        "input" => typing.set(input(&event).is_some_and(|input| input.type_() != "range")),
        "change" | "focusin" => typing.set(false),
        "pointerdown" if input(&event).is_some_and(|input| input.type_() == "range") => on_stroke.run(Stroke::Hold),
        "pointerup" | "pointercancel" => on_stroke.run(Stroke::Release),
        "keydown" => {
            // The browser's own undo belongs to what is being typed; behind a dialog nothing changes.
            let Some(stroke) =
                event.dyn_ref::<KeyboardEvent>().and_then(stroke).filter(|_| !typing.get_untracked() && !dialog())
            else {
                return;
            };
            event.prevent_default();
            on_stroke.run(stroke);
        }
        _ => {}
    };
    if let Some(window) = web_sys::window() {
        page::listen(&window, &EVENTS, Callback::new(on_event));
    }
}

fn input(event: &Event) -> Option<HtmlInputElement> {
    event.target()?.dyn_into().ok()
}

fn dialog() -> bool {
    let document = web_sys::window().and_then(|window| window.document());
    document.is_some_and(|document| {
        document.query_selector("dialog[open]").is_ok_and(|open: Option<Element>| open.is_some())
    })
}

fn stroke(key: &KeyboardEvent) -> Option<Stroke> {
    if !(key.ctrl_key() || key.meta_key()) || key.alt_key() {
        return None;
    }
    match (key.key().as_str(), key.shift_key()) {
        ("z" | "Z", false) => Some(Stroke::Undo),
        ("z" | "Z", true) | ("y" | "Y", false) => Some(Stroke::Redo),
        _ => None,
    }
}
