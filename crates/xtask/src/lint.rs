//! `cargo xtask lint`: clippy for the host and for wasm32, where a warning is an error.

use anyhow::Result;

use crate::arguments::Arguments;
use crate::command::{self, cargo_for_the_host, lock_switch};
use crate::metadata::FOR_THE_WEB;
use crate::root::Root;
use crate::say;
use crate::setup::wasm::TARGET;
use crate::setup::{self, Web};

const REMEDY: &str = "mend what clippy names; an exception is #[expect(…, reason = \"…\")]";

/// Both.
pub(crate) fn run(root: &Root, arguments: &Arguments) -> Result<()> {
    setup::checkers(root)?;
    host(root)?;
    wasm(root, &setup::web(root, arguments)?)
}

/// Everything but the crates for the web; tests and benches too.
pub(crate) fn host(root: &Root) -> Result<()> {
    say::step("Clippy for the host");
    let mut command = cargo_for_the_host(root, "clippy");
    command::run(command.args(["--all-targets", "--all-features", "--", "--deny", "warnings"]), REMEDY)
}

/// The crates for the web; their own clippy reads what their own compiler built.
pub(crate) fn wasm(root: &Root, web: &Web) -> Result<()> {
    web.wasm.ready_to_lint()?;
    say::step("Clippy for wasm32");
    let mut command = web.command(root, web.wasm.clippy());
    command.args(["clippy", "--quiet", "--target", TARGET]).args(lock_switch());
    for name in FOR_THE_WEB {
        command.args(["--package", name]);
    }
    command::run(command.args(["--", "--deny", "warnings"]), REMEDY)
}
