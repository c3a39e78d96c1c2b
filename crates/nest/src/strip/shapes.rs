//! Items ready to be nested: each in all turns, and where any two of them overlap.

use std::collections::BTreeMap;

use super::convex;
use super::field::Field;
use super::nofit::{Axis, Nofit};
use super::point::{Point, Turn, bounds};
use super::problem::{HIGHEST, MOST_COPIES, MOST_ITEMS, NoStrip, Strip};

/// The most sums of convex parts of all pairs together.
const MOST_SUMS: usize = 400_000;

/// The most cells of all fields together, about.
const MOST_CELLS: usize = 1 << 20;

/// Items of a strip as a search has them. To make this takes some tenths of a second for a hundred pairs; searches share
/// it.
#[derive(Clone, Debug)]
pub struct Shapes {
    pub(crate) height: i64,
    /// Twice the area of all copies.
    pub(crate) double_area: i128,
    /// Each item in each turn in which it fits.
    pub(crate) forms: Vec<Form>,
    /// The forms of each copy, from its first to behind its last, by item.
    pub(crate) copies: Vec<(usize, usize)>,
    pairs: Vec<Pair>,
    /// Of each form moved and each that stays.
    ties: Vec<Tie>,
}

/// An item in one of its turns.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Form {
    pub(crate) item: u32,
    pub(crate) turn: Turn,
    /// The box of its corners.
    pub(crate) low: Point,
    pub(crate) high: Point,
}

impl Form {
    /// Its size along the strip and across it.
    pub(crate) fn size(&self) -> Point {
        self.high - self.low
    }

    /// The area of its box.
    pub(crate) fn area(&self) -> i128 {
        i128::from(self.size().x) * i128::from(self.size().y)
    }
}

/// Two items, the second turned against the first.
#[derive(Clone, Debug)]
struct Pair {
    nofit: Nofit,
    field: Field,
}

/// How two forms are related to a pair of items: shifts are turned by a multiple of a quarter.
#[derive(Clone, Copy, Debug)]
struct Tie {
    pair: usize,
    /// The shift (x, y) is (cosine x + sine y, cosine y - sine x) in the pair.
    cosine: i64,
    sine: i64,
    /// All shifts by which they overlap are inside this box.
    low: Point,
    high: Point,
}

/// Two forms, of which the second stays.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Related<'a> {
    pub(crate) nofit: &'a Nofit,
    pub(crate) field: &'a Field,
    tie: &'a Tie,
}

impl Shapes {
    /// Everything that a search needs to know of a strip's items.
    ///
    /// # Errors
    ///
    /// See [`NoStrip`].
    pub fn of(strip: &Strip) -> Result<Self, NoStrip> {
        let copies: u64 = strip.items.iter().map(|item| u64::from(item.count)).sum();
        let has_bounds = (1..=HIGHEST).contains(&strip.height)
            && strip.items.len() <= MOST_ITEMS
            && copies <= u64::from(MOST_COPIES);
        if !has_bounds {
            return Err(NoStrip::Bounds);
        }
        let (mut forms, mut of_copies) = (Vec::new(), Vec::new());
        for (number, item) in (0_u32..).zip(&strip.items) {
            let first = forms.len();
            for turn in Turn::ALL.into_iter().filter(|turn| item.turns.contains(turn)) {
                let (low, high) = bounds(&item.polygon.turned(turn));
                if high.y - low.y <= strip.height {
                    forms.push(Form { item: number, turn, low, high });
                }
            }
            if forms.len() == first {
                return Err(NoStrip::Item { item: number });
            }
            of_copies.extend((0..item.count).map(|_| (first, forms.len())));
        }
        let mut shapes = Self {
            height: strip.height,
            double_area: strip.double_area(),
            forms,
            copies: of_copies,
            pairs: Vec::new(),
            ties: Vec::new(),
        };
        shapes.relate(strip)?;
        Ok(shapes)
    }

    /// Makes all pairs and how forms are related to them.
    fn relate(&mut self, strip: &Strip) -> Result<(), NoStrip> {
        let parts: Vec<Vec<Vec<Point>>> =
            strip.items.iter().map(|item| convex::parts(item.polygon.corners())).collect();
        // First, second, how the second is turned against the first; how it is turned to what is asked for.
        let key = |moved: &Form, still: &Form| {
            if still.item <= moved.item {
                ((still.item, moved.item, still.turn.to(moved.turn)), still.turn, 1)
            } else {
                ((moved.item, still.item, moved.turn.to(still.turn)), moved.turn, -1)
            }
        };
        let forms = self.forms.clone();
        let both = || forms.iter().flat_map(|moved| forms.iter().map(move |still| (moved, still)));
        let mut numbers: BTreeMap<(u32, u32, Turn), usize> =
            both().map(|(one, other)| (key(one, other).0, 0)).collect();
        let parts_of = |item: u32| parts.get(item as usize).map_or(&[][..], Vec::as_slice);
        let sums: usize = numbers.keys().map(|(one, other, _)| parts_of(*one).len() * parts_of(*other).len()).sum();
        if sums > MOST_SUMS {
            return Err(NoStrip::Bounds);
        }
        let side = [32, 16].into_iter().find(|side| side * side * numbers.len() <= MOST_CELLS).unwrap_or(8);
        let mut pairs = Vec::new();
        for ((one, other, turn), number) in &mut numbers {
            let turned: Vec<Vec<Point>> =
                parts_of(*other).iter().map(|part| part.iter().map(|corner| turn.of(*corner)).collect()).collect();
            let nofit = Nofit::of(parts_of(*one), &turned);
            let field = Field::of(&nofit, side).ok_or(NoStrip::Bounds)?;
            *number = pairs.len();
            pairs.push(Pair { nofit, field });
        }
        let tie = |(moved, still): (&Form, &Form)| {
            let (key, turn, sign) = key(moved, still);
            let unit = turn.of(Point::new(sign, 0));
            Tie {
                pair: numbers.get(&key).copied().unwrap_or_default(),
                cosine: unit.x,
                sine: unit.y,
                low: still.low - moved.high,
                high: still.high - moved.low,
            }
        };
        let ties = both().map(tie).collect();
        (self.pairs, self.ties) = (pairs, ties);
        Ok(())
    }

    /// A form by its number.
    pub(crate) fn form(&self, number: usize) -> Option<&Form> {
        self.forms.get(number)
    }

    /// How two forms by their numbers are related.
    pub(crate) fn related(&self, moved: usize, still: usize) -> Option<Related<'_>> {
        let tie = self.ties.get(moved * self.forms.len() + still)?;
        let Pair { nofit, field } = self.pairs.get(tie.pair)?;
        Some(Related { nofit, field, tie })
    }

    /// No layout is shorter than this: by area, and by its longest copy.
    pub(crate) fn shortest(&self) -> i64 {
        let by_area = (self.double_area + 2 * i128::from(self.height) - 1) / (2 * i128::from(self.height));
        let by_copy = self
            .copies
            .iter()
            .filter_map(|(first, end)| self.forms.get(*first..*end)?.iter().map(|form| form.size().x).min());
        by_copy.max().unwrap_or(0).max(i64::try_from(by_area).unwrap_or(i64::MAX))
    }
}

impl Related<'_> {
    /// The box of all shifts of the first form against the second by which they overlap: they are inside it.
    pub(crate) const fn bounds(&self) -> (Point, Point) {
        (self.tie.low, self.tie.high)
    }

    /// The cosine and the sine of the turn that leads from the pair to the two forms, or of its opposite.
    pub(crate) const fn turn(&self) -> (i64, i64) {
        (self.tie.cosine, self.tie.sine)
    }

    /// Shifts along an axis by which they overlap, at a given shift across it: open spans, sorted.
    pub(crate) fn spans(&self, axis: Axis, across: i64, spans: &mut Vec<(i64, i64)>) {
        let (cosine, sine) = self.turn();
        // In the pair, the axis may be the other one, and either may go the other way.
        let (own, line, sign) = match (axis, sine) {
            (Axis::X, 0) => (Axis::X, cosine * across, cosine),
            (Axis::Y, 0) => (Axis::Y, cosine * across, cosine),
            (Axis::X, _) => (Axis::Y, sine * across, -sine),
            (Axis::Y, _) => (Axis::X, -sine * across, sine),
        };
        self.nofit.spans(own, line, spans);
        if sign < 0 {
            spans.reverse();
            for span in spans {
                *span = (-span.1, -span.0);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strip::polygon::Polygon;
    use crate::strip::problem::Item;

    fn item(corners: &[(i64, i64)], turns: &[Turn]) -> Item {
        let corners: Vec<Point> = corners.iter().map(|(x, y)| Point::new(*x, *y)).collect();
        Item { polygon: Polygon::new(&corners).unwrap(), turns: turns.to_vec(), count: 1 }
    }

    /// The plain twin of ties: the no-fit polygon of the forms themselves.
    #[test]
    fn turned_forms_overlap_as_their_own_no_fit_polygon_says() {
        let hook = item(&[(0, 0), (5, 0), (5, 1), (1, 1), (1, 4), (0, 4)], &Turn::ALL);
        let wedge = item(&[(1, 0), (4, 1), (2, 3)], &Turn::ALL);
        let strip = Strip { height: 30, items: vec![hook, wedge] };
        let shapes = Shapes::of(&strip).unwrap();
        assert_eq!(shapes.forms.len(), 8);
        let parts = |form: &Form| convex::parts(&strip.items[form.item as usize].polygon.turned(form.turn));
        let (mut ours, mut own) = (Vec::new(), Vec::new());
        for (moved, one) in shapes.forms.iter().enumerate() {
            for (still, other) in shapes.forms.iter().enumerate() {
                let related = shapes.related(moved, still).unwrap();
                let nofit = Nofit::of(&parts(other), &parts(one));
                assert_eq!(related.bounds(), (nofit.low, nofit.high));
                for line in -9..9 {
                    for axis in [Axis::X, Axis::Y] {
                        related.spans(axis, line, &mut ours);
                        nofit.spans(axis, line, &mut own);
                        assert_eq!(ours, own, "{one:?} {other:?} {axis:?} {line}");
                    }
                }
            }
        }
    }

    #[test]
    fn what_fits_no_strip_is_refused() {
        let bar = item(&[(0, 0), (9, 0), (9, 2), (0, 2)], &[Turn::None]);
        let strip = |height, item: Item| Strip { height, items: vec![item] };
        assert!(Shapes::of(&strip(2, bar.clone())).is_ok());
        assert_eq!(Shapes::of(&strip(1, bar.clone())).err(), Some(NoStrip::Item { item: 0 }));
        assert_eq!(Shapes::of(&strip(2, Item { turns: vec![], ..bar.clone() })).err(), Some(NoStrip::Item { item: 0 }));
        assert_eq!(Shapes::of(&strip(0, bar.clone())).err(), Some(NoStrip::Bounds));
        assert_eq!(Shapes::of(&strip(2, Item { count: u32::MAX, ..bar })).err(), Some(NoStrip::Bounds));
    }
}
