//! One module, one command.

use std::process::ExitCode;

use crate::args::{Command, Tool};
use crate::files::FileError;

pub(crate) mod check;
mod derive;
mod explain;
mod order;
pub(crate) mod range;
mod sample;
mod schema;

/// Does what was asked and gives the exit code.
///
/// # Errors
///
/// What could not be read, written or done.
pub(crate) fn run(tool: &Tool) -> Result<ExitCode, FileError> {
    let code = match &tool.command {
        Command::Check(asked) => check::run(asked),
        Command::Derive(asked) => derive::run(asked),
        Command::Range(asked) => range::run(asked),
        Command::Sample(asked) => sample::run(asked),
        Command::Order(asked) => order::run(asked),
        Command::Explain(asked) => explain::run(asked),
        Command::Schema(asked) => schema::run(asked),
    }?;
    Ok(ExitCode::from(code))
}
