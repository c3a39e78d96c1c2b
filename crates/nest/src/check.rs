//! Whether a packing holds: looked at afresh, without what made it.

use core::fmt;

use crate::packing::Packing;
use crate::problem::Problem;

/// What is wrong with a packing; sheets are numbered from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// A sheet is of a format that is not there.
    NoFormat {
        /// Which sheet.
        sheet: u32,
    },
    /// More sheets of a format are used than there are.
    TooMany {
        /// Which format.
        format: u32,
    },
    /// A part is of an item that is not there.
    NoItem {
        /// Which sheet.
        sheet: u32,
    },
    /// A part has another size than its item, or is turned though it may not be.
    Size {
        /// Which sheet.
        sheet: u32,
        /// Which item.
        item: u32,
    },
    /// A part or an offcut reaches into the trim, or beyond the sheet.
    Outside {
        /// Which sheet.
        sheet: u32,
    },
    /// Two of a sheet's parts and offcuts overlap or are closer than the spacing.
    TooClose {
        /// Which sheet.
        sheet: u32,
    },
    /// An item is not placed as often as it has to be.
    Count {
        /// Which item.
        item: u32,
    },
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoFormat { sheet } => write!(f, "sheet {sheet} is of no format"),
            Self::TooMany { format } => write!(f, "too many sheets of format {format}"),
            Self::NoItem { sheet } => write!(f, "sheet {sheet} has a part of no item"),
            Self::Size { sheet, item } => write!(f, "sheet {sheet}: item {item} has another size or is turned"),
            Self::Outside { sheet } => write!(f, "sheet {sheet}: something lies outside"),
            Self::TooClose { sheet } => write!(f, "sheet {sheet}: two parts are too close"),
            Self::Count { item } => write!(f, "item {item} is not placed as often as it should be"),
        }
    }
}

impl core::error::Error for Fault {}

/// A rectangle: left, low, right, high.
type Box = [i64; 4];

/// Whether every part lies once, as it may, inside and far enough from all others, and offcuts are free.
///
/// # Errors
///
/// The first fault.
pub fn check(packing: &Packing, problem: &Problem) -> Result<(), Fault> {
    let mut placed: Vec<u32> = problem.items.iter().map(|_| 0).collect();
    let mut used: Vec<u32> = problem.formats.iter().map(|_| 0).collect();
    for (number, sheet) in (0_u32..).zip(&packing.sheets) {
        let format = sheet.format as usize;
        let Some((format, used)) = problem.formats.get(format).zip(used.get_mut(format)) else {
            return Err(Fault::NoFormat { sheet: number });
        };
        *used += 1;
        if format.most.is_some_and(|most| *used > most) {
            return Err(Fault::TooMany { format: sheet.format });
        }
        let mut boxes: Vec<Box> = Vec::new();
        for part in &sheet.parts {
            let at = part.item as usize;
            let Some((item, placed)) = problem.items.get(at).zip(placed.get_mut(at)) else {
                return Err(Fault::NoItem { sheet: number });
            };
            *placed += 1;
            let size = if part.turned { (item.height, item.width) } else { (item.width, item.height) };
            if size != (part.width, part.height) || part.turned && !item.turns {
                return Err(Fault::Size { sheet: number, item: part.item });
            }
            boxes.push([part.x, part.y, part.x + part.width, part.y + part.height]);
        }
        boxes.extend(sheet.offcuts.iter().map(|cut| [cut.x, cut.y, cut.x + cut.width, cut.y + cut.height]));
        let trim = problem.gaps.trim;
        let is_inside = |[left, low, right, high]: &Box| {
            *left >= trim && *low >= trim && *right <= format.width - trim && *high <= format.height - trim
        };
        if !boxes.iter().all(is_inside) {
            return Err(Fault::Outside { sheet: number });
        }
        if too_close(&mut boxes, problem.gaps.spacing) {
            return Err(Fault::TooClose { sheet: number });
        }
    }
    let wrong = (0_u32..).zip(problem.items.iter().zip(&placed)).find(|(_, (item, placed))| item.count != **placed);
    wrong.map_or(Ok(()), |(item, _)| Err(Fault::Count { item }))
}

/// Whether two boxes overlap, or are closer than the spacing in both directions: sorted from the left, each is compared
/// with those that begin before it ends.
fn too_close(boxes: &mut [Box], spacing: i64) -> bool {
    boxes.sort_unstable();
    boxes.iter().enumerate().any(|(at, [_, low, right, high])| {
        let beside = boxes.iter().skip(at + 1).take_while(|[left, ..]| *left < right + spacing);
        beside.into_iter().any(|other| other[1] < high + spacing && *low < other[3] + spacing)
    })
}
