//! A row of answers of which one is taken; shut ones stay in sight and say why.

use leptos::prelude::*;

/// One answer as it is shown.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shown {
    /// Its name.
    pub label: String,
    /// A drawing beside the name, as SVG of our own making.
    pub picture: Option<String>,
    /// A colour beside the name, and whether grain shows through it.
    pub swatch: Option<(String, bool)>,
    /// Whether it is the present one.
    pub taken: bool,
    /// Why it cannot be taken; nothing if it can.
    pub shut: Option<String>,
}

/// A row of answers. `take` hears the number of the one that was taken.
///
/// Buttons stay mounted while their answers change, so that focus stays where it is.
#[component]
pub fn Choices(
    /// What is asked.
    #[prop(into)]
    label: Signal<String>,
    /// The answers.
    #[prop(into)]
    answers: Signal<Vec<Shown>>,
    /// Hears which one was taken.
    take: Callback<usize>,
    /// A class for the look of the row.
    #[prop(default = "row")]
    look: &'static str,
) -> impl IntoView {
    let (asked, ask) = signal(None::<usize>);
    let reason = move || {
        let at = asked.get()?;
        answers.with(|answers| answers.get(at).and_then(|answer| Some((answer.label.clone(), answer.shut.clone()?))))
    };
    let count = Memo::new(move |_| answers.with(Vec::len));
    view! {
        <div class=format!("choices {look}") role="group" aria-label=move || label.get()>
            <For each=move || 0..count.get() key=|at| *at let:at>
                <Answer at answers take ask/>
            </For>
        </div>
        <p class="why" aria-live="polite">
            {move || reason().map(|(label, why)| view! { <span><b>{label}</b>" cannot be had: "{why}</span> })}
        </p>
    }
}

#[component]
fn Answer(at: usize, answers: Signal<Vec<Shown>>, take: Callback<usize>, ask: WriteSignal<Option<usize>>) -> impl IntoView {
    let answer = Memo::new(move |_| answers.with(|answers| answers.get(at).cloned().unwrap_or_default()));
    let shut = Memo::new(move |_| answer.with(|answer| answer.shut.is_some() && !answer.taken));
    let touch = move |_: ()| ask.set(if shut.get_untracked() { Some(at) } else { None });
    let swatch = move || {
        answer.with(|answer| answer.swatch.clone()).map(|(colour, clear)| {
            view! { <span class="swatch" class:clear=clear style:background-color=colour></span> }
        })
    };
    let picture = move || {
        answer.with(|answer| answer.picture.clone()).map(|svg| view! { <span class="picture" inner_html=svg></span> })
    };
    view! {
        <button
            type="button"
            class="choice"
            aria-pressed=move || answer.with(|answer| answer.taken).to_string()
            aria-disabled=move || shut.get().to_string()
            on:focus=move |_| touch(())
            on:pointerenter=move |_| touch(())
            on:click=move |_| {
                touch(());
                if !shut.get_untracked() {
                    take.run(at);
                }
            }
        >
            {picture}
            {swatch}
            <span class="label">{move || answer.with(|answer| answer.label.clone())}</span>
        </button>
    }
}
