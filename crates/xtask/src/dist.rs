//! `cargo xtask build`: the app into `target/dist`, as it is served.

use std::process::Command;

use anyhow::{Result, ensure};

use crate::arguments::Arguments;
use crate::command::{lock_switch, run};
use crate::root::Root;
use crate::say;
use crate::setup::{self, Web};

/// Sets up and builds.
pub(crate) fn run_task(root: &Root, arguments: &Arguments) -> Result<()> {
    build(root, &setup::web(root, arguments)?)?;
    say::line(&format!("The app is in {}", root.dist().display()));
    Ok(())
}

pub(crate) use run_task as run;

/// Builds the app with Trunk and packs its files for servers that send them compressed.
pub(crate) fn build(root: &Root, web: &Web) -> Result<()> {
    ensure!(root.has_web(), "web/Cargo.toml is missing, so there is no app to build");
    say::step("Building the app with Trunk (release)");
    run(
        web.command(root, "trunk")
            // Everything is set up already: nothing to download, no newer Trunk to ask for.
            .args(["build", "--release", "--offline", "--skip-version-check"])
            .args(lock_switch())
            .env_remove("NO_COLOR"),
        "read the compiler's or Trunk's message above",
    )?;
    crate::size::weigh(root, Packing::Write).map(drop)
}
