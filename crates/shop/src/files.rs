//! Reading what the tool is given, bounded, with errors that name the file.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use slotwright_core::choice::Choice;
use slotwright_core::members::{Place, ReadError, parse};
use slotwright_core::promise::Backlog;
use slotwright_core::range::audit::Audit;
use slotwright_core::range::{Range, RangeProblems};

use crate::args::{Batches, Made, Measured};
use crate::output::{DIFFERS, UNREADABLE};

/// The demo range.
pub(crate) const DEMO: &str = include_str!("../../../web/ranges/fenland.toml");

/// Largest file that is read at all.
const BYTES_MOST: u64 = 1024 * 1024;

/// What can go wrong at the edges of the tool.
#[derive(Debug, thiserror::Error)]
pub(crate) enum FileError {
    /// A file cannot be read.
    #[error("{path}: {error}")]
    Read { path: String, error: io::Error },
    /// A file is too large.
    #[error("{path}: larger than {BYTES_MOST} bytes, the most that is read")]
    TooLarge { path: String },
    /// A file is no text.
    #[error("{path}: not text in UTF-8")]
    NotText { path: String },
    /// A file cannot be written.
    #[error("{path}: {error}")]
    Write { path: String, error: io::Error },
    /// A JSON file is not what was asked for.
    #[error("{path}: {what}: {error}")]
    Json { path: String, what: &'static str, error: ReadError },
    /// A range file has problems.
    #[error("{}", located(path, problems))]
    Range { path: String, problems: RangeProblems },
    /// A range has no model to begin with.
    #[error("the range has no model that a choice could begin with")]
    NoModel,
    /// The unit cannot be ordered.
    #[error("this unit cannot be ordered:\n{}", .0.iter().map(|line| format!("  {line}")).collect::<Vec<_>>().join("\n"))]
    NotOrderable(Vec<String>),
    /// A text of the order cannot stand there.
    #[error(transparent)]
    Text(#[from] slotwright_core::spec::BadText),
    /// No rule has that code.
    #[error("no rule has the code {0:?}")]
    NoRule(String),
    /// No board has that key.
    #[error("the range has no board {0:?}")]
    NoBoard(String),
    /// No document has that name.
    #[error("no document has the name {0:?}")]
    NoDocument(String),
    /// Nobody reads the output any more.
    #[error("the output was closed")]
    Closed,
}

/// Each problem on a line that begins with the file's name.
fn located(path: &str, problems: &RangeProblems) -> String {
    let lines: Vec<String> = problems.0.iter().map(|problem| format!("{path}:{problem}")).collect();
    lines.join("\n       ")
}

impl FileError {
    /// What to do about it.
    pub(crate) fn hint(&self) -> Option<&'static str> {
        match self {
            Self::Read { .. } => Some("is the name right, and may this file be read?"),
            Self::Json { what: "no backlog", .. } => Some("a backlog looks like {\"minutes\": {\"cut\": 600}}"),
            Self::Json { .. } => Some("`slotwright sample` prints choices, `slotwright schema` says what stands where"),
            Self::Range { .. } => Some("the demo range web/ranges/fenland.toml documents every key"),
            Self::NotOrderable(_) => Some("`slotwright derive` shows the findings with their remedies"),
            Self::NoRule(_) => Some("`slotwright explain` lists them"),
            Self::NoBoard(_) => Some("`slotwright fit` lists its boards"),
            Self::NoDocument(_) => Some("`slotwright schema` lists them"),
            Self::Write { .. } => Some("does the folder exist, is this no folder itself, and may you write there?"),
            Self::Text(_) => Some("--name, --contact, --address and --remark say what stands on the label"),
            Self::TooLarge { .. } | Self::NotText { .. } => Some("is this the file that was meant?"),
            Self::NoModel | Self::Closed => None,
        }
    }

    /// The exit code.
    pub(crate) const fn code(&self) -> u8 {
        match self {
            Self::NotOrderable(_) | Self::Range { .. } => DIFFERS,
            _ => UNREADABLE,
        }
    }
}

/// The bytes of a file, `-` for standard input, at most `most` and one more.
pub(crate) fn bytes(path: &Path, most: u64) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    if path.as_os_str() == "-" {
        io::stdin().lock().take(most + 1).read_to_end(&mut bytes)?;
    } else {
        File::open(path)?.take(most + 1).read_to_end(&mut bytes)?;
    }
    Ok(bytes)
}

fn text(path: &Path) -> Result<String, FileError> {
    let shown = || path.display().to_string();
    let bytes = bytes(path, BYTES_MOST).map_err(|error| FileError::Read { path: shown(), error })?;
    if u64::try_from(bytes.len()).is_ok_and(|length| length > BYTES_MOST) {
        return Err(FileError::TooLarge { path: shown() });
    }
    String::from_utf8(bytes).map_err(|_| FileError::NotText { path: shown() })
}

/// A JSON document.
fn json<T>(path: &Path, what: &'static str, read: fn(Place) -> Result<T, ReadError>) -> Result<T, FileError> {
    let text = text(path)?;
    let document = parse(&text).and_then(|value| read(Place::whole(value)));
    document.map_err(|error| FileError::Json { path: path.display().to_string(), what, error })
}

/// A range file; the demo range for none.
pub(crate) fn range(path: Option<&Path>) -> Result<Range, FileError> {
    let (path, text) = match path {
        Some(path) => (path.display().to_string(), text(path)?),
        None => ("the demo range".into(), DEMO.into()),
    };
    // What cannot be read is told with the names that were probably meant.
    Range::parse(&text).map_err(|_| FileError::Range { path, problems: Range::audit(&text).faults })
}

/// A range file, with all that is to be said of it.
pub(crate) fn audit(path: &Path) -> Result<Audit, FileError> {
    Ok(Range::audit(&text(path)?))
}

/// A range with batches that were measured after its file was written.
pub(crate) fn measured(mut range: Range, batches: &Batches) -> Result<Range, FileError> {
    for Measured { board, batch } in &batches.batches {
        let known = range.boards.iter_mut().find(|known| known.key == *board);
        let known = known.ok_or_else(|| FileError::NoBoard(board.to_string()))?;
        known.measure(batch.clone());
    }
    Ok(range)
}

/// Range, choice and backlog of a command.
pub(crate) fn made(made: &Made) -> Result<(Range, Choice, Backlog), FileError> {
    let range = range(made.range.as_deref())?;
    let choice = match &made.choice {
        Some(path) => json(path, "no choice", Choice::read)?,
        None => Choice::first_of(&range).ok_or(FileError::NoModel)?,
    };
    let backlog = match &made.backlog {
        Some(path) => json(path, "no backlog", Backlog::read)?,
        None => Backlog::default(),
    };
    Ok((range, choice, backlog))
}

/// Writes a file.
pub(crate) fn write(path: &Path, text: impl AsRef<[u8]>) -> Result<(), FileError> {
    std::fs::write(path, text).map_err(|error| FileError::Write { path: path.display().to_string(), error })
}

/// Makes a folder if there is none.
pub(crate) fn folder(path: &Path) -> Result<(), FileError> {
    std::fs::create_dir_all(path).map_err(|error| FileError::Write { path: path.display().to_string(), error })
}

/// Takes away a file that an earlier run may have left.
pub(crate) fn remove(path: &Path) -> Result<(), FileError> {
    match std::fs::remove_file(path) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => {
            Err(FileError::Write { path: path.display().to_string(), error })
        }
        _ => Ok(()),
    }
}
