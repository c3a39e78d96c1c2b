//! What can go wrong at the edges of the tool, each with what to do about it.

use std::io;

use slotwright_core::choice::question::Question;
use slotwright_core::input::members::ReadError;
use slotwright_core::input::seal::Digest;
use slotwright_core::order::spec::{BadText, SpecError};
use slotwright_core::range::{Key, RangeProblems};
use slotwright_core::units::quantity::Length;
use slotwright_core::words;

use crate::output::{DIFFERS, UNREADABLE};

/// Why a file cannot be read.
#[derive(Debug, thiserror::Error)]
pub(crate) enum ReadFault {
    /// The system says no.
    #[error("{}", reason(.0))]
    System(io::Error),
    /// A folder.
    #[error("this is a folder, not a file")]
    Folder,
    /// Neither a file nor a folder: reading it might never end.
    #[error("this is a pipe or a device, not a file")]
    NoFile,
    /// A file beyond the bound.
    #[error("the file has {bytes} bytes; {most} are the most that is read")]
    TooLarge { bytes: u64, most: u64 },
    /// Standard input beyond the bound.
    #[error("more than {most} bytes came in, the most that is read")]
    TooMuch { most: u64 },
    /// Not UTF-8.
    #[error("not text in UTF-8, from byte {at} on")]
    NotText { at: usize },
    /// Text as some editors save it.
    #[error("this is text in UTF-16; it has to be in UTF-8")]
    Utf16,
    /// Standard input, a second time.
    #[error("standard input was read already, and can be read once only")]
    Again,
}

impl ReadFault {
    /// What to do about it.
    pub(crate) const fn hint(&self) -> &'static str {
        match self {
            Self::System(_) => "is the name right, and may this file be read?",
            Self::Folder => "name a file in it",
            Self::NoFile => "to read what another program prints, name it - and send it to standard input",
            Self::TooLarge { .. } | Self::TooMuch { .. } | Self::NotText { .. } => "is this the file that was meant?",
            Self::Utf16 => "save it again as UTF-8, without a byte order mark",
            Self::Again => "name - for one document, and files for the others",
        }
    }
}

/// Why a file cannot be written.
#[derive(Debug, thiserror::Error)]
pub(crate) enum WriteFault {
    /// The system says no; nothing was changed.
    #[error("{}", reason(.0))]
    System(io::Error),
    /// It says no on the way to standard output or to a device, which cannot be taken back.
    #[error("{}", reason(.0))]
    Begun(io::Error),
    /// Something is there already.
    #[error("there is a file of this name already; nothing was written")]
    Exists,
    /// A folder stands where the file should.
    #[error("this is a folder, not a file")]
    Folder,
    /// A file stands where the folder should.
    #[error("this is a file, not a folder")]
    File,
    /// Something to which writing might never end.
    #[error("this is a pipe or a device, not a file")]
    NoFile,
}

impl WriteFault {
    fn hint(&self) -> &'static str {
        match self {
            Self::System(error) if full(error) => "make room, then try again; nothing of it was kept",
            Self::Begun(error) if full(error) => "make room, then try again; what came out is not all of it",
            Self::System(_) | Self::Begun(_) => "does the folder exist, and may you write there?",
            Self::Exists => "--force writes over it",
            Self::Folder => "name a file in it",
            Self::File => "name a folder; it is made if there is none",
            Self::NoFile => "name a file",
        }
    }
}

/// What the system says, in words where it is usual.
fn reason(error: &io::Error) -> String {
    if full(error) {
        return "the disk is full: not all of it could be written".into();
    }
    match error.kind() {
        io::ErrorKind::NotFound => "there is nothing of this name".into(),
        io::ErrorKind::PermissionDenied => "this is not permitted".into(),
        _ => error.to_string(),
    }
}

fn full(error: &io::Error) -> bool {
    matches!(error.kind(), io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded)
}

/// What can go wrong.
#[derive(Debug, thiserror::Error)]
pub(crate) enum FileError {
    /// A file cannot be read.
    #[error("{path}: {fault}")]
    Read { path: String, fault: ReadFault },
    /// A file cannot be written.
    #[error("{path}: {fault}")]
    Write { path: String, fault: WriteFault },
    /// A JSON file is not what was asked for.
    #[error("{path}: {what}: {error}")]
    Json { path: String, what: &'static str, error: ReadError },
    /// An order that was named for its choice cannot be read.
    #[error("{path}: no order: {error}")]
    Order { path: String, error: SpecError },
    /// An order was made with another range than the one at hand.
    #[error("{path}: this order was made with the range {key} {digest}, not with this one")]
    OtherRange { path: String, key: Key, digest: String },
    /// A range file that something is to be made with has problems.
    #[error("{}", located(path, problems))]
    Range { path: String, problems: RangeProblems },
    /// A range file that was to be validated has problems.
    #[error("{}", located(path, problems))]
    Faulty { path: String, problems: RangeProblems },
    /// A range has no model to begin with.
    #[error("the range has no model that a choice could begin with")]
    NoModel,
    /// A choice names a model that the range lacks.
    #[error("the range has no model {model:?}")]
    OtherModel { model: String, meant: Option<String> },
    /// The unit cannot be ordered.
    #[error("this unit cannot be ordered:\n{}", .0.iter().map(|line| format!("  {line}")).collect::<Vec<_>>().join("\n"))]
    NotOrderable(Vec<String>),
    /// A text of the order cannot stand there.
    #[error(transparent)]
    Text(#[from] BadText),
    /// No rule has that code.
    #[error("no rule has the code {code:?}")]
    NoRule { code: String, meant: Option<String> },
    /// No board has that key.
    #[error("the range has no board {board:?}")]
    NoBoard { board: String, meant: Option<String> },
    /// A board is measured twice.
    #[error("the board \"{0}\" is measured twice")]
    MeasuredTwice(Key),
    /// A batch that is none of its board.
    #[error("{board}: {}", strays(*.mean, *.nominal, *.least, *.most))]
    Strays { board: Key, mean: Length, nominal: Length, least: Length, most: Length },
    /// Work is booked where the range has nothing.
    #[error("{path}: /minutes/{stage}: the range has no such stage")]
    NoStage { path: String, stage: Key, meant: Option<String> },
    /// What is kept is not there.
    #[error("--pin {pin}: this unit has no such bay; it has {bays}")]
    NoBay { pin: Question, bays: usize },
    /// No document has that name.
    #[error("no document has the name {name:?}")]
    NoDocument { name: String, meant: Option<String> },
    /// Nobody reads the output any more.
    #[error("the output was closed")]
    Closed,
}

/// Each problem on a line that begins with the file's name.
fn located(path: &str, problems: &RangeProblems) -> String {
    let lines: Vec<String> = problems.0.iter().map(|problem| format!("{path}:{problem}")).collect();
    lines.join("\n       ")
}

fn strays(mean: Length, nominal: Length, least: Length, most: Length) -> String {
    let [mean, nominal, least, most] = [mean, nominal, least, most].map(|length| words::decimal(length.in_mm(), 3));
    format!("{mean} mm was measured for a board of {nominal} mm; {least} to {most} mm is possible (EN 315)")
}

impl FileError {
    /// What to do about it.
    pub(crate) fn hint(&self) -> Option<String> {
        let or = |meant: &Option<String>, else_: &str| {
            Some(meant.as_ref().map_or_else(|| else_.into(), |meant| format!("did you mean {meant}?")))
        };
        let hint = match self {
            Self::Read { fault, .. } => fault.hint(),
            Self::Write { fault, .. } => fault.hint(),
            Self::Json { what: "no backlog", .. } => "a backlog looks like {\"minutes\": {\"cut\": 600}}",
            Self::Json { .. } => "`slotwright sample` prints choices, `slotwright schema` says what stands where",
            Self::Order { error, .. } => error.hint(),
            Self::OtherRange { .. } => "name the range file of that time with --range, or take the choice out of it",
            Self::Range { .. } | Self::Faulty { .. } => "the demo range web/ranges/fenland.toml documents every key",
            Self::NotOrderable(_) => "`slotwright derive` shows the findings with their remedies",
            Self::NoRule { meant, .. } => return or(meant, "`slotwright explain` lists them"),
            Self::OtherModel { meant, .. } => return or(meant, "`slotwright range` lists its models"),
            Self::NoBoard { meant, .. } => return or(meant, "`slotwright fit` lists its boards"),
            Self::NoStage { meant, .. } => return or(meant, "the range file names its stages"),
            Self::NoDocument { meant, .. } => return or(meant, "`slotwright schema` lists them"),
            Self::MeasuredTwice(_) => "give the eight points of the batch that is to be cut, once",
            Self::Strays { .. } => "is it the right board, and was it measured in millimetres?",
            Self::NoBay { .. } => "bays are counted from the left, from 1",
            Self::Text(_) => "--name, --contact, --address and --remark say what stands on the label",
            Self::NoModel | Self::Closed => return None,
        };
        Some(hint.into())
    }

    /// The exit code.
    pub(crate) const fn code(&self) -> u8 {
        match self {
            Self::NotOrderable(_) | Self::Faulty { .. } => DIFFERS,
            _ => UNREADABLE,
        }
    }

    /// An order of another range.
    pub(crate) fn other_range(path: String, key: &Key, digest: Digest) -> Self {
        Self::OtherRange { path, key: key.clone(), digest: digest.short() }
    }
}
