//! How long the pictures of the largest valid unit's assembly take.
#![expect(clippy::print_stdout, reason = "a benchmark prints its figures")]

use std::hint::black_box;
use std::time::{Duration, Instant};

use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::order::derive::derive;
use slotwright_core::range::Range;
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_cutpack::picture;

const DEMO: &str = include_str!("../../../web/ranges/fenland.toml");

/// The shortest of some runs.
fn shortest(work: impl Fn()) -> Duration {
    let once = |_| {
        let began = Instant::now();
        work();
        began.elapsed()
    };
    (0..20).map(once).min().unwrap_or_default()
}

fn main() {
    let Ok(range) = Range::parse(DEMO) else { return println!("the demo range has problems") };
    let Ok(today) = "2026-11-25".parse() else { return println!("no day") };
    let backlog = Backlog::default();
    let parts =
        |choice: &Choice| derive(&range, choice, today, &backlog).built.map_or(0, |built| built.cut.case.panels.len());
    let Some(largest) = choices(&range, 5, Wanted::Valid).take(3000).max_by_key(parts) else { return };
    let derived = derive(&range, &largest, today, &backlog);
    let Some((built, assembly)) = derived.built.as_ref().zip(derived.assembly.as_ref()) else { return };
    let pictures = picture::steps(built, assembly, true);
    let bytes: usize = pictures.iter().map(|picture| picture.svg.len()).sum();
    println!("largest valid unit: {} pictures, {bytes} bytes", pictures.len());
    println!(
        "assembly pictures  {:?}",
        shortest(|| {
            black_box(picture::steps(black_box(built), assembly, true));
        })
    );
}
