//! All parts on given sheets: what does not fit is a pool, and parts are exchanged until it is empty.
//!
//! One to three sheets are taken with the pool and filled anew in an order by chance; what then is left over is the new
//! pool if it weighs no more. Parts that stay in the pool for long become heavier, so that others make way for them.
//!
//! Sources: Parreño, Alvarez-Valdes, Oliveira, Tamarit, A hybrid GRASP/VND algorithm for two- and three-dimensional bin
//! packing, 2010 (sheets emptied and filled anew together); Nagata, Bräysy, A powerful route minimization heuristic for
//! the vehicle routing problem with time windows, Operations Research Letters 37, 2009 (the pool and its penalties).

use crate::fill::{Put, fill, least};
use crate::order::{any_rule, arrange};
use crate::pieces::Pieces;
use crate::random::Random;
use crate::space::Space;

/// A search for a packing on given sheets.
#[derive(Clone, Debug, Default)]
pub(crate) struct Aim {
    /// The sheets: their format, and what lies on them.
    sheets: Vec<(u32, Vec<Put>)>,
    /// The parts that are left over.
    pool: Vec<u32>,
    /// What a part of each kind weighs in the pool.
    weights: Vec<i64>,
    /// Moves since the pool last became lighter.
    stuck: usize,
    space: Space,
    order: Vec<u32>,
    rest: Vec<u32>,
    keys: Vec<(i64, u32)>,
    chosen: Vec<usize>,
    made: Vec<Vec<Put>>,
}

/// After so many moves for each sheet that made the pool no lighter its parts become heavier.
const PATIENCE: usize = 100;

impl Aim {
    /// Begins with sheets that are filled already, and parts that are left over.
    pub(crate) fn begin(&mut self, pieces: &Pieces, sheets: impl IntoIterator<Item = (u32, Vec<Put>)>, pool: &[u32]) {
        self.sheets.clear();
        self.sheets.extend(sheets);
        self.pool.clear();
        self.pool.extend_from_slice(pool);
        self.stuck = 0;
        // Areas in parts that add up whatever the unit is.
        let largest = pieces.kinds.iter().map(crate::pieces::Kind::area).max().unwrap_or(1);
        let part = (largest >> 20).max(1);
        self.weights.clear();
        self.weights.extend(pieces.kinds.iter().map(|kind| 4 * (kind.area() / part).max(1)));
    }

    /// Whether all parts lie somewhere.
    pub(crate) fn is_reached(&self) -> bool {
        self.pool.is_empty()
    }

    /// The sheets.
    pub(crate) fn sheets(&self) -> &[(u32, Vec<Put>)] {
        &self.sheets
    }

    fn weight(&self, parts: &[u32]) -> i64 {
        parts.iter().filter_map(|kind| self.weights.get(*kind as usize)).sum()
    }

    /// Chooses one to three sheets.
    fn choose(&mut self, random: &mut Random) {
        let wanted = match random.below(10) {
            0..=3 => 1,
            4..=7 => 2,
            _ => 3,
        };
        self.chosen.clear();
        while self.chosen.len() < self.sheets.len().min(wanted) {
            let at = random.place(self.sheets.len());
            if !self.chosen.contains(&at) {
                self.chosen.push(at);
            }
        }
    }

    /// One move; gives its effort: how many parts were put down or refused.
    pub(crate) fn step(&mut self, pieces: &Pieces, random: &mut Random) -> u64 {
        self.choose(random);
        self.order.clear();
        let chosen = self.chosen.iter().filter_map(|at| self.sheets.get(*at));
        self.order.extend(chosen.flat_map(|(_, puts)| puts).map(|put| put.kind));
        self.order.extend(&self.pool);
        let effort = self.order.len() as u64 + 1;
        arrange(&mut self.order, &mut self.keys, &pieces.kinds, random);
        let rule = any_rule(random);
        let smallest = least(&pieces.kinds, &self.order);
        self.made.resize_with(self.chosen.len(), Vec::new);
        for (at, puts) in self.chosen.iter().zip(&mut self.made) {
            puts.clear();
            let board = self.sheets.get(*at).and_then(|(board, _)| pieces.boards.get(*board as usize));
            let Some(board) = board else { continue };
            self.rest.clear();
            self.space.clear(board.width, board.height, smallest);
            fill(&mut self.space, &pieces.kinds, &self.order, rule, (puts, &mut self.rest));
            core::mem::swap(&mut self.order, &mut self.rest);
        }
        let (before, after) = (self.weight(&self.pool), self.weight(&self.order));
        if after <= before {
            for (at, made) in self.chosen.iter().zip(&mut self.made) {
                if let Some((_, puts)) = self.sheets.get_mut(*at) {
                    core::mem::swap(puts, made);
                }
            }
            core::mem::swap(&mut self.pool, &mut self.order);
        }
        self.stuck = if after < before { 0 } else { self.stuck + 1 };
        if self.stuck > PATIENCE * self.sheets.len() {
            self.stuck = 0;
            for kind in &self.pool {
                if let Some(weight) = self.weights.get_mut(*kind as usize) {
                    // Bounded so that no sum leaves the numbers, however long it takes.
                    *weight = (*weight + *weight / 4 + 1).min(1 << 40);
                }
            }
        }
        effort
    }
}
