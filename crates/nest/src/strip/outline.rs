//! The border of a no-fit polygon: what of the edges of its convex parts lies inside no other part.
//!
//! For the search alone, so in real numbers: how deep a shift is inside is its distance to this border.

use super::nofit::Nofit;
use super::number::real;
use super::point::{Point, edges};

/// A part is so much smaller than it is, as a share of the whole, when edges are cut off by it: gaps without a width
/// stay on the border.
const SHRUNK: f64 = 1e-9;

/// A half-plane by its unit normal, which points inwards: inside is where the normal times a point is above `limit`.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Plane {
    pub(crate) x: f64,
    pub(crate) y: f64,
    pub(crate) limit: f64,
}

impl Plane {
    /// Whether an edge, inside to its left, lies on the border and goes the same way.
    fn has(&self, edge: &Segment, shrunk: f64) -> bool {
        let is_on = |x: f64, y: f64| self.depth(x, y).abs() <= shrunk / 2.0;
        let goes_along = self.x * -edge.rise + self.y * edge.run > 0.0;
        goes_along && is_on(edge.x, edge.y) && is_on(edge.x + edge.run, edge.y + edge.rise)
    }

    /// How far inside a point is.
    pub(crate) fn depth(&self, x: f64, y: f64) -> f64 {
        self.x * x + self.y * y - self.limit
    }
}

/// A piece of the border: where it begins, and from there to its end.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Segment {
    pub(crate) x: f64,
    pub(crate) y: f64,
    pub(crate) run: f64,
    pub(crate) rise: f64,
}

/// The half-planes whose intersection each convex part is.
pub(crate) fn planes(nofit: &Nofit) -> Vec<Vec<Plane>> {
    let plane = |(from, to): (Point, Point)| {
        let (run, rise) = (real(to.x - from.x), real(to.y - from.y));
        let length = (run * run + rise * rise).sqrt();
        let (x, y) = (-rise / length, run / length);
        Plane { x, y, limit: x * real(from.x) + y * real(from.y) }
    };
    nofit.parts.iter().map(|part| edges(&part.corners).map(plane).collect()).collect()
}

/// The border.
pub(crate) fn outline(nofit: &Nofit, planes: &[Vec<Plane>]) -> Vec<Segment> {
    let shrunk = SHRUNK * real((nofit.high.x - nofit.low.x).max(nofit.high.y - nofit.low.y));
    let (mut segments, mut cuts) = (Vec::new(), Vec::new());
    for (at, part) in nofit.parts.iter().enumerate() {
        for (from, to) in edges(&part.corners) {
            let (low, high) = (from.low(to), from.high(to));
            let is_near = |other: usize| {
                let other = nofit.parts.get(other).filter(|_| other != at);
                other.is_some_and(|other| {
                    low.x <= other.high.x && other.low.x <= high.x && low.y <= other.high.y && other.low.y <= high.y
                })
            };
            let (x, y, run, rise) = (real(from.x), real(from.y), real(to.x - from.x), real(to.y - from.y));
            let edge = Segment { x, y, run, rise };
            let near = planes.iter().enumerate().filter(|(other, _)| is_near(*other));
            cuts.clear();
            cuts.extend(near.filter_map(|(other, planes)| {
                // What two parts have in common of their borders is said by the first one.
                let is_common = other < at && planes.iter().any(|plane| plane.has(&edge, shrunk));
                inside(&edge, planes, shrunk, is_common)
            }));
            cuts.sort_by(|one: &(f64, f64), other| one.0.total_cmp(&other.0));
            let mut done = 0.0;
            for (start, end) in cuts.iter().copied().chain([(1.0, 1.0)]) {
                if start > done {
                    let share = start - done;
                    let (x, y) = (x + done * run, y + done * rise);
                    segments.push(Segment { x, y, run: share * run, rise: share * rise });
                }
                done = end.max(done);
            }
        }
    }
    segments
}

/// The share of an edge that is inside a convex part, or with `is_common` on its border: where it begins and where it
/// ends.
// Source: Cyrus and Beck, Generalized two- and three-dimensional clipping, Computers and Graphics 3, 1978.
fn inside(edge: &Segment, planes: &[Plane], shrunk: f64, is_common: bool) -> Option<(f64, f64)> {
    let (mut start, mut end) = (0.0_f64, 1.0_f64);
    let least = if is_common { -shrunk } else { shrunk };
    for plane in planes {
        let first = plane.depth(edge.x, edge.y) - least;
        let last = plane.depth(edge.x + edge.run, edge.y + edge.rise) - least;
        if first <= 0.0 && last <= 0.0 {
            return None;
        }
        if first < 0.0 {
            start = start.max(first / (first - last));
        } else if last < 0.0 {
            end = end.min(first / (first - last));
        }
    }
    (start < end).then_some((start, end))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strip::convex::parts;
    use crate::strip::polygon::Polygon;

    fn length_of(still: &[(i64, i64)], moved: &[(i64, i64)]) -> f64 {
        let parts = |corners: &[(i64, i64)]| {
            let corners: Vec<Point> = corners.iter().map(|(x, y)| Point::new(*x, *y)).collect();
            parts(Polygon::new(&corners).unwrap().corners())
        };
        let nofit = Nofit::of(&parts(still), &parts(moved));
        let segments = outline(&nofit, &planes(&nofit));
        segments.iter().map(|segment| (segment.run * segment.run + segment.rise * segment.rise).sqrt()).sum()
    }

    /// Worked by hand. Two squares: a square of 4. A U and a square: 8 × 6, into which a gap of 2 × 3 goes, or of 0 × 3
    /// if the inside is as wide as the square (both of its sides count).
    #[test]
    fn borders_have_the_lengths_that_they_should() {
        let square = [(0, 0), (2, 0), (2, 2), (0, 2)];
        let near = |found: f64, wanted: f64| assert!((found - wanted).abs() < 1e-6, "{found} {wanted}");
        near(length_of(&square, &square), 16.0);
        let u = |inside: i64| {
            let (inner, outer) = (2 + inside, 4 + inside);
            [(0, 0), (outer, 0), (outer, 4), (inner, 4), (inner, 1), (2, 1), (2, 4), (0, 4)]
        };
        near(length_of(&u(4), &square), 2.0 * (10.0 + 6.0) + 6.0);
        near(length_of(&u(2), &square), 2.0 * (8.0 + 6.0) + 6.0);
    }
}
