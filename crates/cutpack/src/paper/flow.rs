//! Pages that are filled from the top: where the next thing goes, headings and paragraphs.

use slotwright_core::units::quantity::Length;

use super::Paper;
use super::format::Format;
use super::sheet::{Ink, Kind, Landmark, Line, Node, Page};
use super::text::Style;
use crate::vector::{Align, Colour, Fill, Shape, Spot, Stroke, line, rectangle};

/// A heading is not left alone: that much has to have room below it.
const BELOW_HEADING: Length = Length::mm(16.0);
/// Neither the first line of a paragraph nor its last stands alone on a page.
const TOGETHER: usize = 2;
/// Text is no wider than can be read with ease: about 85 letters of plain text. Common practice.
const WIDEST: Length = Length::mm(140.0);
/// Width of hairlines. Source: ISO 128-2:2020, the series of line widths.
pub(super) const HAIR: f64 = 0.18;

impl Paper {
    /// Opens the next page.
    pub fn next_page(&mut self) {
        self.sheets.pages.push(Page { format: self.setting.format, pieces: Vec::new() });
        self.y = self.margins.top;
        self.is_fresh = true;
    }

    /// Opens the next page, and the following ones, in another format.
    pub fn next_page_on(&mut self, format: Format) {
        self.setting.format = format;
        self.next_page();
    }

    /// Width of what is set.
    pub fn width(&self) -> Length {
        self.setting.format.width - self.margins.left - self.margins.right
    }

    /// Height of what is set on a page.
    pub fn height(&self) -> Length {
        self.setting.format.height - self.margins.top - self.margins.bottom
    }

    /// What is left of the page.
    pub fn room(&self) -> Length {
        (self.setting.format.height - self.margins.bottom - self.y).max(Length::ZERO)
    }

    /// Goes on to the next page unless so much is left of this one, or nothing stands on it yet.
    pub fn keep(&mut self, height: Length) {
        if self.room() < height && !self.is_fresh {
            self.next_page();
        }
    }

    /// Leaves room, though none at the top of a page.
    pub fn space(&mut self, height: Length) {
        if !self.is_fresh {
            self.y += height.min(self.room());
        }
    }

    /// How long a text is in one line.
    pub fn length(&self, text: &str, style: &Style) -> Length {
        self.faces.length(text, style)
    }

    /// The title of the document, over its width.
    pub fn title(&mut self, text: &str) {
        self.headed(1, text, &Style::TITLE, Length::ZERO, Length::mm(3.5));
    }

    /// A heading.
    pub fn heading(&mut self, text: &str) {
        self.headed(2, text, &Style::HEADING, Length::mm(8.0), Length::mm(2.2));
    }

    /// A heading below one.
    pub fn minor(&mut self, text: &str) {
        self.headed(3, text, &Style::MINOR, Length::mm(4.5), Length::mm(1.0));
    }

    /// A heading; none without a text, since nobody could go to it.
    fn headed(&mut self, level: u16, text: &str, style: &Style, above: Length, below: Length) {
        if text.trim().is_empty() {
            return;
        }
        let lines = self.faces.lines(text, style, self.width());
        let height = lines.iter().map(|_| style.leading()).sum::<Length>();
        self.space(above);
        self.keep(height + below + BELOW_HEADING);
        let landmark =
            Landmark { level, text: text.to_owned(), page: self.sheets.pages.len().saturating_sub(1), y: self.y };
        self.sheets.landmarks.push(landmark);
        let node = self.sheets.node(self.node, Kind::Heading(level, text.to_owned()));
        self.set_lines(node, &lines, style, (self.margins.left, self.width()));
        self.space(below);
    }

    /// A paragraph of plain text.
    pub fn paragraph(&mut self, text: &str) {
        self.text(text, &Style::BODY);
    }

    /// A paragraph in a style.
    pub fn text(&mut self, text: &str, style: &Style) {
        let width = self.width().min(WIDEST);
        let lines = self.faces.lines(text, style, width);
        let node = self.sheets.node(self.node, Kind::Paragraph);
        self.set_lines(node, &lines, style, (self.margins.left, width));
        self.space(style.size * 0.6);
    }

    /// A paragraph that warns of harm, with a coloured rule at its start; it is not broken between pages.
    pub fn caution(&mut self, text: &str) {
        self.ruled(text, &Style::CAUTION);
    }

    /// A paragraph that says what is not right, in the same way.
    pub fn stop(&mut self, text: &str) {
        self.ruled(text, &Style::CAUTION.coloured(Colour::STOP));
    }

    fn ruled(&mut self, text: &str, style: &Style) {
        let inset = Length::mm(4.0);
        let width = self.width().min(WIDEST) - inset;
        let lines = self.faces.lines(text, style, width);
        let height = lines.iter().map(|_| style.leading()).sum::<Length>();
        self.keep(height);
        let rule = rectangle(Spot::new(self.margins.left, self.y), Length::mm(0.9), height);
        self.sheets.adorn(Shape { steps: rule, fill: Some(Fill::of(style.colour)), stroke: None });
        let node = self.sheets.node(self.node, Kind::Paragraph);
        self.set_lines(node, &lines, &style.coloured(Colour::INK), (self.margins.left + inset, width));
        self.space(style.size * 0.8);
    }

    /// A hairline over the width.
    pub fn rule(&mut self) {
        self.space(Length::mm(2.0));
        self.rule_at(self.y, Stroke::mm(HAIR, Colour::LINE));
        self.space(Length::mm(2.0));
    }

    pub(super) fn rule_at(&mut self, y: Length, stroke: Stroke) {
        let (left, right) = (self.margins.left, self.margins.left + self.width());
        let steps = line(Spot::new(left, y), Spot::new(right, y));
        self.sheets.adorn(Shape { steps, fill: None, stroke: Some(stroke) });
    }

    /// Lines one below the other, page after page.
    pub(super) fn set_lines(&mut self, node: Node, lines: &[String], style: &Style, place: (Length, Length)) {
        let leading = style.leading();
        let mut rest = lines;
        while !rest.is_empty() {
            let mut fits = rest.iter().scan(Length::ZERO, |filled, _| {
                *filled += leading;
                Some(*filled)
            });
            let room = self.room() + Length::mm(1e-6);
            let mut count = fits.position(|filled| filled > room).unwrap_or(rest.len());
            if count < rest.len() && rest.len() - count < TOGETHER {
                count = rest.len().saturating_sub(TOGETHER);
            }
            if count < rest.len() && count < TOGETHER {
                count = 0;
            }
            if count == 0 && self.is_fresh {
                count = 1;
            }
            let (now, later) = rest.split_at(count.min(rest.len()));
            let inks = self.inks(now, style, Spot::new(place.0, self.y), place.1, Align::Start);
            self.sheets.put(node, inks);
            self.y += now.iter().map(|_| leading).sum::<Length>();
            self.is_fresh &= now.is_empty();
            rest = later;
            if !rest.is_empty() {
                self.next_page();
            }
        }
    }

    /// Lines one below the other from a place at their top left, each in its width.
    pub(super) fn inks(&self, lines: &[String], style: &Style, at: Spot, width: Length, align: Align) -> Vec<Ink> {
        let mut y = at.y;
        let mut inks = Vec::with_capacity(lines.len());
        for text in lines {
            let long = self.faces.length(text.trim_end(), style);
            let x = at.x
                + match align {
                    Align::Start => Length::ZERO,
                    Align::Middle => (width - long) / 2.0,
                    Align::End => width - long,
                };
            let at = Spot::new(x, y + style.drop());
            if !text.is_empty() {
                inks.push(Ink::Line(Line { text: text.clone(), at, style: *style, upright: false }));
            }
            y += style.leading();
        }
        inks
    }
}
