//! `slotwright link`: a choice as the link that opens the page with it.

use slotwright_core::choice::link::{self, Link, Made, Mark};
use slotwright_core::order::derive::derive;

use crate::args;
use crate::error::FileError;
use crate::inputs;
use crate::output::{self, DIFFERS, GOOD};

/// Exit code 1 if something stops the order; the link is printed all the same, without a price.
pub(super) fn run(asked: &args::Link) -> Result<u8, FileError> {
    let inputs::Inputs { range, choice, backlog, order } = inputs::made(&asked.made)?;
    if !link::can_be_read(&choice) {
        return Err(FileError::NoLinkOf { bays: choice.bays.len() });
    }
    let today = asked.today.or_else(|| order.as_ref().map(|order| order.ordered_on)).unwrap_or_else(super::today);
    let derived = derive(&range, &choice, today, &backlog);
    let built = derived.built.as_ref().filter(|_| derived.orderable().is_some());
    let made = built.map(|built| Made { range: Mark::of(&range), price: built.price.total_minor });
    let code = if made.is_some() { GOOD } else { DIFFERS };
    let link = Link { choice: choice.clone(), made }.to_link();
    output::print([[asked.page.as_deref().unwrap_or_default(), "#", &link].concat()])?;
    Ok(code)
}
