//! A layout of whole numbers without an overlap, near one in which copies overlap by little.
//!
//! Where a little move across the strip helps more than one along it, copies are moved across it first. Then, at their
//! shifts across the strip, each pair has gaps along it; who is left of whom stays, and all copies go as far left as
//! they can. Both are systems of differences, solved exactly by longest paths (Bellman, On a routing problem, 1958). That
//! is the compaction of Li and Milenkovic, Compaction and separation algorithms for non-convex polygons, European
//! Journal of Operational Research 84, 1995, one axis at a time.

use super::begin::Spot;
use super::nofit::{Axis, ENDLESS, beside, gap};
use super::shapes::Shapes;

/// Nobody is moved by more than this share of the strip's height to get out of another one.
const REACH: i64 = 40;

/// One of two copies is at least so far behind the other.
#[derive(Clone, Copy, Debug)]
struct Apart {
    before: usize,
    after: usize,
    least: i64,
}

/// All copies apart from each other, and how long the strip is then; none if that takes more than little moves.
pub(crate) fn settled(shapes: &Shapes, spots: &[Spot]) -> Option<(Vec<Spot>, i64)> {
    let mut spots = spots.to_vec();
    lift(shapes, &mut spots)?;
    let length = pull(shapes, &mut spots)?;
    Some((spots, length))
}

/// The length of the strip that copies take.
pub(crate) fn length(shapes: &Shapes, spots: &[Spot]) -> i64 {
    spots.iter().filter_map(|spot| Some(spot.at.x + shapes.form(spot.form)?.high.x)).max().unwrap_or(0)
}

/// Moves copies across the strip where that is the shorter way out.
fn lift(shapes: &Shapes, spots: &mut [Spot]) -> Option<()> {
    let reach = shapes.height / REACH;
    let mut ends = Vec::new();
    for spot in spots.iter_mut() {
        let form = shapes.form(spot.form)?;
        let (low, high) = (-form.low.y, shapes.height - form.high.y);
        spot.at.y = spot.at.y.clamp(low, high);
        ends.push((low, high));
    }
    let (mut along, mut across, mut apart) = (Vec::new(), Vec::new(), Vec::new());
    let mut is_needed = false;
    for (after, moved) in spots.iter().enumerate() {
        for (before, still) in spots.iter().enumerate().take(after) {
            let related = shapes.related(moved.form, still.form)?;
            let shift = moved.at - still.at;
            let (low, high) = related.bounds();
            let is_near = low.x - reach < shift.x && shift.x < high.x + reach;
            if !is_near || shift.y <= low.y - reach || high.y + reach <= shift.y {
                continue;
            }
            related.spans(Axis::X, shift.y, &mut along);
            related.spans(Axis::Y, shift.x, &mut across);
            let gaps = gap(&across, shift.y);
            let (way_along, way_across) = (beside(gap(&along, shift.x), shift.x), beside(gaps, shift.y));
            let overlaps = way_along > 0;
            let is_across = if overlaps {
                2 * way_across < way_along
            } else {
                let near = clearance(&across, shift.y);
                near <= reach && near < clearance(&along, shift.x)
            };
            if is_across {
                is_needed |= overlaps;
                if -ENDLESS < gaps.0 {
                    apart.push(Apart { before, after, least: gaps.0 });
                }
                if gaps.1 < ENDLESS {
                    apart.push(Apart { before: after, after: before, least: -gaps.1 });
                }
            }
        }
    }
    if !is_needed {
        return Some(());
    }
    let mut shifts: Vec<i64> = spots.iter().map(|spot| spot.at.y).collect();
    raise(&apart, &mut shifts)?;
    // What came too high goes down again, and takes what is below with it.
    let backwards: Vec<Apart> =
        apart.iter().map(|pair| Apart { before: pair.after, after: pair.before, least: pair.least }).collect();
    let mut down: Vec<i64> = shifts.iter().zip(&ends).map(|(shift, (_, high))| -*shift.min(high)).collect();
    raise(&backwards, &mut down)?;
    for ((spot, down), (low, _)) in spots.iter_mut().zip(down).zip(ends) {
        spot.at.y = -down;
        if spot.at.y < low {
            return None;
        }
    }
    Some(())
}

/// How far a free place is from the nearest span.
fn clearance(spans: &[(i64, i64)], at: i64) -> i64 {
    spans.iter().map(|span| beside(*span, at)).min().unwrap_or(ENDLESS)
}

/// Moves all copies as far left as they can go, and out of each other; gives the length of the strip.
fn pull(shapes: &Shapes, spots: &mut [Spot]) -> Option<i64> {
    let reach = shapes.height / REACH;
    let mut order: Vec<usize> = (0..spots.len()).collect();
    order.sort_by_key(|copy| spots.get(*copy).map(|spot| spot.at.x));
    let (mut spans, mut apart) = (Vec::new(), Vec::new());
    for (place, before) in order.iter().enumerate() {
        let still = spots.get(*before)?;
        for after in order.iter().skip(place + 1) {
            let moved = spots.get(*after)?;
            let related = shapes.related(moved.form, still.form)?;
            let shift = moved.at - still.at;
            let (low, high) = related.bounds();
            if shift.y <= low.y || high.y <= shift.y {
                continue;
            }
            related.spans(Axis::X, shift.y, &mut spans);
            if spans.is_empty() {
                continue;
            }
            let (low, high) = gap(&spans, shift.x);
            if beside((low, high), shift.x) > reach {
                return None;
            }
            if -ENDLESS < low {
                apart.push(Apart { before: *before, after: *after, least: low });
            }
            if high < ENDLESS {
                apart.push(Apart { before: *after, after: *before, least: -high });
            }
        }
    }
    let mut shifts = Vec::new();
    for spot in spots.iter() {
        shifts.push(-shapes.form(spot.form)?.low.x);
    }
    raise(&apart, &mut shifts)?;
    for (spot, shift) in spots.iter_mut().zip(shifts) {
        spot.at.x = shift;
    }
    Some(length(shapes, spots))
}

/// Raises values until all are as far apart as they have to be; none if they never are.
fn raise(apart: &[Apart], values: &mut [i64]) -> Option<()> {
    for _ in 0..=values.len() {
        let mut is_done = true;
        for pair in apart {
            let least = *values.get(pair.before)? + pair.least;
            let value = values.get_mut(pair.after)?;
            if *value < least {
                *value = least;
                is_done = false;
            }
        }
        if is_done {
            return Some(());
        }
    }
    None
}
