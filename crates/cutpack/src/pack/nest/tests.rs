use super::*;
use crate::pack::draw::part_dxf;
use crate::pack::lot::lots;
use crate::pack::path::Depths;
use crate::pack::testing::{demo, order, with_orders};
use crate::pack::{Nesting, NoPack, OnePart, Settings};

fn key(text: &str) -> Key {
    text.parse().unwrap()
}

fn bound(sheet: &str, count: u32) -> SheetsInStock {
    SheetsInStock { board: key("birch-18"), sheet: key(sheet), count }
}

#[test]
fn two_lots_count_on_no_sheet_twice() {
    let range = demo();
    let texts = [order(&range, 0, 0), order(&range, 0, 1)];
    with_orders(&[range], &texts, |orders| {
        let nest = |count: u32| {
            let settings = Settings { bounds: vec![bound("small", count), bound("large", 0)], ..Settings::default() };
            let used = |lot: &crate::pack::LotSheets<'_>| {
                let small = |stock: &Stock| *stock == Stock::Bought("small".into());
                assert!(lot.sheets.iter().all(|(sheet, _)| small(&sheet.stock)));
                u32::try_from(lot.sheets.len()).unwrap()
            };
            let pack = Nesting::begin(orders, &settings, None).map(|mut nesting| {
                // Better nests keep to the sheets of the first one.
                while nesting.spend(4000, 1000) {}
                nesting.pack()
            })?;
            let body = pack.lots.iter().filter(|lot| lot.lot.board.key == key("birch-18"));
            Ok::<_, NoPack>(body.map(|lot| (used(lot), lot.fewest)).collect::<Vec<_>>())
        };
        let free = nest(100).unwrap();
        let [(first, _), (second, fewest)] = free[..] else { panic!("two lots: {free:?}") };
        assert!(first > 0 && second >= fewest && fewest > 0, "{free:?}");
        // All that are there are shared out.
        assert_eq!(nest(first + second).unwrap().iter().map(|(used, _)| used).sum::<u32>(), first + second);
        // What the first one has is gone for the second.
        let none = nest(first + fewest - 1);
        assert!(matches!(&none, Err(NoPack::TooFewSheets { board, .. }) if board.ends_with("(birch-18)")), "{none:?}");
    });
}

/// An offcut that one part of the order goes on.
fn offcut(measured: Option<f64>) -> StoredOffcut {
    StoredOffcut {
        name: "r1".into(),
        board: key("birch-18"),
        finish: key("clear"),
        size: Grained { along: Length::mm(2400.0), across: Length::mm(1000.0) },
        measured: measured.map(Length::mm),
    }
}

#[test]
fn an_offcut_is_cut_by_its_own_thickness_and_one_of_another_stays_in_the_rack() {
    let range = demo();
    with_orders(core::slice::from_ref(&range), &[order(&range, 0, 0)], |orders| {
        // Slots are cut for 17.7 mm with a clearance of 0.15 mm, of which 0.1 to 0.2 mm are wanted.
        for (measured, taken, by) in [
            (Some(17.66), true, 17.66),
            (Some(17.74), true, 17.74),
            (None, true, 17.7),
            (Some(17.64), false, 17.7),
            (Some(17.76), false, 17.7),
            (Some(17.95), false, 17.7),
        ] {
            let settings = Settings { rack: vec![offcut(measured)], ..Settings::default() };
            let one = OnePart { order: "1".into(), part: "top".into() };
            let pack = Nesting::begin(orders, &settings, Some(one)).unwrap().pack();
            let [(lot, sheet, program)] = pack.sheets().collect::<Vec<_>>()[..] else { panic!("one sheet") };
            assert_eq!(sheet.stock == Stock::Offcut("r1".into()), taken, "{measured:?}");
            assert!((sheet.uncoated - Length::mm(by)).abs() < Length::mm(1e-9), "{measured:?}");
            assert_eq!(sheet.is_unmeasured_offcut(), measured.is_none());
            let below = lot.range.cutting.below_mm;
            assert!((program.depths.through - (Length::mm(by) + lot.film() + below)).abs() < Length::mm(1e-9));
            assert_eq!(program.depths, Depths::of(lot, sheet));
            let own = part_dxf(lot, sheet, &sheet.placed[0].part, "0-0");
            assert!(own.contains(&format!("OUTSIDE-{:.2}", program.depths.outside.in_mm())));
            // What is not taken is still there afterwards; what is kept of it is as thick, if anybody knows.
            let after = pack.rack_after();
            assert_eq!(after.iter().any(|left| left.name == "r1"), !taken);
            let kept = after.iter().filter(|left| left.name != "r1");
            let known = if taken { measured } else { Some(17.7) };
            for left in kept {
                assert_eq!(left.measured.map(Length::in_mm), known, "{left:?}");
            }
        }
    });
}

#[test]
fn an_offcut_serves_its_board_and_its_finish_alone() {
    let range = demo();
    with_orders(core::slice::from_ref(&range), &[order(&range, 0, 0)], |orders| {
        let lots = lots(&orders.taken);
        let lot = lots.iter().find(|lot| lot.board.key == key("birch-18")).unwrap();
        for other in [
            StoredOffcut { finish: key("pale"), ..offcut(None) },
            StoredOffcut { board: key("birch-12"), ..offcut(None) },
        ] {
            let mut stock = InStock { rack: vec![other.clone()], bounds: Vec::new() };
            let nest = LotNest::of(lot, &mut stock).unwrap();
            assert!(!nest.has_rack());
            assert_eq!(stock.rack, [other]);
        }
    });
}
