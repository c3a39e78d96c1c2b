//! A figure with a button for less and one for more; a size can be typed as well.

use leptos::prelude::*;
use slotwright_core::words::page::{Label, Message};

use super::{Entry, Read, inert};

#[component]
fn Press(label: String, sign: &'static str, up: bool, steps: Memo<Entry>, step: Callback<bool>) -> impl IntoView {
    let can = move |steps: &Entry| if up { steps.more } else { steps.less };
    let press = move |_| {
        if steps.with_untracked(can) {
            step.run(up);
        }
    };
    view! {
        <button type="button" aria-label=label aria-disabled=move || (!steps.with(can)).to_string() on:click=press>
            {sign}
        </button>
    }
}

/// A labelled value that is only stepped.
#[component]
pub fn Stepper(
    /// What is counted.
    label: &'static str,
    /// The present value.
    steps: Read<Entry>,
    /// Hears `true` for more, `false` for less.
    step: Callback<bool>,
) -> impl IntoView {
    let steps = Memo::new(move |_| steps.run(()));
    view! {
        <div class="field">
            <span class="field-label">{label}</span>
            <span class="stepped">
                <Press label=Message::Less(label).text() sign="\u{2212}" up=false steps step/>
                <output aria-label=label>{move || steps.with(|steps| steps.text.clone())}</output>
                <Press label=Message::More(label).text() sign="+" up=true steps step/>
            </span>
        </div>
    }
}

/// A size in millimetres, typed in any usual unit or stepped; the label stands elsewhere.
#[component]
pub fn Dimension(
    /// What is measured.
    label: &'static str,
    /// The present value.
    steps: Read<Entry>,
    /// Hears `true` for more, `false` for less.
    step: Callback<bool>,
    /// Hears what was typed.
    take: Callback<String>,
) -> impl IntoView {
    let steps = Memo::new(move |_| steps.run(()));
    let entered = move |event| {
        take.run(event_target_value(&event));
        // The same size may have been typed in another unit.
        event_target::<web_sys::HtmlInputElement>(&event).set_value(&steps.with_untracked(|steps| steps.text.clone()));
    };
    let keys = move |event: web_sys::KeyboardEvent| {
        let up = match event.key().as_str() {
            "ArrowUp" => true,
            "ArrowDown" => false,
            _ => return,
        };
        event.prevent_default();
        step.run(up);
    };
    view! {
        <div class="field">
            <span class="stepped">
                <Press label=Message::StepLess(label).text() sign="\u{2212}" up=false steps step/>
                <input
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    aria-label=Message::InMillimetres(label).text()
                    aria-invalid=move || steps.with(|steps| !steps.wrong.is_empty() || steps.invalid).to_string()
                    prop:value=move || steps.with(|steps| steps.text.clone())
                    on:change=entered
                    on:keydown=keys
                />
                {inert("<span class=\"unit\" aria-hidden=\"true\">", Label::Mm)}
                <Press label=Message::StepMore(label).text() sign="+" up=true steps step/>
            </span>
            <p class="wrong" role="alert">{move || steps.with(|steps| steps.wrong.clone())}</p>
        </div>
    }
}
