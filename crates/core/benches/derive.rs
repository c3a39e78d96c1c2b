//! How long deriving takes: the largest valid unit of the demo range, and all its answers.
#![expect(clippy::print_stdout, reason = "a benchmark prints its figures")]
#![expect(clippy::disallowed_methods, reason = "a benchmark reads the clock")]

use std::hint::black_box;
use std::time::{Duration, Instant};

use slotwright_core::business::promise::Backlog;
use slotwright_core::cabinet::assembly::Assembly;
use slotwright_core::cabinet::layout::Picked;
use slotwright_core::choice::Choice;
use slotwright_core::order::derive::derive;
use slotwright_core::order::document::Document;
use slotwright_core::range::Range;
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::solver::states::states;
use slotwright_core::solver::{Size, options, runs};

const DEMO: &str = include_str!("../../../web/ranges/fenland.toml");

/// The shortest of many runs, each of some repetitions.
fn shortest(mut work: impl FnMut()) -> Duration {
    let repetitions = 20;
    let once = |_| {
        let began = Instant::now();
        (0..repetitions).for_each(|_| work());
        began.elapsed() / repetitions
    };
    (0..25).map(once).min().unwrap_or_default()
}

fn main() {
    let Ok(range) = Range::parse(DEMO) else { return println!("the demo range has problems") };
    let Ok(today) = "2026-11-25".parse() else { return println!("no day") };
    let backlog = Backlog::default();
    let parts =
        |choice: &Choice| derive(&range, choice, today, &backlog).built.map_or(0, |built| built.cut.case.panels.len());
    let Some(largest) = choices(&range, 5, Wanted::Valid).take(3000).max_by_key(parts) else { return };
    println!("largest valid unit: {} parts, {} wide", parts(&largest), f64::from(largest.width_mm));
    println!(
        "derive    {:?}",
        shortest(|| {
            black_box(derive(&range, &largest, today, &backlog));
        })
    );
    let derived = derive(&range, &largest, today, &backlog);
    if let Some((picked, built)) = Picked::of(&range, &largest).zip(derived.built.as_ref()) {
        println!("largest unit: {} joints", built.cut.case.joints.len());
        println!(
            "assembly  {:?}",
            shortest(|| {
                black_box(Assembly::of(picked, &built.cut.case));
            })
        );
    }
    println!(
        "document  {:?}",
        shortest(|| {
            black_box(Document::of(&derive(&range, &largest, today, &backlog)));
        })
    );
    println!(
        "options   {:?}",
        shortest(|| {
            black_box(options(&range, &largest));
        })
    );
    for size in [Size::Width, Size::Height, Size::Depth] {
        println!(
            "{size:?} runs  {:?}",
            shortest(|| {
                black_box(runs(&range, &largest, size));
            })
        );
    }
    println!(
        "states    {:?}",
        shortest(|| {
            black_box(states(&range, &largest, &[]));
        })
    );
    println!(
        "parse the range  {:?}",
        shortest(|| {
            let _ = black_box(Range::parse(DEMO));
        })
    );
}
