//! Lists to read and to tick, and names with their values.

use slotwright_core::units::quantity::Length;

use super::Paper;
use super::sheet::{Kind, Node};
use super::text::Style;
use crate::vector::{Align, Spot};

/// From the start of an item's mark to its text.
const INSET: Length = Length::mm(5.5);
/// From one item to the next, beyond their leading.
const APART: Length = Length::mm(1.4);
/// From one column of names and values to the next.
const GUTTER: Length = Length::mm(6.0);

/// What stands before each item of a list.
const DOT: &str = "•";
/// A box to tick, which our faces have.
const BOX: &str = "☐";

impl Paper {
    /// Items with a dot before each.
    pub fn list<T: AsRef<str>>(&mut self, items: &[T]) {
        self.items(items.iter().map(|item| (DOT.to_owned(), item.as_ref())));
    }

    /// Items with a box to tick before each.
    pub fn ticks<T: AsRef<str>>(&mut self, items: &[T]) {
        self.items(items.iter().map(|item| (BOX.to_owned(), item.as_ref())));
    }

    /// Items with the number of each before it, as the caller writes it.
    pub fn numbered<T: AsRef<str>>(&mut self, items: &[(T, T)]) {
        self.items(items.iter().map(|(number, item)| (number.as_ref().to_owned(), item.as_ref())));
    }

    fn items<'a>(&mut self, items: impl Iterator<Item = (String, &'a str)>) {
        let list = self.sheets.node(self.node, Kind::List);
        let style = Style::BODY;
        let width = self.width() - INSET;
        for (mark, text) in items {
            let lines = self.faces.lines(text, &style, width);
            // The mark stays with the first lines of its item.
            self.keep(style.leading() * if lines.len() > 1 { 2.0 } else { 1.0 });
            let item = self.sheets.node(list, Kind::Item);
            let label = self.sheets.node(item, Kind::Label);
            let inks = self.inks(&[mark], &style, Spot::new(self.margins.left, self.y), INSET, Align::Start);
            self.sheets.put(label, inks);
            let body = self.sheets.node(item, Kind::Body);
            self.set_lines(body, &lines, &style, (self.margins.left + INSET, width));
            self.space(APART);
        }
        self.space(style.size * 0.6 - APART.min(style.size * 0.6));
    }

    /// Names with their values below them, so many side by side.
    pub fn pairs<T: AsRef<str>>(&mut self, columns: u32, pairs: &[(T, T)]) {
        let list = self.sheets.node(self.node, Kind::List);
        let count = columns.max(1);
        let width = (self.width() - GUTTER * f64::from(count - 1)) / f64::from(count);
        let side_by_side = usize::try_from(count).unwrap_or(1);
        for row in pairs.chunks(side_by_side) {
            let set = row.iter().map(|(name, value)| {
                let name = self.faces.lines(name.as_ref(), &Style::NAME, width);
                (name, self.faces.lines(value.as_ref(), &Style::STRONG.level(), width))
            });
            let set: Vec<(Vec<String>, Vec<String>)> = set.collect();
            let high = |(name, value): &(Vec<String>, Vec<String>)| {
                let lines = |lines: &[String], style: &Style| lines.iter().map(|_| style.leading()).sum::<Length>();
                lines(name, &Style::NAME) + lines(value, &Style::STRONG)
            };
            let height = set.iter().map(high).fold(Length::ZERO, Length::max);
            self.keep(height);
            let mut x = self.margins.left;
            for (name, value) in &set {
                self.pair(list, (name, value), Spot::new(x, self.y), width);
                x += width + GUTTER;
            }
            self.y += height;
            self.is_fresh = false;
            self.space(Length::mm(2.2));
        }
        self.space(Length::mm(1.2));
    }

    fn pair(&mut self, list: Node, (name, value): (&[String], &[String]), at: Spot, width: Length) {
        let item = self.sheets.node(list, Kind::Item);
        let label = self.sheets.node(item, Kind::Label);
        let inks = self.inks(name, &Style::NAME, at, width, Align::Start);
        self.sheets.put(label, inks);
        let below = name.iter().map(|_| Style::NAME.leading()).sum::<Length>();
        let body = self.sheets.node(item, Kind::Body);
        let at = Spot::new(at.x, at.y + below);
        let inks = self.inks(value, &Style::STRONG.level(), at, width, Align::Start);
        self.sheets.put(body, inks);
    }
}
