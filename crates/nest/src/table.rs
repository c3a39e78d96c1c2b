//! Sheets filled one after another, and what they cost then.

use crate::fill::{Put, fill, least};
use crate::offcut::worth;
use crate::pieces::Pieces;
use crate::space::{Rule, Space};

/// A sheet with its parts.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Laid {
    pub(crate) board: u32,
    pub(crate) puts: Vec<Put>,
    /// What it costs less what its offcuts are worth.
    pub(crate) net: i64,
}

impl Laid {
    /// A sheet on which parts lie already.
    pub(crate) fn judged(pieces: &Pieces, number: u32, puts: Vec<Put>) -> Self {
        let Some(board) = pieces.boards.get(number as usize) else { return Self::default() };
        let mut net = board.cost;
        if board.worth > 0.0 {
            let mut space = Space::default();
            space.clear(board.width, board.height, pieces.least);
            for put in &puts {
                space.take(put.place(pieces));
            }
            net -= worth(&mut space, pieces, board);
        }
        Self { board: number, puts, net }
    }
}

/// What some sheets cost less what their offcuts are worth.
pub(crate) fn net(sheets: &[Laid]) -> i64 {
    sheets.iter().map(|sheet| sheet.net).sum()
}

/// Where sheets are filled: what one packing leaves in memory serves the next.
#[derive(Clone, Debug, Default)]
pub(crate) struct Table {
    space: Space,
    order: Vec<u32>,
    rest: Vec<u32>,
    /// The sheets that were filled last; those after `many` are of earlier packings.
    sheets: Vec<Laid>,
    many: usize,
}

impl Table {
    /// Fills sheets one after another with parts in an order; gives how many parts were left over.
    pub(crate) fn lay(&mut self, pieces: &Pieces, boards: &[u32], parts: &[u32], rule: Rule) -> usize {
        self.order.clear();
        self.order.extend_from_slice(parts);
        self.many = 0;
        let mut refused = u32::MAX;
        let keep = pieces.least;
        let smallest = least(&pieces.kinds, parts);
        let smallest = (smallest.0.min(keep.0), smallest.1.min(keep.1));
        for &number in boards {
            let Some(board) = pieces.boards.get(number as usize) else { continue };
            if self.order.is_empty() {
                break;
            }
            // What one sheet does not take another one of its format does not take either.
            if number == refused {
                continue;
            }
            if self.sheets.len() == self.many {
                self.sheets.push(Laid::default());
            }
            let Some(sheet) = self.sheets.get_mut(self.many) else { break };
            sheet.puts.clear();
            self.rest.clear();
            self.space.clear(board.width, board.height, smallest);
            fill(&mut self.space, &pieces.kinds, &self.order, rule, (&mut sheet.puts, &mut self.rest));
            core::mem::swap(&mut self.order, &mut self.rest);
            if sheet.puts.is_empty() {
                refused = number;
                continue;
            }
            (sheet.board, sheet.net) = (number, board.cost);
            if board.worth > 0.0 {
                sheet.net -= worth(&mut self.space, pieces, board);
            }
            self.many += 1;
        }
        self.order.len()
    }

    /// The sheets that were filled last.
    pub(crate) fn sheets(&self) -> &[Laid] {
        self.sheets.get(..self.many).unwrap_or_default()
    }
}
