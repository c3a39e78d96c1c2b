//! Fit, bearing, buckling, leaning and tipping, each at its edge.

use super::*;
use crate::fit::Clearance;
use crate::layout::{Layout, Picked};
use crate::quantity::{Area, Stress};
use crate::stability::{Leaves, Moments, burdens, carpet};

fn laid<'a>(range: &'a Range, choice: &Choice) -> (Picked<'a>, Layout) {
    let judged = judge(range, choice);
    (judged.picked.unwrap(), judged.layout.unwrap())
}

/// The share of joints too tight is held against the range's figure, finish by finish.
#[test]
fn a_finish_whose_films_vary_too_much_stops() {
    let mut range = demo();
    let choice = changed(&range, "sedge", &[Change::Finish("chalk".parse().unwrap())]);
    let share = |range: &Range, finish: &str| {
        let finish = range.finish(&finish.parse().unwrap()).unwrap();
        Clearance::of(range, range.boards.first().unwrap(), finish).tight()
    };
    assert_eq!(found(&range, &choice).0, []);
    range.fit.film_per_mille = 1000;
    assert!(share(&range, "chalk") > 0.01 && share(&range, "clear") < 0.01);
    let judged = judge(&range, &choice);
    let finding = judged.stops().next().unwrap();
    assert_eq!((finding.rule, finding.parts.as_slice()), (Rule::JointFit, &[PanelId::Top][..]));
    assert!((finding.found.value - share(&range, "chalk") * 100.0).abs() < 0.005);
    // Another finish is a way out; a batch that nobody measured says nothing.
    let mut findings = judged.findings.clone();
    crate::remedy::add(&range, &choice, None, &mut findings);
    assert_eq!(findings.first().unwrap().remedies.first(), Some(&Change::Finish("clear".parse().unwrap())));
    range.boards.first_mut().unwrap().measured_points_mm = None;
    assert_eq!(found(&range, &choice).0, []);
}

/// Outside the wanted window somebody is told; the share is the normal distribution's.
#[test]
fn joints_outside_the_window_are_told() {
    let mut range = demo();
    let choice = start(&range, "sedge");
    let (picked, _) = laid(&range, &choice);
    let fit = Clearance::of(&range, picked.body, picked.finish);
    let share = fit.outside(Length::mm(0.1), Length::mm(0.2));
    assert!(share > 0.05 && share < 0.25, "{share}");
    for (most, told) in [(share + 0.001, false), (share - 0.001, true)] {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a share")]
        let per_mille = (most * 1000.0) as u32;
        range.fit.outside_most_per_mille = per_mille;
        assert_eq!(found(&range, &choice).1.contains(&Rule::JointFit), told, "{most}");
    }
}

/// What ears, pivots, uprights and the back bear: just at its limit passes, a little beyond stops.
#[test]
fn strengths_hold_to_the_last_bit() {
    let base = demo();
    let choice = start(&base, "sedge");
    let (picked, layout) = laid(&base, &choice);
    let stops = |change: &dyn Fn(&mut Range)| {
        let mut range = demo();
        change(&mut range);
        found(&range, &choice).0
    };
    // The shelf of bay 2 by hand: half of 195 kg/m² and its own weight on an ear of 45 % of the depth.
    let span = &layout.bays[1];
    let own = 685.0 * 0.0177;
    let area: Area = span.clear() * layout.clear_depth();
    let force = (195.0 + own) * area.in_m2() / 2.0 * 9.806_65;
    let shear = 1.5 * force / (layout.clear_depth().in_mm() * 0.45 * 17.7);
    let with = |shear: f64, bearing: f64| {
        stops(&|range: &mut Range| {
            let board = &mut range.boards[0];
            // k_mod 0.6 over γ_M 1.2.
            board.shear_n_per_mm2 = Stress::n_per_mm2(shear * 2.0);
            board.bearing_n_per_mm2 = Stress::n_per_mm2(bearing * 2.0);
        })
    };
    assert_eq!(with(shear * 1.000_1, 10.0), []);
    assert_eq!(with(shear * 0.999_9, 10.0), [Rule::ShelfEar]);
    let pressure = force / (layout.clear_depth().in_mm() * 0.45 * layout.body.in_mm() / 2.0);
    assert_eq!(with(10.0, pressure * 1.000_1), []);
    assert!(with(10.0, pressure * 0.999_9).contains(&Rule::ShelfEar));
    assert!(with(10.0, 0.01).contains(&Rule::LeafPivot));
    let _ = picked;
}

#[test]
fn uprights_and_back_hold_to_their_factors() {
    let base = demo();
    let choice = start(&base, "bulrush");
    let (picked, layout) = laid(&base, &choice);
    let critical = super::super::frame::critical(
        layout.clear_depth(),
        layout.clear_height(),
        Length::mm(17.7),
        picked.body.e_along_n_per_mm2 / 1.8,
    );
    // The middle upright carries one bay: four shelves of 244 kg/m² and the top of 80 kg/m², with their own weight.
    let (own, span) = (685.0 * 0.0177, &layout.bays[0]);
    let shelf = (244.0 + own) * (span.clear() * layout.clear_depth()).in_m2();
    let mass = shelf * 4.0 + (80.0 + own) * (span.clear() * layout.depth).in_m2();
    let times = critical.in_newton() / (mass * 9.806_65);
    assert!(times > 3.0, "{times}: the demo range is far from it");
    let stops = |factor: f64, over: f64| {
        let mut range = demo();
        (range.strength.buckling_factor, range.strength.lean_height_over) = (factor, over);
        found(&range, &choice).0
    };
    assert_eq!(stops(times * 0.999_9, 200.0), []);
    assert_eq!(stops(times * 1.000_1, 200.0), [Rule::UprightBuckling]);
    // Leaning: 200 N on the back's width, and twice the clearance.
    let wide = 860.0 - 2.0 * (24.0 - 14.0);
    let leans = 1800.0 * 200.0 / (wide * 17.7 * 620.0) + 0.3;
    assert_eq!(stops(3.0, 1800.0 / leans * 0.999_9), []);
    assert_eq!(stops(3.0, 1800.0 / leans * 1.000_1), [Rule::Lean]);
}

/// Two wide leaves on a shallow unit: exactly at the factor that its moments come to, weighed part by part.
#[test]
fn wide_leaves_on_a_shallow_unit_tip_it() {
    let mut range = demo();
    range.strength.leaf_most_kg = Mass::kg(30.0);
    range.strength.tip_factor = 1.0;
    let leaves = [Change::BayCount(2), fill(1, Fill::Leaf(Hung::Left)), fill(2, Fill::Leaf(Hung::Right))];
    let sizes = [(Change::HeightMm(Dim::mm(900))), Change::WidthMm(Dim::mm(1400)), Change::DepthMm(Dim::mm(360))];
    let choice = changed(&range, "teasel", &[&leaves[..], &sizes[..]].concat());
    let (picked, layout) = laid(&range, &choice);
    let case = Case::of(picked, &choice, &layout).unwrap();
    let parts = case.panels.iter().map(|panel| (panel.id, panel.width, Case::weigh(panel, picked).mass));
    let moments = Moments::of(burdens(picked, &layout, Leaves::Open, parts), carpet(picked, &layout));
    let ratio = moments.holds / moments.tips;
    assert!(ratio > 1.0 && ratio < 4.0, "{ratio}");
    for (factor, rules) in [(ratio * 0.999_9, &[][..]), (ratio * 1.000_1, &[Rule::TipOver])] {
        range.strength.tip_factor = factor;
        assert_eq!(found(&range, &choice).0, rules, "{factor}");
    }
}

/// Every part weighs at least the share of its blank that the first look at tipping counts on.
#[test]
fn most_of_a_blank_is_left() {
    let range = demo();
    for choice in choices(&range, 61, Wanted::Valid).take(80) {
        let (picked, layout) = laid(&range, &choice);
        let case = Case::of(picked, &choice, &layout).unwrap();
        for blank in (crate::blank::Blanks { picked, layout: &layout }).all(&choice) {
            let mass = Case::weigh(case.panel(blank.id).unwrap(), picked).mass;
            let left = mass / blank.most_mass(crate::blank::Coated::of(picked));
            assert!(left > super::super::tip::LEFT, "{} {left} {choice:?}", blank.id);
        }
    }
}
