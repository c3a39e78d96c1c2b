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
    packages.iter().map(|package| package.parts.iter().map(|part| number(&part.id)).collect()).collect()
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
        let outer = Outer { mass: Mass::kg(kg), long: none, wide: none, high: none };
        let excess = Most::of(&range, range.carriers.first().unwrap()).excess(outer)?;
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

/// Parts of 1 kg laid into one package, each by its length, width and thickness, and the bill of them.
fn stacked(range: &Range, parts: &[[f64; 3]]) -> (Package, Bill) {
    let flat = (1..).zip(parts).map(|(number, [long, wide, thick])| {
        let (wide, thick) = (Length::mm(*wide), Length::mm(*thick));
        FlatPart { wide, thick, ..part(number, 1.0, *long) }
    });
    let bill = Bill { flat: flat.collect(), ..Bill::default() };
    let mut package = Package::empty(range);
    for part in &bill.flat {
        package.lay(part, package.next(part, range));
    }
    (package, bill)
}

/// In which layer each part lies, how far along and across, and the package's length, width and height.
fn figures(package: &Package) -> (Vec<(usize, f64, f64)>, [Length; 3]) {
    let Outer { long, wide, high, .. } = package.outer;
    let places = package.parts.iter().map(|part| (part.layer, part.along.in_mm(), part.across.in_mm()));
    (places.collect(), [long, wide, high])
}

fn laid(parts: &[[f64; 3]]) -> (Vec<(usize, f64, f64)>, [Length; 3]) {
    figures(&stacked(&demo(), parts).0)
}

fn laid_again(parts: &[[f64; 3]]) -> (Vec<(usize, f64, f64)>, [Length; 3]) {
    let range = demo();
    let (package, bill) = stacked(&range, parts);
    figures(&package.laid_again(&range, &bill))
}

// Worked: on a plate of 1000 × 400 two shelves of 450 lie end to end in a row of 300; a stile of 100 finds the room beside
// them, the next one has to go on top, and what is thicker makes its layer thicker.
#[test]
fn small_parts_lie_side_by_side_over_a_large_one() {
    let parts = [
        [1000.0, 400.0, 18.0],
        [450.0, 300.0, 18.0],
        [450.0, 300.0, 18.0],
        [900.0, 100.0, 18.0],
        [900.0, 100.0, 18.0],
        [900.0, 100.0, 24.0],
    ];
    let (places, outer) = laid(&parts);
    let expected = [(0, 0.0, 0.0), (1, 0.0, 0.0), (1, 450.0, 0.0), (1, 0.0, 300.0), (2, 0.0, 0.0), (2, 0.0, 100.0)];
    assert_eq!(places, expected);
    assert_eq!(outer, [1000.0, 400.0, 18.0 + 18.0 + 24.0].map(Length::mm));
    // A longer part makes the package longer, and then others find room behind those that lie there.
    let (places, outer) = laid(&[[450.0, 300.0, 18.0], [900.0, 200.0, 18.0], [450.0, 300.0, 18.0]]);
    assert_eq!(places, [(0, 0.0, 0.0), (1, 0.0, 0.0), (0, 450.0, 0.0)]);
    assert_eq!(outer, [900.0, 300.0, 36.0].map(Length::mm));
}

// Worked: of strips 60 wide and 20 thick six on each other are 120 high, as two rows are wide.
#[test]
fn narrow_parts_alone_make_no_tower() {
    let (places, outer) = laid(&[[800.0, 60.0, 20.0]; 13]);
    let layers: Vec<usize> = places.iter().map(|(layer, ..)| *layer).collect();
    assert_eq!(layers, [0, 1, 2, 3, 4, 5, 0, 1, 2, 3, 4, 5, 6]);
    assert_eq!(outer, [800.0, 120.0, 140.0].map(Length::mm));
}

// Worked: laid by mass seven shelves make seven layers, since none is longer than the package so far, and the stiles one more.
// Of known length 1877 three stiles of 64 lie side by side, 192 wide, and three shelves of 525 end to end, 1575 long.
#[test]
fn what_lies_in_a_package_is_laid_again_by_its_length() {
    let (shelf, stile) = ([525.0, 275.0, 18.0], [1877.0, 64.0, 18.0]);
    let parts = [&[shelf; 7][..], &[stile; 3]].concat();
    let (places, outer) = laid(&parts);
    assert_eq!(places[..7], [0, 1, 2, 3, 4, 5, 6].map(|layer| (layer, 0.0, 0.0)));
    assert_eq!(outer, [1877.0, 275.0, 8.0 * 18.0].map(Length::mm));
    let (places, outer) = laid_again(&parts);
    let stiles = [(0, 0.0, 0.0), (0, 0.0, 64.0), (0, 0.0, 128.0)];
    let shelves = [1, 1, 1, 2, 2, 2, 3].into_iter().zip([0.0, 525.0, 1050.0].into_iter().cycle());
    assert_eq!(places[..3], stiles);
    assert!(places[3..].iter().copied().eq(shelves.map(|(layer, along)| (layer, along, 0.0))), "{places:?}");
    assert_eq!(outer, [1877.0, 275.0, 4.0 * 18.0].map(Length::mm));
}

// Worked: on a plate of 1000 × 400 lies a shelf of 600 × 300: behind it three rails of 100 lie side by side, and two end to end in the 100
// beside it. As they came one rail lay behind it and two beside it, and two had to go on top.
#[test]
fn rails_lie_side_by_side_behind_a_shelf() {
    let parts = [&[[1000.0, 400.0, 18.0], [600.0, 300.0, 18.0]][..], &[[400.0, 100.0, 18.0]; 5]].concat();
    assert_eq!(laid(&parts).1, [1000.0, 400.0, 54.0].map(Length::mm));
    let (places, outer) = laid_again(&parts);
    let rails = [(600.0, 0.0), (600.0, 100.0), (600.0, 200.0), (0.0, 300.0), (400.0, 300.0)];
    let rails = rails.map(|(along, across)| (1, along, across));
    assert_eq!(places, [&[(0, 0.0, 0.0), (1, 0.0, 0.0)][..], &rails].concat());
    assert_eq!(outer, [1000.0, 400.0, 36.0].map(Length::mm));
}

// Worked: by length the row on the plate is 200 wide, too narrow for what is 300; by mass it is 300 wide and takes both.
#[test]
fn what_would_be_higher_is_left_as_it_was_laid() {
    let parts = [[1000.0, 400.0, 18.0], [400.0, 300.0, 18.0], [500.0, 200.0, 18.0]];
    let (places, outer) = laid_again(&parts);
    assert_eq!(places, [(0, 0.0, 0.0), (1, 0.0, 0.0), (1, 400.0, 0.0)]);
    assert_eq!(outer, [1000.0, 400.0, 36.0].map(Length::mm));
    assert_eq!((places, outer), laid(&parts));
}

/// Of seeded units every part is in one package and all of it within that, and no two lie in one place. The package is as large as
/// they need it, and never larger than if each had a layer of its own, but for its width where that makes it lower; nor is it higher or
/// wider than if its parts lay as they came into it. Each package is within its carrier's limits, or holds the one part that is not; the
/// mass is that of the parts and of their protection.
#[test]
fn every_part_is_in_one_package() {
    let range = demo();
    let (mut units, mut packages, mut alone, mut lower, mut again) = (0, 0, 0, 0, 0);
    for choice in choices(&range, 29, Wanted::Valid).take(400) {
        let picked = Picked::of(&range, &choice).unwrap();
        let cut = WeighedCase::of(picked, &choice, &Layout::of(picked, &choice).unwrap()).unwrap();
        let bill = Bill::of(&cut);
        let carriage = carriage(&range, &bill).unwrap();
        let laid = carriage.packages.iter().flat_map(|package| &package.parts);
        let mut parts: Vec<PanelId> = laid.map(|part| part.id).collect();
        parts.sort_unstable();
        assert!(parts.iter().eq(cut.case.panels.iter().map(|panel| &panel.id)), "{choice:?}");
        let most = Most::of(&range, carriage.carrier);
        for package in &carriage.packages {
            let flat: Vec<&FlatPart> =
                package.parts.iter().filter_map(|laid| bill.flat.iter().find(|part| part.id == laid.id)).collect();
            let own: Mass = flat.iter().map(|part| part.mass).sum();
            let faces: Area = flat.iter().map(|part| part.face).sum();
            let mass = own.in_kg() + faces.in_m2() * 0.4 + 0.8;
            assert!((package.outer.mass.in_kg() - mass).abs() < 1e-9, "{package:?}");
            let alone = package.parts.len() == 1;
            lower += usize::from(lies_well(package, &flat));
            again += usize::from(is_lower_than_as_it_came(package, &range, &bill));
            assert!(most.excess(package.outer).is_none() || alone, "{package:?}");
            assert!(package.outer.mass <= range.handling.together(carriage.carrier.people) || alone);
        }
        assert_eq!(
            carriage.refused(&range).is_some(),
            carriage.packages.iter().any(|one| most.excess(one.outer).is_some())
        );
        (units, packages, alone) =
            (units + 1, packages + carriage.packages.len(), alone + usize::from(carriage.refused(&range).is_some()));
    }
    assert!(packages > units && alone > 0 && alone < units / 2, "{units} {packages} {alone}");
    assert!(lower > packages / 3, "{lower} of {packages} are lower than a stack");
    assert!(again > packages / 40, "{again} of {packages} are lower than as they came");
}

/// Whether a package is lower than if each of its parts, the heaviest first, lay where there was room for it when it came; else it
/// stops if it is higher or wider, or weighs anything else.
fn is_lower_than_as_it_came(package: &Package, range: &Range, bill: &Bill) -> bool {
    let mut first = Package::empty(range);
    for part in bill.flat.iter().filter(|part| package.parts.iter().any(|laid| laid.id == part.id)) {
        first.lay(part, first.next(part, range));
    }
    let (found, came) = (package.outer, first.outer);
    let widths =
        bill.flat.iter().filter(|part| first.parts.iter().any(|laid| laid.id == part.id)).map(|part| part.wide);
    assert!((came.wide - widths.fold(came.high, Length::max)).in_mm() < 1e-9, "{first:?}");
    assert!(found.high <= came.high && found.wide <= came.wide, "{package:?} {first:?}");
    assert_eq!((found.mass, found.long), (came.mass, came.long));
    (came.high - found.high).in_mm() > 1e-6
}

/// Whether parts that lie within their package and beside each other make it lower than a stack of them; else it stops.
fn lies_well(package: &Package, flat: &[&FlatPart]) -> bool {
    let Outer { long, wide, high, .. } = package.outer;
    let places: Vec<(&Laid, &FlatPart)> = package.parts.iter().zip(flat.iter().copied()).collect();
    let nothing = 1e-9;
    for (at, (one, part)) in places.iter().enumerate() {
        let (end, side) = (one.along + part.long, one.across + part.wide);
        assert!(one.along >= Length::ZERO && one.across >= Length::ZERO, "{package:?}");
        assert!((end - long).in_mm() < nothing && (side - wide).in_mm() < nothing, "{package:?}");
        for (other, its) in places.iter().skip(at + 1).filter(|(other, _)| other.layer == one.layer) {
            let beside = |from: Length, to: Length, its_from: Length, its_to: Length| {
                (from - its_to).in_mm() > -nothing || (its_from - to).in_mm() > -nothing
            };
            let along = beside(one.along, end, other.along, other.along + its.long);
            assert!(along || beside(one.across, side, other.across, other.across + its.wide), "{package:?}");
        }
    }
    let layers = places.iter().map(|(laid, _)| laid.layer + 1).max().unwrap();
    let thickest = |layer| {
        let of = places.iter().filter(|(laid, _)| laid.layer == layer).map(|(_, part)| part.thick);
        of.reduce(Length::max).unwrap()
    };
    let stack: Length = flat.iter().map(|part| part.thick).sum();
    assert!(((0..layers).map(thickest).sum::<Length>() - high).in_mm().abs() < nothing, "{package:?}");
    assert!((high - stack).in_mm() < nothing, "{package:?}");
    assert_eq!(long, flat.iter().map(|part| part.long).reduce(Length::max).unwrap());
    assert!(wide >= flat.iter().map(|part| part.wide).reduce(Length::max).unwrap(), "{package:?}");
    (stack - high).in_mm() > nothing
}

// Worked: one person carries 25 kg and 1600 mm, two 33 kg.
#[test]
fn length_is_the_reason_where_fewer_could_carry_the_mass() {
    let handling = demo().handling;
    let is_for_length = |kg: f64, long: f64| handling.is_for_length(Mass::kg(kg), Length::mm(long));
    assert_eq!([1.5, 25.0, 25.1, 40.0].map(|kg| is_for_length(kg, 1601.0)), [true, true, false, false]);
    assert!(!is_for_length(1.5, 1600.0));
}
