//! How big: model, width, height, depth, number of bays.

use leptos::prelude::*;
use slotwright_core::change::Change;
use slotwright_core::finding::{Question, Severity};
use slotwright_core::options::{Run, Size, State};
use slotwright_core::quantity::Dim;
use slotwright_core::range::DimRange;
use slotwright_core::words;

use super::ask::{Asked, Found, Heading, shown};
use crate::parts::choices::{Choices, Shown};
use crate::parts::dimension::Dimension;
use crate::parts::slider::{Slider, Stretch};
use crate::state::Desk;

/// Model, sizes, bays.
#[component]
pub fn Sizes() -> impl IntoView {
    let desk = Desk::here();
    let models = Memo::new(move |_| {
        desk.choice.with(|choice| desk.with_range(|range| {
            let shown = range.models.iter().map(|model| Shown {
                label: format!("{}, {}", model.name, model.about),
                taken: model.key == choice.model,
                ..Shown::default()
            });
            shown.collect::<Vec<_>>()
        }))
    });
    let take = Callback::new(move |at: usize| {
        let key = desk.with_range(|range| range.models.get(at).map(|model| model.key.clone()));
        if let Some(key) = key {
            desk.apply(&Change::Model(key));
        }
    });
    view! {
        <section id="question-size">
            <Heading number=2 title="How big"/>
            <Choices label="Model".to_string() answers=models take/>
            <Found about=|question| question == Question::Model/>
            <SizeQuestion label="Width" size=Size::Width about=|question| question == Question::Width/>
            <SizeQuestion label="Height" size=Size::Height about=|question| question == Question::Height/>
            <SizeQuestion label="Depth" size=Size::Depth about=|question| question == Question::Depth/>
            <h3>"Number of bays"</h3>
            <Asked label="Number of bays".to_string() look="row short" pick=|options, _| options.bay_counts.clone()
                show=|_, answer| shown(answer, match answer.change {
                    Change::BayCount(count) => count.to_string(),
                    _ => String::new(),
                })/>
            <Found about=|question| question == Question::Bays/>
        </section>
    }
}

/// Steps from the least size of the model.
fn step_of(limits: DimRange, value: Dim) -> i32 {
    (value.in_tenths() - limits.least.in_tenths()) / limits.step.in_tenths().max(1)
}

fn value_of(limits: DimRange, step: i32) -> Dim {
    Dim::tenths(limits.least.in_tenths().saturating_add(step.saturating_mul(limits.step.in_tenths())))
}

/// The nearest sizes below and above that can be taken.
fn neighbours(limits: DimRange, runs: &[Run], now: Dim) -> (Option<Dim>, Option<Dim>) {
    let open = |value: &Dim| runs.iter().any(|run| run.state.is_open() && run.from <= *value && *value <= run.to);
    let less = limits.values().take_while(|value| *value < now).filter(open).last();
    let more = limits.values().skip_while(|value| *value <= now).find(open);
    (less, more)
}

#[component]
fn SizeQuestion(label: &'static str, size: Size, about: fn(Question) -> bool) -> impl IntoView {
    let desk = Desk::here();
    let runs = desk.runs(size);
    let limits = Memo::new(move |_| {
        desk.choice.with(|choice| desk.with_range(|range| range.model(&choice.model).map(|model| size.limits(model))))
    });
    let value = Memo::new(move |_| desk.choice.with(|choice| size.of(choice)));
    let step = move || limits.get().map_or(0, |limits| step_of(limits, value.get()));
    let last = move || limits.get().map_or(1, |limits| step_of(limits, limits.most));
    let stretches = move || {
        let Some(limits) = limits.get() else { return Vec::new() };
        runs.with(|runs| runs.iter().map(|run| Stretch {
            from: step_of(limits, run.from),
            to: step_of(limits, run.to),
            shut: match &run.state {
                State::Open => None,
                State::Shut(finding) => Some(format!(
                    "{} to {}: {}", words::size(run.from), words::size(run.to), words::sentence(finding)
                )),
            },
        }).collect())
    };
    let near = move || limits.get().map_or((None, None), |limits| runs.with(|runs| neighbours(limits, runs, value.get())));
    let findings = desk.findings(about);
    let invalid = move || findings.with(|findings| findings.iter().any(|found| found.severity == Severity::Stops));
    let ends = move || limits.get().map(|limits| (words::size(limits.least), words::size(limits.most)));
    view! {
        <div class="size">
            <div class="size-head">
                <h3>{label}</h3>
                <Dimension label value neighbours=Signal::derive(near) invalid=Signal::derive(invalid)
                    take=Callback::new(move |taken| desk.apply(&size.to(taken)))/>
            </div>
            <Slider label step=Signal::derive(step) last=Signal::derive(last)
                text=Signal::derive(move || format!("{} mm", words::size(value.get())))
                stretches=Signal::derive(stretches)
                take=Callback::new(move |step| if let Some(limits) = limits.get_untracked() {
                    desk.apply(&size.to(value_of(limits, step)));
                })/>
            <p class="ends" aria-hidden="true">
                <span>{move || ends().map(|ends| ends.0)}</span>
                <span>{move || ends().map(|ends| ends.1)}</span>
            </p>
            <Found about/>
        </div>
    }
}
