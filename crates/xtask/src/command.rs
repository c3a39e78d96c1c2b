//! Running other programs, with errors that say what to do.

use std::ffi::{OsStr, OsString};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use anyhow::{Context, Result, bail};

use crate::metadata::FOR_THE_WEB;
use crate::root::Root;

/// The cargo that runs this program.
pub(crate) fn cargo(root: &Root) -> Command {
    let program = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let mut command = Command::new(program);
    command.current_dir(root.path());
    command
}

/// The same for a task over all that runs on the host: always all of it, so that nothing is built again with other
/// features.
pub(crate) fn cargo_for_the_host(root: &Root, task: &str) -> Command {
    let mut command = cargo(root);
    command.args([task, "--quiet", "--workspace"]).args(lock_switch());
    for name in FOR_THE_WEB {
        command.args(["--exclude", name]);
    }
    command
}

/// In CI the lock file must already fit; a developer may be changing it.
pub(crate) fn lock_switch() -> Option<&'static str> {
    in_ci().then_some("--locked")
}

pub(crate) fn in_ci() -> bool {
    std::env::var_os("CI").is_some_and(|value| !value.is_empty() && value != "false")
}

/// Runs a program to its end; `remedy` is what to do if it fails.
pub(crate) fn run(command: &mut Command, remedy: &str) -> Result<()> {
    let shown = show(command);
    let status = command.status().with_context(|| format!("`{shown}` did not start. To do: {remedy}"))?;
    if !status.success() {
        bail!("`{shown}` ended with {status}. To do: {remedy}");
    }
    Ok(())
}

/// Runs a program and returns what it wrote to its standard output.
pub(crate) fn read(command: &mut Command) -> Result<String> {
    let shown = show(command);
    let output = command
        .stdin(Stdio::null())
        .stderr(Stdio::inherit())
        .output()
        .with_context(|| format!("`{shown}` did not start"))?;
    if !output.status.success() {
        bail!("`{shown}` ended with {}", output.status);
    }
    String::from_utf8(output.stdout).with_context(|| format!("`{shown}` wrote no text"))
}

/// The first line of a program's `--version`, if the program is there and answers.
pub(crate) fn version_of(program: &Path) -> Option<String> {
    let output = Command::new(program).arg("--version").stdin(Stdio::null()).output().ok()?;
    let text = String::from_utf8(output.stdout).ok()?;
    text.lines().next().map(str::to_owned)
}

/// The first of the named programs that is on PATH.
pub(crate) fn on_path(names: &[&str]) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    names
        .iter()
        .find_map(|name| std::env::split_paths(&path).map(|folder| folder.join(name)).find(|file| file.is_file()))
}

/// PATH with these folders before all others.
pub(crate) fn path_with(first: &[PathBuf]) -> Result<OsString> {
    let old = std::env::var_os("PATH").unwrap_or_default();
    let folders = first.iter().cloned().chain(std::env::split_paths(&old));
    std::env::join_paths(folders).context("a folder's name does not fit into PATH")
}

fn show(command: &Command) -> String {
    let name = Path::new(command.get_program()).file_name().unwrap_or_else(|| command.get_program());
    let words: Vec<_> = std::iter::once(name).chain(command.get_args()).map(OsStr::to_string_lossy).collect();
    words.join(" ")
}
