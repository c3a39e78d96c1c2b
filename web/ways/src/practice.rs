//! Practice: a browser compiles code while it runs, so what is asked first takes several times as long as the same
//! later on. Once it has answered for a choice, the adviser therefore asks itself for others, one at a time between
//! what the page asks, and keeps what it finds to itself.

use slotwright_core::change::Change;
use slotwright_core::choice::Choice;
use slotwright_core::options::{Options, Size, options};
use slotwright_core::range::Range;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;
use web_sys::DedicatedWorkerGlobalScope;

/// About as many questions until what takes long is compiled.
const ENOUGH: usize = 150;

/// Before each of them, in milliseconds: what the page asks meanwhile comes first.
const PAUSE: i32 = 4;

/// Questions like the page's: choices one answer away from one with each number of bays, evenly out of all of them. Of
/// the first how all goes, of the next the same with its sizes kept, of the third why one answer does not go then.
pub(crate) fn questions(range: &Range, choice: &Choice) -> Vec<Vec<String>> {
    let bays = range.model(&choice.model).into_iter().flat_map(|model| model.bays.least..=model.bays.most);
    let mut all = Vec::new();
    for choice in bays.map(|bays| choice.with(&Change::BayCount(bays), range)) {
        let answers = options(range, &choice);
        let near = answers.iter().flat_map(Options::all).map(|answer| choice.with(&answer.change, range));
        all.extend(near);
    }
    let few = all.iter().step_by(all.len().div_ceil(ENOUGH).max(1));
    let kept = Size::ALL.map(|size| size.question().to_string());
    let asked = few.enumerate().map(|(at, choice)| {
        let note = choice.to_note();
        match at % 3 {
            0 => vec!["all".into(), note],
            1 => ["all".into(), note].into_iter().chain(kept.clone()).collect(),
            _ => ["why".into(), note, at.to_string()].into_iter().chain(kept.clone()).collect(),
        }
    });
    asked.collect()
}

/// Answers all of them.
pub(crate) fn go_through(scope: &DedicatedWorkerGlobalScope, mut left: Vec<Vec<String>>, answer: fn(&[String])) {
    let Some(question) = left.pop() else { return };
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
    use super::*;

    #[test]
    fn it_asks_itself_everything_about_each_number_of_bays() {
        let range = Range::parse(include_str!("../../ranges/fenland.toml")).unwrap();
        let choice = Choice::first_of(&range).unwrap();
        let (asked, bays) = (questions(&range, &choice), range.model(&choice.model).unwrap().bays);
        assert!((ENOUGH / 2..=ENOUGH).contains(&asked.len()), "{}", asked.len());
        let bays_of = |question: &Vec<String>| Choice::of_note(&question[1]).unwrap().bays.len();
        for (count, texts) in (bays.least..=bays.most).flat_map(|count| [(count, 2), (count, 5), (count, 6)]) {
            let is_there = |question: &Vec<String>| bays_of(question) == usize::from(count) && question.len() == texts;
            assert!(asked.iter().any(is_there), "{count} bays, {texts} texts: {asked:?}");
        }
        let gone = Choice { model: "gone".parse().unwrap(), ..choice };
        assert!(questions(&range, &gone).is_empty());
    }
}
