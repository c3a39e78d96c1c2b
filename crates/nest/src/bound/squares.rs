//! Squares instead of parts that may be turned.
//!
//! Source: Dell'Amico, Martello, Vigo, A lower bound for the non-oriented two-dimensional bin packing problem, Discrete
//! Applied Mathematics 118, 2002; formula from memory.

use super::ceiling;

/// A part is cut into so many squares at most; what is left then is forgotten, which weakens the bound and keeps it one.
const MOST: usize = 40;

/// The squares that are cut off a part one after another, as large as can be.
pub(super) fn cut(width: i64, height: i64) -> Vec<i64> {
    let (mut long, mut short) = (width.max(height), width.min(height));
    let mut squares = Vec::new();
    while short > 0 && squares.len() < MOST {
        let many = usize::try_from(long / short).unwrap_or(MOST).min(MOST - squares.len());
        squares.extend(core::iter::repeat_n(short, many));
        (long, short) = (short, long % short);
    }
    squares
}

/// How many sheets squares need at least.
pub(super) fn bound(squares: &mut [i64], width: i64, height: i64) -> i64 {
    let (wide, high) = (width.max(height), width.min(height));
    squares.sort_unstable_by(|one, other| other.cmp(one));
    let mut limits: Vec<i64> = squares.iter().copied().filter(|side| 2 * side <= high).collect();
    limits.dedup();
    limits.push(1);
    limits.into_iter().map(|limit| with(squares, wide, high, limit)).max().unwrap_or(0)
}

/// The same without squares smaller than a limit; the sheet is at least as wide as high.
fn with(squares: &[i64], wide: i64, high: i64, limit: i64) -> i64 {
    let of = |is: &dyn Fn(i64) -> bool| squares.iter().copied().filter(|side| is(*side)).collect::<Vec<i64>>();
    // Beside these nothing lies; beside those of the second kind something, but none of its own; two of the third kind lie
    // side by side, but not above each other.
    let alone = of(&|side| side > wide - limit);
    let second = of(&|side| side <= wide - limit && 2 * side > wide);
    let third = of(&|side| 2 * side <= wide && 2 * side > high);
    let fourth = of(&|side| 2 * side <= high && side >= limit);
    // As many of the third kind as can be lie beside one of the second: the smallest gap takes the largest that fits.
    let mut free = third.clone();
    for side in &second {
        if let Some(at) = free.iter().position(|other| side + other <= wide) {
            free.remove(at);
        }
    }
    let sum: i64 = free.iter().sum();
    let many = i64::try_from(free.len()).unwrap_or(i64::MAX);
    let rows = ceiling(sum, wide).max(ceiling(many, wide / (high / 2 + 1)));
    let count = |squares: &[i64]| i64::try_from(squares.len()).unwrap_or(i64::MAX);
    let so_far = count(&second) + rows;
    let area: i64 = second.iter().chain(&third).chain(&fourth).map(|side| side * side).sum();
    let above: i64 =
        second.iter().chain(&third).filter(|side| **side > high - limit).map(|side| side * (high - side)).sum();
    let more = ceiling((area - (wide * high * so_far - above)).max(0), wide * high);
    count(&alone) + so_far + more
}
