//! `slotwright order`: writes the order spec of a choice.

use slotwright_core::order::derive::derive;
use slotwright_core::order::spec::{Customer, OrderSpec};
use slotwright_core::words;

use crate::args::Order;
use crate::error::FileError;
use crate::files;
use crate::inputs::{self, Inputs};
use crate::output::{self, GOOD};

pub(super) fn run(asked: &Order) -> Result<u8, FileError> {
    let Inputs { range, choice, backlog, .. } = inputs::made(&asked.made)?;
    let derived = derive(&range, &choice, asked.today, &backlog);
    let Some(orderable) = derived.orderable() else {
        return Err(FileError::NotOrderable(derived.stops().map(words::sentence).collect()));
    };
    let customer =
        Customer { name: asked.name.clone(), contact: asked.contact.clone(), address: asked.address.clone() };
    let text = OrderSpec::new(orderable, customer, asked.remark.clone())?.to_text();
    match &asked.out {
        Some(path) => files::write(path, &text, asked.over.force)?,
        None => output::print([text])?,
    }
    Ok(GOOD)
}
