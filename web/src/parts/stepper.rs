//! A small count or offset with a button on either side.

use leptos::prelude::*;

/// The present value in words between two buttons; each hears what its press would do, if anything.
#[component]
pub fn Stepper(
    /// What is counted.
    label: &'static str,
    /// The present value in words.
    #[prop(into)]
    text: Signal<String>,
    /// Whether less and more can be had.
    #[prop(into)]
    can: Signal<(bool, bool)>,
    /// Hears `true` for more, `false` for less.
    step: Callback<bool>,
) -> impl IntoView {
    let press = move |up: bool| {
        let (less, more) = can.get_untracked();
        if if up { more } else { less } {
            step.run(up);
        }
    };
    view! {
        <div class="field">
            <span class="field-label">{label}</span>
            <span class="stepped">
                <button type="button" aria-label=format!("{label}: less") aria-disabled=move || (!can.get().0).to_string()
                    on:click=move |_| press(false)>"\u{2212}"</button>
                <output aria-label=label>{move || text.get()}</output>
                <button type="button" aria-label=format!("{label}: more") aria-disabled=move || (!can.get().1).to_string()
                    on:click=move |_| press(true)>"+"</button>
            </span>
        </div>
    }
}
