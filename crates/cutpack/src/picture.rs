//! Pictures of the assembly: for each step an isometric line drawing with hidden lines removed. The parts
//! that stand are thin lines; the part that goes in has a tone and a heavy rim, is drawn back along its
//! moves, and an arrow for each shows the way. The last picture has the whole unit; where it is fastened to the wall, that is
//! drawn too. Broken rings on the back show where tethers go behind it; a strip before a door is its card, there until the top is on.
//! Of a part that goes in behind others and hardly shows, the hidden rim is drawn too, dashed, and the lines that guide it as far as
//! its place.
//!
//! All pictures of a unit have one scale and one frame, so that they read as a series. Sizes are
//! millimetres of paper. Classes name the thing (`stands`, `goes-in`, `rim`, `hidden-rim`, `tone`, `guide`, `arrow`); lines
//! are drawn in the text's colour, or in black where there is none; a style may set others by class.

use core::ops::Range;

use slotwright_core::business::built::Built;
use slotwright_core::cabinet::assembly::{Assembly, Step};
use slotwright_core::rules::tether::Tethers;
use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_core::words::picture::StepTitle;

mod arrow;
mod beside;
mod content;
mod hidden;
mod ink;
mod last;
mod shape;
mod sheet;
mod tone;
mod view;

use arrow::Run;
use beside::Beside;
use hidden::{Drawn, hide};
use shape::Shape;
use sheet::{Content, Frame, Layer};
use view::Bounds;

use crate::vector::Vector;

/// A step of the assembly with its picture.
#[derive(Clone, Debug)]
pub struct StepPicture<'a> {
    /// Which step it is, from 1.
    pub number: u32,
    /// How many there are.
    pub of: u32,
    /// The part that goes in; none in the last step, when all parts are in.
    pub step: Option<&'a Step>,
    /// What to do, in one sentence.
    pub sentence: String,
    /// The picture.
    pub svg: String,
    /// Its width on paper in millimetres, the same for all steps.
    pub width_mm: f64,
    /// Its height.
    pub height_mm: f64,
    layers: Vec<Layer>,
}

impl StepPicture<'_> {
    /// The same picture as a list of lines and areas, for documents.
    pub fn vector(&self) -> Vector {
        sheet::vector(&self.layers, [self.width_mm, self.height_mm])
    }
}

/// The pictures of all steps, in order, with a unit that is fastened to the wall in the last one or one that is not.
/// Empty if the unit has no steps.
pub fn steps<'a>(built: &Built, assembly: &'a Assembly, tethered: bool) -> Vec<StepPicture<'a>> {
    drawn(built, assembly, tethered, 0..usize::MAX)
}

/// The picture of one step, counted from 0; none if there is no such step.
pub fn step<'a>(built: &Built, assembly: &'a Assembly, tethered: bool, at: usize) -> Option<StepPicture<'a>> {
    drawn(built, assembly, tethered, at..at.checked_add(1)?).pop()
}

/// The picture of the whole unit without a wall, as large as a step's may be; none of a unit without steps.
pub fn whole(built: &Built, assembly: &Assembly) -> Option<Vector> {
    let parts = parts(built, assembly);
    let bounds = parts.iter().fold(Bounds::NONE, |all, part| all.with(part.placed.bounds));
    let frame = Frame::around(bounds)?;
    let mut standing = Vec::new();
    for (at, part) in parts.iter().enumerate() {
        stand(&mut standing, part, parts.get(..at).unwrap_or_default());
    }
    Some(sheet::vector(&frame.layers(&last::content(&parts, standing, None)), frame.size))
}

/// A part in its place and where it is drawn before it goes in.
#[derive(Debug)]
struct Part<'a> {
    step: &'a Step,
    runs: Vec<Run>,
    placed: Shape,
    lifted: Shape,
}

/// The pictures of the steps that are wanted. What hides a line that stands goes on hiding it, so every
/// step only takes away from what the one before it left.
fn drawn<'a>(built: &Built, assembly: &'a Assembly, tethered: bool, wanted: Range<usize>) -> Vec<StepPicture<'a>> {
    let parts = parts(built, assembly);
    let wall = tethered.then(|| last::wall(size(built)));
    let tethers = tethered.then(|| Tethers::of(&built.layout, &built.cut.case)).flatten();
    let Some(frame) = Frame::around(bounds(&parts, wall.as_ref())) else { return Vec::new() };
    let number = |at: usize| u32::try_from(at).unwrap_or(u32::MAX);
    let of = number(assembly.count());
    let picture = |at: usize, step: Option<&'a Step>, content: &Content| {
        let sentence = step.map_or_else(|| words::last_step(tethered), |step| words::step(step, tethers));
        let number = number(at).saturating_add(1);
        let title = StepTitle { number, of, part: step.map(|step| step.part) }.text();
        let [width_mm, height_mm] = frame.size;
        let layers = frame.layers(content);
        let svg = sheet::svg(&layers, frame.size, &title, &sentence);
        StepPicture { number, of, step, sentence, svg, width_mm, height_mm, layers }
    };
    let mut standing: Vec<Drawn> = Vec::new();
    let mut pictures = Vec::new();
    for (at, part) in parts.iter().enumerate().take(wanted.end) {
        let before = parts.get(..at).unwrap_or_default();
        if wanted.contains(&at) {
            let beside = Beside::of(&built.cut.case, tethers, part, before);
            pictures.push(picture(at, Some(part.step), &content::of(part, before, &standing, &beside, frame.scale)));
        }
        stand(&mut standing, part, before);
    }
    if wanted.contains(&parts.len()) {
        pictures.push(picture(parts.len(), None, &last::content(&parts, standing, wall.as_ref())));
    }
    pictures
}

/// A part stands with those that stood before it.
fn stand(standing: &mut Vec<Drawn>, part: &Part<'_>, before: &[Part<'_>]) {
    hide(standing, &part.placed);
    let own = lines(&part.placed, before.iter().map(|other| &other.placed).chain([&part.placed]));
    standing.extend(own.into_iter().filter(|line| !line.seen.is_empty()));
}

/// Width, depth and height of the unit.
fn size(built: &Built) -> [f64; 3] {
    let layout = &built.layout;
    [layout.width, layout.depth, layout.height].map(Length::in_mm)
}

fn parts<'a>(built: &Built, assembly: &'a Assembly) -> Vec<Part<'a>> {
    let size = size(built);
    let steps = assembly.steps.iter();
    let parts = steps.filter_map(|step| {
        let placed = Shape::of(built.cut.case.panel(step.part)?);
        let runs = arrow::runs(step, size);
        let lifted = placed.moved(arrow::back(&runs));
        Some(Part { step, runs, placed, lifted })
    });
    parts.collect()
}

/// What all pictures show together.
fn bounds(parts: &[Part<'_>], wall: Option<&Shape>) -> Bounds {
    let parts = parts.iter().fold(Bounds::NONE, |all, part| all.with(part.placed.bounds).with(part.lifted.bounds));
    wall.map_or(parts, |wall| parts.with(wall.bounds))
}

/// The lines of a shape that none of the others hides.
fn lines<'a>(shape: &Shape, behind: impl Iterator<Item = &'a Shape>) -> Vec<Drawn> {
    let mut lines: Vec<Drawn> = shape.lines.iter().map(|line| Drawn::whole(*line)).collect();
    behind.for_each(|other| hide(&mut lines, other));
    lines
}

#[cfg(test)]
mod tests;
