//! `cargo xtask bench`: how fast the core is natively and the app in a browser.
//!
//! A bench prints each measurement as one line, `measure<TAB>name<TAB>figure<TAB>unit`; other lines
//! are passed through. The table at the end lists all measurements.

use std::process::Command;

use anyhow::{Context, Result};

use crate::arguments::Arguments;
use crate::command::{cargo, read};
use crate::root::Root;
use crate::setup::chromium;
use crate::{dist, http, metadata, say, setup};

const BROWSER_BENCH: &str = "tests/browser/bench.mjs";

/// All benches, then the table.
pub(crate) fn run(root: &Root, arguments: &Arguments) -> Result<()> {
    let mut rows = vec![
        ["measurement", "figure", "unit"]
            .map(str::to_owned)
            .to_vec(),
    ];
    native(root, &mut rows)?;
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
                    .args([
                        "bench",
                        "--quiet",
                        "--profile",
                        "native",
                        "--package",
                        &member.name,
                    ])
                    .args(["--bench", bench]),
            )
            .with_context(|| format!("the bench {bench} of {}", member.name))?;
            collect(&said, rows);
        }
    }
    Ok(())
}

fn browser(root: &Root, arguments: &Arguments, rows: &mut Vec<Vec<String>>) -> Result<()> {
    let script = root.join(BROWSER_BENCH);
    if !script.is_file() {
        say::step(&format!(
            "There is no {BROWSER_BENCH} yet, so the browser is not measured"
        ));
        return Ok(());
    }
    let web = setup::web(root, arguments)?;
    let chromium = chromium::ready()?;
    dist::build(root, &web)?;
    say::stage("The app in Chromium");
    let url = http::spawn(&root.dist())?;
    let said = read(
        Command::new("node")
            .arg(script)
            .current_dir(root.join("tests"))
            .env("SLOTWRIGHT_URL", url)
            .env("CHROMIUM", chromium),
    )
    .with_context(|| format!("the bench {BROWSER_BENCH}"))?;
    collect(&said, rows);
    Ok(())
}

/// Takes the measurements out of what a bench printed and passes on the rest.
fn collect(said: &str, rows: &mut Vec<Vec<String>>) {
    for line in said.lines() {
        match line.strip_prefix("measure\t") {
            Some(cells) => rows.push(cells.split('\t').map(str::to_owned).collect()),
            None => say::line(line),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_lines_that_say_so_are_measurements() {
        let mut rows = Vec::new();
        collect(
            "warming up\nmeasure\tderive a wide unit\t312\tµs\n",
            &mut rows,
        );
        assert_eq!(rows, [["derive a wide unit", "312", "µs"]]);
    }
}
