//! What overlaps with one copy, wherever it is put: the weighted sum of depths.

use super::field::{Exit, Field};
use super::number::real;
use super::shapes::Shapes;

/// Overlaps that are no deeper than this share of the strip's height count as none: they are settled exactly later.
pub(crate) const TOUCH: f64 = 1e-6;

/// A copy where it lies, about.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Lying {
    /// The number of its form.
    pub(crate) form: usize,
    pub(crate) x: f64,
    pub(crate) y: f64,
}

/// Shifts by which a form is on the strip.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Room {
    left: f64,
    right: f64,
    low: f64,
    high: f64,
}

impl Room {
    /// The room of a form on a strip of this length; none if it is too long.
    pub(crate) fn of(shapes: &Shapes, form: usize, length: f64) -> Option<Self> {
        let form = shapes.form(form)?;
        let (left, right) = (-real(form.low.x), length - real(form.high.x));
        let (low, high) = (-real(form.low.y), real(shapes.height - form.high.y));
        (left <= right && low <= high).then_some(Self { left, right, low, high })
    }

    /// The nearest place in it.
    pub(crate) const fn clamp(&self, x: f64, y: f64) -> (f64, f64) {
        (x.clamp(self.left, self.right), y.clamp(self.low, self.high))
    }

    /// A place by shares of its length and its height.
    pub(crate) fn at(&self, along: f64, across: f64) -> (f64, f64) {
        (self.left + along * (self.right - self.left), self.low + across * (self.high - self.low))
    }
}

/// Another copy, from the point of view of the one that is moved.
#[derive(Clone, Copy, Debug)]
struct Other<'a> {
    /// Shifts by which they overlap are inside this box.
    left: f64,
    right: f64,
    low: f64,
    high: f64,
    /// Where it lies.
    x: f64,
    y: f64,
    cosine: f64,
    sine: f64,
    weight: f64,
    field: &'a Field,
}

impl Other<'_> {
    /// The way out of it.
    fn exit(&self, x: f64, y: f64) -> Option<Exit> {
        if x <= self.left || x >= self.right || y <= self.low || y >= self.high {
            return None;
        }
        let (x, y) = (x - self.x, y - self.y);
        self.field.exit(self.cosine * x + self.sine * y, self.cosine * y - self.sine * x)
    }
}

/// An overlap: the way out of it, how deep it is, how much it weighs.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Contact {
    pub(crate) x: f64,
    pub(crate) y: f64,
    pub(crate) depth: f64,
    pub(crate) weight: f64,
}

/// All other copies, from the point of view of one in one of its forms.
#[derive(Clone, Debug)]
pub(crate) struct Around<'a> {
    pub(crate) form: usize,
    pub(crate) room: Room,
    others: Vec<Other<'a>>,
    /// The square of the depth that counts as none.
    touch: f64,
}

impl<'a> Around<'a> {
    /// What is around copy `me` of `all` in a form, with a weight for each of them. Memory of an earlier one is used
    /// again.
    pub(crate) fn of(
        shapes: &'a Shapes,
        (form, room): (usize, Room),
        (me, all): (usize, &[Lying]),
        weights: &[f64],
        earlier: Option<Self>,
    ) -> Self {
        let mut others = earlier.map_or_else(Vec::new, |earlier| earlier.others);
        others.clear();
        let others_of = all.iter().zip(weights).enumerate().filter(|(number, _)| *number != me);
        others.extend(others_of.filter_map(|(_, (other, weight))| {
            let related = shapes.related(form, other.form)?;
            let ((low, high), (cosine, sine)) = (related.bounds(), related.turn());
            Some(Other {
                left: other.x + real(low.x),
                right: other.x + real(high.x),
                low: other.y + real(low.y),
                high: other.y + real(high.y),
                x: other.x,
                y: other.y,
                cosine: real(cosine),
                sine: real(sine),
                weight: *weight,
                field: related.field,
            })
        }));
        let touch = TOUCH * real(shapes.height);
        Self { form, room, others, touch: touch * touch }
    }

    /// The weighted sum of all depths at a place, or some number that is `most` at least if the sum is.
    pub(crate) fn cost(&self, x: f64, y: f64, most: f64) -> f64 {
        let mut cost = 0.0;
        for other in &self.others {
            let Some(squared) = other.exit(x, y).map(|exit| exit.squared()) else { continue };
            if squared > self.touch {
                cost += other.weight * squared.sqrt();
                if cost >= most {
                    return cost;
                }
            }
        }
        cost
    }

    /// All overlaps at a place.
    pub(crate) fn contacts(&self, x: f64, y: f64, contacts: &mut Vec<Contact>) {
        contacts.clear();
        contacts.extend(self.others.iter().filter_map(|other| {
            let exit = other.exit(x, y).filter(|exit| exit.squared() > self.touch)?;
            let (cosine, sine) = (other.cosine, other.sine);
            Some(Contact {
                x: cosine * exit.x - sine * exit.y,
                y: sine * exit.x + cosine * exit.y,
                depth: exit.squared().sqrt(),
                weight: other.weight,
            })
        }));
    }
}
