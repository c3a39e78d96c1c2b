//! What the adviser says, question by question.

use slotwright_core::choice::Choice;
use slotwright_core::rules::Rule;
use slotwright_core::rules::judge;
use slotwright_core::units::money::Money;
use slotwright_core::units::quantity::Dim;
use slotwright_core::words::did::Step;
use slotwright_protocol::adviser::Bounds;

use super::*;

pub(crate) fn range() -> Range {
    Range::parse(include_str!("../../ranges/fenland.toml")).unwrap()
}

/// A choice of which nothing is kept.
pub(crate) fn about(choice: &Choice) -> About {
    let today = "2026-11-25".parse().unwrap();
    About { choice: choice.clone(), pins: Vec::new(), bounds: Bounds::default(), today }
}

fn first() -> (Range, About) {
    let range = range();
    let about = about(&Choice::first_of(&range).unwrap());
    (range, about)
}

fn explained(range: &Range, about: &About, place: usize) -> Explained {
    why(range, about, Wanted::Answer(place.try_into().unwrap())).unwrap()
}

#[test]
fn it_answers_once_it_knows_the_range() {
    let (range, about) = first();
    let mut known = None;
    assert_eq!(answer(&mut known, &Question::States(about.clone())), Answer::Nothing);
    let text = include_str!("../../ranges/fenland.toml").to_string();
    assert_eq!(answer(&mut known, &Question::Range(text)), Answer::Range(Mark::of(&range)));
    let Answer::States(states) = answer(&mut known, &Question::States(about.clone())) else { panic!() };
    assert_eq!(states.len(), options(&range, &about.choice).unwrap().all().count());
    assert_eq!(answer(&mut known, &Question::Range("moon".into())), Answer::Nothing);
    assert_eq!(answer(&mut known, &Question::States(about)), Answer::Nothing, "what it knew is not the range any more");
}

#[test]
fn it_says_what_a_step_did() {
    let (range, About { choice: before, today, .. }) = first();
    let after = before.with(&Change::WidthMm(Dim::mm(1520)), &range);
    let asked = Question::Did { before, after, today, step: Step::Answers };
    let Answer::Did([what, effect, _]) = answer(&mut Some(range), &asked) else { panic!() };
    assert_eq!(what.replace('\u{202f}', " "), "Width 1 640 to 1 520:");
    assert!(effect.contains(" less, ") && effect.contains(" lighter"), "{effect}");
}

#[test]
fn it_says_what_goes_with_an_answer_and_what_comes_of_it() {
    let (range, about) = first();
    let states = going(&range, &about).unwrap();
    let places = |wanted| (0..states.len()).filter(|at| states[*at] == wanted).collect::<Vec<_>>();
    let shifting = places(Going::Shifts);
    assert!(shifting.len() > 3, "{states:?}");
    for place in shifting {
        let told = explained(&range, &about, place);
        let way = told.way.clone().unwrap();
        assert!(told.going == Going::Shifts && !told.why.is_empty(), "{told:?}");
        assert!(way.label.starts_with("Take this and ") || way.label.starts_with("Take this, "), "{told:?}");
        assert_eq!(way.outcome.let_go, LetGo::default());
        assert!(judge(&range, &way.outcome.choice).holds(), "{told:?}");
    }
    let open = explained(&range, &about, places(Going::Open)[0]);
    assert_eq!(open, Explained { going: Going::Open, why: String::new(), way: None });
}

#[test]
fn it_says_what_is_good_to_know_and_why() {
    let (range, about) = first();
    let all = findings(&range, &about);
    let tether = all.iter().find(|advice| advice.cause == Cause::Rule(Rule::WallTether)).unwrap();
    assert!(tether.sentence.starts_with("It has to be fastened to the wall"), "{tether:?}");
    assert_eq!((tether.about, tether.severity), (Pin::Height, Severity::Warns));
    assert!(tether.why.contains("tips over") && !tether.source.is_empty(), "{tether:?}");
    let walled = about.choice.with(&Change::WallMm(Some(Dim::mm(1407))), &range);
    let way = |about: &About, label: &str| {
        let all = findings(&range, about);
        let way = all.iter().flat_map(|advice| &advice.ways).find(|way| way.label == label);
        way.unwrap_or_else(|| panic!("{label}: {all:?}")).outcome.clone()
    };
    let walled = About { choice: walled, ..about };
    let wall = way(&walled, "Make it 1\u{202f}400\u{a0}mm wide");
    assert_eq!((wall.choice.width_mm, wall.let_go), (Dim::mm(1400), LetGo::default()));
    let kept = About { pins: vec![Pin::Height, Pin::Width], ..walled };
    let wall = way(&kept, "Let the width go and make it 1\u{202f}400\u{a0}mm wide");
    assert_eq!(wall.let_go, LetGo { pins: vec![Pin::Width], ..LetGo::default() });
}

/// A budget and a day that do not hold are said with their figures, and each can be let go: nothing else changes.
#[test]
fn a_budget_and_a_day_that_do_not_hold_can_be_let_go() {
    let (range, about) = first();
    let told = |budget: Option<i64>, by: Option<&str>| -> Vec<Advice> {
        let bounds = Bounds { budget: budget.map(Money::minor), by: by.map(|day| day.parse().unwrap()) };
        let all = findings(&range, &About { bounds, ..about.clone() });
        all.into_iter().filter(|advice| !matches!(advice.cause, Cause::Rule(_))).collect()
    };
    assert_eq!(told(None, None), []);
    let both = told(Some(100_000), Some("2026-12-01"));
    let [day, price] = &both[..] else { panic!("{both:?}") };
    for (advice, label, let_go) in [
        (day, "Let the day go", LetGo { by: true, ..LetGo::default() }),
        (price, "Let the budget go", LetGo { budget: true, ..LetGo::default() }),
    ] {
        let outcome = Outcome { choice: about.choice.clone(), let_go };
        assert_eq!(advice.ways, [Way { label: label.into(), outcome }]);
    }
    assert!(day.sentence.starts_with("It comes on ") && day.sentence.ends_with("; you want it by Tue 1 December."));
    assert!(price.sentence.starts_with("It costs €\u{202f}1\u{202f}"), "{price:?}");
    assert!(price.sentence.ends_with("; you gave €\u{202f}1\u{202f}000.00."), "{price:?}");
    let past = told(None, Some("2025-01-01"));
    assert!(past[0].sentence.starts_with("Wed 1 January 2025 is in the past; it comes on "), "{past:?}");
}

#[test]
fn what_is_kept_is_named() {
    let (range, about) = first();
    let pins = [Pin::Width, Pin::Bays, Pin::Shares];
    let keeping = About { pins: pins.to_vec(), ..about.clone() };
    // A receiver with its air is wider than a third of the unit: something would have to give way.
    let (free, kept) = (going(&range, &about).unwrap(), going(&range, &keeping).unwrap());
    let bound: Vec<usize> =
        (0..kept.len()).filter(|at| kept[*at] == Going::Shut && free[*at] == Going::Shifts).collect();
    assert!(bound.len() > 1, "{kept:?}");
    for place in bound {
        let told = explained(&range, &keeping, place);
        let way = told.way.clone().unwrap();
        assert_eq!(told.going, Going::Shut);
        assert!(
            told.why.contains("You keep ") && told.why.ends_with(", so no other change makes up for it."),
            "{told:?}"
        );
        assert!(way.label.starts_with("Let the ") && way.label.contains(" take this"), "{told:?}");
        assert!(judge(&range, &way.outcome.choice).holds(), "{told:?}");
        assert!(way.outcome.let_go.pins.iter().all(|pin| pins.contains(pin)), "{told:?}");
        // Without the pins it is not shut, and is not said to be.
        assert_eq!(explained(&range, &about, place).going, Going::Shifts);
    }
    // What is shut for a bay that is kept goes without it, and nothing stops it.
    let options = options(&range, &about.choice).unwrap();
    let two = options.all().position(|answer| answer.change == Change::BayCount(2)).unwrap();
    let bay = About { pins: vec![Pin::Bay(3)], ..about.clone() };
    assert_eq!(explained(&range, &bay, two).going, Going::Shut);
    assert_eq!(explained(&range, &about, two).going, Going::Open);
    assert_eq!(why(&range, &about, Wanted::Answer(9999)), None);
    let many = about.choice.with(&Change::BayCount(6), &range);
    let size = why(&range, &tests::about(&many), Wanted::Size(slotwright_core::solver::Size::Width, Dim::mm(900)));
    assert!(size.unwrap().way.unwrap().label.starts_with("Take this"));
}
