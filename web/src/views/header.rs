//! Whose range it is; opening an order; beginning afresh.

use leptos::prelude::*;
use slotwright_core::choice::Choice;
use slotwright_core::question::Question;
use web_sys::HtmlInputElement;

use crate::browser::files;
use crate::browser::orders::{self, Answer};
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
            open(desk, files::text(file).await, told);
            if let Some(input) = picker.try_get_untracked().flatten() {
                input.set_value("");
            }
        });
    };
    // What was chosen and kept before, as long as nothing has been answered or kept since.
    let before = RwSignal::new(None::<(Choice, Vec<Question>, Choice)>);
    let back = move || {
        let (old, kept, begun) = before.get()?;
        (!desk.keeps_any() && desk.read(|known, _| known.choice == begun)).then_some((old, kept))
    };
    let afresh = move |_| {
        if let Some((old, kept)) = untrack(back) {
            before.set(None);
            desk.go_back(old, kept);
        } else {
            let old = desk.peek(|known, _| known.choice.clone());
            let kept = desk.begin_afresh();
            let begun = desk.peek(|known, _| known.choice.clone());
            before.set(Some((old, kept, begun)).filter(|(old, kept, begun)| old != begun || !kept.is_empty()));
        }
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
                <button type="button" on:click=afresh>{move || if back().is_some() { "Take it back" } else { "Begin afresh" }}</button>
            </div>
        </header>
        <div class="notice" class:empty=move || told.with(String::is_empty)>
            <p role="status">{move || told.get()}</p>
            <button type="button" on:click=move |_| told.set(String::new())>"Close"</button>
        </div>
    }
}

/// Takes over the choice of an order file; `told` hears what came of it.
fn open(desk: Desk, file: Option<String>, told: RwSignal<String>) {
    let Some(file) = file else {
        told.set("This file cannot be read, or is far too large for an order.".into());
        return;
    };
    let heard = move |answer| match answer {
        Answer::Bad(sentence) => told.set(sentence),
        Answer::Good(sentence, note) => {
            if let Some(choice) = note.as_string().and_then(|note| Choice::of_note(&note)) {
                desk.replace(choice);
            }
            told.set(sentence);
        }
    };
    orders::ask(vec!["read".into(), desk.range_text(), file], Callback::new(heard));
}
