//! The seen area of a part, for its tone: its facets less what stands before them.

use std::collections::{BTreeMap, BTreeSet};

use super::hidden::TOUCHES;
use super::ink::{Grid, straightened};
use super::shape::{Facet, Shape};
use super::view::Seen;

/// A convex area in the picture, counter-clockwise.
type Area = Vec<Seen>;

/// From where to where an area goes. Most areas lie beside each other: that is told without cutting one by the other.
struct Around {
    x: (f64, f64),
    y: (f64, f64),
}

impl Around {
    fn of(area: &[Seen]) -> Self {
        let none = (f64::INFINITY, f64::NEG_INFINITY);
        let with = |span: (f64, f64), at: f64| (span.0.min(at), span.1.max(at));
        let (x, y) = area.iter().fold((none, none), |(x, y), at| (with(x, at.x), with(y, at.y)));
        Self { x, y }
    }

    fn is_clear_of(&self, other: &Self) -> bool {
        let clear = |a: (f64, f64), b: (f64, f64)| a.1 < b.0 || b.1 < a.0;
        clear(self.x, other.x) || clear(self.y, other.y)
    }
}

/// The facets of a part as areas, without what the others hide of them.
pub(super) fn seen(part: &Shape, others: &[&Shape]) -> Vec<Area> {
    let mut areas = Vec::new();
    for facet in &part.facets {
        let before = others.iter().filter(|other| other.bounds.may_hide(&facet.bounds));
        let hiding = before.flat_map(|other| &other.facets).filter(|other| other.bounds.may_hide(&facet.bounds));
        let mut seen = vec![facet.corners.to_vec()];
        for nearer in hiding.map(|other| nearer(other, facet)).filter(|nearer| nearer.len() > 2) {
            let around = Around::of(&nearer);
            let mut left = Vec::with_capacity(seen.len());
            for area in seen {
                if Around::of(&area).is_clear_of(&around) {
                    left.push(area);
                } else {
                    left.extend(without(area, &nearer));
                }
            }
            seen = left;
        }
        areas.extend(seen);
    }
    areas
}

/// The part of a facet that is nearer than another's plane.
fn nearer(facet: &Facet, than: &Facet) -> Area {
    let before = |at: Seen| at.near - than.near(at) - TOUCHES;
    split(&facet.corners, before).0
}

/// An area without another, in convex pieces; whole where the other takes nothing of it.
fn without(area: Area, gone: &[Seen]) -> Vec<Area> {
    let (mut kept, mut rest) = (Vec::new(), area.clone());
    for (from, to) in gone.iter().zip(gone.iter().cycle().skip(1)) {
        let left = |at: Seen| (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x);
        let (inside, outside) = split(&rest, left);
        if outside.len() > 2 {
            kept.push(outside);
        }
        if inside.len() < 3 {
            // Else an area that many others stand around would fall into ever more pieces.
            return vec![area];
        }
        rest = inside;
    }
    kept
}

/// An area on both sides of a line: where a figure that runs evenly over it is positive, and the rest.
fn split(area: &[Seen], figure: impl Fn(Seen) -> f64) -> (Area, Area) {
    let (mut positive, mut rest) = (Area::new(), Area::new());
    for (from, to) in area.iter().zip(area.iter().cycle().skip(1)) {
        let (start, end) = (figure(*from), figure(*to));
        if start > 0.0 {
            positive.push(*from);
        } else {
            rest.push(*from);
        }
        if (start > 0.0) != (end > 0.0) {
            let crossing = from.towards(*to, start / (start - end));
            positive.push(crossing);
            rest.push(crossing);
        }
    }
    (positive, rest)
}

/// The outlines of areas that share sides: a side that is run both ways lies within.
pub(super) fn outlines(areas: impl Iterator<Item = Vec<Grid>>) -> Vec<Vec<Grid>> {
    let sides: Vec<[Grid; 2]> = areas.flat_map(|area| sides(&area)).collect();
    let corners: BTreeSet<Grid> = sides.iter().map(|[from, _]| *from).collect();
    let mut runs: BTreeMap<[Grid; 2], u32> = BTreeMap::new();
    for [from, to] in sides.into_iter().flat_map(|side| broken(side, &corners)) {
        match runs.get_mut(&[to, from]) {
            Some(back) if *back > 0 => *back -= 1,
            _ => *runs.entry([from, to]).or_default() += 1,
        }
    }
    let mut leads: BTreeMap<Grid, Vec<Grid>> = BTreeMap::new();
    for ([from, to], count) in runs {
        leads.entry(from).or_default().extend((0..count).map(|_| to));
    }
    let starts: Vec<Grid> = leads.keys().copied().collect();
    let mut rounds = Vec::new();
    for start in starts {
        while let Some(next) = leads.get_mut(&start).and_then(Vec::pop) {
            let (mut round, mut at) = (vec![start], next);
            // Every corner is left as often as it is reached, so the way ends where it began.
            while at != start {
                round.push(at);
                let Some(next) = leads.get_mut(&at).and_then(Vec::pop) else { break };
                at = next;
            }
            rounds.push(straightened(round));
        }
    }
    rounds.retain(|round| round.len() > 2);
    rounds
}

/// The sides of an area that have a length.
fn sides(area: &[Grid]) -> Vec<[Grid; 2]> {
    let ends = area.iter().skip(1).chain(area.first());
    area.iter().zip(ends).map(|(from, to)| [*from, *to]).filter(|[from, to]| from != to).collect()
}

/// A side in pieces between the corners that lie on it, to a grid's width: else the areas on both sides
/// of it would not share it, and a hairline would show.
fn broken([from, to]: [Grid; 2], corners: &BTreeSet<Grid>) -> Vec<[Grid; 2]> {
    let [wide, high] = [to[0] - from[0], to[1] - from[1]];
    let square = wide * wide + high * high;
    let (left, right) = (from[0].min(to[0]) - 1, from[0].max(to[0]) + 1);
    let mut on: Vec<(i64, Grid)> = Vec::new();
    for corner in corners.range([left, i64::MIN]..=[right, i64::MAX]) {
        let [x, y] = [corner[0] - from[0], corner[1] - from[1]];
        let (along, off) = (x * wide + y * high, x * high - y * wide);
        if along > 0 && along < square && off * off <= square {
            on.push((along, *corner));
        }
    }
    on.sort_unstable();
    let places: Vec<Grid> = [from].into_iter().chain(on.into_iter().map(|(_, corner)| corner)).chain([to]).collect();
    places.iter().zip(places.iter().skip(1)).map(|(from, to)| [*from, *to]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn size(area: &[Seen]) -> f64 {
        let pairs = area.iter().zip(area.iter().cycle().skip(1));
        pairs.map(|(a, b)| (a.x * b.y - a.y * b.x) / 2.0).sum()
    }

    fn square(left: f64, low: f64, side: f64) -> Area {
        let at = |x: f64, y: f64| Seen { x: left + x * side, y: low + y * side, near: 0.0 };
        vec![at(0.0, 0.0), at(1.0, 0.0), at(1.0, 1.0), at(0.0, 1.0)]
    }

    #[test]
    fn pieces_sum_to_the_area_less_what_is_gone() {
        for (gone, left) in [
            (square(2.0, 2.0, 3.0), 91.0),
            (square(8.0, 8.0, 4.0), 96.0),
            (square(-1.0, -1.0, 20.0), 0.0),
            (square(20.0, 0.0, 5.0), 100.0),
        ] {
            let pieces = without(square(0.0, 0.0, 10.0), &gone);
            let sum: f64 = pieces.iter().map(|piece| size(piece)).sum();
            assert!((sum - left).abs() < 1e-9, "{sum} for {left}");
        }
    }

    /// Two squares side by side are one rectangle; a ring of eight has an outer and an inner outline.
    #[test]
    fn areas_that_touch_have_one_outline() {
        let square = |x: i64, y: i64| vec![[x, y], [x + 1, y], [x + 1, y + 1], [x, y + 1]];
        let pair = outlines([square(0, 0), square(1, 0)].into_iter());
        assert_eq!(pair, [vec![[0, 0], [2, 0], [2, 1], [0, 1]]]);
        let ring = [(0, 0), (1, 0), (2, 0), (2, 1), (2, 2), (1, 2), (0, 2), (0, 1)];
        assert_eq!(outlines(ring.into_iter().map(|(x, y)| square(x, y))).len(), 2);
    }
}
