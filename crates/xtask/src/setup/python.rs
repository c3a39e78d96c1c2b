//! Python with the libraries of `tests/outside/requirements.txt`, in a folder of its own.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};

use super::apt;
use crate::command::{on_path, run};
use crate::root::Root;
use crate::say;

/// The interpreter, with all libraries installed.
pub(crate) fn ready(root: &Root) -> Result<PathBuf> {
    let wanted = root.join("tests/outside/requirements.txt");
    let list = fs::read(&wanted).with_context(|| wanted.display().to_string())?;
    let folder = root.target().join("tools/python");
    let (python, mark) = (folder.join("bin/python"), folder.join("installed-from.txt"));
    if python.exists() && fs::read(&mark).is_ok_and(|followed| followed == list) {
        return Ok(python);
    }
    say::step("Installing the Python libraries of tests/outside/requirements.txt (beams, plates, statistics)");
    make(&folder)?;
    run(
        Command::new(&python)
            .args(["-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--requirement"])
            .arg(&wanted),
        "see that pip reaches its registry",
    )?;
    fs::write(&mark, list).with_context(|| mark.display().to_string())?;
    Ok(python)
}

/// A fresh environment; Debian keeps what it takes in a package of its own.
fn make(folder: &Path) -> Result<()> {
    let made = || {
        let python = on_path(&["python3"])?;
        let output = Command::new(python).args(["-m", "venv", "--clear"]).arg(folder).output().ok()?;
        output.status.success().then_some(())
    };
    if made().is_some() {
        return Ok(());
    }
    apt::install(&["python3-venv"], "libraries that check strength and fit")?;
    made().context("python3 makes no environment. To do: try `python3 -m venv` by hand and read what it says")
}
