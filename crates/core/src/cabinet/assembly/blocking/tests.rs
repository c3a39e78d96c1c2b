//! What is passed over does not matter.

use proptest::prelude::*;

use super::*;
use crate::cabinet::assembly::{Bound, solids};
use crate::cabinet::case::Case;
use crate::cabinet::layout::{Layout, Picked};
use crate::rules::sample::{Wanted, choices};
use crate::testing::{cases, demo};

/// The slow twin: the least gap of all pairs of pieces.
fn of_all_pairs(own: &Body, other: &Body, axis: Axis) -> Gaps {
    let pairs = own.pieces().flat_map(|own| other.pieces().map(move |other| (own, other)));
    let facing = pairs.filter(|(own, other)| own.cell.faces(other.cell, axis));
    facing.map(|(own, other)| own.gaps(other, axis)).fold(Gaps::NONE, Gaps::least)
}

proptest! {
    #![proptest_config(cases(10))]

    #[test]
    fn gaps_are_those_of_all_pairs(seed in any::<u64>(), none in 0.0..1.0, reach in 1.0..400.0) {
        let range = demo();
        let choice = choices(&range, seed, Wanted::Valid).next().unwrap();
        let picked = Picked::of(&range, &choice).unwrap();
        let case = Case::of(picked, &choice, &Layout::of(picked, &choice).unwrap()).unwrap();
        for bound in [Bound::Hull, Bound::Core] {
            let bodies: Vec<Body> = case.panels.iter().map(|panel| Body::of_solids(solids(panel, bound))).collect();
            for (own, other) in bodies.iter().flat_map(|own| bodies.iter().map(move |other| (own, other))) {
                for axis in Axis::ALL {
                    let gaps = of_all_pairs(own, other, axis);
                    prop_assert_eq!(Along { axis, none: 0.0, reach: f64::MAX }.between(own, other), gaps);
                    let rounded = gaps.map(|gap| match gap {
                        _ if gap <= none => 0.0,
                        _ if gap >= reach => f64::INFINITY,
                        _ => gap,
                    });
                    prop_assert_eq!(Along { axis, none, reach }.between(own, other), rounded);
                }
            }
        }
    }
}
