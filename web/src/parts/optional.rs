//! A field that may stay empty.

use leptos::prelude::*;

use super::Read;

/// A field that may stay empty; `take` hears what is typed and says what was understood, nothing if it cannot be read.
#[component]
pub fn Optional(
    label: &'static str,
    #[prop(into)] unit: String,
    /// What it says when it cannot be read.
    wrong: &'static str,
    show: Read<String>,
    take: Callback<String, Option<String>>,
    /// `text`, or `date`.
    #[prop(default = "text")]
    kind: &'static str,
) -> impl IntoView {
    let good = RwSignal::new(true);
    let typed = move |event| {
        let read = take.run(event_target_value(&event).trim().into());
        good.set(read.is_some());
        if let Some(read) = read {
            event_target::<web_sys::HtmlInputElement>(&event).set_value(&read);
        }
    };
    view! {
        <label class="field">
            <span class="field-label">{label}</span>
            <span class="boxed">
                <input type=kind inputmode="decimal" autocomplete="off" placeholder="any"
                    aria-invalid=move || (!good.get()).to_string()
                    prop:value=move || show.run(())
                    on:change=typed/>
                <span class="unit">{unit}</span>
            </span>
            <span class="wrong" role="alert">{move || if good.get() { "" } else { wrong }}</span>
        </label>
    }
}
