//! Parts, offcuts and sheets as small pictures.

use slotwright_core::geometry::outline::{Outline, Point};
use slotwright_core::range::Grain;
use slotwright_core::units::quantity::Length;
use slotwright_core::words::paper::Message;

use super::super::draw::mark_place;
use super::super::sheet::{Placed, Sheet};
use crate::paper::pt;
use crate::vector::{Align, Colour, Fill, Mark, Spot, Stroke, Vector, Words, line, outline, rectangle};

/// Between two lines of the grain, on paper.
const GRAIN_MM: f64 = 1.6;

/// A part as it lies on its sheet, its grain as lines, in a frame of that size.
pub(super) fn part(placed: &Placed<'_>, grain: Grain, width: Length, height: Length) -> Vector {
    let (long, high) = placed.size();
    let scale = (width / long).min(height / high);
    let mut vector = Vector::new(long * scale, high * scale);
    let place = |at: Point| Spot::new((at.u - placed.at.u) * scale, (high - (at.v - placed.at.v)) * scale);
    let mut steps = outline(&placed.outline(), place);
    for hole in placed.holes() {
        steps.extend(outline(&hole, place));
    }
    vector.shape(steps.clone(), Some(Fill::of(Colour::WOOD)), None);
    lines(&mut vector, grain);
    vector.shape(steps, None, Some(Stroke::mm(0.2, Colour::INK)));
    vector
}

/// An offcut, its grain to the right, in a frame of that size.
pub(super) fn offcut((along, across): (Length, Length), width: Length, height: Length) -> Vector {
    let scale = (width / along).min(height / across);
    let mut vector = Vector::new(along * scale, across * scale);
    let steps = rectangle(Spot::default(), vector.width, vector.height);
    vector.shape(steps.clone(), Some(Fill::of(Colour::WOOD)), None);
    lines(&mut vector, Grain::Length);
    vector.shape(steps, None, Some(Stroke::mm(0.2, Colour::INK)));
    vector
}

/// Lines of the grain, all over a picture.
fn lines(vector: &mut Vector, grain: Grain) {
    let (right, low, inset) = (vector.width, vector.height, Length::mm(0.8));
    let (lines, far) = if grain == Grain::Length { (low, right - inset) } else { (right, low - inset) };
    let mut at = Length::mm(GRAIN_MM);
    while at < lines {
        let ends = match grain {
            Grain::Length => [Spot::new(inset, at), Spot::new(far, at)],
            Grain::Width => [Spot::new(at, inset), Spot::new(at, far)],
        };
        vector.shape(line(ends[0], ends[1]), None, Some(Stroke::mm(0.1, Colour::WHITE)));
        at += Length::mm(GRAIN_MM);
    }
}

/// A sheet with its parts, their marks, and what is kept of it.
pub(super) fn sheet(sheet: &Sheet<'_>, width: Length, height: Length) -> Vector {
    let scale = (width / sheet.length).min(height / sheet.width);
    let mut vector = Vector::new(sheet.length * scale, sheet.width * scale);
    let place = |at: Point| Spot::new(at.u * scale, (sheet.width - at.v) * scale);
    let whole = Outline::rectangle(Point::default(), Point::new(sheet.length, sheet.width));
    vector.shape(outline(&whole, place), Some(Fill::of(Colour::GROUND)), Some(Stroke::mm(0.25, Colour::SOFT)));
    for kept in &sheet.kept {
        let corner = place(Point::new(kept.from.u, kept.to.v));
        let (long, wide) = kept.size();
        let dashed = Stroke { dashes: [1.6, 1.0, 1.6, 1.0], ..Stroke::mm(0.2, Colour::SOFT) };
        vector.shape(rectangle(corner, long * scale, wide * scale), Some(Fill::of(Colour::WHITE)), Some(dashed));
    }
    for placed in &sheet.placed {
        let mut steps = outline(&placed.outline(), place);
        for hole in placed.holes() {
            steps.extend(outline(&hole, place));
        }
        vector.shape(steps, Some(Fill::of(Colour::WOOD)), Some(Stroke::mm(0.15, Colour::INK)));
    }
    for placed in &sheet.placed {
        let (middle, turned, mark_height) = mark_place(placed);
        let size = (mark_height * scale * 1.6).min(pt(9.0)).max(pt(4.0));
        // Letters stand on a line a third of their height below their middle.
        let (at, below) = (place(middle), size * 0.35);
        let at = if turned { Spot::new(at.x + below, at.y) } else { Spot::new(at.x, at.y + below) };
        vector.marks.push(Mark::Words(Words {
            text: placed.part.mark(),
            at,
            size,
            align: Align::Middle,
            upright: turned,
            colour: Colour::INK,
        }));
    }
    vector
}

/// What the picture of a sheet shows, in words.
pub(super) fn sheet_words(sheet: &Sheet<'_>) -> String {
    Message::SheetPicture(sheet.number, sheet.placed.len()).text()
}
