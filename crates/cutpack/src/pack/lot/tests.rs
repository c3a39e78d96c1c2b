use super::*;
use crate::pack::testing::{demo, order, with_orders};

/// Boards, finishes and orders of lots.
fn told(lots: &[Lot<'_>]) -> Vec<(String, Vec<u32>)> {
    let orders = |lot: &Lot<'_>| {
        let mut orders: Vec<u32> = lot.parts.iter().map(|part| part.order).collect();
        orders.dedup();
        orders
    };
    lots.iter().map(|lot| (lot.key(), orders(lot))).collect()
}

#[test]
fn orders_of_one_board_and_one_finish_are_one_lot() {
    let range = demo();
    let texts = [order(&range, 0, 0), order(&range, 1, 0), order(&range, 0, 1)];
    with_orders(&[range], &texts, |orders| {
        let lots = lots(&orders.taken);
        let body: Vec<_> = told(&lots).into_iter().filter(|(key, _)| key.starts_with("birch-18")).collect();
        assert_eq!(body, [("birch-18-clear".into(), vec![1, 2]), ("birch-18-pale".into(), vec![3])]);
        // Nothing is lost, and nothing is in two lots.
        let mut marks: Vec<String> = lots.iter().flat_map(|lot| lot.parts.iter().map(Part::mark)).collect();
        let wanted: usize =
            orders.taken.iter().flat_map(|order| &order.cut.built).map(|built| built.cut.weighed().count()).sum();
        assert_eq!(marks.len(), wanted);
        marks.sort_unstable();
        marks.dedup();
        assert_eq!(marks.len(), wanted);
        for lot in &lots {
            for part in &lot.parts {
                let order = &orders.taken[part.order as usize - 1];
                let picked = Picked::of(order.cut.range, order.cut.choice).unwrap();
                assert_eq!(
                    (&picked.board(part.panel.stock).key, &picked.finish.key),
                    (&lot.board.key, &lot.finish.key)
                );
            }
        }
    });
}

#[test]
fn orders_of_two_ranges_share_no_lot() {
    let (one, mut other) = (demo(), demo());
    other.name = "Marsh".into();
    let texts = [order(&one, 0, 0), order(&other, 0, 0)];
    with_orders(&[one, other], &texts, |orders| {
        let lots = told(&lots(&orders.taken));
        let body: Vec<_> =
            lots.into_iter().filter(|(key, _)| key == "birch-18-clear").map(|(_, orders)| orders).collect();
        assert_eq!(body, [vec![1], vec![2]]);
    });
}

/// The same lot with thicker cutters: reliefs have room in a slot that is √2 times as wide as they are.
#[test]
fn a_part_that_is_too_narrow_for_the_cutter_is_named() {
    let range = demo();
    with_orders(core::slice::from_ref(&range), &[order(&range, 0, 0)], |orders| {
        for lot in lots(&orders.taken) {
            assert!(lot.too_narrow().is_none());
            let mut thick = lot.range.clone();
            thick.build.cutter_mm = Length::mm(16.0);
            let thick = Lot { range: &thick, ..lot };
            let (part, most) = thick.too_narrow().unwrap();
            assert!(most > Length::mm(6.0) && most < Length::mm(16.0), "{most:?}");
            let slots = part.panel.features.iter().filter_map(|feature| match *feature {
                Feature::Slot { from, to } => Some((to.u - from.u).min(to.v - from.v)),
                Feature::Notch { from, to, .. } => Some(to - from),
                _ => None,
            });
            let narrowest = slots.fold(Length::mm(f64::MAX), Length::min);
            assert!(((most / 2.0 + Length::mm(0.1)) * (2.0 * SQRT_2) - narrowest).abs() < Length::mm(1e-9));
        }
    });
}
