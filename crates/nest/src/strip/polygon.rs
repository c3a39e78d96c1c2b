//! A simple polygon of whole numbers.

use core::fmt;

use super::point::{Point, Turn, bounds, edges, side};

/// No corner is farther from the origin than this, along either axis.
pub const FARTHEST: i64 = 1 << 36;

/// The most corners of a polygon.
pub const MOST_CORNERS: usize = 400;

/// A polygon without holes whose edges meet at its corners alone; counter-clockwise, no corner in line with its
/// neighbours.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Polygon {
    corners: Vec<Point>,
}

/// Why corners make no such polygon.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoPolygon {
    /// Too many corners, or one that is too far away.
    Bounds,
    /// Fewer than three corners that are not in line.
    Flat,
    /// Edges cross, touch or lie on each other.
    Crossed,
}

impl fmt::Display for NoPolygon {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Bounds => "a polygon has too many corners, or one too far away",
            Self::Flat => "a polygon has no area",
            Self::Crossed => "edges of a polygon cross or touch",
        })
    }
}

impl core::error::Error for NoPolygon {}

impl Polygon {
    /// A polygon by its corners in order, of either sense, the first one not repeated.
    ///
    /// ```
    /// use slotwright_nest::strip::point::Point;
    /// use slotwright_nest::strip::polygon::Polygon;
    ///
    /// let corners = [(0, 0), (0, 3), (4, 0)].map(|(x, y)| Point::new(x, y));
    /// assert_eq!(Polygon::new(&corners)?.double_area(), 12);
    /// # Ok::<(), slotwright_nest::strip::polygon::NoPolygon>(())
    /// ```
    ///
    /// # Errors
    ///
    /// See [`NoPolygon`].
    pub fn new(corners: &[Point]) -> Result<Self, NoPolygon> {
        let is_near = |point: &Point| point.x.abs() <= FARTHEST && point.y.abs() <= FARTHEST;
        if corners.len() > MOST_CORNERS || !corners.iter().all(is_near) {
            return Err(NoPolygon::Bounds);
        }
        let mut kept = bends(corners);
        if kept.len() < 3 {
            return Err(NoPolygon::Flat);
        }
        if !is_simple(&kept) {
            return Err(NoPolygon::Crossed);
        }
        if double_area(&kept) < 0 {
            kept.reverse();
        }
        Ok(Self { corners: kept })
    }

    /// Its corners, counter-clockwise.
    pub fn corners(&self) -> &[Point] {
        &self.corners
    }

    /// Twice its area, in the square of the caller's unit.
    pub fn double_area(&self) -> i128 {
        double_area(&self.corners)
    }

    /// Its corners after a turn about the origin.
    pub(crate) fn turned(&self, turn: Turn) -> Vec<Point> {
        self.corners.iter().map(|corner| turn.of(*corner)).collect()
    }
}

fn double_area(corners: &[Point]) -> i128 {
    edges(corners).map(|(from, to)| from.cross(to)).sum()
}

/// Each corner between its neighbours.
pub(crate) fn triples(corners: &[Point]) -> impl Iterator<Item = (Point, Point, Point)> {
    let before = corners.iter().copied().cycle().skip(corners.len().saturating_sub(1));
    before.zip(edges(corners)).map(|(before, (at, after))| (before, at, after))
}

/// Corners at which the direction changes.
fn bends(corners: &[Point]) -> Vec<Point> {
    let mut kept = corners.to_vec();
    kept.dedup();
    while kept.len() > 1 && kept.first() == kept.last() {
        kept.pop();
    }
    let is_bend =
        |before: Point, at: Point, after: Point| side(before, at, after) != 0 || (at - before).dot(after - at) < 0;
    triples(&kept).filter(|(before, at, after)| is_bend(*before, *at, *after)).map(|(_, at, _)| at).collect()
}

/// Whether edges meet at common corners alone.
fn is_simple(corners: &[Point]) -> bool {
    let all: Vec<(Point, Point)> = edges(corners).collect();
    let has_spike = triples(corners).any(|(before, at, after)| side(before, at, after) == 0);
    let touched = all.iter().enumerate().any(|(at, one)| {
        // The next edge, and for the first one the last, have a corner in common with it.
        let others = all.iter().enumerate().skip(at + 2);
        others.into_iter().any(|(next, other)| (at > 0 || next + 1 < all.len()) && touch(*one, *other))
    });
    !has_spike && !touched
}

/// Whether two segments have a point in common.
fn touch((a, b): (Point, Point), (c, d): (Point, Point)) -> bool {
    let apart = |one: i128, other: i128| one.signum() * other.signum() > 0;
    let ((low, high), (other_low, other_high)) = (bounds(&[a, b]), bounds(&[c, d]));
    let is_near = low.x <= other_high.x && other_low.x <= high.x && low.y <= other_high.y && other_low.y <= high.y;
    is_near && !apart(side(a, b, c), side(a, b, d)) && !apart(side(c, d, a), side(c, d, b))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn made(corners: &[(i64, i64)]) -> Result<Vec<(i64, i64)>, NoPolygon> {
        let corners: Vec<Point> = corners.iter().map(|(x, y)| Point::new(*x, *y)).collect();
        Ok(Polygon::new(&corners)?.corners().iter().map(|corner| (corner.x, corner.y)).collect())
    }

    #[test]
    fn a_polygon_goes_counter_clockwise_and_bends_at_each_corner() {
        assert_eq!(made(&[(0, 0), (0, 2), (2, 2), (2, 0)]), Ok(vec![(2, 0), (2, 2), (0, 2), (0, 0)]));
        assert_eq!(made(&[(0, 0), (1, 0), (1, 0), (2, 0), (2, 2), (0, 0)]), Ok(vec![(0, 0), (2, 0), (2, 2)]));
    }

    #[test]
    fn what_is_no_simple_polygon_is_refused() {
        assert_eq!(made(&[(0, 0), (1, 1)]), Err(NoPolygon::Flat));
        assert_eq!(made(&[]), Err(NoPolygon::Flat));
        // A bow tie, a spike, a corner on another edge, two squares that meet at a corner.
        assert_eq!(made(&[(0, 0), (2, 2), (2, 0), (0, 2)]), Err(NoPolygon::Crossed));
        assert_eq!(made(&[(0, 0), (4, 0), (4, 4), (4, 0), (0, 4)]), Err(NoPolygon::Crossed));
        assert_eq!(made(&[(0, 0), (4, 0), (4, 4), (2, 0), (0, 4)]), Err(NoPolygon::Crossed));
        let squares = [(0, 0), (1, 0), (1, 1), (2, 1), (2, 2), (1, 2), (1, 1), (0, 1)];
        assert_eq!(made(&squares), Err(NoPolygon::Crossed));
        assert_eq!(made(&[(0, 0), (FARTHEST + 1, 0), (0, 4)]), Err(NoPolygon::Bounds));
    }
}
