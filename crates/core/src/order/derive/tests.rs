//! What cannot be ordered says why.

use super::*;
use crate::choice::Fill;
use crate::choice::change::Change;
use crate::range::Shutdown;
use crate::rules::Rule;
use crate::rules::sample::{Wanted, choices};
use crate::testing::demo;
use crate::units::quantity::Dim;
use crate::words;

/// Not orderable is the same as stopped by a finding with a sentence, whatever is asked for, on whatever day, with
/// whatever is booked.
fn says_why(range: &Range, choice: &Choice, today: Day, backlog: &Backlog) -> bool {
    let derived = derive(range, choice, today, backlog);
    let stops: Vec<&Finding> = derived.stops().collect();
    assert_eq!(derived.orderable().is_none(), !stops.is_empty(), "{today} {choice:?}: {stops:?}");
    let unproven = derive_unproven(range, choice, today, backlog);
    assert_eq!(unproven.is_free(), unproven.stops().next().is_none());
    assert_eq!(unproven.is_free(), stops.is_empty(), "{today} {choice:?}: {stops:?}");
    for finding in &stops {
        let sentence = words::sentence(finding);
        assert!(sentence.len() > 20 && sentence.ends_with('.'), "{finding:?}: {sentence:?}");
        assert!(sentence.split_whitespace().count() <= 25, "{sentence}");
    }
    stops.is_empty()
}

fn booked(minutes: u32) -> Backlog {
    Backlog { minutes: demo().stages.iter().map(|stage| (stage.key.clone(), minutes)).collect() }
}

#[test]
fn cannot_be_made_is_never_said_without_a_reason() {
    let range = demo();
    let mut never = demo();
    never.calendar.shutdowns = vec![Shutdown { from: "2000-01-01".parse().unwrap(), to: Day::LAST }];
    let days: [Day; 4] = ["0001-01-01", "2026-11-25", "9999-12-20", "9999-12-31"].map(|day| day.parse().unwrap());
    let backlogs = [0, 1000, u32::MAX].map(booked);
    let mut told = [0, 0];
    let samples = choices(&range, 16, Wanted::Any).take(60).chain(choices(&range, 17, Wanted::Valid).take(150));
    for (number, mut choice) in samples.enumerate() {
        // Some are more than absurd.
        match number % 9 {
            4 => choice.bays.clear(),
            5 => choice.bays.iter_mut().for_each(|bay| bay.share = 0),
            6 => choice.bays.iter_mut().for_each(|bay| bay.fill = Fill::Shelves(255)),
            7 => choice.width_mm = Dim::mm(-40),
            8 => (0..12).for_each(|_| choice.bays.extend(choice.bays.first().cloned())),
            _ => {}
        }
        let (day, backlog) = (days[number / 3 % 4], &backlogs[number % 3]);
        told[usize::from(says_why(&range, &choice, day, backlog))] += 1;
        if number % 7 == 0 {
            says_why(&never, &choice, days[1], &backlogs[0]);
        }
    }
    assert!(told[0] > 60 && told[1] > 15, "{told:?}");
}

/// No day is a reason of its own: how many working days it takes, and how many there are.
#[test]
fn a_unit_without_a_day_is_told_so() {
    let range = demo();
    let choice = Choice::first_of(&range).unwrap();
    for (today, minutes, needed, there) in [
        // Stages take 1, 1, 1 and 1 days, and 1, 0, 3 and 0 to dry.
        ("9999-12-31", 0, 8.0, 0.0),
        ("9999-12-28", 0, 8.0, 3.0),
        // Booked: the crew's three stages are 300 000 minutes at 420 a day, and the edges 100 000 at 220.
        ("9999-12-28", 100_000, 723.0, 3.0),
    ] {
        let (today, backlog): (Day, _) = (today.parse().unwrap(), booked(minutes));
        let derived = derive(&range, &choice, today, &backlog);
        let stops: Vec<&Finding> = derived.stops().collect();
        let [finding] = stops[..] else { panic!("{stops:?}") };
        assert_eq!((finding.rule, finding.found.value, finding.allowed.value), (Rule::PromiseDay, needed, there));
        assert_eq!(finding.remedies, [], "nothing that was tried makes the calendar longer");
        assert!(derived.orderable().is_none() && derived.built.is_some());
    }
}

/// Where no day is left on which the workshop works and the carrier comes, that is said, and no count of days.
#[test]
fn a_unit_that_nobody_collects_is_told_so() {
    let mut range = demo();
    range.carriers.iter_mut().for_each(|carrier| carrier.weekdays = vec![6, 7]);
    let (choice, backlog) = (Choice::first_of(&range).unwrap(), Backlog::default());
    let derived = derive(&range, &choice, "2026-11-25".parse().unwrap(), &backlog);
    let said: Vec<String> = derived.stops().map(words::sentence).collect();
    let sentence = "No day is left on which the workshop works and the carrier collects. Please ask the workshop.";
    assert_eq!(said, [sentence]);
}

/// The proof is made of all that is built, whatever stops it.
#[test]
fn all_that_is_built_is_proven() {
    let range = demo();
    let choice = Choice::first_of(&range).unwrap().with(&Change::WidthMm(Dim::mm(2410)), &range);
    let backlog = Backlog::default();
    let derived = derive(&range, &choice, "2026-11-25".parse().unwrap(), &backlog);
    assert!(derived.stops().next().is_some() && derived.built.is_some());
    assert!(derived.assembly.is_some_and(|assembly| assembly.is_proven()));
}

/// A range that was not read from a file may lack what its model is made of: that is no reason to say nothing.
#[test]
fn a_unit_without_parts_is_told_so() {
    let mut range = demo();
    let choice = Choice::first_of(&range).unwrap().with(&Change::CornerRadiusMm(Dim::mm(0)), &range);
    range.models.iter_mut().for_each(|model| model.body = "no-such-board".parse().unwrap());
    let backlog = Backlog::default();
    let derived = derive(&range, &choice, Day::of_unix(20_782), &backlog);
    assert_eq!(derived.stops().map(|finding| finding.rule).collect::<Vec<_>>(), [Rule::NoParts]);
}
