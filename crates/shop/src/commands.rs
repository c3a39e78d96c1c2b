//! One module, one command.

use std::process::ExitCode;
use std::time::{SystemTime, UNIX_EPOCH};

use slotwright_core::range::Range;
use slotwright_core::units::day::Day;

use crate::args::{Command, Tool};
use crate::error::FileError;

pub(crate) mod assembly;
pub(crate) mod check;
mod derive;
mod explain;
pub(crate) mod fit;
mod link;
mod nest;
pub(crate) mod options;
mod order;
mod pack;
pub(crate) mod range;
mod sample;
mod schema;
mod solid;

/// Does what was asked and gives the exit code.
///
/// # Errors
///
/// What could not be read, written or done.
pub(crate) fn run(tool: &Tool) -> Result<ExitCode, FileError> {
    let code = match &tool.command {
        Command::Check(asked) => check::run(asked),
        Command::Derive(asked) => derive::run(asked),
        Command::Options(asked) => options::run(asked),
        Command::Range(asked) => range::run(asked),
        Command::Sample(asked) => sample::run(asked),
        Command::Order(asked) => order::run(asked),
        Command::Explain(asked) => explain::run(asked),
        Command::Fit(asked) => fit::run(asked),
        Command::Schema(asked) => schema::run(asked),
        Command::Solid(asked) => solid::run(asked),
        Command::Link(asked) => link::run(asked),
        Command::Nest(asked) => nest::run(asked),
        Command::Assembly(asked) => assembly::run(asked),
        Command::Pack(asked) => pack::run(asked),
    }?;
    Ok(ExitCode::from(code))
}

/// A day on which the range takes orders, today if it still does: what is made does not depend on the day.
fn any_day(range: &Range) -> Day {
    range.orders_until.map_or_else(today, |last| last.min(today()))
}

/// The present day, UTC: the tool's clock, the core has none.
fn today() -> Day {
    let seconds = SystemTime::now().duration_since(UNIX_EPOCH).map_or(0, |since| since.as_secs());
    Day::of_unix(u32::try_from(seconds / 86_400).unwrap_or(u32::MAX))
}
