//! A field that may stay empty.

use leptos::prelude::*;
use slotwright_core::words::page::Label;

use super::{Entry, Read};

/// A field that may stay empty; `take` hears what is typed.
#[component]
pub fn Optional(
    label: &'static str,
    #[prop(into)] unit: String,
    show: Read<Entry>,
    take: Callback<String>,
    /// `text`, or `date`.
    #[prop(default = "text")]
    kind: &'static str,
) -> impl IntoView {
    let entry = Memo::new(move |_| show.run(()));
    let wrong = move || entry.with(|entry| entry.wrong.clone());
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
                    aria-invalid=move || (!wrong().is_empty()).to_string()
                    prop:value=move || entry.with(|entry| entry.text.clone())
                    on:change=typed/>
                <span class="unit">{unit}</span>
            </span>
            <span class="wrong" role="alert">{wrong}</span>
        </label>
    }
}
