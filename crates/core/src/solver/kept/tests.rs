use super::*;
use crate::order::derive::{advise, derive_unproven};
use crate::rules::finding::Severity;
use crate::rules::sample::{Wanted, choices};
use crate::testing::demo;
use crate::units::quantity::Dim;

fn today() -> Day {
    "2026-11-25".parse().unwrap()
}

fn visit(budget: Option<Money>, by: Option<Day>) -> Visit {
    Visit { budget, by, today: today(), backlog: Backlog::default() }
}

/// What a unit costs and when it arrives, as the page shows both.
fn shown(range: &Range, choice: &Choice, backlog: &Backlog) -> (Money, Day) {
    let built = derive_unproven(range, choice, today(), backlog).built.unwrap();
    (built.price.total_minor, built.promise.unwrap().arrives)
}

/// The day before another one that is not far away.
fn eve(of: Day) -> Day {
    core::iter::successors(Some(today()), |day| Some(day.next())).find(|day| day.next() == of).unwrap()
}

/// Exactly the budget and the very day are kept; a cent less and a day earlier are broken, each for itself.
#[test]
fn what_was_given_is_broken_just_beyond_it() {
    let range = demo();
    for choice in choices(&range, 61, Wanted::Valid).take(12) {
        let (price, arrives) = shown(&range, &choice, &Backlog::default());
        let [less, more] = [-1, 1].map(|cent| Money::minor(price.in_minor() + cent));
        for (budget, by, broken) in [
            (None, None, &[][..]),
            (Some(price), None, &[]),
            (None, Some(arrives), &[]),
            (Some(more), Some(arrives.next()), &[]),
            (Some(less), Some(arrives), &[Given::Budget]),
            (Some(price), Some(eve(arrives)), &[Given::Day]),
            (Some(less), Some(eve(arrives)), &[Given::Day, Given::Budget]),
        ] {
            assert_eq!(visit(budget, by).breaks(&range, &choice), broken, "{budget:?} {by:?} {choice:?}");
        }
    }
}

/// The day counts from the day of asking, behind what is booked: a day that was kept is broken by either.
#[test]
fn a_day_counts_what_is_booked() {
    let range = demo();
    let choice = Choice::first_of(&range).unwrap();
    let (price, arrives) = shown(&range, &choice, &Backlog::default());
    let minutes = range.stages.iter().map(|stage| (stage.key.clone(), 6_000)).collect();
    let booked = Visit { backlog: Backlog { minutes }, ..visit(Some(price), Some(arrives)) };
    let (same, later) = shown(&range, &choice, &booked.backlog);
    assert!(same == price && later > arrives, "{later}");
    assert_eq!(booked.breaks(&range, &choice), [Given::Day]);
    assert_eq!(Visit { by: Some(later), ..booked }.breaks(&range, &choice), []);
    let asked_then = Visit { today: arrives, ..visit(Some(price), Some(arrives)) };
    assert_eq!(asked_then.breaks(&range, &choice), [Given::Day]);
}

/// What has no day at all comes too late for any; without parts there is neither price nor day to break anything.
#[test]
fn what_has_no_day_is_late_and_what_has_no_parts_breaks_nothing() {
    let range = demo();
    let choice = Choice::first_of(&range).unwrap();
    let mut shut = range.clone();
    shut.calendar.weekdays.clear();
    let built = derive_unproven(&shut, &choice, today(), &Backlog::default()).built.unwrap();
    assert_eq!(built.promise, None);
    assert_eq!(visit(Some(Money::LARGEST), Some(Day::LAST)).breaks(&shut, &choice), [Given::Day]);
    assert_eq!(visit(Some(built.price.total_minor), None).breaks(&shut, &choice), []);
    let flat = choice.with(&Change::HeightMm(Dim::mm(0)), &range);
    assert!(derive_unproven(&range, &flat, today(), &Backlog::default()).built.is_none());
    assert_eq!(visit(Some(Money::ZERO), Some(today())).breaks(&range, &flat), []);
}

/// Budget and day are the visit's: no rule finds them broken, and they take no answer that goes alone away.
#[test]
fn budget_and_day_are_no_findings() {
    use super::super::states::{State, states};
    let range = demo();
    let mut over = 0;
    for choice in choices(&range, 62, Wanted::Valid).take(6) {
        let (price, arrives) = shown(&range, &choice, &Backlog::default());
        let exact = visit(Some(price), Some(arrives));
        let told = |visit: Option<&Visit>| -> Vec<(Rule, Severity)> {
            advise(&range, &choice, visit).iter().map(|finding| (finding.rule, finding.severity)).collect()
        };
        assert_eq!(told(Some(&exact)), told(None));
        let free = states(&range, &choice, &[]).unwrap();
        let kept = states(&range, &choice, Kept { pins: &[], visit: Some(&exact) }).unwrap();
        for (answer, free) in kept.all().zip(free.all()) {
            assert_eq!(answer.state.is_open(), free.state.is_open(), "{:?} {choice:?}", answer.change);
            let after = choice.with(&answer.change, &range);
            over += usize::from(answer.state == State::Open && !exact.breaks(&range, &after).is_empty());
        }
        // What is broken already stops nothing either.
        let less = visit(Some(Money::minor(price.in_minor() - 1)), Some(eve(arrives)));
        assert_eq!(states(&range, &choice, Kept { pins: &[], visit: Some(&less) }).unwrap(), free);
    }
    assert!(over > 20, "{over} open answers cost more or come later");
}

/// Whatever is shut with a budget and a day is told why, from the state of all answers as from that of one. What is let
/// go for it makes it go, and the figures are those of the unit that comes of it.
#[test]
fn what_is_shut_with_a_budget_and_a_day_is_told_why() {
    use Question as Q;

    use super::super::states::{State, state, states};
    use super::super::why::why_shut;
    use crate::rules::can_be_made;
    let range = demo();
    let sizes_but_height = [Q::Width, Q::Depth, Q::Shares, Q::Bays, Q::Back, Q::Finish];
    let all_but_height: Vec<Question> =
        sizes_but_height.into_iter().chain((1..=6).flat_map(|bay| [Q::Bay(bay), Q::Hole(bay)])).collect();
    let pinned: [&[Question]; 3] = [
        &[Q::Width],
        &[
            Q::Width,
            Q::Height,
            Q::Depth,
            Q::Shares,
            Q::Back,
            Q::Finish,
            Q::Plinth,
            Q::Hole(1),
            Q::Hole(2),
            Q::Hole(3),
            Q::Hole(4),
        ],
        &all_but_height,
    ];
    let (mut shut, mut by_visit, mut let_go) = (0, 0, 0);
    for (choice, pins) in choices(&range, 63, Wanted::Valid).take(30).zip(pinned.into_iter().cycle()) {
        let pins: &[Question] = &pins.iter().copied().filter(|pin| choice.has(*pin)).collect::<Vec<_>>();
        let (price, arrives) = shown(&range, &choice, &Backlog::default());
        let exact = visit(Some(price), Some(arrives));
        let kept = Kept { pins, visit: Some(&exact) };
        for answer in states(&range, &choice, kept).unwrap().all() {
            let alone = state(&range, &choice, &answer.change, kept).unwrap();
            let is_shut = |state: &State| matches!(state, State::Shut { .. });
            let why = why_shut(&range, &choice, &answer.change, kept);
            if !is_shut(&answer.state) && !is_shut(&alone) {
                // What is found out of all together may be less, never something else.
                assert!(why.is_none() || matches!(alone, State::Unfound { .. }), "{:?} {choice:?}", answer.change);
                continue;
            }
            let why = why.unwrap_or_else(|| panic!("{:?} {pins:?} {choice:?}", answer.change));
            (shut, by_visit) =
                (shut + 1, by_visit + usize::from(why.given.iter().any(|given| given.undone().is_none())));
            let Some(release) = why.release else { continue };
            let after =
                release.all().iter().fold(choice.with(&answer.change, &range), |to, change| to.with(change, &range));
            assert!(can_be_made(&range, &after), "{release:?} {choice:?}");
            let beyond: Vec<Beyond> = exact.beyond(&range, &after).collect();
            assert_eq!(release.beyond, beyond, "{release:?} {choice:?}");
            for beyond in beyond {
                match beyond {
                    Beyond::Budget { price_minor, most_minor } => {
                        assert!(price_minor > most_minor && most_minor == price);
                    }
                    Beyond::Day { arrives: then, by, .. } => assert!(then > Some(by) && by == arrives),
                }
                let_go += 1;
            }
        }
    }
    assert!(shut > 150 && by_visit > 2 && let_go > 40, "{shut} {by_visit} {let_go}");
}
