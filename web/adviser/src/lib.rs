//! The adviser: what else has to change for an answer that does not go alone, found in a worker, so that the
//! page stays quick however long it takes.
//!
//! What it is asked and what it says is in [`slotwright_protocol::adviser`]. Nobody reads why each answer does not go
//! alone, and why something is shut takes longer to find out than that it is: so that is asked of one answer at a time.

use std::cell::RefCell;

use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::link::Mark;
use slotwright_core::choice::question::Question as Pin;
use slotwright_core::order::derive::advise;
use slotwright_core::range::Range;
use slotwright_core::rules::finding::Severity;
use slotwright_core::solver::kept::{Given, Kept, Visit};
use slotwright_core::solver::options;
use slotwright_core::solver::states::{State, state, states};
use slotwright_core::solver::why::why_shut;
use slotwright_core::words;
use slotwright_core::words::adviser::Message;
use slotwright_protocol::adviser::{
    About, Advice, Answer, Cause, Explained, Going, LetGo, Outcome, Question, Wanted, Way,
};
use slotwright_protocol::{READY, tie, untie};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};

mod did;
mod goal;
mod practice;

thread_local! {
    static RANGE: RefCell<Option<Range>> = const { RefCell::new(None) };
}

/// Starts in the worker.
pub fn start() {
    let Ok(scope) = js_sys::global().dyn_into::<DedicatedWorkerGlobalScope>() else { return };
    let own = scope.clone();
    let mut practised = false;
    let on_message = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        // Page and adviser are one program: what it cannot read was not for it.
        let Some((number, question)) = untie(&event.data().as_string().unwrap_or_default()) else { return };
        let answer = RANGE.with_borrow_mut(|range| answer(range, &question));
        // Where nobody listens any more, nothing is lost.
        let _ = own.post_message(&tie(number, &answer).into());
        if let Question::States(about) = question
            && !practised
        {
            practised = true;
            practise(&own, &about);
        }
    });
    scope.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
    // The handler stays for as long as its worker.
    on_message.forget();
    let _ = scope.post_message(&READY.into());
}

/// Asks itself what the page may ask after that.
fn practise(scope: &DedicatedWorkerGlobalScope, about: &About) {
    let questions = RANGE.with_borrow(|range| range.as_ref().map(|range| practice::questions(range, about)));
    practice::go_through(scope, questions.unwrap_or_default().into_iter(), |question| {
        RANGE.with_borrow_mut(|range| answer(range, question));
    });
}

/// What is said about a question.
fn answer(known: &mut Option<Range>, question: &Question) -> Answer {
    let said = match (question, known.as_ref()) {
        (Question::Range(text), _) => {
            *known = Range::parse_judged(text);
            known.as_ref().map(|range| Answer::Range(Mark::of(range)))
        }
        (_, None) => None,
        (Question::States(about), Some(range)) => going(range, about).map(Answer::States),
        (Question::Findings(about), Some(range)) => Some(Answer::Findings(findings(range, about))),
        (Question::Why(about, wanted), Some(range)) => why(range, about, *wanted).map(Answer::Why),
        (Question::Goal(about, goal), Some(range)) => goal::answer(range, about, *goal),
        (Question::Did { before, after, today, step }, Some(range)) => {
            Some(Answer::Did(did::answer(range, [before, after], *today, *step)))
        }
    };
    said.unwrap_or(Answer::Nothing)
}

/// What was given for the visit, if anything was.
fn visit(About { bounds, today, .. }: &About) -> Option<Visit> {
    let (budget, by) = (bounds.budget, bounds.by);
    (budget.is_some() || by.is_some()).then(|| Visit { budget, by, today: *today, backlog: Backlog::default() })
}

fn going(range: &Range, about: &About) -> Option<Vec<Going>> {
    let visit = visit(about);
    let states = states(range, &about.choice, Kept { pins: &about.pins, visit: visit.as_ref() })?;
    Some(states.all().map(|answer| going_of(&answer.state)).collect())
}

fn findings(range: &Range, about: &About) -> Vec<Advice> {
    let About { choice, pins, .. } = about;
    let visit = visit(about);
    let mut all: Vec<Advice> = advise(range, choice, visit.as_ref())
        .into_iter()
        .map(|finding| {
            let card = words::card(finding.rule);
            let way = |remedy: &Change| {
                let kept = remedy.question().filter(|question| pins.contains(question));
                let label =
                    kept.map_or_else(|| words::change(remedy, range), |pin| words::letting_go(pin, remedy, range));
                let let_go = LetGo { pins: kept.into_iter().collect(), ..LetGo::default() };
                Way { label, outcome: Outcome { choice: choice.with(remedy, range), let_go } }
            };
            Advice {
                cause: Cause::Rule(finding.rule),
                about: finding.about,
                severity: finding.severity,
                sentence: words::sentence(&finding),
                why: card.why.into(),
                source: card.source.into(),
                ways: finding.remedies.iter().map(way).collect(),
            }
        })
        .collect();
    // What was given for the visit and does not hold now is said like what does not suit the place.
    all.extend(visit.iter().flat_map(|visit| visit.beyond(range, choice)).map(|beyond| {
        let (card, given) = (words::given_card(), beyond.given());
        let let_go = let_go(&[], &[given]);
        Advice {
            cause: if given == Given::Day { Cause::Day } else { Cause::Budget },
            about: Pin::Place,
            severity: Severity::Warns,
            sentence: words::beyond(beyond, &range.currency),
            why: card.why.into(),
            source: card.source.into(),
            ways: vec![Way { label: words::let_go(given), outcome: Outcome { choice: choice.clone(), let_go } }],
        }
    }));
    all
}

/// What is let go; wall and screen are the choice's own, which says it.
fn let_go(pins: &[Pin], given: &[Given]) -> LetGo {
    LetGo { pins: pins.to_vec(), budget: given.contains(&Given::Budget), by: given.contains(&Given::Day) }
}

const fn going_of(state: &State) -> Going {
    match state {
        State::Open => Going::Open,
        State::Shifts { .. } => Going::Shifts,
        State::Shut { .. } => Going::Shut,
        State::Unfound { .. } => Going::Unfound,
    }
}

/// How an answer goes, and what is told of that.
fn why(range: &Range, about: &About, wanted: Wanted) -> Option<Explained> {
    let choice = &about.choice;
    let change = match wanted {
        Wanted::Answer(place) => options(range, choice)?.all().nth(usize::from(place))?.change.clone(),
        Wanted::Size(size, value) => size.to(value),
    };
    let visit = visit(about);
    let kept = Kept { pins: &about.pins, visit: visit.as_ref() };
    let state = state(range, choice, &change, kept)?;
    let after =
        |more: &[Change]| more.iter().fold(choice.with(&change, range), |choice, change| choice.with(change, range));
    let (why, way) = match &state {
        State::Open => (String::new(), None),
        State::Shifts { reason, changes } => {
            let outcome = Outcome { choice: after(changes), let_go: LetGo::default() };
            let label = Message::TakeWith(changes, range).text();
            (words::sentence(reason), Some(Way { label, outcome }))
        }
        State::Shut { reason } => match why_shut(range, choice, &change, kept) {
            None => (words::given_up(reason), None),
            Some(why) => {
                let way = why.release.as_ref().map(|release| {
                    let let_go = let_go(&release.pins, &release.given);
                    Way {
                        label: words::release(release, range),
                        outcome: Outcome { choice: after(&release.all()), let_go },
                    }
                });
                (words::shut(&why, &range.currency), way)
            }
        },
        State::Unfound { reason } => (words::given_up(reason), None),
    };
    Some(Explained { going: going_of(&state), why, way })
}

#[cfg(test)]
mod tests;
