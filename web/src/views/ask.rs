//! From the core's answers and findings to what the controls show.

use leptos::prelude::*;
use slotwright_core::change::Change;
use slotwright_core::finding::{Finding, Question, Severity};
use slotwright_core::options::{Answer, Options, State};
use slotwright_core::range::Range;
use slotwright_core::words;

use crate::parts::choices::{Choices, Shown};
use crate::parts::tells::{Line, Tells, Tone};
use crate::state::Desk;

/// An answer as it is shown, with its name.
pub fn shown(answer: &Answer, label: String) -> Shown {
    let shut = match &answer.state {
        State::Open => None,
        State::Shut(finding) => Some(words::sentence(finding)),
    };
    Shown { label, taken: answer.taken, shut, ..Shown::default() }
}

/// A row of answers out of the options, each named by `name`.
#[component]
pub fn Asked(
    /// What is asked.
    #[prop(into)]
    label: Signal<String>,
    /// Picks the answers.
    pick: fn(&Options, usize) -> Vec<Answer>,
    /// Shows one.
    show: fn(&Range, &Answer) -> Shown,
    /// The look of the row.
    #[prop(default = "row")]
    look: &'static str,
) -> impl IntoView {
    let desk = Desk::here();
    let picked = Memo::new(move |_| {
        let lit = desk.lit.get();
        desk.options.with(|options| options.as_ref().map(|options| pick(options, lit)).unwrap_or_default())
    });
    let answers = Memo::new(move |_| {
        picked.with(|picked| desk.with_range(|range| picked.iter().map(|answer| show(range, answer)).collect::<Vec<_>>()))
    });
    let take = Callback::new(move |at: usize| {
        let change = picked.with_untracked(|picked| picked.get(at).map(|answer| answer.change.clone()));
        if let Some(change) = change {
            desk.apply(&change);
        }
    });
    view! { <Choices label answers take look/> }
}

/// The findings about some questions.
#[component]
pub fn Found(
    /// Which questions.
    about: fn(Question) -> bool,
) -> impl IntoView {
    let desk = Desk::here();
    let findings = desk.findings(about);
    let lines = Memo::new(move |_| {
        findings.with(|findings| desk.with_range(|range| findings.iter().map(|found| line(range, found)).collect::<Vec<_>>()))
    });
    let take = Callback::new(move |change: Change| desk.apply(&change));
    view! { <Tells lines take/> }
}

fn line(range: &Range, finding: &Finding) -> Line<Change> {
    let card = finding.rule.card();
    let ways = finding.remedies.iter().map(|remedy| (words::change(remedy, range), remedy.clone()));
    Line {
        tone: match finding.severity {
            Severity::Stops => Tone::Stop,
            Severity::Warns => Tone::Warn,
            Severity::Advises => Tone::Hint,
        },
        sentence: words::sentence(finding),
        ways: ways.collect(),
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
    view! { <h2><span class="number" aria-hidden="true">{number}</span>{title}</h2> }
}
