//! How many equal sheets parts need at least.
//!
//! Every bound is for parts that may not be turned. One that may is cut into squares before, whose packings it has among
//! its own.

mod dual;
mod martello;
mod squares;

use crate::pieces::{Board, Kind, Pieces};
use crate::problem::{NoRoom, Problem, Worth};

/// Parts of one size: width, height, how many.
type Part = (i64, i64, i64);

/// Lower bounds of how many sheets of one format are needed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Bounds {
    /// By area alone: L1 of Martello and Vigo.
    pub area: u32,
    /// L2 of Martello and Vigo; turned parts as squares.
    pub martello: u32,
    /// By squares alone: Dell'Amico, Martello and Vigo. Of no use, and 0, where a part may not be turned.
    pub squares: u32,
    /// By dual feasible functions; turned parts as squares.
    pub dual: u32,
}

impl Bounds {
    /// The largest of them: no packing has fewer sheets.
    pub fn fewest(&self) -> u32 {
        self.area.max(self.martello).max(self.squares).max(self.dual)
    }
}

/// Lower bounds for a problem with sheets of one format, spacing and trim taken into account.
///
/// With several formats they count sheets that are as wide as the widest and as high as the highest.
///
/// ```
/// use slotwright_nest::bound::bounds;
/// use slotwright_nest::problem::{Format, Gaps, Item, Problem};
///
/// let item = |height, count| Item { width: 6, height, turns: false, count };
/// let formats = vec![Format { width: 10, height: 10, cost: 1, most: None }];
/// let problem = Problem { formats, items: vec![item(6, 3), item(4, 4)], gaps: Gaps::default() };
/// let bounds = bounds(&problem)?;
/// assert_eq!((bounds.area, bounds.fewest()), (3, 4));
/// # Ok::<(), slotwright_nest::problem::NoRoom>(())
/// ```
///
/// # Errors
///
/// See [`NoRoom`].
pub fn bounds(problem: &Problem) -> Result<Bounds, NoRoom> {
    Ok(of(&Pieces::of(problem, &Worth::default())?))
}

pub(crate) fn of(pieces: &Pieces) -> Bounds {
    let side = |side: fn(&Board) -> i32| pieces.boards.iter().map(side).max().map_or(0, i64::from);
    let (width, height) = (side(|board| board.width), side(|board| board.height));
    if pieces.kinds.is_empty() {
        return Bounds::default();
    }
    let mut parts: Vec<Part> = Vec::new();
    let mut cut: Vec<i64> = Vec::new();
    let mut are_all_cut = true;
    for (kind, count) in pieces.kinds.iter().zip(&pieces.counts) {
        let Kind { width: wide, height: high, .. } = *kind;
        let (wide, high) = (i64::from(wide), i64::from(high));
        let count = i64::from(*count);
        // One that fits in one way alone is not turned.
        let fits = [(wide, high), (high, wide)].map(|(wide, high)| wide <= width && high <= height);
        match (kind.turns, fits) {
            (true, [true, true]) => {
                for square in squares::cut(wide, high) {
                    parts.push((square, square, count));
                    cut.extend((0..count).map(|_| square));
                }
            }
            (true, [false, true]) => {
                are_all_cut = false;
                parts.push((high, wide, count));
            }
            _ if wide == high => {
                parts.push((wide, high, count));
                cut.extend((0..count).map(|_| wide));
            }
            _ => {
                are_all_cut = false;
                parts.push((wide, high, count));
            }
        }
    }
    let parts = gathered(parts);
    let area = pieces.kinds.iter().zip(&pieces.counts).map(|(kind, count)| kind.area() * i64::from(*count)).sum();
    let count = |sheets: i64| u32::try_from(sheets).unwrap_or(u32::MAX);
    Bounds {
        area: count(ceiling(area, width * height)),
        martello: count(martello::bound(&parts, width, height)),
        squares: if are_all_cut { count(squares::bound(&mut cut, width, height)) } else { 0 },
        dual: count(dual::bound(&parts, width, height)),
    }
}

/// Parts of equal size together.
fn gathered(mut parts: Vec<Part>) -> Vec<Part> {
    parts.sort_unstable();
    let mut all: Vec<Part> = Vec::new();
    for (width, height, count) in parts {
        match all.last_mut() {
            Some(last) if (last.0, last.1) == (width, height) => last.2 += count,
            _ => all.push((width, height, count)),
        }
    }
    all
}

/// A quotient of numbers that are not negative, rounded up; 0 by 0.
const fn ceiling(of: i64, by: i64) -> i64 {
    if by < 1 { 0 } else { of / by + if of % by > 0 { 1 } else { 0 } }
}

#[cfg(test)]
mod tests;
