use proptest::prelude::*;

use super::push::{Towards, least, pushes};
use super::*;
use crate::cabinet::case::{Case, Weighed};
use crate::choice::change::Change;
use crate::choice::{Choice, Fill};
use crate::rules::judge;
use crate::rules::sample::{Wanted, choices};
use crate::testing::demo;
use crate::units::quantity::Dim;

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

/// The narrow tall shelf that a hand tips over: from its whole mass and centre, about 26 N to the front, 27 N to a side.
#[test]
fn a_hand_tips_a_narrow_tall_shelf() {
    let range = demo();
    let model = range.models.iter().find(|model| model.key.as_str() == "bulrush").unwrap();
    let [width, height, depth] = [400, 2200, 340].map(Dim::mm);
    let open = Change::Fill { bay: 1, fill: Fill::Open };
    let sizes = [Change::WidthMm(width), Change::HeightMm(height), Change::DepthMm(depth)];
    let changes = [Change::BayCount(1), open].into_iter().chain(sizes);
    let starting = Choice::starting(model).unwrap();
    let choice = changes.fold(starting, |choice, change| choice.with(&change, &range));
    let judged = judge(&range, &choice);
    let (picked, layout) = (judged.picked.unwrap(), judged.layout.unwrap());
    let case = Case::of(picked, &choice, &layout).unwrap();
    let whole = Weighed::whole(&case.weigh_parts(picked));
    let by_hand = |arm: Length| whole.mass.weight().in_newton() * arm.in_mm() / 2200.0;
    let (x, y) = (whole.centre.x, whole.centre.y - Length::mm(12.0));
    let wanted = [by_hand(y), by_hand(Length::mm(340.0 - 12.0) - y), by_hand(x), by_hand(Length::mm(400.0) - x)];
    let found = pushes(picked, &choice, &layout, &case.weigh_parts(picked));
    for (push, wanted) in found.iter().zip(wanted) {
        assert!((push.empty.in_newton() - wanted).abs() < 1e-9, "{push:?} {wanted}");
        // The top's 80 kg/m² stand 158 to 200 mm within each edge.
        let more = (push.loaded - push.empty).in_newton() * 2200.0 / (80.0 * 0.4 * 0.34 * 9.806_65);
        assert!((157.9..200.1).contains(&more), "{push:?} {more}");
    }
    let [front, _, left, _] = found.map(|push| push.empty.in_newton());
    assert!((25.5..26.5).contains(&front) && (26.0..27.0).contains(&left), "{front} {left}");
    assert_eq!(least(found).towards, Towards::Front);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    /// No combination of open leaves and of bays that are loaded or not lets a smaller push tip it.
    #[test]
    fn no_other_state_takes_a_smaller_push(seed in any::<u64>()) {
        let range = demo();
        for choice in choices(&range, seed, Wanted::Valid).take(3) {
            let judged = judge(&range, &choice);
            let (picked, layout) = (judged.picked.unwrap(), judged.layout.unwrap());
            let case = Case::of(picked, &choice, &layout).unwrap();
            let found = pushes(picked, &choice, &layout, &case.weigh_parts(picked));
            let least = least(found);
            prop_assert!(found.iter().all(|push| push.loaded >= push.empty));
            let (width, recess) = (layout.width.in_mm(), edge(&range.build).in_mm());
            let mut smallest = f64::MAX;
            for open in 0..1_u8 << choice.bays.len() {
                // Turned about its axis by a right angle, leaf by leaf.
                let at = |panel: &crate::cabinet::panel::Panel| {
                    let part = Case::weigh(panel, picked);
                    let (x, y) = (part.centre.x.in_mm(), part.centre.y.in_mm());
                    let turned = match panel.id {
                        PanelId::Leaf(bay) if open >> (bay - 1) & 1 == 1 => {
                            let axis = panel.features.iter().find_map(|feature| match feature {
                                crate::cabinet::panel::Feature::Pivot { at, .. } => Some(panel.case_from_panel.origin.x + *at),
                                _ => None,
                            });
                            let axis = axis.unwrap().in_mm();
                            (axis, y - (x - axis).abs())
                        }
                        _ => (x, y),
                    };
                    (part.mass.weight().in_newton(), turned)
                };
                let parts: Vec<_> = case.panels.iter().map(at).collect();
                let moments = parts.iter().fold([0.0; 3], |[front, left, right], (force, (x, y))| {
                    [front + force * (y - recess), left + force * x, right + force * (width - x)]
                });
                let push = |moment: f64| moment.max(0.0) / layout.height.in_mm();
                smallest = moments.into_iter().map(push).fold(smallest, f64::min);
            }
            // Each side has a state in which every leaf stands as it holds least there.
            prop_assert!((least.empty.in_newton() - smallest).abs() < 1e-9);
        }
    }

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
            let whole = Weighed::whole(&case.weigh_parts(picked));
            let exact = whole.mass.weight().in_newton() * (whole.centre.y - edge(&range.build)).in_m();
            let found = Moments::of(all, 0.0).left();
            prop_assert!((found - exact).abs() < exact * 0.03, "{found} {exact}");
        }
    }
}
