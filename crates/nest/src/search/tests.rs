use super::*;
use crate::problem::{Format, Gaps, Item};

fn equal(sheet: (i64, i64), sizes: &[(i64, i64, u32)], turns: bool) -> Problem {
    let item = |(width, height, count): &(i64, i64, u32)| Item { width: *width, height: *height, turns, count: *count };
    let formats = vec![Format { width: sheet.0, height: sheet.1, cost: 1, most: None }];
    Problem { formats, items: sizes.iter().map(item).collect(), gaps: Gaps::default() }
}

fn found(problem: &Problem) -> (usize, Progress) {
    let mut search = Search::new(problem, &Worth::default(), 1).unwrap();
    let progress = search.step(2_000_000);
    crate::check::check(&search.best(), problem).unwrap();
    (search.best().sheets.len(), progress)
}

/// The optimum by hand: see the bounds' test of the same parts.
#[test]
fn turning_saves_a_sheet() {
    let sizes = [(6, 6, 3), (6, 4, 4)];
    assert_eq!(found(&equal((10, 10), &sizes, false)), (4, Progress::Done));
    assert_eq!(found(&equal((10, 10), &sizes, true)), (3, Progress::Done));
}

/// Source: Bengtsson 1982, problem 1, as in the test of bounds.
#[test]
fn bengtsson_1_takes_four_sheets() {
    #[rustfmt::skip]
    let sizes = [
        (1, 3, 1), (1, 7, 1), (3, 6, 1), (3, 8, 1), (4, 3, 1), (4, 7, 1), (7, 8, 1), (8, 6, 2), (9, 1, 2), (9, 8, 1),
        (10, 3, 1), (11, 1, 1), (11, 3, 1), (11, 4, 1), (11, 5, 1), (11, 6, 1), (12, 6, 1), (12, 8, 1),
    ];
    assert_eq!(found(&equal((25, 10), &sizes, false)), (4, Progress::Done));
}

/// Source: Berkey, Wang 1987, class 1, 20 parts, the first one; 8 is proven by its bound. Turned it takes 7, by area.
#[test]
fn berkey_wang_1_takes_eight_sheets_or_seven_if_turned() {
    #[rustfmt::skip]
    let sizes = [
        (1, 5, 1), (2, 4, 1), (3, 5, 1), (4, 2, 1), (4, 5, 1), (4, 10, 1), (5, 7, 1), (5, 9, 1), (6, 3, 1), (6, 7, 1),
        (6, 9, 1), (7, 2, 1), (7, 8, 1), (8, 3, 3), (8, 7, 1), (10, 3, 1), (10, 6, 1), (10, 7, 1),
    ];
    assert_eq!(found(&equal((10, 10), &sizes, false)), (8, Progress::Done));
    assert_eq!(found(&equal((10, 10), &sizes, true)), (7, Progress::Done));
}

/// Parts that a sheet was cut into fit on it again: the guillotine pattern is found although it is full.
#[test]
fn a_sheet_that_was_cut_up_is_put_together() {
    let sizes = [(60, 40, 1), (40, 70, 1), (30, 60, 1), (30, 30, 1), (40, 30, 1), (30, 30, 1)];
    assert_eq!(sizes.iter().map(|(w, h, n)| w * h * i64::from(*n)).sum::<i64>(), 100 * 100);
    assert_eq!(found(&equal((100, 100), &sizes, false)), (1, Progress::Done));
}

/// A cheaper mix of formats is found, and an offcut from stock is taken first where that costs less.
#[test]
fn the_cheapest_mix_is_found() {
    let item = |width, height, count| Item { width, height, turns: false, count };
    let format = |width, height, cost, most| Format { width, height, cost, most };
    let problem = Problem {
        formats: vec![format(100, 50, 100, None), format(150, 60, 210, None), format(70, 50, 10, Some(1))],
        items: vec![item(50, 50, 5), item(20, 50, 1)],
        gaps: Gaps::default(),
    };
    let mut search = Search::new(&problem, &Worth::default(), 1).unwrap();
    search.step(200_000);
    // 50 and 20 on the offcut, two sheets with two of 50 each.
    assert_eq!(search.net(), 210);
    assert_eq!(search.best().sheets.iter().map(|sheet| sheet.format).collect::<Vec<_>>(), [0, 0, 2]);
}
