//! Whose range it is; opening an order; beginning afresh.

use leptos::prelude::*;
use slotwright_core::change::Change;
use slotwright_core::spec;
use web_sys::HtmlInputElement;

use crate::browser::files;
use crate::state::Desk;

/// The strip at the top, and what a person should know about loading.
#[component]
pub fn Header(notice: Option<String>) -> impl IntoView {
    let desk = Desk::here();
    let (workshop, name, note) = desk.peek(|_, range| (range.workshop.clone(), range.name.clone(), range.note.clone()));
    let told = RwSignal::new(notice.unwrap_or_default());
    let picker = NodeRef::<leptos::html::Input>::new();
    let opened = move |_| {
        let Some(input) = picker.get_untracked() else { return };
        let Some(file) = HtmlInputElement::files(&input).and_then(|files| files.get(0)) else { return };
        wasm_bindgen_futures::spawn_local(async move {
            let bytes = files::bytes(file).await;
            told.try_set(open(desk, bytes.as_deref()));
            if let Some(input) = picker.try_get_untracked().flatten() {
                input.set_value("");
            }
        });
    };
    let afresh = move |_| {
        let model = desk.peek(|known, _| known.choice.model.clone());
        desk.apply(&Change::Model(model));
    };
    view! {
        <header>
            <svg class="mark" viewBox="0 0 24 20" aria-hidden="true"><path d="M1 1H8V9H16V1H23V19H1Z"/></svg>
            <p class="workshop">{workshop}</p>
            <p class="range">{name}" range"</p>
            <p class="note">{note}</p>
            <div class="tools">
                <label class="button">
                    "Open an order"
                    <input class="unseen" node_ref=picker type="file" accept=".json,application/json" on:change=opened/>
                </label>
                <button type="button" on:click=afresh>"Begin afresh"</button>
            </div>
        </header>
        <div class="notice" class:empty=move || told.with(String::is_empty)>
            <p role="status">{move || told.get()}</p>
            <button type="button" on:click=move |_| told.set(String::new())>"Close"</button>
        </div>
    }
}

/// Takes over the choice of an order file and says what came of it.
fn open(desk: Desk, bytes: Option<&[u8]>) -> String {
    let Some(bytes) = bytes else {
        return "This file cannot be read, or is far too large for an order.".into();
    };
    let order = match spec::read(bytes) {
        Ok(order) => order,
        Err(error) => return format!("This is no order that can be opened. {error}. {}", error.hint()),
    };
    let (same, holds) =
        desk.peek(|_, range| (range.digest() == order.range.digest, spec::check(&order, range).holds()));
    desk.replace(order.choice);
    match (same, holds) {
        (true, true) => format!("The order of {} is open. Everything that it promised still holds.", order.ordered_on),
        (true, false) => {
            format!("The order of {} is open, but not all that it promised holds any more.", order.ordered_on)
        }
        (false, _) => {
            "The order was made with another version of this range; price, weight and date are those of today.".into()
        }
    }
}
