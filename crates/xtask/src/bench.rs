//! `cargo xtask bench`: how fast the core is natively and the app in a browser, and how well the nest nests.
//!
//! A bench prints each measurement as one line: its name, two spaces or more, its figure. Other lines
//! are passed through. The table at the end lists all measurements.

mod general;
mod nests;
mod strips;

use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result};

use crate::arguments::Arguments;
use crate::command::{self, cargo, read};
use crate::dist::Make;
use crate::root::Root;
use crate::setup::chromium;
use crate::{dist, http, metadata, say, setup};

/// What a change costs, and what the first visit does.
const BROWSER_BENCHES: [&str; 3] =
    ["tests/browser/bench.mjs", "tests/browser/slow.mjs", "tests/browser/lighthouse.mjs"];

/// All benches, then the table.
pub(crate) fn run(root: &Root, arguments: &Arguments) -> Result<()> {
    let mut rows = vec![["measurement", "figure"].map(str::to_owned).to_vec()];
    native(root, &mut rows)?;
    let tool = tool(root)?;
    nests::run_all(root, &tool, &mut rows)?;
    strips::run_all(root, &tool, &mut rows)?;
    browser(root, arguments, &mut rows)?;
    say::stage("Measurements");
    say::table(&rows);
    Ok(())
}

fn native(root: &Root, rows: &mut Vec<Vec<String>>) -> Result<()> {
    for member in metadata::crates(root)? {
        for bench in &member.benches {
            say::stage(&format!("{} {bench}", member.name));
            let said = read(
                cargo(root)
                    .args(["bench", "--quiet", "--profile", "native", "--package", &member.name])
                    .args(["--bench", bench]),
            )
            .with_context(|| format!("the bench {bench} of {}", member.name))?;
            collect(&said, rows);
        }
    }
    Ok(())
}

/// The tool as the workshop has it.
fn tool(root: &Root) -> Result<PathBuf> {
    command::run(
        cargo(root).args(["build", "--quiet", "--profile", "native", "--package", "slotwright-shop"]),
        "see what cargo says",
    )?;
    Ok(root.join("target/native/slotwright"))
}

fn browser(root: &Root, arguments: &Arguments, rows: &mut Vec<Vec<String>>) -> Result<()> {
    let web = setup::web(root, arguments)?;
    let chromium = chromium::ready()?;
    dist::build(root, &web, Make::Small)?;
    say::stage("The app in Chromium");
    let url = http::spawn(&root.dist())?;
    for script in BROWSER_BENCHES {
        let said = read(
            Command::new("node")
                .arg(root.join(script))
                .current_dir(root.join("tests"))
                .env("SLOTWRIGHT_URL", &url)
                .env("CHROMIUM", &chromium),
        )
        .with_context(|| format!("the bench {script}"))?;
        collect(&said, rows);
    }
    Ok(())
}

/// Takes the measurements out of what a bench printed and passes on the rest.
fn collect(said: &str, rows: &mut Vec<Vec<String>>) {
    for line in said.lines() {
        match line.trim_end().split_once("  ") {
            Some((name, figure)) if !name.is_empty() => {
                rows.push(vec![name.to_owned(), figure.trim().to_owned()]);
            }
            _ => say::line(line),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_and_a_figure_two_spaces_apart_are_a_measurement() {
        let mut rows = Vec::new();
        collect("27 parts, 1130 wide\nwidth runs   1.3 ms\ncheck  2000 files in 0.6 s\n  indented\n", &mut rows);
        let expected = [["width runs", "1.3 ms"], ["check", "2000 files in 0.6 s"]];
        assert_eq!(rows, expected);
    }
}
