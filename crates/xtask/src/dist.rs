//! `cargo xtask build`: the app into `dist`, as it is served.

mod first;
mod manifest;
mod names;
mod offline;
mod program;
mod shell;
mod wasm;
mod workshop;

use std::fs::{self, File, TryLockError};

use anyhow::{Context, Result, ensure};
use slotwright_core::words::shell::Label;

use crate::arguments::Arguments;
use crate::command::{self, lock_switch};
use crate::http::policy;
use crate::root::Root;
use crate::setup::{self, Web};
use crate::{paths, ranges, say, size};
use program::Program;

/// Sets up and builds.
pub(crate) fn run(root: &Root, arguments: &Arguments) -> Result<()> {
    build(root, &setup::web(root, arguments)?, Make::of(arguments))?;
    say::line(&format!("The app is in {}", root.dist().display()));
    Ok(())
}

/// How the program is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Make {
    /// As people load it.
    Small,
    /// For who works on the page and waits for it.
    Quick,
}

impl Make {
    /// What was asked for.
    pub(crate) fn of(arguments: &Arguments) -> Self {
        if arguments.quick { Self::Quick } else { Self::Small }
    }

    /// The compiler's profile.
    fn profile(self) -> &'static str {
        match self {
            Self::Small => "release",
            Self::Quick => "quick",
        }
    }
}

/// Builds the app with Trunk and puts a compressed twin beside each file.
pub(crate) fn build(root: &Root, web: &Web, make: Make) -> Result<()> {
    ensure!(root.has_web(), "web/Cargo.toml is missing, so there is no app to build");
    let _alone = alone(root)?;
    let program = Program::build(root, web, make)?;
    say::step("Building the app with Trunk");
    command::run(
        web.command(root, "trunk")
            // Everything is set up already: nothing to download, no newer Trunk to ask for.
            .args(["build", "--release", "--offline", "--skip-version-check"])
            .args(lock_switch())
            // Trunk takes this variable's usual value, 1, for a wrong one of its own switch.
            .env_remove("NO_COLOR"),
        "read Trunk's message above",
    )?;
    change_page(root, |html| shell::filled(&first::into_page(html, root)?, &Label::ALL))?;
    let folder = program.deliver(root)?;
    change_page(root, |html| Ok(program::in_folder(html, &folder)))?;
    workshop::write(root, &folder)?;
    paths::ensure_absent(root)?;
    // Its policy stands in the page, so that it holds wherever that is put.
    change_page(root, policy::into_page)?;
    ranges::lighten(root)?;
    stand_by(root)?;
    manifest::write(root)?;
    // It lists all files, so it comes when they are as they are served.
    offline::write(root)?;
    match make {
        Make::Small => size::compress(root),
        Make::Quick => Ok(()),
    }
}

fn change_page(root: &Root, change: impl FnOnce(&str) -> Result<String>) -> Result<()> {
    let file = root.dist().join("index.html");
    let said = || file.display().to_string();
    let html = fs::read_to_string(&file).with_context(said)?;
    fs::write(&file, change(&html).with_context(said)?).with_context(said)
}

/// The component that shows the unit in a room, as its makers built it, with its licence: the page loads it
/// from its own server when somebody asks for it.
fn stand_by(root: &Root) -> Result<()> {
    let (from, to) = (root.join("tests/node_modules/@google/model-viewer"), root.dist().join("room"));
    fs::create_dir_all(&to).with_context(|| to.display().to_string())?;
    for (file, name) in [("dist/model-viewer.min.js", "model-viewer.js"), ("LICENSE", "licence.txt")] {
        let file = from.join(file);
        fs::copy(&file, to.join(name)).with_context(|| format!("{}. To do: `cargo xtask setup`", file.display()))?;
    }
    Ok(())
}

/// Whether only the workshop's page needs it: no customer loads or keeps any of it.
pub(crate) fn is_of_the_workshop(path: &str) -> bool {
    let name = path.rsplit('/').next().unwrap_or_default();
    path.starts_with("workshop/")
        || ["split_packs", "split_workshop", "workshop"].iter().any(|begin| name.starts_with(begin))
}

/// Two builds would take away each other's files in `dist`, so the second one waits for the first.
/// The file is free again once it is dropped.
fn alone(root: &Root) -> Result<File> {
    let place = root.join("target");
    fs::create_dir_all(&place).with_context(|| place.display().to_string())?;
    let file = File::create(place.join("dist.lock")).context("target/dist.lock")?;
    if let Err(TryLockError::WouldBlock) = file.try_lock() {
        say::step("Waiting for another build of the app");
        file.lock().context("waiting for target/dist.lock")?;
    }
    Ok(file)
}
