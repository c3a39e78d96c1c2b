//! What a packer reads of packages.

use std::collections::BTreeSet;

use super::super::testing::{demo, order, with_orders};
use super::*;

/// Every part of an order lies in one layer of one package; no layer covers more than the one below it; rows are numbered as they lie
/// beside each other, and parts of a row begin where the one before them ends.
#[test]
fn layers_say_where_each_part_lies() {
    let range = demo();
    let texts: Vec<String> = (0..range.models.len()).map(|model| order(&range, model, 0)).collect();
    with_orders(&[range], &texts, |orders| {
        let mut beside = 0;
        for order in &orders.taken {
            let packages = packages(order).unwrap().packages;
            let marks: BTreeSet<String> = parts(order.number, &order.cut).map(|(_, part)| part.mark()).collect();
            let mut packed: Vec<String> =
                packages.iter().flat_map(Package::parts).map(|packed| packed.part.mark()).collect();
            packed.sort();
            assert!(packed.iter().eq(&marks), "{packed:?}");
            for package in &packages {
                let own: Mass = package.parts().map(|packed| packed.part.mass).sum();
                assert!((own + package.packing - package.mass).in_kg().abs() < 1e-9 && package.packing > Mass::ZERO);
                let all = |layer: &[Packed<'_>]| layer.iter().map(|packed| packed.covers().in_m2()).sum::<f64>();
                for pair in package.layers.windows(2) {
                    assert!(all(&pair[1]) <= all(&pair[0]) + 1e-9);
                }
                for layer in &package.layers {
                    beside += layer.len() - 1;
                    assert_eq!(layer.first().map(|first| (first.row, first.at)), Some((1, [Length::ZERO; 2])));
                    for pair in layer.windows(2) {
                        let [[along, across], [next_along, next_across]] = [pair[0].at, pair[1].at];
                        if pair[0].row == pair[1].row {
                            assert_eq!((next_along, next_across), (along + pair[0].size()[0], across));
                        } else {
                            assert!(pair[1].row == pair[0].row + 1 && next_across > across);
                            assert_eq!(next_along, Length::ZERO);
                        }
                    }
                }
            }
        }
        assert!(beside > 10, "{beside} parts lie beside others");
    });
}
