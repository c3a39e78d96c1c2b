//! A field that may stay empty.

use leptos::prelude::*;

use super::Read;

/// A field that may stay empty; `take` hears what is typed and says whether it can be read.
#[component]
pub fn Optional(
    label: &'static str,
    #[prop(into)] unit: String,
    /// What it says when it cannot be read.
    wrong: &'static str,
    show: Read<String>,
    take: Callback<String, bool>,
    /// `text`, or `date`.
    #[prop(default = "text")]
    kind: &'static str,
) -> impl IntoView {
    let good = RwSignal::new(true);
    let typed = move |event| good.set(take.run(event_target_value(&event).trim().into()));
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
