//! How long the states of all answers take: many seeded units, with nothing kept and with something kept.
#![expect(clippy::print_stdout, reason = "a benchmark prints its figures")]
#![expect(clippy::disallowed_methods, reason = "a benchmark reads the clock")]

use std::time::{Duration, Instant};

use slotwright_core::choice::Choice;
use slotwright_core::choice::question::Question;
use slotwright_core::range::Range;
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::solver::Options;
use slotwright_core::solver::states::{State, states};

const DEMO: &str = include_str!("../../../web/ranges/fenland.toml");

/// What is kept in turn.
const KEPT: [&[Question]; 3] = [&[], &[Question::Width], &[Question::Width, Question::Height, Question::Shares]];

fn main() {
    let Ok(range) = Range::parse(DEMO) else { return println!("the demo range has problems") };
    let units: Vec<Choice> = choices(&range, 2026, Wanted::Valid).take(150).collect();
    for kept in KEPT {
        let (mut took, mut unproven, mut answers, mut shifts) = (Vec::new(), 0, 0, 0);
        for unit in &units {
            let once = || {
                let began = Instant::now();
                let found = states(&range, unit, kept);
                (began.elapsed(), found)
            };
            let found = once().1;
            took.push((0..3).map(|_| once().0).min().unwrap_or_default());
            for answer in found.iter().flat_map(Options::all) {
                answers += 1;
                shifts += usize::from(matches!(answer.state, State::Shifts { .. }));
                unproven += usize::from(matches!(answer.state, State::Unfound { .. }));
            }
        }
        took.sort();
        let at = |part: usize| took.get((took.len() - 1) * part / 100).copied().unwrap_or_default();
        println!(
            "{} kept: all {:?}; median {:?}, 90 % {:?}, longest {:?}; {answers} answers, {shifts} shift, {unproven} given up",
            kept.len(),
            took.iter().sum::<Duration>(),
            at(50),
            at(90),
            at(100)
        );
    }
}
