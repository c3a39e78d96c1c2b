//! From the core's answers and findings to what the controls show.

use leptos::prelude::*;
use slotwright_core::choice::question::Question;
use slotwright_core::range::Range;
use slotwright_core::rules::finding::{Finding, Severity};
use slotwright_core::solver::{Answer, Options};
use slotwright_core::words;
use slotwright_core::words::page::{Label, Message};
use slotwright_protocol::adviser::{Advice, Cause, Explained, Going, Question as Asked, Wanted};

use crate::browser::adviser;
use crate::parts::choices::{AnswerStatus, AnswerView, Availability, Choices, NONE};
use crate::parts::inert;
use crate::parts::notices::{Notice, Notices, Tone};
use crate::state::{Desk, Snapshot};

/// What stops an answer alone, if anything.
pub type Stop = Option<Finding>;

/// An answer as it is shown, with its name.
pub fn shown(answer: &Answer<Stop>, label: String) -> AnswerView {
    let waits =
        |stop| AnswerStatus { availability: Availability::Pending, why: words::reason(stop), way: String::new() };
    let status = answer.state.as_ref().map(waits).unwrap_or_default();
    AnswerView { label, taken: answer.taken, status, ..AnswerView::default() }
}

/// Picks a question's answers, for the bay that is looked at (from 0).
type Pick = fn(&Options<Stop>, usize) -> &[Answer<Stop>];

/// What the adviser says of a question's answers.
struct AnswerAdvice {
    /// How each of them goes.
    told: Vec<Going>,
    /// The place of the first of them among all.
    first: usize,
    /// Whether that is about the present choice: of an earlier one only the looks stay until there is newer advice.
    fresh: bool,
}

impl AnswerAdvice {
    fn of(desk: Desk, pick: Pick, lit: usize) -> Self {
        let own = desk.read(|snapshot, _| {
            let options = snapshot.options.as_ref()?;
            let own = pick(options, lit);
            let first = options.all().position(|answer| own.first().is_some_and(|own| own.change == answer.change))?;
            Some((first, own.len()))
        });
        let (first, count) = own.unwrap_or_default();
        let (told, fresh) = desk.going(first..first + count);
        Self { told, first, fresh }
    }

    /// Whether an answer of the present choice is known not to go alone.
    fn is_bound(&self, at: usize) -> bool {
        self.fresh && self.told.get(at).is_some_and(|going| *going != Going::Open)
    }

    /// The answer as the adviser knows it.
    fn wanted(&self, at: usize) -> Wanted {
        Wanted::Answer(u16::try_from(self.first.saturating_add(at)).unwrap_or(u16::MAX))
    }

    /// What is said of an answer, if it was the last one asked for.
    fn explained(&self, desk: Desk, at: usize) -> Option<Explained> {
        desk.explained(self.wanted(at))
    }

    /// How an answer goes, better than the page knows by itself. Of one that goes with other changes the page's own
    /// reason is the reason; of a shut one it may be another.
    fn status(&self, at: usize, now: AnswerStatus) -> AnswerStatus {
        let Some(availability) = self.told.get(at).map(|going| availability(*going)) else { return now };
        match (now.availability, availability) {
            (_, Availability::Shifts) if self.fresh => AnswerStatus { availability, ..now },
            _ if self.fresh => AnswerStatus { availability, ..AnswerStatus::default() },
            // It goes as it went, until there is newer advice.
            (Availability::Pending, Availability::Shifts | Availability::Shut) => AnswerStatus { availability, ..now },
            _ => now,
        }
    }
}

/// How an answer is shown that goes so.
const fn availability(going: Going) -> Availability {
    match going {
        Going::Open => Availability::Open,
        Going::Shifts => Availability::Shifts,
        Going::Shut => Availability::Shut,
        // Nobody knows a way, and nobody knows that there is none.
        Going::Unfound => Availability::Pending,
    }
}

/// Keeps the answer to a question while others are asked for.
#[component]
pub fn Keep(
    /// The question, for the bay that is looked at (from 1).
    question: fn(u8) -> Question,
) -> impl IntoView {
    let desk = Desk::here();
    let own = move || question(u8::try_from(desk.lit() + 1).unwrap_or(u8::MAX));
    let name = move || Message::Keep(own()).text();
    view! {
        <button type="button" class="keep" aria-label=name title=name aria-pressed=move || desk.keeps(own()).to_string()
            on:click=move |_| desk.keep(untrack(own))>{Label::Keep.text()}</button>
    }
}

/// A row of answers out of the options, each shown by `show`.
#[component]
pub fn AnswerRow(
    /// What is asked, for the bay that is looked at (from 1).
    label: fn(usize) -> String,
    /// Picks the answers, for the bay that is looked at (from 0).
    pick: Pick,
    /// Shows one.
    show: fn(&Range, &Answer<Stop>) -> AnswerView,
    /// The look of the row.
    #[prop(default = "row")]
    look: &'static str,
) -> impl IntoView {
    let desk = Desk::here();
    let asked = RwSignal::new(NONE);
    // Why an answer does not go alone is found out when somebody asks, once.
    Effect::new(move |before: Option<Option<Asked>>| {
        let at = asked.get();
        if at == NONE {
            return None;
        }
        let advice = AnswerAdvice::of(desk, pick, desk.lit());
        let question = advice.is_bound(at).then(|| Asked::Why(desk.about(), advice.wanted(at)))?;
        if advice.explained(desk, at).is_none() && before.flatten().as_ref() != Some(&question) {
            adviser::ask(question.clone());
        }
        Some(question)
    });
    let answers = move |()| {
        let lit = desk.lit();
        let mut answers: Vec<AnswerView> = desk.read(|snapshot, range| {
            let picked = snapshot.options.as_ref().map(|options| pick(options, lit)).unwrap_or_default();
            picked.iter().map(|answer| show(range, answer)).collect()
        });
        // What the adviser says comes a little later, and says more.
        let advice = AnswerAdvice::of(desk, pick, lit);
        for (at, answer) in answers.iter_mut().enumerate() {
            answer.status = advice.status(at, core::mem::take(&mut answer.status));
        }
        let asked = asked.get();
        if let Some((answer, told)) = answers.get_mut(asked).zip(advice.explained(desk, asked)) {
            let way = told.way.map(|way| way.label).unwrap_or_default();
            answer.status = AnswerStatus { availability: availability(told.going), why: told.why, way };
        }
        // Without an adviser nothing goes with another change.
        if desk.is_alone() {
            for AnswerView { status, .. } in
                answers.iter_mut().filter(|answer| answer.status.availability == Availability::Pending)
            {
                status.availability = Availability::Shut;
            }
        }
        answers
    };
    let take = move |at: usize| {
        let lit = untrack(move || desk.lit());
        if let Some(way) = untrack(move || AnswerAdvice::of(desk, pick, lit).explained(desk, at)?.way) {
            return desk.follow(&way.outcome);
        }
        // What does not go alone is not taken alone, even while what goes with it is not known.
        let change = desk.peek(|snapshot, _| {
            let answer = pick(snapshot.options.as_ref()?, lit).get(at)?;
            answer.state.is_none().then(|| answer.change.clone())
        });
        if let Some(change) = change {
            desk.apply(&change);
        }
    };
    view! {
        <Choices label=Callback::new(move |()| label(desk.lit() + 1)) answers=Callback::new(answers)
            take=Callback::new(take) asked look/>
    }
}

/// What stops the order about some questions.
fn about(snapshot: &Snapshot, asked: fn(Question) -> bool) -> impl Iterator<Item = &Finding> {
    snapshot.findings.iter().filter(move |finding| asked(finding.about))
}

/// Whether any of them stops the order.
pub fn stopped(snapshot: &Snapshot, asked: fn(Question) -> bool) -> bool {
    about(snapshot, asked).next().is_some()
}

/// Whether it is about what was given for the visit: that stands where it was given.
fn is_given(advice: &Advice) -> bool {
    matches!(advice.cause, Cause::Budget | Cause::Day)
}

/// What has to be minded of the whole unit, as notices without ways out.
#[component]
pub fn Minded() -> impl IntoView {
    let desk = Desk::here();
    let notices = move |()| {
        desk.advice(|all| {
            let warns = all.iter().filter(|advice| advice.severity == Severity::Warns);
            warns.map(|advice| notice(Advice { why: String::new(), ways: Vec::new(), ..advice.clone() })).collect()
        })
    };
    view! { <Notices notices=Callback::new(notices) take=Callback::new(|_| {})/> }
}

/// The findings about some questions, as notices.
#[component]
pub fn FindingNotices(
    /// Which questions.
    asked: fn(Question) -> bool,
    /// Whether, instead, what was given for the visit.
    #[prop(optional)]
    given: bool,
) -> impl IntoView {
    let desk = Desk::here();
    // What stops is known at once; reasons, ways out and all else come with the advice.
    let told = move || {
        desk.advice(|all| {
            let mut told: Vec<Advice> = desk.read(|snapshot, _| {
                let found = snapshot.findings.iter().enumerate().filter(|(_, finding)| asked(finding.about));
                let stop = |at| all.iter().filter(|advice| advice.severity == Severity::Stops).nth(at);
                found.map(|(at, finding)| advice(finding, stop(at))).collect()
            });
            let is_own = |advice: &&Advice| if is_given(advice) { given } else { asked(advice.about) };
            let hints = all.iter().filter(|advice| advice.severity != Severity::Stops).filter(is_own);
            told.extend(hints.cloned());
            told
        })
    };
    let take = move |(at, way): (usize, usize)| {
        if let Some(way) = untrack(told).get(at).and_then(|advice| advice.ways.get(way)) {
            desk.take_way_out(&way.outcome);
        }
    };
    let notices = move |()| told().into_iter().map(notice).collect();
    view! { <Notices notices=Callback::new(notices) take=Callback::new(take)/> }
}

/// What stops the order, with what the adviser said of it; a size that is dragged has other figures by then.
fn advice(finding: &Finding, given: Option<&Advice>) -> Advice {
    let own = Advice {
        cause: Cause::Rule(finding.rule),
        about: finding.about,
        severity: Severity::Stops,
        sentence: words::reason(finding),
        why: String::new(),
        source: String::new(),
        ways: Vec::new(),
    };
    match given.filter(|given| (given.cause, given.about) == (own.cause, own.about)) {
        Some(given) => Advice { sentence: own.sentence, ..given.clone() },
        None => own,
    }
}

fn notice(Advice { severity, sentence, why, source, ways, .. }: Advice) -> Notice {
    let tone = match severity {
        Severity::Stops => Tone::Stop,
        Severity::Warns => Tone::Warn,
        Severity::Advises => Tone::Hint,
    };
    let grounds = Some([why, source]).filter(|[why, _]| !why.is_empty());
    Notice { tone, sentence, remedies: ways.into_iter().map(|way| way.label).collect(), grounds }
}

/// The way from the end of some questions to the order, for who goes by keyboard.
#[component]
pub fn ToOrder() -> impl IntoView {
    inert("<a class=\"skip here\" href=\"#order\">", Label::SkipToOrder)
}

/// A numbered question's heading.
#[component]
pub fn Heading(
    /// Its number.
    number: u8,
    /// Its title.
    title: Label,
) -> impl IntoView {
    // Where a notice of its question goes, the focus comes here.
    view! { <h2 tabindex="-1"><span class="number" aria-hidden="true">{number.to_string()}</span>{title.text()}</h2> }
}
