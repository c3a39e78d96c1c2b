use super::*;
use crate::choice::Fill;
use crate::order::derive::derive_unproven;
use crate::rules::sample::{Wanted, choices};
use crate::testing::demo;

fn today() -> Day {
    "2026-11-25".parse().unwrap()
}

fn met(range: &Range, choice: &Choice, goal: Goal, pins: &[Question]) -> Option<(Vec<Change>, Choice)> {
    let changes = toward(range, choice, goal, pins, (today(), &Backlog::default()))?;
    let after = after(range, choice, &changes);
    assert!(can_be_made(range, &after), "{goal:?} {changes:?}");
    Some((changes, after))
}

/// For seeded units, valid or not: what is found can be made and meets the goal, keeps what is pinned, and is nothing
/// where the goal is met already.
#[test]
fn what_is_found_meets_its_goal() {
    let range = demo();
    let backlog = Backlog::default();
    let mut found = [0; 3];
    for choice in choices(&range, 71, Wanted::Any).take(40) {
        let Some((_, valid)) = met(&range, &choice, Goal::Valid, &[]) else { continue };
        let built = derive_unproven(&range, &valid, today(), &backlog).built.unwrap();
        let (price, heaviest) = (built.price.total_minor, built.heaviest().unwrap().1);
        let arrives = built.promise.unwrap().arrives;
        assert_eq!(met(&range, &valid, Goal::Price(price), &[]).unwrap().0, []);
        assert_eq!(met(&range, &valid, Goal::By(arrives), &[]).unwrap().0, []);
        let less = Money::minor(price.in_minor() * 9 / 10);
        for (at, goal) in [Goal::Price(less), Goal::Part(heaviest * 0.9), Goal::Widest].into_iter().enumerate() {
            let pins = [Question::Depth, Question::Finish];
            let Some((changes, after)) = met(&range, &valid, goal, &pins) else { continue };
            found[at] += 1;
            assert!(after.depth_mm == valid.depth_mm && after.finish == valid.finish, "{changes:?}");
            let built = derive_unproven(&range, &after, today(), &backlog).built.unwrap();
            match goal {
                Goal::Price(most) => assert!(built.price.total_minor <= most),
                Goal::Part(most) => assert!(built.heaviest().unwrap().1 <= most),
                _ => {
                    let wall = after.place.wall_mm.unwrap_or(after.width_mm);
                    assert!(after.width_mm >= valid.width_mm.min(wall) && after.width_mm <= wall, "{after:?}");
                }
            }
        }
        assert!(met(&range, &valid, Goal::By(today()), &[]).is_none(), "nothing arrives on the day of asking");
    }
    assert!(found[0] > 15 && found[1] > 15 && found[2] > 15, "{found:?}");
}

/// One question is enough wherever one is: no single answer meets the goal if two were changed.
#[test]
fn the_fewest_questions_are_changed() {
    let range = demo();
    let backlog = Backlog::default();
    let mut pairs = 0;
    for choice in choices(&range, 72, Wanted::Valid).take(12) {
        let built = derive_unproven(&range, &choice, today(), &backlog).built.unwrap();
        for share in [95, 80, 60] {
            let most = Money::minor(built.price.total_minor.in_minor() * share / 100);
            let Some((changes, _)) = met(&range, &choice, Goal::Price(most), &[]) else { continue };
            if changes.len() < 2 {
                continue;
            }
            pairs += 1;
            let states = crate::solver::options(&range, &choice).unwrap();
            let sizes = Size::ALL.into_iter().flat_map(|size| {
                let limits = size.limits(range.model(&choice.model).unwrap());
                limits.values().map(move |value| size.to(value)).collect::<Vec<_>>()
            });
            for change in states.all().map(|answer| answer.change.clone()).chain(sizes) {
                if matches!(change, Change::Model(_)) {
                    continue;
                }
                let single = choice.with(&change, &range);
                let suits = broken(&range, &single, None) & !broken(&range, &choice, None) == 0;
                let holds = suits && can_be_made(&range, &single);
                let cheap =
                    || derive_unproven(&range, &single, today(), &backlog).built.unwrap().price.total_minor <= most;
                assert!(!holds || !cheap() || changes.len() == 1, "{change:?} alone instead of {changes:?}");
            }
        }
    }
    assert!(pairs > 3, "{pairs}");
}

/// The width for a screen is the least on the model's steps; the widest stops at the wall.
#[test]
fn widths_suit_screen_and_wall() {
    let range = demo();
    let choice = Choice::first_of(&range).unwrap();
    let screen = choice.with(&Change::ScreenTenthInch(Some(800)), &range);
    // 80 in are 1 771.1 mm wide.
    let (changes, after) = met(&range, &screen, Goal::Screen, &[]).unwrap();
    assert_eq!(after.width_mm, Dim::mm(1780), "{changes:?}");
    assert_eq!(met(&range, &after, Goal::Screen, &[]).unwrap().0, []);
    let pins = [Question::Finish, Question::Width];
    assert!(met(&range, &screen, Goal::Screen, &pins).is_none());
    let held =
        |choice, pins: &[Question]| in_the_way(&range, choice, Goal::Screen, pins, (today(), &Backlog::default()));
    assert_eq!(held(&screen, &pins), [Question::Width]);
    let huge = screen.with(&Change::ScreenTenthInch(Some(1500)), &range);
    assert_eq!(held(&huge, &pins), [], "no unit is so wide, whatever is kept");
    let wall = choice.with(&Change::WallMm(Some(Dim::mm(1905))), &range);
    assert_eq!(met(&range, &wall, Goal::Widest, &[]).unwrap().1.width_mm, Dim::mm(1900));
    let (changes, after) = met(&range, &choice, Goal::Widest, &[]).unwrap();
    assert_eq!(after.width_mm, Dim::mm(2400), "{changes:?}");
    let shelf = choice.with(&Change::Fill { bay: 1, fill: Fill::Open }, &range);
    assert!(met(&range, &shelf, Goal::Widest, &[Question::Bays]).unwrap().1.bays.len() == 3);
}

/// Each kept answer that is named can be let go by itself, and the goal is met.
#[test]
fn what_is_in_the_way_can_be_let_go() {
    let (range, backlog) = (demo(), Backlog::default());
    let pins = [Question::Width, Question::Height, Question::Depth, Question::Bays, Question::Finish];
    let mut named = 0;
    for choice in choices(&range, 73, Wanted::Valid).take(12) {
        let built = derive_unproven(&range, &choice, today(), &backlog).built.unwrap();
        let most = Money::minor(built.price.total_minor.in_minor() * 9 / 10);
        for goal in [Goal::Price(most), Goal::Widest] {
            if met(&range, &choice, goal, &pins).is_some() {
                continue;
            }
            for pin in in_the_way(&range, &choice, goal, &pins, (today(), &backlog)) {
                let others: Vec<Question> = pins.into_iter().filter(|other| *other != pin).collect();
                assert!(met(&range, &choice, goal, &others).is_some(), "{pin} {goal:?} {choice:?}");
                named += 1;
            }
        }
    }
    assert!(named > 10, "{named}");
}

/// Three open bays cost less than any two answers can save: they are found all the same.
#[test]
fn a_budget_that_takes_more_than_two_answers_is_met() {
    let range = demo();
    let begun = Choice::starting(range.model(&"teasel".parse().unwrap()).unwrap()).unwrap();
    let sizes =
        [Change::WidthMm(Dim::mm(1400)), Change::WallMm(Some(Dim::mm(1500))), Change::ScreenTenthInch(Some(550))];
    let begun = sizes.iter().fold(begun, |choice, change| choice.with(change, &range));
    let (today, backlog) = ("2026-11-25".parse().unwrap(), Backlog::default());
    let price = |choice: &Choice| {
        crate::order::derive::derive_unproven(&range, choice, today, &backlog).built.unwrap().price.total_minor
    };
    let open = |choice: Choice, bay| choice.with(&Change::Fill { bay, fill: Fill::Open }, &range);
    let most = price(&(1..=3).fold(begun.clone(), open));
    let all = toward(&range, &begun, Goal::Price(most), &[], (today, &backlog)).unwrap();
    let found = all.iter().fold(begun.clone(), |choice, change| choice.with(change, &range));
    assert!(price(&found) <= most && can_be_made(&range, &found), "{all:?}");
    assert!(found.width_mm <= Dim::mm(1500) && found.place == begun.place, "{all:?}");
}
