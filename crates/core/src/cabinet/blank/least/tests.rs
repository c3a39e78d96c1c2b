use proptest::prelude::*;

use super::*;
use crate::cabinet::case::Case;
use crate::range::Range;
use crate::rules::sample::{Wanted, choices};
use crate::rules::{Rule, judge, judge_stops};
use crate::statics::stability::{Leaves, Moments, burdens, carpet};
use crate::testing::DEMO;

/// The demo range with other values for some keys, wherever they stand.
fn edited(values: &[(&str, String)]) -> Range {
    // The section of bows has keys of the same names.
    let mut in_bow = false;
    let line = |line: &str| {
        in_bow = line == "[bow]" || in_bow && line != "[cutting]";
        let other = values
            .iter()
            .filter(|(key, _)| in_bow == BOW.contains(key))
            .find(|(key, _)| line.starts_with(key) && line[key.len()..].starts_with(" = "));
        other.map_or_else(|| line.into(), |(key, value)| format!("{key} = {value}"))
    };
    let text: Vec<String> = DEMO.lines().map(line).collect();
    Range::parse(&text.join("\n")).unwrap()
}

/// Keys of the section of bows.
const BOW: [&str; 3] = ["inset_mm", "gap_mm", "behind_mm"];

/// Depth of a stop, rise of its detent, width of a leaf over its height at most.
const STOPS: [(f64, f64, f64); 4] = [(80.0, 0.0, 20.0), (90.0, 0.0, 20.0), (130.0, 1.2, 1.6), (300.0, 1.8, 1.2)];

/// Figures that a range may have and nobody would: slots nearly through, wide stiles, long tabs, thick cutters.
fn absurd() -> impl Strategy<Value = Range> {
    let of = |values: &'static [f64]| proptest::sample::select(values);
    let lengths = (of(&[50.0, 450.0, 900.0]), of(&[3.2, 9.6]), of(&[24.4, 60.0, 300.0]), of(&[0.0, 36.0, 300.0]));
    let fronts = (of(&[60.0, 90.0, 200.0]), of(&[21.5, 30.0, 200.0]), of(&[0.0, 0.5, 1.0]), of(&[25.0, 60.0, 200.0]));
    // Deep enough for a detent or not: leaves lean too far for one where they may be as wide as they like.
    let stops = proptest::sample::select(&STOPS);
    let rest = (of(&[0.0, 0.15, 2.0]), of(&[0.0, 34.0, 60.0]), of(&[0.0, 10.9, 100.0]), of(&[1.0, 1.2, 3.0, 10.0]));
    (lengths, fronts, rest, stops).prop_map(|(lengths, fronts, rest, (stop, detent, widest))| {
        let ((slot, cutter, tab, inset), (stile, front, recess, chase)) = (lengths, fronts);
        let (clearance, finger, carpet, factor) = rest;
        edited(&[
            ("shelf_slot_per_mille", slot.to_string()),
            ("cutter_mm", cutter.to_string()),
            ("tab_mm", tab.to_string()),
            ("tab_inset_mm", inset.to_string()),
            ("stile_mm", stile.to_string()),
            ("stop_depth_mm", stop.to_string()),
            ("detent_rise_mm", detent.to_string()),
            ("detent_travel_mm", "3".into()),
            ("front_inset_mm", front.to_string()),
            ("foot_recess_mm", (front * recess).min(200.0 - clearance).to_string()),
            ("plinth_toe_mm", ((front * recess).min(200.0 - clearance) + clearance).to_string()),
            ("chase_mm", chase.to_string()),
            ("clearance_mm", clearance.to_string()),
            ("clearance_loose_mm", format!("{:.3}", clearance * 1.5)),
            ("clearance_least_mm", "0".into()),
            ("clearance_most_mm", "2".into()),
            ("finger_hole_mm", finger.to_string()),
            ("carpet_mm", carpet.to_string()),
            ("tip_factor", factor.to_string()),
            ("inset_mm", (front * recess + 24.0).to_string()),
            ("gap_mm", "11".into()),
            ("behind_mm", "23".into()),
            ("shelves_most", "12".into()),
            ("corner_radii_mm", "[0, 12, 300]".into()),
            ("row_least_mm", "0".into()),
            ("bay_least_mm", "0".into()),
            ("leaf_narrowest", "0".into()),
            ("leaf_widest", widest.to_string()),
            ("leaf_most_kg", "200".into()),
            ("one_person_kg", "200".into()),
            ("two_people_kg", "266".into()),
        ])
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    /// Whatever a range is accepted with, every part weighs at least what its blank says; and a unit tips by that
    /// rule where it does by its parts, each of them cut and weighed.
    #[test]
    fn no_part_is_lighter_than_its_blank_says(range in absurd(), seed in any::<u64>()) {
        for choice in choices(&range, seed, Wanted::Any).take(25) {
            let judged = judge(&range, &choice);
            let Some((picked, layout)) = judged.picked.zip(judged.layout) else { continue };
            let case = Case::of(picked, &choice, &layout).unwrap();
            let (blanks, coated) = (Blanks { picked, layout: &layout }, Coated::of(picked));
            let cuts = Cuts::of(blanks, &choice);
            for blank in blanks.all(&choice) {
                let mass = Case::weigh(case.panel(blank.id).unwrap(), picked).mass;
                let least = cuts.least_mass(&blank, coated);
                prop_assert!(least <= mass, "{}: {least:?} {mass:?} {choice:?}", blank.id);
            }
            let stops = judge_stops(&range, &choice).findings;
            if stops.iter().any(|finding| finding.rule.is_basic()) {
                continue;
            }
            let parts = case.panels.iter().map(|panel| (panel.id, panel.width, Case::weigh(panel, picked).mass));
            let slope = carpet(picked, &layout);
            let moments = Moments::of(burdens(picked, &layout, Leaves::Open, parts), slope);
            let tips = moments.holds < moments.tips * range.strength.tip_factor;
            prop_assert_eq!(stops.iter().any(|finding| finding.rule == Rule::TipOver), tips, "{:?}", choice);
        }
    }
}

/// In the demo range so much is left that hardly a unit has to be cut for the question whether it tips.
#[test]
fn the_bound_is_close_enough_to_be_of_use() {
    let range = edited(&[]);
    for choice in choices(&range, 61, Wanted::Valid).take(80) {
        let judged = judge(&range, &choice);
        let (picked, layout) = (judged.picked.unwrap(), judged.layout.unwrap());
        let case = Case::of(picked, &choice, &layout).unwrap();
        let (blanks, coated) = (Blanks { picked, layout: &layout }, Coated::of(picked));
        let cuts = Cuts::of(blanks, &choice);
        for blank in blanks.all(&choice) {
            let mass = Case::weigh(case.panel(blank.id).unwrap(), picked).mass;
            let least = cuts.least_mass(&blank, coated);
            assert!(least > mass * 0.85, "{} {}", blank.id, least / mass);
        }
    }
}
