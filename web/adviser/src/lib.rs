//! The adviser: what else has to change for an answer that does not go alone, found in a worker, so that the
//! page stays quick however long it takes.
//!
//! A message is a list of texts in one, and so is the answer: see [`bundle`]. The page says `range` with the range
//! file's text once and hears what links call the range, then `all` with a choice's compact text and the pinned
//! questions; the answer repeats that text and has a word for each answer of each question, in their order, for how it
//! goes: nothing, `shifts`, `shut`, or `unfound`. What was given for the visit stands among the pins: see `visit`.
//!
//! `why` with a compact text, the place of an answer among them and the pins is answered with the place and five texts:
//! how it goes, why it does not go alone, what to press to take it, the compact text of the choice that comes of it,
//! and the pins that are let go for it. Nobody reads that of all answers, and why something is shut takes longer to
//! find out than that it is. `width`, `height` or `depth` with a compact text, a value and the pins is answered alike,
//! with the value.
//!
//! `goal` with a compact text, a goal's word, its figure and the day is answered with what it comes to, what to press,
//! and the compact text. `findings` with a compact text and the pins is answered with eleven texts for each finding: the
//! question, how much it matters, the sentence, why, and the source; then for up to two ways out what to press, the
//! compact text of what comes of it, and the pin that is let go for it.
//!
//! `did` with a compact text, that of the choice before, the day and a word if another model is as it was left is answered
//! with what was answered anew, and what that did.

use std::cell::RefCell;

use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::link::Mark;
use slotwright_core::choice::question::Question;
use slotwright_core::input::bundle;
use slotwright_core::input::wire;
use slotwright_core::order::derive::advise;
use slotwright_core::range::Range;
use slotwright_core::rules::finding::Finding;
use slotwright_core::solver::kept::{Given, Kept, Visit};
use slotwright_core::solver::remedy::MOST;
use slotwright_core::solver::states::{State, state, states};
use slotwright_core::solver::why::why_shut;
use slotwright_core::solver::{Size, options};
use slotwright_core::units::quantity::Dim;
use slotwright_core::words;
use slotwright_core::words::adviser::Message;
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
        let texts = bundle::untie(&event.data().as_string().unwrap_or_default());
        let answer = RANGE.with_borrow_mut(|range| answer(range, &texts));
        // Where nobody listens any more, nothing is lost.
        let _ = own.post_message(&bundle::tie(&answer).into());
        if !practised && texts.first().is_some_and(|what| what == "all") {
            practised = true;
            practise(&own, texts.get(1));
        }
    });
    scope.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
    // The handler stays for as long as its worker.
    on_message.forget();
    let _ = scope.post_message(&"ready".into());
}

/// Asks itself what the page may ask after a choice.
fn practise(scope: &DedicatedWorkerGlobalScope, compact: Option<&String>) {
    let choice = compact.and_then(|compact| Choice::of_compact(compact));
    let questions = RANGE.with_borrow(|range| Some(practice::questions(range.as_ref()?, &choice?)));
    practice::go_through(scope, questions.unwrap_or_default().into_iter(), |question| {
        RANGE.with_borrow_mut(|range| answer(range, question));
    });
}

/// What is said about a question; nothing if it was not understood.
fn answer(known: &mut Option<Range>, asked: &[String]) -> Vec<String> {
    let said = match (asked, known.as_ref()) {
        ([what, text], _) if what == "range" => {
            *known = Range::parse(text).ok();
            let mark = known.as_ref().map(|range| Mark::of(range).to_string());
            return [what.clone()].into_iter().chain(mark).collect();
        }
        ([what, compact, pins @ ..], Some(range)) if what == "all" => all(range, compact, pins),
        ([what, compact, pins @ ..], Some(range)) if what == "findings" => advice(range, compact, pins),
        ([what, compact, place, pins @ ..], Some(range)) if what == "why" => why(range, compact, place, pins),
        ([what, compact, word, figure, today, pins @ ..], Some(range)) if what == "goal" => {
            goal::answer(range, compact, (word, figure), today, pins).map(Vec::from)
        }
        ([what, compact, before, today, recalled], Some(range)) if what == "did" => {
            did::answer(range, [compact, before, today, recalled])
        }
        ([size, compact, value, pins @ ..], Some(range)) => one(range, compact, (size, value), pins),
        _ => None,
    };
    asked.iter().take(2).cloned().chain(said.unwrap_or_default()).collect()
}

fn questions(pins: &[String]) -> Vec<Question> {
    pins.iter().filter_map(|pin| pin.parse().ok()).collect()
}

/// What was given for the visit, among the pins: `budget=150000`, `by=2026-12-18`, and the day of asking with them.
fn visit(pins: &[String]) -> Option<Visit> {
    let said = |name: &str| pins.iter().find_map(|pin| pin.strip_prefix(name)?.strip_prefix('='));
    let budget = said("budget").and_then(wire::money);
    let by = said("by").and_then(|day| day.parse().ok());
    let today = said("today")?.parse().ok()?;
    (budget.is_some() || by.is_some()).then(|| Visit { budget, by, today, backlog: Backlog::default() })
}

fn all(range: &Range, compact: &str, pins: &[String]) -> Option<Vec<String>> {
    let choice = Choice::of_compact(compact)?;
    let (pins, visit) = (questions(pins), visit(pins));
    let states = states(range, &choice, Kept { pins: &pins, visit: visit.as_ref() })?;
    Some(states.all().map(|answer| word_of(&answer.state).into()).collect())
}

fn advice(range: &Range, compact: &str, pins: &[String]) -> Option<Vec<String>> {
    let (choice, visit, pins) = (Choice::of_compact(compact)?, visit(pins), questions(pins));
    let told = advise(range, &choice, visit.as_ref()).into_iter().flat_map(|finding| {
        let (card, tone) = (words::card(finding.rule), finding.severity.to_string());
        let said = [finding.about.to_string(), tone, words::sentence(&finding), card.why.into(), card.source.into()];
        let remedy = |remedy: &Change| {
            let kept = remedy.question().filter(|question| pins.contains(question));
            let label = kept.map_or_else(|| words::change(remedy, range), |pin| words::letting_go(pin, remedy, range));
            [label, choice.with(remedy, range).to_compact(), kept.map(|pin| pin.to_string()).unwrap_or_default()]
        };
        let remedies: Vec<String> = finding.remedies.iter().flat_map(remedy).collect();
        let none = (remedies.len()..MOST * 3).map(|_| String::new());
        said.into_iter().chain(remedies).chain(none).collect::<Vec<_>>()
    });
    // What was given for the visit and does not hold now is said like what does not suit the place.
    let beyond = visit.iter().flat_map(|visit| visit.beyond(range, &choice)).flat_map(|beyond| {
        let (card, given) = (words::given_card(), beyond.given());
        let said = ["place", "warns", &words::beyond(beyond, &range.currency), card.why, card.source].map(String::from);
        let name = name_of(given).unwrap_or_default();
        let way = [words::let_go(given), compact.into(), name.into()];
        said.into_iter().chain(way).chain((3..MOST * 3).map(|_| String::new()))
    });
    Some(told.chain(beyond).collect())
}

fn why(range: &Range, compact: &str, place: &str, pins: &[String]) -> Option<Vec<String>> {
    let (choice, at) = (Choice::of_compact(compact)?, place.parse().ok()?);
    let options = options(range, &choice)?;
    let change = &options.all().nth(at)?.change;
    explained(range, &choice, change, pins, place)
}

fn one(range: &Range, compact: &str, (size, value): (&str, &str), pins: &[String]) -> Option<Vec<String>> {
    let choice = Choice::of_compact(compact)?;
    let size = Size::ALL.into_iter().find(|known| known.question().to_string() == size)?;
    explained(range, &choice, &size.to(Dim::tenths(value.parse().ok()?)), pins, value)
}

/// The word for a state.
fn word_of(state: &State) -> &'static str {
    match state {
        State::Open => "",
        State::Shifts { .. } => "shifts",
        State::Shut { .. } => "shut",
        State::Unfound { .. } => "unfound",
    }
}

/// Which answer, how it goes, and what is told of that.
fn explained(range: &Range, choice: &Choice, change: &Change, pins: &[String], which: &str) -> Option<Vec<String>> {
    let (pins, visit) = (questions(pins), visit(pins));
    let kept = Kept { pins: &pins, visit: visit.as_ref() };
    let state = state(range, choice, change, kept)?;
    let told = match &state {
        State::Open => Default::default(),
        State::Shifts { reason, changes } => {
            let way = Message::TakeWith(changes, range).text();
            [words::sentence(reason), way, after(range, choice, change, changes), String::new()]
        }
        State::Shut { reason } => shut(range, choice, change, kept, reason),
        State::Unfound { reason } => [words::given_up(reason), String::new(), String::new(), String::new()],
    };
    Some([which, word_of(&state)].map(String::from).into_iter().chain(told).collect())
}

/// What is told of an answer that is shut.
fn shut(range: &Range, choice: &Choice, change: &Change, kept: Kept<'_>, reason: &Finding) -> [String; 4] {
    let none = String::new;
    let Some(why) = why_shut(range, choice, change, kept) else {
        return [words::given_up(reason), none(), none(), none()];
    };
    let sentence = words::shut(&why, &range.currency);
    let Some(release) = &why.release else { return [sentence, none(), none(), none()] };
    let given = release.given.iter().filter_map(|given| name_of(*given)).map(String::from);
    let gone: Vec<String> = release.pins.iter().map(ToString::to_string).chain(given).collect();
    [sentence, words::release(release, range), after(range, choice, change, &release.all()), gone.join(" ")]
}

/// By what name the page keeps what was given for the visit; wall and screen are the choice's own.
const fn name_of(given: Given) -> Option<&'static str> {
    match given {
        Given::Budget => Some("budget"),
        Given::Day => Some("by"),
        Given::Wall | Given::Screen => None,
    }
}

/// The compact text of what comes of a change and of more after it.
fn after(range: &Range, choice: &Choice, change: &Change, more: &[Change]) -> String {
    more.iter().fold(choice.with(change, range), |choice, change| choice.with(change, range)).to_compact()
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
    fn it_says_what_a_step_did() {
        let mut known = None;
        asked(&mut known, &["range", RANGE]);
        let range = Range::parse(RANGE).unwrap();
        let before = Choice::first_of(&range).unwrap();
        let after = before.with(&Change::WidthMm(Dim::mm(1520)), &range).to_compact();
        let said = asked(&mut known, &["did", &after, &before.to_compact(), "2026-11-25", ""]);
        assert_eq!((&said[1], said[2].replace('\u{202f}', " ").as_str()), (&after, "Width 1 640 to 1 520:"));
        assert!(said[3].contains(" less, ") && said[3].contains(" lighter"), "{said:?}");
    }

    #[test]
    fn it_says_what_goes_with_an_answer_and_what_comes_of_it() {
        let mut known = None;
        assert_eq!(asked(&mut known, &["all", "any"]), ["all", "any"], "it knows no range yet");
        asked(&mut known, &["range", RANGE]);
        let range = Range::parse(RANGE).unwrap();
        let compact = Choice::first_of(&range).unwrap().to_compact();
        let said = asked(&mut known, &["all", &compact]);
        assert_eq!((said[0].as_str(), &said[1]), ("all", &compact));
        assert_eq!(said.len(), 2 + options(&range, &Choice::of_compact(&compact).unwrap()).unwrap().all().count());
        let ways: Vec<usize> = (0..said.len() - 2).filter(|at| said[2 + at] == "shifts").collect();
        assert!(ways.len() > 3, "{said:?}");
        for place in ways.iter().map(ToString::to_string) {
            let told = asked(&mut known, &["why", &compact, &place]);
            assert_eq!((told.len(), &told[..4]), (8, &["why", &compact, &place, "shifts"].map(String::from)[..]));
            assert!(
                !told[4].is_empty()
                    && (told[5].starts_with("Take this and ") || told[5].starts_with("Take this, "))
                    && told[7].is_empty(),
                "{told:?}"
            );
            assert!(judge(&range, &Choice::of_compact(&told[6]).unwrap()).holds(), "{told:?}");
        }
    }

    #[test]
    fn it_says_what_is_good_to_know_and_why() {
        let mut known = None;
        asked(&mut known, &["range", RANGE]);
        let compact = Choice::first_of(known.as_ref().unwrap()).unwrap().to_compact();
        let said = asked(&mut known, &["findings", &compact]);
        assert_eq!(said.len() % 11, 2);
        let tether =
            said[2..].chunks(11).find(|told| told[2].starts_with("It has to be fastened to the wall")).unwrap();
        assert_eq!((tether[0].as_str(), tether[1].as_str()), ("height", "warns"));
        assert!(tether[3].contains("tips over") && !tether[4].is_empty(), "{tether:?}");
        let walled = known.as_ref().unwrap().clone();
        let walled = Choice::of_compact(&compact).unwrap().with(&Change::WallMm(Some(Dim::mm(1407))), &walled);
        let said = asked(&mut known, &["findings", &walled.to_compact()]);
        let wall = said[2..].chunks(11).find(|told| told[5] == "Make it 1\u{202f}400\u{a0}mm wide").unwrap();
        assert_eq!(Choice::of_compact(&wall[6]).unwrap().width_mm, Dim::mm(1400));
        assert_eq!(wall[7], "");
        let kept = asked(&mut known, &["findings", &walled.to_compact(), "height", "width"]);
        let wall = kept[2..].chunks(11).find(|told| told[7] == "width").unwrap();
        assert_eq!(wall[5], "Let the width go and make it 1\u{202f}400\u{a0}mm wide");
    }

    /// A budget and a day that do not hold are said with their figures, and each can be let go: nothing else changes.
    #[test]
    fn a_budget_and_a_day_that_do_not_hold_can_be_let_go() {
        let mut known = None;
        asked(&mut known, &["range", RANGE]);
        let compact = Choice::first_of(known.as_ref().unwrap()).unwrap().to_compact();
        let told = |given: &[&str], known: &mut Option<Range>| -> Vec<[String; 3]> {
            let said = asked(known, &[&["findings", &compact, "today=2026-11-25"], given].concat());
            let beyond = said[2..].chunks(11).filter(|told| told[5].starts_with("Let the "));
            beyond
                .map(|told| {
                    assert_eq!((told[6].as_str(), &told[8..]), (compact.as_str(), &[const { String::new() }; 3][..]));
                    [told[2].clone(), told[5].clone(), told[7].clone()]
                })
                .collect()
        };
        assert_eq!(told(&[], &mut known), [[""; 3]; 0]);
        let both = told(&["budget=100000", "by=2026-12-01"], &mut known);
        assert_eq!(both.len(), 2, "{both:?}");
        assert!(
            both[0][0].starts_with("It comes on ") && both[0][0].ends_with("; you want it by Tue 1 December."),
            "{both:?}"
        );
        assert_eq!(both[0][1..], ["Let the day go", "by"]);
        assert!(
            both[1][0].starts_with("It costs €\u{202f}1\u{202f}")
                && both[1][0].ends_with("; you gave €\u{202f}1\u{202f}000.00."),
            "{both:?}"
        );
        assert_eq!(both[1][1..], ["Let the budget go", "budget"]);
        let past = told(&["by=2025-01-01"], &mut known);
        assert!(past[0][0].starts_with("Wed 1 January 2025 is in the past; it comes on "), "{past:?}");
    }

    #[test]
    fn what_is_kept_is_named() {
        let mut known = None;
        asked(&mut known, &["range", RANGE]);
        let range = known.clone().unwrap();
        let compact = Choice::first_of(&range).unwrap().to_compact();
        // A receiver with its air is wider than a third of the unit: something would have to give way.
        let free = asked(&mut known, &["all", &compact]);
        let kept = asked(&mut known, &["all", &compact, "width", "bays", "shares"]);
        let shut: Vec<usize> = (0..kept.len() - 2).filter(|at| kept[2 + at] == "shut").collect();
        let bound: Vec<&usize> = shut.iter().filter(|at| free[2 + **at] == "shifts").collect();
        assert!(bound.len() > 1, "{kept:?}");
        for place in bound {
            let place = place.to_string();
            let why = asked(&mut known, &["why", &compact, &place, "width", "bays", "shares"]);
            assert_eq!(why[..4], ["why", &compact, &place, "shut"]);
            assert!(
                why[4].contains("You keep ") && why[4].ends_with(", so no other change makes up for it."),
                "{why:?}"
            );
            assert!(why[5].starts_with("Let the ") && why[5].contains(" take this"), "{why:?}");
            assert!(judge(&range, &Choice::of_compact(&why[6]).unwrap()).holds(), "{why:?}");
            // Without the pins it is not shut, and is not said to be.
            let free_now = asked(&mut known, &["why", &compact, &place]);
            assert!(free_now[3] == "shifts" && !free_now[6].is_empty(), "{free_now:?}");
            assert!(why[7].split(' ').all(|pin| ["width", "bays", "shares"].contains(&pin)), "{why:?}");
        }
        // What is shut for a bay that is kept goes without it, and nothing stops it.
        let options = options(&range, &Choice::of_compact(&compact).unwrap()).unwrap();
        let two = options.all().position(|answer| answer.change == Change::BayCount(2)).unwrap().to_string();
        assert_eq!(asked(&mut known, &["why", &compact, &two, "bay-3"])[3], "shut");
        assert_eq!(asked(&mut known, &["why", &compact, &two])[3..], ["", "", "", "", ""]);
        assert_eq!(asked(&mut known, &["why", &compact, "9999"]), ["why", &compact]);
        let many = Choice::first_of(&range).unwrap().with(&Change::BayCount(6), &range).to_compact();
        let size = asked(&mut known, &["width", &many, "9000"]);
        assert_eq!((size[0].as_str(), size[2].as_str()), ("width", "9000"));
        assert!(size[5].starts_with("Take this"), "{size:?}");
    }
}
