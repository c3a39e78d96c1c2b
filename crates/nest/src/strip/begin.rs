//! A layout at once: the largest first, each copy as far left as it can be, then as low.
//!
//! Source: Burke, Hellier, Kendall and Whitwell, A new bottom-left-fill heuristic algorithm for the two-dimensional
//! irregular packing problem, Operations Research 54, 2006; here with no-fit polygons, on lines across the strip.

use super::nofit::Axis;
use super::point::Point;
use super::shapes::{Form, Shapes};

/// A copy where it lies: exactly.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Spot {
    /// The number of its form.
    pub(crate) form: usize,
    pub(crate) at: Point,
}

/// As many lines across the strip are tried, evenly apart.
const LINES: i64 = 40;

/// Above and below as many copies that were placed last it is tried as well.
const NEIGHBOURS: usize = 16;

/// Where all copies lie, in their order.
pub(crate) fn begin(shapes: &Shapes) -> Vec<Spot> {
    let size = |copy: usize| {
        let form = shapes.copies.get(copy).and_then(|(first, _)| shapes.form(*first));
        form.map(|form| -form.area())
    };
    let mut order: Vec<usize> = (0..shapes.copies.len()).collect();
    order.sort_by_key(|copy| size(*copy));
    let mut placed: Vec<Spot> = Vec::new();
    let mut spots = vec![Spot { form: 0, at: Point::default() }; order.len()];
    for copy in order {
        let (first, end) = shapes.copies.get(copy).copied().unwrap_or_default();
        let best = (first..end)
            .filter_map(|form| leftmost(shapes, form, &placed))
            .min_by_key(|(right, spot)| (*right, spot.at.y));
        if let (Some((_, spot)), Some(place)) = (best, spots.get_mut(copy)) {
            placed.push(spot);
            *place = spot;
        }
    }
    spots
}

/// The place of a form whose right edge is farthest left; that edge and the place.
fn leftmost(shapes: &Shapes, number: usize, placed: &[Spot]) -> Option<(i64, Spot)> {
    let form = shapes.form(number)?;
    let (low, high) = (-form.low.y, shapes.height - form.high.y);
    let mut lines: Vec<i64> = (0..=LINES).map(|line| low + (high - low) * line / LINES).collect();
    for spot in placed.iter().rev().take(NEIGHBOURS) {
        let other = shapes.form(spot.form)?;
        lines.extend([spot.at.y + other.high.y - form.low.y, spot.at.y + other.low.y - form.high.y]);
    }
    lines.retain(|line| (low..=high).contains(line));
    lines.sort_unstable();
    lines.dedup();
    let places = lines.into_iter().map(|y| {
        let x = free(shapes, (number, form), y, placed);
        (x + form.high.x, Spot { form: number, at: Point::new(x, y) })
    });
    places.min_by_key(|(right, spot)| (*right, spot.at.y))
}

/// The least shift along the strip by which a form overlaps nothing, at a given shift across it.
fn free(shapes: &Shapes, (number, form): (usize, &Form), y: i64, placed: &[Spot]) -> i64 {
    let (mut taken, mut spans) = (Vec::new(), Vec::new());
    for spot in placed {
        let Some(related) = shapes.related(number, spot.form) else { continue };
        let (low, high) = related.bounds();
        if (low.y + 1..high.y).contains(&(y - spot.at.y)) {
            related.spans(Axis::X, y - spot.at.y, &mut spans);
            taken.extend(spans.iter().map(|(start, end)| (start + spot.at.x, end + spot.at.x)));
        }
    }
    taken.sort_unstable();
    taken.iter().fold(-form.low.x, |x, (start, end)| if *start < x && x < *end { *end } else { x })
}
