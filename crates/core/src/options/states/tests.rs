use super::super::Answer;
use super::*;
use crate::choice::Fill;
use crate::testing::demo;

fn shut(choice: &Choice, change: &Change, pins: &[Question]) -> Shut {
    match state(&demo(), choice, change, pins) {
        Some(State::Shut(shut)) => shut,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_bay_that_is_kept_is_not_left_out() {
    let choice = Choice::first_of(&demo()).unwrap();
    for pin in [Question::Bay(3), Question::Hole(3), Question::Device(3)] {
        let shut = shut(&choice, &Change::BayCount(2), &[Question::Width, pin]);
        assert_eq!((shut.pins, shut.reason.rule), (vec![pin], Rule::FitOutCount));
        assert!(state(&demo(), &choice, &Change::BayCount(3), &[pin]).unwrap().is_open());
    }
}

/// With the pins that are named it is shut, and of those that are named after a long search none can be left out.
#[test]
fn no_pin_is_named_in_vain() {
    use crate::sample::{Wanted, choices};
    use Question as Q;
    let range = demo();
    let kept: [&[Question]; 3] = [
        &[Q::Width, Q::Height, Q::Depth],
        &[Q::Depth, Q::Bays, Q::Bay(1), Q::Hole(2)],
        &[Q::Shares, Q::Finish, Q::Width, Q::Device(2)],
    ];
    let mut named = 0;
    for (choice, kept) in choices(&range, 44, Wanted::Valid).take(80).zip(kept.into_iter().cycle()) {
        let kept: Vec<Question> = kept.iter().copied().filter(|pin| choice.has(*pin)).collect();
        for Answer { change, state: found, .. } in states(&range, &choice, &kept).unwrap().all() {
            let State::Shut(Shut { pins, proven: true, .. }) = found else { continue };
            let is_shut = |pins: &[Question]| matches!(state(&range, &choice, change, pins), Some(State::Shut(_)));
            assert!(is_shut(pins), "{change:?} {pins:?} {choice:?}");
            if pins.len() < 2 {
                continue;
            }
            let Shut { pins, .. } = why_shut(&range, &choice, change, &kept).unwrap();
            assert!(is_shut(&pins), "{change:?} {pins:?} {choice:?}");
            for pin in &pins {
                let others: Vec<Question> = pins.iter().copied().filter(|other| other != pin).collect();
                assert!(!is_shut(&others), "{change:?} {pins:?} without {pin} {choice:?}");
                named += 1;
            }
        }
    }
    assert!(named > 50, "{named}");
}

/// A record player is too deep for a depth that is kept; that the bay is too narrow as well can be mended.
#[test]
fn the_reason_is_what_forbids_it() {
    let range = demo();
    let choice = Choice::first_of(&range).unwrap();
    let device = |key: &str| Change::Device { bay: 1, device: Some(key.parse().unwrap()) };
    for (choice, pins) in [
        (choice.clone(), &[Question::Depth, Question::Width][..]),
        (choice.with(&Change::Fill { bay: 1, fill: Fill::Shelves(1) }, &range), &[Question::Depth]),
    ] {
        let shut = shut(&choice, &device("record-player"), pins);
        assert_eq!((shut.rules, shut.reason.rule), (vec![Rule::DeviceDepth], Rule::DeviceDepth));
        assert_eq!(shut.pins, [Question::Depth]);
    }
}
