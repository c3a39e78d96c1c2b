//! L2 of Martello and Vigo.
//!
//! Source: Martello, Vigo, Exact solution of the two-dimensional finite bin packing problem, Management Science 44(3),
//! 1998; formula from memory, cross-checked on published instances.

use super::{Part, ceiling};

/// The better one of both directions.
pub(super) fn bound(parts: &[Part], width: i64, height: i64) -> i64 {
    let across: Vec<Part> = parts.iter().map(|(w, h, count)| (*h, *w, *count)).collect();
    one_way(parts, width, height).max(one_way(&across, height, width))
}

fn sum(parts: impl Iterator<Item = i64>) -> i64 {
    parts.sum()
}

/// Parts wider than half a sheet lie above each other: a bound for these by their heights, then one with the area of the
/// others.
fn one_way(parts: &[Part], width: i64, height: i64) -> i64 {
    let wide: Vec<Part> = parts.iter().copied().filter(|(w, ..)| 2 * w > width).collect();
    let by_height = stacks(&wide, height);
    let mut best = by_height;
    let mut limits: Vec<i64> = parts.iter().map(|(w, ..)| *w).filter(|w| 2 * w <= width).collect();
    limits.push(1);
    limits.dedup();
    for limit in limits {
        let large = |w: i64| w > width - limit;
        let middle = parts.iter().filter(|(w, ..)| !large(*w) && *w >= limit);
        let area = sum(middle.map(|(w, h, count)| w * h * count));
        let full = sum(parts.iter().filter(|(w, ..)| large(*w)).map(|(_, h, count)| h * count));
        // What the sheets of the wide parts have beside those across the whole sheet.
        let beside = (height * by_height - full) * width;
        best = best.max(by_height + ceiling((area - beside).max(0), width * height));
    }
    best
}

/// A bound for parts that lie above each other.
fn stacks(parts: &[Part], height: i64) -> i64 {
    let mut limits: Vec<i64> = parts.iter().map(|(_, h, _)| *h).filter(|h| 2 * h <= height).collect();
    limits.push(1);
    limits.sort_unstable();
    limits.dedup();
    let one = |limit: i64| {
        let count = |is: &dyn Fn(i64) -> bool| sum(parts.iter().filter(|(_, h, _)| is(*h)).map(|(.., count)| *count));
        let high =
            |is: &dyn Fn(i64) -> bool| sum(parts.iter().filter(|(_, h, _)| is(*h)).map(|(_, h, count)| h * count));
        let is_tall = |h: i64| h > height - limit;
        let is_half = |h: i64| 2 * h > height && h <= height - limit;
        let is_low = |h: i64| 2 * h <= height && h >= limit;
        let halves = count(&is_half);
        let by_sum = ceiling((high(&is_low) - (halves * height - high(&is_half))).max(0), height);
        let beside = sum(parts.iter().filter(|(_, h, _)| is_half(*h)).map(|(_, h, n)| (height - h) / limit * n));
        let by_count = ceiling((count(&is_low) - beside).max(0), height / limit);
        count(&is_tall) + halves + by_sum.max(by_count)
    };
    limits.into_iter().map(one).max().unwrap_or(0)
}
