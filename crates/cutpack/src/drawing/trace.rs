//! What the pen drew as a list of lines and areas on paper.

use slotwright_core::geometry::outline::{Corner, Outline, Point, QUARTER};
use slotwright_core::units::quantity::Length;

use super::pen::{BORDER_PX, Dot, Drawn, LINE_PX, Pen, TEXT_PX};
use crate::vector::{Align, Colour, Fill, Mark, Shape, Spot, Step, Stroke, Vector, Words, line, outline, rectangle};

/// How a class looks: the same as in SVG without a style.
fn look(class: &str, width: Length, scale: f64) -> (Option<Fill>, Stroke) {
    let stroke = Stroke { colour: Colour::INK, width, dashes: [0.0; 4] };
    let dashed = |on: f64, off: f64| Stroke { dashes: [on, off, on, off].map(|mm| mm / scale), ..stroke };
    let filled = |colour| Some(Fill::of(colour));
    match class {
        "edge" | "cut" => (filled(Colour::WOOD), stroke),
        "back" | "floor" => (filled(Colour(0xec, 0xe8, 0xdf)), stroke),
        "hole" => (filled(Colour(0x2a, 0x2e, 0x2b)), stroke),
        "device" => (None, dashed(12.0, 9.0)),
        "swing" => (None, dashed(15.0, 12.0)),
        "dim" => (None, Stroke { colour: Colour::ACCENT, ..stroke }),
        _ => (filled(Colour::WHITE), stroke),
    }
}

/// The drawing on paper of which one millimetre shows `scale` of the unit.
pub(super) fn traced(pen: &Pen, scale: f64) -> Vector {
    let (border, width) = (pen.px(BORDER_PX), Length::mm(pen.px(LINE_PX) / scale));
    let (left, top) = (pen.low.0 - border, pen.low.1 - border);
    let at = |(x, y): Dot| Spot::mm((x - left) / scale, (y - top) / scale);
    let size = at((pen.high.0 + border, pen.high.1 + border));
    let mut vector = Vector::new(size.x, size.y);
    for drawn in &pen.drawn {
        let (class, steps) = match drawn {
            Drawn::Open(..) | Drawn::Close => continue,
            Drawn::Text(place, text, upright) => {
                let words = Words {
                    text: text.clone(),
                    at: at(*place),
                    size: Length::mm(pen.px(TEXT_PX) / scale),
                    align: Align::Middle,
                    upright: *upright,
                    colour: Colour::ACCENT,
                };
                vector.marks.push(Mark::Words(words));
                continue;
            }
            Drawn::Rect(class, place, (wide, high), radius) => {
                (class, rect(at(*place), [*wide, *high, *radius], scale))
            }
            Drawn::Area(class, corners) => {
                let corner = |(place, bulge): &(Dot, f64)| {
                    let Spot { x, y } = at(*place);
                    Corner { at: Point::new(x, y), bulge: *bulge }
                };
                let around = Outline::through(corners.iter().map(corner));
                (class, outline(&around, |point| Spot::new(point.u, point.v)))
            }
            Drawn::Strokes(class, lines) => {
                (class, lines.iter().flat_map(|[from, to]| line(at(*from), at(*to))).collect())
            }
            Drawn::Line(class, from, to) => (class, line(at(*from), at(*to))),
            Drawn::Arc(class, from, to, radius, left) => (class, arc(at(*from), at(*to), radius / scale, *left)),
        };
        let (fill, stroke) = look(class, width, scale);
        let fill = fill.filter(|_| matches!(drawn, Drawn::Rect(..) | Drawn::Area(..)));
        vector.marks.push(Mark::Shape(Shape { steps, fill, stroke: Some(stroke) }));
    }
    vector
}

fn rect(at: Spot, size: [f64; 3], scale: f64) -> Vec<Step> {
    let [wide, high, radius] = size.map(|mm| Length::mm(mm / scale));
    let radius = radius.min(wide / 2.0).min(high / 2.0);
    if radius <= Length::ZERO {
        return rectangle(at, wide, high);
    }
    let corner = |u: Length, v: Length, bulge: f64| Corner { at: Point::new(at.x + u, at.y + v), bulge };
    let rounded = Outline::through([
        corner(radius, Length::ZERO, 0.0),
        corner(wide - radius, Length::ZERO, QUARTER),
        corner(wide, radius, 0.0),
        corner(wide, high - radius, QUARTER),
        corner(wide - radius, high, 0.0),
        corner(radius, high, QUARTER),
        corner(Length::ZERO, high - radius, 0.0),
        corner(Length::ZERO, radius, QUARTER),
    ]);
    outline(&rounded, |point| Spot::new(point.u, point.v))
}

/// An arc of at most half a circle. On paper, where y runs down, what bulges to the left of its way turns to the right.
fn arc(from: Spot, to: Spot, radius: f64, left: bool) -> Vec<Step> {
    let chord = libm::hypot((to.x - from.x).in_mm(), (to.y - from.y).in_mm());
    let half = (chord / (2.0 * radius)).min(1.0);
    // The bulge is the tangent of a quarter of the angle; half of it has that sine.
    let bulge = libm::tan(libm::asin(half) / 2.0);
    let start = Corner { at: Point::new(from.x, from.y), bulge: if left { bulge } else { -bulge } };
    let end = Corner { at: Point::new(to.x, to.y), bulge: 0.0 };
    let mut steps = outline(&Outline::through([start, end]), |point| Spot::new(point.u, point.v));
    // The way there alone: not the chord back.
    steps.retain(|step| !matches!(step, Step::Close));
    steps.pop();
    steps
}
