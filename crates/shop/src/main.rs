//! `slotwright`: the workshop's tool. It checks orders, validates ranges, derives, samples.

use std::process::ExitCode;

mod args;
mod commands;
mod error;
mod files;
mod inputs;
mod nearest;
mod output;
mod schemas;
mod table;

fn main() -> ExitCode {
    let args = match args::parse() {
        Ok(args) => args,
        Err(shown) => return output::usage(&shown),
    };
    match commands::run(&args) {
        Ok(code) => code,
        Err(error) => output::error(&error),
    }
}
