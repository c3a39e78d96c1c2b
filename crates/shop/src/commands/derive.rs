//! `slotwright derive`: everything that is known about a choice.

use slotwright_core::derive::derive;

use crate::args::Derive;
use crate::files::{self, FileError};
use crate::output::{self, DIFFERS, GOOD};

/// Exit code 1 if something stops the order; the document is printed all the same.
pub(super) fn run(asked: &Derive) -> Result<u8, FileError> {
    let (range, choice, backlog) = files::made(&asked.made)?;
    let range = files::measured(range, &asked.measured)?;
    let document = derive(&range, &choice, asked.today.unwrap_or_else(super::today), &backlog).document();
    output::print([serde_json::to_string_pretty(&document).unwrap_or_default()])?;
    Ok(if document.orderable { GOOD } else { DIFFERS })
}
