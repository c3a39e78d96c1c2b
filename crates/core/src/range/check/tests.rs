use std::collections::BTreeSet;

use super::*;
use crate::business::promise::Backlog;
use crate::choice::Choice;
use crate::order::derive::derive_unproven;
use crate::range::parse::read;
use crate::rules::judge;
use crate::rules::sample::{Wanted, choices};
use crate::testing::{DEMO, demo};
use crate::units::decimal::Plain;

/// A range with another figure at a path; nothing if none stands there.
fn with(text: &str, path: &str, figure: f64) -> Option<String> {
    let (before, after) = text.split_at(*read(text).1.places.get(path)?);
    let end = after.find([',', ' ', '\n', '}', ']'])?;
    Some(format!("{before}{}{}", Plain::of(figure, 3), after.get(end..)?))
}

/// What a range derives to, for what each model begins with and some choices more. Every quantity of these tests
/// stops where it leaves the numbers.
fn derive_some(range: &Range, seed: u64, count: usize) {
    let backlog = Backlog::default();
    let starts = range.models.iter().filter_map(Choice::starting);
    for choice in starts.chain(choices(range, seed, Wanted::Any).take(count)) {
        let _ = judge(range, &choice);
        let _ = derive_unproven(range, &choice, "2026-11-25".parse().unwrap(), &backlog);
    }
}

/// A figure at its bound is no reason for a figure that is none.
#[test]
fn figures_at_their_bounds_derive_to_numbers() {
    let (mut kinds, mut taken) = (BTreeSet::new(), 0);
    for bound in demo().bounds() {
        let Limits::Figure(least, most) = bound.limits else { continue };
        // One entry of a list is like another.
        let mut parts: Vec<&str> = bound.path.split('.').collect();
        if parts.len() > 2 {
            parts.remove(1);
        }
        if !kinds.insert(parts.join(".")) {
            continue;
        }
        for text in [least, most].into_iter().filter_map(|figure| with(DEMO, &bound.path, figure)) {
            if let Ok(range) = Range::parse(&text) {
                taken += 1;
                derive_some(&range, 7, 4);
            }
        }
    }
    assert!(taken > 100, "{taken} ranges");
}

proptest::proptest! {
    #![proptest_config(proptest::test_runner::Config::with_cases(40))]

    /// Nor are several at once.
    #[test]
    fn many_figures_at_their_bounds_derive_to_numbers(
        edits in proptest::collection::vec((proptest::arbitrary::any::<proptest::sample::Index>(), proptest::bool::ANY), 1..16),
        seed in 0_u64..1000,
    ) {
        let bounds = demo().bounds();
        let mut text = String::from(DEMO);
        for (at, upper) in edits {
            let bound = at.get(&bounds);
            let Limits::Figure(least, most) = bound.limits else { continue };
            let changed = with(&text, &bound.path, if upper { most } else { least });
            // One that others do not allow is left out.
            text = changed.filter(|text| Range::parse(text).is_ok()).unwrap_or(text);
        }
        derive_some(&Range::parse(&text).unwrap(), seed, 3);
    }
}
