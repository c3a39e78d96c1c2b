//! The technical drawing of a unit as SVG: front elevation, plan and section, with dimensions.
//!
//! Coordinates are millimetres. Classes name the thing (`wood`, `edge`, `cut`, `dim`) for the page's style;
//! attributes give plain colours, so that any viewer shows it. The section stands to the right of the elevation at the same height, the
//! plan below it at the same width, its front edge downwards (common practice in joinery shops).

use slotwright_core::business::built::Built;
use slotwright_core::choice::Choice;
use slotwright_core::range::Range;

mod front;
mod pen;
mod plan;
mod section;

use pen::Pen;
pub(crate) use pen::escaped;

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

/// Draws a view. `mm_per_px` is how many millimetres one pixel of the screen shows, so that text
/// keeps its size; `title` is the text alternative.
pub fn svg(subject: Subject<'_>, view: View, lit: Lit, mm_per_px: f64, title: &str) -> String {
    let layout = &subject.built.layout;
    let mut pen = Pen::new(mm_per_px);
    let gap = pen.px(84.0);
    match view {
        View::Front => front::draw(&mut pen, subject, lit),
        View::Plan => plan::draw(&mut pen, subject, lit, true),
        View::Section => section::draw(&mut pen, subject, lit, true),
        View::Sheet => {
            front::draw(&mut pen, subject, lit);
            pen.shift(layout.width.in_mm() + gap, 0.0);
            section::draw(&mut pen, subject, lit, false);
            pen.shift(0.0, layout.height.in_mm() + gap * 1.2);
            plan::draw(&mut pen, subject, lit, false);
        }
    }
    pen.done(title)
}

/// Width of a view in millimetres, dimensions left out: what `mm_per_px` is chosen by.
pub fn extent(built: &Built, view: View) -> (f64, f64) {
    let layout = &built.layout;
    let (width, depth, height) = (layout.width.in_mm(), layout.depth.in_mm(), layout.height.in_mm());
    match view {
        View::Front => (width, height),
        View::Plan => (width, depth * 1.6),
        View::Section => (depth, height),
        View::Sheet => (width + depth, height + depth * 1.6),
    }
}

#[cfg(test)]
mod tests;
