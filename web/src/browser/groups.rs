//! Groups of controls: each is one stop for Tab, and arrows lead on inside. In a group that is answered by where the focus
//! is, going there is a press.

use leptos::prelude::Callback;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, HtmlElement, KeyboardEvent};

use super::page;

const GROUPS: &str = "[role=radiogroup], [role=tablist], [role=toolbar]";
const ANSWERED: &str = "[role=radiogroup], [role=tablist]";
const ANSWER: &str = "[aria-checked=true], [aria-selected=true]";

/// Hears keys all over the page.
pub fn listen() {
    if let Some(window) = web_sys::window() {
        page::listen(&window, &["keydown"], Callback::new(|event| on_event(&event)));
    }
    set_stops();
}

fn on_event(event: &Event) {
    let Some(key) = event.dyn_ref::<KeyboardEvent>() else { return };
    if key.ctrl_key() || key.alt_key() || key.meta_key() {
        return;
    }
    if key.key() == "Tab" {
        // Nothing has to be kept right until somebody is about to leave or to come.
        set_stops();
    } else {
        lead(key);
    }
}

fn items(group: &Element) -> Vec<HtmlElement> {
    page::all_within(group, "button").into_iter().filter(page::is_seen).collect()
}

/// Leads from one control of a group to another; `None` if the key does not.
fn lead(key: &KeyboardEvent) -> Option<()> {
    let target = key.target()?.dyn_into::<Element>().ok()?;
    let group = target.closest(GROUPS).ok()??;
    let items = items(&group);
    let (at, last) = (items.iter().position(|item| item.is_same_node(Some(&target)))?, items.len().checked_sub(1)?);
    let next = match key.key().as_str() {
        "ArrowRight" | "ArrowDown" if at == last => 0,
        "ArrowRight" | "ArrowDown" => at + 1,
        "ArrowLeft" | "ArrowUp" => at.checked_sub(1).unwrap_or(last),
        "Home" => 0,
        "End" => last,
        _ => return None,
    };
    key.prevent_default();
    let item = items.get(next)?;
    // Where the focus cannot go, it stays.
    let _ = item.focus();
    if group.matches(ANSWERED).unwrap_or(false) {
        item.click();
    }
    Some(())
}

/// The one stop of a group is where the focus is, or the present answer, or where the focus was last, or the first.
fn set_stops() {
    let active = page::active();
    for group in page::all(GROUPS) {
        let items = items(&group);
        let find = |is: &dyn Fn(&HtmlElement) -> bool| items.iter().position(is);
        let stop = find(&|item| active.as_ref().is_some_and(|active| item.is_same_node(Some(active))))
            .or_else(|| find(&|item| item.matches(ANSWER).unwrap_or(false)))
            .or_else(|| find(&|item| item.tab_index() == 0));
        for (at, item) in items.iter().enumerate() {
            let index = if at == stop.unwrap_or(0) { 0 } else { -1 };
            if item.tab_index() != index {
                item.set_tab_index(index);
            }
        }
    }
}
