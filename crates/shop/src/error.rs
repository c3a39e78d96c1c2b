//! What can go wrong at the edges of the tool, each with what to do about it.

use std::{fmt, io};

use slotwright_core::choice::link::LinkError;
use slotwright_core::choice::question::Question;
use slotwright_core::input::fault::{NotJson, ReadError};
use slotwright_core::input::seal::Digest;
use slotwright_core::order::spec::{BadText, SpecError};
use slotwright_core::range::{Key, RangeProblems};
use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_core::words::file::{Label, Message};
use slotwright_core::words::pack;
use slotwright_cutpack::pack::NoPack;
use slotwright_cutpack::pack::list::NotAnOffcut;

use crate::output::{DIFFERS, UNREADABLE};

/// Why a file cannot be read.
#[derive(Debug)]
pub(crate) enum ReadFault {
    /// The system says no.
    System(io::Error),
    /// A folder.
    Folder,
    /// Neither a file nor a folder: reading it might never end.
    NoFile,
    /// A file beyond the bound.
    TooLarge { bytes: u64, most: u64 },
    /// Standard input beyond the bound.
    TooMuch { most: u64 },
    /// Not UTF-8.
    NotText { at: usize },
    /// Text as some editors save it.
    Utf16,
    /// Standard input, a second time.
    Again,
}

impl ReadFault {
    /// What to do about it.
    pub(crate) const fn hint(&self) -> Label {
        match self {
            Self::System(_) => Label::IsTheNameRight,
            Self::Folder => Label::NameAFileInIt,
            Self::NoFile => Label::SendItToInput,
            Self::TooLarge { .. } | Self::TooMuch { .. } | Self::NotText { .. } => Label::IsItMeant,
            Self::Utf16 => Label::SaveAsUtf8,
            Self::Again => Label::NameOneInput,
        }
    }
}

impl fmt::Display for ReadFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let text = match self {
            Self::System(error) => reason(error),
            Self::Folder => Label::Folder.text().into(),
            Self::NoFile => Label::NoFile.text().into(),
            Self::TooLarge { bytes, most } => Message::TooLarge { bytes: *bytes, most: *most }.text(),
            Self::TooMuch { most } => Message::TooMuch(*most).text(),
            Self::NotText { at } => Message::NotText(*at).text(),
            Self::Utf16 => Label::Utf16.text().into(),
            Self::Again => Label::ReadAlready.text().into(),
        };
        f.write_str(&text)
    }
}

/// Why a file cannot be written.
#[derive(Debug)]
pub(crate) enum WriteFault {
    /// The system says no; nothing was changed.
    System(io::Error),
    /// It says no on the way to standard output or to a device, which cannot be taken back.
    Begun(io::Error),
    /// Something is there already.
    Exists,
    /// A folder stands where the file should.
    Folder,
    /// A file stands where the folder should.
    File,
    /// Something to which writing might never end.
    NoFile,
}

impl WriteFault {
    fn hint(&self) -> Label {
        match self {
            Self::System(error) if full(error) => Label::MakeRoom,
            Self::Begun(error) if full(error) => Label::MakeRoomNotAll,
            Self::System(_) | Self::Begun(_) => Label::DoesTheFolderExist,
            Self::Exists => Label::ForceWritesOver,
            Self::Folder => Label::NameAFileInIt,
            Self::File => Label::NameAFolder,
            Self::NoFile => Label::NameAFile,
        }
    }
}

impl fmt::Display for WriteFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let text = match self {
            Self::System(error) | Self::Begun(error) => return f.write_str(&reason(error)),
            Self::Exists => Label::Exists,
            Self::Folder => Label::Folder,
            Self::File => Label::NotAFolder,
            Self::NoFile => Label::NoFile,
        };
        f.write_str(text.text())
    }
}

/// What the system says, in words where it is usual.
fn reason(error: &io::Error) -> String {
    if full(error) {
        return Label::DiskFull.text().into();
    }
    match error.kind() {
        io::ErrorKind::NotFound => Label::NothingThere.text().into(),
        io::ErrorKind::PermissionDenied => Label::NotPermitted.text().into(),
        _ => error.to_string(),
    }
}

fn full(error: &io::Error) -> bool {
    matches!(error.kind(), io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded)
}

/// What can go wrong.
#[derive(Debug)]
pub(crate) enum FileError {
    /// A file cannot be read.
    Read { path: String, fault: ReadFault },
    /// A file cannot be written.
    Write { path: String, fault: WriteFault },
    /// A JSON file is not what was asked for.
    Json { path: String, what: Label, error: ReadError },
    /// An order that was named for its choice cannot be read.
    Order { path: String, error: SpecError },
    /// A link cannot be read.
    Link { path: String, error: LinkError },
    /// No link holds so much.
    NoLinkOf { bays: usize },
    /// An order was made with another range than the one at hand.
    OtherRange { path: String, key: Key, digest: String },
    /// A range file that something is to be made with has problems.
    Range { path: String, problems: RangeProblems },
    /// A range file that was to be validated has problems.
    Faulty { path: String, problems: RangeProblems },
    /// A range has no model to begin with.
    NoModel,
    /// A choice names a model that the range lacks.
    OtherModel { model: String, meant: Option<String> },
    /// The unit cannot be ordered.
    NotOrderable(Vec<String>),
    /// A text of the order cannot stand there.
    Text(BadText),
    /// No rule has that code.
    NoRule { code: String, meant: Option<String> },
    /// No board has that key.
    NoBoard { board: String, meant: Option<String> },
    /// A board is measured twice.
    MeasuredTwice(Key),
    /// A batch that is none of its board.
    Strays { board: Key, mean: Length, nominal: Length, least: Length, most: Length },
    /// Work is booked where the range has nothing.
    NoStage { at: String, stage: Key, meant: Option<String>, stages: Vec<String> },
    /// What is kept is not there.
    NoBay { pin: Question, bays: usize },
    /// No document has that name.
    NoDocument { name: String, meant: Option<String> },
    /// A list of offcuts has a line that is none.
    Offcuts { path: String, wrong: NotAnOffcut },
    /// A board that is counted has no such format.
    NoFormat { format: String, meant: Option<String> },
    /// There is no pack.
    NoPack(NoPack),
    /// What is there is no pack, so none takes its place.
    NotAPack { path: String },
    /// A part of an instance fits no sheet.
    FitsNowhere { path: String, item: u32 },
    /// A part of an instance is higher than the strip.
    TooHigh { path: String, item: u32 },
    /// A part of an instance is no simple polygon.
    NoPolygon { path: String, item: u32 },
    /// A part of an instance may be turned otherwise than by quarters.
    NoTurns { path: String, item: u32 },
    /// An instance is out of proportion.
    OutOfProportion { path: String },
    /// A placement that did not pass its check, and what was wrong with it.
    Unsound(String),
    /// Nobody reads the output any more.
    Closed,
}

/// Each problem on a line that begins with the file's name.
fn located(path: &str, problems: &RangeProblems) -> String {
    let lines: Vec<String> = problems.0.iter().map(|problem| format!("{path}:{}", words::problem(problem))).collect();
    lines.join("\n       ")
}

impl fmt::Display for FileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Read { path, fault } => write!(f, "{path}: {fault}"),
            Self::Write { path, fault } => write!(f, "{path}: {fault}"),
            Self::Json { path, what, error } => write!(f, "{path}: {}: {}", what.text(), words::unread(error)),
            Self::Order { path, error } => write!(f, "{path}: {}: {error}", Label::NoOrder.text()),
            Self::Link { path, error } => write!(f, "{path}: {}", words::link::Message::Fault(error).text()),
            Self::NoLinkOf { bays } => f.write_str(&Message::NoLinkOf(*bays).text()),
            Self::OtherRange { path, key, digest } => {
                write!(f, "{path}: {}", Message::OtherRange { key, digest }.text())
            }
            Self::Range { path, problems } | Self::Faulty { path, problems } => f.write_str(&located(path, problems)),
            Self::NoModel => f.write_str(Label::NoModel.text()),
            Self::OtherModel { model, .. } => f.write_str(&Message::OtherModel(model).text()),
            Self::NotOrderable(reasons) => {
                f.write_str(Label::Unorderable.text())?;
                reasons.iter().try_for_each(|line| write!(f, "\n  {line}"))
            }
            Self::Text(bad) => f.write_str(&bad.message().text()),
            Self::NoRule { code, .. } => f.write_str(&Message::NoRule(code).text()),
            Self::NoBoard { board, .. } => f.write_str(&Message::NoBoard(board).text()),
            Self::MeasuredTwice(board) => f.write_str(&Message::MeasuredTwice(board).text()),
            Self::Strays { board, mean, nominal, least, most } => {
                let strays = Message::Strays { mean: *mean, nominal: *nominal, least: *least, most: *most };
                write!(f, "{board}: {}", strays.text())
            }
            Self::NoStage { at, stage, .. } => write!(f, "{at}: {}", Message::NoStage(stage).text()),
            Self::NoBay { pin, bays } => f.write_str(&Message::NoBay { pin: *pin, bays: *bays }.text()),
            Self::NoDocument { name, .. } => f.write_str(&Message::NoDocument(name).text()),
            Self::Offcuts { path, wrong: NotAnOffcut { line, what } } => {
                write!(f, "{path}: {}", pack::Message::Offcut { line: *line, what }.text())
            }
            Self::NoFormat { format, .. } => f.write_str(&Message::NoFormat(format).text()),
            Self::NoPack(none) => f.write_str(&none.text()),
            Self::NotAPack { path } => write!(f, "{path}: {}", pack::Label::NotAPack.text()),
            Self::FitsNowhere { path, item } => write!(f, "{path}: {}", Message::FitsNowhere(*item).text()),
            Self::TooHigh { path, item } => write!(f, "{path}: {}", Message::TooHigh(*item).text()),
            Self::NoPolygon { path, item } => write!(f, "{path}: {}", Message::NoPolygon(*item).text()),
            Self::NoTurns { path, item } => write!(f, "{path}: {}", Message::NoTurns(*item).text()),
            Self::OutOfProportion { path } => write!(f, "{path}: {}", Label::OutOfProportion.text()),
            Self::Unsound(fault) => write!(f, "{} ({fault})", Label::PlacementUnsound.text()),
            Self::Closed => f.write_str(Label::Closed.text()),
        }
    }
}

impl From<BadText> for FileError {
    fn from(bad: BadText) -> Self {
        Self::Text(bad)
    }
}

impl FileError {
    /// What to do about it.
    pub(crate) fn hint(&self) -> Option<String> {
        let or = |meant: &Option<String>, otherwise: Label| {
            Some(meant.as_ref().map_or_else(|| otherwise.text().into(), |meant| Message::Meant(meant).text()))
        };
        let hint = match self {
            Self::Read { fault, .. } => fault.hint(),
            Self::Write { fault, .. } => fault.hint(),
            Self::Json { what: Label::NoBacklog, .. } => Label::BacklogExample,
            Self::Json { what: Label::NoManifest, .. } => Label::ManifestOfAPack,
            Self::Json { what: Label::NoInstance, .. } | Self::OutOfProportion { .. } => Label::InstanceExample,
            Self::FitsNowhere { .. } => Label::PartsThatFit,
            Self::TooHigh { .. } => Label::HigherStrip,
            Self::NoPolygon { .. } => Label::CornersInOrder,
            Self::NoTurns { .. } => Label::QuarterTurns,
            Self::Unsound(_) => Label::TellWhoKeepsThis,
            Self::Json { error: ReadError::NotJson(NotJson::Several { .. }), .. } => Label::OneChoice,
            Self::Json { .. } => Label::ChoicesAndSchemas,
            Self::Order { error, .. } => return Some(error.hint().into()),
            Self::Link { .. } => Label::LinkExample,
            Self::NoLinkOf { .. } => Label::BaysOfALink,
            Self::OtherRange { .. } => Label::RangeOfThatTime,
            Self::Range { .. } | Self::Faulty { .. } => Label::DemoRange,
            Self::NotOrderable(_) => Label::FindingsShown,
            Self::NoRule { meant, .. } => return or(meant, Label::RulesListed),
            Self::OtherModel { meant, .. } => return or(meant, Label::ModelsListed),
            Self::NoBoard { meant, .. } | Self::NoFormat { meant, .. } => return or(meant, Label::BoardsListed),
            Self::NoStage { meant, stages, .. } => return Some(Message::Stages(stages, meant.as_deref()).text()),
            Self::NoDocument { meant, .. } => return or(meant, Label::DocumentsListed),
            Self::MeasuredTwice(_) => Label::OneBatch,
            Self::Strays { .. } => Label::RightBoard,
            Self::NoBay { .. } => Label::BaysCounted,
            Self::Text(_) => Label::OnTheLabel,
            Self::Offcuts { .. } => return Some(pack::Label::OffcutsExample.text().into()),
            Self::NoPack(none) => return Some(none.hint().into()),
            Self::NotAPack { .. } => Label::NameAFolder,
            Self::NoModel | Self::Closed => return None,
        };
        Some(hint.text().into())
    }

    /// The exit code.
    pub(crate) const fn code(&self) -> u8 {
        match self {
            Self::NotOrderable(_) | Self::Faulty { .. } | Self::FitsNowhere { .. } | Self::TooHigh { .. } => DIFFERS,
            _ => UNREADABLE,
        }
    }

    /// An order of another range.
    pub(crate) fn other_range(path: String, key: &Key, digest: Digest) -> Self {
        Self::OtherRange { path, key: key.clone(), digest: digest.short() }
    }
}
