//! Parts on sheets.

use crate::fill::Put;
use crate::offcut::{self, true_area, worth_of};
use crate::pieces::{Board, Pieces};
use crate::problem::Problem;
use crate::sort::sorted;
use crate::space::Space;
use crate::table::Laid;

/// Where all parts lie.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Packing {
    /// The sheets that are used, those with the most on them first.
    pub sheets: Vec<Sheet>,
}

/// A sheet with its parts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// Its place in the list of formats.
    pub format: u32,
    /// Its parts, from the lower left.
    pub parts: Vec<Placed>,
    /// What is left of it and can be kept, the largest first.
    pub offcuts: Vec<Offcut>,
}

/// A part on a sheet: lengths in the caller's unit, from the lower left corner of the sheet as it is bought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placed {
    /// Its place in the list of items.
    pub item: u32,
    /// Its left edge.
    pub x: i64,
    /// Its lower edge.
    pub y: i64,
    /// Its width on the sheet, which is the item's height where it is turned.
    pub width: i64,
    /// Its height on the sheet.
    pub height: i64,
    /// Whether it is turned by a quarter.
    pub turned: bool,
}

/// A free rectangle of a sheet that is large enough to be kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Offcut {
    /// Its left edge.
    pub x: i64,
    /// Its lower edge.
    pub y: i64,
    /// Its width.
    pub width: i64,
    /// Its height.
    pub height: i64,
    /// What it is worth, in the caller's minor units.
    pub worth: i64,
}

/// What a packing takes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Figures {
    /// How many sheets.
    pub sheets: u32,
    /// Their area as they are bought.
    pub sheet_area: i64,
    /// The area of all parts.
    pub part_area: i64,
    /// The area of all offcuts.
    pub offcut_area: i64,
    /// What the sheets cost.
    pub cost: i64,
    /// What the offcuts are worth.
    pub worth: i64,
}

impl Figures {
    /// What is neither part nor offcut.
    pub const fn waste_area(&self) -> i64 {
        self.sheet_area - self.part_area - self.offcut_area
    }

    /// The cost of the sheets less the worth of the offcuts: what a packing is judged by.
    pub const fn net(&self) -> i64 {
        self.cost - self.worth
    }

    /// The share of the sheets that parts are, in thousandths, rounded down; 0 without a sheet.
    pub const fn yield_per_mille(&self) -> i64 {
        let per_mille = self.sheet_area / 1000;
        if per_mille < 1 {
            self.part_area * 1000 / if self.sheet_area < 1 { 1 } else { self.sheet_area }
        } else {
            self.part_area / per_mille
        }
    }
}

impl Packing {
    /// What this packing takes of the formats of its problem.
    pub fn figures(&self, problem: &Problem) -> Figures {
        self.sheets.iter().fold(Figures::default(), |sum, sheet| {
            let one = sheet.figures(problem);
            Figures {
                sheets: sum.sheets + one.sheets,
                sheet_area: sum.sheet_area + one.sheet_area,
                part_area: sum.part_area + one.part_area,
                offcut_area: sum.offcut_area + one.offcut_area,
                cost: sum.cost + one.cost,
                worth: sum.worth + one.worth,
            }
        })
    }

    /// What was found, in the caller's unit.
    pub(crate) fn of(problem: &Problem, pieces: &Pieces, sheets: &[Laid]) -> Self {
        // Each kind gives its items in their order.
        let mut items: Vec<Vec<u32>> = Vec::new();
        for kind in &pieces.kinds {
            let mut copies = Vec::new();
            for (item, count) in kind.items.iter().rev() {
                copies.resize(copies.len() + *count as usize, *item);
            }
            items.push(copies);
        }
        let filled = |sheet: &Laid| pieces.area_of(sheet.puts.iter().map(|put| put.kind));
        // No area needs 50 bits.
        let key = |sheet: &Laid| (i64::from(sheet.board) << 50) - filled(sheet);
        let mut made = Vec::new();
        for number in sorted(sheets.len(), &|at| sheets.get(at).map_or(0, key)) {
            let Some(laid) = sheets.get(number as usize) else { continue };
            let Some(board) = pieces.boards.get(laid.board as usize) else { continue };
            made.push(sheet(problem, pieces, (laid, board), &mut items));
        }
        Self { sheets: made }
    }
}

impl Sheet {
    /// What this sheet takes.
    pub fn figures(&self, problem: &Problem) -> Figures {
        let format = problem.formats.get(self.format as usize);
        Figures {
            sheets: 1,
            sheet_area: format.map_or(0, |format| format.width * format.height),
            part_area: self.parts.iter().map(|part| part.width * part.height).sum(),
            offcut_area: self.offcuts.iter().map(|offcut| offcut.width * offcut.height).sum(),
            cost: format.map_or(0, |format| format.cost),
            worth: self.offcuts.iter().map(|offcut| offcut.worth).sum(),
        }
    }
}

fn sheet(problem: &Problem, pieces: &Pieces, (laid, board): (&Laid, &Board), items: &mut [Vec<u32>]) -> Sheet {
    let (spacing, trim) = (pieces.spacing, problem.gaps.trim);
    let mut space = Space::default();
    space.clear(board.width, board.height, pieces.least);
    let mut parts = Vec::new();
    // No length needs 26 bits.
    let key = |put: &Put| (i64::from(put.low) << 26) + i64::from(put.left);
    for number in sorted(laid.puts.len(), &|at| laid.puts.get(at).map_or(0, key)) {
        let Some(put) = laid.puts.get(number as usize) else { continue };
        let place = put.place(pieces);
        space.take(place);
        let Some(item) = items.get_mut(put.kind as usize).and_then(Vec::pop) else { continue };
        parts.push(Placed {
            item,
            x: i64::from(place.left) + trim,
            y: i64::from(place.low) + trim,
            width: i64::from(place.width() - spacing),
            height: i64::from(place.height() - spacing),
            turned: put.turned,
        });
    }
    let mut offcuts = Vec::new();
    while let Some(rect) = offcut::next(&mut space, pieces) {
        offcuts.push(Offcut {
            x: i64::from(rect.left) + trim,
            y: i64::from(rect.low) + trim,
            width: i64::from(rect.width() - spacing),
            height: i64::from(rect.height() - spacing),
            worth: worth_of(board, true_area(&rect, spacing)),
        });
    }
    Sheet { format: laid.board, parts, offcuts }
}
