//! Tell lines: one sentence, its ways out as links in it, its grounds one step deeper.

use leptos::prelude::*;

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
pub struct Line<T> {
    /// How much it matters.
    pub tone: Tone,
    /// The sentence.
    pub sentence: String,
    /// What to do, and what that sends.
    pub ways: Vec<(String, T)>,
    /// Why it is asked.
    pub why: &'static str,
    /// Where its figures come from.
    pub source: &'static str,
}

/// All lines of a question; `take` hears the way out that was taken.
#[component]
pub fn Tells<T: Clone + PartialEq + Send + Sync + 'static>(
    /// The lines.
    #[prop(into)]
    lines: Signal<Vec<Line<T>>>,
    /// Hears which way out was taken.
    take: Callback<T>,
) -> impl IntoView {
    let line = move |line: Line<T>| {
        let (class, word) = match line.tone {
            Tone::Stop => ("tell stop", "Cannot be made. "),
            Tone::Warn => ("tell warn", "Mind. "),
            Tone::Hint => ("tell hint", ""),
        };
        let ways = line.ways.into_iter().map(|(label, way)| {
            view! { " "<button type="button" class="way" on:click=move |_| take.run(way.clone())>{label}</button> }
        }).collect_view();
        view! {
            <div class=class>
                <p><b>{word}</b>{line.sentence}{ways}</p>
                <details>
                    <summary>"Why"</summary>
                    <p>{line.why}</p>
                    <p class="source">"Source: "{line.source}"."</p>
                </details>
            </div>
        }
    };
    view! { <div class="tells">{move || lines.get().into_iter().map(line).collect_view()}</div> }
}
