//! What the help of a command says at length, and below its arguments.

use slotwright_core::words::help::Label;

use crate::output::{DIFFERS, GOOD, UNREADABLE};

/// What a command does, in a line and then the rest.
pub(super) fn long(line: Label, more: Label) -> String {
    format!("{}.\n\n{}", line.text(), more.text())
}

/// What stands below the arguments of a command: how it is called, and what its exit codes say.
pub(super) fn below(examples: &[&str], good: Label, differs: Option<Label>) -> String {
    below_with(examples, good, differs, Label::NotUsable)
}

/// The same where nothing comes of more than what cannot be used.
pub(super) fn below_with(examples: &[&str], good: Label, differs: Option<Label>, unusable: Label) -> String {
    let codes = [(GOOD, Some(good)), (DIFFERS, differs), (UNREADABLE, Some(unusable))];
    let codes = codes.into_iter().filter_map(|(code, label)| Some(format!("  {code}  {}", label?.text())));
    let codes = core::iter::once(Label::ExitCodes.text().into()).chain(codes).collect::<Vec<String>>();
    let examples = examples.iter().map(|example| format!("  {example}\n"));
    let examples = core::iter::once(format!("{}\n", Label::Examples.text())).chain(examples).collect::<Vec<_>>();
    let examples = if examples.len() > 1 { examples.concat() + "\n" } else { String::new() };
    examples + &codes.join("\n")
}
