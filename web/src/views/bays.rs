//! What goes in each bay.

use std::time::Duration;

use leptos::prelude::*;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::choice::{Bay, Hole, SHARE_MOST};
use slotwright_core::range::Range;
use slotwright_core::rules::can_be_made;
use slotwright_core::solver::Answer;
use slotwright_core::units::quantity::Dim;
use slotwright_core::words;
use slotwright_core::words::page::{Label, Message};
use slotwright_cutpack::glyph;

use super::ask::{AnswerRow, FindingNotices, Heading, Keep, Stop, ToOrder, shown};
use crate::browser::page;
use crate::parts::Entry;
use crate::parts::choices::{AnswerView, Choices};
use crate::parts::stepper::Stepper;
use crate::state::{Desk, Snapshot};

/// The cards of the bays, then the questions of the one that is looked at.
#[component]
pub fn Bays() -> impl IntoView {
    let desk = Desk::here();
    let cards = move |()| {
        let lit = desk.lit();
        desk.read(|snapshot, _| {
            let cards = snapshot.choice.bays.iter().enumerate().map(|(at, bay)| AnswerView {
                label: Message::BayCard(at + 1, bay.fill).text(),
                picture: glyph::bay(bay),
                taken: at == lit,
                ..AnswerView::default()
            });
            cards.collect()
        })
    };
    let last = move || desk.read(|snapshot, _| desk.lit() + 1 >= snapshot.choice.bays.len());
    let on_to_next = move |_| {
        desk.look_at(untrack(move || desk.lit()) + 1);
        set_timeout(|| page::focus_first("#bay [aria-checked=true]"), Duration::ZERO);
    };
    view! {
        <section id="question-bays">
            <Heading number=3 title=Label::WhatInEachBay/>
            <Choices label=Callback::new(|()| Label::BayToLookAt.text().into()) answers=Callback::new(cards) look="cards" roles=["tablist", "tab"]
                take=Callback::new(move |at| desk.look_at(at))/>
            <div id="bay" role="tabpanel" aria-labelledby="bay-name">
            <div class="asks"><h3 id="bay-name">{move || holds(desk.lit() + 1)}</h3><Keep question=Question::Bay/></div>
            <AnswerRow label=holds pick=|options, lit| options.bays.get(lit).map(|bay| &*bay.fills).unwrap_or_default() show=fill/>
            <BayStepper label=Label::ShareOfWidth change=share show=show_share figure=|bay| i32::from(bay.share)/>
            <div class="asks"><h3>{move || pierced(desk.lit() + 1)}</h3><Keep question=Question::Hole/></div>
            <AnswerRow label=pierced pick=|options, lit| options.bays.get(lit).map(|bay| &*bay.holes).unwrap_or_default() show=hole/>
            <BayStepper label=Label::PlaceOfHole change=offset show=show_offset
                figure=|bay| bay.hole.as_ref().map_or(0, |hole| hole.offset_mm.in_tenths())/>
            <div class="asks"><h3>{move || taken(desk.lit() + 1)}</h3><Keep question=Question::Device/></div>
            <AnswerRow label=taken pick=|options, lit| options.bays.get(lit).map(|bay| &*bay.devices).unwrap_or_default() show=device/>
            <FindingNotices asked=|question| matches!(question, Question::Bay(_) | Question::Shares | Question::Hole(_) | Question::Device(_))/>
            <button type="button" class="skip here" class:away=last on:click=on_to_next>
                {move || Message::OnToBay(desk.lit() + 2).text()}
            </button>
            </div>
            <ToOrder/>
        </section>
    }
}

fn holds(number: usize) -> String {
    Message::BayHolds(number).text()
}

fn pierced(number: usize) -> String {
    Message::BayHole(number).text()
}

fn taken(number: usize) -> String {
    Message::BayDevice(number).text()
}

fn fill(_: &Range, answer: &Answer<Stop>) -> AnswerView {
    let Change::Fill { fill, .. } = &answer.change else { return AnswerView::default() };
    shown(answer, words::fill(*fill))
}

fn hole(range: &Range, answer: &Answer<Stop>) -> AnswerView {
    let name = match &answer.change {
        Change::Hole { hole: Some(hole), .. } => range.hole(&hole.kind).map(|kind| kind.name.clone()),
        _ => None,
    };
    shown(answer, name.unwrap_or_else(|| Label::NoHole.text().into()))
}

fn device(range: &Range, answer: &Answer<Stop>) -> AnswerView {
    let name = match &answer.change {
        Change::Device { device: Some(key), .. } => range.device(key).map(|device| device.name.clone()),
        _ => None,
    };
    shown(answer, name.unwrap_or_else(|| Label::NoDevice.text().into()))
}

/// One share more or less of the width.
fn share(number: u8, bay: &Bay, up: bool) -> Option<Change> {
    let share = if up { bay.share.checked_add(1) } else { bay.share.checked_sub(1) }?;
    (1..=SHARE_MOST).contains(&share).then_some(Change::Share { bay: number, share })
}

fn show_share(snapshot: &Snapshot, lit: usize, bay: &Bay) -> String {
    let span = snapshot.built.as_ref().and_then(|built| built.layout.bays.get(lit));
    match span {
        Some(span) => format!("{} ({})", bay.share, words::distance(span.clear())),
        None => bay.share.to_string(),
    }
}

/// How far a press moves a hole, in tenths of a millimetre.
const HOLE_STEP: i32 = 200;

fn offset(number: u8, bay: &Bay, up: bool) -> Option<Change> {
    let Hole { kind, offset_mm } = bay.hole.clone()?;
    let offset_mm = Dim::tenths(offset_mm.in_tenths() + if up { HOLE_STEP } else { -HOLE_STEP });
    Some(Change::Hole { bay: number, hole: Some(Hole { kind, offset_mm }) })
}

fn show_offset(_: &Snapshot, _: usize, bay: &Bay) -> String {
    bay.hole.as_ref().map_or_else(|| "\u{2013}".into(), |hole| words::offset(hole.offset_mm))
}

/// A value of the bay that is looked at, stepped; a step that something would stop is not offered.
#[component]
fn BayStepper(
    label: Label,
    change: fn(u8, &Bay, bool) -> Option<Change>,
    show: fn(&Snapshot, usize, &Bay) -> String,
    figure: fn(&Bay) -> i32,
) -> impl IntoView {
    let desk = Desk::here();
    let steps = move |()| {
        let lit = desk.lit();
        desk.read(|snapshot, range| {
            let Some(bay) = snapshot.choice.bays.get(lit) else { return Entry::default() };
            let number = u8::try_from(lit + 1).unwrap_or(u8::MAX);
            let can = |up| {
                change(number, bay, up).is_some_and(|change| can_be_made(range, &snapshot.choice.with(&change, range)))
            };
            Entry {
                text: show(snapshot, lit, bay),
                figure: figure(bay),
                less: can(false),
                more: can(true),
                ..Entry::default()
            }
        })
    };
    let step = move |steps| {
        let lit = untrack(move || desk.lit());
        let number = u8::try_from(lit + 1).unwrap_or(u8::MAX);
        let change = desk.peek(|snapshot, _| change(number, snapshot.choice.bays.get(lit)?, steps > 0));
        if let Some(change) = change {
            desk.apply(&change);
        }
    };
    view! { <Stepper label=label.text() steps=Callback::new(steps) step=Callback::new(step)/> }
}
