//! What is typed as an argument and is more than a text.

use std::time::Duration;

use slotwright_core::choice::question::Question;
use slotwright_core::range::{Batch, Key};
use slotwright_core::units::day::Day;
use slotwright_core::words::file::{Label, Message};
use slotwright_core::words::{self, pack};
use slotwright_cutpack::pack::nest::SheetsInStock;
use slotwright_cutpack::pack::papers::Papers;
use slotwright_cutpack::pack::work::read_time;
use slotwright_cutpack::paper::{Format, Labels};

/// The measured batch of a board.
#[derive(Clone, Debug)]
pub(crate) struct Measured {
    /// The board.
    pub(crate) board: Key,
    /// Its batch.
    pub(crate) batch: Batch,
}

/// Reads a measured batch.
pub(super) fn measured(text: &str) -> Result<Measured, String> {
    let (board, points) = text.split_once('=').ok_or(Label::PointsMissing.text())?;
    let board = board.trim().parse().map_err(|wrong| Message::Key(&wrong).text())?;
    Ok(Measured { board, batch: points.parse().map_err(|wrong| Message::Batch(&wrong).text())? })
}

/// Reads a day.
pub(super) fn day(text: &str) -> Result<Day, String> {
    text.parse().map_err(|wrong| words::no_day(&wrong))
}

/// Reads how long to search.
pub(super) fn seconds(text: &str) -> Result<Duration, &'static str> {
    let seconds = text.parse().ok().filter(|seconds| (0.0..=3600.0).contains(seconds));
    seconds.and_then(|seconds| Duration::try_from_secs_f64(seconds).ok()).ok_or(Label::NotSeconds.text())
}

/// Reads a question.
pub(super) fn question(text: &str) -> Result<Question, String> {
    text.parse().map_err(|wrong| Message::Question(&wrong).text())
}

/// The address of a page without its fragment.
pub(super) fn page(text: &str) -> Result<String, &'static str> {
    let address = text.split('#').next().unwrap_or_default();
    let begins =
        ["http://", "https://"].iter().any(|scheme| address.len() > scheme.len() && address.starts_with(scheme));
    let plain = address.bytes().all(|byte| byte.is_ascii_graphic());
    if begins && plain { Ok(address.into()) } else { Err(Label::NotAPage.text()) }
}

/// Reads how many sheets of a format there are.
pub(super) fn sheets(text: &str) -> Result<SheetsInStock, String> {
    let read = text.split_once('=').and_then(|(format, count)| {
        let (board, sheet) = format.split_once('/')?;
        Some(SheetsInStock { board: board.parse().ok()?, sheet: sheet.parse().ok()?, count: count.parse().ok()? })
    });
    read.ok_or_else(|| pack::Message::SheetsWanted(text).text())
}

/// Reads how long work is booked at a stage, in minutes.
pub(super) fn booked(text: &str) -> Result<(Key, u32), String> {
    let read = text.split_once('=').and_then(|(stage, time)| Some((stage.trim().parse().ok()?, time)));
    let (stage, time) = read.ok_or_else(|| pack::Message::BookedWanted(text).text())?;
    Ok((stage, read_time(time)?))
}

/// Reads on which paper documents are.
pub(super) fn paper(text: &str) -> Result<Format, String> {
    named(text, &Papers::FORMATS)
}

/// Reads on which labels.
pub(super) fn label_sheet(text: &str) -> Result<Labels, String> {
    named(text, &Papers::LABELS)
}

/// Finds something by its name.
fn named<T: Copy>(text: &str, known: &[(&str, T)]) -> Result<T, String> {
    let found = known.iter().find(|(name, _)| *name == text).map(|(_, thing)| *thing);
    let names = || known.iter().map(|(name, _)| *name).collect::<Vec<_>>();
    found.ok_or_else(|| pack::Message::OneOf(&names()).text())
}
