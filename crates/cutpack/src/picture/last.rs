//! The last step: all parts are in, and the unit stands at its wall.

use super::hidden::Drawn;
use super::shape::{Facet, Line, Shape};
use super::sheet::Content;
use super::view::Seen;
use super::{Part, lines, tone};

/// So far, as a share of the unit's depth, the wall is drawn beyond the unit to both sides and above it.
// Chosen by eye: enough to be seen as a wall, without making all pictures of the series much smaller.
const BEYOND: f64 = 0.25;

/// The wall behind a unit of this width, depth and height: as much of it as is drawn.
pub(super) fn wall([wide, deep, high]: [f64; 3]) -> Shape {
    let beyond = deep * BEYOND;
    let [left, right, top] = [-beyond, wide + beyond, high + beyond];
    let corners = [[left, deep, 0.0], [right, deep, 0.0], [right, deep, top], [left, deep, top]];
    let [a, b, c, d] = corners.map(Seen::of);
    let rim = [(a, b), (b, c), (c, d), (d, a)].map(|(from, to)| Line { from, to, rim: true });
    let facets = [[a, b, c], [a, c, d]].into_iter().filter_map(Facet::facing).collect();
    Shape { lines: rim.to_vec(), extent: [[left, deep, 0.0], [right, deep, top]], ..Shape::cover(facets) }
}

/// What the picture of the last step shows: the whole unit and, where it is fastened to it, the wall with its tone.
pub(super) fn content(parts: &[Part<'_>], standing: Vec<Drawn>, wall: Option<&Shape>) -> Content {
    let Some(wall) = wall else { return Content { stands: standing, ..Content::default() } };
    let before: Vec<&Shape> = parts.iter().map(|part| &part.placed).collect();
    let goes_in = lines(wall, before.iter().copied());
    Content { goes_in, stands: standing, tone: tone::seen(wall, &before), ..Content::default() }
}
