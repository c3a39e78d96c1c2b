//! A field that may stay empty.

use leptos::prelude::*;
use slotwright_core::words::page::Label;

use super::{Entry, Read};

/// A field that may stay empty; `take` hears what is typed.
#[component]
pub fn Optional(
    label: &'static str,
    #[prop(into)] unit: String,
    /// What it says when it cannot be read.
    wrong: &'static str,
    show: Read<Entry>,
    take: Callback<String>,
    /// `text`, or `date`.
    #[prop(default = "text")]
    kind: &'static str,
) -> impl IntoView {
    let entry = Memo::new(move |_| show.run(()));
    let bad = move || entry.with(|entry| entry.bad);
    let typed = move |event| {
        take.run(event_target_value(&event).trim().into());
        // The same may have been typed in another unit.
        event_target::<web_sys::HtmlInputElement>(&event).set_value(&entry.with_untracked(|entry| entry.text.clone()));
    };
    view! {
        <label class="field">
            <span class="field-label">{label}</span>
            <span class="boxed">
                <input type=kind inputmode="decimal" autocomplete="off" placeholder=Label::Any.text()
                    aria-invalid=move || bad().to_string()
                    prop:value=move || entry.with(|entry| entry.text.clone())
                    on:change=typed/>
                <span class="unit">{unit}</span>
            </span>
            <span class="wrong" role="alert">{move || if bad() { wrong } else { "" }}</span>
        </label>
    }
}
