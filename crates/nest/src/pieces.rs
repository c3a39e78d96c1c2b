//! A problem as the search has it: parts with their spacing, sheets without their trim, equal parts together.

use crate::problem::{DEAREST, Format, Item, LONGEST, MOST_COPIES, NoRoom, Problem, Worth};
use crate::sort::sorted;

/// Parts of one size.
#[derive(Clone, Debug)]
pub(crate) struct Kind {
    /// Width and height with the spacing on one side each.
    pub(crate) width: i32,
    pub(crate) height: i32,
    /// Whether turning makes a difference and is allowed.
    pub(crate) turns: bool,
    /// Items of this size, each with its copies.
    pub(crate) items: Vec<(u32, u32)>,
}

impl Kind {
    pub(crate) const fn area(&self) -> i64 {
        self.width as i64 * self.height as i64
    }

    pub(crate) fn fits(&self, board: &Board) -> bool {
        let fits = |width, height| width <= board.width && height <= board.height;
        fits(self.width, self.height) || self.turns && fits(self.height, self.width)
    }
}

/// Sheets of one format: what parts with their spacing may lie on.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Board {
    pub(crate) width: i32,
    pub(crate) height: i32,
    pub(crate) cost: i64,
    pub(crate) most: u32,
    /// The area within the trim, which is the most that offcuts can have.
    pub(crate) room: i64,
    /// What a unit of an offcut's area is worth.
    pub(crate) worth: f64,
}

impl Board {
    pub(crate) const fn area(&self) -> i64 {
        self.width as i64 * self.height as i64
    }

    /// What a unit of its area costs.
    #[expect(clippy::cast_precision_loss, reason = "rounded the same everywhere")]
    pub(crate) fn cost_of_area(&self) -> f64 {
        self.cost as f64 / (self.area() as f64).max(1.0)
    }
}

/// All of a problem.
#[derive(Clone, Debug)]
pub(crate) struct Pieces {
    pub(crate) kinds: Vec<Kind>,
    pub(crate) boards: Vec<Board>,
    pub(crate) spacing: i32,
    /// The least size of an offcut, with the spacing.
    pub(crate) least: (i32, i32),
    /// The copies of each kind.
    pub(crate) counts: Vec<u32>,
    /// Formats by what their offcuts are worth, the dearest first.
    pub(crate) dearest: Vec<u32>,
}

/// A number that orders as this one does, which is not negative.
#[expect(clippy::cast_possible_wrap, reason = "its sign is not set")]
pub(crate) const fn ordered(number: f64) -> i64 {
    // Source: IEEE 754: what is not negative is ordered as its bits are.
    number.to_bits() as i64
}

fn within(length: i64) -> Option<i32> {
    if (1..=LONGEST).contains(&length) { i32::try_from(length).ok() } else { None }
}

impl Pieces {
    /// # Errors
    ///
    /// What is out of bounds, or too large for every format.
    pub(crate) fn of(problem: &Problem, worth: &Worth) -> Result<Self, NoRoom> {
        let gaps = problem.gaps;
        let is_gap = |length: i64| (0..=LONGEST).contains(&length);
        if ![gaps.spacing, gaps.trim, worth.least_width, worth.least_height].into_iter().all(is_gap)
            || worth.per_mille > 1000
            || problem.items.iter().map(|item| u64::from(item.count)).sum::<u64>() > u64::from(MOST_COPIES)
        {
            return Err(NoRoom::Bounds);
        }
        // Sums and squares of these stay within what the numbers hold.
        let spacing = within(gaps.spacing + 1).ok_or(NoRoom::Bounds)? - 1;
        let with = |length: i64| within(length + gaps.spacing);
        let mut pieces = Self {
            kinds: Vec::new(),
            boards: Vec::new(),
            spacing,
            least: (
                with(worth.least_width.max(1)).ok_or(NoRoom::Bounds)?,
                with(worth.least_height.max(1)).ok_or(NoRoom::Bounds)?,
            ),
            counts: Vec::new(),
            dearest: Vec::new(),
        };
        for Format { width, height, cost, most } in problem.formats.iter().copied() {
            if within(width).is_none() || within(height).is_none() || !(0..=DEAREST).contains(&cost) {
                return Err(NoRoom::Bounds);
            }
            // A sheet that is all trim holds nothing.
            let [inner_width, inner_height] = [width, height].map(|side| with(side - 2 * gaps.trim).unwrap_or(0));
            #[expect(clippy::cast_precision_loss, reason = "rounded the same everywhere")]
            let per_area = cost as f64 * f64::from(worth.per_mille) / (width * height) as f64 / 1000.0;
            pieces.boards.push(Board {
                width: inner_width,
                height: inner_height,
                cost,
                most: most.unwrap_or(u32::MAX),
                room: (width - 2 * gaps.trim).max(0) * (height - 2 * gaps.trim).max(0),
                worth: per_area,
            });
        }
        let worth = |at: usize| pieces.boards.get(at).map_or(0, |board| -ordered(board.worth));
        pieces.dearest = sorted(pieces.boards.len(), &worth);
        for (number, item) in (0_u32..).zip(&problem.items) {
            pieces.add(number, item, with(item.width), with(item.height))?;
        }
        Ok(pieces)
    }

    fn add(&mut self, number: u32, item: &Item, width: Option<i32>, height: Option<i32>) -> Result<(), NoRoom> {
        let (Some(width), Some(height)) = (width, height) else { return Err(NoRoom::Bounds) };
        if item.width < 1 || item.height < 1 {
            return Err(NoRoom::Bounds);
        }
        if item.count == 0 {
            return Ok(());
        }
        let turns = item.turns && width != height;
        let kind = Kind { width, height, turns, items: Vec::new() };
        if !self.boards.iter().any(|board| kind.fits(board)) {
            return Err(NoRoom::Item { item: number });
        }
        // The largest first, so that what is found does not depend on the order of items.
        let key = |kind: &Kind| (-kind.area(), kind.width, kind.turns);
        let at = self.kinds.partition_point(|known| key(known) < key(&kind));
        if self.kinds.get(at).is_none_or(|known| key(known) != key(&kind)) {
            self.kinds.insert(at, kind);
            self.counts.insert(at, 0);
        }
        if let (Some(kind), Some(count)) = (self.kinds.get_mut(at), self.counts.get_mut(at)) {
            kind.items.push((number, item.count));
            *count += item.count;
        }
        Ok(())
    }

    /// The area of parts with their spacing.
    pub(crate) fn area_of(&self, parts: impl Iterator<Item = u32>) -> i64 {
        parts.filter_map(|number| self.kinds.get(number as usize)).map(Kind::area).sum()
    }
}
