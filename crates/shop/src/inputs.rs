//! What commands are given: ranges, choices or orders, backlogs, measured batches.

use std::collections::BTreeMap;
use std::path::Path;

use slotwright_core::audit::{Audit, audit, faults};
use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::choice::link::{self, Link};
use slotwright_core::input::fault::ReadError;
use slotwright_core::input::members::{Place, parse};
use slotwright_core::order::spec::{self, FORMAT, OrderSpec};
use slotwright_core::range::{Key, Range};
use slotwright_core::words::file;
use slotwright_core::words::tool::Label;

use crate::args::{Batches, Made, Measured};
use crate::error::FileError;
use crate::files;
use crate::nearest::meant;

/// The demo range.
pub(crate) const DEMO: &str = include_str!("../../../web/ranges/fenland.toml");
/// How it is named.
pub(crate) const DEMO_NAME: &str = Label::DemoRange.text();

/// What a command makes something of.
pub(crate) struct Inputs {
    /// The range.
    pub(crate) range: Range,
    /// The choice.
    pub(crate) choice: Choice,
    /// What is booked.
    pub(crate) backlog: Backlog,
    /// The order that the choice was taken from, if it was.
    pub(crate) order: Option<OrderSpec>,
}

/// A range file; the demo range for none.
pub(crate) fn range(path: Option<&Path>) -> Result<Range, FileError> {
    let (path, text) = match path {
        Some(path) => (path.display().to_string(), files::text(path)?),
        None => (DEMO_NAME.into(), DEMO.into()),
    };
    Range::parse(&text).map_err(|_| FileError::Range { path, problems: faults(&text) })
}

/// A range file, with all that is to be said of it.
pub(crate) fn audited(path: &Path) -> Result<Audit, FileError> {
    Ok(audit(&files::text(path)?))
}

/// A range with batches that were measured after its file was written.
pub(crate) fn measured(mut range: Range, batches: &Batches) -> Result<Range, FileError> {
    batches.check(&[&range])?;
    batches.put_into(&mut range);
    Ok(range)
}

impl Batches {
    /// Whether every board is known to a range, measured once, and about as thick as it should be.
    pub(crate) fn check(&self, ranges: &[&Range]) -> Result<(), FileError> {
        for (at, Measured { board, batch }) in self.batches.iter().enumerate() {
            if self.batches.iter().take(at).any(|before| before.board == *board) {
                return Err(FileError::MeasuredTwice(board.clone()));
            }
            let mut known = ranges.iter().filter_map(|range| range.board(board)).peekable();
            if known.peek().is_none() {
                let keys = ranges.iter().flat_map(|range| &range.boards).map(|board| board.key.as_str());
                return Err(FileError::NoBoard { board: board.to_string(), meant: meant(board.as_str(), keys) });
            }
            if let Some((nominal, (mean, least, most))) =
                known.find_map(|known| Some((known.nominal_mm, batch.strays(known.nominal_mm)?)))
            {
                return Err(FileError::Strays { board: board.clone(), mean, nominal, least, most });
            }
        }
        Ok(())
    }

    /// Takes the batches in place of what a range says of its boards; boards of other ranges are none of its own.
    pub(crate) fn put_into(&self, range: &mut Range) {
        for board in &mut range.boards {
            if let Some(measured) = self.batches.iter().find(|measured| measured.board == board.key) {
                board.measure(measured.batch.clone());
            }
        }
    }
}

/// Range, choice and backlog of a command.
pub(crate) fn made(made: &Made) -> Result<Inputs, FileError> {
    let range = range(made.range.as_deref())?;
    let (choice, order) = match &made.choice {
        Some(path) => choice(path, &range)?,
        None => (Choice::first_of(&range).ok_or(FileError::NoModel)?, None),
    };
    let backlog = match &made.backlog {
        Some(path) => backlog(path, &[&range])?,
        None => Backlog::default(),
    };
    Ok(Inputs { range, choice, backlog, order })
}

/// The choice of a link.
fn linked(path: &str, text: &str) -> Result<(Choice, Option<OrderSpec>), FileError> {
    let link = Link::of_link(text).map_err(|error| FileError::Link { path: path.into(), error })?;
    Ok((link.choice, None))
}

/// A choice, that of a link, or that of an order, which has to be of this range: else it would be another unit.
fn choice(path: &Path, range: &Range) -> Result<(Choice, Option<OrderSpec>), FileError> {
    // A file that is there is meant, whatever its name.
    if let Some(given) = path.to_str().filter(|given| link::is_meant(given) && !path.exists()) {
        return linked("--choice", given);
    }
    let shown = || path.display().to_string();
    let text = files::text(path)?;
    if link::is_meant(&text) {
        return linked(&shown(), &text);
    }
    let bad = |error: ReadError| FileError::Json { path: shown(), what: file::Label::NoChoice, error };
    let value = parse(&text).map_err(bad)?;
    if value.get("format").is_none_or(|format| format != FORMAT) {
        return Ok((Choice::read(Place::whole(value)).map_err(bad)?, None));
    }
    let order = spec::read(text.as_bytes()).map_err(|error| {
        let error =
            error.with_change(|order| (order.range.digest == range.digest()).then(|| spec::check(order, range)));
        FileError::Order { path: shown(), error }
    })?;
    if order.range.digest != range.digest() {
        return Err(FileError::other_range(shown(), &order.range.key, order.range.digest));
    }
    Ok((order.choice.clone(), Some(order)))
}

/// A backlog, each of whose stages some range has.
pub(crate) fn backlog(path: &Path, ranges: &[&Range]) -> Result<Backlog, FileError> {
    let text = files::text(path)?;
    let shown = || path.display().to_string();
    let backlog = parse(&text).and_then(|value| Backlog::read(Place::whole(value)));
    let backlog = backlog.map_err(|error| FileError::Json { path: shown(), what: file::Label::NoBacklog, error })?;
    known_stages(&format!("{}: /minutes/", shown()), &backlog.minutes, ranges)?;
    Ok(backlog)
}

/// Whether some range has every stage for which something is booked; how its place begins.
pub(crate) fn known_stages(at: &str, minutes: &BTreeMap<Key, u32>, ranges: &[&Range]) -> Result<(), FileError> {
    let keys = || ranges.iter().flat_map(|range| &range.stages).map(|stage| stage.key.as_str());
    let Some(stage) = minutes.keys().find(|stage| !keys().any(|key| key == stage.as_str())) else {
        return Ok(());
    };
    let mut stages: Vec<String> = Vec::new();
    for key in keys() {
        if !stages.iter().any(|known| known == key) {
            stages.push(key.into());
        }
    }
    let meant = meant(stage.as_str(), keys());
    Err(FileError::NoStage { at: format!("{at}{stage}"), stage: stage.clone(), meant, stages })
}
