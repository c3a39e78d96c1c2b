//! Copies that overlap on a strip of given length, and how much each overlap weighs.
//!
//! Guided local search (Voudouris and Tsang, European Journal of Operational Research 113, 1999): weights of pairs that
//! overlap grow, so that a way out of them is found at the expense of others. By how much follows Gardeyn, Vanden Berghe
//! and Wauters 2025: the deepest overlap weighs twice as much after a round, the shallowest one 1.2 times, and what does
//! not overlap loses a twentieth.

use super::number::{count, real};
use super::overlap::{Lying, Room, TOUCH};
use super::shapes::{Form, Shapes};

const GROWS_LEAST: f64 = 1.2;
const GROWS_MOST: f64 = 2.0;
const FADES: f64 = 0.95;

/// No weight is greater, so that sums stay finite.
const HEAVIEST: f64 = 1e60;

/// Where all copies lie, how deep each pair overlaps, and what that weighs.
#[derive(Clone, Debug, Default)]
pub(crate) struct State {
    pub(crate) length: f64,
    pub(crate) lying: Vec<Lying>,
    /// A row of all others for each copy.
    depths: Vec<f64>,
    weights: Vec<f64>,
    /// The least weights.
    base: Vec<f64>,
}

impl State {
    /// Begins anew on a strip of this length, with the least weights; who reaches beyond it is moved onto it.
    pub(crate) fn reset(&mut self, shapes: &Shapes, lying: Vec<Lying>, length: f64) {
        let many = lying.len();
        self.length = length;
        self.lying = lying;
        for (copy, (first, end)) in self.lying.iter_mut().zip(&shapes.copies) {
            // Where it has become too long, it has room in another turn.
            let mut forms = core::iter::once(copy.form).chain(*first..*end);
            if let Some((form, room)) = forms.find_map(|form| Some((form, Room::of(shapes, form, length)?))) {
                copy.form = form;
                (copy.x, copy.y) = room.clamp(copy.x, copy.y);
            }
        }
        self.depths.clear();
        self.depths.resize(many * many, 0.0);
        self.weights.clear();
        if self.base.len() != many * many {
            self.base = base(shapes);
        }
        self.weights.extend_from_slice(&self.base);
        for me in 0..many {
            self.measure(shapes, me);
        }
    }

    /// Moves a copy.
    pub(crate) fn put(&mut self, shapes: &Shapes, me: usize, lying: Lying) {
        if let Some(copy) = self.lying.get_mut(me) {
            *copy = lying;
        }
        self.measure(shapes, me);
    }

    /// Measures the overlaps of a copy with all others.
    fn measure(&mut self, shapes: &Shapes, me: usize) {
        let many = self.lying.len();
        let Some(own) = self.lying.get(me).copied() else { return };
        for (other, copy) in self.lying.iter().enumerate().filter(|(other, _)| *other != me) {
            let depth = depth(shapes, own, *copy);
            for at in [me * many + other, other * many + me] {
                if let Some(kept) = self.depths.get_mut(at) {
                    *kept = depth;
                }
            }
        }
    }

    /// What pairs with a copy weigh, one for each copy.
    pub(crate) fn weights_of(&self, me: usize) -> &[f64] {
        row(&self.weights, me, self.lying.len())
    }

    /// Whether a copy overlaps another one.
    pub(crate) fn overlaps(&self, me: usize) -> bool {
        row(&self.depths, me, self.lying.len()).iter().any(|depth| *depth > 0.0)
    }

    /// The sum of all depths, by their least weights.
    pub(crate) fn total(&self) -> f64 {
        self.depths.iter().zip(&self.base).map(|(depth, base)| depth * base).sum::<f64>() / 2.0
    }

    /// Makes the overlaps that are there weigh more, and all others less.
    pub(crate) fn strengthen(&mut self) {
        let deepest = self.depths.iter().copied().fold(0.0, f64::max);
        for ((weight, depth), base) in self.weights.iter_mut().zip(&self.depths).zip(&self.base) {
            let factor = if *depth > 0.0 { GROWS_LEAST + (GROWS_MOST - GROWS_LEAST) * depth / deepest } else { FADES };
            *weight = (*weight * factor).clamp(*base, HEAVIEST);
        }
    }
}

/// The least weights: overlaps of large copies matter more, since they find another place less easily. The root of the
/// geometric mean of two sizes, as a share of the mean size, where a size is the side of a square as large as a copy's
/// box. Gardeyn, Vanden Berghe and Wauters 2025 weigh by hulls; the root is our own, by trials on four published strips.
fn base(shapes: &Shapes) -> Vec<f64> {
    let size = |form: &Form| (real(form.size().x) * real(form.size().y)).sqrt();
    let sizes: Vec<f64> = shapes.copies.iter().map(|(first, _)| shapes.form(*first).map_or(1.0, size)).collect();
    let mean = sizes.iter().sum::<f64>() / count(sizes.len());
    sizes.iter().flat_map(|one| sizes.iter().map(move |other| ((one * other).sqrt() / mean).sqrt())).collect()
}

fn row(table: &[f64], me: usize, many: usize) -> &[f64] {
    table.get(me * many..(me + 1) * many).unwrap_or_default()
}

/// How deep two copies overlap; 0 if that counts as none.
fn depth(shapes: &Shapes, moved: Lying, still: Lying) -> f64 {
    let Some(related) = shapes.related(moved.form, still.form) else { return 0.0 };
    let (x, y) = (moved.x - still.x, moved.y - still.y);
    let (low, high) = related.bounds();
    if x <= real(low.x) || x >= real(high.x) || y <= real(low.y) || y >= real(high.y) {
        return 0.0;
    }
    let (cosine, sine) = related.turn();
    let (cosine, sine) = (real(cosine), real(sine));
    let exit = related.field.exit(cosine * x + sine * y, cosine * y - sine * x);
    let depth = exit.map_or(0.0, |exit| exit.squared().sqrt());
    if depth > TOUCH * real(shapes.height) { depth } else { 0.0 }
}
