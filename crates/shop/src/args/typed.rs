//! What is typed as an argument and is more than a text.

use slotwright_core::choice::question::Question;
use slotwright_core::range::{Batch, Key};
use slotwright_core::units::day::Day;
use slotwright_core::words;
use slotwright_core::words::file::{Label, Message};

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
