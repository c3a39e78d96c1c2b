//! `slotwright explain`: a rule's card.

use slotwright_core::rules::Rule;

use crate::args::Explain;
use crate::files::FileError;
use crate::output::{self, GOOD};

pub(super) fn run(asked: &Explain) -> Result<u8, FileError> {
    let Some(code) = &asked.rule else {
        output::print(Rule::ALL.iter().map(|rule| format!("{:14} {}", rule.card().code, rule.card().what)))?;
        return Ok(GOOD);
    };
    let card = Rule::of_code(code).ok_or_else(|| FileError::NoRule(code.clone()))?.card();
    output::print([
        card.code.to_owned(),
        format!("  what    {}", card.what),
        format!("  why     {}", card.why),
        format!("  source  {}", card.source),
    ])?;
    Ok(GOOD)
}
