//! The best place for one copy, all others staying: samples, of which the best are refined.
//!
//! After Gardeyn, Vanden Berghe and Wauters 2025: places all over the strip and around the present one are tried, the
//! best three followed down. Here that takes ways out of no-fit polygons, which lead exactly to their borders, and steps
//! in turns along the axes and any directions.

use super::number::real;
use super::overlap::{Around, Contact, Lying, Room};
use super::separate::State;
use super::shapes::Shapes;
use crate::random::Random;

/// So many places are tried all over the strip, and around the present place.
const ANYWHERE: usize = 40;
const NEARBY: usize = 20;

/// So many samples are refined.
const REFINED: usize = 3;

/// First steps, and the least ones, as shares of the lesser side of a copy.
const STEP: f64 = 0.2;
const COARSE: f64 = 0.04;

/// The least step of the last refinement, as a share of the strip's height.
const FINE: f64 = 1e-5;

/// A place counts as better if it costs less than this share of the other one.
const BETTER: f64 = 0.999;

/// A place, and what it costs.
#[derive(Clone, Copy, Debug)]
struct Tried {
    /// Of the list of forms.
    around: usize,
    x: f64,
    y: f64,
    cost: f64,
}

/// Looks for places. What it holds besides its effort is memory that is used again.
#[derive(Clone, Debug, Default)]
pub(crate) struct Finder<'a> {
    /// A copy's forms.
    around: Vec<Around<'a>>,
    contacts: Vec<Contact>,
    best: Vec<Tried>,
    /// How many places were looked at.
    effort: u64,
}

impl<'a> Finder<'a> {
    /// How many places were looked at since it was last asked.
    pub(crate) fn take_effort(&mut self) -> u64 {
        core::mem::take(&mut self.effort)
    }

    /// A place for copy `me` that costs less than its present one.
    pub(crate) fn find(&mut self, shapes: &'a Shapes, state: &State, me: usize, random: &mut Random) -> Option<Lying> {
        let now = *state.lying.get(me)?;
        let (first, end) = *shapes.copies.get(me)?;
        let mut earlier = core::mem::take(&mut self.around);
        for form in first..end {
            if let Some(room) = Room::of(shapes, form, state.length) {
                let weights = state.weights_of(me);
                self.around.push(Around::of(shapes, (form, room), (me, &state.lying), weights, earlier.pop()));
            }
        }
        let own = self.around.iter().position(|around| around.form == now.form)?;
        let side = shapes.form(now.form).map(|form| real(form.size().x.min(form.size().y)))?;
        let fine = FINE * real(shapes.height);
        let before = self.tried(own, (now.x, now.y), f64::MAX)?;
        let mut found = self.descend(before, STEP * side / 2.0, fine, random);
        if found.cost > 0.0 {
            self.best.clear();
            self.sample(shapes, found, random);
            for at in 0..self.best.len() {
                let Some(tried) = self.best.get(at).copied() else { break };
                let refined = self.descend(tried, STEP * side, COARSE * side, random);
                if refined.cost < found.cost {
                    found = refined;
                }
                if found.cost <= 0.0 {
                    break;
                }
            }
            found = self.descend(found, COARSE * side, fine, random);
        }
        let form = self.around.get(found.around)?.form;
        (found.cost < before.cost).then_some(Lying { form, x: found.x, y: found.y })
    }

    /// What a place costs that is moved into its room; none if that is `most` at least.
    fn tried(&mut self, around: usize, (x, y): (f64, f64), most: f64) -> Option<Tried> {
        let of = self.around.get(around)?;
        let (x, y) = of.room.clamp(x, y);
        self.effort += 1;
        let cost = of.cost(x, y, most);
        (cost < most).then_some(Tried { around, x, y, cost })
    }

    /// Puts the best samples into the list.
    fn sample(&mut self, shapes: &Shapes, now: Tried, random: &mut Random) {
        let Some(form) = self.around.get(now.around).and_then(|around| shapes.form(around.form)).copied() else {
            return;
        };
        let (width, height) = (real(form.size().x), real(form.size().y));
        let middle = |low: i64, high: i64| real(low + high) / 2.0;
        let (x, y) = (now.x + middle(form.low.x, form.high.x), now.y + middle(form.low.y, form.high.y));
        for number in 0..ANYWHERE + NEARBY {
            let around = random.place(self.around.len());
            let Some((other, room)) = self.around.get(around).map(|around| (around.form, around.room)) else {
                continue;
            };
            let place = if number < ANYWHERE {
                room.at(random.share(), random.share())
            } else {
                let Some(other) = shapes.form(other) else { continue };
                // The first ones stay in the middle and may be turned; the others are up to a size away.
                let reach = if number < ANYWHERE + 2 { 0.0 } else { 2.0 };
                (
                    x - middle(other.low.x, other.high.x) + reach * (random.share() - 0.5) * width,
                    y - middle(other.low.y, other.high.y) + reach * (random.share() - 0.5) * height,
                )
            };
            let most = self.best.get(REFINED - 1).map_or(f64::MAX, |worst| worst.cost);
            if let Some(tried) = self.tried(around, place, most) {
                let at = self.best.partition_point(|other| other.cost <= tried.cost);
                self.best.insert(at, tried);
                self.best.truncate(REFINED);
            }
        }
    }

    /// Follows a place down until steps are `least` long.
    fn descend(&mut self, from: Tried, first: f64, least: f64, random: &mut Random) -> Tried {
        let (mut best, mut step, mut is_new) = (from, first, true);
        while best.cost > 0.0 && step > least {
            let by_exits = if is_new { self.by_exits(best) } else { None };
            if let Some(better) = by_exits.or_else(|| self.by_steps(best, step, random)) {
                best = better;
                is_new = true;
            } else {
                step /= 2.0;
                is_new = false;
            }
        }
        best
    }

    /// A better place out of the overlaps that cost most, one or two of them.
    fn by_exits(&mut self, from: Tried) -> Option<Tried> {
        let mut contacts = core::mem::take(&mut self.contacts);
        self.around.get(from.around)?.contacts(from.x, from.y, &mut contacts);
        self.effort += 1;
        let cost = |contact: &Contact| contact.weight * contact.depth;
        contacts.sort_by(|one, other| cost(other).total_cmp(&cost(one)));
        let mut best: Option<Tried> = None;
        let mut ways = [None; 3];
        if let [one, other, ..] = contacts.as_slice() {
            ways = [out_of_both(one, other), Some((one.x, one.y)), Some((other.x, other.y))];
        } else if let [one] = contacts.as_slice() {
            ways = [Some((one.x, one.y)), None, None];
        }
        for (x, y) in ways.into_iter().flatten() {
            let most = best.map_or(from.cost * BETTER, |best| best.cost);
            best = self.tried(from.around, (from.x + x, from.y + y), most).or(best);
        }
        self.contacts = contacts;
        best
    }

    /// A better place one step away: in turns along the axes, and along any direction.
    fn by_steps(&mut self, from: Tried, step: f64, random: &mut Random) -> Option<Tried> {
        let (mut x, mut y) = (1.0, 0.0);
        if random.below(2) == 0 {
            let (along, across) = (2.0 * random.share() - 1.0, 2.0 * random.share() - 1.0);
            let length = (along * along + across * across).sqrt().max(1e-3);
            (x, y) = (along / length, across / length);
        }
        let (x, y) = (step * x, step * y);
        [(x, y), (-x, -y), (-y, x), (y, -x)]
            .into_iter()
            .find_map(|(x, y)| self.tried(from.around, (from.x + x, from.y + y), from.cost * BETTER))
    }
}

/// The shortest way out of two overlaps at once, if each is left straight across its border; none if these are nearly
/// parallel.
fn out_of_both(one: &Contact, other: &Contact) -> Option<(f64, f64)> {
    let cross = (one.x * other.y - one.y * other.x) / (one.depth * other.depth);
    if cross.abs() < 0.05 {
        return None;
    }
    // Where both borders meet: the way times either exit is the square of that exit.
    let (first, second) = (one.depth * one.depth, other.depth * other.depth);
    let area = one.x * other.y - one.y * other.x;
    Some(((first * other.y - second * one.y) / area, (second * one.x - first * other.x) / area))
}
