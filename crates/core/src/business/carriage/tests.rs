//! Packages of whole parts that people may lift.

use super::*;
use crate::business::nesting::Grained;
use crate::cabinet::case::WeighedCase;
use crate::cabinet::layout::{Layout, Picked};
use crate::cabinet::panel::Stock;
use crate::rules::sample::{Wanted, choices};
use crate::testing::demo;
use crate::units::quantity::{Area, AreaMass};

fn part(number: u8, kg: f64, long: f64) -> FlatPart {
    FlatPart {
        id: PanelId::Upright(number),
        stock: Stock::Body,
        blank: Grained { along: Length::mm(long), across: Length::mm(400.0) },
        mass: Mass::kg(kg),
        face: Area::mm2(0.5e6),
        long: Length::mm(long),
        wide: Length::mm(400.0),
        thick: Length::mm(18.0),
    }
}

/// The packages of these masses, the heaviest first, with a carrier that takes so much and has so many people.
fn packed(masses: &[f64], most: f64, people: u8, protection: f64) -> Vec<Vec<u8>> {
    let mut range = demo();
    (range.rates.pack_kg_per_m2, range.rates.pack_kg_per_package) =
        (AreaMass::kg_per_m2(protection), Mass::kg(protection));
    range.carriers.truncate(1);
    let carrier = range.carriers.first_mut().unwrap();
    (carrier.package_most_kg, carrier.people) = (Mass::kg(most), people);
    let flat = (1..).zip(masses).map(|(number, kg)| part(number, *kg, 1000.0)).collect();
    let bill = Bill { flat, ..Bill::default() };
    let number = |id: &PanelId| if let PanelId::Upright(number) = id { *number } else { 0 };
    let packages = carriage(&range, &bill).unwrap().packages;
    packages.iter().map(|package| package.parts.iter().map(number).collect()).collect()
}

// Worked: three of 20 kg at 31.5 kg are three packages, though two would hold their mass. A person lifts 25 kg, two
// 33. Protection counts: 10 and 10 kg with half a square metre each at 2 kg/m², and 2 kg, are 24 kg; with 12 it is 26.
#[test]
fn whole_parts_with_their_protection_are_packed() {
    assert_eq!(packed(&[20.0, 20.0, 20.0], 31.5, 2, 0.0), [[1], [2], [3]]);
    assert_eq!(packed(&[16.0, 15.0], 31.5, 2, 0.0), [vec![1, 2]]);
    assert_eq!(packed(&[16.0, 15.0], 31.5, 1, 0.0), [[1], [2]], "one person lifts 25 kg");
    assert_eq!(packed(&[20.0, 13.5], 45.0, 2, 0.0), [[1], [2]], "two people lift 33 kg");
    assert_eq!(packed(&[20.0, 13.0], 45.0, 2, 0.0), [vec![1, 2]]);
    assert_eq!(packed(&[20.0, 17.5], 45.0, 3, 0.0), [vec![1, 2]], "three people lift 37.5 kg");
    assert_eq!(packed(&[10.0, 10.0], 31.5, 1, 2.0), [vec![1, 2]]);
    assert_eq!(packed(&[12.0, 10.0], 31.5, 1, 2.0), [[1], [2]]);
    // First fit: the 4 goes back to the first, which has room again.
    assert_eq!(packed(&[20.0, 12.0, 11.0, 4.0], 25.0, 1, 0.0), [vec![1, 4], vec![2, 3]]);
}

// Worked: people lift 25, 33 and 37.5 kg, one, two and three of them.
#[test]
fn the_carrier_is_named_where_it_takes_less_and_people_where_more_of_them_help_or_none_do() {
    let mut range = demo();
    let mut excess = |accepted: f64, people, kg: f64| {
        let carrier = range.carriers.first_mut().unwrap();
        (carrier.package_most_kg, carrier.people) = (Mass::kg(accepted), people);
        let none = Length::ZERO;
        let package = Package { parts: Vec::new(), mass: Mass::kg(kg), long: none, wide: none, high: none };
        let excess = Most::of(&range, range.carriers.first().unwrap()).excess(&package)?;
        assert!(excess.found.value > excess.allowed.value, "{excess:?}");
        Some((excess.allowed.value, excess.lifted_by))
    };
    // Two lift 33 kg of the 35 that the carrier takes.
    assert_eq!(excess(35.0, 2, 33.0), None);
    assert_eq!(excess(35.0, 2, 34.0), Some((33.0, Some(2))));
    assert_eq!(excess(35.0, 2, 35.0), Some((33.0, Some(2))));
    assert_eq!(excess(35.0, 2, 40.0), Some((35.0, None)));
    // The carrier takes less than two lift, or as much.
    assert_eq!([31.5, 33.0].map(|accepted| excess(accepted, 2, 34.0)), [Some((31.5, None)), Some((33.0, None))]);
    // What two cannot lift either is no less for a carrier with one, and what three cannot lift nobody can.
    assert_eq!(excess(45.0, 1, 30.0), Some((25.0, Some(1))));
    assert_eq!(excess(45.0, 1, 34.0), Some((33.0, Some(2))));
    assert_eq!([1, 2, 3].map(|people| excess(45.0, people, 40.0)), [Some((37.5, Some(3))); 3]);
}

/// Of seeded units every part is in one package; each package is within its carrier's limits, or holds the one part
/// that is not; the mass is that of the parts and of their protection.
#[test]
fn every_part_is_in_one_package() {
    let range = demo();
    let (mut units, mut packages, mut alone) = (0, 0, 0);
    for choice in choices(&range, 29, Wanted::Valid).take(400) {
        let picked = Picked::of(&range, &choice).unwrap();
        let cut = WeighedCase::of(picked, &choice, &Layout::of(picked, &choice).unwrap()).unwrap();
        let bill = Bill::of(&cut);
        let carriage = carriage(&range, &bill).unwrap();
        let mut parts: Vec<PanelId> = carriage.packages.iter().flat_map(|package| package.parts.clone()).collect();
        parts.sort_unstable();
        assert!(parts.iter().eq(cut.case.panels.iter().map(|panel| &panel.id)), "{choice:?}");
        let most = Most::of(&range, carriage.carrier);
        for package in &carriage.packages {
            let of = |id: &PanelId| bill.flat.iter().find(|part| part.id == *id).unwrap();
            let own: Mass = package.parts.iter().map(|id| of(id).mass).sum();
            let faces: Area = package.parts.iter().map(|id| of(id).face).sum();
            let mass = own.in_kg() + faces.in_m2() * 0.4 + 0.8;
            assert!((package.mass.in_kg() - mass).abs() < 1e-9, "{package:?}");
            assert!(most.excess(package).is_none() || package.parts.len() == 1, "{package:?}");
            assert!(package.mass <= range.handling.together(carriage.carrier.people) || package.parts.len() == 1);
        }
        assert_eq!(carriage.refused(&range).is_some(), carriage.packages.iter().any(|one| most.excess(one).is_some()));
        (units, packages, alone) =
            (units + 1, packages + carriage.packages.len(), alone + usize::from(carriage.refused(&range).is_some()));
    }
    assert!(packages > units && alone > 0 && alone < units / 2, "{units} {packages} {alone}");
}
