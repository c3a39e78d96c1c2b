//! Tables: widths of columns, rows that stay whole, the head again on every page.

use slotwright_core::units::quantity::Length;

use super::Paper;
use super::flow::HAIR;
use super::sheet::{Kind, Node};
use super::text::Style;
use crate::vector::{Align, Colour, Spot, Stroke, Vector};

/// How wide a column is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Width {
    /// As its longest text.
    Fit,
    /// Such a share of what the others leave.
    Share(f64),
    /// So wide.
    Fixed(Length),
}

/// A column.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// What stands above it.
    pub name: String,
    /// How wide it is.
    pub width: Width,
    /// Where its texts stand.
    pub align: Align,
}

impl Column {
    /// As wide as its longest text.
    pub fn fit(name: impl Into<String>) -> Self {
        Self { name: name.into(), width: Width::Fit, align: Align::Start }
    }

    /// Such a share of what the others leave.
    pub fn share(name: impl Into<String>, share: f64) -> Self {
        Self { width: Width::Share(share), ..Self::fit(name) }
    }

    /// So wide.
    pub fn fixed(name: impl Into<String>, width: Length) -> Self {
        Self { width: Width::Fixed(width), ..Self::fit(name) }
    }

    /// The same with texts at its end, as figures want it.
    #[must_use]
    pub fn end(self) -> Self {
        Self { align: Align::End, ..self }
    }

    /// The same with texts in its middle.
    #[must_use]
    pub fn middle(self) -> Self {
        Self { align: Align::Middle, ..self }
    }
}

/// What a cell holds.
#[derive(Clone, Debug, PartialEq)]
pub enum Cell {
    /// Text.
    Text(String),
    /// Text that stands out.
    Strong(String),
    /// Text in the second voice.
    Soft(String),
    /// A box to tick.
    Tick,
    /// A picture in its size and what it shows in words.
    Picture(Vector, String),
}

impl From<&str> for Cell {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<String> for Cell {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

/// A row.
#[derive(Clone, Debug, PartialEq)]
pub enum Row {
    /// Cells, one for each column.
    Cells(Vec<Cell>),
    /// The same as a sum below others.
    Total(Vec<Cell>),
    /// A text over the whole width for the rows that follow.
    Group(String),
}

impl Row {
    /// A row of cells.
    pub fn of<T: Into<Cell>>(cells: impl IntoIterator<Item = T>) -> Self {
        Self::Cells(cells.into_iter().map(Into::into).collect())
    }

    /// A row of sums.
    pub fn total<T: Into<Cell>>(cells: impl IntoIterator<Item = T>) -> Self {
        Self::Total(cells.into_iter().map(Into::into).collect())
    }

    /// A text for the rows that follow.
    pub fn group(text: impl Into<String>) -> Self {
        Self::Group(text.into())
    }
}

/// A table.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// Its columns.
    pub columns: Vec<Column>,
    /// Its rows.
    pub rows: Vec<Row>,
}

impl Table {
    /// A table without rows.
    pub fn new(columns: impl IntoIterator<Item = Column>) -> Self {
        Self { columns: columns.into_iter().collect(), rows: Vec::new() }
    }
}

/// Between columns.
pub(super) const GUTTER: Length = Length::mm(5.0);
/// Above and below the text of a row.
const PAD: Length = Length::mm(1.15);
/// What a box to tick is in the text face.
pub(super) const BOX: &str = "☐";

/// A cell as it will be set.
#[derive(Clone, Debug)]
enum Set {
    Lines(Vec<String>, Style),
    Picture(Vector, String),
}

impl Set {
    fn is_empty(&self) -> bool {
        matches!(self, Self::Lines(lines, _) if lines.is_empty())
    }
}

/// Where a column stands.
#[derive(Clone, Copy, Debug)]
pub(super) struct Place {
    pub(super) x: Length,
    pub(super) width: Length,
    pub(super) align: Align,
}

/// Nothing is read or seen of an empty cell.
const NOTHING: &Cell = &Cell::Text(String::new());

impl Paper {
    /// A table over the width. Its head stands on every page; a row is broken between pages only if a page is too
    /// small for it.
    pub fn table(&mut self, table: &Table) {
        let places = self.places(table);
        let node = self.sheets.node(self.node, Kind::Table);
        let names = table.columns.iter().map(|column| column.name.as_str());
        let head: Vec<Set> = names
            .zip(&places)
            .map(|(name, place)| Set::Lines(self.faces.lines(name, &Style::NAME, place.width), Style::NAME))
            .collect();
        let group = self.sheets.node(node, Kind::Head);
        let row = self.sheets.node(group, Kind::Row);
        let nodes: Vec<Node> = places.iter().map(|_| self.sheets.node(row, Kind::ColumnName)).collect();
        // A head is not left alone either.
        self.keep(high(&head) + Style::BODY.leading() * 3.0);
        self.head(&head, &places, Some(&nodes));
        let rows = self.sheets.node(node, Kind::Rows);
        for (number, row) in table.rows.iter().enumerate() {
            let next = table.rows.get(number + 1);
            self.row(rows, row, next, &places, &head);
        }
        self.space(Length::mm(5.0));
    }

    fn head(&mut self, head: &[Set], places: &[Place], nodes: Option<&[Node]>) {
        let y = self.y;
        let height = high(head);
        for (number, (set, place)) in head.iter().zip(places).enumerate() {
            let Set::Lines(lines, style) = set else { continue };
            // Names stand on the line, the short ones as low as the long ones.
            let top = y + height - lines.iter().map(|_| style.leading()).sum::<Length>() - PAD;
            let inks = self.inks(lines, style, Spot::new(place.x, top), place.width, place.align);
            match nodes.and_then(|nodes| nodes.get(number)) {
                Some(node) => self.sheets.put(*node, inks),
                None => self.sheets.repeat(inks),
            }
        }
        self.y = y + height;
        self.is_fresh = false;
        self.rule_at(self.y, Stroke::mm(0.35, Colour::INK));
    }

    fn row(&mut self, rows: Node, row: &Row, next: Option<&Row>, places: &[Place], head: &[Set]) {
        let (mut sets, wide): (Vec<Set>, Vec<Place>) = match row {
            Row::Cells(_) | Row::Total(_) => (self.sets(row, places), places.to_vec()),
            Row::Group(text) => {
                let place = Place { x: self.margins.left, width: self.width(), align: Align::Start };
                let style = Style::MINOR;
                (vec![Set::Lines(self.faces.lines(text, &style, place.width), style)], vec![place])
            }
        };
        let is_group = matches!(row, Row::Group(_));
        let above = if is_group { Length::mm(2.0) } else { Length::ZERO };
        let follows = next.filter(|_| is_group).map_or(Length::ZERO, |next| high(&self.sets(next, places)));
        let wanted = above + high(&sets) + follows;
        // A row that no page takes as a whole begins here.
        if !self.takes(wanted) && wanted < self.height() - high(head) {
            self.go_on(head, places);
        }
        let node = self.sheets.node(rows, Kind::Row);
        let columns = u32::try_from(places.len()).unwrap_or(u32::MAX);
        let over = if is_group { columns } else { 1 };
        let cells: Vec<Node> = wide.iter().map(|_| self.sheets.node(node, Kind::Cell(over))).collect();
        self.y += above;
        while !self.takes(high(&sets)) && !sets.iter().all(Set::is_empty) {
            let room = self.room() - PAD * 2.0;
            let (now, later): (Vec<Set>, Vec<Set>) = sets.into_iter().map(|set| broken(set, room)).unzip();
            self.set_row(&now, &wide, &cells);
            self.go_on(head, places);
            sets = later;
        }
        if matches!(row, Row::Total(_)) {
            self.rule_at(self.y, Stroke::mm(0.35, Colour::INK));
        }
        self.set_row(&sets, &wide, &cells);
        let rule = Stroke::mm(HAIR, if is_group { Colour::ACCENT } else { Colour::LINE });
        self.rule_at(self.y, rule);
    }

    /// Whether so much goes on this page.
    fn takes(&self, height: Length) -> bool {
        height.in_mm() <= self.room().in_mm() + 1e-6
    }

    fn go_on(&mut self, head: &[Set], places: &[Place]) {
        self.next_page();
        self.head(head, places, None);
    }

    fn set_row(&mut self, sets: &[Set], places: &[Place], cells: &[Node]) {
        let (top, height) = (self.y + PAD, high(sets));
        for ((set, place), node) in sets.iter().zip(places).zip(cells) {
            match set {
                Set::Lines(lines, style) => {
                    let inks = self.inks(lines, style, Spot::new(place.x, top), place.width, place.align);
                    self.sheets.put(*node, inks);
                }
                Set::Picture(vector, alternative) => {
                    let figure = self.sheets.node(*node, Kind::Figure(alternative.clone()));
                    let inks = self.picture_inks(vector, Spot::new(place.x, top));
                    self.sheets.put(figure, inks);
                }
            }
        }
        self.y += height;
    }

    /// The cells of a row as they will be set.
    fn sets(&self, row: &Row, places: &[Place]) -> Vec<Set> {
        let (cells, total) = match row {
            Row::Cells(cells) => (cells.as_slice(), false),
            Row::Total(cells) => (cells.as_slice(), true),
            Row::Group(_) => (&[][..], false),
        };
        let cells = cells.iter().chain(core::iter::repeat(NOTHING));
        let set = cells.zip(places).map(|(cell, place)| {
            let style = style(cell, total);
            match cell {
                Cell::Text(text) | Cell::Strong(text) | Cell::Soft(text) => {
                    Set::Lines(self.faces.lines(text, &style, place.width), style)
                }
                Cell::Tick => Set::Lines(vec![BOX.to_owned()], style),
                Cell::Picture(vector, alternative) => {
                    Set::Picture(vector.fitted(place.width, self.height() / 2.0), alternative.clone())
                }
            }
        });
        set.collect()
    }
}

pub(super) fn style(cell: &Cell, total: bool) -> Style {
    let style = match cell {
        Cell::Strong(_) => Style::STRONG,
        Cell::Soft(_) => Style::BODY.coloured(Colour::SOFT),
        Cell::Text(_) | Cell::Tick | Cell::Picture(..) => {
            if total {
                Style::STRONG
            } else {
                Style::BODY
            }
        }
    };
    style.level()
}

/// How high a row is.
fn high(sets: &[Set]) -> Length {
    let high = sets.iter().map(|set| match set {
        Set::Lines(lines, style) => lines.iter().map(|_| style.leading()).sum::<Length>(),
        Set::Picture(vector, _) => vector.height,
    });
    high.fold(Length::ZERO, Length::max) + PAD * 2.0
}

/// What of a cell goes into that room, one line at least, and what is left of it.
fn broken(set: Set, room: Length) -> (Set, Set) {
    match set {
        Set::Lines(mut lines, style) => {
            let fits = (0..lines.len()).take_while(|number| {
                let count = u32::try_from(*number).map_or(f64::MAX, |number| f64::from(number) + 1.0);
                style.leading() * count <= room
            });
            let count = fits.count().max(1).min(lines.len());
            let later = lines.split_off(count);
            (Set::Lines(lines, style), Set::Lines(later, style))
        }
        Set::Picture(..) => (set, Set::Lines(Vec::new(), Style::BODY)),
    }
}
