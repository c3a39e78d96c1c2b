//! Tell lines: one sentence, its ways out as links in it, its grounds one step deeper.

use leptos::prelude::*;
use slotwright_core::words::page::{Label, Message};

use super::{Read, inert};

/// How much a line matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// Cannot be made.
    Stop,
    /// Somebody should know.
    Warn,
    /// Good to know.
    Hint,
}

/// One line.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// How much it matters.
    pub tone: Tone,
    /// The sentence.
    pub sentence: String,
    /// What can be done about it.
    pub ways: Vec<String>,
    /// Why it is asked and where its figures come from, once the adviser has said it.
    pub grounds: Option<[String; 2]>,
}

/// All lines of a question; `take` hears which way out of which line was taken.
#[component]
pub fn Tells(
    /// The lines.
    lines: Read<Vec<Line>>,
    /// Hears the line and its way.
    take: Callback<(usize, usize)>,
) -> impl IntoView {
    // Lines that stay the same stay open.
    let lines = Memo::new(move |_| lines.run(()));
    let shown =
        move || lines.get().into_iter().enumerate().map(|(at, line)| view! { <Tell at line take/> }).collect_view();
    view! { <div class="tells">{shown}</div> }
}

#[component]
fn Tell(at: usize, line: Line, take: Callback<(usize, usize)>) -> impl IntoView {
    let (class, word) = match line.tone {
        Tone::Stop => ("tell stop", Label::CannotBeMade.text()),
        Tone::Warn => ("tell warn", Label::Mind.text()),
        Tone::Hint => ("tell hint", ""),
    };
    let ways = line.ways.into_iter().enumerate().map(|(way, label)| {
        view! { <button type="button" class="way" on:click=move |_| take.run((at, way))>{label}</button> }
    });
    view! {
        <div class=class>
            <p><b>{word}</b>" "{line.sentence}" "{ways.collect_view()}</p>
            {line.grounds.map(|[why, source]| view! {
                <details>
                    {inert("<summary>", Label::Why)}
                    <p>{why}</p>
                    <p class="source">{Message::Source(&source).text()}</p>
                </details>
            })}
        </div>
    }
}
