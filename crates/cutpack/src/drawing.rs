//! The technical drawing of a unit as SVG: front elevation, plan and section, with dimensions.
//!
//! Coordinates are millimetres. Classes name the thing (`wood`, `edge`, `cut`, `dim`) for the page's style;
//! attributes give plain colours, so that any viewer shows it. The section stands to the right of the elevation at the same height, the
//! plan below it at the same width, its front edge downwards (common practice in joinery shops).

use slotwright_core::business::built::Built;
use slotwright_core::choice::Choice;
use slotwright_core::range::{Finish, Range};

use crate::vector::Vector;

mod bow;
mod front;
mod pen;
mod plan;
mod section;
mod trace;
mod wood;
mod write;

use pen::Pen;
pub(crate) use write::escaped;

/// What a drawing is made from.
#[derive(Clone, Copy, Debug)]
pub struct Subject<'a> {
    /// The range.
    pub range: &'a Range,
    /// What was picked.
    pub choice: &'a Choice,
    /// What it comes to.
    pub built: &'a Built,
}

/// What is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum View {
    /// Elevation, section and plan on one sheet.
    Sheet,
    /// From the front.
    Front,
    /// Cut level below the top, seen from above.
    Plan,
    /// Cut from front to back through a bay, seen from its left.
    Section,
}

/// Which bay is looked at: it is lit up, and the section goes through it; counted from 0.
pub type Lit = usize;

/// No bay has that number.
const NONE_LIT: Lit = usize::MAX;

/// A pixel on paper in millimetres. Source: CSS Values and Units, 1 in = 96 px.
const PX_MM: f64 = 25.4 / 96.0;

/// From elevation to section on a sheet, in pixels of the screen.
const BESIDE_PX: f64 = 40.0;
/// From elevation to plan: two rows of dimension lines.
const BELOW_PX: f64 = 74.0;

/// Draws a view. `mm_per_px` is how many millimetres one pixel of the screen shows, so that text
/// keeps its size; `title` is the text alternative.
pub fn svg(subject: Subject<'_>, view: View, lit: Lit, mm_per_px: f64, title: &str) -> String {
    drawn(subject, view, lit, mm_per_px).done(title, None)
}

/// The same with its wood: plies in edges and cuts, grain on faces.
pub fn svg_with_wood(subject: Subject<'_>, view: View, lit: Lit, mm_per_px: f64, title: &str) -> String {
    let mut pen = Pen::new(mm_per_px);
    pen.shows_wood = true;
    draw(&mut pen, subject, view, lit);
    pen.done(title, None)
}

/// The same for paper: one millimetre of it shows `scale` of the unit. No bay is lit; the section goes through the
/// first.
pub fn svg_to_scale(subject: Subject<'_>, view: View, scale: u32, title: &str) -> String {
    let scale = f64::from(scale);
    drawn(subject, view, NONE_LIT, scale * PX_MM).done(title, Some(scale))
}

/// The same as a list of lines and areas, for documents.
pub fn to_scale(subject: Subject<'_>, view: View, scale: u32) -> Vector {
    let scale = f64::from(scale);
    trace::traced(&drawn(subject, view, NONE_LIT, scale * PX_MM), scale)
}

fn drawn(subject: Subject<'_>, view: View, lit: Lit, mm_per_px: f64) -> Pen {
    let mut pen = Pen::new(mm_per_px);
    draw(&mut pen, subject, view, lit);
    pen
}

fn draw(pen: &mut Pen, subject: Subject<'_>, view: View, lit: Lit) {
    let layout = &subject.built.layout;
    let bow_row = if bow::is_bowed(subject) { BOW_ROW_PX } else { 0.0 };
    let (beside, below) = (pen.px(BESIDE_PX), pen.px(BELOW_PX + bow_row));
    // The section goes through the first bay where none is lit.
    let through = if lit < layout.bays.len() { lit } else { 0 };
    match view {
        View::Front => front::draw(pen, subject, lit, true),
        View::Plan => plan::draw(pen, subject, lit, true),
        View::Section => section::draw(pen, subject, through, true),
        View::Sheet => {
            front::draw(pen, subject, lit, false);
            pen.shift(layout.width.in_mm() + beside, 0.0);
            section::draw(pen, subject, through, false);
            pen.shift(0.0, layout.height.in_mm() + below);
            plan::draw(pen, subject, lit, false);
        }
    }
}

/// The unit from the front as a small picture in its colour, without figures and without words: it stands beside them.
pub fn thumbnail(subject: Subject<'_>) -> String {
    let mut pen = Pen::new(THUMBNAIL);
    front::unit(&mut pen, subject, None);
    let finish = subject.range.finish(&subject.choice.finish);
    let colour = finish.map_or("#ffffff", |finish| finish.colour.as_str());
    pen.small(colour, finish.is_some_and(is_dark))
}

/// Whether lines on a finish have to be light.
pub fn is_dark(finish: &Finish) -> bool {
    finish.luminance() < DARK
}

/// Below that luminance dark lines are not seen: there is less than 2:1 between them.
const DARK: f64 = 0.07;

/// Millimetres in a pixel of a small picture.
const THUMBNAIL: f64 = 10.0;

/// So many millimetres of the unit go into a pixel for a view to fill that room in pixels: its texts then have their
/// size.
pub fn scale(subject: Subject<'_>, view: View, room: (f64, f64)) -> f64 {
    let ((wide, high), (aside, above)) = (extent(subject, view), margins(subject, view));
    let least = |room: f64, taken: f64| (room - taken).max(LEAST_PX);
    (wide / least(room.0, aside)).max(high / least(room.1, above))
}

/// The row of dimension lines that bowed ends have behind the plan.
const BOW_ROW_PX: f64 = 22.0;

/// What a figure of three digits takes beside its line, with a gap.
const BESIDE_PLINTH_PX: f64 = 36.0;

/// However small a room, the unit has so many pixels of it.
const LEAST_PX: f64 = 60.0;

/// Width and height of a view in millimetres, all that keeps its size on the screen left out.
pub fn extent(subject: Subject<'_>, view: View) -> (f64, f64) {
    let layout = &subject.built.layout;
    let (width, depth, height) = (layout.width.in_mm(), layout.depth.in_mm(), layout.height.in_mm());
    let down = depth + plan::swings(subject);
    match view {
        View::Front => (width, height),
        View::Plan => (width, down),
        View::Section => (depth, height),
        View::Sheet => (width + depth, height + down),
    }
}

/// What dimension lines, their figures, gaps and the border take of a room at most, in pixels.
fn margins(subject: Subject<'_>, view: View) -> (f64, f64) {
    let bow_row = if bow::is_bowed(subject) { BOW_ROW_PX } else { 0.0 };
    let border = pen::BORDER_PX * 2.0;
    // A figure beside a line, and one along it.
    let (beside, along) = (54.0, 42.0);
    let (across, down) = match view {
        View::Front if subject.built.layout.plinth.is_some() => (along + 16.0 + BESIDE_PLINTH_PX, 60.0),
        View::Front => (along, 60.0),
        View::Plan => (along + 16.0 + beside, 40.0 + bow_row),
        View::Section => (along + 22.0 + beside, 30.0),
        View::Sheet => (along + BESIDE_PX + 22.0 + beside, BELOW_PX + bow_row + 6.0),
    };
    (across + border, down + border)
}

#[cfg(test)]
mod tests;
