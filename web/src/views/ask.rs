//! From the core's answers and findings to what the controls show.

use leptos::prelude::*;
use slotwright_core::finding::{Finding, Question, Severity};
use slotwright_core::options::{Answer, Options, State};
use slotwright_core::range::Range;
use slotwright_core::words;

use crate::parts::choices::{Choices, Shown};
use crate::parts::tells::{Line, Tells, Tone};
use crate::state::{Desk, Known};

/// An answer as it is shown, with its name.
pub fn shown(answer: &Answer, label: String) -> Shown {
    let shut = match &answer.state {
        State::Open => None,
        State::Shut(finding) => Some(words::sentence(finding)),
    };
    Shown { label, taken: answer.taken, shut, ..Shown::default() }
}

/// A row of answers out of the options, each shown by `show`.
#[component]
pub fn Asked(
    /// What is asked, for the bay that is looked at (from 1).
    label: fn(usize) -> String,
    /// Picks the answers, for the bay that is looked at (from 0).
    pick: fn(&Options, usize) -> &[Answer],
    /// Shows one.
    show: fn(&Range, &Answer) -> Shown,
    /// The look of the row.
    #[prop(default = "row")]
    look: &'static str,
) -> impl IntoView {
    let desk = Desk::here();
    let answers = move |()| {
        let lit = desk.lit();
        desk.read(|known, range| {
            let picked = known.options.as_ref().map(|options| pick(options, lit)).unwrap_or_default();
            picked.iter().map(|answer| show(range, answer)).collect()
        })
    };
    let take = move |at: usize| {
        let lit = untrack(move || desk.lit());
        let change = desk.peek(|known, _| Some(pick(known.options.as_ref()?, lit).get(at)?.change.clone()));
        if let Some(change) = change {
            desk.apply(&change);
        }
    };
    view! {
        <Choices label=Callback::new(move |()| label(desk.lit() + 1)) answers=Callback::new(answers)
            take=Callback::new(take) look/>
    }
}

/// The findings about some questions.
fn about(known: &Known, asked: fn(Question) -> bool) -> impl Iterator<Item = &Finding> {
    known.findings.iter().filter(move |finding| asked(finding.about))
}

/// Whether any of them stops the order.
pub fn stopped(known: &Known, asked: fn(Question) -> bool) -> bool {
    about(known, asked).any(|finding| finding.severity == Severity::Stops)
}

/// The findings about some questions, as tell lines.
#[component]
pub fn Found(
    /// Which questions.
    asked: fn(Question) -> bool,
) -> impl IntoView {
    let desk = Desk::here();
    let lines = move |()| desk.read(|known, range| about(known, asked).map(|found| line(range, found)).collect());
    let take = move |(at, way): (usize, usize)| {
        let change = desk.peek(|known, _| about(known, asked).nth(at)?.remedies.get(way).cloned());
        if let Some(change) = change {
            desk.apply(&change);
        }
    };
    view! { <Tells lines=Callback::new(lines) take=Callback::new(take)/> }
}

fn line(range: &Range, finding: &Finding) -> Line {
    let card = finding.rule.card();
    Line {
        tone: match finding.severity {
            Severity::Stops => Tone::Stop,
            Severity::Warns => Tone::Warn,
            Severity::Advises => Tone::Hint,
        },
        sentence: words::sentence(finding),
        ways: finding.remedies.iter().map(|remedy| words::change(remedy, range)).collect(),
        why: card.why,
        source: card.source,
    }
}

/// A numbered question's heading.
#[component]
pub fn Heading(
    /// Its number.
    number: u8,
    /// Its title.
    title: &'static str,
) -> impl IntoView {
    view! { <h2><span class="number" aria-hidden="true">{number.to_string()}</span>{title}</h2> }
}
