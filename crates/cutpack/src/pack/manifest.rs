//! What a pack was made from and what is in it: a document by which each of its files can be told to be whole, and by which
//! the pack can be made again.

use serde::Serialize;
use slotwright_core::business::promise::Backlog;
use slotwright_core::input::seal::{Digest, canonical};
use slotwright_core::range::{Batch, Grain, Key};
use slotwright_core::units::day::Day;
use slotwright_core::units::quantity::Length;

use super::lot::Lot;
use super::nest::{SheetsInStock, StoredOffcut};
use super::sheet::{Sheet, Stock};
use super::{Kind, LotSheets, OnePart, PROGRAM, Pack, PackFile, Reason, SetAside};

/// What the member `format` says.
pub const FORMAT: &str = "slotwright-pack";
/// The version that this program writes.
pub const VERSION: u32 = 1;

/// The manifest of a pack.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Manifest {
    /// Always `slotwright-pack`.
    pub format: &'static str,
    /// Version of this format.
    pub version: u32,
    /// The version of the program that made it.
    pub program: &'static str,
    /// The name by which offcuts and labels name the pack: of what is cut.
    pub name: String,
    /// Behind a dash after that name on all papers and drawings: of the days, the booked work and the paper.
    pub plan: String,
    /// The part that was cut again, if it is only that: `2/shelf-1-1`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub part: Option<String>,
    /// How long nests were looked for, in steps of the search for each nest of each lot.
    pub effort: u32,
    /// The paper of documents: `a4` or `letter`.
    pub paper: &'static str,
    /// What labels are on: `a4-3x8`, `a4-2x7`, `letter-3x10`, `100x50` or `62x29`.
    pub labels: &'static str,
    /// The day after which work begins; without it that of the last order.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub today: Option<Day>,
    /// What was booked by then.
    pub backlog: Backlog,
    /// The offcuts that were in the rack.
    pub rack: Vec<RackEntry>,
    /// How many sheets there were of formats that are short.
    pub in_stock: Vec<InStockEntry>,
    /// The orders that are cut.
    pub orders: Vec<OrderEntry>,
    /// The orders that are not, with their reasons.
    pub aside: Vec<AsideEntry>,
    /// The lots: board and finish.
    pub lots: Vec<LotEntry>,
    /// All other files of the pack.
    pub files: Vec<FileEntry>,
}

/// An offcut in the rack.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RackEntry {
    /// What is written on it.
    pub name: String,
    /// Its board.
    pub board: Key,
    /// Its finish.
    pub finish: Key,
    /// Its side along the grain.
    pub along_mm: f64,
    /// Its side across it.
    pub across_mm: f64,
    /// Thickness of its board, sanded and uncoated, if its batch was measured.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub board_mm: Option<f64>,
}

/// How many sheets there were of a format.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct InStockEntry {
    /// The board.
    pub board: Key,
    /// The format.
    pub sheet: Key,
    /// How many.
    pub count: u32,
}

/// An order that is cut.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OrderEntry {
    /// Its number in the pack.
    pub number: u32,
    /// The name of its file.
    pub file: String,
    /// SHA-256 over its canonical JSON.
    pub digest: Digest,
    /// SHA-256 over the canonical JSON of its range.
    pub range_digest: Digest,
    /// The day of the order.
    pub ordered_on: Day,
    /// The day that was promised.
    pub arrives_on: Day,
    /// Digest of all its parts as they are cut: another one than promised where batches were measured since.
    pub cut_digest: Digest,
    /// JSON pointers of what the measured batches make different.
    pub different: Vec<&'static str>,
}

/// An order that is not cut.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AsideEntry {
    /// The name of its file.
    pub file: String,
    /// Why: `unreadable`, `differs`, `not-as-cut` (it holds, but not by this batch and cutter) or `again`.
    pub reason: &'static str,
}

/// Sheets of one board in one finish.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LotEntry {
    /// The board.
    pub board: Key,
    /// The finish.
    pub finish: Key,
    /// Thickness that slots are cut for, sanded and uncoated.
    pub board_mm: f64,
    /// The measured points that it comes from, if any.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub measured_mm: Vec<f64>,
    /// Thickness of its new sheets when they are cut, with their coats.
    pub coated_mm: f64,
    /// Diameter of the cutter.
    pub cutter_mm: f64,
    /// Between parts, beyond that.
    pub allowance_mm: f64,
    /// How many sheets, offcuts from the rack included.
    pub sheets: u32,
    /// A lower bound: no nest has fewer, however its parts interlock.
    pub sheets_least: u32,
    /// The sheets by their formats, and the offcuts.
    pub formats: Vec<FormatEntry>,
    /// How many parts.
    pub parts: u32,
    /// What the sheets cost, in minor units without tax; offcuts from the rack by what they are worth.
    pub cost_minor: i64,
    /// What is kept of them is worth.
    pub worth_minor: i64,
    /// The yield: the share of the sheets that parts' blanks are, in thousandths; parts that interlock count as one rectangle.
    pub yield_per_mille: i64,
    /// The share of the sheets that is used: what ends up in parts, holes and notches not counted, in thousandths.
    pub used_per_mille: i64,
}

/// Sheets of a format that are used, or an offcut.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FormatEntry {
    /// The key of the format, or the name of the offcut.
    pub name: String,
    /// Whether it is an offcut from the rack.
    pub is_offcut: bool,
    /// Its side along the machine's x.
    pub length_mm: f64,
    /// Its side along the machine's y.
    pub width_mm: f64,
    /// Direction of the face grain.
    pub grain: Grain,
    /// Thickness of its board by which it is cut, sanded and uncoated.
    pub board_mm: f64,
    /// How many of them.
    pub sheets: u32,
}

/// A file of the pack.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FileEntry {
    /// Its path within the pack.
    pub path: String,
    /// What it is: `part-list`, `sheet-list`, `offcut-list`, `sheet-drawing`, `sheet-picture`, `part-drawing`, `labels`,
    /// `cut-list`, `finishing`, `batch`, `job-card`, `packing-list`, `delivery` or `assembly`.
    pub kind: &'static str,
    /// Of what: the number of its sheet or its order, or the mark of its part.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub of: Option<String>,
    /// Its size.
    pub bytes: u64,
    /// SHA-256 over its bytes.
    pub sha256: Digest,
}

/// The manifest of a pack of these files: canonical JSON.
pub fn write(pack: &Pack<'_>, files: &[PackFile]) -> String {
    canonical(&manifest(pack, files))
}

fn manifest(pack: &Pack<'_>, files: &[PackFile]) -> Manifest {
    let orders =
        pack.orders.taken.iter().map(|order| {
            let spec = order.spec;
            OrderEntry {
                number: order.number,
                file: order.file.into(),
                digest: spec.digest,
                range_digest: spec.range.digest,
                ordered_on: spec.ordered_on,
                arrives_on: spec.promised.arrives_on,
                cut_digest: order.cut.built.as_ref().map_or(spec.promised.parts_digest, |built| {
                    slotwright_core::order::parts::Parts::of(built).digest()
                }),
                different: order.differs_as_cut.iter().map(|difference| difference.pointer).collect(),
            }
        });
    let entry = |file: &PackFile| FileEntry {
        path: file.path.clone(),
        kind: file.kind.map_or("", Kind::word),
        of: file.of.clone(),
        bytes: u64::try_from(file.bytes.len()).unwrap_or(u64::MAX),
        sha256: Digest::of(&file.bytes),
    };
    let settings = pack.settings;
    Manifest {
        format: FORMAT,
        version: VERSION,
        program: PROGRAM,
        name: pack.name.clone(),
        plan: pack.plan.clone(),
        part: pack.one.as_ref().map(OnePart::to_string),
        effort: pack.effort,
        paper: settings.papers.format_name(),
        labels: settings.papers.labels_name(),
        today: settings.today,
        backlog: settings.backlog.clone(),
        rack: settings.rack.iter().map(RackEntry::of).collect(),
        in_stock: settings.bounds.iter().map(InStockEntry::of).collect(),
        orders: orders.collect(),
        aside: pack.orders.aside.iter().map(AsideEntry::of).collect(),
        lots: pack.lots.iter().map(LotEntry::of).collect(),
        files: files.iter().map(entry).collect(),
    }
}

/// What follows from the rest, to a hundredth of a millimetre.
fn mm(length: Length) -> f64 {
    length.to_hundredth_mm()
}

/// What was given, as it was given: the same pack is made of it again.
fn given(length: Length) -> f64 {
    length.in_mm()
}

impl RackEntry {
    pub(super) fn of(offcut: &StoredOffcut) -> Self {
        Self {
            name: offcut.name.clone(),
            board: offcut.board.clone(),
            finish: offcut.finish.clone(),
            along_mm: given(offcut.size.along),
            across_mm: given(offcut.size.across),
            board_mm: offcut.measured.map(given),
        }
    }
}

impl InStockEntry {
    fn of(bound: &SheetsInStock) -> Self {
        Self { board: bound.board.clone(), sheet: bound.sheet.clone(), count: bound.count }
    }
}

impl FormatEntry {
    fn of(sheet: &Sheet<'_>) -> Self {
        Self {
            name: sheet.stock.name().into(),
            is_offcut: matches!(sheet.stock, Stock::Offcut(_)),
            length_mm: mm(sheet.length),
            width_mm: mm(sheet.width),
            grain: sheet.grain,
            board_mm: mm(sheet.uncoated),
            sheets: 1,
        }
    }

    /// Sheets of one format together, in the order in which they come.
    fn all<'s>(sheets: impl Iterator<Item = &'s Sheet<'s>>) -> Vec<Self> {
        let mut all: Vec<Self> = Vec::new();
        for one in sheets.map(Self::of) {
            match all.iter_mut().find(|known| (known.is_offcut, &known.name) == (one.is_offcut, &one.name)) {
                Some(known) => known.sheets += 1,
                None => all.push(one),
            }
        }
        all
    }
}

impl AsideEntry {
    fn of(aside: &SetAside<'_>) -> Self {
        let reason = match aside.reason {
            Reason::Unreadable(_) => "unreadable",
            Reason::Differs(_) => "differs",
            Reason::NotAsCut(_) => "not-as-cut",
            Reason::Again(_) => "again",
        };
        Self { file: aside.file.into(), reason }
    }
}

impl LotEntry {
    fn of(all: &LotSheets<'_>) -> Self {
        let LotSheets { lot, sheets, figures, fewest } = all;
        let Lot { range, board, finish, .. } = lot;
        let measured = board.measured_points_mm.iter().flat_map(Batch::points);
        let count = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
        Self {
            board: board.key.clone(),
            finish: finish.key.clone(),
            board_mm: mm(board.thickness()),
            measured_mm: measured.map(|point| given(*point)).collect(),
            coated_mm: mm(lot.coated()),
            cutter_mm: given(range.build.cutter_mm),
            allowance_mm: given(range.cutting.allowance_mm),
            sheets: count(sheets.len()),
            sheets_least: *fewest,
            formats: FormatEntry::all(sheets.iter().map(|(sheet, _)| sheet)),
            parts: count(lot.parts.len()),
            cost_minor: figures.cost,
            worth_minor: figures.worth,
            yield_per_mille: figures.yield_per_mille(),
            used_per_mille: per_mille(all.used_share()),
        }
    }
}

/// A share in thousandths, rounded down.
pub(super) fn per_mille(share: f64) -> i64 {
    #[expect(clippy::cast_possible_truncation, reason = "whole; `as` saturates")]
    let whole = libm::floor(share * 1000.0) as i64;
    whole
}
