//! What holds of every packing, on generated problems: bounds lean to few sizes, parts as wide as a sheet, tight gaps.

use proptest::prelude::*;
use slotwright_nest::bound::bounds;
use slotwright_nest::check::check;
use slotwright_nest::packing::{Packing, Sheet};
use slotwright_nest::problem::{Format, Gaps, Item, NoRoom, Problem, Worth};
use slotwright_nest::quick::{quick, quote};
use slotwright_nest::search::{Progress, Search};

const CASES: u32 = 300;

fn items(sheet: i64) -> impl Strategy<Value = Vec<Item>> {
    let side = prop_oneof![3 => 1..=sheet, 2 => 1..=sheet / 3, 1 => Just(sheet), 1 => Just(sheet / 2), 1 => Just(sheet / 2 + 1)];
    let item = (side.clone(), side, any::<bool>(), 1..4_u32);
    prop::collection::vec(item.prop_map(|(width, height, turns, count)| Item { width, height, turns, count }), 1..14)
}

fn formats(sheet: i64) -> impl Strategy<Value = Vec<Format>> {
    // The first takes every part, and there are enough of it; the others are smaller, larger, few.
    let other = (sheet / 2..=2 * sheet, sheet / 2..=2 * sheet, 0..500_i64, prop::option::of(0..3_u32));
    let other = other.prop_map(|(width, height, cost, most)| Format { width, height, cost, most });
    (0..300_i64, prop::collection::vec(other, 0..3)).prop_map(move |(cost, mut formats)| {
        formats.insert(0, Format { width: sheet, height: sheet, cost, most: None });
        formats
    })
}

prop_compose! {
    fn problems()(sheet in 6..60_i64, trim in 0..4_i64, spacing in 0..4_i64)(
        items in items(sheet),
        formats in formats(sheet + 2 * trim),
        gaps in Just(Gaps { spacing, trim }),
    ) -> Problem {
        Problem { formats, items, gaps }
    }
}

fn worths() -> impl Strategy<Value = Worth> {
    (0..20_i64, 0..20_i64, prop_oneof![Just(0), Just(500), 0..=1000_u16])
        .prop_map(|(least_width, least_height, per_mille)| Worth { least_width, least_height, per_mille })
}

/// The plain twin of the check: every pair, cell by cell where they could meet.
fn is_sound(packing: &Packing, problem: &Problem) -> bool {
    let Gaps { spacing, trim } = problem.gaps;
    packing.sheets.iter().all(|sheet| {
        let format = problem.formats[sheet.format as usize];
        let index = |length: i64| usize::try_from(length).unwrap_or(usize::MAX);
        let (width, height) = (index(format.width), index(format.height));
        let parts = sheet.parts.iter().map(|part| (part.x, part.y, part.width, part.height));
        let offcuts = sheet.offcuts.iter().map(|cut| (cut.x, cut.y, cut.width, cut.height));
        let mut taken = vec![vec![false; width]; height];
        parts.chain(offcuts).all(|(x, y, wide, high)| {
            // Each with its spacing above and to the right takes cells that nobody else takes.
            (y..y + high + spacing).all(|row| {
                (x..x + wide + spacing).all(|column| {
                    let is_part = row < y + high && column < x + wide;
                    let is_inside =
                        row >= trim && column >= trim && row < format.height - trim && column < format.width - trim;
                    if !is_inside {
                        return !is_part;
                    }
                    let cell = &mut taken[index(row)][index(column)];
                    !std::mem::replace(cell, true)
                })
            })
        })
    })
}

/// Whether a rectangle of the least size of an offcut lies free somewhere, its spacing included.
fn has_room(sheet: &Sheet, problem: &Problem, worth: &Worth) -> bool {
    let (Gaps { spacing, trim }, format) = (problem.gaps, problem.formats[sheet.format as usize]);
    let (wide, high) = (worth.least_width.max(1), worth.least_height.max(1));
    let parts = sheet.parts.iter().map(|part| (part.x, part.y, part.width, part.height));
    let offcuts = sheet.offcuts.iter().map(|cut| (cut.x, cut.y, cut.width, cut.height));
    let taken: Vec<_> = parts.chain(offcuts).collect();
    let is_free = |x: i64, y: i64| {
        !taken.iter().any(|(left, low, width, height)| {
            x < left + width + spacing
                && *left < x + wide + spacing
                && y < low + height + spacing
                && *low < y + high + spacing
        })
    };
    (trim..=format.width - trim - wide).any(|x| (trim..=format.height - trim - high).any(|y| is_free(x, y)))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(CASES))]

    #[test]
    fn a_quick_packing_holds(problem in problems(), worth in worths()) {
        let packing = quick(&problem, &worth).unwrap();
        prop_assert_eq!(check(&packing, &problem), Ok(()));
        prop_assert!(is_sound(&packing, &problem));
        prop_assert!(packing.sheets.iter().all(|sheet| !sheet.parts.is_empty()));
        prop_assert_eq!(&packing, &quick(&problem, &worth).unwrap());
        let figures = packing.figures(&problem);
        let quote = quote(&problem, &worth).unwrap();
        prop_assert_eq!((quote.sheets, quote.cost, quote.worth), (figures.sheets, figures.cost, figures.worth));
        prop_assert_eq!(figures.sheet_area, figures.part_area + figures.offcut_area + figures.waste_area());
        prop_assert!(figures.waste_area() >= 0 && figures.worth <= figures.cost, "{:?}", figures);
    }

    #[test]
    fn the_order_of_items_changes_no_figure(problem in problems(), worth in worths()) {
        let mut other = problem.clone();
        other.items.reverse();
        let figures = |problem: &Problem| quick(problem, &worth).unwrap().figures(problem);
        prop_assert_eq!(figures(&problem), figures(&other));
    }

    #[test]
    fn offcuts_are_large_enough_and_no_further_one_is_free(problem in problems(), worth in worths()) {
        let packing = quick(&problem, &worth).unwrap();
        for sheet in &packing.sheets {
            prop_assert!(!has_room(sheet, &problem, &worth), "{:?}", sheet);
            let areas: Vec<i64> = sheet.offcuts.iter().map(|cut| cut.width * cut.height).collect();
            prop_assert!(areas.is_sorted_by(|one, other| one >= other));
            for cut in &sheet.offcuts {
                prop_assert!(cut.width >= worth.least_width && cut.height >= worth.least_height);
            }
        }
    }

    #[test]
    fn a_search_is_never_worse_and_never_below_its_bounds(problem in problems(), worth in worths(), seed in 0..4_u64) {
        let quick = quick(&problem, &worth).unwrap().figures(&problem).net();
        let mut search = Search::new(&problem, &worth, seed).unwrap();
        let mut before = quick;
        prop_assert_eq!(search.net(), quick);
        for _ in 0..4 {
            let progress = search.step(2000);
            let best = search.best();
            prop_assert_eq!(check(&best, &problem), Ok(()));
            let figures = best.figures(&problem);
            prop_assert_eq!(figures.net(), search.net());
            prop_assert!(search.net() >= search.least_net(), "{} {}", search.net(), search.least_net());
            prop_assert!(figures.sheets >= bounds(&problem).unwrap().fewest());
            prop_assert_eq!(progress == Progress::Better || progress == Progress::Done && search.net() < before, search.net() < before);
            before = search.net();
        }
    }

    #[test]
    fn a_search_depends_on_its_effort_alone(problem in problems(), worth in worths(), seed in 0..4_u64) {
        let search = |steps: &[u32]| {
            let mut search = Search::new(&problem, &worth, seed).unwrap();
            for effort in steps {
                search.step(*effort);
            }
            search.best()
        };
        prop_assert_eq!(search(&[3000]), search(&[100, 1, 899, 2000]));
    }

    #[test]
    fn parts_from_one_sheet_have_a_bound_of_one(cuts in prop::collection::vec((any::<bool>(), 1..1000_i64), 0..12)) {
        // A sheet is cut up from edge to edge, the largest part again each time.
        let mut parts = vec![(100_i64, 80_i64)];
        for (is_across, share) in cuts {
            let at = (0..parts.len()).max_by_key(|at| parts[*at].0 * parts[*at].1).unwrap();
            let (width, height) = parts.swap_remove(at);
            let cut = |side: i64| (side * share / 1000).clamp(1, (side - 1).max(1));
            if is_across && width > 1 {
                parts.extend([(cut(width), height), (width - cut(width), height)]);
            } else if height > 1 {
                parts.extend([(width, cut(height)), (width, height - cut(height))]);
            } else {
                parts.push((width, height));
            }
        }
        for turns in [false, true] {
            let items = parts.iter().map(|(width, height)| Item { width: *width, height: *height, turns, count: 1 }).collect();
            let formats = vec![Format { width: 100, height: 80, cost: 1, most: None }];
            let bounds = bounds(&Problem { formats, items, gaps: Gaps::default() }).unwrap();
            prop_assert_eq!(bounds.fewest(), 1, "{:?}", bounds);
        }
    }
}

/// What the laws are tried on is not all of one kind.
#[test]
fn problems_are_of_many_kinds() {
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::deterministic();
    let (mut several, mut many_sheets, mut turned, mut with_offcuts) = (0, 0, 0, 0);
    for _ in 0..200 {
        let problem = problems().new_tree(&mut runner).unwrap().current();
        let packing = quick(&problem, &Worth { least_width: 3, least_height: 3, per_mille: 500 }).unwrap();
        let used = |format: u32| packing.sheets.iter().any(|sheet| sheet.format == format);
        several += usize::from((0..4).filter(|format| used(*format)).count() > 1);
        many_sheets += usize::from(packing.sheets.len() > 6);
        turned += usize::from(packing.sheets.iter().flat_map(|sheet| &sheet.parts).any(|part| part.turned));
        with_offcuts += usize::from(packing.sheets.iter().any(|sheet| !sheet.offcuts.is_empty()));
    }
    assert!(
        several > 20 && many_sheets > 20 && turned > 20 && with_offcuts > 100,
        "{several} {many_sheets} {turned} {with_offcuts}"
    );
}

#[test]
fn what_cannot_be_nested_says_why() {
    let format = Format { width: 100, height: 50, cost: 1, most: Some(1) };
    let item = Item { width: 60, height: 40, turns: false, count: 1 };
    let ask = |formats: &[Format], items: &[Item], gaps: Gaps| {
        quick(&Problem { formats: formats.to_vec(), items: items.to_vec(), gaps }, &Worth::default()).map(|_| ())
    };
    let none = Gaps::default();
    assert_eq!(ask(&[format], &[item], none), Ok(()));
    assert_eq!(ask(&[format], &[item], Gaps { spacing: 0, trim: 6 }), Err(NoRoom::Item { item: 0 }));
    assert_eq!(ask(&[format], &[item, Item { width: 40, height: 60, ..item }], none), Err(NoRoom::Item { item: 1 }));
    assert_eq!(ask(&[format], &[Item { width: 40, height: 60, turns: true, ..item }], none), Ok(()));
    assert_eq!(ask(&[format], &[Item { count: 3, ..item }], none), Err(NoRoom::Sheets { left: 2 }));
    assert_eq!(ask(&[], &[item], none), Err(NoRoom::Item { item: 0 }));
    assert_eq!(ask(&[], &[], none), Ok(()));
    for (width, height) in [(0, 5), (5, -1), (i64::MAX, 5)] {
        assert_eq!(ask(&[format], &[Item { width, height, ..item }], none), Err(NoRoom::Bounds));
        assert_eq!(ask(&[Format { width, height, ..format }], &[item], none), Err(NoRoom::Bounds));
    }
    assert_eq!(ask(&[format], &[Item { count: u32::MAX, ..item }], none), Err(NoRoom::Bounds));
    assert_eq!(ask(&[Format { cost: -1, ..format }], &[item], none), Err(NoRoom::Bounds));
    assert_eq!(ask(&[format], &[item], Gaps { spacing: -1, trim: 0 }), Err(NoRoom::Bounds));
}

/// Calculated by hand: two parts with a spacing of 6 between them take 2 × 607 + 6 = 1220 of a sheet that is as wide.
#[test]
fn spacing_lies_between_parts_alone() {
    for (width, trim, sheets) in [(607, 0, 1), (608, 0, 2), (602, 5, 1), (603, 5, 2)] {
        let items = vec![Item { width, height: 400, turns: false, count: 2 }];
        let formats = vec![Format { width: 1220, height: 400 + 2 * trim, cost: 1, most: None }];
        let problem = Problem { formats, items, gaps: Gaps { spacing: 6, trim } };
        let packing = quick(&problem, &Worth::default()).unwrap();
        assert_eq!(packing.sheets.len(), sheets, "{width}");
        assert_eq!(check(&packing, &problem), Ok(()));
    }
}

/// Calculated by hand: 1000 × 500 less a trim of 10 is 980 × 480; beside a part 600 × 480 and a spacing of 8 there are
/// 372 × 480 left, which is 35.712 % of the sheet.
#[test]
fn an_offcut_is_worth_its_share_of_the_sheet() {
    let problem = Problem {
        formats: vec![Format { width: 1000, height: 500, cost: 10_000, most: None }],
        items: vec![Item { width: 600, height: 480, turns: false, count: 1 }],
        gaps: Gaps { spacing: 8, trim: 10 },
    };
    let least = |least_width, least_height| Worth { least_width, least_height, per_mille: 500 };
    let packing = quick(&problem, &least(372, 480)).unwrap();
    let offcut = packing.sheets[0].offcuts[0];
    assert_eq!((offcut.x, offcut.y, offcut.width, offcut.height, offcut.worth), (618, 10, 372, 480, 1785));
    let figures = packing.figures(&problem);
    assert_eq!((figures.net(), figures.yield_per_mille(), figures.waste_area()), (8215, 576, 33_440));
    assert_eq!(quick(&problem, &least(373, 480)).unwrap().figures(&problem).net(), 10_000);
}

/// Each planted fault is found by the check.
#[test]
fn the_check_finds_faults() {
    use slotwright_nest::check::Fault;
    let problem = Problem {
        formats: vec![Format { width: 100, height: 60, cost: 1, most: Some(1) }],
        items: vec![Item { width: 30, height: 20, turns: false, count: 2 }],
        gaps: Gaps { spacing: 4, trim: 2 },
    };
    let packing = quick(&problem, &Worth { least_width: 10, least_height: 10, per_mille: 0 }).unwrap();
    assert_eq!(check(&packing, &problem), Ok(()));
    let broken = |change: &dyn Fn(&mut Packing)| {
        let mut broken = packing.clone();
        change(&mut broken);
        check(&broken, &problem)
    };
    assert_eq!(broken(&|it| it.sheets[0].format = 1), Err(Fault::NoFormat { sheet: 0 }));
    assert_eq!(broken(&|it| it.sheets.push(it.sheets[0].clone())), Err(Fault::TooMany { format: 0 }));
    assert_eq!(broken(&|it| it.sheets[0].parts[0].item = 9), Err(Fault::NoItem { sheet: 0 }));
    assert_eq!(broken(&|it| it.sheets[0].parts[0].width -= 1), Err(Fault::Size { sheet: 0, item: 0 }));
    let turn = |it: &mut Packing| {
        let part = &mut it.sheets[0].parts[0];
        (part.width, part.height, part.turned) = (part.height, part.width, true);
    };
    assert_eq!(broken(&turn), Err(Fault::Size { sheet: 0, item: 0 }));
    assert_eq!(broken(&|it| it.sheets[0].parts[0].x = 1), Err(Fault::Outside { sheet: 0 }));
    assert_eq!(broken(&|it| it.sheets[0].offcuts[0].height += 60), Err(Fault::Outside { sheet: 0 }));
    // The second part lies beside the first one or above it, as close as may be.
    let closer = |it: &mut Packing| {
        let first = it.sheets[0].parts[0];
        let second = &mut it.sheets[0].parts[1];
        if second.x > first.x { second.x -= 1 } else { second.y -= 1 }
    };
    assert_eq!(broken(&closer), Err(Fault::TooClose { sheet: 0 }));
    assert_eq!(broken(&|it| it.sheets[0].parts.truncate(1)), Err(Fault::Count { item: 0 }));
}
