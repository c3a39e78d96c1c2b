//! How big: model, width, height, depth, number of bays.

use leptos::prelude::*;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::range::{DimRange, Range};
use slotwright_core::rules::first_stop;
use slotwright_core::rules::place::breaches;
use slotwright_core::solver::track::Stretch;
use slotwright_core::solver::{Answer, Run, Size};
use slotwright_core::units::quantity::Dim;
use slotwright_core::words;
use slotwright_core::words::page::{Label, Message};
use slotwright_protocol::adviser::{Question as Asked, Wanted};

use super::ask::{AnswerRow, FindingNotices, Heading, Keep, Stop, ToOrder, shown, stopped};
use super::goals::Goals;
use super::plinth::Plinth;
use super::settled::Settled;
use crate::browser::{adviser, page, speech};
use crate::parts::choices::{AnswerView, Choices, Key};
use crate::parts::slider::{Slider, Track};
use crate::parts::stepper::Dimension;
use crate::parts::{Entry, inert};
use crate::state::{Desk, Snapshot};
use crate::unread::Field;

/// Model, sizes, bays.
#[component]
pub fn Sizes(
    /// Whether all of it is wanted by now, and not only what is in sight as the page begins.
    all: Memo<bool>,
) -> impl IntoView {
    let desk = Desk::here();
    let models = move |()| {
        desk.read(|snapshot, range| {
            let shown = range.models.iter().map(|model| AnswerView {
                label: format!("{}, {}", model.name, model.about),
                taken: model.key == snapshot.choice.model,
                ..AnswerView::default()
            });
            shown.collect()
        })
    };
    let take = move |at: usize| {
        let key = desk.peek(|_, range| range.models.get(at).map(|model| model.key.clone()));
        if let Some(key) = key {
            desk.apply(&Change::Model(key));
        }
    };
    view! {
        <section id="question-size">
            <Heading number=2 title=Label::HowBig/>
            <Choices label=Callback::new(|()| Label::Model.text().into()) answers=Callback::new(models) take=Callback::new(take)/>
            <FindingNotices asked=|question| question == Question::Model/>
            <SizeQuestion label=Label::Width size=Size::Width question=|_| Question::Width asked=|question| question == Question::Width/>
            <SizeQuestion label=Label::Height size=Size::Height question=|_| Question::Height asked=|question| question == Question::Height/>
            <SizeQuestion label=Label::Depth size=Size::Depth question=|_| Question::Depth asked=|question| question == Question::Depth/>
            <div class="asks">{inert("<h3>", Label::BayCount)}<Keep question=|_| Question::Bays/></div>
            {move || all.get().then(|| view! {
                <AnswerRow label=|_| Label::BayCount.text().into() look="row short" pick=|options, _| &options.bay_counts show=bay_count/>
                <Key/>
                <FindingNotices asked=|question| question == Question::Bays/>
                <Plinth/>
                <Goals/>
                <ToOrder/>
            })}
        </section>
    }
}

fn bay_count(_: &Range, answer: &Answer<Stop>) -> AnswerView {
    let Change::BayCount(count) = answer.change else { return AnswerView::default() };
    shown(answer, count.to_string())
}

/// Steps from the least size of the model.
fn step_of(limits: DimRange, value: Dim) -> i32 {
    (value.in_tenths() - limits.least.in_tenths()) / limits.step.in_tenths().max(1)
}

fn value_of(limits: DimRange, step: i32) -> Dim {
    Dim::tenths(limits.least.in_tenths().saturating_add(step.saturating_mul(limits.step.in_tenths())))
}

/// The size that can be taken so many steps above, or below if there are less than none; the last one before the end.
fn neighbour(limits: DimRange, runs: &[Run<Stop>], now: Dim, steps: i32) -> Option<Dim> {
    let open = |value: &Dim| runs.iter().any(|run| run.state.is_none() && run.from <= *value && *value <= run.to);
    let far = usize::try_from(steps.unsigned_abs()).unwrap_or(usize::MAX);
    if steps > 0 {
        limits.values().filter(|value| *value > now && open(value)).take(far).last()
    } else {
        let below: Vec<Dim> = limits.values().take_while(|value| *value < now).filter(open).collect();
        below.get(below.len().saturating_sub(far)).copied()
    }
}

fn limits(snapshot: &Snapshot, range: &Range, size: Size) -> Option<DimRange> {
    range.model(&snapshot.choice.model).map(|model| size.limits(model))
}

fn track(snapshot: &Snapshot, range: &Range, size: Size) -> Option<Track> {
    let limits = limits(snapshot, range, size)?;
    let stretch = |run: &Run<Stop>| Stretch {
        from: step_of(limits, run.from),
        to: step_of(limits, run.to),
        open: run.state.is_none(),
    };
    Some(Track {
        step: step_of(limits, size.of(&snapshot.choice)),
        last: step_of(limits, limits.most),
        text: words::length(size.of(&snapshot.choice)),
        ends: (words::size(limits.least), words::size(limits.most)),
        stretches: snapshot.runs(size).iter().map(stretch).collect(),
    })
}

/// A size with its slider, and what is found about it.
#[component]
pub fn SizeQuestion(
    /// What it is called.
    label: Label,
    /// Which one.
    size: Size,
    /// The question that asks for it.
    question: fn(u8) -> Question,
    /// Whether a finding about a question is told here.
    asked: fn(Question) -> bool,
) -> impl IntoView {
    let (desk, label) = (Desk::here(), label.text());
    let next = move |snapshot: &Snapshot, range: &Range, steps| {
        neighbour(limits(snapshot, range, size)?, snapshot.runs(size), size.of(&snapshot.choice), steps)
    };
    let field = Field::Size(size);
    let steps = move |()| {
        let typed = desk.unread.entry(field);
        desk.read(|snapshot, range| Entry {
            wrong: desk.wrong(field),
            text: typed.unwrap_or_else(|| words::size(size.of(&snapshot.choice))),
            less: next(snapshot, range, -1).is_some(),
            more: next(snapshot, range, 1).is_some(),
            invalid: stopped(snapshot, asked),
            ..Entry::default()
        })
    };
    let step = move |steps| {
        if let Some(value) = desk.peek(|snapshot, range| next(snapshot, range, steps)) {
            desk.apply(&size.to(value));
        }
    };
    let settled = Settled::new();
    let note = move || settled.text(desk);
    let typed = move |text: String| {
        let limits = desk.peek(|snapshot, range| limits(snapshot, range, size));
        settled.enter(desk, field, text, limits, &|taken| size.to(taken));
    };
    let slid = move |step| {
        if let Some(limits) = desk.peek(|snapshot, range| limits(snapshot, range, size)) {
            desk.apply(&size.to(value_of(limits, step)));
        }
    };
    // The step that was wanted and does not go alone, and of which choice: why, and what goes with it.
    let wanted = RwSignal::new(None::<(i32, String)>);
    let value = move || {
        let (wanted, _) = wanted.get().filter(|(_, compact)| *compact == desk.compact())?;
        Some(value_of(desk.read(|snapshot, range| limits(snapshot, range, size))?, wanted))
    };
    Effect::new(move || {
        if let Some(value) = value() {
            adviser::ask(Asked::Why(desk.about(), Wanted::Size(size, value)));
        }
    });
    let explanation = move || desk.explained(Wanted::Size(size, value()?));
    let refused = move || {
        let stop = value().and_then(|value| {
            desk.read(|snapshot, range| {
                let changed = snapshot.choice.with(&size.to(value), range);
                let stop = first_stop(range, &changed).or_else(|| breaches(&changed).next())?;
                Some((value, words::reason(&stop)))
            })
        });
        let Some((value, sentence)) = stop else { return [const { String::new() }; 2] };
        let told = explanation().map(|told| [told.why, told.way.map(|way| way.label).unwrap_or_default()]);
        let [why, way] = told.unwrap_or_else(|| [sentence, String::new()]);
        [Message::AtSize(value, &why).text(), way]
    };
    let refuse = move |step: Option<i32>| wanted.set(step.map(|step| (step, untrack(move || desk.compact()))));
    let spoken = move |()| {
        let [why, way] = refused();
        // What is not told whole yet is not said.
        if why.is_empty() || explanation().is_none() && !desk.is_alone() {
            String::new()
        } else {
            [why, way].join("\n")
        }
    };
    speech::follow(Callback::new(spoken));
    let own = NodeRef::<leptos::html::Div>::new();
    let go = move |_| {
        if let Some(way) = untrack(explanation).and_then(|told| told.way) {
            desk.follow(&way.outcome);
            // The button is gone then; the focus goes back to the slider.
            if let Some(own) = own.get_untracked() {
                page::focus(&own, "input[type=range]");
            }
        }
    };
    view! {
        <div class="size" node_ref=own>
            <div class="size-head">
                <h3>{label}</h3>
                <Keep question/>
                <Dimension label steps=Callback::new(steps) step=Callback::new(step) take=Callback::new(typed)/>
            </div>
            <Slider label take=Callback::new(slid) refused=Callback::new(refuse)
                track=Callback::new(move |()| desk.read(|snapshot, range| track(snapshot, range, size)).unwrap_or_default())/>
            <p class="why gap">
                {note}" "{move || refused()[0].clone()}" "
                <button type="button" class="remedy" on:click=go>{move || refused()[1].clone()}</button>
            </p>
            <FindingNotices asked/>
        </div>
    }
}
