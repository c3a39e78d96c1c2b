//! A figure with a button for less and one for more; a size can be typed as well. The buttons are for hands: keys have the
//! arrows of the figure itself, which is the one stop for Tab.

use leptos::prelude::*;
use slotwright_core::words::page::{Label, Message};
use web_sys::KeyboardEvent;

use super::{Entry, Read, fresh_id, steps_of};

#[component]
fn Press(label: String, sign: &'static str, count: i32, steps: Memo<Entry>, step: Callback<i32>) -> impl IntoView {
    let can = move |steps: &Entry| if count > 0 { steps.more } else { steps.less };
    let press = move |_| {
        if steps.with_untracked(can) {
            step.run(count);
        }
    };
    view! {
        <button type="button" tabindex="-1" aria-label=label aria-disabled=move || (!steps.with(can)).to_string() on:click=press>
            {sign}
        </button>
    }
}

/// Takes the keys that step.
fn keys(step: Callback<i32>) -> impl Fn(KeyboardEvent) {
    move |event| {
        if let Some(count) = steps_of(&event.key()) {
            event.prevent_default();
            step.run(count);
        }
    }
}

/// A labelled value that is only stepped.
#[component]
pub fn Stepper(
    /// What is counted.
    label: &'static str,
    /// The present value.
    steps: Read<Entry>,
    /// Hears how many more, or less below nothing; one at a time is enough.
    step: Callback<i32>,
) -> impl IntoView {
    let steps = Memo::new(move |_| steps.run(()));
    let text = move || steps.with(|steps| steps.text.clone());
    // Where there is nothing to step, nobody has to go through.
    let stop = move || steps.with(|steps| if steps.less || steps.more { "0" } else { "-1" });
    view! {
        <div class="field">
            <span class="field-label">{label}</span>
            <span class="stepped">
                <Press label=Message::Less(label).text() sign="\u{2212}" count=-1 steps step/>
                <span class="figure" role="spinbutton" aria-label=label tabindex=stop
                    aria-valuenow=move || steps.with(|steps| steps.figure.to_string())
                    aria-valuetext=text on:keydown=keys(step)>{text}</span>
                <Press label=Message::More(label).text() sign="+" count=1 steps step/>
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
    /// Hears how many steps more, or less below nothing.
    step: Callback<i32>,
    /// Hears what was typed.
    take: Callback<String>,
    /// What stands there instead of nothing, where that can be typed.
    #[prop(optional)]
    empty: Option<Label>,
) -> impl IntoView {
    let steps = Memo::new(move |_| steps.run(()));
    let entered = move |event| {
        take.run(event_target_value(&event));
        // The same size may have been typed in another unit.
        event_target::<web_sys::HtmlInputElement>(&event).set_value(&steps.with_untracked(|steps| steps.text.clone()));
    };
    let (unit, wrong) = (fresh_id(), fresh_id());
    view! {
        <div class="field">
            <span class="stepped">
                <Press label=Message::StepLess(label).text() sign="\u{2212}" count=-1 steps step/>
                <input
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    placeholder=empty.map(Label::text)
                    aria-label=label
                    aria-describedby=[unit.as_str(), &wrong].join(" ")
                    aria-invalid=move || steps.with(|steps| !steps.wrong.is_empty() || steps.invalid).to_string()
                    prop:value=move || steps.with(|steps| steps.text.clone())
                    on:change=entered
                    on:keydown=keys(step)
                />
                <span class="unit" id=unit aria-hidden="true">{Label::Mm.text()}</span>
                <Press label=Message::StepMore(label).text() sign="+" count=1 steps step/>
            </span>
            <p class="wrong" id=wrong>{move || steps.with(|steps| steps.wrong.clone())}</p>
        </div>
    }
}
