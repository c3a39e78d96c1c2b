//! The layers of a package from above, as who packs it lays them.

use slotwright_core::units::quantity::Length;

use super::super::packages::{Package, Packed};
use crate::paper::pt;
use crate::vector::{Align, Colour, Fill, Mark, Spot, Stroke, Vector, Words, line, rectangle};

/// Between two layers, on paper.
const BETWEEN: Length = Length::mm(4.0);
/// No mark is smaller. Chosen by eye.
const LEAST: Length = pt(6.0);
/// Nor larger.
const LARGEST: Length = pt(8.0);
/// How wide a letter of a mark is at most, by the size of its type.
const LETTER: f64 = 0.62;
/// From the end of a package to what stands at its side.
const LEADER: Length = Length::mm(4.0);
/// Above layers stand their numbers.
const NUMBER: Length = pt(9.0);

/// Some layers side by side.
#[derive(Debug)]
pub(super) struct Line {
    /// The picture.
    pub(super) vector: Vector,
    /// The first and the last of the layers, from 1.
    pub(super) layers: (usize, usize),
}

/// Marks of a row that has no room for them, at the side of its layer.
#[derive(Debug)]
struct Aside {
    text: String,
    /// Where the row ends, and its middle.
    end: [Length; 2],
    /// How far below the upper side of its layer the text has its middle.
    at: Length,
}

/// The layers of a package, the lowest first, with their numbers and the marks of their parts: long ones in two columns, others in
/// three.
pub(super) fn lines(package: &Package<'_>, width: Length) -> Vec<Line> {
    let [long, wide, _] = package.sides;
    let columns: u8 = if wide * 3.0 < long { 2 } else { 3 };
    let frame = (width - BETWEEN * f64::from(columns - 1)) / f64::from(columns);
    let scale = scale(package, frame);
    let mut first = 0;
    let chunks = package.layers.chunks(columns.into());
    chunks
        .map(|layers| {
            let asides: Vec<Vec<Aside>> = layers.iter().map(|layer| asides(layer, scale)).collect();
            let lowest = asides.iter().flatten().map(|aside| aside.at + LEAST / 2.0);
            let high = lowest.fold(wide * scale, Length::max);
            let mut vector = Vector::new(width, NUMBER + high);
            let mut corner = Spot::new(Length::ZERO, NUMBER);
            for ((number, layer), asides) in (first + 1..).zip(layers).zip(asides) {
                let above = Spot::new(corner.x, corner.y - NUMBER * 0.3);
                vector.marks.push(words(number.to_string(), above, (pt(8.0), Align::Start, Colour::SOFT)));
                let edge = Stroke { dashes: [1.6, 1.0, 1.6, 1.0], ..Stroke::mm(0.2, Colour::SOFT) };
                vector.shape(rectangle(corner, long * scale, wide * scale), None, Some(edge));
                for packed in layer {
                    part(&mut vector, packed, corner, scale);
                }
                let right = corner.x + long * scale;
                for aside in asides {
                    beside(&mut vector, aside, corner, right);
                }
                corner.x += frame + BETWEEN;
            }
            let line = Line { vector, layers: (first + 1, first + layers.len()) };
            first += layers.len();
            line
        })
        .collect()
}

/// How large layers are drawn in a frame of that width, with room at their side for the marks that stand there.
fn scale(package: &Package<'_>, frame: Length) -> f64 {
    let [long, wide, _] = package.sides;
    let mut scale = (frame / long).min(Length::mm(40.0) / wide);
    // A smaller picture may put more marks at its side.
    for _ in 0..4 {
        let texts =
            package.layers.iter().flat_map(|layer| asides(layer, scale)).map(|aside| length(&aside.text, LEAST));
        let Some(longest) = texts.reduce(Length::max) else { break };
        scale = scale.min((frame - LEADER - longest) / long);
    }
    scale
}

/// How long a text is at most.
fn length(text: &str, size: Length) -> Length {
    text.chars().map(|_| size * LETTER).sum()
}

/// How large a part's mark is on it; nothing where it has no room.
fn on_it(packed: &Packed<'_>, scale: f64) -> Option<Length> {
    let [long, wide] = packed.size().map(|side| side * scale);
    let size = (wide * 0.7).min(LARGEST);
    (size >= LEAST && length(&packed.part.mark(), size) <= long).then_some(size)
}

/// What stands at the side of a layer: the marks of each row of which one has no room on its part, from one end to the other.
fn asides(layer: &[Packed<'_>], scale: f64) -> Vec<Aside> {
    let mut asides: Vec<Aside> = Vec::new();
    let rows = layer.chunk_by(|a, b| a.row == b.row);
    for row in rows.filter(|row| row.iter().any(|packed| on_it(packed, scale).is_none())) {
        let marks: Vec<String> = row.iter().map(|packed| packed.part.mark()).collect();
        let Some(last) = row.last() else { continue };
        let ([long, wide], [along, across]) = (last.size(), last.at);
        let end = [(along + long) * scale, (across + wide / 2.0) * scale];
        let above = asides.last().map_or(Length::ZERO - LEAST, |aside| aside.at);
        asides.push(Aside { text: marks.join(", "), end, at: end[1].max(above + LEAST * 1.2) });
    }
    asides
}

/// Puts marks at the side of a layer, with a line to the end of their row.
fn beside(vector: &mut Vector, aside: Aside, corner: Spot, right: Length) {
    let Aside { text, end: [along, across], at } = aside;
    let row = Spot::new(corner.x + along, corner.y + across);
    let edge = Spot::new(right.max(row.x), row.y);
    let text_at = Spot::new(right + LEADER, corner.y + at);
    let fine = || Some(Stroke::mm(0.13, Colour::SOFT));
    vector.shape(line(row, edge), None, fine());
    vector.shape(line(edge, Spot::new(text_at.x - Length::mm(0.6), text_at.y)), None, fine());
    let below = Spot::new(text_at.x, text_at.y + LEAST * 0.35);
    vector.marks.push(words(text, below, (LEAST, Align::Start, Colour::INK)));
}

fn part(vector: &mut Vector, packed: &Packed<'_>, corner: Spot, scale: f64) {
    let ([long, wide], [along, across]) = (packed.size().map(|side| side * scale), packed.at.map(|at| at * scale));
    let from = Spot::new(corner.x + along, corner.y + across);
    let ink = Some(Stroke::mm(0.15, Colour::INK));
    vector.shape(rectangle(from, long, wide), Some(Fill::of(Colour::WOOD)), ink);
    if let Some(size) = on_it(packed, scale) {
        let middle = Spot::new(from.x + long / 2.0, from.y + wide / 2.0 + size * 0.35);
        vector.marks.push(words(packed.part.mark(), middle, (size, Align::Middle, Colour::INK)));
    }
}

fn words(text: String, at: Spot, (size, align, colour): (Length, Align, Colour)) -> Mark {
    Mark::Words(Words { text, at, size, align, upright: false, colour })
}

#[cfg(test)]
mod tests {
    use super::super::super::packages::packages;
    use super::super::super::testing::{demo, order, with_orders};
    use super::*;

    /// Every mark of a package is on its pictures, none smaller than 6 pt, all within the picture, and those at a side do not
    /// stand on each other; some parts are too narrow for theirs.
    #[test]
    fn marks_of_layers_are_read() {
        let range = demo();
        let texts: Vec<String> = (0..range.models.len()).map(|model| order(&range, model, 0)).collect();
        with_orders(&[range], &texts, |orders| {
            let mut at_side = 0;
            for order in &orders.taken {
                for package in packages(order).unwrap().packages {
                    let lines = lines(&package, Length::mm(170.0));
                    let mut shown = Vec::new();
                    for Line { vector, .. } in &lines {
                        for mark in &vector.marks {
                            let Mark::Words(words) = mark else { continue };
                            assert!(words.size >= LEAST, "{words:?}");
                            assert!(words.at.y <= vector.height && words.at.x <= vector.width, "{words:?}");
                            if words.align == Align::Start && words.colour == Colour::INK {
                                at_side += 1;
                                assert!(
                                    words.at.x + length(&words.text, words.size) <= vector.width + Length::mm(1e-6)
                                );
                            }
                            if words.colour == Colour::INK {
                                shown.extend(words.text.split(", ").map(str::to_owned));
                            }
                        }
                    }
                    for packed in package.parts() {
                        assert!(shown.contains(&packed.part.mark()), "{shown:?}");
                    }
                    let scale = scale(&package, Length::mm(83.0));
                    for layer in &package.layers {
                        for pair in asides(layer, scale).windows(2) {
                            assert!(pair[1].at - pair[0].at >= LEAST, "{pair:?}");
                        }
                    }
                    assert_eq!(lines.last().map(|line| line.layers.1), Some(package.layers.len()));
                }
            }
            assert!(at_side > 3, "{at_side} rows have their marks at the side");
        });
    }
}
