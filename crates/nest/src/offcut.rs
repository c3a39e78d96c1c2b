//! What is left of a sheet and large enough to be kept.

use crate::pieces::{Board, Pieces};
use crate::space::{Rect, Space};

/// Takes the largest empty rectangle out of what is free: with its spacing above and to the right, as a part has it.
pub(crate) fn next(space: &mut Space, pieces: &Pieces) -> Option<Rect> {
    let (wide, high) = pieces.least;
    let mut best: Option<(i64, Rect)> = None;
    for free in &space.free {
        if free.width() < wide || free.height() < high {
            continue;
        }
        let area = true_area(free, pieces.spacing);
        // The lower, then the farther left, then the wider of equal ones.
        let is_better =
            |(known, at): (i64, Rect)| (area, at.low, at.left, free.right) > (known, free.low, free.left, at.right);
        if best.is_none_or(is_better) {
            best = Some((area, *free));
        }
    }
    let (_, found) = best?;
    space.take(found);
    Some(found)
}

/// The area of an offcut without its spacing.
pub(crate) const fn true_area(offcut: &Rect, spacing: i32) -> i64 {
    (offcut.width() - spacing) as i64 * (offcut.height() - spacing) as i64
}

/// What an area of a sheet is worth, rounded down; what a product may lack of a whole number is not counted as lacking.
#[expect(clippy::cast_precision_loss, reason = "rounded the same everywhere")]
#[expect(clippy::cast_possible_truncation, reason = "no more than the sheet's cost")]
pub(crate) const fn worth_of(board: &Board, area: i64) -> i64 {
    (board.worth * area as f64 + 1e-6) as i64
}

/// What all offcuts of a sheet are worth: the largest, then the largest of what it leaves, and so on.
pub(crate) fn worth(space: &mut Space, pieces: &Pieces, board: &Board) -> i64 {
    let mut worth = 0;
    while let Some(offcut) = next(space, pieces) {
        worth += worth_of(board, true_area(&offcut, pieces.spacing));
    }
    worth
}
