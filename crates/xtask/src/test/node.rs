//! The tests that Node.js runs: the page in a browser, and the core in WebAssembly against the tool.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, ensure};

use crate::arguments::Arguments;
use crate::command::{self, cargo_for_the_host, lock_switch};
use crate::root::Root;
use crate::setup::wasm::TARGET;
use crate::setup::{self, chromium};
use crate::{http, say};

/// The page as people use it; `SLOTWRIGHT_URL` is where it is served.
pub(super) fn browser(root: &Root) -> Result<()> {
    let mut tests = tests_in(root, "tests/browser")?;
    ensure!(root.dist().is_dir(), "there is no built app to test. To do: `cargo xtask build`");
    setup::node::ready(root)?;
    tests.env("CHROMIUM", chromium::ready()?).env("SLOTWRIGHT_BIN", tool(root)?);
    // Last, so that nothing that takes long runs beside the server.
    tests.env("SLOTWRIGHT_URL", http::spawn(&root.dist())?);
    command::run(&mut tests, "mend what the failed test claims")
}

/// The customer's way in other engines.
pub(super) fn engines(root: &Root) -> Result<()> {
    let mut tests = tests_in(root, "tests/engines")?;
    ensure!(root.dist().is_dir(), "there is no built app to test. To do: `cargo xtask build`");
    setup::node::ready(root)?;
    let setup::engines::Engines { firefox, geckodriver, webkit, webkit_driver } = setup::engines::ready(root)?;
    tests
        .env("FIREFOX", firefox)
        .env("GECKODRIVER", geckodriver)
        .env("WEBKIT", webkit)
        .env("WEBKITDRIVER", webkit_driver);
    tests.env("SLOTWRIGHT_BIN", tool(root)?).env("SLOTWRIGHT_URL", http::spawn(&root.dist())?);
    command::run(&mut tests, "mend what the failed test claims")
}

/// What the tool writes, read by libraries that are not ours.
pub(super) fn files(root: &Root) -> Result<()> {
    setup::node::ready(root)?;
    setup::paper::ready()?;
    let mut tests = tests_in(root, "tests/files")?;
    tests.env("SLOTWRIGHT_BIN", tool(root)?).env("SLOTWRIGHT_PAPER", program(root, "paper")?);
    command::run(&mut tests, "mend what the failed test claims")
}

/// The core in WebAssembly; `SLOTWRIGHT_PARITY` is its module for Node.js, `SLOTWRIGHT_NATIVE` the same as a program.
pub(super) fn parity(root: &Root, arguments: &Arguments) -> Result<()> {
    let mut tests = tests_in(root, "tests/parity")?;
    tests.env("SLOTWRIGHT_BIN", tool(root)?).env("SLOTWRIGHT_NATIVE", program(root, "parity")?);
    tests.env("SLOTWRIGHT_PARITY", module(root, arguments)?);
    command::run(&mut tests, "mend what the failed test claims")
}

/// Node's test runner over the tests of a folder.
fn tests_in(root: &Root, folder: &str) -> Result<Command> {
    let mut tests = Vec::new();
    if let Ok(entries) = std::fs::read_dir(root.join(folder)) {
        for entry in entries {
            tests.push(entry.with_context(|| folder.to_owned())?.path());
        }
    }
    tests.retain(|file| file.to_string_lossy().ends_with(".test.mjs"));
    tests.sort();
    ensure!(!tests.is_empty(), "there are no tests in {folder}. To do: check that the checkout is whole");
    // By itself Node leaves a core alone: of two that is half, and tests of a page wait most of their time.
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    let mut node = Command::new("node");
    node.arg("--test").arg(format!("--test-concurrency={cores}")).args(tests).current_dir(root.join("tests"));
    Ok(node)
}

/// The workshop's tool.
fn tool(root: &Root) -> Result<PathBuf> {
    say::step("Building the workshop's tool");
    program(root, "slotwright")
}

/// A program with the profile and the features of the host's tests.
fn program(root: &Root, name: &str) -> Result<PathBuf> {
    let mut build = cargo_for_the_host(root, "build");
    build.args(["--bin", name, "--profile", "test"]);
    command::run(&mut build, "read the compiler's message above")?;
    Ok(root.target().join("debug").join(name))
}

/// The core as a module for Node.js.
fn module(root: &Root, arguments: &Arguments) -> Result<PathBuf> {
    let web = setup::web(root, arguments)?;
    say::step("Building the core as a WebAssembly module");
    command::run(
        web.command(root, "cargo")
            .args(["build", "--quiet", "--release", "--package", "slotwright-parity"])
            .args(["--target", TARGET])
            .args(lock_switch()),
        "read the compiler's message above",
    )?;
    let built = root.target().join(TARGET).join("release/slotwright_parity.wasm");
    let folder = root.target().join("parity");
    bind(root, &web, &built, &folder)?;
    Ok(folder.join("slotwright_parity.js"))
}

fn bind(root: &Root, web: &setup::Web, built: &Path, folder: &Path) -> Result<()> {
    command::run(
        web.command(root, "wasm-bindgen").args(["--target", "nodejs", "--out-dir"]).arg(folder).arg(built),
        "read wasm-bindgen's message above",
    )
}
