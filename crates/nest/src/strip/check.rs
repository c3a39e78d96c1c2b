//! Whether a layout holds: looked at afresh and exactly, without what made it.
//!
//! Everything is decided by whole numbers. Two polygons overlap if edges of them cross, or if one has a piece of an edge
//! inside the other one or, with the same sense, on an edge of it. Where no edges cross, pieces of an edge end at corners
//! of either polygon, so that their middles are whole numbers after doubling.

use core::cmp::Ordering;
use core::fmt;

use super::layout::Layout;
use super::point::{Point, Turn};
use super::problem::Strip;

/// What is wrong with a layout; placed copies are numbered from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// A copy is of an item that is not there.
    NoItem {
        /// Which copy.
        placed: u32,
    },
    /// A copy is turned as it may not be.
    Turned {
        /// Which copy.
        placed: u32,
    },
    /// A copy reaches beyond the strip or its taken piece.
    Outside {
        /// Which copy.
        placed: u32,
    },
    /// Two copies overlap.
    Overlap {
        /// One of them.
        placed: u32,
        /// The other one.
        other: u32,
    },
    /// An item is not placed as often as it has to be.
    Count {
        /// Which item.
        item: u32,
    },
    /// No copy reaches to the end of the taken piece.
    Length,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoItem { placed } => write!(f, "copy {placed} is of no item"),
            Self::Turned { placed } => write!(f, "copy {placed} is turned as it may not be"),
            Self::Outside { placed } => write!(f, "copy {placed} lies outside"),
            Self::Overlap { placed, other } => write!(f, "copies {placed} and {other} overlap"),
            Self::Count { item } => write!(f, "item {item} is not placed as often as it should be"),
            Self::Length => f.write_str("the length is not that of what is placed"),
        }
    }
}

impl core::error::Error for Fault {}

/// Whether every copy lies once, as it may, inside, and overlaps no other one.
///
/// # Errors
///
/// The first fault.
pub fn check(layout: &Layout, strip: &Strip) -> Result<(), Fault> {
    let mut counts: Vec<u32> = strip.items.iter().map(|_| 0).collect();
    let mut outlines: Vec<(u32, Outline)> = Vec::new();
    let mut length = 0;
    for (number, placed) in (0_u32..).zip(&layout.placed) {
        let at = placed.item as usize;
        let Some((item, count)) = strip.items.get(at).zip(counts.get_mut(at)) else {
            return Err(Fault::NoItem { placed: number });
        };
        *count += 1;
        if !item.turns.contains(&placed.turn) {
            return Err(Fault::Turned { placed: number });
        }
        let outline = Outline::new(item.polygon.corners().iter().map(|corner| {
            let (x, y) = match placed.turn {
                Turn::None => (corner.x, corner.y),
                Turn::Quarter => (-corner.y, corner.x),
                Turn::Half => (-corner.x, -corner.y),
                Turn::ThreeQuarters => (corner.y, -corner.x),
            };
            Point { x: x + placed.at.x, y: y + placed.at.y }
        }));
        if outline.left < 0 || outline.low < 0 || outline.right > layout.length || outline.high > strip.height {
            return Err(Fault::Outside { placed: number });
        }
        length = length.max(outline.right);
        outlines.push((number, outline));
    }
    outlines.sort_by_key(|(_, outline)| outline.left);
    for (at, (placed, outline)) in outlines.iter().enumerate() {
        let beside = outlines.iter().skip(at + 1).take_while(|(_, other)| other.left < outline.right);
        if let Some((other, _)) = beside.into_iter().find(|(_, other)| outline.overlaps(other)) {
            return Err(Fault::Overlap { placed: *placed.min(other), other: *placed.max(other) });
        }
    }
    let wrong = (0_u32..).zip(strip.items.iter().zip(&counts)).find(|(_, (item, count))| item.count != **count);
    if let Some((item, _)) = wrong {
        return Err(Fault::Count { item });
    }
    if length == layout.length { Ok(()) } else { Err(Fault::Length) }
}

/// A placed polygon, counter-clockwise, in halves of the caller's unit, so that middles are whole numbers.
struct Outline {
    edges: Vec<[Point; 2]>,
    left: i64,
    low: i64,
    right: i64,
    high: i64,
}

impl Outline {
    fn new(corners: impl Iterator<Item = Point>) -> Self {
        let corners: Vec<Point> = corners.collect();
        let xs = || corners.iter().map(|corner| corner.x);
        let ys = || corners.iter().map(|corner| corner.y);
        let (left, right) = (xs().min().unwrap_or(0), xs().max().unwrap_or(0));
        let (low, high) = (ys().min().unwrap_or(0), ys().max().unwrap_or(0));
        let doubled: Vec<Point> = corners.iter().map(|corner| Point { x: 2 * corner.x, y: 2 * corner.y }).collect();
        let ends = doubled.iter().skip(1).chain(doubled.first());
        Self { edges: doubled.iter().zip(ends).map(|(from, to)| [*from, *to]).collect(), left, low, right, high }
    }

    fn overlaps(&self, other: &Self) -> bool {
        let is_apart =
            self.right <= other.left || other.right <= self.left || self.high <= other.low || other.high <= self.low;
        if is_apart {
            return false;
        }
        let crossed = self.edges.iter().any(|one| other.edges.iter().any(|edge| cross(*one, *edge)));
        crossed || self.has_piece_in(other) || other.has_piece_in(self)
    }

    /// Whether a piece of an edge is inside another polygon, or on an edge of it that goes the same way. No edges cross.
    fn has_piece_in(&self, other: &Self) -> bool {
        self.edges.iter().any(|[from, to]| {
            let mut ends = vec![*from, *to];
            let on_it = |corner: &Point| turn(*from, *to, *corner).is_eq() && is_between(*from, *to, *corner);
            ends.extend(other.edges.iter().map(|[corner, _]| *corner).filter(on_it));
            // Along the edge.
            ends.sort_by_key(|end| {
                if from.x < to.x || from.x == to.x && from.y < to.y { (end.x, end.y) } else { (-end.x, -end.y) }
            });
            ends.dedup();
            let middles = ends.iter().zip(ends.iter().skip(1));
            middles.into_iter().any(|(one, next)| {
                let middle = Point { x: i64::midpoint(one.x, next.x), y: i64::midpoint(one.y, next.y) };
                other.holds(middle, [*from, *to])
            })
        })
    }

    /// Whether a point of an edge is inside, or on an edge that goes the same way.
    fn holds(&self, point: Point, [from, to]: [Point; 2]) -> bool {
        let mut is_inside = false;
        for [start, end] in &self.edges {
            if turn(*start, *end, point).is_eq() && is_between(*start, *end, point) {
                // Only an edge in line with this one has the middle of a piece on it: others would cross or end there.
                let along = i128::from(end.x - start.x) * i128::from(to.x - from.x)
                    + i128::from(end.y - start.y) * i128::from(to.y - from.y);
                return along > 0;
            }
            // A ray to the right: edges that go up have the point on their left, those that go down on their right.
            let goes_up = start.y <= point.y && point.y < end.y;
            let goes_down = end.y <= point.y && point.y < start.y;
            let side = turn(*start, *end, point);
            if goes_up && side.is_gt() || goes_down && side.is_lt() {
                is_inside = !is_inside;
            }
        }
        is_inside
    }
}

/// Greater where a point is to the left of the way from `a` to `b`, less to the right of it.
fn turn(a: Point, b: Point, point: Point) -> Ordering {
    let one = i128::from(b.x - a.x) * i128::from(point.y - a.y);
    let other = i128::from(b.y - a.y) * i128::from(point.x - a.x);
    one.cmp(&other)
}

/// Whether a point in line with two others is between them, or is one of them.
fn is_between(a: Point, b: Point, point: Point) -> bool {
    a.x.min(b.x) <= point.x && point.x <= a.x.max(b.x) && a.y.min(b.y) <= point.y && point.y <= a.y.max(b.y)
}

/// Whether each of two edges has the ends of the other one on both of its sides.
fn cross([a, b]: [Point; 2], [c, d]: [Point; 2]) -> bool {
    let differ = |one: Ordering, other: Ordering| one.is_ne() && other.is_ne() && one != other;
    differ(turn(a, b, c), turn(a, b, d)) && differ(turn(c, d, a), turn(c, d, b))
}

#[cfg(test)]
mod tests;
