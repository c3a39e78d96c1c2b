//! Published examples, and random things against all parts of them.

use proptest::prelude::*;

use super::*;

/// Wishes by their numbers, from 1: whether those that are kept hold for some world.
struct Wishes {
    count: usize,
    holds: fn(&dyn Fn(usize) -> bool) -> bool,
}

impl Wishes {
    fn conflict(&self, order: &[usize]) -> Vec<usize> {
        let mut found = conflict(order, &mut |kept: &[usize]| (self.holds)(&|wish| kept.contains(&wish)));
        found.sort_unstable();
        found
    }

    fn diagnosis(&self, order: &[usize]) -> Option<Vec<usize>> {
        let mut found = diagnosis(order, &mut |kept: &[usize]| (self.holds)(&|wish| kept.contains(&wish)))?;
        found.sort_unstable();
        Some(found)
    }

    /// The numbers, up and down.
    fn orders(&self) -> [Vec<usize>; 2] {
        [(1..=self.count).collect(), (1..=self.count).rev().collect()]
    }
}

/// What kept things cost together.
fn cost(costs: &[u32], first: usize, kept: &dyn Fn(usize) -> bool) -> u32 {
    (first..).zip(costs).filter(|(wish, _)| kept(*wish)).map(|(_, cost)| cost).sum()
}

// Source: Junker, "QuickXplain", AAAI 2004, tables 1 and 2: options of 500, 500, 800, 500 and 2600 within 3000.
// Conflicts {1,5}, {2,5}, {3,5}, {4,5}; diagnoses {5} and {1,2,3,4}.
#[test]
fn the_car_has_its_published_conflicts() {
    let car = Wishes { count: 5, holds: |kept| cost(&[500, 500, 800, 500, 2600], 1, kept) <= 3000 };
    let [up, down] = car.orders();
    assert_eq!((car.conflict(&up), car.conflict(&down)), (vec![1, 5], vec![4, 5]));
    assert_eq!((car.diagnosis(&down), car.diagnosis(&up)), (Some(vec![5]), Some(vec![1, 2, 3, 4])));
}

// Source: O'Sullivan, Papadopoulos, Faltings and Pu, "Representative explanations", AAAI 2007: a budget of 3000,
// a roof rack 500, a convertible 500, a player 500, leather 2600; no rack on a convertible. Diagnoses {1,2}, {1,3},
// {2,5}, {3,5}, {2,3,4}.
#[test]
fn the_convertible_has_its_published_conflicts() {
    let car = Wishes {
        count: 5,
        holds: |kept| (!kept(1) || cost(&[500, 500, 500, 2600], 2, kept) <= 3000) && !(kept(2) && kept(3)),
    };
    let [up, down] = car.orders();
    assert_eq!(car.conflict(&up), [2, 3]);
    assert_eq!((car.diagnosis(&down), car.diagnosis(&up)), (Some(vec![3, 5]), Some(vec![1, 2])));
}

// Source: TU Graz, two test models of conflict detection: x, y in -10..10, x > 1, x < y, x < 1, y = -10. Conflicts
// {1,3}, {2,4}; diagnoses {1,2}, {1,4}, {2,3}, {3,4}.
#[test]
fn the_first_model_has_its_published_conflicts() {
    let model = Wishes {
        count: 4,
        holds: |kept| {
            let worlds = (-10..=10).flat_map(|x| (-10..=10).map(move |y| [x > 1, x < y, x < 1, y == -10]));
            worlds.into_iter().any(|world| (1..).zip(world).all(|(wish, holds)| holds || !kept(wish)))
        },
    };
    assert_eq!((model.conflict(&[1, 2, 3, 4]), model.conflict(&[4, 2, 3, 1])), (vec![1, 3], vec![2, 4]));
    assert_eq!((model.diagnosis(&[1, 2, 3, 4]), model.diagnosis(&[3, 4, 1, 2])), (Some(vec![1, 2]), Some(vec![3, 4])));
}

// Source: as before, the second one: v1, v2, v3 in 1..3 and seven wishes. Conflicts {1,2}, {2,4}, {3,6}; diagnoses
// {2,3}, {2,6}, {1,3,4}, {1,4,6}.
#[test]
fn the_second_model_has_its_published_conflicts() {
    let model = Wishes {
        count: 7,
        holds: |kept| {
            let worlds = (1..=3).flat_map(|a| (1..=3).flat_map(move |b| (1..=3).map(move |c| (a, b, c))));
            let mut worlds = worlds.map(|(a, b, c)| [b == 1, b > 2, c == 1, b < 2, a > 2, c > 2, a > 1]);
            worlds.any(|world| (1..).zip(world).all(|(wish, holds)| holds || !kept(wish)))
        },
    };
    let [up, down] = model.orders();
    assert_eq!(model.conflict(&up), [1, 2]);
    assert_eq!((model.diagnosis(&up), model.diagnosis(&down)), (Some(vec![2, 3]), Some(vec![2, 6])));
}

proptest! {
    /// Both are what they say of any things that hold or do not, as bits: enough, and nothing of them in vain.
    #[test]
    fn nothing_is_named_in_vain(forbidden in proptest::collection::vec(0..256_u32, 0..6), order in Just((0..8_u32).collect::<Vec<_>>()).prop_shuffle()) {
        let bits = |things: &[u32]| things.iter().fold(0, |all, thing| all | 1 << thing);
        let holds = |kept: &[u32]| !forbidden.iter().any(|together| bits(kept) & together == *together);
        let without = |things: &[u32], left: &[u32]| things.iter().copied().filter(|thing| !left.contains(thing)).collect::<Vec<_>>();
        let found = conflict(&order, &mut |kept: &[u32]| holds(kept));
        prop_assert_eq!(holds(&found), holds(&order));
        prop_assert!(holds(&order) || found.iter().all(|thing| holds(&without(&found, &[*thing]))));
        match diagnosis(&order, &mut |kept: &[u32]| holds(kept)) {
            None => prop_assert!(!holds(&[])),
            Some(gone) => {
                prop_assert!(holds(&without(&order, &gone)));
                prop_assert!(gone.iter().all(|thing| !holds(&without(&order, &without(&gone, &[*thing])))));
            }
        }
    }
}
