//! All that is done with a choice.

use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::choice::question::Question;
use slotwright_core::input::seal::canonical;
use slotwright_core::order::derive::derive;
use slotwright_core::order::document::Document;
use slotwright_core::range::Range;
use slotwright_core::rules::judge;
use slotwright_core::solver::goals::{Goal, toward};
use slotwright_core::solver::states::{State, nearest, reaches, states};
use slotwright_core::solver::why::why_shut;
use slotwright_core::solver::{Answer, Options, Size, options, runs};
use slotwright_core::units::money::Money;
use slotwright_core::words;

/// Asks everything that the page and the workshop ask of a choice, whatever comes out.
pub(crate) fn ask(range: &Range, choice: &Choice) {
    let backlog = Backlog::default();
    let today = "2026-11-25".parse().expect("a day");
    let derived = derive(range, choice, today, &backlog);
    let said: usize = derived.findings.iter().map(|finding| words::sentence(finding).len()).sum();
    let written = canonical(&Document::of(&derived)).len();
    assert!(written > said / 2, "a document has its findings");
    // Every valid unit goes together and holds, whatever range it is of.
    assert!(!derived.is_free() || derived.orderable().is_some(), "{choice:?} is free and not proven");
    let judged = judge(range, choice);
    assert!(judged.holds() || !derived.is_free(), "{choice:?} is free and does not hold");

    let alone = options(range, choice);
    let with_others = states(range, choice, &[]);
    assert_eq!(alone.is_some(), with_others.is_some());
    for (alone, Answer { change, state, .. }) in
        alone.iter().flat_map(Options::all).zip(with_others.iter().flat_map(Options::all))
    {
        assert_eq!(alone.state.is_none(), state.is_open(), "{change:?} {choice:?}");
        match state {
            State::Open | State::Shut { .. } | State::Unfound { .. } => {}
            State::Shifts { changes, .. } => {
                let after = changes.iter().fold(choice.with(change, range), |choice, next| choice.with(next, range));
                assert!(judge(range, &after).holds(), "{change:?} {changes:?} {choice:?}");
                assert!(!words::together(changes, range).is_empty());
            }
        }
    }
    let shut = with_others.iter().flat_map(Options::all).find(|answer| matches!(answer.state, State::Shut { .. }));
    if let Some(Answer { change, .. }) = shut {
        if let Some(why) = why_shut(range, choice, change, &[]) {
            let pinned = why.release.as_ref().is_some_and(|release| !release.pins.is_empty());
            assert!(!pinned && !words::shut(&why, &range.currency).is_empty());
        }
        // Pins of bays that are not there, and twice the same.
        let pins =
            [Question::Bay(9), Question::Width, Question::Bay(1), Question::Width, Question::Bays, Question::Place];
        let why = why_shut(range, choice, change, &pins);
        for release in why.iter().filter_map(|why| why.release.as_ref()) {
            let after =
                release.changes.iter().fold(choice.with(change, range), |choice, next| choice.with(next, range));
            assert!(judge(range, &after).holds(), "{release:?} {change:?} {choice:?}");
        }
    }
    for size in Size::ALL {
        assert_eq!(runs(range, choice, size).is_empty(), reaches(range, choice, size, &[]).is_empty());
    }
    for goal in [Goal::Widest, Goal::Screen, Goal::Price(Money::minor(60_000))] {
        if let Some(changes) = toward(range, choice, goal, &[], (today, &backlog)) {
            let after = changes.iter().fold(choice.clone(), |choice, next| choice.with(next, range));
            assert!(judge(range, &after).holds(), "{goal:?} {changes:?} {choice:?}");
        }
    }
    if let Some(changes) = nearest(range, choice, &[]) {
        let after = changes.iter().fold(choice.clone(), |choice, next| choice.with(next, range));
        assert!(judge(range, &after).holds(), "{changes:?} {choice:?}");
    }
}
