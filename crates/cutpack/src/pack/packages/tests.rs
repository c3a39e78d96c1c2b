//! What a packer reads of packages.

use std::collections::BTreeSet;

use slotwright_core::rules::sample::{Wanted, choices};

use super::super::testing::{demo, order, order_of, with_orders};
use super::*;

/// Every part of an order lies in one layer of one package; rows are numbered as they lie beside each other, and parts of a row begin
/// behind the end of the one before them.
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
                for layer in &package.layers {
                    beside += layer.len() - 1;
                    assert_eq!(layer.first().map(|first| (first.row, first.at)), Some((1, [Length::ZERO; 2])));
                    for pair in layer.windows(2) {
                        let [[along, across], [next_along, next_across]] = [pair[0].at, pair[1].at];
                        if pair[0].row == pair[1].row {
                            assert!(next_along >= along + pair[0].size()[0] && next_across == across);
                        } else {
                            assert!(pair[1].row == pair[0].row + 1 && next_across > across);
                        }
                    }
                }
            }
        }
        assert!(beside > 10, "{beside} parts lie beside others");
    });
}

/// Of seeded units no stack has more parts that hardly lie on others than if the layers that cover less lay on those that cover more, and
/// all of them together have far fewer.
#[test]
fn layers_are_stacked_so_that_parts_are_carried() {
    let range = demo();
    let texts: Vec<String> =
        choices(&range, 29, Wanted::Valid).take(60).map(|choice| order_of(&range, &choice)).collect();
    with_orders(core::slice::from_ref(&range), &texts, |orders| {
        let (mut all, mut by_cover) = (0, 0);
        for order in &orders.taken {
            for Package { mut layers, .. } in packages(order).unwrap().packages {
                let free = |layers: &[Vec<Packed<'_>>]| {
                    layers.windows(2).map(|pair| standing_free(&pair[1], &pair[0])).sum::<usize>()
                };
                let found = free(&layers);
                layers.sort_by(|a, b| covers(b).total_cmp(&covers(a)));
                assert!(found <= free(&layers), "{layers:?}");
                all += found;
                by_cover += free(&layers);
            }
        }
        assert!(all * 3 < by_cover * 2, "{all} of {by_cover}");
    });
}
