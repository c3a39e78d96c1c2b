//! What is shown as open can be ordered, and what is shown as shut cannot: every answer of seeded
//! choices, derived one by one.

use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::choice::change::Change;
use slotwright_core::order::derive::derive;
use slotwright_core::range::Range;
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::solver::{Answer, Size, options, runs};
use slotwright_tests::demo;

#[cfg(test)]
mod bowed;
#[cfg(test)]
mod brute;
#[cfg(test)]
mod general;
#[cfg(test)]
mod suits;
#[cfg(test)]
mod visit;

fn can_be_ordered(range: &Range, choice: &Choice) -> bool {
    let backlog = Backlog::default();
    let today = "2026-11-25".parse().expect("a day");
    derive(range, choice, today, &backlog).orderable().is_some()
}

fn check(range: &Range, choice: &Choice, change: &Change, open: bool) {
    let after = choice.with(change, range);
    // A width goes no further than its wall, nor under its screen.
    let width = f64::from(after.width_mm);
    let screen = after.place.screen_tenth_inch.map(|tenths| f64::from(tenths) * 2.54 * 16.0 / 337.0_f64.sqrt());
    let suits =
        after.place.wall_mm.is_none_or(|wall| after.width_mm <= wall) && screen.is_none_or(|wide| wide <= width);
    let suits = suits || !matches!(change, Change::WidthMm(_));
    assert_eq!(suits && can_be_ordered(range, &after), open, "{change:?} on {choice:?}");
}

#[test]
fn every_answer_is_what_deriving_it_says() {
    let range = demo().unwrap();
    let (mut open, mut shut) = (0, 0);
    for choice in choices(&range, 11, Wanted::Valid).take(60) {
        let answers = options(&range, &choice).unwrap();
        for Answer { change, taken, state } in answers.all() {
            check(&range, &choice, change, state.is_none());
            assert!(!taken || state.is_none(), "what is taken is open");
            if state.is_none() { open += 1 } else { shut += 1 }
        }
    }
    assert!(open > 500 && shut > 50, "{open} open and {shut} shut answers were checked");
}

#[test]
fn runs_cover_every_size_once_and_are_exact() {
    let range = demo().unwrap();
    let mut gaps = 0;
    for choice in choices(&range, 12, Wanted::Valid).take(45) {
        let model = range.model(&choice.model).unwrap();
        for size in Size::ALL {
            let runs = runs(&range, &choice, size);
            gaps += runs.iter().filter(|run| run.state.is_some()).count();
            let mut values = size.limits(model).values().peekable();
            for run in &runs {
                while let Some(value) = values.next_if(|value| *value <= run.to) {
                    assert!(value >= run.from, "no gap between runs");
                    check(&range, &choice, &size.to(value), run.state.is_none());
                }
            }
            assert_eq!(values.next(), None, "runs reach the model's most");
        }
    }
    assert!(gaps > 10, "{gaps} gaps were checked");
}
