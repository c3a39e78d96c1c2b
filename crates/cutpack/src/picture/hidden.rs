//! Which stretches of a line nothing hides: exact, facet by facet.
// Source: the first hidden-line method, each edge against each face: L. G. Roberts, Machine Perception of
// Three-Dimensional Solids, MIT Lincoln Laboratory, Technical Report 315, 1963. The intervals are our own.

use super::shape::{Facet, Line, Shape};
use super::view::{Bounds, Seen};

/// What is hidden by less than this (mm) lies in the face that hides it: edges of the face itself, and
/// of a part that touches it. Far below every clearance, far above what rounding does.
pub(super) const TOUCHES: f64 = 1e-3;
/// Facets reach so far (mm) beyond their sides that nothing shows between two that meet.
const OVERLAP: f64 = 1e-6;

/// A line and the stretches of it that are seen, as parts of its way, in order.
#[derive(Clone, Debug)]
pub(super) struct Drawn {
    pub(super) line: Line,
    pub(super) seen: Vec<[f64; 2]>,
    bounds: Bounds,
}

impl Drawn {
    /// A line that nothing hides yet.
    pub(super) fn whole(line: Line) -> Self {
        Self { line, seen: vec![[0.0, 1.0]], bounds: line.bounds() }
    }

    /// Takes away what a facet hides.
    fn hide_behind(&mut self, facet: &Facet) {
        if let Some(hidden) = hidden(&self.line, facet) {
            self.seen = self.seen.iter().flat_map(|seen| without(*seen, hidden)).collect();
        }
    }

    /// The same line where another view of it is not: of a whole line, what that one hides.
    pub(super) fn without(&self, other: &Self) -> Self {
        let mut left = self.clone();
        for gone in &other.seen {
            left.seen = left.seen.iter().flat_map(|seen| without(*seen, *gone)).collect();
        }
        left
    }

    /// The stretches that are seen, as lines.
    pub(super) fn stretches(&self) -> impl Iterator<Item = Line> + '_ {
        let line = self.line;
        self.seen.iter().map(move |[from, to]| Line { from: line.at(*from), to: line.at(*to), rim: line.rim })
    }

    /// How long all of them are, in millimetres of the unit.
    pub(super) fn length(&self) -> f64 {
        self.seen.iter().map(|[from, to]| to - from).sum::<f64>() * self.line.length()
    }
}

/// Takes away from every line what a shape hides of it.
pub(super) fn hide(lines: &mut [Drawn], behind: &Shape) {
    for drawn in lines.iter_mut().filter(|drawn| !drawn.seen.is_empty() && behind.bounds.may_hide(&drawn.bounds)) {
        for facet in &behind.facets {
            if facet.bounds.may_hide(&drawn.bounds) {
                drawn.hide_behind(facet);
            }
        }
    }
}

/// A stretch without another: what is before it and what is after it.
fn without([from, to]: [f64; 2], [gone_from, gone_to]: [f64; 2]) -> impl Iterator<Item = [f64; 2]> {
    [[from, to.min(gone_from)], [from.max(gone_to), to]].into_iter().filter(|[from, to]| from < to)
}

/// The stretch of a line that lies within a facet's outline and behind its plane.
pub(super) fn hidden(line: &Line, facet: &Facet) -> Option<[f64; 2]> {
    let [a, b, c] = facet.corners;
    let mut stretch = [0.0, 1.0];
    for (from, to) in [(a, b), (b, c), (c, a)] {
        // The longer of both spans stands for the side's length, so that no root is taken.
        let (wide, high) = (to.x - from.x, to.y - from.y);
        let overlap = OVERLAP * wide.abs().max(high.abs());
        let inside = |at: Seen| wide * (at.y - from.y) - high * (at.x - from.x) + overlap;
        stretch = positive(stretch, inside(line.from), inside(line.to))?;
    }
    let depth = |at: Seen| facet.near(at) - at.near - TOUCHES;
    positive(stretch, depth(line.from), depth(line.to))
}

/// Where in a stretch a figure is positive that runs evenly from `start` at 0 to `end` at 1.
fn positive([from, to]: [f64; 2], start: f64, end: f64) -> Option<[f64; 2]> {
    let crossing = start / (start - end);
    let [from, to] = match (start > 0.0, end > 0.0) {
        (true, true) => [from, to],
        (true, false) => [from, to.min(crossing)],
        (false, true) => [from.max(crossing), to],
        (false, false) => return None,
    };
    (from < to).then_some([from, to])
}

impl Facet {
    /// How near its plane is to the eye at a place in the picture.
    pub(super) fn near(&self, at: Seen) -> f64 {
        let [origin, one, other] = self.corners;
        let from_origin = |to: Seen| (to.x - origin.x, to.y - origin.y, to.near - origin.near);
        let ((one_x, one_y, one_near), (other_x, other_y, other_near)) = (from_origin(one), from_origin(other));
        let (x, y, _) = from_origin(at);
        // Cramer's rule for origin + s (one − origin) + t (other − origin); a facet has an area.
        let area = one_x * other_y - one_y * other_x;
        origin.near + (one_near * (x * other_y - y * other_x) + other_near * (one_x * y - one_y * x)) / area
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(x: f64, y: f64, near: f64) -> Seen {
        Seen { x, y, near }
    }

    fn facet(near: f64) -> Facet {
        Facet::facing([at(0.0, 0.0, near), at(10.0, 0.0, near), at(0.0, 10.0, near)]).unwrap()
    }

    fn line(from: Seen, to: Seen) -> Line {
        Line { from, to, rim: false }
    }

    /// Across a triangle at half its height: from x = 0 to x = 5.
    #[test]
    fn a_line_is_hidden_within_the_outline_and_behind_the_plane() {
        let across = line(at(-5.0, 5.0, 0.0), at(15.0, 5.0, 0.0));
        let [from, to] = hidden(&across, &facet(1.0)).unwrap();
        assert!((from - 0.25).abs() < 1e-6 && (to - 0.5).abs() < 1e-6, "{from} {to}");
        assert_eq!(hidden(&across, &facet(-1.0)), None, "before the plane");
        assert_eq!(hidden(&across, &facet(0.0)), None, "in the plane");
        // It comes out of the plane half way through the triangle.
        let rising = line(at(-5.0, 5.0, -7.5), at(15.0, 5.0, 12.5));
        let [from, to] = hidden(&rising, &facet(0.0)).unwrap();
        assert!((from - 0.25).abs() < 1e-4 && (to - 0.375).abs() < 1e-4, "{from} {to}");
    }

    #[test]
    fn what_is_left_is_before_and_after() {
        let left = |gone| without([0.2, 0.8], gone).collect::<Vec<_>>();
        assert_eq!(left([0.4, 0.5]), [[0.2, 0.4], [0.5, 0.8]]);
        assert_eq!(left([0.0, 0.5]), [[0.5, 0.8]]);
        assert_eq!(left([0.5, 1.0]), [[0.2, 0.5]]);
        assert_eq!(left([0.9, 1.0]), [[0.2, 0.8]]);
        assert_eq!(left([0.0, 1.0]), <[[f64; 2]; 0]>::default());
    }

    #[test]
    fn what_is_hidden_is_all_that_is_not_seen() {
        let whole = Drawn::whole(line(at(0.0, 0.0, 0.0), at(10.0, 0.0, 0.0)));
        let seen = |seen: &[[f64; 2]]| Drawn { seen: seen.to_vec(), ..whole.clone() };
        assert_eq!(whole.without(&seen(&[[0.0, 0.25], [0.5, 0.75]])).seen, [[0.25, 0.5], [0.75, 1.0]]);
        assert_eq!(whole.without(&seen(&[])).seen, [[0.0, 1.0]]);
        assert!(whole.without(&whole).seen.is_empty());
    }

    #[test]
    fn nothing_faces_the_eye_from_behind_or_from_its_edge() {
        assert!(Facet::facing([at(0.0, 0.0, 0.0), at(0.0, 10.0, 0.0), at(10.0, 0.0, 0.0)]).is_none());
        assert!(Facet::facing([at(0.0, 0.0, 0.0), at(10.0, 0.0, 0.0), at(20.0, 0.0, 5.0)]).is_none());
    }
}
