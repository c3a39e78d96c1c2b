//! Order files checked in a second.
#![expect(clippy::print_stdout, reason = "a benchmark prints its figures")]

use std::fs;
use std::path::PathBuf;
use std::process::Command;
use std::time::Instant;

use slotwright_core::business::promise::Backlog;
use slotwright_core::order::derive::derive;
use slotwright_core::order::spec::{Customer, OrderSpec};
use slotwright_core::range::Range;
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::words;

const FILES: usize = 2000;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let range = Range::parse(include_str!("../../../web/ranges/fenland.toml"))
        .map_err(|problems| words::problems(&problems.0))?;
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("bench-check");
    fs::create_dir_all(&folder)?;
    let (today, backlog) = ("2026-11-25".parse().map_err(|wrong| words::no_day(&wrong))?, Backlog::default());
    let mut files: Vec<PathBuf> = Vec::new();
    for (number, choice) in choices(&range, 3, Wanted::Valid).take(FILES).enumerate() {
        let derived = derive(&range, &choice, today, &backlog);
        let customer = Customer { name: "A".into(), contact: "a@example.org".into(), address: vec!["1 Lane".into()] };
        let orderable = derived.orderable().ok_or("a valid choice cannot be ordered")?;
        let path = folder.join(format!("{number}.order.json"));
        let order = OrderSpec::new(orderable, customer, String::new()).map_err(|bad| bad.message().text())?;
        fs::write(&path, order.to_text())?;
        files.push(path);
    }
    let began = Instant::now();
    let output = Command::new(env!("CARGO_BIN_EXE_slotwright")).arg("check").args(&files).output()?;
    let seconds = began.elapsed().as_secs_f64();
    println!("check  {FILES} files in {seconds:.3} s, exit {:?}", output.status.code());
    fs::remove_dir_all(&folder)?;
    Ok(())
}
