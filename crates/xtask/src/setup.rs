//! Set-up: everything that the other tasks need, installed once and never asked for again.
//!
//! Each part first looks for what is there; only what is missing reaches for the network.

mod apt;
pub(crate) mod chromium;
mod debian;
pub(crate) mod engines;
pub(crate) mod node;
pub(crate) mod paper;
pub(crate) mod python;
pub(crate) mod tools;
pub(crate) mod wasm;

use std::ffi::OsString;
use std::process::Command;

use anyhow::{Context, Result, ensure};

use crate::arguments::Arguments;
use crate::command::{self, cargo, lock_switch, path_with, read};
use crate::root::Root;
use crate::version::Version;
use crate::{paths, say};
use wasm::{TARGET, Wasm};

/// The same as `rust-version` in Cargo.toml; a house test compares them.
pub(crate) const OLDEST_RUST: Version = Version(1, 95, 0);

/// `cargo xtask setup`: all of it, tests' needs included.
pub(crate) fn run(root: &Root, arguments: &Arguments) -> Result<()> {
    checkers(root)?;
    let web = web(root, arguments)?;
    web.wasm.ready_to_lint()?;
    let chromium = chromium::ready()?;
    say::step(&format!("wasm32: {}", web.wasm.name()));
    for tool in web.tools {
        say::step(&tool);
    }
    say::step(&format!("Chromium: {}", chromium.display()));
    say::step(&format!("Python: {}", python::ready(root)?.display()));
    paper::ready()?;
    say::line("Everything is set up.");
    Ok(())
}

/// What a build of the page needs, found or installed.
#[derive(Debug)]
pub(crate) struct Web {
    pub(crate) wasm: Wasm,
    /// Of the compiler, whichever it is.
    switches: Vec<String>,
    path: OsString,
    /// Name, version and place of each tool.
    tools: Vec<String>,
}

impl Web {
    /// A program with the wasm32 toolchain and the web tools in its environment.
    pub(crate) fn command(&self, root: &Root, program: &str) -> Command {
        let mut command = Command::new(program);
        command.current_dir(root.path()).env("PATH", &self.path);
        self.wasm.equip(&mut command, &self.switches);
        command
    }

    /// Cargo, which builds the standard library for wasm32 along with the program.
    pub(crate) fn cargo_with_library(&self, root: &Root, task: &str) -> Command {
        let mut cargo = Command::new("cargo");
        cargo.current_dir(root.path()).args([task, "--quiet", "--target", TARGET, "-Zbuild-std=std"]);
        self.wasm.equip_with_library(&mut cargo, &self.switches);
        cargo
    }
}

/// Gets ready to build the page.
pub(crate) fn web(root: &Root, arguments: &Arguments) -> Result<Web> {
    check_rust()?;
    fetch(root)?;
    node::ready(root).context("set-up of the npm tools")?;
    let wasm = wasm::ready(root, arguments.wasm_from).context("set-up of the wasm32 library")?;
    let found = tools::ready(root).context("set-up of the web tools")?;
    let folders: Vec<_> = found.iter().map(|tool| tool.folder.clone()).collect();
    let path = path_with(&folders)?;
    let tools = found.iter().map(ToString::to_string).collect();
    let switches = paths::switches(root)?;
    let web = Web { wasm, switches, path, tools };
    fetch_by(|| web.cargo_with_library(root, "fetch"), "Fetching the crates of the standard library")?;
    Ok(web)
}

fn check_rust() -> Result<()> {
    let line = read(Command::new("rustc").arg("--version"))?;
    let version = Version::first_in(&line).with_context(|| format!("rustc calls itself {line:?}"))?;
    ensure!(
        version >= OLDEST_RUST,
        "this needs Rust 1.95 or newer, here is {}. To do: `rustup update stable`",
        line.trim()
    );
    Ok(())
}

/// Sees that rustfmt and clippy are there; a minimal toolchain lacks them.
pub(crate) fn checkers(root: &Root) -> Result<()> {
    let answers = |name| {
        let output = cargo(root).args([name, "--version"]).output();
        output.is_ok_and(|output| output.status.success())
    };
    if answers("fmt") && answers("clippy") {
        return Ok(());
    }
    say::step("Installing rustfmt and clippy with rustup (the checks of the code)");
    command::run(
        Command::new("rustup").args(["component", "add", "rustfmt", "clippy"]),
        "see that rustup reaches its server",
    )
}

/// Gets all crates now, so that no later task needs the network for them.
fn fetch(root: &Root) -> Result<()> {
    let fetch = || {
        let mut cargo = cargo(root);
        cargo.args(["fetch", "--quiet"]);
        cargo
    };
    fetch_by(fetch, "Fetching the crates that Cargo.lock names")
}

fn fetch_by(fetch: impl Fn() -> Command, what: &str) -> Result<()> {
    let there = fetch().args(["--locked", "--offline"]).output();
    if there.is_ok_and(|output| output.status.success()) {
        return Ok(());
    }
    say::step(what);
    command::run(fetch().args(lock_switch()), "see that cargo reaches its registry, then try again")
}
