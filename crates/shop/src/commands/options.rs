//! `slotwright options`: the state of every answer to every question.

use schemars::JsonSchema;
use serde::Serialize;
use slotwright_core::change::Change;
use slotwright_core::choice::Choice;
use slotwright_core::finding::{Finding, Question};
use slotwright_core::options::states::{Reached, State, nearest, reaches, states};
use slotwright_core::options::why::{Why, why_shut};
use slotwright_core::options::{Options, Run, Size};
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
    answers: Options<Told>,
    /// The whole set of the width.
    width: Vec<Run<Reached>>,
    /// The whole set of the height.
    height: Vec<Run<Reached>>,
    /// The whole set of the depth.
    depth: Vec<Run<Reached>>,
}

/// Whether an answer can be taken, and why not.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[serde(rename_all = "kebab-case")]
enum Told {
    /// It can be taken now, and nothing else changes.
    Open,
    /// It can be taken together with other changes.
    Shifts {
        /// What stops it alone.
        reason: Finding,
        /// The smallest set of other changes that it needs, the least important ones of their number, in
        /// the order in which they are done.
        changes: Vec<Change>,
    },
    /// It cannot be had.
    Shut {
        /// What stops it alone.
        reason: Finding,
        /// Whether every other answer was ruled out; if not, the search was given up.
        proven: bool,
        /// Why; none if that was not found out.
        why: Option<Why>,
    },
}

/// Exit code 1 if the choice itself cannot be made; the document is printed all the same.
pub(super) fn run(asked: &Answers) -> Result<u8, FileError> {
    let (range, choice, _) = files::made(&asked.made)?;
    let pins = &asked.pins;
    let Some(answers) = states(&range, &choice, pins) else { return Err(FileError::NoModel) };
    let answers = answers.map(|change, state| match state {
        State::Open => Told::Open,
        State::Shifts { reason, changes } => Told::Shifts { reason, changes },
        State::Shut { reason, proven } => {
            let why = why_shut(&range, &choice, change, pins);
            Told::Shut { reason, proven: proven || why.is_some(), why }
        }
    });
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
        width,
        height,
        depth,
    };
    output::print([serde_json::to_string_pretty(&document).unwrap_or_default()])?;
    Ok(if good { GOOD } else { DIFFERS })
}
