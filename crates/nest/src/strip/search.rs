//! A shorter layout the longer it is looked for.

use super::begin::{Spot, begin};
use super::layout::{Layout, Placed};
use super::number::{nearest, real};
use super::overlap::Lying;
use super::place::Finder;
use super::point::Point;
use super::separate::State;
use super::settle::{length, settled};
use super::shapes::Shapes;
use crate::random::Random;
use crate::search::Progress;

/// The strip is made shorter by this share at first, and by no less than the second one.
const FIRST_SHARE: f64 = 0.02;
const LEAST_SHARE: f64 = 0.002;

/// The same for the small steps at the end.
const FIRST_SMALL_SHARE: f64 = 0.001;
const LEAST_SMALL_SHARE: f64 = 0.0001;

/// So many rounds without less overlap, and it is given up.
const PATIENCE: u32 = 60;

/// Overlap counts as less if it is below this share of the least.
const LESS: f64 = 0.98;

/// So many times it is given up at one length before a greater one is tried, as long as there is one, and then at all.
const FEW_TRIES: u32 = 2;
const TRIES: u32 = 6;

/// So many states with little overlap are kept, to go on from.
const KEPT: usize = 8;

/// An overlap is settled again when it is below this share of what could not be settled.
const SETTLES: f64 = 0.7;

/// A search, which has its best layout ready at any time. It stops when nobody calls [`Search::step`] any more.
///
/// What it finds depends on the shapes, the seed, the effort granted in all and what it was told besides, not on how the
/// effort was divided.
#[derive(Clone, Debug)]
pub struct Search<'a> {
    shapes: &'a Shapes,
    random: Random,
    best: Vec<Spot>,
    best_length: i64,
    state: State,
    finder: Finder<'a>,
    /// Copies whose turn it is in this round, the last one first.
    queue: Vec<usize>,
    /// The share by which the strip is made shorter.
    share: f64,
    /// Whether steps are small ones.
    is_finishing: bool,
    /// The least overlap of this try, and where it was.
    least: (f64, Vec<Lying>),
    /// The last overlap that could not be settled.
    unsettled: f64,
    /// Rounds since the overlap was less.
    stale: u32,
    /// How often it was given up at this length.
    failures: u32,
    /// States that were given up at this length, the least overlap first.
    kept: Vec<(f64, Vec<Lying>)>,
    granted: u64,
    spent: u64,
}

impl<'a> Search<'a> {
    /// Begins with a layout by one rule; searches with other seeds find other ones from there.
    pub fn new(shapes: &'a Shapes, seed: u64) -> Self {
        let best = begin(shapes);
        let mut search = Self {
            shapes,
            random: Random::new(seed),
            best_length: length(shapes, &best),
            best,
            state: State::default(),
            finder: Finder::default(),
            queue: Vec::new(),
            share: FIRST_SHARE,
            is_finishing: false,
            least: (f64::MAX, Vec::new()),
            unsettled: f64::MAX,
            stale: 0,
            failures: 0,
            kept: Vec::new(),
            granted: 0,
            spent: 0,
        };
        search.shorten();
        search
    }

    /// The best layout so far.
    pub fn best(&self) -> Layout {
        let placed = self.best.iter().filter_map(|spot| {
            let form = self.shapes.form(spot.form)?;
            Some(Placed { item: form.item, turn: form.turn, at: spot.at })
        });
        Layout { length: self.best_length, placed: placed.collect() }
    }

    /// The length of the best layout so far.
    pub const fn length(&self) -> i64 {
        self.best_length
    }

    /// Takes over the layout of another search of the same shapes, if it is shorter, and goes on from there.
    pub fn adopt(&mut self, layout: &Layout) {
        if layout.length >= self.best_length || layout.placed.len() != self.shapes.copies.len() {
            return;
        }
        let spot = |(placed, (first, end)): (&Placed, &(usize, usize))| {
            let is_it = |number: &usize| {
                let form = self.shapes.form(*number);
                form.is_some_and(|form| form.item == placed.item && form.turn == placed.turn)
            };
            Some(Spot { form: (*first..*end).find(is_it)?, at: placed.at })
        };
        let spots: Option<Vec<Spot>> = layout.placed.iter().zip(&self.shapes.copies).map(spot).collect();
        if let Some(spots) = spots {
            (self.best, self.best_length) = (spots, layout.length);
            self.shorten();
        }
    }

    /// From here on the strip is made shorter by small steps, from the best layout each time: for the last part of the
    /// time.
    pub fn finish(&mut self) {
        if !self.is_finishing {
            self.is_finishing = true;
            self.share = FIRST_SMALL_SHARE;
            self.shorten();
        }
    }

    /// Searches on. A million of effort is about a second natively (it counts places that were looked at).
    pub fn step(&mut self, effort: u32) -> Progress {
        let before = self.best_length;
        self.granted += u64::from(effort);
        while self.spent < self.granted && self.best_length > self.shapes.shortest() {
            self.spent += self.turn();
        }
        match self.best_length {
            now if now <= self.shapes.shortest() => Progress::Done,
            now if now < before => Progress::Better,
            _ => Progress::Same,
        }
    }

    /// One move, or the end of a round; gives its effort.
    fn turn(&mut self) -> u64 {
        let Some(copy) = self.queue.pop() else {
            self.round();
            return 1;
        };
        if self.state.overlaps(copy)
            && let Some(place) = self.finder.find(self.shapes, &self.state, copy, &mut self.random)
        {
            self.state.put(self.shapes, copy, place);
        }
        1 + self.finder.take_effort()
    }

    /// Judges a round, and begins the next one.
    fn round(&mut self) {
        let total = self.state.total();
        let before = self.best_length;
        if total <= (real(before) - self.state.length).max(0.0) && total < SETTLES * self.unsettled {
            self.unsettled = total;
            self.settle();
        }
        if real(self.best_length) <= self.state.length || self.best_length < before && total <= 0.0 {
            self.shorten();
            return;
        }
        if total <= 0.0 {
            self.give_up();
            return;
        }
        if total < LESS * self.least.0 {
            self.least.0 = total;
            self.least.1.clone_from(&self.state.lying);
            self.stale = 0;
        } else {
            self.stale += 1;
            if self.stale > PATIENCE {
                self.give_up();
                return;
            }
        }
        self.state.strengthen();
        self.line_up();
    }

    /// Makes the present state exact, and keeps it if that is shorter than the best layout.
    fn settle(&mut self) {
        let spot = |lying: &Lying| Spot { form: lying.form, at: Point::new(nearest(lying.x), nearest(lying.y)) };
        let spots: Vec<Spot> = self.state.lying.iter().map(spot).collect();
        if let Some((spots, length)) = settled(self.shapes, &spots)
            && length < self.best_length
        {
            (self.best, self.best_length) = (spots, length);
        }
    }

    /// Copies that overlap, in an order by chance.
    fn line_up(&mut self) {
        self.queue.clear();
        self.queue.extend((0..self.state.lying.len()).filter(|copy| self.state.overlaps(*copy)));
        for at in (1..self.queue.len()).rev() {
            let other = self.random.place(at + 1);
            self.queue.swap(at, other);
        }
    }

    /// Begins a try with copies on a strip of this length.
    fn begin(&mut self, lying: Vec<Lying>, length: f64) {
        self.state.reset(self.shapes, lying, length);
        self.least = (f64::MAX, Vec::new());
        self.unsettled = f64::MAX;
        self.stale = 0;
        self.line_up();
    }

    /// Makes the strip shorter than the best layout: a slice is cut out of it, or its end is cut off.
    fn shorten(&mut self) {
        self.kept.clear();
        self.failures = 0;
        let best = real(self.best_length);
        let length = (best * (1.0 - self.share)).floor().max(real(self.shapes.shortest())).min(best - 1.0);
        let cut = if self.random.below(2) == 0 { self.random.share() * length } else { f64::MAX };
        let lying = self.best.iter().map(|spot| {
            let (mut x, y) = (real(spot.at.x), real(spot.at.y));
            let middle = self.shapes.form(spot.form).map_or(0.0, |form| real(form.low.x + form.high.x) / 2.0);
            if x + middle > cut {
                x -= best - length;
            }
            Lying { form: spot.form, x, y }
        });
        let lying = lying.collect();
        self.begin(lying, length);
    }

    /// Goes on after a try that led to nothing.
    fn give_up(&mut self) {
        self.failures += 1;
        if self.is_finishing {
            self.share = (self.share * 0.8).max(LEAST_SMALL_SHARE);
            self.shorten();
            return;
        }
        if self.failures >= if self.share > LEAST_SHARE { FEW_TRIES } else { TRIES } {
            self.share = (self.share / 2.0).max(LEAST_SHARE);
            self.shorten();
            return;
        }
        let (total, lying) = core::mem::take(&mut self.least);
        if !lying.is_empty() {
            let at = self.kept.partition_point(|kept| kept.0 <= total);
            self.kept.insert(at, (total, lying));
            self.kept.truncate(KEPT);
        }
        // Rather one with little overlap than one with much.
        let at = self.random.place(self.kept.len()).min(self.random.place(self.kept.len()));
        let mut lying = self.kept.get(at).map_or_else(|| self.state.lying.clone(), |kept| kept.1.clone());
        self.exchange(&mut lying);
        self.begin(lying, self.state.length);
    }

    /// Exchanges two copies of different items, rather large ones.
    fn exchange(&mut self, lying: &mut [Lying]) {
        let middle = |copy: &Lying| {
            let form = self.shapes.form(copy.form)?;
            let (x, y) = (real(form.low.x + form.high.x) / 2.0, real(form.low.y + form.high.y) / 2.0);
            Some((form.item, x, y, form.area()))
        };
        // The largest of three by chance.
        let mut any =
            || (0..3).map(|_| self.random.place(lying.len())).max_by_key(|at| Some(middle(lying.get(*at)?)?.3));
        for _ in 0..KEPT {
            let (Some(one), Some(other)) = (any(), any()) else { return };
            let (Some(first), Some(second)) = (lying.get(one).copied(), lying.get(other).copied()) else { return };
            let (Some((item, x, y, _)), Some((other_item, other_x, other_y, _))) = (middle(&first), middle(&second))
            else {
                return;
            };
            if item == other_item {
                continue;
            }
            for (at, copy, x, y) in [
                (one, first, second.x + other_x - x, second.y + other_y - y),
                (other, second, first.x + x - other_x, first.y + y - other_y),
            ] {
                if let Some(place) = lying.get_mut(at) {
                    *place = Lying { x, y, ..copy };
                }
            }
            return;
        }
    }
}

#[cfg(test)]
mod tests;
