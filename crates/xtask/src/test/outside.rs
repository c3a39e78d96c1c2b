//! Strength, stability, fit, work, packages and days, by Python and libraries that are not ours.

use std::process::{Command, Stdio};

use anyhow::{Context, Result, ensure};

use crate::command::{self, cargo_for_the_host};
use crate::root::Root;
use crate::say;
use crate::setup;

/// The core's figures go into the checks as JSON.
pub(super) fn run(root: &Root) -> Result<()> {
    let python = setup::python::ready(root)?;
    say::step("Building the program that writes the core's figures");
    let mut build = cargo_for_the_host(root, "build");
    build.args(["--bin", "figures", "--profile", "test"]);
    command::run(&mut build, "read the compiler's message above")?;
    let mut figures = Command::new(root.target().join("debug/figures"))
        .stdout(Stdio::piped())
        .spawn()
        .context("the program that writes the core's figures")?;
    let written = figures.stdout.take().context("its output")?;
    let mut checks = Command::new(python);
    // What it imports from beside it leaves nothing in the tree.
    checks.arg("-B").arg(root.join("tests/outside/check.py")).stdin(written);
    command::run(&mut checks, "mend the figure that the check names, or the check")?;
    ensure!(figures.wait().context("waiting for the figures")?.success(), "the core's figures broke off");
    Ok(())
}
