//! How long deriving takes: the largest valid units of the demo range, with square ends and with bowed ones, and all their
//! answers.
#![expect(clippy::print_stdout, reason = "a benchmark prints its figures")]
#![expect(clippy::disallowed_methods, reason = "a benchmark reads the clock")]

use std::hint::black_box;
use std::time::{Duration, Instant};

use slotwright_core::business::bill::Bill;
use slotwright_core::business::carriage::carriage;
use slotwright_core::business::job::Job;
use slotwright_core::business::price::price;
use slotwright_core::business::promise::{Backlog, promise};
use slotwright_core::cabinet::assembly::Assembly;
use slotwright_core::cabinet::case::{Case, WeighedCase};
use slotwright_core::cabinet::layout::{Layout, Picked};
use slotwright_core::choice::{Bowed, Choice, Fill};
use slotwright_core::order::derive::{derive, derive_unproven};
use slotwright_core::order::document::Document;
use slotwright_core::range::Range;
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::rules::{can_be_made, judge, judge_stops};
use slotwright_core::solver::states::states;
use slotwright_core::solver::{Size, options, runs};
use slotwright_core::units::day::Day;
use slotwright_core::units::quantity::Dim;

const DEMO: &str = include_str!("../../../web/ranges/fenland.toml");

/// Prints the shortest of many runs, which other programs disturb least.
fn measure<T>(name: &str, ends: &str, work: impl Fn() -> T) {
    let once = |_| {
        let began = Instant::now();
        black_box(work());
        began.elapsed()
    };
    let began = Instant::now();
    let runs = (0..).take_while(|run| *run < 100 || (*run < 2000 && began.elapsed() < Duration::from_secs(1)));
    println!("{name}, {ends}  {:?}", runs.map(once).min().unwrap_or_default());
}

fn case(range: &Range, choice: &Choice) -> Option<Case> {
    let picked = Picked::of(range, choice)?;
    Case::of(picked, choice, &Layout::of(picked, choice)?)
}

/// The valid unit of most parts and joints with as many bays as there may be, a leaf with its stop, a plinth, and both ends
/// square or bowed as far as can be.
fn largest(range: &Range, bowed: bool) -> Option<Choice> {
    let with_ends = |choice: Choice| {
        let model = range.models.iter().find(|model| model.key == choice.model)?;
        let bow_mm = if bowed { model.bows().most } else { Dim::mm(0) };
        let plinth_mm = model.plinth_mm.map(|limits| limits.start);
        let unit = Choice { bow_mm, bowed: Bowed::Both, plinth_mm, ..choice };
        let has_leaf = unit.bays.iter().any(|bay| matches!(bay.fill, Fill::Leaf(_)));
        (unit.bays.len() == 6 && has_leaf && can_be_made(range, &unit)).then_some(unit)
    };
    let units = choices(range, 5, Wanted::Valid).take(6000).filter_map(with_ends);
    units.max_by_key(|unit| case(range, unit).map(|case| (case.panels.len(), case.joints.len())))
}

/// What deriving takes and its shares, and what else is asked of that unit.
fn bench(range: &Range, today: Day, ends: &str, unit: &Choice) -> Option<()> {
    let backlog = Backlog::default();
    let picked = Picked::of(range, unit)?;
    let layout = Layout::of(picked, unit)?;
    let cut = WeighedCase::of(picked, unit, &layout)?;
    let job = Job::of(&cut, picked);
    let (parts, joints) = (cut.case.panels.len(), cut.case.joints.len());
    let leaves = unit.bays.iter().filter(|bay| matches!(bay.fill, Fill::Leaf(_))).count();
    println!(
        "largest unit with {ends} ends: {parts} parts, {joints} joints, {} bays, {leaves} leaves, {} mm wide, bows of {} mm",
        unit.bays.len(),
        unit.width_mm,
        unit.bow_mm
    );
    measure("derive", ends, || derive(range, unit, today, &backlog));
    measure("- unproven", ends, || derive_unproven(range, unit, today, &backlog));
    measure("- rules that stop", ends, || judge_stops(range, unit));
    measure("- all rules", ends, || judge(range, unit));
    measure("- parts", ends, || WeighedCase::of(picked, unit, &layout));
    measure("- bill", ends, || Bill::of(&cut));
    measure("- bill and sheets", ends, || Job::of(&cut, picked));
    measure("- packages", ends, || carriage(range, &job.bill));
    measure("- price", ends, || price(&job));
    measure("- promise", ends, || promise(&job, today, &backlog));
    measure("- assembly", ends, || Assembly::of(picked, &cut.case));
    measure("derive and document", ends, || Document::of(&derive(range, unit, today, &backlog)));
    measure("options", ends, || options(range, unit));
    for size in [Size::Width, Size::Height, Size::Depth] {
        measure(&format!("{size:?} runs"), ends, || runs(range, unit, size));
    }
    measure("states", ends, || states(range, unit, &[]));
    Some(())
}

fn main() {
    let Ok(range) = Range::parse(DEMO) else { return println!("the demo range has problems") };
    let Ok(today) = "2026-11-25".parse() else { return println!("no day") };
    for (ends, bowed) in [("square", false), ("bowed", true)] {
        if largest(&range, bowed).and_then(|unit| bench(&range, today, ends, &unit)).is_none() {
            println!("no largest unit with {ends} ends");
        }
    }
    measure("parse the range", "all", || Range::parse(DEMO));
}
