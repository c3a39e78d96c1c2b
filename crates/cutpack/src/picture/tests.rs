use slotwright_core::derive::derive;
use slotwright_core::promise::Backlog;
use slotwright_core::range::Range;
use slotwright_core::sample::{Wanted, choices};

use super::*;

#[test]
fn scratch() {
    let range = Range::parse(include_str!("../../../../web/ranges/fenland.toml")).unwrap();
    let backlog = Backlog::default();
    for (n, choice) in choices(&range, 9, Wanted::Valid).take(6).enumerate() {
        let derived = derive(&range, &choice, "2026-11-25".parse().unwrap(), &backlog);
        let built = derived.built.as_ref().unwrap();
        let began = std::time::Instant::now();
        let all = steps(built);
        println!("{} {:?} parts {} {:?} {:?}", n, choice.model, built.case.panels.len(), began.elapsed(), all.iter().map(|s| s.svg.len()).max());
        for s in &all {
            println!("  {} {:?} {:?} {:.0} ", s.number, s.step.part, s.step.moves, s.step.travel.in_mm());
            std::fs::write(format!("/tmp/pics/{n}-{:02}.svg", s.number), &s.svg).unwrap();
        }
    }
}
