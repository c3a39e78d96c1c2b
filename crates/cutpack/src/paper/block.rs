//! Things where they are wanted: on a label, or in a stretch of a page.

use slotwright_core::units::quantity::Length;

use super::Paper;
use super::sheet::{Ink, Kind, Line, Node};
use super::text::Style;
use crate::vector::{Align, Colour, Fill, Mark, Shape, Spot, Step, Stroke, Vector, line, rectangle};

/// A rectangle to be filled; places in it are from its corner at the top left.
#[derive(Debug)]
pub struct Block<'a> {
    paper: &'a mut Paper,
    at: Spot,
    node: Node,
    /// Its width.
    pub width: Length,
    /// Its height.
    pub height: Length,
}

/// A line that is too long is set smaller, down to this part of its size, before it is cut.
const SMALLEST: f64 = 0.7;
/// Stands for the rest of a line that was cut.
const CUT: &str = "…";

impl Paper {
    /// A stretch over the width, which is not broken between pages.
    pub fn block(&mut self, height: Length) -> Block<'_> {
        self.keep(height);
        let at = Spot::new(self.margins.left, self.y);
        self.y += height;
        self.is_fresh = false;
        let (width, node) = (self.width(), self.sheets.node(self.node, Kind::Group));
        Block { paper: self, at, node, width, height }
    }

    /// The next label; the whole page in a document that has none.
    pub fn label(&mut self) -> Block<'_> {
        let Some((labels, number)) = self.labels else {
            let height = self.height();
            return self.block(height);
        };
        if number == labels.count() {
            self.next_page();
        }
        let number = number % labels.count().max(1);
        self.labels = Some((labels, number.saturating_add(1)));
        self.is_fresh = false;
        let node = self.sheets.node(self.node, Kind::Group);
        Block { paper: self, at: labels.at(number), node, width: labels.width, height: labels.height }
    }
}

impl Block<'_> {
    /// How long a text is in one line.
    pub fn length(&self, text: &str, style: &Style) -> Length {
        self.paper.length(text, style)
    }

    /// One line of text in that width, its top at the place. It is set smaller if it is too long, and cut if that does
    /// not help; see [`super::Written::cut`].
    pub fn line(&mut self, at: Spot, width: Length, text: &str, style: &Style, align: Align) {
        let long = self.paper.length(text, style);
        let factor = if long > width { (width / long).max(SMALLEST) } else { 1.0 };
        let style = Style { size: style.size * factor, ..*style };
        let mut shown = text.to_owned();
        if self.paper.length(&shown, &style).in_mm() > width.in_mm() + 1e-3 {
            let number = self.paper.cut.len();
            self.paper.cut.insert(number, text.to_owned());
            while !shown.is_empty() && self.paper.length(&[shown.as_str(), CUT].concat(), &style) > width {
                shown.pop();
            }
            shown.push_str(CUT);
        }
        self.lines(&[shown], at, width, &style, align);
    }

    /// A text in lines of that width, its top at the place; how high it is comes back.
    pub fn text(&mut self, at: Spot, width: Length, text: &str, style: &Style, align: Align) -> Length {
        let lines = self.paper.faces.lines(text, style, width);
        self.lines(&lines, at, width, style, align);
        lines.iter().map(|_| style.leading()).sum()
    }

    /// How high a text will be in lines of that width.
    pub fn text_height(&self, width: Length, text: &str, style: &Style) -> Length {
        self.paper.faces.lines(text, style, width).iter().map(|_| style.leading()).sum()
    }

    fn lines(&mut self, lines: &[String], at: Spot, width: Length, style: &Style, align: Align) {
        let inks = self.paper.inks(lines, style, self.at.moved(at), width, align);
        let node = self.paper.sheets.node(self.node, Kind::Paragraph);
        self.paper.sheets.put(node, inks);
    }

    /// A heading in one line, for the structure as well; its level is from 1.
    pub fn heading(&mut self, at: Spot, width: Length, text: &str, style: &Style, level: u16) {
        let inks = self.paper.inks(&[text.to_owned()], style, self.at.moved(at), width, Align::Start);
        let kind = if text.trim().is_empty() { Kind::Paragraph } else { Kind::Heading(level.max(1), text.to_owned()) };
        let node = self.paper.sheets.node(self.node, kind);
        self.paper.sheets.put(node, inks);
    }

    /// A picture in its size, its corner at the place, with what it shows in words.
    pub fn picture(&mut self, at: Spot, vector: &Vector, alternative: &str) {
        let node = self.paper.sheets.node(self.node, Kind::Figure(alternative.to_owned()));
        let inks = self.paper.picture_inks(vector, self.at.moved(at));
        self.paper.sheets.put(node, inks);
    }

    /// A picture that has no room here, with what it would show in words; see [`super::Written::missing`].
    pub fn no_room(&mut self, alternative: &str) {
        self.paper.missing.push(alternative.to_owned());
    }

    /// A picture that only adorns, and says nothing.
    pub fn ornament(&mut self, at: Spot, vector: &Vector) {
        for ink in self.paper.picture_inks(vector, self.at.moved(at)) {
            match ink {
                Ink::Shape(shape) => self.paper.sheets.adorn(shape),
                Ink::Line(_) => {}
            }
        }
    }

    /// A straight line that says nothing.
    pub fn rule(&mut self, from: Spot, to: Spot, stroke: Stroke) {
        let steps = line(self.at.moved(from), self.at.moved(to));
        self.paper.sheets.adorn(Shape { steps, fill: None, stroke: Some(stroke) });
    }

    /// A rectangle that says nothing.
    pub fn rectangle(&mut self, at: Spot, width: Length, height: Length, fill: Option<Fill>, stroke: Option<Stroke>) {
        let steps = rectangle(self.at.moved(at), width, height);
        self.paper.sheets.adorn(Shape { steps, fill, stroke });
    }

    /// The edge of the block as a hairline: where a label is to be cut.
    pub fn edge(&mut self, colour: Colour) {
        let stroke = Stroke::mm(super::flow::HAIR, colour);
        self.rectangle(Spot::default(), self.width, self.height, None, Some(stroke));
    }
}

impl Paper {
    pub(super) fn picture_inks(&self, vector: &Vector, at: Spot) -> Vec<Ink> {
        vector.marks.iter().map(|mark| self.ink(mark, at)).collect()
    }

    fn ink(&self, mark: &Mark, by: Spot) -> Ink {
        match mark {
            Mark::Shape(shape) => {
                let steps = shape.steps.iter().map(|step| match step {
                    Step::Move(to) => Step::Move(to.moved(by)),
                    Step::Line(to) => Step::Line(to.moved(by)),
                    Step::Curve(one, two, to) => Step::Curve(one.moved(by), two.moved(by), to.moved(by)),
                    Step::Close => Step::Close,
                });
                Ink::Shape(Shape { steps: steps.collect(), fill: shape.fill, stroke: shape.stroke })
            }
            Mark::Words(words) => {
                let style = Style { size: words.size, colour: words.colour, ..Style::BODY };
                let back = match words.align {
                    Align::Start => Length::ZERO,
                    Align::Middle => self.faces.length(&words.text, &style) / 2.0,
                    Align::End => self.faces.length(&words.text, &style),
                };
                let back = if words.upright { Spot::new(Length::ZERO, back) } else { Spot::new(-back, Length::ZERO) };
                let at = words.at.moved(back).moved(by);
                Ink::Line(Line { text: words.text.clone(), at, style, upright: words.upright })
            }
        }
    }
}
