//! `slotwright options`: the state of every answer to every question.

use schemars::JsonSchema;
use serde::Serialize;
use slotwright_core::choice::Choice;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::range::{Key, Range};
use slotwright_core::solver::states::{Reach, Reached, State, nearest, reaches, state, states};
use slotwright_core::solver::why::{Why, why_shut};
use slotwright_core::solver::{Answer, Options, Run, Size};

use crate::args::Answers;
use crate::error::FileError;
use crate::inputs::{self, Inputs};
use crate::nearest::meant;
use crate::output::{self, DIFFERS, GOOD};

mod text;

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
    width: Vec<SizeRun>,
    /// The whole set of the height.
    height: Vec<SizeRun>,
    /// The whole set of the depth.
    depth: Vec<SizeRun>,
    /// The whole set of the rise of bowed ends; 0 is square ends.
    bow: Vec<SizeRun>,
}

/// A run of neighbouring sizes.
#[derive(Clone, Debug, JsonSchema, Serialize)]
struct SizeRun {
    /// From where to where, and how far they can be reached.
    #[serde(flatten)]
    run: Run<Reached>,
    /// What else has to change for the first of them, if they need other changes.
    #[serde(skip_serializing_if = "Option::is_none")]
    changes: Option<Vec<Change>>,
}

/// Why an answer is shut.
#[derive(Clone, Debug, JsonSchema, Serialize)]
struct Explained {
    /// The change that would take it.
    change: Change,
    /// Why.
    why: Why,
}

/// Exit code 1 if the choice itself cannot be made; the answers are printed all the same.
pub(super) fn run(asked: &Answers) -> Result<u8, FileError> {
    let Inputs { range, choice, .. } = inputs::made(&asked.made)?;
    let pins = &asked.pins;
    if let Some(pin) = pins.iter().find(|pin| !choice.has(**pin)) {
        return Err(FileError::NoBay { pin: *pin, bays: choice.bays.len() });
    }
    let Some(answers) = states(&range, &choice, pins) else {
        let (model, known) = (choice.model.as_str(), range.models.iter().map(|model| model.key.as_str()));
        return Err(FileError::OtherModel { model: model.into(), meant: meant(model, known) });
    };
    let [width, height, depth, bow] = Size::ALL.map(|size| sizes(&range, &choice, size, pins));
    let shut = answers.all().filter(|answer| matches!(answer.state, State::Shut { .. }));
    let shut = shut.map(|Answer { change, .. }| change.clone());
    let shut_sizes = Size::ALL.iter().zip([&width, &height, &depth, &bow]).flat_map(|(size, runs)| {
        runs.iter().filter(|run| run.run.state.reach == Reach::Shut).map(|run| size.to(run.run.from))
    });
    let why = shut
        .chain(shut_sizes)
        .filter_map(|change| why_shut(&range, &choice, &change, pins).map(|why| Explained { change, why }));
    let why = why.collect();
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
        bow,
    };
    if asked.json {
        output::document(&document)?;
    } else {
        output::print(text::lines(&range, &document))?;
    }
    Ok(if good { GOOD } else { DIFFERS })
}

/// The whole set of a size, with what else has to change.
fn sizes(range: &Range, choice: &Choice, size: Size, pins: &[Question]) -> Vec<SizeRun> {
    let changes = |run: &Run<Reached>| match state(range, choice, &size.to(run.from), pins) {
        Some(State::Shifts { changes, .. }) => Some(changes),
        _ => None,
    };
    reaches(range, choice, size, pins).into_iter().map(|run| SizeRun { changes: changes(&run), run }).collect()
}
