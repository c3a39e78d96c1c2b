//! Fit, bearing, buckling and tipping, each at its edge.

use super::*;
use crate::cabinet::blank::{Blanks, Coated};
use crate::cabinet::layout::{Layout, Picked};
use crate::rules::finding::Limit;
use crate::statics::fit::Clearance;
use crate::statics::stability::{Leaves, Moments, burdens, carpet};
use crate::units::quantity::{Area, Force, Stress};

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
        Clearance::of(range, range.boards.first().unwrap(), finish).in_most_batches(Clearance::tight)
    };
    assert_eq!(found(&range, &choice).0, []);
    range.fit.film_per_mille = 900;
    assert!(share(&range, "chalk") > 0.01 && share(&range, "clear") < 0.01);
    let judged = judge(&range, &choice);
    let finding = judged.stops().next().unwrap();
    assert_eq!((finding.rule, finding.parts.as_slice()), (Rule::JointFit, &[PanelId::Top][..]));
    assert!((finding.found.value - share(&range, "chalk") * 100.0).abs() < 0.005);
    // Another finish is a way out; a batch that nobody measured stops nothing, and is told.
    let mut findings = judged.findings.clone();
    crate::solver::remedy::add(&range, &choice, None, &mut findings);
    assert_eq!(findings.first().unwrap().remedies.first(), Some(&Change::Finish("clear".parse().unwrap())));
    range.boards.first_mut().unwrap().measured_points_mm = None;
    let (stops, said) = found(&range, &choice);
    assert_eq!((stops, said.contains(&Rule::JointFit)), (vec![], true));
}

/// A mean alone says nothing of the spread within the batch: the range does. With the 0.6 mm that a mill allows within a
/// panel a third of the joints would not go in.
#[test]
fn a_board_with_a_mean_alone_is_judged() {
    let mut range = demo();
    let choice = changed(&range, "sedge", &[Change::Back("birch-12".parse().unwrap())]);
    assert_eq!(found(&range, &choice), (vec![], vec![Rule::PartLength, Rule::WallTether]));
    let thin = range.boards.iter_mut().find(|board| board.key.as_str() == "birch-12").unwrap();
    (thin.measured_mm, thin.measured_points_mm) = (Some(Length::mm(12.0)), None);
    let judged = judge(&range, &choice);
    let finding = judged.stops().next().unwrap();
    assert_eq!((finding.rule, finding.parts.as_slice()), (Rule::JointFit, &[PanelId::Back][..]));
    assert!(finding.found.value > 25.0, "{finding:?}");
    range.fit.within_batch_mm = Length::mm(0.06);
    assert_eq!(found(&range, &choice).0, []);
}

/// Back and top move with the moisture as the range says; at its limit the one that lacks most it is told, and a narrower unit is a way out.
#[test]
fn a_top_that_swells_beyond_its_joints_is_told() {
    let mut range = demo();
    let choice = changed(&range, "sedge", &[Change::WidthMm(Dim::mm(2400)), Change::BayCount(4)]);
    let told = |range: &Range| {
        let findings = crate::order::derive::advise(range, &choice, None);
        findings.into_iter().find(|found| found.rule == Rule::PartMoisture)
    };
    let (picked, layout) = laid(&range, &choice);
    let [(back, lacks), (top, less)] = crate::statics::fit::moisture::over_joints(picked, &layout);
    assert_eq!((back, top), (PanelId::Back, PanelId::Top));
    // The slots of the top are looser.
    let looser = range.build.clearance_loose_mm - range.build.clearance_mm;
    assert!((lacks - less - looser).abs() < Length::mm(1e-3) && looser > Length::mm(0.1));
    // 2 352 mm less an end × 0.045 %, and 0.159 mm of thickness, less the clearance.
    assert!((lacks.in_mm() - 1.057).abs() < 0.01, "{lacks:?}");
    assert_eq!(told(&range), None);
    range.moisture.lacks_most_mm = lacks;
    assert_eq!(told(&range), None);
    range.moisture.lacks_most_mm = lacks - Length::mm(0.02);
    let finding = told(&range).unwrap();
    assert_eq!((finding.severity, finding.parts.as_slice()), (Severity::Warns, &[PanelId::Back][..]));
    let [Change::WidthMm(width)] = finding.remedies[..] else { panic!("{finding:?}") };
    assert!(width < Dim::mm(2400) && width >= Dim::mm(2330), "{width:?}");
}

/// Outside the wanted window somebody is told; the share is the normal distribution's.
#[test]
fn joints_outside_the_window_are_told() {
    let mut range = demo();
    let choice = start(&range, "sedge");
    let (picked, _) = laid(&range, &choice);
    let fit = Clearance::of(&range, picked.body, picked.finish);
    let share = fit.in_most_batches(|fit| fit.outside(Length::mm(0.1), Length::mm(0.2)));
    assert!(share > 0.05 && share < 0.25, "{share}");
    for (most, told) in [(share + 0.001, false), (share - 0.001, true)] {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a share")]
        let per_mille = (most * 1000.0) as u32;
        range.fit.outside_most_per_mille = per_mille;
        assert_eq!(found(&range, &choice).1.contains(&Rule::JointFit), told, "{most}");
    }
}

/// A door that is too wide or too narrow for its height stays one where another plinth or height mends that: the nearest of each.
#[test]
fn a_door_out_of_proportion_names_the_plinth_and_the_height() {
    let range = demo();
    let sizes = |height, plinth: Option<i32>| {
        let plinth = Change::PlinthMm(plinth.map(Dim::mm));
        changed(&range, "sedge", &[Change::HeightMm(Dim::mm(height)), plinth])
    };
    let told = |choice: &Choice| {
        let findings = crate::order::derive::advise(&range, choice, None);
        findings.into_iter().find(|found| found.rule == Rule::LeafShape)
    };
    let wide = sizes(420, Some(150));
    let [Change::PlinthMm(Some(plinth)), Change::HeightMm(height)] = told(&wide).unwrap().remedies[..] else {
        panic!("{:?}", told(&wide))
    };
    let step = Dim::mm(10).in_tenths();
    let is_nearest = |change: Change, nearer: Change| {
        told(&wide.with(&change, &range)).is_none() && told(&wide.with(&nearer, &range)).is_some()
    };
    let higher = Dim::tenths(plinth.in_tenths() + step);
    assert!(plinth < Dim::mm(150) && is_nearest(Change::PlinthMm(Some(plinth)), Change::PlinthMm(Some(higher))));
    let lower = Dim::tenths(height.in_tenths() - step);
    assert!(height > Dim::mm(420) && is_nearest(Change::HeightMm(height), Change::HeightMm(lower)));
    // On its base only the height is left of these.
    let narrow = changed(&range, "teasel", &[Change::HeightMm(Dim::mm(980)), Change::WidthMm(Dim::mm(1000))]);
    let narrow = narrow.with(&Change::BayCount(4), &range);
    let narrow = narrow.with(&Change::Fill { bay: 1, fill: Fill::Leaf(Hung::Left) }, &range);
    let finding = told(&narrow).unwrap();
    let lowers = |change: &Change| matches!(change, Change::HeightMm(height) if *height < Dim::mm(980));
    assert!(finding.limit == Limit::AtLeast && finding.remedies.first().is_some_and(lowers), "{finding:?}");
}

/// What ears and pivots bear: just at its limit passes, a little beyond stops.
#[test]
fn strengths_hold_to_the_last_bit() {
    let base = demo();
    let choice = start(&base, "sedge");
    let (_, layout) = laid(&base, &choice);
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
    // A relief of 3.1 mm lies at its root; it ends half a millimetre before the middle of its divider and its neighbour.
    let long = layout.clear_depth().in_mm() * 0.45 - 3.1;
    let shear = 1.5 * force / (long * 17.7);
    let with = |shear: f64, bearing: f64| {
        stops(&|range: &mut Range| {
            // Hooks and tongues are looked at elsewhere.
            (range.strength.knock_n, range.build.hook_neck_mm) = (Force::ZERO, Length::mm(100.0));
            range.build.detent_rise_mm = Length::ZERO;
            let board = &mut range.boards[0];
            // k_mod 0.6 over γ_M 1.2.
            board.planar_shear_n_per_mm2 = Stress::n_per_mm2(shear * 2.0);
            board.bearing_n_per_mm2 = Stress::n_per_mm2(bearing * 2.0);
        })
    };
    assert_eq!(with(shear * 1.000_1, 10.0), []);
    assert_eq!(with(shear * 0.999_9, 10.0), [Rule::ShelfEar]);
    let deep = (layout.body.in_mm() - 0.5) / 2.0;
    let pressure = force / (long * deep);
    assert_eq!(with(10.0, pressure * 1.000_1), []);
    assert!(with(10.0, pressure * 0.999_9).contains(&Rule::ShelfEar));
    assert!(with(10.0, 0.01).contains(&Rule::LeafPivot));
}

/// Pivots by hand: bare, 17.7 mm thick; the upper one ends half a millimetre and two steps of 2 mm below the face of the top, and its tip
/// is chamfered by 2 mm. A wide leaf
/// presses most on the side of that one, any other on the end of the lower one.
#[test]
fn pivots_bear_where_they_are_cut() {
    let base = demo();
    let wide = [Change::BayCount(2), Change::WidthMm(Dim::mm(2400)), fill(1, Fill::Leaf(Hung::Left))];
    for (changes, is_wide) in [(&[][..], false), (&wide, true)] {
        let choice = changed(&base, "sedge", changes);
        let (picked, layout) = laid(&base, &choice);
        let blanks = Blanks { picked, layout: &layout }.all(&choice);
        let leaf = blanks.iter().find(|blank| blank.id == PanelId::Leaf(1)).unwrap();
        let (weight, (width, height)) = (leaf.most_mass(Coated::of(picked)).weight().in_newton(), leaf.size);
        let pull = weight * (width.in_mm() / 2.0 - 16.0) / height.in_mm();
        let side = pull / (17.7 * (layout.body.in_mm() - 6.5));
        let end = weight / (core::f64::consts::FRAC_PI_4 * 17.7 * 17.7);
        assert_eq!(side > end, is_wide, "{side} {end}");
        for (by, told) in [(1.000_1, false), (0.999_9, true)] {
            let mut range = demo();
            // k_mod 0.6 over γ_M 1.2.
            range.boards[0].bearing_n_per_mm2 = Stress::n_per_mm2(side.max(end) * by * 2.0);
            let stops = judge(&range, &choice).findings;
            assert_eq!(stops.iter().any(|finding| finding.rule == Rule::LeafPivot), told, "{by}");
        }
    }
}

/// The middle upright of a tall unit by hand: twist and bending along the back, then a column between two hooks.
#[test]
fn uprights_hold_to_their_factor() {
    let base = demo();
    let choice = start(&base, "bulrush");
    let (_, layout) = laid(&base, &choice);
    // Four shelves of 244 kg/m² and the top of 80 kg/m², with their own weight, a bay's worth on the middle upright.
    let (own, span) = (685.0 * 0.0177, &layout.bays[0]);
    let shelf = (244.0 + own) * (span.clear() * layout.clear_depth()).in_m2() * 9.806_65;
    let top = (80.0 + own) * (span.clear() * layout.depth).in_m2() * 9.806_65;
    let (deep, high, inertia) =
        (layout.clear_depth().in_mm(), layout.clear_height().in_mm(), 17.7 * 17.7 * 17.7 / 12.0);
    let square = core::f64::consts::PI * core::f64::consts::PI;
    let twist_and_bend = 4.0 * 620.0 / deep + square * 10_048.0 * deep / (3.0 * high * high);
    // Slots take the front 45 %: the mean of (y/b)² there is (1 − 0.55³) / 1.35.
    let held = |slot: f64, load: f64| {
        twist_and_bend * inertia / 1.8 / ((1.0 - libm::pow(1.0 - slot, 3.0)) / (3.0 * slot)) / load
    };
    // Four hooks, a quarter of the height apart.
    let free =
        |slot: f64, load: f64| square * 10_048.0 / 1.8 * inertia * deep * (1.0 - slot) / (high * high / 16.0) / load;
    let stops = |slot: u32, factor: f64| {
        let mut range = demo();
        (range.build.shelf_slot_per_mille, range.strength.buckling_factor) = (slot, factor);
        found(&range, &choice).0
    };
    let times = held(0.45, 4.0 * shelf + top);
    assert!(
        times > 3.0 && times < free(0.45, 4.0 * shelf + top),
        "{times}: twist decides, the demo range is far from it"
    );
    assert_eq!(stops(450, times * 0.999_9), []);
    assert_eq!(stops(450, times * 1.000_1), [Rule::UprightBuckling]);
    // Deep slots leave a narrow column.
    let times = free(0.9, 4.0 * shelf + top);
    assert!(times < held(0.9, 4.0 * shelf + top), "{times}");
    assert_eq!(stops(900, times * 0.999_9), []);
    assert_eq!(stops(900, times * 1.000_1), [Rule::UprightBuckling]);
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
