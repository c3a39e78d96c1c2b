//! The paper: one scale for all pictures of a unit, and one list of what is drawn, as SVG and for other paper.

use core::fmt::Write;

use slotwright_core::units::quantity::Length;

use super::hidden::Drawn;
use super::ink::{self, Dot, Grid, Stroke};
use super::shape::Line;
use super::view::{Bounds, Seen};
use crate::drawing::escaped;
use crate::vector::{Colour, Fill as VectorFill, Spot, Step, Stroke as VectorStroke, Vector};

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
/// A hidden rim that is shorter (mm) is a blot between two parts before it; the foot of a stave is longer.
const HIDDEN_LEAST: f64 = 1.0;

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
    /// What others hide of its rim, of a part that hardly shows.
    pub(super) hidden: Vec<Drawn>,
    /// Outlines of its seen area.
    pub(super) tone: Vec<Vec<Seen>>,
    /// Lines from it to its place.
    pub(super) guides: Vec<Drawn>,
    /// The outlines of its arrows.
    pub(super) arrows: Vec<[Seen; 7]>,
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
    pub(super) fn dot(&self, at: Seen) -> Dot {
        [(at.x - self.left) * self.scale + BORDER, (self.top - at.y) * self.scale + BORDER]
    }

    fn strokes<'a>(&self, lines: impl Iterator<Item = &'a Drawn>, rim: Option<bool>) -> Vec<Stroke> {
        let stretches = lines.filter(|drawn| rim.is_none_or(|rim| drawn.line.rim == rim)).flat_map(Drawn::stretches);
        stretches.map(|Line { from, to, .. }| [from, to].map(|at| self.dot(at))).collect()
    }

    /// What is drawn, the lowest first.
    pub(super) fn layers(&self, content: &Content) -> Vec<Layer> {
        let areas = content.tone.iter().map(|area| area.iter().map(|at| ink::grid(self.dot(*at))).collect());
        let lines = |lines: &[Drawn], rim: Option<bool>| ink::lines(self.strokes(lines.iter(), rim));
        let guides = ink::not_shorter(lines(&content.guides, None), GUIDE_LEAST);
        let hidden = ink::not_shorter(lines(&content.hidden, None), HIDDEN_LEAST);
        let arrow = |corners: &[Seen; 7]| corners.iter().map(|at| ink::grid(self.dot(*at))).collect();
        let layer = |class, look, lines| Layer { class, look, lines };
        let layers = [
            layer("tone", Look::Tone, super::tone::outlines(areas)),
            layer("stands", Look::Line(THIN), lines(&content.stands, None)),
            layer("goes-in", Look::Line(THIN), lines(&content.goes_in, Some(false))),
            layer("rim", Look::Line(THICK), lines(&content.goes_in, Some(true))),
            layer("hidden-rim", Look::Dashed(THIN, HIDDEN), hidden),
            layer("guide", Look::Dashed(GUIDE, DASHES), guides),
            layer("arrow", Look::Full, content.arrows.iter().map(arrow).collect()),
        ];
        layers.into_iter().filter(|layer| !layer.lines.iter().all(Vec::is_empty)).collect()
    }
}

/// What is drawn in one way.
#[derive(Clone, Debug)]
pub(super) struct Layer {
    class: &'static str,
    look: Look,
    lines: Vec<Vec<Grid>>,
}

/// How it is drawn.
#[derive(Clone, Copy, Debug)]
enum Look {
    /// An area that lets lines show through.
    Tone,
    /// An area.
    Full,
    /// Lines of that width in millimetres.
    Line(f64),
    /// The same with dashes: line, gap, line, gap.
    Dashed(f64, [f64; 4]),
}

/// How much of it a tone covers, in percent.
const TONE: u8 = 16;
/// Lines and gaps of a guide in millimetres.
const DASHES: [f64; 4] = [2.4, 0.9, 0.3, 0.9];
/// Those of hidden rims.
// Source: ISO 128-2:2020, type 02.1, dashed narrow line, for hidden outlines: dashes of 12 and gaps of 3 line widths, from memory.
const HIDDEN: [f64; 4] = [12.0 * THIN, 3.0 * THIN, 12.0 * THIN, 3.0 * THIN];

/// The picture as SVG: lines take the colour of the text around it.
pub(super) fn svg(layers: &[Layer], size: [f64; 2], title: &str, what: &str) -> String {
    let [wide, high] = ink::grid(size);
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
    for Layer { class, look, lines } in layers {
        let _ = write!(svg, "<path class=\"{class}\" ");
        let _ = match look {
            Look::Tone => write!(svg, "fill=\"currentColor\" fill-opacity=\"0.{TONE}\" stroke=\"none\""),
            Look::Full => write!(svg, "fill=\"currentColor\" stroke=\"none\""),
            Look::Line(mm) => write!(svg, "stroke-width=\"{mm}\""),
            Look::Dashed(mm, [one, two, three, four]) => {
                write!(svg, "stroke-width=\"{mm}\" stroke-dasharray=\"{one} {two} {three} {four}\"")
            }
        };
        svg.push_str(" d=\"");
        for line in lines {
            path(&mut svg, line, look.is_closed());
        }
        svg.push_str("\"/>");
    }
    svg.push_str("</svg>\n");
    svg
}

impl Look {
    const fn is_closed(self) -> bool {
        matches!(self, Self::Tone | Self::Full)
    }
}

/// The corners of a line that are drawn, and whether it goes back to its first.
fn corners(line: &[Grid], closed: bool) -> (impl Iterator<Item = &Grid>, bool) {
    let round = !closed && line.len() > 2 && line.first() == line.last();
    let last = if round { line.len() - 1 } else { line.len() };
    (line.iter().take(last), closed || round)
}

fn path(svg: &mut String, line: &[Grid], closed: bool) {
    let (corners, back) = corners(line, closed);
    for (number, [x, y]) in corners.enumerate() {
        let letter = if number == 0 { 'M' } else { 'L' };
        let _ = write!(svg, "{letter}{} {}", Hundredths(*x), Hundredths(*y));
    }
    if back {
        svg.push('Z');
    }
}

/// The same picture for other kinds of paper.
pub(super) fn vector(layers: &[Layer], size: [f64; 2]) -> Vector {
    let mut vector = Vector::new(Length::mm(size[0]), Length::mm(size[1]));
    for Layer { look, lines, .. } in layers {
        let mut steps = Vec::new();
        for line in lines {
            let (corners, back) = corners(line, look.is_closed());
            for (number, [x, y]) in corners.enumerate() {
                let spot = Spot::new(mm(*x), mm(*y));
                steps.push(if number == 0 { Step::Move(spot) } else { Step::Line(spot) });
            }
            steps.extend(back.then_some(Step::Close));
        }
        let ink = Colour::INK;
        let (fill, stroke) = match look {
            Look::Tone => (Some(VectorFill { colour: ink, percent: TONE }), None),
            Look::Full => (Some(VectorFill::of(ink)), None),
            Look::Line(width) => (None, Some(VectorStroke::mm(*width, ink))),
            Look::Dashed(width, dashes) => {
                (None, Some(VectorStroke { dashes: *dashes, ..VectorStroke::mm(*width, ink) }))
            }
        };
        vector.shape(steps, fill, stroke);
    }
    vector
}

fn mm(hundredths: i64) -> Length {
    i32::try_from(hundredths).map_or(Length::ZERO, |hundredths| Length::mm(f64::from(hundredths) / 100.0))
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
