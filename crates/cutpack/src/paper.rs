//! Documents on paper: PDF with real text, embedded faces and tags for who listens to it.
//!
//! [`Paper`] fills pages from the top: headings, paragraphs, tables whose head stands on every page, lists to tick,
//! pictures. [`Block`] puts things where they are wanted, as labels do. Sizes are the core's `Length`, type is
//! measured by [`pt`]. Every text comes from the caller; this module knows no language. The same calls give the same
//! bytes, natively and in WebAssembly: no clock and no chance, and the document's number follows from what it holds.
//!
//! What no face can show does not vanish: a box stands for such a letter, the letter itself stays in the file for
//! search and copying, and [`Written::lacking`] names it. What had no room in one line is named by [`Written::cut`],
//! a picture that had none by [`Written::missing`].
//!
//! ```
//! use slotwright_cutpack::paper::{Column, Format, Paper, Row, Running, Setting, Table};
//!
//! let mut paper = Paper::new(Setting {
//!     format: Format::A4,
//!     title: "Cut list".to_owned(),
//!     language: "en-GB".to_owned(),
//!     running: Some(Running {
//!         left: "Fenland".to_owned(),
//!         right: "Batch 12".to_owned(),
//!         foot: "Cut dry and face up".to_owned(),
//!         page_of: |page, of| format!("{page} of {of}"),
//!     }),
//! });
//! paper.title("Cut list");
//! paper.paragraph("Sheets are coated before they are cut.");
//! let mut table = Table::new([Column::share("Part", 1.0), Column::fit("mm").end()]);
//! table.rows.push(Row::of(["Top", "1 200"]));
//! paper.table(&table);
//! let written = paper.write()?;
//! assert!(written.bytes.starts_with(b"%PDF-1.7") && written.lacking.is_empty());
//! # Ok::<(), slotwright_cutpack::paper::WriteError>(())
//! ```

use std::collections::BTreeMap;

use slotwright_core::units::quantity::Length;

mod block;
mod columns;
mod face;
mod figure;
mod flow;
mod format;
mod kerning;
mod list;
mod pdf;
pub mod qr;
mod running;
mod sheet;
mod table;
mod text;

pub use block::Block;
pub use face::Face;
pub use figure::Plate;
pub use format::{Format, Labels, pt};
pub use table::{Cell, Column, Row, Table, Width};
pub use text::Style;

use face::Faces;
use sheet::{Node, ROOT, Sheets};

/// What a document is, and what stands on each of its pages.
#[derive(Clone, Debug)]
pub struct Setting {
    /// The paper.
    pub format: Format,
    /// What the document is called; readers show it in place of the file's name.
    pub title: String,
    /// The language of its texts. Source: BCP 47, for example `en-GB`.
    pub language: String,
    /// What stands at head and foot of all pages; none for labels.
    pub running: Option<Running>,
}

/// Head and foot of all pages.
#[derive(Clone, Debug)]
pub struct Running {
    /// At the head to the left.
    pub left: String,
    /// At the head to the right.
    pub right: String,
    /// At the foot to the left.
    pub foot: String,
    /// Says which page it is, of how many.
    pub page_of: fn(u32, u32) -> String,
}

/// A finished document.
#[derive(Clone, Debug, PartialEq)]
pub struct Written {
    /// The file.
    pub bytes: Vec<u8>,
    /// Letters that no face has, in their order.
    pub lacking: Vec<Lacking>,
    /// Texts of which only the beginning had room, in the order in which they were set.
    pub cut: Vec<String>,
    /// Pictures that had no room, by what they would show, in their order.
    pub missing: Vec<String>,
}

/// A letter that no face has.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lacking {
    /// The letter.
    pub letter: char,
    /// The first text in which it stands.
    pub text: String,
}

/// Why there is no file. Neither has been seen with the settings above: a caller tells it and goes on without.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WriteError {
    /// The paper has no size.
    NoPaper,
    /// What the writer of PDF objects to, in its words.
    Refused(String),
}

impl core::fmt::Display for WriteError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::NoPaper => f.write_str("no-paper"),
            Self::Refused(why) => f.write_str(why),
        }
    }
}

impl core::error::Error for WriteError {}

/// White round what is set. Common practice: room to punch on the left.
#[derive(Clone, Copy, Debug)]
struct Margins {
    left: Length,
    right: Length,
    top: Length,
    bottom: Length,
}

impl Margins {
    const PAGE: Self =
        Self { left: Length::mm(22.0), right: Length::mm(18.0), top: Length::mm(24.0), bottom: Length::mm(22.0) };
    const NONE: Self = Self { left: Length::ZERO, right: Length::ZERO, top: Length::ZERO, bottom: Length::ZERO };
}

/// A document that is being set.
#[derive(Debug)]
pub struct Paper {
    setting: Setting,
    margins: Margins,
    faces: Faces,
    sheets: Sheets,
    /// How far down the page is filled.
    y: Length,
    /// Whether nothing stands on the page yet.
    is_fresh: bool,
    /// What is being filled of the structure.
    node: Node,
    /// Labels: how they lie, and the number of the next one.
    labels: Option<(Labels, u32)>,
    /// Texts that were cut, each with where it came.
    cut: BTreeMap<usize, String>,
    /// Pictures that had no room.
    missing: Vec<String>,
}

impl Paper {
    /// A document with its first page open.
    pub fn new(setting: Setting) -> Self {
        let margins = if setting.running.is_some() { Margins::PAGE } else { Margins::NONE };
        let mut paper = Self::empty(setting, margins);
        paper.next_page();
        paper
    }

    /// Sheets of labels, the first so many of the first sheet left out since they are used up. The format of the
    /// labels takes the place of the setting's.
    pub fn of_labels(mut setting: Setting, labels: Labels, used: u32) -> Self {
        setting.format = labels.format;
        setting.running = None;
        let mut paper = Self::empty(setting, Margins::NONE);
        paper.labels = Some((labels, used % labels.count().max(1)));
        paper.next_page();
        paper
    }

    fn empty(setting: Setting, margins: Margins) -> Self {
        let (faces, sheets) = (Faces::load(), Sheets::new());
        let y = Length::ZERO;
        Self {
            setting,
            margins,
            faces,
            sheets,
            y,
            is_fresh: true,
            node: ROOT,
            labels: None,
            cut: BTreeMap::new(),
            missing: Vec::new(),
        }
    }

    /// The file.
    ///
    /// # Errors
    ///
    /// If the paper has no size, or the writer of PDF objects to something.
    pub fn write(mut self) -> Result<Written, WriteError> {
        running::set(&mut self);
        let mut written = pdf::write(&self.sheets, &self.faces, &self.setting)?;
        written.cut = self.cut.into_values().collect();
        written.missing = self.missing;
        Ok(written)
    }
}

#[cfg(test)]
mod tests;
