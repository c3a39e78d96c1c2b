//! The plinth: none, or how much of the height it is.

use leptos::prelude::*;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::solver::Answer;
use slotwright_core::units::quantity::Dim;
use slotwright_core::words;
use slotwright_core::words::page::Label;

use super::ask::{FindingNotices, Keep, Stop, stopped};
use super::settled::Settled;
use crate::parts::stepper::Dimension;
use crate::parts::{Entry, inert};
use crate::state::{Desk, Snapshot};
use crate::unread::Field;

/// The plinth, where the model offers one.
#[component]
pub fn Plinth() -> impl IntoView {
    let desk = Desk::here();
    let offered = Memo::new(move |_| {
        desk.read(|snapshot, _| snapshot.options.as_ref().is_some_and(|options| !options.plinths.is_empty()))
    });
    view! {
        {move || offered.get().then(|| view! { <Height/> })}
        // A link may name a plinth all the same.
        <FindingNotices asked=is_plinth/>
    }
}

fn is_plinth(question: Question) -> bool {
    question == Question::Plinth
}

/// How high, or that there is none.
#[component]
fn Height() -> impl IntoView {
    let desk = Desk::here();
    let steps = move |()| {
        let typed = desk.unread.entry(Field::Plinth);
        desk.read(|snapshot, _| Entry {
            wrong: desk.wrong(Field::Plinth),
            text: typed.or_else(|| snapshot.choice.plinth_mm.map(words::size)).unwrap_or_default(),
            less: next(snapshot, -1).is_some(),
            more: next(snapshot, 1).is_some(),
            invalid: stopped(snapshot, is_plinth),
            ..Entry::default()
        })
    };
    let step = move |steps| {
        if let Some(change) = desk.peek(|snapshot, _| next(snapshot, steps)) {
            desk.apply(&change);
        }
    };
    let is_none = move || desk.read(|snapshot, _| snapshot.choice.plinth_mm.is_none());
    let note = Settled::new();
    let typed = move |text: String| {
        // No height is none.
        if matches!(text.trim(), "" | "0") {
            return desk.apply(&Change::PlinthMm(None));
        }
        let limits = desk.peek(|snapshot, range| range.model(&snapshot.choice.model)?.plinth_mm);
        note.enter(desk, Field::Plinth, text, limits, &|size| Change::PlinthMm(Some(size)));
    };
    view! {
        <div class="size-head">
            {inert("<h3>", Label::Plinth)}
            <Keep question=|_| Question::Plinth/>
            <Dimension label=Label::Plinth.text() empty=Label::Without steps=Callback::new(steps) step=Callback::new(step) take=Callback::new(typed)/>
        </div>
        <div class="within">
            // For hands: keys come to it in the field, below the lowest.
            <button type="button" class="choice" tabindex="-1" aria-pressed=move || is_none().to_string()
                on:click=move |_| desk.apply(&Change::PlinthMm(None))>{Label::NoPlinth.text()}</button>
            {inert("<p>", Label::WithinHeight)}
        </div>
        <p class="why gap">{move || note.text(desk)}</p>
    }
}

/// The plinth that can be taken so many steps above, or below if there are less than none; the last one before the end.
fn next(snapshot: &Snapshot, steps: i32) -> Option<Change> {
    let height = |answer: &Answer<Stop>| {
        let Change::PlinthMm(height) = answer.change else { return None };
        answer.state.is_none().then_some(height)
    };
    let (now, far) = (snapshot.choice.plinth_mm, usize::try_from(steps.unsigned_abs()).unwrap_or(usize::MAX));
    // None comes before all heights.
    let open = snapshot.options.as_ref()?.plinths.iter();
    let open: Vec<Option<Dim>> = open.filter_map(height).collect();
    let next = if steps > 0 {
        open.into_iter().filter(|height| *height > now).take(far).last()
    } else {
        open.into_iter().rev().filter(|height| *height < now).take(far).last()
    };
    next.map(Change::PlinthMm)
}
