//! Practice: a browser compiles code while it runs, so what is asked first takes several times as long as the same
//! later on. Once it has answered for a choice, the adviser therefore asks itself for others, one at a time between
//! what the page asks, and keeps what it finds to itself.

use std::vec::IntoIter;

use slotwright_core::choice::Choice;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::range::Range;
use slotwright_core::solver::{Options, options};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;
use web_sys::DedicatedWorkerGlobalScope;

/// About as many questions until what takes long is compiled: how all goes, and why one answer does not.
const ENOUGH: [usize; 2] = [100, 50];

/// Before each of them, in milliseconds: what the page asks meanwhile waits for one of them at most.
const PAUSE: i32 = 4;

/// What is kept: with it many answers are shut.
const KEPT: [Question; 5] = [Question::Width, Question::Height, Question::Depth, Question::Bays, Question::Shares];

/// Questions like the page's. For a choice with each number of bays: how all goes once an answer is taken, for every
/// second one with something kept; then why an answer does not go alone with that kept.
pub(crate) fn questions(range: &Range, choice: &Choice) -> Vec<Vec<String>> {
    let (mut all, mut why) = (Vec::new(), Vec::new());
    let bays = range.model(&choice.model).into_iter().flat_map(|model| model.bays.least..=model.bays.most);
    for choice in bays.map(|bays| choice.with(&Change::BayCount(bays), range)) {
        let (compact, answers) = (choice.to_compact(), options(range, &choice));
        for (place, answer) in answers.iter().flat_map(Options::all).enumerate() {
            all.push(vec!["all".into(), choice.with(&answer.change, range).to_compact()]);
            if answer.state.is_some() {
                why.push(vec!["why".into(), compact.clone(), place.to_string()]);
            }
        }
    }
    let kept = KEPT.map(|question| question.to_string());
    let [all, why] = [(all, ENOUGH[0]), (why, ENOUGH[1])].map(|(questions, enough)| {
        let step = questions.len().div_ceil(enough).max(1);
        questions.into_iter().step_by(step)
    });
    let all = all.enumerate().map(|(at, mut question)| {
        question.extend(kept.iter().filter(|_| at % 2 == 1).cloned());
        question
    });
    all.chain(why.map(|question| [question, kept.to_vec()].concat())).collect()
}

/// Answers all of them.
pub(crate) fn go_through(scope: &DedicatedWorkerGlobalScope, mut left: IntoIter<Vec<String>>, answer: fn(&[String])) {
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

    #[test]
    fn it_asks_itself_everything_about_each_number_of_bays() {
        let range = Range::parse(include_str!("../../ranges/fenland.toml")).unwrap();
        let choice = Choice::first_of(&range).unwrap();
        let (asked, bays) = (questions(&range, &choice), range.model(&choice.model).unwrap().bays);
        let of = |question: &[String]| Choice::of_compact(&question[1]).unwrap();
        for (count, texts) in (bays.least..=bays.most).flat_map(|count| [(count, 2), (count, 7), (count, 8)]) {
            let is_there =
                |question: &&Vec<String>| of(question).bays.len() == usize::from(count) && question.len() == texts;
            assert!(asked.iter().any(|question| is_there(&question)), "{count} bays, {texts} texts: {asked:?}");
        }
        let (all, why): (Vec<_>, Vec<_>) = asked.iter().partition(|question| question[0] == "all");
        assert!((50..=100).contains(&all.len()) && (25..=50).contains(&why.len()), "{} {}", all.len(), why.len());
        let is_shut = |question: &&&Vec<String>| {
            let (choice, place) = (of(question), question[2].parse::<usize>().unwrap());
            let options = options(&range, &choice).unwrap();
            let change = &options.all().nth(place).unwrap().change;
            match state(&range, &choice, change, &KEPT).unwrap() {
                State::Open => panic!("{question:?} goes alone"),
                State::Shifts { .. } => false,
                State::Shut { .. } | State::Unfound { .. } => true,
            }
        };
        let shut = why.iter().filter(is_shut).count();
        assert!(shut > 10 && shut < why.len(), "{shut} of {}", why.len());
        let gone = Choice { model: "gone".parse().unwrap(), ..choice };
        assert!(questions(&range, &gone).is_empty());
    }
}
