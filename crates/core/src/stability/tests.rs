use proptest::prelude::*;

use super::*;
use crate::case::Case;
use crate::choice::{Choice, Fill};
use crate::rules::judge;
use crate::sample::{Wanted, choices};
use crate::testing::demo;

fn at(kg: f64, behind: f64, up: f64) -> Burden {
    Burden { mass: Mass::kg(kg), behind: Length::mm(behind), up: Length::mm(up) }
}

/// What the range lays shelves and base out for, spread over them.
fn loads(picked: Picked<'_>, layout: &Layout, choice: &Choice) -> Vec<Burden> {
    let depth = layout.clear_depth();
    let behind = (layout.upright_front + layout.back_front) / 2.0 - edge(&picked.range.build);
    let on = |width: Length, up: Length| {
        let mass = Mass::kg(picked.model.shelf_load_kg_per_m2.in_kg_per_m2() * (width * depth).in_m2());
        Burden { mass, behind, up }
    };
    let bays = layout.bays.iter().zip(&choice.bays);
    bays.flat_map(|(span, bay)| {
        let shelves = span.shelves.iter().map(|under| *under + layout.body);
        // Behind a leaf and on the base things stand as well.
        let floors = [layout.floor].into_iter().filter(|_| bay.fill != Fill::Open).chain(shelves);
        floors.map(|up| on(span.clear(), up)).collect::<Vec<_>>()
    })
    .collect()
}

// Worked with g = 9.81: a carcass of 32 kg at 0.20 m, two leaves of 4 kg, 0.45 m wide, hung at the edge and opened
// square: 45.126 N·m; a load of 112.8 N at 0.40 m before it, or 30.08 N to the front at 1.5 m, tips it; with its
// centre 0.90 m up it tips at 7.282°.
#[test]
fn open_leaves_by_hand() {
    let burdens = [at(32.0, 200.0, 900.0), at(4.0, -225.0, 900.0), at(4.0, -225.0, 900.0)];
    let moments = Moments::of(burdens, 0.0);
    let per_g = 45.126 / 9.81 * 9.806_65;
    assert!((moments.left() - per_g).abs() < 1e-3, "{moments:?}");
    let critical = moments.with(Force::newton(112.815 * 9.806_65 / 9.81), Length::mm(-400.0));
    assert!(critical.left().abs() < 1e-3);
    assert!((steepest(&burdens) - libm::tan(7.282_f64.to_radians())).abs() < 1e-5);
    let slope = steepest(&burdens);
    assert!(Moments::of(burdens, slope * 0.999).left() > 0.0 && Moments::of(burdens, slope * 1.001).left() < 0.0);
}

// A uniform block 52 in high and 15 in wide tips at atan(7.5/26) = 16.091°.
#[test]
fn a_block_on_a_slope() {
    let slope = steepest(&[at(50.0, 190.5, 660.4)]);
    assert!((libm::atan(slope).to_degrees() - 16.091).abs() < 5e-4);
}

// A chest, with g = 9.8: body 35.97 kg at 0.24 m, three shut drawers of 9.25 kg there, one open at −0.24 m, somebody
// who climbs at −0.55 m. With the 23 kg that the text states 4.143 N·m are left; its printed answer, −22.85 N·m,
// took 28 kg and a body of 35.95 kg.
#[test]
fn a_chest_whose_answer_hangs_on_a_figure() {
    let left = |body: f64, climber: f64| {
        let drawers = [at(9.25, 240.0, 0.0); 3];
        let others = [at(body, 240.0, 0.0), at(9.25, -240.0, 0.0), at(climber, -550.0, 0.0)];
        Moments::of(drawers.into_iter().chain(others), 0.0).left() / 9.806_65 * 9.8
    };
    assert!((left(35.97, 23.0) - 4.143).abs() < 1e-3, "{}", left(35.97, 23.0));
    assert!((left(35.95, 28.0) + 22.85).abs() < 5e-3, "{}", left(35.95, 28.0));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    /// Of all combinations of open leaves, empty or loaded, none is worse than all leaves open and nothing in it; on
    /// any floor that falls to the front.
    #[test]
    fn empty_with_all_leaves_open_is_the_worst(seed in any::<u64>(), slope in 0.0..0.2_f64) {
        let range = demo();
        for choice in choices(&range, seed, Wanted::Valid).take(3) {
            let judged = judge(&range, &choice);
            let (picked, layout) = (judged.picked.unwrap(), judged.layout.unwrap());
            let case = Case::of(picked, &choice, &layout).unwrap();
            let parts = || case.panels.iter().map(|panel| (panel.id, panel.width, Case::weigh(panel, picked).mass));
            let left = |leaves, loaded: bool| {
                let mut all: Vec<_> = burdens(picked, &layout, leaves, parts()).collect();
                if loaded {
                    all.extend(loads(picked, &layout, &choice));
                }
                Moments::of(all, slope).left()
            };
            let worst = left(Leaves::Open, false);
            for open in 0..1_u8 << choice.bays.len() {
                prop_assert!(left(Leaves::Of(open), false) >= worst - 1e-9, "{open:b}");
                // A load high up on a steep floor tips as well: only on floors that carpets make is it always a help.
                if slope < 0.03 {
                    prop_assert!(left(Leaves::Of(open), true) >= worst - 1e-9, "{open:b} loaded");
                }
            }
        }
    }

    /// The middle of a part's rectangle is near its centre of gravity, and so is the moment of the whole.
    #[test]
    fn burdens_are_where_the_parts_are(seed in any::<u64>()) {
        let range = demo();
        for choice in choices(&range, seed, Wanted::Valid).take(3) {
            let judged = judge(&range, &choice);
            let (picked, layout) = (judged.picked.unwrap(), judged.layout.unwrap());
            let case = Case::of(picked, &choice, &layout).unwrap();
            let parts = case.panels.iter().map(|panel| (panel.id, panel.width, Case::weigh(panel, picked).mass));
            let all = burdens(picked, &layout, Leaves::Shut, parts);
            let whole = case.weigh_all(picked);
            let exact = whole.mass.weight().in_newton() * (whole.centre.y - edge(&range.build)).in_m();
            let found = Moments::of(all, 0.0).left();
            prop_assert!((found - exact).abs() < exact * 0.03, "{found} {exact}");
        }
    }
}
