//! `slotwright assembly`: how a unit goes together, step by step, with pictures.

use schemars::JsonSchema;
use serde::Serialize;
use slotwright_core::choice::Choice;
use slotwright_core::order::derive::{Derived, derive};
use slotwright_core::order::document::{DisturbedDocument, Document, StepDocument};
use slotwright_core::range::Key;
use slotwright_core::words;
use slotwright_cutpack::picture::{self, StepPicture};

use crate::args::Assembly;
use crate::error::FileError;
use crate::files;
use crate::inputs::{self, Inputs};
use crate::output::{self, GOOD};

/// No unit has more steps: a part each (six bays of twelve shelves, seven uprights and stiles, the back, three plates),
/// and the last one.
const STEPS_MOST: u32 = 91;

/// How a unit goes together, with a picture for each step.
#[derive(Clone, Debug, JsonSchema, Serialize)]
pub(crate) struct AssemblySheet {
    /// Always `slotwright-assembly`.
    format: &'static str,
    /// Version of this format.
    version: u32,
    /// Key of the range.
    range: Key,
    /// What was picked.
    choice: Choice,
    /// Mass of the whole.
    mass_g: i64,
    /// Width of every picture on paper.
    picture_width_mm: f64,
    /// Height of every picture on paper.
    picture_height_mm: f64,
    /// How high over the floor the part reaches that is lifted highest.
    reaches_mm: f64,
    /// The steps in order, one for each part.
    steps: Vec<PicturedStep>,
    /// What to do when all parts are in.
    last_step: LastStep,
    /// What comes free when the unit does not stand as it should.
    disturbed: Vec<DisturbedDocument>,
    /// What everybody who puts it together should know.
    #[schemars(with = "Vec<String>")]
    cautions: [&'static str; 2],
}

/// One part going in, with its picture.
#[derive(Clone, Debug, JsonSchema, Serialize)]
pub(crate) struct PicturedStep {
    /// Which step it is, from 1.
    number: u32,
    /// How many there are.
    of: u32,
    /// The step's figures and its sentence.
    #[serde(flatten)]
    step: StepDocument,
    /// The picture: SVG.
    svg: String,
}

/// The last step, when all parts are in, with its picture.
#[derive(Clone, Debug, JsonSchema, Serialize)]
pub(crate) struct LastStep {
    /// Which step it is: the last one.
    number: u32,
    /// How many there are.
    of: u32,
    /// Whether the unit is fastened to the wall in it.
    tethered: bool,
    /// What to do.
    sentence: String,
    /// The picture: SVG.
    svg: String,
}

/// Only a unit that can be made is written.
pub(super) fn run(asked: &Assembly) -> Result<u8, FileError> {
    let Inputs { range, choice, backlog, .. } = inputs::made(&asked.made)?;
    let range = inputs::measured(range, &asked.measured)?;
    let derived = derive(&range, &choice, super::any_day(&range), &backlog);
    let sheet = sheet(&derived)?;
    let text = serde_json::to_string_pretty(&sheet).unwrap_or_default();
    let Some(folder) = &asked.out else {
        output::print([text])?;
        return Ok(GOOD);
    };
    let force = asked.over.force;
    files::folder(folder)?;
    let picture = |number: u32| folder.join(format!("step-{number:02}.svg"));
    // All of it or nothing: the pictures of two units are no sheet.
    let document = folder.join("assembly.json");
    files::free(&document, force)?;
    (1..=STEPS_MOST).try_for_each(|number| files::free(&picture(number), force))?;
    files::write(&document, text + "\n", force)?;
    let last = &sheet.last_step;
    let steps = sheet.steps.iter().map(|step| (step.number, &step.svg));
    for (number, svg) in steps.chain([(last.number, &last.svg)]) {
        files::write(&picture(number), svg, force)?;
    }
    // A unit of more parts may have been written here before: its last pictures belong to no step.
    (last.number + 1..=STEPS_MOST).try_for_each(|number| files::remove(&picture(number)))?;
    Ok(GOOD)
}

fn sheet(derived: &Derived<'_>) -> Result<AssemblySheet, FileError> {
    let reasons: Vec<String> = derived.stops().map(words::sentence).collect();
    let made = derived.built.as_ref().zip(derived.assembly.as_ref());
    let (Some((built, assembly)), Some(document), true) = (made, Document::of(derived).built, reasons.is_empty())
    else {
        return Err(FileError::NotOrderable(reasons));
    };
    let tethered = derived.is_tethered();
    let mut pictures = picture::steps(built, assembly, tethered);
    let Some(StepPicture { number, of, sentence, svg, width_mm, height_mm, .. }) = pictures.pop() else {
        return Err(FileError::NotOrderable(reasons));
    };
    let pictured = |(step, StepPicture { number, of, svg, .. })| PicturedStep { number, of, step, svg };
    Ok(AssemblySheet {
        format: "slotwright-assembly",
        version: 2,
        range: derived.range.key.clone(),
        choice: derived.choice.clone(),
        mass_g: document.mass_g,
        picture_width_mm: hundredths(width_mm),
        picture_height_mm: hundredths(height_mm),
        reaches_mm: document.assembly.reaches_mm,
        steps: document.assembly.steps.into_iter().zip(pictures).map(pictured).collect(),
        last_step: LastStep { number, of, tethered, sentence, svg },
        disturbed: document.assembly.disturbed,
        cautions: document.assembly.cautions,
    })
}

/// Millimetres as documents show them.
fn hundredths(mm: f64) -> f64 {
    (mm * 100.0).round() / 100.0
}
