//! The adviser: what else has to change for an answer that does not go alone, found in a worker, so that the
//! page stays quick however long it takes.
//!
//! A message is a list of texts in one, and so is the answer: see [`bundle`]. The page says `range` with the range
//! file's text once, then `all` with a choice's note and the pinned questions; the answer repeats the note and has
//! three texts for each answer of each question, in their order: why it does not go alone, what to press to take it
//! with what it needs, and the note of the choice that comes of it. What is open has none, what is shut has no way.
//!
//! `goal` with a note, a goal's word, its figure and the day is answered with what it comes to, what to press, and the
//! note. `notes` with a note is answered with nine texts for each finding: the question, how much it matters, the
//! sentence, why, and the source; then for up to two ways out what to press, and the note of what comes of it.
//! `width`, `height` or `depth` with a note, a value and the pins is answered with the value and its three texts.

use std::cell::RefCell;

use slotwright_core::bundle;
use slotwright_core::change::Change;
use slotwright_core::choice::Choice;
use slotwright_core::derive::advise;
use slotwright_core::finding::Question;
use slotwright_core::options::Size;
use slotwright_core::options::states::{State, state, states};
use slotwright_core::quantity::Dim;
use slotwright_core::range::Range;
use slotwright_core::remedy::MOST;
use slotwright_core::words;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};

mod goal;

thread_local! {
    static RANGE: RefCell<Option<Range>> = const { RefCell::new(None) };
}

fn main() {
    console_error_panic_hook::set_once();
    let Ok(scope) = js_sys::global().dyn_into::<DedicatedWorkerGlobalScope>() else { return };
    let own = scope.clone();
    let heard = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        let texts = bundle::untie(&event.data().as_string().unwrap_or_default());
        let answer = RANGE.with_borrow_mut(|range| answer(range, &texts));
        // Where nobody listens any more, nothing is lost.
        let _ = own.post_message(&bundle::tie(&answer).into());
    });
    scope.set_onmessage(Some(heard.as_ref().unchecked_ref()));
    // The ear stays for as long as its worker.
    heard.forget();
    let _ = scope.post_message(&"ready".into());
}

/// What is said about a question; nothing if it was not understood.
fn answer(known: &mut Option<Range>, asked: &[String]) -> Vec<String> {
    let said = match (asked, known.as_ref()) {
        ([what, text], _) if what == "range" => {
            *known = Range::parse(text).ok();
            None
        }
        ([what, note, pins @ ..], Some(range)) if what == "all" => all(range, note, pins),
        ([what, note, ..], Some(range)) if what == "notes" => notes(range, note),
        ([what, note, word, figure, today, pins @ ..], Some(range)) if what == "goal" => {
            goal::told(range, note, (word, figure), today, pins).map(Vec::from)
        }
        ([size, note, value, pins @ ..], Some(range)) => one(range, note, (size, value), pins),
        _ => None,
    };
    asked.iter().take(2).cloned().chain(said.unwrap_or_default()).collect()
}

fn questions(pins: &[String]) -> Vec<Question> {
    pins.iter().filter_map(|pin| pin.parse().ok()).collect()
}

fn all(range: &Range, note: &str, pins: &[String]) -> Option<Vec<String>> {
    let choice = Choice::of_note(note)?;
    let states = states(range, &choice, &questions(pins))?;
    Some(states.all().flat_map(|answer| told(range, &choice, &answer.change, &answer.state)).collect())
}

fn notes(range: &Range, note: &str) -> Option<Vec<String>> {
    let choice = Choice::of_note(note)?;
    let told = advise(range, &choice).into_iter().flat_map(|finding| {
        let (card, tone) = (finding.rule.card(), finding.severity.to_string());
        let said = [finding.about.to_string(), tone, words::sentence(&finding), card.why.into(), card.source.into()];
        let way = |way: &Change| [words::change(way, range), choice.with(way, range).to_note()];
        let ways: Vec<String> = finding.remedies.iter().flat_map(way).collect();
        let none = (ways.len()..MOST * 2).map(|_| String::new());
        said.into_iter().chain(ways).chain(none).collect::<Vec<_>>()
    });
    Some(told.collect())
}

fn one(range: &Range, note: &str, (size, value): (&str, &str), pins: &[String]) -> Option<Vec<String>> {
    let choice = Choice::of_note(note)?;
    let size = Size::ALL.into_iter().find(|known| known.question().to_string() == size)?;
    let change = size.to(Dim::tenths(value.parse().ok()?));
    let state = state(range, &choice, &change, &questions(pins))?;
    let [why, way, after] = told(range, &choice, &change, &state);
    Some(vec![value.into(), why, way, after])
}

/// Why, what to press, and what comes of it.
fn told(range: &Range, choice: &Choice, change: &Change, state: &State) -> [String; 3] {
    match state {
        State::Open => Default::default(),
        State::Shut(shut) => [words::shut(shut), String::new(), String::new()],
        State::Shifts { reason, changes } => {
            let after = changes.iter().fold(choice.with(change, range), |choice, change| choice.with(change, range));
            let way = format!("Take it and {}", words::together(changes, range));
            [words::sentence(reason), way, after.to_note()]
        }
    }
}

#[cfg(test)]
mod tests {
    use slotwright_core::rules::judge;

    use super::*;

    const RANGE: &str = include_str!("../../ranges/fenland.toml");

    fn asked(known: &mut Option<Range>, texts: &[&str]) -> Vec<String> {
        answer(known, &texts.iter().map(ToString::to_string).collect::<Vec<_>>())
    }

    #[test]
    fn it_says_what_goes_with_an_answer_and_what_comes_of_it() {
        let mut known = None;
        assert_eq!(asked(&mut known, &["all", "note"]), ["all", "note"], "it knows no range yet");
        asked(&mut known, &["range", RANGE]);
        let range = Range::parse(RANGE).unwrap();
        let note = Choice::first_of(&range).unwrap().to_note();
        let said = asked(&mut known, &["all", &note]);
        assert_eq!((said[0].as_str(), &said[1], said.len() % 3), ("all", &note, 2));
        let ways: Vec<&[String]> = said[2..].chunks(3).filter(|told| !told[1].is_empty()).collect();
        assert!(ways.len() > 3, "{said:?}");
        for told in ways {
            assert!(told[1].starts_with("Take it and "), "{told:?}");
            assert!(judge(&range, &Choice::of_note(&told[2]).unwrap()).holds(), "{told:?}");
        }
    }

    #[test]
    fn it_says_what_is_good_to_know_and_why() {
        let mut known = None;
        asked(&mut known, &["range", RANGE]);
        let note = Choice::first_of(known.as_ref().unwrap()).unwrap().to_note();
        let said = asked(&mut known, &["notes", &note]);
        assert_eq!(said.len() % 9, 2);
        let tether = said[2..].chunks(9).find(|told| told[2].starts_with("Fasten it to the wall")).unwrap();
        assert_eq!((tether[0].as_str(), tether[1].as_str()), ("height", "advises"));
        assert!(tether[3].contains("tips over") && !tether[4].is_empty(), "{tether:?}");
        let walled = known.as_ref().unwrap().clone();
        let walled = Choice::of_note(&note).unwrap().with(&Change::WallMm(Some(Dim::mm(1407))), &walled);
        let said = asked(&mut known, &["notes", &walled.to_note()]);
        let wall = said[2..].chunks(9).find(|told| told[5] == "Make it 1\u{202f}400 mm wide").unwrap();
        assert_eq!(Choice::of_note(&wall[6]).unwrap().width_mm, Dim::mm(1400));
    }

    #[test]
    fn what_is_kept_is_named() {
        let mut known = None;
        asked(&mut known, &["range", RANGE]);
        let range = known.clone().unwrap();
        let note = Choice::first_of(&range).unwrap().to_note();
        // A receiver with its air is wider than a third of the unit: something would have to give way.
        let free = asked(&mut known, &["all", &note]);
        let kept = asked(&mut known, &["all", &note, "width", "bays", "shares"]);
        let bound: Vec<usize> = (0..kept.len()).filter(|at| kept[*at].contains("You keep")).collect();
        assert!(!bound.is_empty(), "{kept:?}");
        for at in bound {
            assert!(kept[at].ends_with("so no other change makes up for it."), "{}", kept[at]);
            assert_eq!((kept[at + 1].as_str(), kept[at + 2].as_str()), ("", ""));
            assert!(free[at + 1].starts_with("Take it and "), "{}", free[at]);
        }
        let many = Choice::first_of(&range).unwrap().with(&Change::BayCount(6), &range).to_note();
        let size = asked(&mut known, &["width", &many, "9000"]);
        assert_eq!((size[0].as_str(), size[2].as_str()), ("width", "9000"));
        assert!(size[4].starts_with("Take it and "), "{size:?}");
    }
}
