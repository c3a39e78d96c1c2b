//! `cargo xtask test`: every check and every test, the quickest to fail first.

mod node;
mod outside;

use std::time::Instant;

use anyhow::{Context, Result, bail};

use crate::arguments::{Arguments, Engines};
use crate::command::{self, cargo_for_the_host};
use crate::dist::Make;
use crate::root::Root;
use crate::{dist, fmt, lint, say, setup, size};

/// A part of the whole, in the order in which they run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Stage {
    Fmt,
    Lint,
    Host,
    Web,
    Size,
    Files,
    Outside,
    Parity,
    Browser,
    Engines,
}

impl Stage {
    const ALL: [Self; 10] = [
        Self::Fmt,
        Self::Lint,
        Self::Host,
        Self::Web,
        Self::Size,
        Self::Files,
        Self::Outside,
        Self::Parity,
        Self::Browser,
        Self::Engines,
    ];

    pub(crate) fn parse(word: &str) -> Result<Self> {
        let names = Self::ALL.map(Self::name);
        match Self::ALL.iter().zip(names).find(|(_, name)| *name == word) {
            Some((stage, _)) => Ok(*stage),
            None => bail!("--only wants one of {}, not {word:?}", names.join(", ")),
        }
    }

    fn name(self) -> &'static str {
        match self {
            Self::Fmt => "fmt",
            Self::Lint => "lint",
            Self::Host => "host",
            Self::Web => "web",
            Self::Size => "size",
            Self::Files => "files",
            Self::Outside => "outside",
            Self::Parity => "parity",
            Self::Browser => "browser",
            Self::Engines => "engines",
        }
    }

    fn about(self) -> &'static str {
        match self {
            Self::Fmt => "all files are formatted",
            Self::Lint => "clippy has no remark",
            Self::Host => "tests on this machine",
            Self::Web => "clippy for wasm32, the page is built",
            Self::Size => "the page is within its size budget",
            Self::Files => "documents and solids that the tool writes, by readers that are not ours",
            Self::Outside => "strength, stability and fit, by libraries that are not ours",
            Self::Parity => "the same bytes natively and in WebAssembly",
            Self::Browser => "the page in a browser",
            Self::Engines => "the customer's way in other browsers",
        }
    }

    fn run(self, root: &Root, arguments: &Arguments) -> Result<()> {
        match self {
            Self::Fmt => fmt::check(root),
            Self::Lint => lint::host(root),
            Self::Host => host(root),
            Self::Web => web(root, arguments),
            Self::Size => size::run(root, arguments),
            Self::Files => node::files(root),
            Self::Outside => outside::run(root),
            Self::Parity => node::parity(root, arguments),
            Self::Browser => node::browser(root),
            Self::Engines => node::engines(root),
        }
    }
}

/// All stages, or the one that was asked for.
pub(crate) fn run(root: &Root, arguments: &Arguments) -> Result<()> {
    let started = Instant::now();
    setup::checkers(root)?;
    // Two more browsers and the program that drives one of them take a machine that is new some minutes longer.
    let usual = |stage: Stage| stage != Stage::Engines || arguments.engines == Engines::All;
    let asked = |stage: &Stage| arguments.only.map_or_else(|| usual(*stage), |only| only == *stage);
    for stage in Stage::ALL.into_iter().filter(asked) {
        say::stage(&format!("{}: {}", stage.name(), stage.about()));
        let started = Instant::now();
        stage.run(root, arguments).with_context(|| format!("the stage {} failed", stage.name()))?;
        say::passed(stage.name(), started.elapsed());
    }
    say::passed("all", started.elapsed());
    Ok(())
}

/// What runs on the host: all but the page itself.
fn host(root: &Root) -> Result<()> {
    command::run(&mut cargo_for_the_host(root, "test"), "mend what the failed test claims")
}

fn web(root: &Root, arguments: &Arguments) -> Result<()> {
    let web = setup::web(root, arguments)?;
    lint::wasm(root, &web)?;
    dist::build(root, &web, Make::Small)
}
