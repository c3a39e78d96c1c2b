//! `slotwright explain`: a rule's card, and what the range says of it.

use slotwright_core::rules::Rule;
use slotwright_core::words;
use slotwright_core::words::tool::Label;

use crate::args::Explain;
use crate::error::FileError;
use crate::inputs;
use crate::nearest::meant;
use crate::output::{self, GOOD};
use crate::table;

mod limits;

pub(super) fn run(asked: &Explain) -> Result<u8, FileError> {
    let range = inputs::range(asked.range.as_deref())?;
    let codes = || Rule::ALL.iter().map(|rule| rule.code());
    let Some(code) = &asked.rule else {
        let widest = codes().map(str::len).max().unwrap_or(0);
        output::print(Rule::ALL.iter().map(|rule| format!("{:widest$} {}", rule.code(), words::card(*rule).what)))?;
        return Ok(GOOD);
    };
    let unknown = || FileError::NoRule { code: code.clone(), meant: meant(code, codes()) };
    let rule = Rule::of_code(code).ok_or_else(unknown)?;
    let card = words::card(rule);
    let told = [(Label::What, card.what), (Label::Why, card.why), (Label::Source, card.source)];
    let mut rows = told.map(|(head, text)| [head.text().to_owned(), text.to_owned()]).to_vec();
    let heads = core::iter::once(Label::Limit.text()).chain(core::iter::repeat(""));
    rows.extend(heads.zip(limits::of(rule, &range)).map(|(head, limit)| [head.to_owned(), limit]));
    output::print(core::iter::once(rule.code().to_owned()).chain(table::lines("  ", &rows)))?;
    Ok(GOOD)
}
