//! The focus never falls to the page's body: where what has it is gone, it goes to the question that this was about.

use std::cell::RefCell;
use std::time::Duration;

use leptos::prelude::{Callback, set_timeout};
use wasm_bindgen::JsCast;
use web_sys::{Event, HtmlElement, KeyboardEvent, Node};

use super::page;

/// Where a person can be led: headings, present answers, sliders. No field: it would bring up a phone's keyboard.
const PLACES: &str = "h1, h2[tabindex], h3[tabindex], [role=radio][aria-checked=true], [role=tab][aria-selected=true], \
                      input[type=range]";

/// The way to the order.
const ORDER: &str = "order";

thread_local! {
    /// What had the focus last, and all that it was in, the innermost first.
    static TRAIL: RefCell<Vec<HtmlElement>> = const { RefCell::new(Vec::new()) };
}

/// Hears where the focus goes, the links that skip, and the keys that lead to the order.
pub fn listen() {
    if let Some(window) = web_sys::window() {
        // Two, since what the one does makes events for the other.
        page::listen(&window, &["focusin"], Callback::new(|event| note(&event)));
        page::listen(&window, &["click", "keydown"], Callback::new(|event| skip(&event)));
    }
}

fn target(event: &Event) -> Option<HtmlElement> {
    event.target()?.dyn_into().ok()
}

fn note(event: &Event) {
    let trail = core::iter::successors(target(event), |own| own.parent_element()?.dyn_into().ok());
    TRAIL.set(trail.collect());
}

fn skip(event: &Event) {
    let id = match event.dyn_ref::<KeyboardEvent>() {
        Some(key) if key.key() == "Enter" && (key.ctrl_key() || key.meta_key()) => {
            page::open_dialog().is_none().then(|| ORDER.to_string())
        }
        Some(_) => None,
        None => {
            let link = target(event).and_then(|target| target.closest("a.skip").ok()?);
            link.and_then(|link| link.get_attribute("href")?.strip_prefix('#').map(str::to_string))
        }
    };
    if let Some(id) = id {
        // The address is the unit's: no link within the page takes its place.
        event.prevent_default();
        page::focus_first(&["#", &id, " h2, button#", &id].concat());
    }
}

/// Leads the focus back once what is set now stands there, if it was lost by that.
pub fn mend() {
    set_timeout(lead_back, Duration::ZERO);
}

fn lead_back() {
    // What is hidden by now keeps it until the next picture.
    let active = page::active().and_then(|active| active.dyn_into::<HtmlElement>().ok());
    let is_lost = active.is_none_or(|active| active.tag_name() == "BODY" || !page::is_seen(&active));
    let trail = TRAIL.with_borrow(Clone::clone);
    // Whoever pressed beside what is still there wanted it so.
    if !is_lost || trail.first().is_none_or(page::is_seen) {
        return;
    }
    let Some(from) = trail.iter().find(|own| own.is_connected()) else { return };
    let (mut before, mut after) = (None, None);
    for place in page::all(PLACES).into_iter().filter(page::is_seen) {
        if from.compare_document_position(&place) & Node::DOCUMENT_POSITION_PRECEDING == 0 {
            after.get_or_insert(place);
        } else {
            before = Some(place);
        }
    }
    let inside = after.take_if(|place| from.contains(Some(place)));
    if let Some(place) = inside.or(before).or(after) {
        // Where the focus cannot go, it stays.
        let _ = place.focus();
    }
}
