//! The paper: one scale for all pictures of a unit, and the SVG.

use core::fmt::Write;

use super::hidden::Drawn;
use super::ink::{self, Dot, Grid, Stroke};
use super::shape::Line;
use super::view::{Bounds, Seen};
use crate::drawing::escaped;

/// Room for a picture on paper in millimetres: an A4 sheet takes two with their sentences, one above the
/// other or, of a tall unit, side by side.
const ROOMS: [[f64; 2]; 2] = [[180.0, 120.0], [86.0, 230.0]];
/// White round it.
const BORDER: f64 = 4.0;

/// Widths of lines in millimetres.
// Source: ISO 128-2:2020, the series of line widths 0.18, 0.25, 0.35, 0.5 mm.
const THIN: f64 = 0.25;
const THICK: f64 = 0.5;
const GUIDE: f64 = 0.18;
/// A guide that shows for less than this (mm) guides nobody: one run of its dashes.
const GUIDE_LEAST: f64 = 4.5;

/// How the unit's millimetres come to paper.
#[derive(Clone, Copy, Debug)]
pub(super) struct Frame {
    left: f64,
    top: f64,
    /// Millimetres of paper for one of the unit in the picture.
    pub(super) scale: f64,
    /// Size of the picture on paper.
    pub(super) size: [f64; 2],
}

/// What one picture shows.
#[derive(Debug, Default)]
pub(super) struct Content {
    /// Lines of the parts that stand.
    pub(super) stands: Vec<Drawn>,
    /// Lines of the part that goes in.
    pub(super) goes_in: Vec<Drawn>,
    /// Outlines of its seen area.
    pub(super) tone: Vec<Vec<Seen>>,
    /// Lines from it to its place.
    pub(super) guides: Vec<Drawn>,
    /// The arrow's outline.
    pub(super) arrow: Vec<Seen>,
}

impl Frame {
    /// As large as the room allows; nothing without extent.
    pub(super) fn around(bounds: Bounds) -> Option<Self> {
        let (wide, high) = (bounds.high.x - bounds.low.x, bounds.high.y - bounds.low.y);
        let fits = |[room_wide, room_high]: [f64; 2]| {
            ((room_wide - 2.0 * BORDER) / wide).min((room_high - 2.0 * BORDER) / high)
        };
        let scale = ROOMS.map(fits).into_iter().fold(0.0, f64::max);
        let size = [wide, high].map(|mm| mm * scale + 2.0 * BORDER);
        let framed = wide > 0.0 && high > 0.0 && scale.is_finite();
        framed.then_some(Self { left: bounds.low.x, top: bounds.high.y, scale, size })
    }

    /// Where a place of the picture comes to lie; y runs downwards as in SVG.
    fn dot(&self, at: Seen) -> Dot {
        [(at.x - self.left) * self.scale + BORDER, (self.top - at.y) * self.scale + BORDER]
    }

    fn strokes<'a>(&self, lines: impl Iterator<Item = &'a Drawn>, rim: Option<bool>) -> Vec<Stroke> {
        let stretches = lines.filter(|drawn| rim.is_none_or(|rim| drawn.line.rim == rim)).flat_map(Drawn::stretches);
        stretches.map(|Line { from, to, .. }| [from, to].map(|at| self.dot(at))).collect()
    }

    /// The picture as SVG: lines take the colour of the text around it.
    pub(super) fn svg(&self, content: &Content, title: &str, what: &str) -> String {
        let [wide, high] = ink::grid(self.size);
        let mut svg = String::with_capacity(16_384);
        // Writing to a String cannot fail.
        let _ = write!(
            svg,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"step-picture\" role=\"img\" width=\"{0}mm\" height=\"{1}mm\" viewBox=\"0 0 {0} {1}\" fill=\"none\" stroke=\"currentColor\" stroke-linecap=\"round\" stroke-linejoin=\"round\"><title>{2}</title><desc>{3}</desc>",
            Hundredths(wide),
            Hundredths(high),
            escaped(title),
            escaped(what),
        );
        let areas = content.tone.iter().map(|area| area.iter().map(|at| ink::grid(self.dot(*at))).collect());
        let tone = super::tone::outlines(areas);
        path(&mut svg, "tone", "fill=\"currentColor\" fill-opacity=\"0.16\" stroke=\"none\"", &tone, true);
        let width = |mm: f64| format!("stroke-width=\"{mm}\"");
        let lines = |lines: &[Drawn], rim: Option<bool>| ink::lines(self.strokes(lines.iter(), rim));
        path(&mut svg, "stands", &width(THIN), &lines(&content.stands, None), false);
        path(&mut svg, "goes-in", &width(THIN), &lines(&content.goes_in, Some(false)), false);
        path(&mut svg, "rim", &width(THICK), &lines(&content.goes_in, Some(true)), false);
        let dashes = format!("{} stroke-dasharray=\"2.4 0.9 0.3 0.9\"", width(GUIDE));
        let guides = ink::not_shorter(lines(&content.guides, None), GUIDE_LEAST);
        path(&mut svg, "guide", &dashes, &guides, false);
        let arrow: Vec<Grid> = content.arrow.iter().map(|at| ink::grid(self.dot(*at))).collect();
        path(&mut svg, "arrow", "fill=\"currentColor\" stroke=\"none\"", &[arrow], true);
        svg.push_str("</svg>\n");
        svg
    }
}

/// All lines of a kind as one path; nothing if there are none.
fn path(svg: &mut String, class: &str, how: &str, lines: &[Vec<Grid>], closed: bool) {
    if lines.iter().all(Vec::is_empty) {
        return;
    }
    let _ = write!(svg, "<path class=\"{class}\" {how} d=\"");
    for line in lines {
        let round = !closed && line.len() > 2 && line.first() == line.last();
        let last = if round { line.len() - 1 } else { line.len() };
        for (number, [x, y]) in line.iter().take(last).enumerate() {
            let letter = if number == 0 { 'M' } else { 'L' };
            let _ = write!(svg, "{letter}{} {}", Hundredths(*x), Hundredths(*y));
        }
        if closed || round {
            svg.push('Z');
        }
    }
    svg.push_str("\"/>");
}

/// Hundredths of a millimetre, written as millimetres.
#[derive(Clone, Copy, Debug)]
struct Hundredths(i64);

impl core::fmt::Display for Hundredths {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let (whole, part) = (self.0.abs() / 100, self.0.abs() % 100);
        let sign = if self.0 < 0 { "-" } else { "" };
        match (part, part % 10) {
            (0, _) => write!(f, "{sign}{whole}"),
            (_, 0) => write!(f, "{sign}{whole}.{}", part / 10),
            _ => write!(f, "{sign}{whole}.{part:02}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hundredths_are_written_short() {
        for (hundredths, text) in [(0, "0"), (5, "0.05"), (50, "0.5"), (-1234, "-12.34"), (700, "7")] {
            assert_eq!(Hundredths(hundredths).to_string(), text);
        }
    }

    #[test]
    fn the_better_room_is_filled() {
        let frame = |x, y| Frame::around(Bounds::of([Seen { x: -300.0, ..Seen::default() }, Seen { x, y, near: 0.0 }]));
        let [wide, high] = frame(1420.0, 400.0).unwrap().size;
        assert!((wide - 180.0).abs() < 1e-9 && high < 120.0, "{wide} {high}");
        let [wide, high] = frame(300.0, 2200.0).unwrap().size;
        assert!((high - 230.0).abs() < 1e-9 && wide < 86.0, "{wide} {high}");
        assert!(Frame::around(Bounds::NONE).is_none());
    }
}
