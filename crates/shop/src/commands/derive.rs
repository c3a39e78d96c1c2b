//! `slotwright derive`: everything that is known about a choice.

use slotwright_core::order::derive::derive;
use slotwright_core::order::document::Document;

use crate::args::Derive;
use crate::error::FileError;
use crate::inputs;
use crate::output::{self, DIFFERS, GOOD};

/// Exit code 1 if something stops the order; the document is printed all the same.
///
/// An order is derived with its own day and its own backlog, unless others are given.
pub(super) fn run(asked: &Derive) -> Result<u8, FileError> {
    let made = inputs::made(&asked.made)?;
    let range = inputs::measured(made.range, &asked.measured)?;
    let order = made.order.as_ref();
    let today = asked.today.or_else(|| order.map(|order| order.ordered_on)).unwrap_or_else(super::today);
    let own = order.map(|order| &order.backlog).filter(|_| asked.made.backlog.is_none());
    let document = Document::of(&derive(&range, &made.choice, today, own.unwrap_or(&made.backlog)));
    output::document(&document)?;
    Ok(if document.orderable { GOOD } else { DIFFERS })
}
