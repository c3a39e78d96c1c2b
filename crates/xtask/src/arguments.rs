//! The switches that follow a task's name.

use anyhow::{Context, Result, bail};

use crate::setup::wasm::Source;
use crate::test::Stage;

/// The help text about the switches.
pub(crate) const SWITCHES: &str = "
  --wasm-from rustup|apt  where the wasm32 library comes from (default: what is there, else rustup,
                          else apt; apt where CI is set)
  --port N                serve: the port to try first (8080)
  --quick                 build, serve: for work on the page; built in less time, but large and slow
  --check                 fmt: change nothing, fail if a file would change
  --only STAGE            test: one stage alone, one of fmt, lint, host, web, size, files,
                          outside, parity, browser, engines
  --engines all           test: the customer's way in Firefox and WebKit too";

/// In which browsers the page is tested.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Engines {
    /// In Chromium.
    #[default]
    One,
    /// In Firefox and `WebKit` as well.
    All,
}

/// What was asked for besides the task.
#[derive(Debug, Default, PartialEq)]
pub(crate) struct Arguments {
    pub(crate) help: bool,
    pub(crate) wasm_from: Option<Source>,
    pub(crate) port: Option<u16>,
    pub(crate) quick: bool,
    pub(crate) check: bool,
    pub(crate) only: Option<Stage>,
    pub(crate) engines: Engines,
}

impl Arguments {
    /// Reads the words after the task's name.
    pub(crate) fn parse(mut words: impl Iterator<Item = String>) -> Result<Self> {
        let mut arguments = Self::default();
        while let Some(word) = words.next() {
            let mut value = || words.next().with_context(|| format!("{word} wants a value"));
            match word.as_str() {
                "--help" | "-h" => arguments.help = true,
                "--quick" => arguments.quick = true,
                "--check" => arguments.check = true,
                "--wasm-from" => arguments.wasm_from = Some(Source::parse(&value()?)?),
                "--only" => arguments.only = Some(Stage::parse(&value()?)?),
                "--engines" => match value()?.as_str() {
                    "all" => arguments.engines = Engines::All,
                    other => bail!("--engines wants all, not {other:?}"),
                },
                "--port" => {
                    let port = value()?;
                    arguments.port =
                        Some(port.parse().with_context(|| format!("--port wants a number, not {port:?}"))?);
                }
                _ => bail!("unknown switch {word:?}; `cargo xtask --help` lists them"),
            }
        }
        Ok(arguments)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parse(words: &str) -> Result<Arguments> {
        Arguments::parse(words.split_whitespace().map(str::to_owned))
    }

    #[test]
    fn switches_are_read_in_any_order() -> Result<()> {
        let expected = Arguments { wasm_from: Some(Source::Apt), port: Some(9000), ..Arguments::default() };
        assert_eq!(parse("--port 9000 --wasm-from apt")?, expected);
        assert_eq!(parse("--wasm-from apt --port 9000")?, expected);
        Ok(())
    }

    #[test]
    fn a_wrong_switch_says_what_is_wrong_with_it() {
        for (words, part) in [
            ("--colour", "unknown switch"),
            ("--port", "wants a value"),
            ("--port door", "wants a number"),
            ("--wasm-from moon", "rustup or apt"),
            ("--only lunch", "one of"),
            ("--engines some", "wants all"),
        ] {
            let said = parse(words).map_err(|error| format!("{error:#}"));
            assert!(matches!(&said, Err(text) if text.contains(part)), "{words}: {said:?}");
        }
    }
}
