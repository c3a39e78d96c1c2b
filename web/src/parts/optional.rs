//! A field that may stay empty.

use leptos::prelude::*;
use slotwright_core::words::page::Label;

use super::{Entry, Read, fresh_id};

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
    let [input, measure, problem] = [fresh_id(), fresh_id(), fresh_id()];
    let described = [measure.as_str(), &problem].join(" ");
    view! {
        <div class="field">
            <label class="field-label" for=input.clone()>{label}</label>
            <span class="boxed">
                <input id=input type=kind inputmode="decimal" autocomplete="off" placeholder=Label::Any.text()
                    aria-describedby=described
                    aria-invalid=move || (!wrong().is_empty()).to_string()
                    prop:value=move || entry.with(|entry| entry.text.clone())
                    on:change=typed/>
                <span class="unit" id=measure aria-hidden="true">{unit}</span>
            </span>
            <span class="wrong" id=problem>{wrong}</span>
        </div>
    }
}
