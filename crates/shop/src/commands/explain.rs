//! `slotwright explain`: a rule's card, and what the range says of it.

use slotwright_core::rules::Rule;
use slotwright_core::words;

use crate::args::Explain;
use crate::error::FileError;
use crate::inputs;
use crate::nearest::meant;
use crate::output::{self, GOOD};

mod limits;

pub(super) fn run(asked: &Explain) -> Result<u8, FileError> {
    let codes = || Rule::ALL.iter().map(|rule| rule.code());
    let Some(code) = &asked.rule else {
        let widest = codes().map(str::len).max().unwrap_or(0);
        output::print(Rule::ALL.iter().map(|rule| format!("{:widest$} {}", rule.code(), words::card(*rule).what)))?;
        return Ok(GOOD);
    };
    let unknown = || FileError::NoRule { code: code.clone(), meant: meant(code, codes()) };
    let rule = Rule::of_code(code).ok_or_else(unknown)?;
    let (card, range) = (words::card(rule), inputs::range(asked.range.as_deref())?);
    let mut lines = vec![
        rule.code().to_owned(),
        format!("  what    {}", card.what),
        format!("  why     {}", card.why),
        format!("  source  {}", card.source),
    ];
    let limits = limits::of(rule, &range);
    let heads = ["limit "].into_iter().chain(core::iter::repeat("      "));
    lines.extend(heads.zip(limits).map(|(head, limit)| format!("  {head}  {limit}")));
    output::print(lines)?;
    Ok(GOOD)
}
