//! The one place that prints.

use std::io::{self, IsTerminal, Write};
use std::process::ExitCode;

use slotwright_core::words::tool::{Label, Message};

use crate::error::{FileError, WriteFault};

/// Everything well.
pub(crate) const GOOD: u8 = 0;
/// Something differs, or a range or choice has problems.
pub(crate) const DIFFERS: u8 = 1;
/// Something cannot be read, or was asked wrongly.
pub(crate) const UNREADABLE: u8 = 2;

/// What a word stands for; colour goes with it on a terminal, never alone.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Tone {
    /// Fits.
    Good,
    /// Does not.
    Bad,
    /// A second voice.
    Soft,
}

/// Colours a word if people look at it and did not ask for none (`NO_COLOR`).
pub(crate) fn tinted(tone: Tone, word: &str, terminal: bool) -> String {
    let plain = !terminal || std::env::var_os("NO_COLOR").is_some_and(|value| !value.is_empty());
    if plain {
        return word.into();
    }
    let colour = match tone {
        Tone::Good => "32",
        Tone::Bad => "31",
        Tone::Soft => "2",
    };
    format!("\u{1b}[{colour}m{word}\u{1b}[0m")
}

/// Whether people look at standard output.
pub(crate) fn is_terminal() -> bool {
    io::stdout().is_terminal()
}

/// Prints lines to standard output.
///
/// # Errors
///
/// [`FileError::Closed`] if nobody reads any more, which ends the tool quietly.
pub(crate) fn print(lines: impl IntoIterator<Item = impl AsRef<str>>) -> Result<(), FileError> {
    let mut out = io::BufWriter::new(io::stdout().lock());
    for line in lines {
        writeln!(out, "{}", line.as_ref()).map_err(closed)?;
    }
    out.flush().map_err(closed)
}

fn closed(error: io::Error) -> FileError {
    match error.kind() {
        io::ErrorKind::BrokenPipe => FileError::Closed,
        _ => FileError::Write { path: Label::StandardOutput.text().into(), fault: WriteFault::Begun(error) },
    }
}

/// Prints a document for machines.
///
/// # Errors
///
/// See [`print`].
pub(crate) fn document(document: &impl serde::Serialize) -> Result<(), FileError> {
    print([serde_json::to_string_pretty(document).unwrap_or_default()])
}

/// Shows how far a long list is, on a terminal only.
pub(crate) fn progress(done: usize, of: usize) {
    if of >= 500 && (done.is_multiple_of(250) || done == of) {
        step(done, of);
    }
}

/// Shows how far work in a few long steps is, on a terminal only.
pub(crate) fn step(done: usize, of: usize) {
    let mut err = io::stderr().lock();
    if err.is_terminal() {
        let end = if done == of { "\n" } else { "" };
        // Nothing is lost if it cannot be shown.
        let _ = write!(err, "\r{}{end}", Message::Progress(done, of).text());
    }
}

/// Prints an error with its hint and gives the exit code.
pub(crate) fn error(error: &FileError) -> ExitCode {
    if matches!(error, FileError::Closed) {
        return ExitCode::from(GOOD);
    }
    let mut err = io::stderr().lock();
    let terminal = err.is_terminal();
    // Where standard error is closed too, the exit code still tells.
    let _ = writeln!(err, "{}: {error}", tinted(Tone::Bad, Label::Error.text(), terminal));
    if let Some(hint) = error.hint() {
        let _ = writeln!(err, "{}: {hint}", tinted(Tone::Soft, Label::Hint.text(), terminal));
    }
    ExitCode::from(error.code())
}

/// Shows help, version or what is wrong with the arguments.
pub(crate) fn usage(shown: &clap::Error) -> ExitCode {
    // Help goes to standard output with code 0, errors to standard error with code 2.
    let _ = shown.print();
    ExitCode::from(u8::try_from(shown.exit_code()).unwrap_or(UNREADABLE))
}
