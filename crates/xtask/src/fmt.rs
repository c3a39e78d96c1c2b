//! `cargo xtask fmt`: rustfmt over the workspace.

use anyhow::Result;

use crate::arguments::Arguments;
use crate::command::{self, cargo};
use crate::root::Root;

/// Formats, or with `--check` only looks.
pub(crate) fn run(root: &Root, arguments: &Arguments) -> Result<()> {
    if arguments.check {
        check(root)
    } else {
        command::run(cargo(root).args(["fmt", "--all"]), "mend what rustfmt cannot read")
    }
}

/// Fails if a file is not formatted.
pub(crate) fn check(root: &Root) -> Result<()> {
    command::run(cargo(root).args(["fmt", "--all", "--check"]), "`cargo xtask fmt`")
}
