//! Node.js and the npm packages of `tests/package.json`.

use std::fs;
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, ensure};

use crate::command::{read, run};
use crate::root::Root;
use crate::say;
use crate::version::Version;

const OLDEST_NODE: Version = Version(20, 0, 0);

/// Sees that Node.js is new enough and that the packages of the lock file are installed.
pub(crate) fn ready(root: &Root) -> Result<()> {
    let line = read(Command::new("node").arg("--version"))
        .context("Node.js is missing. To do: install Node.js 20 or newer with npm")?;
    let version = Version::first_in(&line).with_context(|| format!("node calls itself {line:?}"))?;
    ensure!(
        version >= OLDEST_NODE,
        "this needs Node.js 20 or newer, here is {}. To do: install a newer one",
        line.trim()
    );

    let tests = root.join("tests");
    let lock = fs::read(tests.join("package-lock.json")).context("tests/package-lock.json")?;
    // npm leaves no mark that says which lock file it followed, so this program leaves one.
    let mark = tests.join("node_modules/.installed-from.json");
    if fs::read(&mark).is_ok_and(|followed| followed == lock) {
        return Ok(());
    }
    install(&tests)?;
    fs::write(&mark, lock).with_context(|| format!("writing {}", mark.display()))
}

fn install(tests: &Path) -> Result<()> {
    say::step("Installing the npm packages of tests/package-lock.json (wasm-opt, esbuild, browser tests)");
    run(
        Command::new("npm")
            .current_dir(tests)
            // What is in npm's cache needs no network; no package here needs its script to be run.
            .args(["ci", "--prefer-offline", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"]),
        "see that npm reaches its registry and that tests/package-lock.json fits tests/package.json",
    )
}
