//! The paper of a pack: what people read at the machine, the bench, the spray room, the packing table, and at home.

use slotwright_core::range::Range;
use slotwright_core::units::quantity::{Area, Length, Mass};
use slotwright_core::words;
use slotwright_core::words::paper::{Label, Message};
use slotwright_core::words::shell;

use super::work::{Schedule, schedule};
use super::{Kind, Pack, PackFile, TakenOrder};
use crate::paper::{Format, Labels, Paper, Running, Setting, Style, Written};

mod along;
mod assembly;
mod batch;
mod cut_list;
mod delivery;
mod finishing;
mod job_card;
mod labels;
mod layers;
mod packing;
mod sketch;

/// On which paper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Papers {
    /// Documents.
    pub format: Format,
    /// Labels.
    pub labels: Labels,
}

impl Papers {
    /// What documents may be on, each by its name.
    pub const FORMATS: [(&'static str, Format); 2] = [("a4", Format::A4), ("letter", Format::LETTER)];

    /// What labels may be on, each by its name.
    pub const LABELS: [(&'static str, Labels); 5] = [
        ("a4-3x8", Labels::A4_3_BY_8),
        ("a4-2x7", Labels::A4_2_BY_7),
        ("letter-3x10", Labels::LETTER_3_BY_10),
        ("100x50", Labels::ROLL_100_BY_50),
        ("62x29", Labels::ROLL_62_BY_29),
    ];

    /// The name of the paper of documents.
    pub fn format_name(&self) -> &'static str {
        name(&Self::FORMATS, self.format)
    }

    /// The name of that of labels.
    pub fn labels_name(&self) -> &'static str {
        name(&Self::LABELS, self.labels)
    }
}

/// The name of one of them; nothing for a size that has none.
fn name<T: Copy + PartialEq>(all: &[(&'static str, T)], wanted: T) -> &'static str {
    all.iter().find(|(_, known)| *known == wanted).map_or("", |(name, _)| *name)
}

impl Default for Papers {
    fn default() -> Self {
        Self { format: Format::A4, labels: Labels::A4_3_BY_8 }
    }
}

/// Something on the paper that is not as it was given.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Remark {
    /// A letter that no face has: a box stands for it in this text.
    Lacking(char, String),
    /// A text of which only the beginning had room.
    Cut(String),
    /// Pictures that had no room.
    Missing {
        /// The path of the document.
        path: String,
        /// How many.
        count: usize,
        /// What the first one would show.
        first: String,
    },
    /// A document that could not be written: it is not in the pack.
    Unwritten(String),
}

impl Remark {
    /// The remark in words.
    pub fn text(&self) -> String {
        match self {
            Self::Unwritten(path) => words::pack::Message::Unwritten(path).text(),
            Self::Lacking(letter, text) => Message::Lacking(*letter, text).text(),
            Self::Cut(text) => Message::Cut(text).text(),
            Self::Missing { path, count, first } => Message::Missing { path, count: *count, first }.text(),
        }
    }
}

/// A document that is written by itself.
#[derive(Clone, Copy, Debug)]
pub(super) enum Document {
    Labels,
    CutList,
    Finishing,
    Batch,
    /// What goes with the order at that place, each by itself.
    JobCard(usize),
    Packing(usize),
    Delivery(usize),
    Assembly(usize),
}

/// The documents of a pack, in their order.
pub(super) fn documents(pack: &Pack<'_>) -> Vec<Document> {
    let mut all = vec![Document::Labels, Document::CutList, Document::Finishing];
    // A part that is cut again is no order.
    if pack.one.is_none() {
        all.push(Document::Batch);
        let each = |at| [Document::JobCard(at), Document::Packing(at), Document::Delivery(at), Document::Assembly(at)];
        all.extend((0..pack.orders.taken.len()).flat_map(each));
    }
    all
}

/// Where a pack is written: its files so far, and what of its documents is not as it was given.
#[derive(Debug)]
pub(super) struct Desk<'p, 'a> {
    pack: &'p Pack<'a>,
    /// When its orders are made.
    schedule: Option<Schedule<'a>>,
    files: Vec<PackFile>,
    remarks: Vec<Remark>,
}

impl<'p, 'a> Desk<'p, 'a> {
    pub(super) fn new(pack: &'p Pack<'a>) -> Self {
        Self { pack, schedule: schedule(pack), files: Vec::new(), remarks: Vec::new() }
    }

    /// Takes a file that is no document.
    pub(super) fn take(&mut self, file: PackFile) {
        self.files.push(file);
    }

    pub(super) fn files(&self) -> &[PackFile] {
        &self.files
    }

    pub(super) fn done(self) -> (Vec<PackFile>, Vec<Remark>) {
        (self.files, self.remarks)
    }

    /// Writes a document.
    pub(super) fn write(&mut self, document: Document) {
        let pack = self.pack;
        let of = |at: usize| pack.orders.taken.get(at);
        match document {
            Document::Labels => labels::write(self),
            Document::CutList => cut_list::write(self),
            Document::Finishing => finishing::write(self),
            Document::Batch => batch::write(self),
            Document::JobCard(at) => of(at).into_iter().for_each(|order| job_card::write(self, order)),
            Document::Packing(at) => of(at).into_iter().for_each(|order| packing::write(self, order)),
            Document::Delivery(at) => of(at).into_iter().for_each(|order| delivery::write(self, order)),
            Document::Assembly(at) => of(at).into_iter().for_each(|order| assembly::write(self, order)),
        }
    }

    /// A document that begins with its title.
    fn paper(&self, title: Label, range: Option<&Range>, right: &str, foot: &str) -> Paper {
        let title = title.text();
        let left = range.map(|range| format!("{}, {}", range.workshop, range.name)).unwrap_or_default();
        let mut paper = Paper::new(Setting {
            format: self.pack.settings.papers.format,
            title: title.into(),
            language: shell::Label::Language.text().into(),
            running: Some(Running {
                left,
                right: right.into(),
                foot: foot.into(),
                page_of: |page, of| Message::Page(page, of).text(),
            }),
        });
        paper.title(title);
        paper
    }

    /// The range of the first order: what stands at the head of documents of the whole pack.
    fn range(&self) -> Option<&'a Range> {
        self.pack.orders.taken.first().map(|order| order.cut.range)
    }

    /// The pack in words, as it stands at the head of its documents to the right.
    fn name(&self) -> String {
        Message::Pack(&self.pack.full_name()).text()
    }

    /// The same with an order of it: by its number, and by the beginning of its digest for who does not know that.
    fn of_order(&self, order: &TakenOrder<'_>) -> String {
        format!("{}, {}", self.name(), order_name(order))
    }

    /// The same for customers, who know the digest: the order comes first.
    fn of_customer(&self, order: &TakenOrder<'_>) -> String {
        format!("{}, {}", order_name(order), self.name())
    }

    /// Takes a document of the pack, or of one order of it. What cannot be written as PDF is told, and the manifest does not
    /// have it.
    fn put(&mut self, kind: Kind, order: Option<u32>, paper: Paper) {
        let word = kind.word();
        let path = order.map_or_else(|| format!("{word}.pdf"), |number| format!("orders/{number:02}-{word}.pdf"));
        let Ok(Written { bytes, lacking, cut, missing }) = paper.write() else {
            return self.remarks.push(Remark::Unwritten(path));
        };
        self.files
            .push(PackFile { of: order.map(|number| number.to_string()), ..PackFile::new(kind, path.clone(), bytes) });
        let missing = missing.first().map(|first| Remark::Missing {
            path: path.clone(),
            count: missing.len(),
            first: first.clone(),
        });
        let lacking = lacking.into_iter().map(|lacking| Remark::Lacking(lacking.letter, lacking.text));
        for remark in lacking.chain(cut.into_iter().map(Remark::Cut)).chain(missing) {
            if !self.remarks.contains(&remark) {
                self.remarks.push(remark);
            }
        }
    }
}

/// An order by its number and the beginning of its digest.
fn order_name(order: &TakenOrder<'_>) -> String {
    format!("{} \u{b7} {}", Message::Order(order.number).text(), order.spec.digest.short())
}

/// The same as two figures.
fn order_pairs(order: &TakenOrder<'_>) -> [(String, String); 2] {
    [
        (Label::Order.text().to_owned(), order.number.to_string()),
        (Label::Digest.text().to_owned(), order.spec.digest.short()),
    ]
}

/// In which order and from when orders are made, beneath their days.
fn in_turn(paper: &mut Paper, schedule: &Schedule<'_>) {
    let from = words::dated(schedule.from);
    paper.text(&Message::InTurn { from: &from, is_booked: schedule.is_booked }.text(), &Style::SMALL);
    if let Some(told) = schedule.told_before() {
        paper.caution(&told);
    }
}

/// A length to a tenth of a millimetre, without its unit.
fn tenths(length: Length) -> String {
    words::decimal(length.in_mm(), 1)
}

/// The same with its unit.
fn mm(length: Length) -> String {
    Message::Millimetres(&tenths(length)).text()
}

/// A thickness to a hundredth of a millimetre, with its unit.
fn thickness(length: Length) -> String {
    Message::Millimetres(&words::decimal(length.in_mm(), 2)).text()
}

/// Sides of something.
fn sides(sides: &[Length]) -> String {
    let sides: Vec<String> = sides.iter().map(|side| words::decimal(side.in_mm(), 0)).collect();
    Message::Sides(&sides).text()
}

fn metres(length: Length) -> String {
    Message::Metres(&words::decimal(length.in_m(), 1)).text()
}

fn square_metres(area: Area) -> String {
    Message::SquareMetres(&words::decimal(area.in_m2(), 2)).text()
}

fn litres(litres: f64) -> String {
    Message::Litres(&words::decimal(litres, 2)).text()
}

/// Minutes up to two hours, then hours.
fn time(minutes: f64) -> String {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole; `as` saturates")]
    let whole = libm::ceil(minutes) as u32;
    if whole < 120 {
        Message::Minutes(&whole.to_string()).text()
    } else {
        Message::Hours(whole / 60, whole % 60).text()
    }
}

fn mass(mass: Mass) -> String {
    words::mass(mass)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// No line ends within sides of something, or between a figure and its unit.
    #[test]
    fn sides_stand_in_one_line() {
        let said = sides(&[Length::mm(3050.0), Length::mm(1525.0)]);
        assert_eq!(said, "3\u{202f}050\u{a0}\u{d7}\u{a0}1\u{202f}525\u{a0}mm");
        assert!(!said.contains(' '));
    }
}
