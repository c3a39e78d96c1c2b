//! `cargo xtask`: set-up, build, tests and measurements of this repository.
//!
//! Each task is a module with one public `run`. A task says what it does before it does it, and
//! when it fails it says which step failed and what to do.

mod arguments;
mod base64;
mod bench;
mod command;
mod dist;
mod fmt;
#[cfg(test)]
mod house;
mod http;
mod lint;
mod metadata;
mod paths;
mod ranges;
mod root;
mod say;
mod schemas;
mod serve;
mod setup;
mod size;
mod test;
mod version;

use std::process::ExitCode;

use anyhow::{Context, Result, bail};

use arguments::Arguments;
use root::Root;

/// One subcommand: its name, what it does, and the function that does it.
struct Task {
    name: &'static str,
    line: &'static str,
    run: fn(&Root, &Arguments) -> Result<()>,
}

const TASKS: &[Task] = &[
    Task { name: "serve", line: "set up, build the app and serve it on 127.0.0.1", run: serve::run },
    Task { name: "test", line: "set up and run every check and every test", run: test::run },
    Task { name: "setup", line: "install what the other tasks need", run: setup::run },
    Task { name: "build", line: "build the app into dist", run: dist::run },
    Task { name: "fmt", line: "format the code, or with --check only look", run: fmt::run },
    Task { name: "lint", line: "run clippy for the host and for wasm32", run: lint::run },
    Task { name: "size", line: "weigh dist against the budget", run: size::run },
    Task { name: "bench", line: "measure the core natively and the app in a browser", run: bench::run },
    Task { name: "schemas", line: "write the JSON Schemas of all documents", run: schemas::run },
];

fn main() -> ExitCode {
    match start() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            say::failure(&error);
            ExitCode::FAILURE
        }
    }
}

fn start() -> Result<()> {
    let mut words = std::env::args().skip(1);
    let Some(name) = words.next().filter(|name| !matches!(name.as_str(), "--help" | "-h" | "help")) else {
        help();
        return Ok(());
    };
    let Some(task) = TASKS.iter().find(|task| task.name == name) else {
        help();
        bail!("there is no task {name:?}");
    };
    let arguments = Arguments::parse(words).with_context(|| format!("cargo xtask {name}"))?;
    if arguments.help {
        help();
        return Ok(());
    }
    (task.run)(&Root::find()?, &arguments)
}

fn help() {
    say::line("cargo xtask TASK [switches]\n");
    for task in TASKS {
        say::line(&format!("  {:<8} {}", task.name, task.line));
    }
    say::line(arguments::SWITCHES);
}
