//! The range takes orders on the day of asking.

use super::Rule;
use crate::choice::question::Question;
use crate::range::Range;
use crate::rules::finding::{Figure, Finding, Limit};
use crate::units::day::Day;

/// Days that have passed since the last one.
pub(crate) fn check(out: &mut Vec<Finding>, range: &Range, today: Day) {
    let since = range.orders_until.map_or(0, |last| last.days_until(today));
    if let Some(days) = u32::try_from(since).ok().filter(|days| *days > 0) {
        let (found, allowed) = (Figure::count(days), Figure::count(0u32));
        out.push(Finding::stops(Rule::OrderDay, Question::Model, found, Limit::AtMost, allowed));
    }
}

#[cfg(test)]
mod tests {
    use crate::business::promise::Backlog;
    use crate::choice::Choice;
    use crate::order::derive::{derive, derive_unproven};
    use crate::testing::demo;
    use crate::words::sentence;

    #[test]
    fn the_last_day_is_the_last_on_which_anything_is_ordered() {
        let (mut range, backlog) = (demo(), Backlog::default());
        range.orders_until = Some("2026-11-25".parse().unwrap());
        let choice = Choice::first_of(&range).unwrap();
        for (today, said) in [
            ("2026-11-25", None),
            (
                "2026-11-26",
                Some(
                    "This range takes orders no more: its last day was 1 day earlier. Ask the workshop for the present one.",
                ),
            ),
            (
                "2027-01-04",
                Some(
                    "This range takes orders no more: its last day was 40 days earlier. Ask the workshop for the present one.",
                ),
            ),
        ] {
            let today = today.parse().unwrap();
            let derived = derive(&range, &choice, today, &backlog);
            let stops: Vec<String> = derived.stops().map(sentence).collect();
            assert_eq!(stops.first().map(String::as_str), said);
            assert_eq!((stops.len(), derived.orderable().is_some()), (said.iter().count(), said.is_none()));
            assert_eq!(
                derive_unproven(&range, &choice, today, &backlog).is_free(),
                said.is_none(),
                "while somebody chooses too"
            );
        }
    }
}
