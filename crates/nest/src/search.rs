//! A better packing the longer it is looked for.
//!
//! Sheets are taken with their parts and packed anew, on the same sheets or on others that cost less. Where all sheets
//! are of one format, all parts are also packed on one sheet fewer, until a lower bound is reached.
//!
//! The first follows Parreño, Alvarez-Valdes, Oliveira, Tamarit, A hybrid GRASP/VND algorithm for two- and
//! three-dimensional bin packing, Annals of Operations Research 179, 2010: orders by chance, sheets emptied and filled
//! anew. For the second see `aim`.

mod aim;

use crate::bound;
use crate::fill::Put;
use crate::order::{any_rule, arrange};
use crate::packing::Packing;
use crate::pieces::{Board, Pieces};
use crate::plan::{Load, Plan, plans};
use crate::problem::{NoRoom, Problem, Worth};
use crate::quick::pack;
use crate::random::Random;
use crate::table::{Laid, Table, net};
use aim::Aim;

/// What came of a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Progress {
    /// The best packing costs less than before.
    Better,
    /// It costs the same.
    Same,
    /// No packing costs less: more effort would be of no use.
    Done,
}

/// A search, which has its best packing ready at any time. It stops when nobody calls [`Search::step`] any more.
///
/// What it finds depends on problem, worth, seed and the effort granted in all, not on how that was divided.
///
/// ```
/// use slotwright_nest::problem::{Format, Gaps, Item, Problem, Worth};
/// use slotwright_nest::search::{Progress, Search};
///
/// let formats = vec![Format { width: 244_000, height: 122_000, cost: 98_00, most: None }];
/// let items = vec![Item { width: 60_000, height: 40_000, turns: false, count: 24 }];
/// let problem = Problem { formats, items, gaps: Gaps { spacing: 800, trim: 1000 } };
/// let mut search = Search::new(&problem, &Worth::default(), 1)?;
/// while search.step(10_000) != Progress::Done {}
/// // Three lie side by side and two above each other.
/// assert_eq!(search.best().sheets.len(), 4);
/// # Ok::<(), slotwright_nest::problem::NoRoom>(())
/// ```
#[derive(Clone, Debug)]
pub struct Search {
    problem: Problem,
    pieces: Pieces,
    random: Random,
    /// The best packing: it is searched from the best one always, and one that costs the same takes its place.
    best: Vec<Laid>,
    /// No packing costs less.
    least_net: i64,
    /// No packing has fewer sheets, or to look for one was of no use.
    fewest: usize,
    granted: u64,
    spent: u64,
    /// What was spent on fewer sheets.
    spent_on_fewer: u64,
    fewer: Option<Aim>,
    table: Table,
    others: Aim,
    parts: Vec<u32>,
    keys: Vec<(i64, u32)>,
}

/// As many sheets are packed anew together.
const TOGETHER: usize = 4;
/// So many mixes of formats are considered then.
const PLANS: usize = 8;
/// One in so many tries is by exchange of parts.
const EXCHANGES: u32 = 8;
/// So many moves is an exchange given.
const MOVES: usize = 200;
/// So many orders by chance are tried with one mix of formats.
const ORDERS: usize = 8;

impl Search {
    /// Begins with the quick packing; searches with other seeds find other ones.
    ///
    /// # Errors
    ///
    /// See [`NoRoom`].
    pub fn new(problem: &Problem, worth: &Worth, seed: u64) -> Result<Self, NoRoom> {
        let pieces = Pieces::of(problem, worth)?;
        let best = pack(&pieces)?;
        let fewest = bound::of(&pieces).fewest() as usize;
        Ok(Self {
            problem: problem.clone(),
            least_net: least_net(&pieces, fewest),
            pieces,
            random: Random::new(seed),
            best,
            fewest,
            granted: 0,
            spent: 0,
            spent_on_fewer: 0,
            fewer: None,
            table: Table::default(),
            others: Aim::default(),
            parts: Vec::new(),
            keys: Vec::new(),
        })
    }

    /// The best packing so far.
    pub fn best(&self) -> Packing {
        Packing::of(&self.problem, &self.pieces, &self.best)
    }

    /// What the best packing so far costs, less what its offcuts are worth.
    pub fn net(&self) -> i64 {
        net(&self.best)
    }

    /// No packing costs less than this, the worth of its offcuts taken off; the true least may be more.
    pub const fn least_net(&self) -> i64 {
        self.least_net
    }

    /// Searches on. A million of effort is about a tenth of a second natively (it counts parts put down or refused).
    pub fn step(&mut self, effort: u32) -> Progress {
        let before = self.net();
        self.granted += u64::from(effort);
        while self.spent < self.granted && self.net() > self.least_net {
            self.spent += self.turn();
        }
        match self.net() {
            now if now <= self.least_net => Progress::Done,
            now if now < before => Progress::Better,
            _ => Progress::Same,
        }
    }

    /// One move; gives its effort.
    fn turn(&mut self) -> u64 {
        let [board] = self.pieces.boards.as_slice() else { return self.anew() };
        let has_worth = board.worth > 0.0;
        if self.best.len() > self.fewest && !(has_worth && self.spent_on_fewer > self.spent / 2) {
            let effort = self.empty();
            self.spent_on_fewer += effort;
            return effort;
        }
        self.anew()
    }

    /// One move towards a sheet fewer.
    fn empty(&mut self) -> u64 {
        let mut aim = self.fewer.take().unwrap_or_else(|| {
            let filled = |laid: &Laid| self.pieces.area_of(laid.puts.iter().map(|put| put.kind));
            let emptiest = (0..self.best.len()).min_by_key(|at| self.best.get(*at).map_or(0, filled));
            let (mut sheets, mut pool) = (Vec::new(), Vec::new());
            for (at, laid) in self.best.iter().enumerate() {
                if Some(at) == emptiest {
                    pool.extend(laid.puts.iter().map(|put| put.kind));
                } else {
                    sheets.push((laid.board, laid.puts.clone()));
                }
            }
            let mut aim = Aim::default();
            aim.begin(&self.pieces, sheets, &pool);
            aim
        });
        let effort = aim.step(&self.pieces, &mut self.random);
        if aim.is_reached() {
            let fewer: Vec<Laid> = judged(&self.pieces, aim.sheets());
            if net(&fewer) < self.net() {
                self.best = fewer;
            } else {
                self.fewest = self.best.len();
            }
        } else {
            self.fewer = Some(aim);
        }
        effort
    }

    /// Some sheets packed anew.
    fn anew(&mut self) -> u64 {
        let many = self.best.len();
        let wanted = (1 + self.random.place(TOGETHER)).min(many);
        // Those that are packed anew go to the end.
        for at in (many - wanted..many).rev() {
            let other = self.random.place(at + 1);
            self.best.swap(at, other);
        }
        let kept = many - wanted;
        let taken = self.best.get(kept..).unwrap_or_default();
        let target = net(taken);
        self.parts.clear();
        self.parts.extend(taken.iter().flat_map(|laid| &laid.puts).map(|put| put.kind));
        let mut left: Vec<u32> = self.pieces.boards.iter().map(|board| board.most).collect();
        for laid in self.best.iter().take(kept) {
            if let Some(left) = left.get_mut(laid.board as usize) {
                *left -= 1;
            }
        }
        let load = Load::of(&self.pieces, &self.parts);
        let mut found = plans(&self.pieces, load, &left, target, PLANS, wanted + 2);
        // Rather one with a low bound than one with a high one.
        let at = self.random.place(found.len()).min(self.random.place(found.len()));
        if found.is_empty() {
            return 4;
        }
        let plan = found.swap_remove(at);
        let (effort, better) = if self.random.below(EXCHANGES) > 0 {
            self.by_orders(plan, target)
        } else {
            self.by_exchange(&plan, target)
        };
        if let Some(better) = better {
            self.best.truncate(kept);
            self.best.extend(better);
        }
        effort + 4
    }

    /// Parts on other sheets, in orders by chance; nothing if that costs more than `target`.
    fn by_orders(&mut self, mut plan: Plan, target: i64) -> (u64, Option<Vec<Laid>>) {
        let mut effort = 0;
        for _ in 0..ORDERS {
            arrange(&mut self.parts, &mut self.keys, &self.pieces.kinds, &mut self.random);
            let rule = any_rule(&mut self.random);
            if self.random.below(2) == 0 {
                plan.boards.reverse();
            }
            let over = self.table.lay(&self.pieces, &plan.boards, &self.parts, rule);
            effort += self.parts.len() as u64;
            if over == 0 && net(self.table.sheets()) <= target {
                return (effort, Some(self.table.sheets().to_vec()));
            }
        }
        (effort, None)
    }

    /// Parts on other sheets, by exchange between these; nothing if that costs more than `target`.
    fn by_exchange(&mut self, plan: &Plan, target: i64) -> (u64, Option<Vec<Laid>>) {
        let mut effort = 0;
        self.others.begin(&self.pieces, plan.boards.iter().map(|board| (*board, Vec::new())), &self.parts);
        for _ in 0..MOVES {
            effort += self.others.step(&self.pieces, &mut self.random);
            if self.others.is_reached() {
                let sheets = judged(&self.pieces, self.others.sheets());
                if net(&sheets) <= target {
                    return (effort, Some(sheets));
                }
            }
        }
        (effort, None)
    }
}

/// Sheets with what they cost; those without a part are left out.
fn judged(pieces: &Pieces, sheets: &[(u32, Vec<Put>)]) -> Vec<Laid> {
    let used = sheets.iter().filter(|(_, puts)| !puts.is_empty());
    used.map(|(board, puts)| Laid::judged(pieces, *board, puts.clone())).collect()
}

/// What no packing costs less than.
fn least_net(pieces: &Pieces, fewest: usize) -> i64 {
    let kinds = pieces.kinds.iter().zip(&pieces.counts);
    let area: i64 = kinds.map(|(kind, count)| kind.area() * i64::from(*count)).sum();
    if let [board] = pieces.boards.as_slice() {
        let fewest = i64::try_from(fewest).unwrap_or(i64::MAX);
        let free = (fewest * board.area() - area).min(fewest * board.room);
        return fewest * board.cost - crate::offcut::worth_of(board, free);
    }
    // A sheet with parts of area p costs at least its cost less the worth of min(room, area - p). For each unit of p that is
    // least where the sheet is full; or, where its free area is worth more than it costs, where the room begins to shrink.
    #[expect(clippy::cast_precision_loss, reason = "rounded the same everywhere")]
    let share = |board: &Board| {
        let (cost, room, area) = (board.cost as f64, board.room as f64, board.area() as f64);
        let full = if area > 0.0 { cost / area } else { f64::MAX };
        let is_dear = cost >= board.worth * area;
        if is_dear { full } else { ((cost - board.worth * room) / (area - room)).clamp(0.0, full) }
    };
    let least = pieces.boards.iter().map(share).fold(f64::MAX, f64::min);
    #[expect(clippy::cast_precision_loss, clippy::cast_possible_truncation, reason = "rounded the same everywhere")]
    let net = if pieces.kinds.is_empty() { 0 } else { (least * area as f64 - 1e-3) as i64 };
    net
}

#[cfg(test)]
mod tests;
