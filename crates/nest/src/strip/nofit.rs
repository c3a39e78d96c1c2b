//! Where a polygon may not be if it is not to overlap another one: the no-fit polygon, as convex parts.
//!
//! A polygon B, shifted by p, overlaps A if the interiors of a convex part of A and of one of B shifted by p meet: if p
//! is inside the Minkowski sum of the one and the other one negated. All of these sums together are the no-fit polygon.
//! Shifts on their borders, and in a gap of no width between them, only touch.
//!
//! Source: Bennell and Oliveira, The geometry of nesting problems: a tutorial, European Journal of Operational Research
//! 184, 2008, sections 5.1 (Minkowski sums) and 5.2 (convex parts).

use super::number::{floor, real};
use super::point::{Point, bounds, edges};

/// No shift is less than this or greater than its negative; also what stands for a gap without an end.
pub(crate) const ENDLESS: i64 = 1 << 52;

/// The axis along which a line goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Axis {
    /// Along the strip.
    X,
    /// Across it.
    Y,
}

impl Axis {
    /// A point's place on a line along this axis, and where that line is.
    const fn of(self, point: Point) -> (i64, i64) {
        match self {
            Self::X => (point.x, point.y),
            Self::Y => (point.y, point.x),
        }
    }
}

/// A convex polygon, counter-clockwise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Convex {
    pub(crate) corners: Vec<Point>,
    pub(crate) low: Point,
    pub(crate) high: Point,
}

impl Convex {
    fn new(corners: Vec<Point>) -> Self {
        let (low, high) = bounds(&corners);
        Self { corners, low, high }
    }

    /// Whether a point is inside, the border not counted.
    #[cfg(test)]
    fn holds(&self, point: Point) -> bool {
        edges(&self.corners).all(|(from, to)| (to - from).cross(point - from) > 0)
    }

    /// The open span of a line inside this polygon: the whole numbers at or just outside its ends.
    fn span(&self, axis: Axis, line: i64) -> Option<(i64, i64)> {
        let ((_, low), (_, high)) = (axis.of(self.low), axis.of(self.high));
        if line <= low || line >= high {
            return None;
        }
        let crossings = edges(&self.corners).filter_map(|(from, to)| crossing(axis, line, from, to));
        let span = crossings.fold((ENDLESS, -ENDLESS), |(low, high), (below, above)| (low.min(below), high.max(above)));
        (span.0 < span.1).then_some(span)
    }
}

/// The whole numbers at or next to the place where an edge crosses a line; an edge has its lower end, not its upper one.
fn crossing(axis: Axis, line: i64, from: Point, to: Point) -> Option<(i64, i64)> {
    let (one, other) = (axis.of(from), axis.of(to));
    let ((start, low), (end, high)) = if one.1 <= other.1 { (one, other) } else { (other, one) };
    if line < low || line >= high {
        return None;
    }
    let (run, up, rise) = (end - start, line - low, high - low);
    // The estimate is next to the quotient; the rest says on which side.
    let mut quotient = floor(real(run) * real(up) / real(rise));
    let mut rest = i128::from(run) * i128::from(up) - i128::from(quotient) * i128::from(rise);
    while rest < 0 {
        quotient -= 1;
        rest += i128::from(rise);
    }
    while rest >= i128::from(rise) {
        quotient += 1;
        rest -= i128::from(rise);
    }
    Some((start + quotient, start + quotient + i64::from(rest != 0)))
}

/// The Minkowski sum of two convex polygons: all sums of a point of the one and a point of the other.
///
/// Its edges are those of both, sorted by direction.
// Source: de Berg et al., Computational Geometry, 3rd edition, 2008, theorem 13.5.
pub(crate) fn sum(one: &[Point], other: &[Point]) -> Vec<Point> {
    let lowest = |corners: &[Point]| corners.iter().copied().min_by_key(|corner| (corner.y, corner.x));
    let mut at = lowest(one).unwrap_or_default() + lowest(other).unwrap_or_default();
    let mut steps: Vec<Point> = edges(one).chain(edges(other)).map(|(from, to)| to - from).collect();
    // From the lowest corner all directions upwards come first.
    let is_down = |step: &Point| step.y < 0 || step.y == 0 && step.x < 0;
    steps.sort_by(|one, other| is_down(one).cmp(&is_down(other)).then_with(|| 0_i128.cmp(&one.cross(*other))));
    let mut corners: Vec<Point> = Vec::new();
    let mut before: Option<Point> = None;
    for step in steps {
        if before.is_none_or(|before| before.cross(step) != 0 || is_down(&before) != is_down(&step)) {
            corners.push(at);
        }
        at = at + step;
        before = Some(step);
    }
    corners
}

/// The no-fit polygon of two polygons: shifts of the second by which it overlaps the first, which stays.
#[derive(Clone, Debug)]
pub(crate) struct Nofit {
    /// Its convex parts, which overlap.
    pub(crate) parts: Vec<Convex>,
    /// The box of all of them.
    pub(crate) low: Point,
    pub(crate) high: Point,
}

impl Nofit {
    /// Of two polygons by their convex parts.
    pub(crate) fn of(still: &[Vec<Point>], moved: &[Vec<Point>]) -> Self {
        let negated: Vec<Vec<Point>> = moved.iter().map(|part| part.iter().map(|corner| -*corner).collect()).collect();
        let sums = still.iter().flat_map(|one| negated.iter().map(move |other| sum(one, other)));
        let parts: Vec<Convex> = sums.map(Convex::new).collect();
        let corners: Vec<Point> = parts.iter().flat_map(|part| [part.low, part.high]).collect();
        let (low, high) = bounds(&corners);
        Self { parts, low, high }
    }

    /// Whether the polygons overlap at this shift; touching is none.
    #[cfg(test)]
    pub(crate) fn holds(&self, shift: Point) -> bool {
        self.parts.iter().any(|part| part.holds(shift))
    }

    /// The open spans of a line inside, sorted, apart from each other or meeting at their ends.
    ///
    /// Whole numbers at the ends are outside.
    pub(crate) fn spans(&self, axis: Axis, line: i64, spans: &mut Vec<(i64, i64)>) {
        spans.clear();
        spans.extend(self.parts.iter().filter_map(|part| part.span(axis, line)));
        spans.sort_unstable();
        spans.dedup_by(|next, kept| {
            let is_one = next.0 < kept.1;
            if is_one {
                kept.1 = kept.1.max(next.1);
            }
            is_one
        });
    }
}

/// The gap between open spans that is nearest to a place on their line: its ends, which belong to it.
pub(crate) fn gap(spans: &[(i64, i64)], at: i64) -> (i64, i64) {
    let starts = core::iter::once(-ENDLESS).chain(spans.iter().map(|span| span.1));
    let ends = spans.iter().map(|span| span.0).chain([ENDLESS]);
    starts.zip(ends).min_by_key(|gap| beside(*gap, at)).unwrap_or((-ENDLESS, ENDLESS))
}

/// How far a place is from a gap; 0 within it.
pub(crate) fn beside((low, high): (i64, i64), at: i64) -> i64 {
    (low - at).max(at - high).max(0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strip::convex::parts;
    use crate::strip::polygon::Polygon;

    fn points(corners: &[(i64, i64)]) -> Vec<Point> {
        corners.iter().map(|(x, y)| Point::new(*x, *y)).collect()
    }

    fn nofit(still: &[(i64, i64)], moved: &[(i64, i64)]) -> Nofit {
        let parts = |corners: &[(i64, i64)]| parts(Polygon::new(&points(corners)).unwrap().corners());
        Nofit::of(&parts(still), &parts(moved))
    }

    const SQUARE: [(i64, i64); 4] = [(0, 0), (2, 0), (2, 2), (0, 2)];

    /// Worked by hand: a square of 2 and a triangle; the triangle negated has its corners at (0, 0), (-3, 0), (0, -3).
    #[test]
    fn the_no_fit_polygon_of_a_square_and_a_triangle() {
        let no = nofit(&SQUARE, &[(0, 0), (3, 0), (0, 3)]);
        assert_eq!(no.parts.len(), 1);
        assert_eq!(no.parts[0].corners, points(&[(0, -3), (2, -3), (2, 2), (-3, 2), (-3, 0)]));
        assert!(no.holds(Point::new(0, 0)) && no.holds(Point::new(-2, 0)));
        // The slanted side touches the corner of the square.
        assert!(!no.holds(Point::new(-1, -2)) && no.holds(Point::new(-1, -1)));
        assert!(!no.holds(Point::new(2, 0)) && !no.holds(Point::new(0, 2)) && !no.holds(Point::new(-3, 1)));
    }

    #[test]
    fn lines_cross_it_where_it_says() {
        let no = nofit(&SQUARE, &[(0, 0), (3, 0), (0, 3)]);
        let mut spans = Vec::new();
        let mut on = |axis, line| {
            no.spans(axis, line, &mut spans);
            spans.clone()
        };
        assert_eq!(on(Axis::X, 0), [(-3, 2)]);
        assert_eq!(on(Axis::X, -1), [(-2, 2)]);
        assert_eq!(on(Axis::X, -3), []);
        assert_eq!(on(Axis::X, 2), []);
        assert_eq!(on(Axis::Y, -1), [(-2, 2)]);
        assert_eq!(gap(&on(Axis::X, 0), 1), (2, ENDLESS));
        assert_eq!(gap(&on(Axis::X, 0), -2), (-ENDLESS, -3));
    }

    /// A square of 2 fits exactly into a U whose inside is 2 wide: one line of shifts is free.
    #[test]
    fn an_exact_fit_is_free() {
        let no = nofit(&[(0, 0), (6, 0), (6, 4), (4, 4), (4, 1), (2, 1), (2, 4), (0, 4)], &SQUARE);
        assert!(!no.holds(Point::new(2, 1)) && !no.holds(Point::new(2, 3)));
        assert!(no.holds(Point::new(2, 0)) && no.holds(Point::new(1, 1)) && no.holds(Point::new(3, 1)));
        let mut spans = Vec::new();
        no.spans(Axis::X, 2, &mut spans);
        assert_eq!(spans, [(-2, 2), (2, 6)]);
        assert_eq!(gap(&spans, 3), (2, 2));
    }
}
