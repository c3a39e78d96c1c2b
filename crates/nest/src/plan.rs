//! Which sheets a packing may take: their formats, and the least that it can cost then.

use crate::pieces::{Board, Kind, Pieces, ordered};
use crate::sort::sorted;

/// Sheets that a packing may take.
#[derive(Clone, Debug, Default)]
pub(crate) struct Plan {
    /// No packing on these sheets costs less, its offcuts' worth taken off.
    pub(crate) bound: i64,
    /// The format of each sheet; those of one format stand together.
    pub(crate) boards: Vec<u32>,
}

/// What is to be packed, as far as plans are concerned.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Load {
    /// The area of all parts.
    area: i64,
    /// The formats on which the parts that fit fewest may lie, a bit each.
    hosts: u64,
}

impl Load {
    pub(crate) fn of(pieces: &Pieces, parts: &[u32]) -> Self {
        let kinds = parts.iter().filter_map(|number| pieces.kinds.get(*number as usize));
        kinds.fold(Self { area: 0, hosts: u64::MAX }, |load, kind| {
            let hosts = hosts(kind, &pieces.boards);
            let fewer = hosts.count_ones() < load.hosts.count_ones();
            Self { area: load.area + kind.area(), hosts: if fewer { hosts } else { load.hosts } }
        })
    }
}

/// The formats on which a part may lie, a bit each; those beyond what bits there are count as one.
fn hosts(kind: &Kind, boards: &[Board]) -> u64 {
    let hosts = boards.iter().enumerate().filter(|(_, board)| kind.fits(board));
    hosts.fold(0, |bits, (at, _)| bits | 1 << at.min(63))
}

/// Plans that may cost less than a limit, the least bound first; no more than `most`, of at most `sheets` sheets.
pub(crate) fn plans(pieces: &Pieces, load: Load, left: &[u32], limit: i64, most: usize, sheets: usize) -> Vec<Plan> {
    let cost = |at: usize| pieces.boards.get(at).map_or(0, |board| ordered(board.cost_of_area()));
    let cheapest = sorted(pieces.boards.len(), &cost);
    let mut walk =
        Walk { pieces, load, left, limit, sheets, cheapest, steps: 0, found: Vec::new(), boards: Vec::new() };
    walk.from(0, 0, false);
    let mut found = walk.found;
    // Of two with the same bound the one with fewer sheets.
    let key = |plan: &Plan| plan.bound * 16 + i64::try_from(plan.boards.len()).unwrap_or(0);
    let order = sorted(found.len(), &|at| found.get(at).map_or(0, key));
    let mut plans = Vec::new();
    for number in order.into_iter().take(most) {
        if let Some(plan) = found.get_mut(number as usize) {
            plans.push(core::mem::take(plan));
        }
    }
    plans
}

/// So many sheets are tried for plans at most: with many formats the cheapest for their area are tried first.
const STEPS: u32 = 2000;

struct Walk<'a> {
    pieces: &'a Pieces,
    load: Load,
    left: &'a [u32],
    limit: i64,
    sheets: usize,
    cheapest: Vec<u32>,
    steps: u32,
    found: Vec<Plan>,
    boards: Vec<u32>,
}

impl Walk<'_> {
    /// Adds sheets of this format and those after it. Once there is area enough one sheet more is added, since shapes may
    /// need it.
    fn from(&mut self, first: usize, area: i64, is_spare: bool) {
        for at in first..self.cheapest.len() {
            let Some(&number) = self.cheapest.get(at) else { continue };
            let Some(board) = self.pieces.boards.get(number as usize) else { continue };
            let used = self.boards.iter().filter(|known| **known == number).count();
            let is_left = self.left.get(number as usize).is_some_and(|left| used < *left as usize);
            if !is_left || self.boards.len() >= self.sheets || self.steps >= STEPS {
                continue;
            }
            self.steps += 1;
            self.boards.push(number);
            let area = area + board.area();
            let enough = area >= self.load.area;
            let bound = bound(self.pieces, &self.boards, area - self.load.area);
            let is_host = |board: &u32| self.load.hosts >> (*board).min(63) & 1 == 1;
            if enough && bound < self.limit && self.boards.iter().any(is_host) {
                self.found.push(Plan { bound, boards: self.boards.clone() });
            }
            if !enough || !is_spare {
                self.from(at, area, enough);
            }
            self.boards.pop();
        }
    }
}

/// What sheets cost less the most that a free area on them can be worth.
#[expect(clippy::cast_precision_loss, clippy::cast_possible_truncation, reason = "rounded the same everywhere")]
fn bound(pieces: &Pieces, numbers: &[u32], free: i64) -> i64 {
    let mut free = free.max(0);
    let (mut cost, mut worth) = (0, 0.0);
    for dearest in &pieces.dearest {
        let Some(board) = pieces.boards.get(*dearest as usize) else { continue };
        for _ in numbers.iter().filter(|number| *number == dearest) {
            cost += board.cost;
            let part = free.min(board.room);
            worth += board.worth * part as f64;
            free -= part;
        }
    }
    cost - (worth + 1e-3) as i64
}
