//! How long a cut pack takes for one order and for fifty, and how far the price's quick nest is from a longer one.
#![expect(clippy::print_stdout, reason = "a benchmark prints its figures")]

use std::time::{Duration, Instant};

use slotwright_core::business::material::Material;
use slotwright_core::business::nesting::{self, Grained};
use slotwright_core::business::promise::Backlog;
use slotwright_core::cabinet::case::WeighedCase;
use slotwright_core::cabinet::layout::{Layout, Picked};
use slotwright_core::choice::Choice;
use slotwright_core::order::derive::derive;
use slotwright_core::order::intake::KnownRange;
use slotwright_core::order::spec::{Customer, OrderSpec};
use slotwright_core::range::Range;
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_cutpack::pack::{Nesting, OrderRead, Orders, Settings};
use slotwright_nest::search::{Progress, Search};

const DEMO: &str = include_str!("../../../web/ranges/fenland.toml");

/// Units whose quick nest is compared, and the effort of the search that it is compared with.
const UNITS: usize = 300;
const EFFORT: u32 = 2_000_000;

fn order(range: &Range, choice: &Choice, number: usize) -> Option<String> {
    let backlog = Backlog::default();
    let derived = derive(range, choice, "2026-11-25".parse().ok()?, &backlog);
    let customer = Customer { name: format!("Customer {number}"), contact: "-".into(), address: vec!["-".into()] };
    Some(OrderSpec::new(derived.orderable()?, customer, String::new()).ok()?.to_text())
}

/// How long it takes from the files to the pack, with that effort; how many files and bytes it has.
fn pack(known: &[KnownRange], orders: &[String], effort: u32) -> (Duration, usize, usize) {
    let began = Instant::now();
    let read: Vec<OrderRead<'_>> = (1..)
        .zip(orders)
        .map(|(number, text): (u32, _)| OrderRead::of(number, format!("{number}.json"), text.as_bytes(), known))
        .collect();
    let orders = Orders::of(&read);
    let settings = Settings::default();
    let Ok(mut nesting) = Nesting::begin(&orders, &settings, None) else { return Default::default() };
    while nesting.spend(effort, 10_000) {}
    let (files, _) = nesting.pack().files();
    (began.elapsed(), files.len(), files.iter().map(|file| file.bytes.len()).sum())
}

fn main() {
    let Ok(range) = Range::parse(DEMO) else { return println!("the demo range has problems") };
    let known = [KnownRange::of(range.clone(), range.clone())];
    let units = choices(&range, 5, Wanted::Valid).take(50);
    let orders: Vec<String> = (1..).zip(units).filter_map(|(number, choice)| order(&range, &choice, number)).collect();
    let one = orders.get(..1).unwrap_or_default();
    let least = |orders: &[String], effort, runs| (0..runs).map(|_| pack(&known, orders, effort)).min();
    if let Some((time, files, bytes)) = least(one, 0, 5) {
        println!("pack of one order, first nest  {time:?}, {files} files, {bytes} bytes");
    }
    for (name, effort) in [("first nest", 0), ("default effort", 100_000)] {
        if let Some((time, files, bytes)) = least(&orders, effort, 2) {
            println!("pack of 50 orders, {name}  {time:?}, {files} files, {bytes} bytes");
        }
    }
    quick(&range);
}

/// The material cost of seeded units by the quick nest against a long one, and how long the quick one takes.
fn quick(range: &Range) {
    let (mut over, mut times) = (Vec::new(), Vec::new());
    for choice in choices(range, 9, Wanted::Valid).take(UNITS) {
        let Some(picked) = Picked::of(range, &choice) else { continue };
        let Some(cut) = Layout::of(picked, &choice).and_then(|layout| WeighedCase::of(picked, &choice, &layout)) else {
            continue;
        };
        let board = picked.body;
        let parts: Vec<Grained> = cut
            .case
            .panels
            .iter()
            .filter(|panel| picked.board(panel.stock).key == board.key)
            .map(|panel| {
                let (u, v) = panel.blank();
                let along = panel.grain == slotwright_core::cabinet::panel::GrainAxis::AlongU;
                if along { Grained { along: u, across: v } } else { Grained { along: v, across: u } }
            })
            .collect();
        let began = Instant::now();
        let quick = Material::of(range, board, &parts).cost;
        times.push(began.elapsed());
        let problem = nesting::problem(range, board, parts.into_iter());
        let Ok(mut search) = Search::new(&problem, &nesting::worth(range), 1) else { continue };
        for _ in 0..20 {
            if search.step(EFFORT / 20) == Progress::Done {
                break;
            }
        }
        #[expect(clippy::cast_precision_loss, reason = "some thousand cents")]
        let long = search.best().figures(&problem).net() as f64;
        over.push(quick / long - 1.0);
    }
    over.sort_by(f64::total_cmp);
    times.sort();
    #[expect(clippy::cast_precision_loss, reason = "some hundred")]
    let mean = over.iter().sum::<f64>() / over.len() as f64;
    let at = |per_cent: usize| over.get(over.len() * per_cent / 100).copied().unwrap_or_default();
    let worst = over.last().copied().unwrap_or_default();
    println!("quick nest over a long one, mean  {:.2} % of {} units", mean * 100.0, over.len());
    println!("quick nest over a long one, 95th percentile  {:.2} %", at(95) * 100.0);
    println!("quick nest over a long one, worst  {:.2} %", worst * 100.0);
    let median = times.get(times.len() / 2).copied().unwrap_or_default();
    println!(
        "quick nest of a unit's board, median and worst  {median:?}, {:?}",
        times.last().copied().unwrap_or_default()
    );
}
