//! Practice: a browser compiles code while it runs, so what is asked first takes several times as long as the same
//! later on. Once it has answered for a choice, the adviser therefore asks itself for others, one at a time between
//! what the page asks, and keeps what it finds to itself.

use std::vec::IntoIter;

use slotwright_core::choice::Choice;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question as Pin;
use slotwright_core::range::Range;
use slotwright_core::solver::{Options, options};
use slotwright_protocol::adviser::{About, Question, Wanted};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;
use web_sys::DedicatedWorkerGlobalScope;

/// About as many questions until what takes long is compiled: how all goes, and why one answer does not.
const ENOUGH: [usize; 2] = [100, 50];

/// Before each of them, in milliseconds: what the page asks meanwhile waits for one of them at most.
const PAUSE: i32 = 4;

/// What is kept: with it many answers are shut.
const KEPT: [Pin; 5] = [Pin::Width, Pin::Height, Pin::Depth, Pin::Bays, Pin::Shares];

/// Questions like the page's. For a choice with each number of bays: how all goes once an answer is taken, for every
/// second one with something kept; then why an answer does not go alone with that kept.
pub(crate) fn questions(range: &Range, about: &About) -> Vec<Question> {
    let (mut all, mut why) = (Vec::new(), Vec::new());
    let free = |choice: Choice| About { choice, pins: Vec::new(), ..about.clone() };
    let kept = |choice: Choice| About { pins: KEPT.to_vec(), ..free(choice) };
    let bays = range.model(&about.choice.model).into_iter().flat_map(|model| model.bays.least..=model.bays.most);
    for choice in bays.map(|bays| about.choice.with(&Change::BayCount(bays), range)) {
        for (place, answer) in (0..).zip(options(range, &choice).iter().flat_map(Options::all)) {
            all.push(choice.with(&answer.change, range));
            if answer.state.is_some() {
                why.push(Question::Why(kept(choice.clone()), Wanted::Answer(place)));
            }
        }
    }
    let every = |count: usize, enough: usize| count.div_ceil(enough).max(1);
    let [all_every, why_every] = [every(all.len(), ENOUGH[0]), every(why.len(), ENOUGH[1])];
    let all = all.into_iter().step_by(all_every).enumerate();
    let all = all.map(|(at, choice)| Question::States(if at % 2 == 1 { kept(choice) } else { free(choice) }));
    all.chain(why.into_iter().step_by(why_every)).collect()
}

/// Answers all of them.
pub(crate) fn go_through(scope: &DedicatedWorkerGlobalScope, mut left: IntoIter<Question>, answer: fn(&Question)) {
    let Some(question) = left.next() else { return };
    let own = scope.clone();
    let rest = Closure::once_into_js(move || {
        answer(&question);
        go_through(&own, left, answer);
    });
    // Without a clock nothing is practised, and only the first answers take longer.
    let _ = scope.set_timeout_with_callback_and_timeout_and_arguments_0(rest.unchecked_ref(), PAUSE);
}

#[cfg(test)]
mod tests {
    use slotwright_core::solver::states::{State, state};

    use super::*;
    use crate::tests::{about, range};

    #[test]
    fn it_asks_itself_everything_about_each_number_of_bays() {
        let range = range();
        let choice = Choice::first_of(&range).unwrap();
        let (asked, bays) = (questions(&range, &about(&choice)), range.model(&choice.model).unwrap().bays);
        let (all, why): (Vec<_>, Vec<_>) = asked.iter().partition(|question| matches!(question, Question::States(_)));
        let of = |question: &Question| match question {
            Question::States(about) => (about.clone(), None),
            Question::Why(about, Wanted::Answer(place)) => (about.clone(), Some(*place)),
            other => panic!("{other:?}"),
        };
        for count in bays.least..=bays.most {
            for (questions, pins) in [(&all, 0), (&all, KEPT.len()), (&why, KEPT.len())] {
                let is_there = |question: &&Question| {
                    let (about, _) = of(question);
                    about.choice.bays.len() == usize::from(count) && about.pins.len() == pins
                };
                assert!(questions.iter().copied().any(|question| is_there(&question)), "{count} bays, {pins} kept");
            }
        }
        assert!((50..=100).contains(&all.len()) && (25..=50).contains(&why.len()), "{} {}", all.len(), why.len());
        let is_shut = |question: &&&Question| {
            let (about, place) = of(question);
            let options = options(&range, &about.choice).unwrap();
            let change = &options.all().nth(usize::from(place.unwrap())).unwrap().change;
            match state(&range, &about.choice, change, &KEPT).unwrap() {
                State::Open => panic!("{question:?} goes alone"),
                State::Shifts { .. } => false,
                State::Shut { .. } | State::Unfound { .. } => true,
            }
        };
        let shut = why.iter().filter(is_shut).count();
        assert!(shut > 10 && shut < why.len(), "{shut} of {}", why.len());
        let gone = Choice { model: "gone".parse().unwrap(), ..choice };
        assert!(questions(&range, &about(&gone)).is_empty());
    }
}
