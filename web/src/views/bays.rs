//! What goes in each bay.

use leptos::prelude::*;
use slotwright_core::change::Change;
use slotwright_core::choice::{Bay, Hole};
use slotwright_core::finding::Question;
use slotwright_core::options::Answer;
use slotwright_core::quantity::Dim;
use slotwright_core::range::Range;
use slotwright_core::words;
use slotwright_cutpack::glyph;

use super::ask::{Asked, Found, Heading, shown};
use crate::parts::choices::{Choices, Shown};
use crate::parts::stepper::Stepper;
use crate::state::Desk;

/// The cards of the bays, then the questions of the one that is looked at.
#[component]
pub fn Bays() -> impl IntoView {
    let desk = Desk::here();
    let cards = Memo::new(move |_| {
        let lit = desk.lit.get();
        desk.choice.with(|choice| {
            let cards = (1..).zip(&choice.bays).map(|(number, bay): (usize, &Bay)| Shown {
                label: format!("{number}: {}", words::fill(bay.fill)),
                picture: Some(glyph::bay(bay)),
                taken: number == lit + 1,
                ..Shown::default()
            });
            cards.collect::<Vec<_>>()
        })
    });
    let number = move || desk.lit.get() + 1;
    view! {
        <section id="question-bays">
            <Heading number=3 title="What goes in each bay"/>
            <Choices label="Bay to look at".to_string() answers=cards look="cards"
                take=Callback::new(move |at| desk.look_at(at))/>
            <h3>{move || format!("Bay {} holds", number())}</h3>
            <Asked label=Signal::derive(move || format!("Bay {} holds", number()))
                pick=|options, lit| options.bays.get(lit).map(|bay| bay.fills.clone()).unwrap_or_default()
                show=|_, answer| shown(answer, match &answer.change {
                    Change::Fill { fill, .. } => words::fill(*fill),
                    _ => String::new(),
                })/>
            <ShareStepper/>
            <h3>{move || format!("Cable hole in the back of bay {}", number())}</h3>
            <Asked label=Signal::derive(move || format!("Cable hole of bay {}", number()))
                pick=|options, lit| options.bays.get(lit).map(|bay| bay.holes.clone()).unwrap_or_default()
                show=shown_hole/>
            <OffsetStepper/>
            <Found about=|question| matches!(question, Question::Bay(_) | Question::Hole(_))/>
        </section>
    }
}

fn shown_hole(range: &Range, answer: &Answer) -> Shown {
    let name = match &answer.change {
        Change::Hole { hole: Some(hole), .. } => range.hole(&hole.kind).map(|kind| kind.name.clone()),
        _ => None,
    };
    shown(answer, name.unwrap_or_else(|| "No hole".into()))
}

/// The number of the bay that is looked at, from 1, and what it is.
fn looked_at(desk: Desk) -> Option<(u8, Bay)> {
    let lit = desk.lit.get();
    let bay = desk.choice.with(|choice| choice.bays.get(lit).cloned())?;
    Some((u8::try_from(lit + 1).ok()?, bay))
}

/// Whether a change leaves nothing that stops.
fn open(desk: Desk, change: &Change) -> bool {
    desk.choice.with(|choice| desk.with_range(|range| slotwright_core::rules::judge(range, &choice.with(change, range)).holds()))
}

/// Runs a step that is worked out anew for either direction.
fn stepped(desk: Desk, change: fn(u8, &Bay, bool) -> Option<Change>) -> (Signal<(bool, bool)>, Callback<bool>) {
    let next = move |up| looked_at(desk).and_then(|(number, bay)| change(number, &bay, up));
    let can = Memo::new(move |_| {
        let can = |up| next(up).is_some_and(|change| open(desk, &change));
        (can(false), can(true))
    });
    let step = Callback::new(move |up| if let Some(change) = untrack(move || next(up)) {
        desk.apply(&change);
    });
    (can.into(), step)
}

#[component]
fn ShareStepper() -> impl IntoView {
    let desk = Desk::here();
    let (can, step) = stepped(desk, |bay, now, up| {
        let share = if up { now.share.checked_add(1) } else { now.share.checked_sub(1) }?;
        (1..=9).contains(&share).then_some(Change::Share { bay, share })
    });
    let text = move || {
        let lit = desk.lit.get();
        let clear = desk.known.with(|known| {
            let span = known.built.as_ref()?.layout.bays.get(lit)?;
            Some(words::decimal(span.clear().in_mm(), 0))
        });
        let share = looked_at(desk).map_or(1, |(_, bay)| bay.share);
        clear.map_or_else(|| format!("{share}"), |clear| format!("{share} ({clear} mm)"))
    };
    view! { <Stepper label="Share of the width" text=Signal::derive(text) can step/> }
}

/// How far a press moves a hole.
const HOLE_STEP: i32 = 200;

#[component]
fn OffsetStepper() -> impl IntoView {
    let desk = Desk::here();
    let (can, step) = stepped(desk, |bay, now, up| {
        let Hole { kind, offset_mm } = now.hole.clone()?;
        let moved = offset_mm.in_tenths() + if up { HOLE_STEP } else { -HOLE_STEP };
        Some(Change::Hole { bay, hole: Some(Hole { kind, offset_mm: Dim::tenths(moved) }) })
    });
    let text = move || {
        let hole = looked_at(desk).and_then(|(_, bay)| bay.hole);
        hole.map_or_else(|| "\u{2013}".to_string(), |hole| words::offset(hole.offset_mm))
    };
    view! { <Stepper label="Place of the hole" text=Signal::derive(text) can step/> }
}
