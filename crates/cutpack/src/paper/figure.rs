//! Pictures with their captions, alone or side by side.

use slotwright_core::units::quantity::Length;

use super::Paper;
use super::sheet::{Kind, Node};
use super::text::Style;
use crate::vector::{Align, Spot, Vector};

/// From one plate to the next, across and down.
const APART: Length = Length::mm(7.0);
/// From a picture to its words.
const BELOW: Length = Length::mm(1.6);

/// A heading with the white above and below it.
const HEADED: Length = Length::mm(18.0);
/// Pictures are made smaller down to this part of their size for another row of them.
const SMALLER: f64 = 0.7;

/// A picture with its words, one of several side by side.
#[derive(Clone, Debug)]
pub struct Plate {
    /// The picture; one that is too wide for its column is made smaller.
    pub vector: Vector,
    /// What it shows, for somebody who listens.
    pub alternative: String,
    /// What stands below it, strong: its number or name.
    pub name: String,
    /// What stands below that.
    pub text: String,
}

impl Paper {
    /// A picture in its size, with a caption if there is one to say. One that is too large for the page is made
    /// smaller: by which factor comes back, so that a stated scale is not promised wrongly.
    pub fn figure(&mut self, vector: &Vector, alternative: &str, caption: &str) -> f64 {
        let style = Style::SMALL;
        let lines = if caption.is_empty() { Vec::new() } else { self.faces.lines(caption, &style, self.width()) };
        let words = lines.iter().map(|_| style.leading()).sum::<Length>();
        let words = if lines.is_empty() { words } else { words + BELOW };
        let shown = vector.fitted(self.width(), self.height() - words);
        self.keep(shown.height + words);
        let at = Spot::new(self.margins.left, self.y);
        let node = self.sheets.node(self.node, Kind::Figure(alternative.to_owned()));
        let inks = self.picture_inks(&shown, at);
        self.sheets.put(node, inks);
        if !lines.is_empty() {
            let below = Spot::new(at.x, at.y + shown.height + BELOW);
            let caption = self.sheets.node(self.node, Kind::Caption);
            let inks = self.inks(&lines, &style, below, self.width(), Align::Start);
            self.sheets.put(caption, inks);
        }
        self.y += shown.height + words;
        self.is_fresh = false;
        self.space(Length::mm(4.0));
        if vector.width > Length::ZERO { shown.width / vector.width } else { 1.0 }
    }

    /// Pictures under a heading, side by side in so many columns, each whole with its words; rows of them go on from page to page.
    /// They are made a little smaller where that lets one row more go on a page.
    pub fn plates(&mut self, heading: &str, columns: u32, plates: &[Plate]) {
        let count = columns.max(1);
        let width = (self.width() - APART * f64::from(count - 1)) / f64::from(count);
        let side_by_side = usize::try_from(count).unwrap_or(1);
        let tallest = self.tallest(width, plates);
        let mut heading = Some(heading);
        for row in plates.chunks(side_by_side) {
            let shown: Vec<Vector> = row.iter().map(|plate| plate.vector.fitted(width, tallest)).collect();
            let picture = shown.iter().map(|vector| vector.height).fold(Length::ZERO, Length::max);
            let words: Vec<(Vec<String>, Vec<String>)> =
                row.iter().map(|plate| self.plate_words(plate, width)).collect();
            let below = words.iter().map(high).fold(Length::ZERO, Length::max);
            let height = picture + BELOW + below;
            if let Some(heading) = heading.take() {
                // It stands above its first row.
                self.keep((height + HEADED).min(self.height()));
                self.heading(heading);
            }
            self.keep(height);
            let mut x = self.margins.left;
            for ((plate, vector), (name, text)) in row.iter().zip(&shown).zip(&words) {
                let at = Spot::new(x, self.y + picture - vector.height);
                let group = self.sheets.node(self.node, Kind::Group);
                let node = self.sheets.node(group, Kind::Figure(plate.alternative.clone()));
                let inks = self.picture_inks(vector, at);
                self.sheets.put(node, inks);
                self.words(group, (name, text), Spot::new(x, self.y + picture + BELOW), width);
                x += width + APART;
            }
            self.y += height;
            self.is_fresh = false;
            self.space(APART);
        }
    }

    /// How high pictures of that width may be, so that no page is left half empty for a row that hardly fits.
    fn tallest(&self, width: Length, plates: &[Plate]) -> Length {
        // With room for the heading: it stands on a page as well.
        let page = self.height() - HEADED + APART;
        let most = self.height() * 0.8;
        let full = plates.iter().map(|plate| plate.vector.fitted(width, most).height).fold(Length::ZERO, Length::max);
        let below = plates.iter().map(|plate| high(&self.plate_words(plate, width))).fold(Length::ZERO, Length::max);
        let beside = BELOW + below + APART;
        let rows = libm::floor(page / (full + beside)).max(1.0);
        let lower = page / (rows + 1.0) - beside;
        if lower >= full * SMALLER { lower } else { most }
    }

    /// The words of a plate as lines.
    fn plate_words(&self, plate: &Plate, width: Length) -> (Vec<String>, Vec<String>) {
        (self.faces.lines(&plate.name, &Style::STRONG, width), self.faces.lines(&plate.text, &Style::BODY, width))
    }

    fn words(&mut self, group: Node, (name, text): (&[String], &[String]), at: Spot, width: Length) {
        let node = self.sheets.node(group, Kind::Caption);
        let inks = self.inks(name, &Style::STRONG, at, width, Align::Start);
        self.sheets.put(node, inks);
        let below = name.iter().map(|_| Style::STRONG.leading()).sum::<Length>();
        let inks = self.inks(text, &Style::BODY, Spot::new(at.x, at.y + below), width, Align::Start);
        self.sheets.put(node, inks);
    }
}

/// How high the words of a plate are.
fn high((name, text): &(Vec<String>, Vec<String>)) -> Length {
    name.iter().chain(text).map(|_| Style::BODY.leading()).sum()
}
