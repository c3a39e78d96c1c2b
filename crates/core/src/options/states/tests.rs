use super::*;
use crate::choice::Fill;
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
