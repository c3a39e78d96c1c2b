use super::*;
use crate::testing::demo;

#[test]
fn a_bay_that_is_kept_is_not_left_out() {
    let choice = Choice::first_of(&demo()).unwrap();
    for pin in [Question::Bay(3), Question::Hole(3), Question::Device(3)] {
        let pins = [Question::Width, pin];
        match state(&demo(), &choice, &Change::BayCount(2), &pins) {
            Some(State::Shut { reason, proven: true }) => assert_eq!(reason.rule, Rule::FitOutCount),
            other => panic!("{other:?}"),
        }
        assert!(state(&demo(), &choice, &Change::BayCount(3), &pins).unwrap().is_open());
    }
}

/// What an answer needs does not depend on what else is asked.
#[test]
fn an_answer_is_told_alike_alone_and_among_all() {
    use super::super::Answer;
    use crate::sample::{Wanted, choices};
    let range = demo();
    let mut several = 0;
    for (choice, pins) in choices(&range, 91, Wanted::Valid).take(40).zip([&[][..], &[Question::Width]].iter().cycle())
    {
        for Answer { change, state: found, .. } in states(&range, &choice, pins).unwrap().all() {
            assert_eq!(state(&range, &choice, change, pins).as_ref(), Some(found), "{change:?} {pins:?} {choice:?}");
            several += usize::from(matches!(found, State::Shifts { changes, .. } if changes.len() > 1));
        }
    }
    assert!(several > 100, "{several}");
}
