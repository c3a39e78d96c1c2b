//! How text looks, how long it is, and how it is broken into lines.

use slotwright_core::units::quantity::Length;

use super::face::{Face, Faces};
use super::format::pt;
use crate::vector::Colour;

/// How a text is set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Style {
    /// Its face.
    pub face: Face,
    /// Height of its type.
    pub size: Length,
    /// Its colour.
    pub colour: Colour,
    /// Whether all figures have one width, as columns want it.
    pub level: bool,
}

impl Style {
    /// Plain text.
    pub const BODY: Self = Self::of(Face::Text, 9.5, Colour::INK);
    /// Plain text that stands out.
    pub const STRONG: Self = Self::of(Face::Strong, 9.5, Colour::INK);
    /// The second voice.
    pub const SMALL: Self = Self::of(Face::Text, 8.0, Colour::SOFT);
    /// What is above a column or beside a value.
    pub const NAME: Self = Self::of(Face::Text, 8.0, Colour::SOFT);
    /// The title of a document.
    pub const TITLE: Self = Self::of(Face::Heading, 22.0, Colour::INK);
    /// A heading.
    pub const HEADING: Self = Self::of(Face::Heading, 13.0, Colour::INK);
    /// A heading below that.
    pub const MINOR: Self = Self::of(Face::Strong, 9.5, Colour::ACCENT);
    /// What warns of harm.
    pub const CAUTION: Self = Self::of(Face::Text, 9.5, Colour::WARN);

    /// A style with its size in points.
    pub const fn of(face: Face, points: f64, colour: Colour) -> Self {
        Self { face, size: pt(points), colour, level: false }
    }

    /// The same with figures of one width.
    #[must_use]
    pub const fn level(self) -> Self {
        Self { level: true, ..self }
    }

    /// The same in another size, in points.
    #[must_use]
    pub const fn sized(self, points: f64) -> Self {
        Self { size: pt(points), ..self }
    }

    /// The same in another colour.
    #[must_use]
    pub const fn coloured(self, colour: Colour) -> Self {
        Self { colour, ..self }
    }

    /// From one line to the next.
    pub fn leading(&self) -> Length {
        self.size * if self.face == Face::Heading { 1.22 } else { 1.4 }
    }

    /// From the top of a line to where its letters stand: the leading is shared out above capitals and below.
    pub(super) fn drop(&self) -> Length {
        // Height of capitals in both faces, 0.67 and 0.70 of the size; from their OS/2 tables.
        let capitals = if self.face == Face::Heading { 0.70 } else { 0.67 };
        (self.leading() + self.size * capitals) / 2.0
    }
}

/// Measures text, and keeps what no face could show.
impl Faces {
    pub(super) fn length(&self, text: &str, style: &Style) -> Length {
        style.size * self.width(text, style.face, style.level)
    }

    /// The lines of a text that is broken at spaces and behind hyphens, and within a word only where the word alone
    /// is too long. Line ends in the text stay. A space at which a line is broken stays at its end, where nothing is
    /// seen of it but readers know that a word ends. No text is one empty line.
    pub(super) fn lines(&self, text: &str, style: &Style, width: Length) -> Vec<String> {
        let mut lines = Vec::new();
        for paragraph in text.split('\n') {
            let mut line = String::new();
            for word in words(paragraph) {
                if self.fits(&line, word, style, width) {
                    line.push_str(word);
                    continue;
                }
                if !line.is_empty() {
                    lines.push(core::mem::take(&mut line));
                }
                for letter in word.chars() {
                    let mut buffer = [0; 4];
                    if !line.is_empty() && !self.fits(&line, letter.encode_utf8(&mut buffer), style, width) {
                        lines.push(core::mem::take(&mut line));
                    }
                    line.push(letter);
                }
            }
            lines.push(line);
        }
        lines
    }

    fn fits(&self, line: &str, more: &str, style: &Style, width: Length) -> bool {
        let together = [line, more].concat();
        // A thousandth of a millimetre is for what was measured to be just that wide.
        self.length(together.trim_end_matches(' '), style).in_mm() <= width.in_mm() + 1e-3
    }

    /// The longest piece of a text that is not broken.
    pub(super) fn longest_word(&self, text: &str, style: &Style) -> Length {
        let pieces = text.split('\n').flat_map(words);
        pieces.map(|word| self.length(word.trim_end_matches(' '), style)).fold(Length::ZERO, Length::max)
    }

    /// The longest line of a text that is not broken anywhere but at its line ends.
    pub(super) fn longest_line(&self, text: &str, style: &Style) -> Length {
        text.split('\n').map(|line| self.length(line, style)).fold(Length::ZERO, Length::max)
    }
}

/// Pieces that stay together, each with the space or hyphen behind it.
fn words(text: &str) -> impl Iterator<Item = &str> {
    text.split_inclusive([' ', '\t', '\u{2009}', '-', '–', '/'])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, mm: f64, expected: &[&str]) {
        assert_eq!(Faces::load().lines(text, &Style::BODY, Length::mm(mm)), expected, "{text}");
    }

    #[test]
    fn lines_are_broken_at_spaces_and_hyphens_alone() {
        check("", 40.0, &[""]);
        check("one two", 400.0, &["one two"]);
        check("one two three", 14.0, &["one two ", "three"]);
        check("one\ntwo", 400.0, &["one", "two"]);
        check("cross-lap", 11.0, &["cross-", "lap"]);
        check("1\u{202f}200 mm", 9.0, &["1\u{202f}200 ", "mm"]);
        check("mmmmmmmm", 8.0, &["mm", "mm", "mm", "mm"]);
    }

    #[test]
    fn no_line_is_longer_than_its_room() {
        let faces = Faces::load();
        let text = "The back goes in last, from above, and a wedge-shaped bevel finds the slot by itself.";
        for mm in [12.0, 30.0, 55.0, 90.0] {
            let lines = faces.lines(text, &Style::BODY, Length::mm(mm));
            assert_eq!(lines.concat(), text);
            for line in lines {
                assert!(faces.length(line.trim_end(), &Style::BODY).in_mm() <= mm + 1e-3, "{line}");
            }
        }
    }
}
