//! Lists for programs: comma-separated values as in RFC 4180, a header first, lines ended by CR LF. Lengths are
//! millimetres to a hundredth, masses grams.

use csv::{ReaderBuilder, Terminator, Trim, WriterBuilder};
use serde::{Deserialize, Serialize};
use slotwright_core::business::nesting::Grained;
use slotwright_core::input::entry::measured;
use slotwright_core::units::quantity::Length;

use super::lot::Lot;
use super::nest::StoredOffcut;
use super::path::Program;
use super::sheet::{Rectangle, Sheet, Stock};
use super::{LotSheets, Pack};

/// A part on its sheet.
#[derive(Serialize)]
struct PartRow<'a> {
    mark: String,
    order: u32,
    part: String,
    step: u32,
    board: &'a str,
    finish: &'a str,
    along_mm: String,
    across_mm: String,
    coated_mm: String,
    mass_g: i64,
    people: u8,
    sheet: u32,
    x_mm: String,
    y_mm: String,
    /// Counter-clockwise.
    turned_deg: u16,
}

/// A sheet.
#[derive(Serialize)]
struct SheetRow<'a> {
    sheet: u32,
    board: &'a str,
    finish: &'a str,
    stock: &'a str,
    length_mm: String,
    width_mm: String,
    coated_mm: String,
    parts: usize,
    used_per_mille: i64,
    cut_m: String,
    outlines: usize,
    minutes: String,
}

/// An offcut.
#[derive(Deserialize, Serialize)]
struct OffcutRow {
    name: String,
    board: String,
    finish: String,
    along_mm: String,
    across_mm: String,
    /// Thickness of its board without coats; empty if nobody measured it.
    #[serde(default)]
    board_mm: String,
}

/// A line of a list of offcuts that is none.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotAnOffcut {
    /// Which line, from 1; the header is the first.
    pub line: u64,
    /// The column that is missing or cannot be used; all of them where the line has too few or too many.
    pub what: String,
}

fn fixed(value: f64, decimals: usize) -> String {
    format!("{value:.decimals$}")
}

fn mm(length: Length) -> String {
    fixed(length.to_hundredth_mm(), 2)
}

/// Rows as text, the names of their members as header.
fn table(rows: impl Iterator<Item = impl Serialize>) -> Vec<u8> {
    let mut writer = WriterBuilder::new().terminator(Terminator::CRLF).from_writer(Vec::new());
    for row in rows {
        // A row is of texts and figures alone, and a list takes whatever is written into it.
        let _ = writer.serialize(row);
    }
    writer.into_inner().unwrap_or_default()
}

impl Stock {
    /// What it is called in lists.
    pub fn name(&self) -> &str {
        match self {
            Self::Bought(key) | Self::Offcut(key) => key,
        }
    }
}

/// Every part with its sheet and its place there.
pub fn parts(pack: &Pack<'_>) -> Vec<u8> {
    let on_sheets =
        pack.sheets().flat_map(|(lot, sheet, _)| sheet.placed.iter().map(move |placed| (lot, sheet, placed)));
    table(on_sheets.map(|(lot, sheet, placed)| {
        let part = &placed.part;
        let (along, across) = part.along_and_across();
        PartRow {
            mark: part.mark(),
            order: part.order,
            part: part.panel.id.to_string(),
            step: part.step,
            board: lot.board.key.as_str(),
            finish: lot.finish.key.as_str(),
            along_mm: mm(along),
            across_mm: mm(across),
            coated_mm: mm(sheet.coated(lot)),
            mass_g: part.mass.to_gram(),
            people: part.people,
            sheet: sheet.number,
            x_mm: mm(placed.at.u),
            y_mm: mm(placed.at.v),
            turned_deg: placed.turn.count() * 90,
        }
    }))
}

fn sheet_row<'a>(lot: &'a Lot<'_>, sheet: &'a Sheet<'_>, program: &Program) -> SheetRow<'a> {
    SheetRow {
        sheet: sheet.number,
        board: lot.board.key.as_str(),
        finish: lot.finish.key.as_str(),
        stock: sheet.stock.name(),
        length_mm: mm(sheet.length),
        width_mm: mm(sheet.width),
        coated_mm: mm(sheet.coated(lot)),
        parts: sheet.placed.len(),
        used_per_mille: super::manifest::per_mille(sheet.used_share()),
        cut_m: fixed(program.length.in_m(), 2),
        outlines: program.cuts.len(),
        minutes: fixed(program.minutes, 1),
    }
}

/// Every sheet with its figures.
pub fn sheets(pack: &Pack<'_>) -> Vec<u8> {
    table(pack.sheets().map(|(lot, sheet, program)| sheet_row(lot, sheet, program)))
}

/// What is in the rack afterwards: what was not used of it, and what is kept of the sheets.
pub fn offcuts(rack: &[StoredOffcut]) -> Vec<u8> {
    table(rack.iter().map(|offcut| OffcutRow {
        name: offcut.name.clone(),
        board: offcut.board.to_string(),
        finish: offcut.finish.to_string(),
        along_mm: mm(offcut.size.along),
        across_mm: mm(offcut.size.across),
        board_mm: offcut.measured.map(mm).unwrap_or_default(),
    }))
}

/// Reads a list of offcuts: columns by their names, in any order, others passed over.
///
/// # Errors
///
/// The first line that is none.
pub fn read_offcuts(bytes: &[u8]) -> Result<Vec<StoredOffcut>, NotAnOffcut> {
    let mut reader = ReaderBuilder::new().trim(Trim::All).delimiter(delimiter(bytes)).from_reader(bytes);
    let unread = |line| NotAnOffcut { line, what: COLUMNS.join(", ") };
    let names = reader.headers().map_err(|_| unread(1))?.clone();
    if let Some(lacking) = COLUMNS.into_iter().find(|column| !names.iter().any(|name| name == *column)) {
        return Err(NotAnOffcut { line: 1, what: lacking.into() });
    }
    let mut rack: Vec<StoredOffcut> = Vec::new();
    for record in reader.records() {
        let record = record.map_err(|error| unread(line(bytes, error.position())))?;
        let line = line(bytes, record.position());
        let row: OffcutRow = record.deserialize(Some(&names)).map_err(|_| unread(line))?;
        let wrong = |what: &str| NotAnOffcut { line, what: what.into() };
        let is_name = (1..=NAME_MOST).contains(&row.name.chars().count()) && !row.name.contains(char::is_control);
        if !is_name || rack.iter().any(|known| known.name == row.name) {
            return Err(wrong("name"));
        }
        let side = |text: &str| measured(text).filter(|side| (SIDE_LEAST..=SIDE_MOST).contains(&side.in_mm()));
        let thick = |text: &str| measured(text).filter(|thick| (THICK_LEAST..=THICK_MOST).contains(&thick.in_mm()));
        let thickness = match row.board_mm.as_str() {
            "" => None,
            text => Some(thick(text).ok_or_else(|| wrong("board_mm"))?),
        };
        rack.push(StoredOffcut {
            board: row.board.parse().map_err(|_| wrong("board"))?,
            finish: row.finish.parse().map_err(|_| wrong("finish"))?,
            size: Grained {
                along: side(&row.along_mm).ok_or_else(|| wrong("along_mm"))?,
                across: side(&row.across_mm).ok_or_else(|| wrong("across_mm"))?,
            },
            measured: thickness,
            name: row.name,
        });
    }
    Ok(rack)
}

/// The line of a record that begins there or after empty lines.
fn line(bytes: &[u8], at: Option<&csv::Position>) -> u64 {
    let from = at.and_then(|at| usize::try_from(at.byte()).ok()).unwrap_or(0).min(bytes.len());
    let (before, rest) = bytes.split_at(from);
    let empty = rest.iter().take_while(|byte| matches!(byte, b'\r' | b'\n'));
    before.iter().chain(empty).fold(1, |line, byte| line + u64::from(*byte == b'\n'))
}

/// The columns that there have to be.
const COLUMNS: [&str; 5] = ["name", "board", "finish", "along_mm", "across_mm"];

/// What stands between fields: spreadsheets of countries with a decimal comma write semicolons.
fn delimiter(bytes: &[u8]) -> u8 {
    let head = bytes.split(|byte| *byte == b'\n').next().unwrap_or_default();
    if head.contains(&b';') && !head.contains(&b',') { b';' } else { b',' }
}

/// Longest name of an offcut, in letters.
const NAME_MOST: usize = 40;
/// A side of an offcut is as long as that of a sheet may be, in millimetres.
const SIDE_LEAST: f64 = 50.0;
const SIDE_MOST: f64 = 6000.0;
/// A measured board is as thick as a batch of a range may be, in millimetres.
const THICK_LEAST: f64 = 3.0;
const THICK_MOST: f64 = 60.0;

/// What is kept of a sheet, as it goes into the rack.
pub fn kept(lot: &Lot<'_>, sheet: &Sheet<'_>, pack_name: &str) -> Vec<StoredOffcut> {
    let stored = |(kept, letter): (&Rectangle, char)| StoredOffcut {
        name: format!("{pack_name}-{:02}{letter}", sheet.number),
        board: lot.board.key.clone(),
        finish: lot.finish.key.clone(),
        size: sheet.grained(kept.size()),
        measured: sheet.is_measured.then_some(sheet.uncoated),
    };
    sheet.kept.iter().zip('a'..).map(stored).collect()
}

/// The offcuts of a rack after its sheets are cut.
pub fn rack_after(rack: &[StoredOffcut], lots: &[LotSheets<'_>], pack_name: &str) -> Vec<StoredOffcut> {
    let used = |offcut: &StoredOffcut| {
        let mut sheets = lots.iter().flat_map(|lot| &lot.sheets);
        sheets.any(|(sheet, _)| sheet.stock == Stock::Offcut(offcut.name.clone()))
    };
    let mut after: Vec<StoredOffcut> = rack.iter().filter(|offcut| !used(offcut)).cloned().collect();
    for LotSheets { lot, sheets, .. } in lots {
        for (sheet, _) in sheets {
            after.extend(kept(lot, sheet, pack_name));
        }
    }
    after
}

#[cfg(test)]
mod tests;
