//! `slotwright options`: the state of every answer to every question.

use schemars::JsonSchema;
use serde::Serialize;
use slotwright_core::change::Change;
use slotwright_core::choice::Choice;
use slotwright_core::options::states::{Reached, State, nearest, reaches, states};
use slotwright_core::options::why::{Why, why_shut};
use slotwright_core::options::{Answer, Options, Run, Size};
use slotwright_core::question::Question;
use slotwright_core::range::Key;

use crate::args::Answers;
use crate::files::{self, FileError};
use crate::output::{self, DIFFERS, GOOD};

/// The states of all answers.
#[derive(Clone, Debug, JsonSchema, Serialize)]
pub(crate) struct OptionsDocument {
    /// Always `slotwright-options`.
    format: &'static str,
    /// Version of this format.
    version: u32,
    /// Key of the range.
    range: Key,
    /// What was picked.
    choice: Choice,
    /// The questions whose answers are never shifted.
    #[schemars(with = "Vec<String>")]
    pins: Vec<Question>,
    /// What has to change for this choice to be made; nothing if it can, none if there is no way.
    nearest: Option<Vec<Change>>,
    /// Every answer to every question but the sizes.
    answers: Options<State>,
    /// Why those are shut that are, as far as that was found out.
    why: Vec<Explained>,
    /// The whole set of the width.
    width: Vec<Run<Reached>>,
    /// The whole set of the height.
    height: Vec<Run<Reached>>,
    /// The whole set of the depth.
    depth: Vec<Run<Reached>>,
}

/// Why an answer is shut.
#[derive(Clone, Debug, JsonSchema, Serialize)]
struct Explained {
    /// The change that would take it.
    change: Change,
    /// Why.
    why: Why,
}

/// Exit code 1 if the choice itself cannot be made; the document is printed all the same.
pub(super) fn run(asked: &Answers) -> Result<u8, FileError> {
    let (range, choice, _) = files::made(&asked.made)?;
    let pins = &asked.pins;
    let Some(answers) = states(&range, &choice, pins) else { return Err(FileError::NoModel) };
    let shut = answers.all().filter(|answer| matches!(answer.state, State::Shut { .. }));
    let why = shut.filter_map(|Answer { change, .. }| {
        why_shut(&range, &choice, change, pins).map(|why| Explained { change: change.clone(), why })
    });
    let why = why.collect();
    let [width, height, depth] = Size::ALL.map(|size| reaches(&range, &choice, size, pins));
    let nearest = nearest(&range, &choice, pins);
    let good = nearest.as_ref().is_some_and(Vec::is_empty);
    let document = OptionsDocument {
        format: "slotwright-options",
        version: 1,
        range: range.key.clone(),
        pins: pins.clone(),
        choice,
        nearest,
        answers,
        why,
        width,
        height,
        depth,
    };
    output::print([serde_json::to_string_pretty(&document).unwrap_or_default()])?;
    Ok(if good { GOOD } else { DIFFERS })
}
