//! Pages as lists of what stands on them, and what each thing is for somebody who listens to them.

use slotwright_core::units::quantity::Length;

use super::format::Format;
use super::text::Style;
use crate::vector::{Shape, Spot};

/// A text in its place: `at` is where its letters begin to stand.
#[derive(Clone, Debug)]
pub(super) struct Line {
    pub(super) text: String,
    pub(super) at: Spot,
    pub(super) style: Style,
    /// Whether it runs upwards.
    pub(super) upright: bool,
}

/// What is drawn.
#[derive(Clone, Debug)]
pub(super) enum Ink {
    Line(Line),
    Shape(Shape),
}

/// Things of a page that belong together: one content of the structure, or none of it.
#[derive(Clone, Debug)]
pub(super) struct Piece {
    pub(super) is: Is,
    pub(super) inks: Vec<Ink>,
}

/// What a piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Is {
    /// What is read.
    Content,
    /// What stands at the head of each page.
    Header,
    /// What stands at the foot of each page.
    Footer,
    /// Rules and grounds.
    Ornament,
}

/// A page.
#[derive(Clone, Debug)]
pub(super) struct Page {
    pub(super) format: Format,
    pub(super) pieces: Vec<Piece>,
}

/// A node of the structure, by its number.
pub(super) type Node = usize;

/// What a node is.
#[derive(Clone, Debug)]
pub(super) enum Kind {
    /// The whole, and parts of it without a meaning of their own.
    Group,
    /// A heading of that level, from 1.
    Heading(u16, String),
    Paragraph,
    List,
    Item,
    /// Mark or name of an item.
    Label,
    /// What an item says.
    Body,
    Table,
    Head,
    Rows,
    Row,
    /// The name of a column.
    ColumnName,
    /// A cell, over so many columns.
    Cell(u32),
    /// A picture and its text alternative.
    Figure(String),
    Caption,
}

/// What a node holds.
#[derive(Clone, Copy, Debug)]
pub(super) enum Child {
    Node(Node),
    /// A piece, by its page and its number there.
    Piece(usize, usize),
}

/// Where a heading stands, for the outline of the document.
#[derive(Clone, Debug)]
pub(super) struct Landmark {
    pub(super) level: u16,
    pub(super) text: String,
    pub(super) page: usize,
    pub(super) y: Length,
}

/// All pages with their structure.
#[derive(Debug)]
pub(super) struct Sheets {
    pub(super) pages: Vec<Page>,
    pub(super) nodes: Vec<(Kind, Vec<Child>)>,
    pub(super) landmarks: Vec<Landmark>,
}

/// The node that holds all others.
pub(super) const ROOT: Node = 0;

impl Sheets {
    pub(super) fn new() -> Self {
        Self { pages: Vec::new(), nodes: vec![(Kind::Group, Vec::new())], landmarks: Vec::new() }
    }

    /// A new node at the end of another one.
    pub(super) fn node(&mut self, within: Node, kind: Kind) -> Node {
        let node = self.nodes.len();
        self.nodes.push((kind, Vec::new()));
        if let Some((_, children)) = self.nodes.get_mut(within) {
            children.push(Child::Node(node));
        }
        node
    }

    /// Puts what is read onto the last page, at the end of a node.
    pub(super) fn put(&mut self, node: Node, inks: Vec<Ink>) {
        let page = self.pages.len().saturating_sub(1);
        let Some(last) = self.pages.last_mut().filter(|_| !inks.is_empty()) else { return };
        let child = Child::Piece(page, last.pieces.len());
        last.pieces.push(Piece { is: Is::Content, inks });
        if let Some((_, children)) = self.nodes.get_mut(node) {
            children.push(child);
        }
    }

    /// Puts what is not read onto the last page.
    pub(super) fn adorn(&mut self, shape: Shape) {
        if let Some(last) = self.pages.last_mut() {
            last.pieces.push(Piece { is: Is::Ornament, inks: vec![Ink::Shape(shape)] });
        }
    }

    /// Puts what was read on an earlier page onto the last page again.
    pub(super) fn repeat(&mut self, inks: Vec<Ink>) {
        if let Some(last) = self.pages.last_mut().filter(|_| !inks.is_empty()) {
            last.pieces.push(Piece { is: Is::Ornament, inks });
        }
    }
}
