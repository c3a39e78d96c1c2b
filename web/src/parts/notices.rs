//! Notices: one sentence, its ways out as links in it, its grounds one step deeper.

use leptos::prelude::*;
use slotwright_core::words::page::{Label, Message};

use super::{Read, inert};

/// How much a notice matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// Cannot be made.
    Stop,
    /// Somebody should know.
    Warn,
    /// Good to know.
    Hint,
}

/// One notice.
#[derive(Clone, Debug, PartialEq)]
pub struct Notice {
    /// How much it matters.
    pub tone: Tone,
    /// The sentence.
    pub sentence: String,
    /// What can be done about it.
    pub remedies: Vec<String>,
    /// Why it is asked and where its figures come from, once the adviser has said it.
    pub grounds: Option<[String; 2]>,
}

/// All notices of a question; `take` gets which way out of which notice was taken.
#[component]
pub fn Notices(
    /// The notices.
    notices: Read<Vec<Notice>>,
    /// Gets the notice and its way out, by number.
    take: Callback<(usize, usize)>,
) -> impl IntoView {
    // Notices that stay the same stay open.
    let notices = Memo::new(move |_| notices.run(()));
    let shown = move || {
        notices.get().into_iter().enumerate().map(|(at, notice)| view! { <NoticeItem at notice take/> }).collect_view()
    };
    view! { <div class="notices">{shown}</div> }
}

#[component]
fn NoticeItem(at: usize, notice: Notice, take: Callback<(usize, usize)>) -> impl IntoView {
    let (class, word) = match notice.tone {
        Tone::Stop => ("notice stop", Label::CannotBeMade.text()),
        Tone::Warn => ("notice warn", Label::Mind.text()),
        Tone::Hint => ("notice hint", ""),
    };
    let remedies = notice.remedies.into_iter().enumerate().map(|(remedy, label)| {
        view! { <button type="button" class="remedy" on:click=move |_| take.run((at, remedy))>{label}</button> }
    });
    view! {
        <div class=class tabindex="-1">
            <p><b>{word}</b>" "{notice.sentence}" "{remedies.collect_view()}</p>
            {notice.grounds.map(|[why, source]| view! {
                <details>
                    {inert("<summary>", Label::Why)}
                    <p>{why}</p>
                    <p class="source">{Message::Source(&source).text()}</p>
                </details>
            })}
        </div>
    }
}
