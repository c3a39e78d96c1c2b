use super::*;
use crate::problem::{Format, Gaps, Item};

fn of_sizes(sheet: (i64, i64), sizes: &[(i64, i64)], turns: bool) -> Bounds {
    let items = sizes.iter().map(|(width, height)| Item { width: *width, height: *height, turns, count: 1 }).collect();
    let formats = vec![Format { width: sheet.0, height: sheet.1, cost: 1, most: None }];
    bounds(&Problem { formats, items, gaps: Gaps::default() }).unwrap()
}

/// Calculated by hand: two of 6 × 6 do not share a sheet of 10 × 10, and only one 6 × 4 lies above each; turned, it lies
/// beside as well.
#[test]
fn a_bound_of_fixed_parts_is_none_of_turned_ones() {
    let sizes = [(6, 6), (6, 6), (6, 6), (6, 4), (6, 4), (6, 4), (6, 4)];
    let fixed = of_sizes((10, 10), &sizes, false);
    assert_eq!((fixed.area, fixed.martello, fixed.squares, fixed.fewest()), (3, 4, 0, 4));
    let turned = of_sizes((10, 10), &sizes, true);
    assert_eq!((turned.area, turned.fewest()), (3, 3));
}

/// Source: Bengtsson, Packing rectangular pieces, The Computer Journal 25(3), 1982, problem 1; sizes by 2DPackLib.
#[test]
fn bengtsson_1_needs_four_sheets() {
    #[rustfmt::skip]
    let sizes = [
        (1, 3), (1, 7), (3, 6), (3, 8), (4, 3), (4, 7), (7, 8), (8, 6), (8, 6), (9, 1),
        (9, 1), (9, 8), (10, 3), (11, 1), (11, 3), (11, 4), (11, 5), (11, 6), (12, 6), (12, 8),
    ];
    let bounds = of_sizes((25, 10), &sizes, false);
    assert_eq!((bounds.area, bounds.martello, bounds.fewest()), (3, 4, 4));
}

/// Source: Berkey, Wang, Two-dimensional finite bin-packing algorithms, J. Operational Research Society 38(5), 1987,
/// class 1, 20 parts, the first one; sizes by 2DPackLib. L1 and L2 are 7, dual feasible functions show that it needs 8.
#[test]
fn dual_feasible_functions_show_more_than_l2() {
    #[rustfmt::skip]
    let sizes = [
        (1, 5), (2, 4), (3, 5), (4, 2), (4, 5), (4, 10), (5, 7), (5, 9), (6, 3), (6, 7),
        (6, 9), (7, 2), (7, 8), (8, 3), (8, 3), (8, 3), (8, 7), (10, 3), (10, 6), (10, 7),
    ];
    let bounds = of_sizes((10, 10), &sizes, false);
    assert_eq!((bounds.area, bounds.martello, bounds.dual), (7, 7, 8));
}

/// Source: Dell'Amico, Martello, Vigo 2002, the example of the bound (as an open-source implementation has it), and the
/// squares of a part.
#[test]
fn squares_are_bounded_and_cut_as_published() {
    let side = |side: i64, count: usize| core::iter::repeat_n((side, side), count);
    let sizes: Vec<(i64, i64)> = side(18, 2).chain(side(12, 2)).chain(side(11, 5)).chain(side(7, 6)).collect();
    assert_eq!(of_sizes((23, 20), &sizes, true).squares, 6);
    assert_eq!(squares::cut(14, 12), [12, 2, 2, 2, 2, 2, 2]);
    assert_eq!(squares::cut(12, 14), [12, 2, 2, 2, 2, 2, 2]);
}

#[test]
fn a_part_that_fits_in_one_way_alone_counts_as_fixed() {
    let sizes = [(12, 4), (12, 4), (12, 4), (4, 12)];
    // Each is 12 wide on a sheet 12 wide and 7 high, so each takes a sheet.
    assert_eq!(of_sizes((12, 7), &sizes, true).fewest(), 4);
}

#[test]
fn nothing_needs_no_sheet() {
    assert_eq!(of_sizes((12, 7), &[], false), Bounds::default());
}
