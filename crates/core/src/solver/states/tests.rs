use super::*;
use crate::choice::{Bowed, Fill};
use crate::testing::demo;

#[test]
fn a_bay_that_is_kept_is_not_left_out() {
    let choice = Choice::first_of(&demo()).unwrap();
    for pin in [Question::Bay(3), Question::Hole(3), Question::Device(3)] {
        let pins = [Question::Width, pin];
        match state(&demo(), &choice, &Change::BayCount(2), &pins) {
            Some(State::Shut { reason }) => assert_eq!(reason.rule, Rule::FitOutCount),
            other => panic!("{other:?}"),
        }
        assert!(state(&demo(), &choice, &Change::BayCount(3), &pins).unwrap().is_open());
    }
}

/// What an answer needs does not depend on what else is asked.
#[test]
fn an_answer_is_told_alike_alone_and_among_all() {
    use super::super::Answer;
    use crate::rules::sample::{Wanted, choices};
    let range = demo();
    let mut several = 0;
    for (choice, pins) in
        choices(&range, 91, Wanted::Valid).take(40).zip([&[][..], &[Question::Width]].into_iter().cycle())
    {
        for Answer { change, state: found, .. } in states(&range, &choice, pins).unwrap().all() {
            assert_eq!(state(&range, &choice, change, pins).as_ref(), Some(found), "{change:?} {pins:?} {choice:?}");
            several += usize::from(matches!(found, State::Shifts { changes, .. } if changes.len() > 1));
        }
    }
    assert!(several > 100, "{several}");
}

/// A receiver, or a games console, in the second bay of bays that are shared unevenly: a larger share than all others
/// is enough.
#[test]
fn every_share_is_searched() {
    use crate::choice::{Bay, Hole, Hung, Place};
    let range = demo();
    let hole = |kind: &str, mm: i32| Some(Hole { kind: kind.parse().unwrap(), offset_mm: Dim::mm(mm) });
    let bay = |share, fill, hole| Bay { share, fill, hole, device: None };
    let (open, left, right) = (Fill::Open, Fill::Leaf(Hung::Left), Fill::Leaf(Hung::Right));
    let receiver = Choice {
        model: "sedge".parse().unwrap(),
        width_mm: Dim::mm(1600),
        height_mm: Dim::mm(610),
        depth_mm: Dim::mm(500),
        bays: vec![
            bay(4, Fill::Shelves(3), hole("round-60", -60)),
            bay(2, right, None),
            bay(4, left, hole("slot-90", 0)),
        ],
        back: "birch-18".parse().unwrap(),
        finish: "pale".parse().unwrap(),
        corner_radius_mm: Dim::mm(30),
        plinth_mm: None,
        bow_mm: Dim::mm(0),
        bowed: Bowed::Both,
        place: Place { wall_mm: Some(Dim::mm(2400)), ..Place::default() },
    };
    let games = Choice {
        width_mm: Dim::mm(1980),
        height_mm: Dim::mm(640),
        depth_mm: Dim::mm(430),
        bays: vec![
            bay(4, open, hole("round-80", 0)),
            bay(2, open, None),
            bay(4, open, hole("slot-90", -20)),
            bay(4, left, hole("round-80", 65)),
        ],
        finish: "clear".parse().unwrap(),
        place: Place::default(),
        ..receiver.clone()
    };
    for (choice, device) in [(receiver, "receiver"), (games, "games")] {
        let change = Change::Device { bay: 2, device: Some(device.parse().unwrap()) };
        match state(&range, &choice, &change, &[]) {
            Some(State::Shifts { changes, .. }) => assert_eq!(changes, [Change::Share { bay: 2, share: 5 }]),
            other => panic!("{other:?}"),
        }
    }
}

fn after(range: &crate::range::Range, choice: &Choice, changes: &[Change]) -> Choice {
    changes.iter().fold(choice.clone(), |choice, change| choice.with(change, range))
}

/// A wall and a screen are kept like pins: what goes with an answer breaks neither, and where nothing else helps they
/// are among what is let go.
#[test]
fn a_wall_and_a_screen_are_kept_unless_they_are_let_go() {
    use super::super::kept::Given;
    use super::super::why::why_shut;
    let range = demo();
    let begun = Choice::first_of(&range).unwrap();
    let open = (1..=3).fold(begun, |choice, bay| choice.with(&Change::Fill { bay, fill: Fill::Open }, &range));
    let open = open.with(&Change::DepthMm(Dim::mm(500)), &range);
    let device = Change::Device { bay: 2, device: Some("receiver".parse().unwrap()) };
    let pins = [Question::Shares, Question::Bays];
    let Some(State::Shifts { changes, .. }) = state(&range, &open, &device, &pins) else { panic!("it shifts") };
    let [Change::WidthMm(wide)] = changes[..] else { panic!("{changes:?}") };
    let walled = open.with(&Change::WallMm(Some(Dim::tenths(wide.in_tenths() - 1))), &range);
    assert!(matches!(state(&range, &walled, &device, &pins), Some(State::Shut { .. })));
    let why = why_shut(&range, &walled, &device, &[Question::Shares])
        .unwrap_or_else(|| why_shut(&range, &walled, &device, &pins).unwrap());
    assert!(why.release.is_some());
    let why = why_shut(&range, &walled, &device, &pins).unwrap();
    assert_eq!(why.given, [Given::Wall], "{why:?}");
    // With no pin but the finish there are other ways; none of them breaks the wall.
    let Some(State::Shifts { changes, .. }) = state(&range, &walled, &device, &[]) else { panic!("it shifts") };
    assert!(after(&range, &walled.with(&device, &range), &changes).width_mm < wide);
    // A size that is wider than the wall is shut with that reason, from wherever it is asked.
    for choice in [&walled, &open.with(&Change::WallMm(Some(Dim::mm(1000))), &range)] {
        match state(&range, choice, &Change::WidthMm(Dim::mm(2200)), &[]) {
            Some(State::Shut { reason }) => assert_eq!(reason.rule, Rule::WallWidth),
            other => panic!("{other:?}"),
        }
        let why = why_shut(&range, choice, &Change::WidthMm(Dim::mm(2200)), &[]).unwrap();
        assert_eq!((&why.given[..], why.rules.len()), (&[Given::Wall][..], 0));
        let release = why.release.unwrap();
        assert_eq!(release.given, [Given::Wall]);
        assert!(release.all().contains(&Change::WallMm(None)));
    }
    // So is one that is narrower than the screen.
    let screen = open.with(&Change::ScreenTenthInch(Some(550)), &range);
    match state(&range, &screen, &Change::WidthMm(Dim::mm(1200)), &[]) {
        Some(State::Shut { reason }) => assert_eq!(reason.rule, Rule::ScreenWidth),
        other => panic!("{other:?}"),
    }
    // What is broken already stops nothing else.
    let narrow = open.with(&Change::WallMm(Some(Dim::mm(1000))), &range);
    assert!(matches!(state(&range, &narrow, &device, &pins), Some(State::Shifts { .. })));
}

/// For seeded units: no shift breaks a wall, a screen, a budget or a day that the unit keeps now.
#[test]
fn no_shift_breaks_what_was_given() {
    use super::super::Answer;
    use super::super::kept::{Kept, Visit, broken};
    use crate::business::promise::Backlog;
    use crate::rules::sample::{Wanted, choices};
    let range = demo();
    let (today, backlog) = ("2026-11-25".parse().unwrap(), Backlog::default());
    let (mut shifts, mut other, mut none) = (0, 0, 0);
    for choice in choices(&range, 1717, Wanted::Valid).take(9) {
        let built = crate::order::derive::derive_unproven(&range, &choice, today, &backlog).built.unwrap();
        let by = built.promise.map(|promise| promise.arrives);
        let visit = Visit { budget: Some(built.price.total_minor), by, today, backlog: backlog.clone() };
        let before = broken(&range, &choice, Some(&visit));
        let free = states(&range, &choice, &[]).unwrap();
        let kept = states(&range, &choice, Kept { pins: &[], visit: Some(&visit) }).unwrap();
        for (Answer { change, state, .. }, free) in kept.all().zip(free.all()) {
            match (state, &free.state) {
                (State::Shifts { changes, .. }, State::Shifts { changes: freely, .. }) => {
                    let point = after(&range, &choice.with(change, &range), changes);
                    assert!(can_be_made(&range, &point), "{change:?} {choice:?}");
                    assert_eq!(broken(&range, &point, Some(&visit)) & !before, 0, "{change:?} {changes:?} {choice:?}");
                    assert!(changes.len() >= freely.len());
                    shifts += 1;
                    other += usize::from(changes != freely);
                }
                (State::Unfound { .. } | State::Shut { .. }, State::Shifts { .. }) => none += 1,
                (state, free) => assert_eq!(state, free),
            }
        }
    }
    assert!(shifts > 30 && other > 5 && none > 2, "{shifts} {other} {none}");
}

/// What a budget or a day leaves unfound has taken all units that may be priced and dated; without them nothing is. Once
/// they are taken, no answer is shut for units that nobody looked at.
#[test]
fn an_answer_is_unfound_only_when_no_effort_is_left() {
    use crate::business::promise::Backlog;
    use crate::rules::sample::{Wanted, choices};
    let range = demo();
    let (today, backlog) = ("2026-11-25".parse().unwrap(), Backlog::default());
    let (mut unfound, mut no_more) = (0, 0);
    // With pins all that is left may be gone through, though not looked at.
    let most = [Question::Width, Question::Height, Question::Depth, Question::Shares, Question::Back, Question::Finish];
    let most = most.into_iter().chain([Question::Plinth]);
    let most: Vec<Question> = most.chain((1..=4).map(Question::Hole)).collect();
    let pinned = [&[][..], &most];
    for (choice, pins) in choices(&range, 1718, Wanted::Valid).take(24).zip(pinned.into_iter().cycle()) {
        let built = crate::order::derive::derive_unproven(&range, &choice, today, &backlog).built.unwrap();
        let by = built.promise.map(|promise| promise.arrives);
        let visit = Visit { budget: Some(built.price.total_minor), by, today, backlog: backlog.clone() };
        let search =
            |visit| AnswerSearch::of(&range, range.model(&choice.model).unwrap(), &choice, Kept { pins, visit });
        let (free, kept) = (search(None), search(Some(&visit)));
        // Whether the units that may be looked at, or the steps of the search for another way, are used up.
        let is_spent = |asked: QuestionSet, changed: &Choice| {
            let (few, (space, free)) = (Cell::new(EFFORT.kept_steps), kept.space(changed, asked));
            let again = || solve::smallest(&space, changed, (free, kept.rules(asked)), (&kept.faults, &few));
            kept.candidates.are_spent() || again() == Outcome::GivenUp && few.get() == 0
        };
        let all = |search: &AnswerSearch<'_>| {
            let state = &mut |change: &Change, changed: &Choice| {
                let asked = change.question().map_or(QuestionSet::NONE, QuestionSet::of);
                let state = search.state(changed, asked);
                let is_unfound = matches!(state, State::Unfound { .. });
                assert!(!is_unfound || is_spent(asked, changed), "{change:?} {pins:?} {choice:?}");
                state
            };
            let states = lay(&range, &choice, state).unwrap();
            states.all().map(|answer| answer.state.clone()).collect::<Vec<State>>()
        };
        assert!(!all(&free).iter().any(|state| matches!(state, State::Unfound { .. })), "{choice:?}");
        let first = all(&kept);
        unfound += first.iter().filter(|state| matches!(state, State::Unfound { .. })).count();
        // Asked again, it looks at units again.
        let mut rounds = 0..100;
        while !kept.candidates.are_spent() && rounds.next().is_some() {
            all(&kept);
        }
        for (state, before) in all(&kept).iter().zip(&first) {
            match (state, before) {
                (State::Unfound { .. }, _) => no_more += usize::from(state != before),
                (state, before) => assert_eq!(state, before, "{choice:?}"),
            }
        }
    }
    assert!(unfound > 5 && no_more > 10, "{unfound} {no_more}");
}

/// What cannot be made and is too wide as well becomes as narrow as its wall.
#[test]
fn the_nearest_that_can_be_made_suits_the_wall() {
    let range = demo();
    let begun = Choice::starting(range.model(&"sedge".parse().unwrap()).unwrap()).unwrap();
    let wall = begun.with(&Change::WallMm(Some(Dim::mm(1500))), &range);
    let wide = wall.with(&Change::WidthMm(Dim::mm(3000)), &range);
    let found = after(&range, &wide, &nearest(&range, &wide, &[]).unwrap());
    assert!(can_be_made(&range, &found) && found.width_mm <= Dim::mm(1500), "{found:?}");
    let findings = crate::order::derive::advise(&range, &wide, None);
    let widths = findings.iter().flat_map(|finding| &finding.remedies).filter_map(|change| match change {
        Change::WidthMm(width) => Some(*width),
        _ => None,
    });
    assert!(widths.clone().all(|width| width <= Dim::mm(1500)) && widths.count() > 0, "{findings:?}");
}
