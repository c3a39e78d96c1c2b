//! Reading a range file: every problem with its place, not just the first.

use toml::de::DeTable;

use super::check::check;
use super::fields::Fields;
use super::read_log::ReadLog;
use super::wrong::Wrong;
use super::{
    Board, BowBuild, Build, Calendar, Carrier, Crew, Cutting, Device, Finish, FitLimits, Handling, HoleKind, Model,
    Moisture, OffcutRules, Plug, Range, Rates, Screen, Stage, Strength,
};
use crate::input::members::shown;

/// Largest range file that is read.
const BYTES_MOST: usize = 256 * 1024;

/// One thing wrong with a range file.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// Line, counted from 1.
    pub line: usize,
    /// Column in characters, counted from 1.
    pub column: usize,
    /// The place in the file's own names: `model.sedge.width_mm.step`.
    pub path: String,
    /// What is wrong.
    pub wrong: Wrong,
}

/// Everything wrong with a range file, in the order of the file.
#[derive(Clone, Debug, PartialEq)]
pub struct RangeProblems(pub Vec<Problem>);

impl Range {
    /// Reads a range file and judges it as a whole.
    ///
    /// # Errors
    ///
    /// Every problem of the file: what cannot be read, and what is wrong with all that can.
    pub fn parse(text: &str) -> Result<Self, RangeProblems> {
        let (range, log) = read(text);
        range.filter(|_| log.problems.is_empty()).ok_or_else(|| located(text, log.problems))
    }

    /// Reads a range file that was judged before, as that is with which a program was built; `None` if it cannot be read.
    pub fn parse_judged(text: &str) -> Option<Self> {
        let (range, log) = unjudged(text);
        range.filter(|_| log.problems.is_empty())
    }
}

/// What can be read of a range file, with all problems; neutral values stand for what cannot.
///
/// No range if the file is too large, or no TOML: what follows such a fault cannot be told from what is wrong.
pub(crate) fn read(text: &str) -> (Option<Range>, ReadLog) {
    let (range, mut log) = unjudged(text);
    if let Some(range) = &range {
        let unread = log.problems.iter().map(|(_, path, _)| path.clone()).collect();
        for (path, wrong) in check(range, unread) {
            log.problems.push((place(&log, &path), path, wrong));
        }
    }
    (range, log)
}

/// The same with the problems of reading alone.
fn unjudged(text: &str) -> (Option<Range>, ReadLog) {
    let mut log = ReadLog::default();
    if text.len() > BYTES_MOST {
        let wrong = Wrong::TooLarge { bytes: text.len(), most: BYTES_MOST };
        log.problems.push((0, String::new(), wrong));
        return (None, log);
    }
    if text.trim().is_empty() {
        log.problems.push((0, String::new(), Wrong::Empty));
        return (None, log);
    }
    let (root, errors) = DeTable::parse_recoverable(text);
    for error in errors {
        let offset = error.span().map_or(0, |span| span.start);
        log.problems.push((offset, String::new(), Wrong::Text(error.message().into())));
    }
    if !log.problems.is_empty() {
        return (None, log);
    }
    (Some(sections(root.into_inner(), &mut log)), log)
}

fn sections(root: DeTable<'_>, log: &mut ReadLog) -> Range {
    let mut fields = Fields::new(root, log);
    let fields = &mut fields;
    let (holes, plugs, note) = (fields.has("hole"), fields.has("plug"), fields.has("note"));
    let (devices, crews) = (fields.has("device"), fields.has("crew"));
    let (format, key, name) = (fields.whole("format", u32::MAX), fields.key("key"), fields.text("name"));
    let workshop = fields.text("workshop");
    let note = if note { fields.text("note") } else { String::new() };
    let currency = fields.text("currency");
    let orders_until = fields.has("orders_until").then(|| fields.day("orders_until"));
    let orders_to = if fields.has("orders_to") { fields.orders_to("orders_to") } else { None };
    let boards = fields.tables("board", Board::read);
    let finishes = fields.tables("finish", Finish::read);
    let holes = if holes { fields.tables("hole", HoleKind::read) } else { Vec::new() };
    let plugs = if plugs { fields.tables("plug", Plug::read) } else { Vec::new() };
    let devices = if devices { fields.tables("device", Device::read) } else { Vec::new() };
    let models = fields.tables("model", Model::read);
    let build = fields.section("build", Build::read);
    let bow = fields.section("bow", BowBuild::read);
    let cutting = fields.section("cutting", Cutting::read);
    let offcuts = fields.section("offcut", OffcutRules::read);
    let strength = fields.section("strength", Strength::read);
    let fit = fields.section("fit", FitLimits::read);
    let moisture = fields.section("moisture", Moisture::read);
    let screen = fields.section("screen", Screen::read);
    let handling = fields.section("handling", Handling::read);
    let rates = fields.section("rates", Rates::read);
    let crews = if crews { fields.tables("crew", Crew::read) } else { Vec::new() };
    let stages = fields.tables("stage", Stage::read);
    let calendar = fields.section("calendar", Calendar::read);
    let carriers = fields.tables("carrier", Carrier::read);
    fields.done();
    Range {
        format,
        key,
        name,
        workshop,
        note,
        currency,
        orders_until,
        orders_to,
        boards,
        finishes,
        holes,
        plugs,
        devices,
        models,
        build,
        bow,
        cutting,
        offcuts,
        strength,
        fit,
        moisture,
        screen,
        handling,
        rates,
        crews,
        stages,
        calendar,
        carriers,
    }
}

/// Where a path stands; the nearest part of it that is in the file.
pub(crate) fn place(log: &ReadLog, path: &str) -> usize {
    let mut path = path;
    loop {
        if let Some(offset) = log.places.get(path) {
            return *offset;
        }
        let Some((shorter, _)) = path.rsplit_once('.') else { return 0 };
        path = shorter;
    }
}

/// Problems with lines and columns, in the order of the file.
pub(crate) fn located(text: &str, problems: Vec<(usize, String, Wrong)>) -> RangeProblems {
    let mut sorted = Vec::new();
    for problem in problems {
        sorted.insert(sorted.partition_point(|(offset, ..): &(usize, _, _)| *offset <= problem.0), problem);
    }
    let problems = sorted.into_iter().map(|(offset, path, wrong)| {
        let before = text.get(..offset).unwrap_or(text);
        let line = before.matches('\n').count() + 1;
        let column = before.rsplit('\n').next().unwrap_or_default().chars().count() + 1;
        Problem { line, column, path: shown(&path), wrong }
    });
    RangeProblems(problems.collect())
}

#[cfg(test)]
mod tests;
