//! A picture as one list of lines, areas and texts, from which SVG is written and paper is drawn.

use slotwright_core::geometry::outline::{Outline, Point, Segment};
use slotwright_core::units::quantity::Length;

/// A place on paper.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Spot {
    /// To the right.
    pub x: Length,
    /// Down.
    pub y: Length,
}

impl Spot {
    /// So far to the right and down.
    pub const fn new(x: Length, y: Length) -> Self {
        Self { x, y }
    }

    /// The same in millimetres.
    pub const fn mm(x: f64, y: f64) -> Self {
        Self::new(Length::mm(x), Length::mm(y))
    }

    /// The place so far from this one.
    #[must_use]
    pub fn moved(self, by: Self) -> Self {
        Self::new(self.x + by.x, self.y + by.y)
    }

    /// The place in a picture that is so many times as large.
    #[must_use]
    pub fn scaled(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.y * factor)
    }
}

/// A colour of the screen and of paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Colour(pub u8, pub u8, pub u8);

impl Colour {
    /// Text and outlines.
    pub const INK: Self = Self(0x1d, 0x23, 0x20);
    /// The second voice.
    pub const SOFT: Self = Self(0x4d, 0x55, 0x4f);
    /// Hairlines.
    pub const LINE: Self = Self(0xd5, 0xcc, 0xbc);
    /// What is chosen, dimension lines.
    pub const ACCENT: Self = Self(0x0e, 0x5a, 0x5e);
    /// What cannot be made.
    pub const STOP: Self = Self(0xa0, 0x26, 0x1c);
    /// Cautions.
    pub const WARN: Self = Self(0x7a, 0x4f, 0x00);
    /// Areas behind text.
    pub const GROUND: Self = Self(0xf4, 0xef, 0xe6);
    /// Plain wood.
    pub const WOOD: Self = Self(0xe3, 0xcd, 0xa4);
    /// The paper.
    pub const WHITE: Self = Self(0xff, 0xff, 0xff);
    /// What readers of codes want.
    pub const BLACK: Self = Self(0, 0, 0);

    /// A colour as a range writes it: `#` and six digits.
    pub fn from_hex(text: &str) -> Option<Self> {
        let digits = text.strip_prefix('#').filter(|digits| digits.len() == 6 && digits.is_ascii())?;
        let part = |at: usize| u8::from_str_radix(digits.get(at..at + 2)?, 16).ok();
        Some(Self(part(0)?, part(2)?, part(4)?))
    }
}

/// A stretch of a way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Step {
    /// A new way begins here.
    Move(Spot),
    /// Straight on to here.
    Line(Spot),
    /// By a cubic curve with two handles to here.
    Curve(Spot, Spot, Spot),
    /// Back to where the way began.
    Close,
}

/// How an area is filled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fill {
    /// The colour.
    pub colour: Colour,
    /// How much of it covers what lies below, in percent.
    pub percent: u8,
}

impl Fill {
    /// A colour that covers all below it.
    pub const fn of(colour: Colour) -> Self {
        Self { colour, percent: 100 }
    }
}

/// How a line is drawn: ends and corners are round.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stroke {
    /// The colour.
    pub colour: Colour,
    /// How wide it is.
    pub width: Length,
    /// Line, gap, line, gap, in millimetres; all zero for a line without gaps.
    pub dashes: [f64; 4],
}

impl Stroke {
    /// A line without gaps, its width in millimetres.
    pub const fn mm(width: f64, colour: Colour) -> Self {
        Self { colour, width: Length::mm(width), dashes: [0.0; 4] }
    }
}

/// Ways that are filled, drawn or both.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shape {
    /// The ways; areas that lie within others are cut out of them.
    pub steps: Vec<Step>,
    /// Filled.
    pub fill: Option<Fill>,
    /// Drawn.
    pub stroke: Option<Stroke>,
}

/// Where a text stands at its place.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Align {
    /// It begins there.
    #[default]
    Start,
    /// It has its middle there.
    Middle,
    /// It ends there.
    End,
}

/// A line of text in a picture.
#[derive(Clone, Debug, PartialEq)]
pub struct Words {
    /// What it says.
    pub text: String,
    /// Where its letters stand.
    pub at: Spot,
    /// Height of its type.
    pub size: Length,
    /// How it stands there.
    pub align: Align,
    /// Whether it runs upwards.
    pub upright: bool,
    /// Its colour.
    pub colour: Colour,
}

/// One thing of a picture.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// Lines and areas.
    Shape(Shape),
    /// A text.
    Words(Words),
}

/// Finer lines are lost in print. Source: ISO 128-2:2020, the finest of the line widths.
const FINEST: Length = Length::mm(0.13);

/// A picture: what lies later covers what lies earlier.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Vector {
    /// Its width.
    pub width: Length,
    /// Its height.
    pub height: Length,
    /// What it shows.
    pub marks: Vec<Mark>,
}

impl Vector {
    /// An empty picture.
    pub const fn new(width: Length, height: Length) -> Self {
        Self { width, height, marks: Vec::new() }
    }

    /// Adds a shape.
    pub fn shape(&mut self, steps: Vec<Step>, fill: Option<Fill>, stroke: Option<Stroke>) {
        self.marks.push(Mark::Shape(Shape { steps, fill, stroke }));
    }

    /// The picture so many times as large; lines keep their width, texts grow along.
    #[must_use]
    pub fn scaled(&self, factor: f64) -> Self {
        let marks = self.marks.iter().map(|mark| match mark {
            Mark::Shape(shape) => {
                Mark::Shape(Shape { steps: scaled(&shape.steps, factor), fill: shape.fill, stroke: shape.stroke })
            }
            Mark::Words(words) => {
                Mark::Words(Words { at: words.at.scaled(factor), size: words.size * factor, ..words.clone() })
            }
        });
        Self { width: self.width * factor, height: self.height * factor, marks: marks.collect() }
    }

    /// The picture as large as a room takes it, and no larger than it is. Lines that get finer along with it stay as
    /// wide as can be printed.
    #[must_use]
    pub fn fitted(&self, width: Length, height: Length) -> Self {
        let factor = (width / self.width).min(height / self.height);
        if factor >= 1.0 {
            return self.clone();
        }
        let mut smaller = self.scaled(factor);
        for mark in &mut smaller.marks {
            if let Mark::Shape(Shape { stroke: Some(stroke), .. }) = mark {
                stroke.width = (stroke.width * factor).max(FINEST.min(stroke.width));
                stroke.dashes = stroke.dashes.map(|mm| mm * factor);
            }
        }
        smaller
    }
}

fn scaled(steps: &[Step], factor: f64) -> Vec<Step> {
    let of = |spot: &Spot| spot.scaled(factor);
    let steps = steps.iter().map(|step| match step {
        Step::Move(to) => Step::Move(of(to)),
        Step::Line(to) => Step::Line(of(to)),
        Step::Curve(one, two, to) => Step::Curve(of(one), of(two), of(to)),
        Step::Close => Step::Close,
    });
    steps.collect()
}

/// A rectangle by its corner at the top left and its size.
pub fn rectangle(at: Spot, width: Length, height: Length) -> Vec<Step> {
    let corner = |x: Length, y: Length| Spot::new(at.x + x, at.y + y);
    vec![
        Step::Move(at),
        Step::Line(corner(width, Length::ZERO)),
        Step::Line(corner(width, height)),
        Step::Line(corner(Length::ZERO, height)),
        Step::Close,
    ]
}

/// A straight line.
pub fn line(from: Spot, to: Spot) -> Vec<Step> {
    vec![Step::Move(from), Step::Line(to)]
}

/// An outline of a panel, each point of it put on paper by `place`, which may move, turn, mirror and scale evenly.
///
/// ```
/// use slotwright_core::geometry::outline::{Outline, Point};
/// use slotwright_core::units::quantity::Length;
/// use slotwright_cutpack::vector::{Spot, Step, outline};
/// let hole = Outline::circle(Point::default(), Length::mm(60.0));
/// let steps = outline(&hole, |point| Spot::new(point.u, -point.v));
/// assert!(matches!(steps.last(), Some(Step::Close)));
/// ```
pub fn outline(outline: &Outline, place: impl Fn(Point) -> Spot) -> Vec<Step> {
    let mut steps = Vec::with_capacity(outline.corners().len() + 2);
    steps.extend(outline.corners().first().map(|corner| Step::Move(place(corner.at))));
    outline.segments().for_each(|segment| add(&mut steps, segment, &place));
    steps.push(Step::Close);
    steps
}

fn add(steps: &mut Vec<Step>, segment: Segment, place: &impl Fn(Point) -> Spot) {
    if segment.bulge == 0.0 {
        steps.push(Step::Line(place(segment.to)));
        return;
    }
    let mut from = segment.from;
    for Piece { to, leaves, arrives } in curves(segment) {
        steps.push(Step::Curve(place(from_by(from, leaves)), place(from_by(to, arrives)), place(to)));
        from = to;
    }
}

fn from_by(at: Point, (u, v): (f64, f64)) -> Point {
    Point::new(at.u + Length::mm(u), at.v + Length::mm(v))
}

/// What one curve stands for at most: it then leaves the arc by less than a thirty-thousandth of its radius.
const MOST: f64 = core::f64::consts::FRAC_PI_2;

/// One of the curves that make up an arc.
struct Piece {
    to: Point,
    /// From its start to its first handle.
    leaves: (f64, f64),
    /// From its end to its second one.
    arrives: (f64, f64),
}

// Source: the tangents' length 4/3 tan(θ/4) of a cubic that meets an arc in its ends and its middle; from memory.
fn curves(segment: Segment) -> Vec<Piece> {
    let angle = 4.0 * libm::atan(segment.bulge);
    let pieces = (1_u8..=4).find(|count| angle.abs() <= MOST * f64::from(*count) + 1e-9).unwrap_or(4);
    let turn = angle / f64::from(pieces);
    let (du, dv) = ((segment.to.u - segment.from.u).in_mm(), (segment.to.v - segment.from.v).in_mm());
    // The centre lies to the left of a chord whose arc turns counter-clockwise by less than half a turn.
    let off = (1.0 - segment.bulge * segment.bulge) / (4.0 * segment.bulge);
    let centre = from_by(segment.from, (du / 2.0 - dv * off, dv / 2.0 + du * off));
    let (ru, rv) = ((segment.from.u - centre.u).in_mm(), (segment.from.v - centre.v).in_mm());
    let handle = 4.0 / 3.0 * libm::tan(turn / 4.0);
    let at = |piece: u8| {
        let (sin, cos) = libm::sincos(turn * f64::from(piece));
        (ru * cos - rv * sin, ru * sin + rv * cos)
    };
    (0..pieces)
        .map(|piece| {
            let (start, end) = (at(piece), at(piece + 1));
            let to = if piece + 1 == pieces { segment.to } else { from_by(centre, end) };
            let (leaves, arrives) = ((-start.1 * handle, start.0 * handle), (end.1 * handle, -end.0 * handle));
            Piece { to, leaves, arrives }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Points of the curves lie on the circle, wherever along them they are.
    #[test]
    fn curves_keep_to_their_arc() {
        for bulge in [1.0, -1.0, 0.3, -0.7, 2.5] {
            let segment = Segment { from: Point::default(), to: Point::new(Length::mm(40.0), Length::mm(30.0)), bulge };
            let radius = segment.radius().in_mm();
            let off = (1.0 - bulge * bulge) / (4.0 * bulge);
            let centre = (20.0 - 30.0 * off, 15.0 + 40.0 * off);
            let mut steps = vec![Step::Move(Spot::default())];
            add(&mut steps, segment, &|point| Spot::new(point.u, point.v));
            let mut from = (0.0, 0.0);
            for step in &steps[1..] {
                let Step::Curve(one, two, to) = step else { panic!("{step:?}") };
                let [one, two, to] = [one, two, to].map(|spot| (spot.x.in_mm(), spot.y.in_mm()));
                for share in [0.2, 0.5, 0.8, 1.0_f64] {
                    let rest = 1.0 - share;
                    let mixed = |a: f64, b: f64, c: f64, d: f64| {
                        a * rest * rest * rest
                            + 3.0 * b * rest * rest * share
                            + 3.0 * c * rest * share * share
                            + d * share * share * share
                    };
                    let (x, y) = (mixed(from.0, one.0, two.0, to.0), mixed(from.1, one.1, two.1, to.1));
                    let apart = libm::hypot(x - centre.0, y - centre.1) - radius;
                    assert!(apart.abs() < radius / 3000.0, "{apart} of {radius} with {bulge}");
                }
                from = to;
            }
            assert!((from.0 - 40.0).abs() < 1e-9 && (from.1 - 30.0).abs() < 1e-9);
        }
    }

    #[test]
    fn colours_are_read_as_ranges_write_them() {
        assert_eq!(Colour::from_hex("#0e5a5e"), Some(Colour::ACCENT));
        for wrong in ["", "0e5a5e", "#0e5a5", "#0e5a5g", "#äää"] {
            assert_eq!(Colour::from_hex(wrong), None, "{wrong}");
        }
    }
}
