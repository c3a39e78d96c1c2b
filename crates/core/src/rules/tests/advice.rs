//! What is good to know: each at its edge, and never a reason to stop.

use super::*;
use crate::business::job::Job;
use crate::business::promise::Backlog;
use crate::cabinet::case::Weighed;
use crate::cabinet::layout::{Layout, Picked};
use crate::order::derive::{advise, derive};
use crate::order::document::Document;
use crate::rules::finding::{Limit, Severity, Unit};
use crate::rules::tether;
use crate::units::day::Day;
use crate::units::quantity::Force;
use crate::words;

fn says(range: &Range, choice: &Choice, rule: Rule) -> bool {
    let (stops, said) = found(range, choice);
    assert_eq!(stops, []);
    said.contains(&rule)
}

#[test]
fn a_screen_that_bends_the_top_or_stands_too_high_is_told() {
    let mut range = demo();
    let big = changed(&range, "sedge", &[Change::ScreenTenthInch(Some(650)), Change::BayCount(2)]);
    assert!(!says(&range, &big, Rule::ScreenFeet));
    range.screen.kg_per_m2 = AreaMass::kg_per_m2(60.0);
    assert!(says(&range, &big, Rule::ScreenFeet));
    // Right over the uprights the feet bend nothing: one bay of the middle third, feet at its sides.
    range.screen.feet_apart_per_mille = 0;
    let middle = changed(&range, "sedge", &[Change::ScreenTenthInch(Some(650)), Change::BayCount(2)]);
    assert!(!says(&range, &middle, Rule::ScreenFeet));
    // 65 in: its middle 405 mm over its stand of 60; from 2 685 mm away, eyes 1 040 to 1 230 mm reach 719 mm up and down.
    let range = demo();
    let at = |model, height| {
        changed(
            &range,
            model,
            &[Change::HeightMm(Dim::mm(height)), Change::ScreenTenthInch(Some(650)), fill(1, Fill::Open)],
        )
    };
    assert!(!says(&range, &at("sedge", 360), Rule::ViewingHeight));
    let tall = changed(&range, "bulrush", &[Change::WidthMm(Dim::mm(1300)), Change::ScreenTenthInch(Some(400))]);
    let finding = judge(&range, &tall).findings.into_iter().find(|found| found.rule == Rule::ViewingHeight).unwrap();
    // 1 800 + 60 + 249.05 against 1 230 + 1 016 × 1.6264 × tan 15° = 1 672.76.
    assert_eq!((finding.limit, finding.found.value, finding.allowed.value), (Limit::AtMost, 2109.05, 1672.76));
}

/// A screen of 55 inches on a shelf of 1.8 m is a warning, and there is a way out; where one is low enough, a size as well.
#[test]
fn a_screen_too_high_warns_and_has_a_way_out() {
    let range = demo();
    let told = |width, height| {
        let shelf = [width, height, Change::ScreenTenthInch(Some(550)), Change::WallMm(Some(Dim::mm(1400)))];
        let choice = changed(&range, "bulrush", &shelf);
        let told = advise(&range, &choice, None);
        told.into_iter().find(|finding| finding.rule == Rule::ViewingHeight)
    };
    let high = told(Change::WidthMm(Dim::mm(1300)), Change::HeightMm(Dim::mm(1800))).unwrap();
    assert_eq!(high.severity, Severity::Warns);
    let [Change::HeightMm(low), Change::ScreenTenthInch(None)] = high.remedies[..] else { panic!("{high:?}") };
    assert!(told(Change::WidthMm(Dim::mm(1300)), Change::HeightMm(low)).is_none());
}

#[test]
fn devices_want_air_and_a_way_for_their_cables() {
    let range = demo();
    let with = |changes: &[Change]| changed(&range, "sedge", changes);
    let open = with(&[Change::BayCount(2), fill(2, Fill::Open), device(2, "player"), hole(2, "round-60", 0)]);
    assert!(!says(&range, &open, Rule::DeviceShut) && !says(&range, &open, Rule::DeviceCable));
    let shut =
        with(&[Change::BayCount(2), fill(2, Fill::Leaf(Hung::Right)), device(2, "player"), hole(2, "round-60", 0)]);
    assert!(says(&range, &shut, Rule::DeviceShut) && !says(&range, &shut, Rule::DeviceCable));
    let bare =
        with(&[Change::BayCount(2), fill(2, Fill::Open), device(2, "player"), Change::Hole { bay: 2, hole: None }]);
    assert!(says(&range, &bare, Rule::DeviceCable) && !says(&range, &bare, Rule::DeviceShut));
}

#[test]
fn cables_turn_behind_the_back() {
    let mut range = demo();
    let plugged = changed(&range, "sedge", &[Change::Plug(Some("hdmi".parse().unwrap()))]);
    for (bend, told) in [(66.0, false), (66.1, true)] {
        range.plugs.first_mut().unwrap().bend_mm = Some(Length::mm(bend));
        assert_eq!(says(&range, &plugged, Rule::CableBend), told, "{bend}");
    }
}

#[test]
fn light_films_want_a_coat_more_and_dark_ones_shade() {
    let mut range = demo();
    let finish = |key: &str| changed(&demo(), "sedge", &[Change::Finish(key.parse().unwrap())]);
    assert!(says(&range, &finish("soot"), Rule::FinishSun));
    for key in ["clear", "chalk", "brick"] {
        assert!(
            !says(&range, &finish(key), Rule::FinishSun) && !says(&range, &finish(key), Rule::FinishEdges),
            "{key}"
        );
    }
    let chalk = range.finishes.iter_mut().find(|finish| finish.key.as_str() == "chalk").unwrap();
    chalk.coats_before = 2;
    assert!(says(&range, &finish("chalk"), Rule::FinishEdges));
}

#[test]
fn leaves_keep_their_gap_and_clear_of_each_other() {
    let mut range = demo();
    let pair = [Change::BayCount(2), fill(1, Fill::Leaf(Hung::Right)), fill(2, Fill::Leaf(Hung::Left))];
    let wide = changed(&range, "sedge", &[&pair[..], &[Change::WidthMm(Dim::mm(1400))]].concat());
    assert!(says(&range, &wide, Rule::LeafSwing));
    let narrow = changed(&range, "sedge", &[&pair[..], &[Change::WidthMm(Dim::mm(900))]].concat());
    assert!(!says(&range, &narrow, Rule::LeafSwing));
    assert!(!says(&range, &wide, Rule::LeafGap));
    for (gap, told) in [(2.0, false), (1.9, true), (3.0, false), (3.1, true)] {
        range.build.leaf_gap_mm = Length::mm(gap);
        assert_eq!(says(&range, &narrow, Rule::LeafGap), told, "{gap}");
    }
}

/// A leaf that a hand cannot open is told, whether the range has no hole, too small a one, or the leaf no room.
#[test]
fn leaves_have_something_to_open_them_by() {
    let mut range = demo();
    let whole = [1, 2, 3].map(|bay| Change::Hole { bay, hole: None });
    // Deep enough for a child at its open door.
    let of = |count, width| {
        let sizes = [Change::WidthMm(Dim::mm(width)), Change::DepthMm(Dim::mm(520))];
        let own = [&sizes[..], &[Change::BayCount(count), fill(2, Fill::Leaf(Hung::Left))]].concat();
        changed(&demo(), "sedge", &[&whole[..], &own].concat())
    };
    let leaf = of(2, 1200);
    for (hole, told) in [(34.0, false), (25.0, false), (24.9, true), (0.0, true), (60.0, false)] {
        range.build.finger_hole_mm = Length::mm(hole);
        assert_eq!(says(&range, &leaf, Rule::LeafGrip), told, "{hole}");
    }
    range.build.ligament_mm = Length::mm(89.0);
    assert!(!says(&range, &leaf, Rule::LeafGrip));
    let narrow = of(3, 900);
    assert!(says(&range, &narrow, Rule::LeafGrip), "no room is left for the hole");
    let told = advise(&range, &narrow, None).into_iter().find(|finding| finding.rule == Rule::LeafGrip).unwrap();
    let [first, ..] = &told.remedies[..] else { panic!("{told:?}") };
    assert!(matches!(first, Change::WidthMm(_)) && !says(&range, &narrow.with(first, &range), Rule::LeafGrip));
    let open = [Change::BayCount(1), fill(1, Fill::Open), Change::WidthMm(Dim::mm(900))];
    assert!(!says(&demo(), &changed(&demo(), "sedge", &open), Rule::LeafGrip));
}

#[test]
fn a_package_beyond_all_carriers_is_told() {
    let mut range = demo();
    let choice = start(&range, "sedge");
    assert!(!says(&range, &choice, Rule::Package));
    for carrier in &mut range.carriers {
        carrier.longest_mm = Length::mm(1639.0);
    }
    assert!(says(&range, &choice, Rule::Package));
    // Nor may it be heavier than the two people of the last carrier may lift, its card included.
    let mut range = demo();
    let told = |range: &Range| judge(range, &choice).findings.into_iter().find(|found| found.rule == Rule::Package);
    assert_eq!(told(&range), None);
    let picked = Picked::of(&range, &choice).unwrap();
    let cut = WeighedCase::of(picked, &choice, &judge(&range, &choice).layout.unwrap()).unwrap();
    let mass = Bill::of(&cut).flat.first().unwrap().mass;
    range.handling.two_people_kg = mass + Mass::kg(0.8);
    let finding = told(&range).unwrap();
    assert_eq!((finding.severity, finding.parts.len(), finding.found.unit), (Severity::Warns, 1, Unit::Kg));
    let sentence = words::sentence(&finding);
    assert!(
        sentence.contains("two people lift ") && sentence.ends_with("take three, or a smaller unit."),
        "{sentence}"
    );
    // With its card the package is 0.3 kg over what two lift. Where the carrier does not take it, more people are no
    // help, even if two lift less than the carrier takes.
    let lifted = range.handling.two_people_kg;
    for (more, lifted_by) in [(0.31, Some(2)), (0.1, None), (0.0, None), (-0.1, None)] {
        range.carriers.iter_mut().for_each(|carrier| carrier.package_most_kg = lifted + Mass::kg(more));
        let finding = told(&range).unwrap();
        let sentence = words::sentence(&finding);
        assert_eq!(finding.lifted_by, lifted_by, "{sentence}");
        let is_carrier = sentence.contains("the carrier takes ") && !sentence.contains("people");
        assert_eq!(is_carrier, lifted_by.is_none(), "{sentence}");
    }
    // A third one is offered only where three lift it.
    range.carriers.iter_mut().for_each(|carrier| carrier.package_most_kg = lifted + Mass::kg(0.31));
    range.handling.one_person_kg = lifted / 1.5;
    let finding = told(&range).unwrap();
    let sentence = words::sentence(&finding);
    assert!(sentence.contains("three people lift ") && sentence.ends_with(": take a smaller unit."), "{sentence}");
}

/// What two people may not lift is a warning with ways out: a thinner back, or a narrower unit.
#[test]
fn a_part_for_three_people_has_ways_out() {
    let mut range = demo();
    let sizes = [Change::WidthMm(Dim::mm(1300)), Change::HeightMm(Dim::mm(2200))];
    let choice = changed(&range, "bulrush", &sizes);
    range.handling.two_people_kg = Mass::kg(29.0);
    // A lighter unit would have to be fastened, and that is no way out.
    range.strength.tether_push_n = Force::ZERO;
    let told =
        |choice: &Choice| advise(&range, choice, None).into_iter().find(|found| found.rule == Rule::PartMass).unwrap();
    let finding = told(&choice);
    assert_eq!((finding.severity, finding.parts.as_slice()), (Severity::Warns, &[PanelId::Back][..]), "{finding:?}");
    let [Change::Back(_), Change::WidthMm(width)] = &finding.remedies[..] else { panic!("{finding:?}") };
    assert!(*width < Dim::mm(1300));
    let sentence = words::sentence(&finding);
    assert!(sentence.contains("it needs three") && sentence.split_whitespace().count() <= 25, "{sentence}");
}

fn tethered(range: &Range, choice: &Choice) -> Option<(Severity, f64, String)> {
    let finding = judge(range, choice).findings.into_iter().find(|found| found.rule == Rule::WallTether)?;
    Some((finding.severity, finding.found.value, crate::words::sentence(&finding)))
}

/// A push at the top smaller than the range's figure makes the tether a must, and is told.
#[test]
fn a_unit_that_a_small_push_tips_has_to_be_fastened() {
    let mut range = demo();
    let sizes = [Change::WidthMm(Dim::mm(400)), Change::HeightMm(Dim::mm(2200)), Change::DepthMm(Dim::mm(340))];
    let tall = changed(&range, "bulrush", &[&[Change::BayCount(1), fill(1, Fill::Open)], &sizes[..]].concat());
    let (severity, push, sentence) = tethered(&range, &tall).unwrap();
    assert_eq!(severity, Severity::Warns);
    // By hand where the push is worked out: the case rises out of its base.
    assert!((17.0..17.6).contains(&push), "{push}");
    assert_eq!(
        sentence,
        format!(
            "Pushed at its top with {push:.0}\u{a0}N it begins to tip; under 80\u{a0}N it must be fastened to the wall: children climb."
        )
    );
    // To the last bit; below it the loads on the top decide.
    for (least, told) in [(push + 0.01, true), (push - 0.01, false)] {
        range.strength.tether_push_n = Force::newton(least);
        let (severity, _, sentence) = tethered(&range, &tall).unwrap();
        assert_eq!((severity, sentence.starts_with("Pushed at")), (Severity::Warns, told), "{sentence}");
    }
}

/// A child of 60 lb at the edge of an open leaf, or leaning out before a shelf, makes the tether a must.
#[test]
fn what_a_child_tips_has_to_be_fastened() {
    let mut range = demo();
    range.strength.tether_push_n = Force::ZERO;
    let bare = |changes: &[Change]| changed(&demo(), "sedge", &[&[fill(1, Fill::Open)], changes].concat());
    // Low, wide and heavy: neither a push nor a child moves it; with a leaf a child does.
    assert_eq!(tethered(&range, &bare(&[Change::WidthMm(Dim::mm(2400))])), None);
    let leaf = [Change::WidthMm(Dim::mm(2400)), fill(1, Fill::Leaf(Hung::Left))];
    let (severity, _, sentence) = tethered(&range, &bare(&leaf)).unwrap();
    assert_eq!(severity, Severity::Warns, "{sentence}");
    assert!(sentence.contains("a child who climbs it"), "{sentence}");
    // By hand: an open unit with one shelf, light and shallow.
    let sizes = [Change::WidthMm(Dim::mm(980)), Change::HeightMm(Dim::mm(360)), Change::DepthMm(Dim::mm(360))];
    let two = [&[Change::BayCount(1), fill(1, Fill::Shelves(1))], &sizes[..]].concat();
    let choice = bare(&two);
    let judged = judge(&range, &choice);
    let (picked, layout) = (judged.picked.unwrap(), judged.layout.unwrap());
    let case = Case::of(picked, &choice, &layout).unwrap();
    let whole = Weighed::whole(&case.weigh_parts(picked));
    let holds = whole.mass.weight().in_newton() * (whole.centre.y - range.build.foot_recess_mm).in_m();
    let climbs = 27.2 * 9.806_65 * (158.0 - (layout.upright_front - range.build.foot_recess_mm).in_mm()) / 1000.0;
    // It does not tip over its foot, but the case alone does out of its base: stiles stand by themselves.
    let stands = |id: &PanelId| matches!(id, PanelId::BaseLower | PanelId::BaseUpper | PanelId::Stile(_));
    let carried: Vec<_> = case.weigh_parts(picked).into_iter().filter(|(id, _)| !stands(id)).collect();
    let carried = Weighed::whole(&carried);
    let keeps = carried.mass.weight().in_newton() * (carried.centre.y - layout.upright_front).in_m();
    let pulls = 27.2 * 9.806_65 * 0.158;
    assert!(holds > climbs + 1.0 && keeps < pulls - 1.0, "{holds} {climbs} {keeps} {pulls}: too near to tell");
    let (_, by, _) = tethered(&range, &choice).unwrap();
    assert!((by - (pulls - keeps)).abs() < 0.02 * keeps, "{by} {keeps} {pulls}");
    // Heavier boards keep it down.
    let weighing = |by: f64| {
        let mut range = range.clone();
        range.boards.iter_mut().for_each(|board| board.density_kg_per_m3 = board.density_kg_per_m3 * by);
        tethered(&range, &choice)
    };
    assert_eq!(weighing(pulls / keeps * 1.03), None);
    let (severity, by, _) = weighing(0.4).unwrap();
    assert!(severity == Severity::Warns && by > 0.0 && by < pulls, "{by}");
}

/// Whoever takes a leaf or a tall unit hears of children.
#[test]
fn the_tether_speaks_of_children() {
    let mut range = demo();
    let mut told = 0;
    for push in [0.0, 80.0, 5000.0] {
        range.strength.tether_push_n = Force::newton(push);
        for choice in choices(&range, 79, Wanted::Valid).take(60) {
            let Some((_, _, sentence)) = tethered(&range, &choice) else { continue };
            assert!(sentence.contains("child"), "{sentence}");
            assert!(sentence.split_whitespace().count() < 25, "{sentence}");
            told += 1;
        }
    }
    assert!(told > 100, "{told}");
}

/// What is told beside the demand is why it is asked: the doors of a low unit, not its height.
#[test]
fn a_low_unit_is_fastened_for_its_doors() {
    let range = demo();
    let figures = |changes: &[Change]| {
        let findings = judge(&range, &changed(&range, "sedge", changes)).findings;
        let finding = findings.into_iter().find(|found| found.rule == Rule::WallTether)?;
        Some((crate::words::locale::Locale::English.found_and_allowed(&finding), finding.limit))
    };
    let open = [1, 2, 3].map(|bay| fill(bay, Fill::Open));
    // A child on a narrow door of a large unit does not tip it; one on a wide door does, which is told instead.
    let narrow = [Change::WidthMm(Dim::mm(2400)), Change::BayCount(6), Change::DepthMm(Dim::mm(520))];
    let narrow: Vec<Change> = narrow
        .into_iter()
        .chain((2..=6).map(|bay| fill(bay, Fill::Shelves(3))))
        .chain([fill(1, Fill::Leaf(Hung::Left))])
        .collect();
    assert_eq!(figures(&narrow), Some((("1".into(), "0".into()), Limit::AtMost)));
    assert!(figures(&[]).is_some_and(|((_, allowed), _)| allowed == "0\u{a0}N·m"));
    assert_eq!(figures(&open), None);
    let [first, second, third] = open;
    let tall = figures(&[first, second, third, Change::HeightMm(Dim::mm(620))]);
    assert_eq!(tall, Some((("620\u{a0}mm".into(), "600\u{a0}mm".into()), Limit::AtMost)));
}

/// Who asks whether a unit is fastened hears what the rule says; the last step of the assembly says it too.
#[test]
fn a_unit_is_fastened_where_the_rule_asks_for_it() {
    let range = demo();
    let mut told = [0, 0];
    for choice in choices(&range, 77, Wanted::Valid).take(300) {
        let judged = judge(&range, &choice);
        let says = judged.findings.iter().any(|found| found.rule == Rule::WallTether);
        let (picked, layout) = judged.picked.zip(judged.layout.as_ref()).unwrap();
        assert_eq!(
            tether::is_asked(picked, &choice, layout, &WeighedCase::of(picked, &choice, layout).unwrap()),
            says,
            "{choice:?}"
        );
        let backlog = Backlog::default();
        let document = Document::of(&derive(&range, &choice, Day::of_unix(20_782), &backlog));
        let assembly = document.built.unwrap().assembly;
        let tells = |part: &str, says_it: &str| {
            assembly.steps.iter().any(|step| step.part.to_string() == part && step.sentence.contains(says_it))
        };
        assert_eq!(assembly.last_step.contains("its tethers"), says, "{}", assembly.last_step);
        assert_eq!(["Screw a tether", "Fasten both tethers"].map(|part| tells("back", part)), [says; 2]);
        told[usize::from(says)] += 1;
    }
    assert!(told[0] > 3 && told[1] > 3, "{told:?}");
}

/// What warns or advises has ways out where another answer is one: the nearest size, a leaf hung on the other side.
#[test]
fn advice_has_ways_out() {
    let range = demo();
    let ways = |choice: &Choice, rule| {
        let told = advise(&range, choice, None).into_iter().find(|finding| finding.rule == rule);
        told.unwrap_or_else(|| panic!("{rule:?}")).remedies
    };
    let narrow = changed(&range, "sedge", &[Change::WallMm(Some(Dim::mm(1407)))]);
    assert_eq!(ways(&narrow, Rule::WallWidth), [Change::WidthMm(Dim::mm(1400)), Change::WallMm(None)]);
    let wide = changed(&range, "sedge", &[Change::WidthMm(Dim::mm(1400)), Change::ScreenTenthInch(Some(650))]);
    assert_eq!(ways(&wide, Rule::ScreenWidth), [Change::WidthMm(Dim::mm(1440)), Change::ScreenTenthInch(None)]);
    let two = [Change::BayCount(2), fill(1, Fill::Leaf(Hung::Right)), fill(2, Fill::Leaf(Hung::Left))];
    let touching = changed(&range, "sedge", &two);
    let hung = [fill(2, Fill::Leaf(Hung::Right)), fill(1, Fill::Leaf(Hung::Left))];
    assert_eq!(ways(&touching, Rule::LeafSwing), hung);
    // A tether is fastened to a wall: no answer takes its place.
    assert_eq!(ways(&touching, Rule::WallTether), []);
}

/// A sheet that is used by less than a third is told, and a way out needs it no more.
#[test]
fn a_sheet_for_little_is_told() {
    let range = demo();
    let (mut told, mut helped) = (0, 0);
    for choice in choices(&range, 182, Wanted::Valid).take(900) {
        let used = |choice: &Choice| {
            let picked = Picked::of(&range, choice).unwrap();
            let cut = WeighedCase::of(picked, choice, &Layout::of(picked, choice).unwrap()).unwrap();
            let materials = Job::of(&cut, picked).materials;
            let sheets: f64 = materials.iter().map(|material| material.sheets).sum();
            (materials.iter().filter_map(|material| material.least_used).fold(1.0, f64::min), sheets)
        };
        let (least, sheets) = used(&choice);
        let findings = judge(&range, &choice).findings;
        assert_eq!(findings.iter().any(|finding| finding.rule == Rule::SheetUse), least < 1.0 / 3.0, "{least}");
        if least < 1.0 / 3.0 && told < 6 {
            told += 1;
            let finding = advise(&range, &choice, None).into_iter().find(|finding| finding.rule == Rule::SheetUse);
            for remedy in &finding.unwrap().remedies {
                helped += 1;
                let (least, after) = used(&choice.with(remedy, &range));
                assert!(least >= 1.0 / 3.0 && after <= sheets, "{remedy:?}");
            }
        }
    }
    assert!(told > 2 && helped > 0, "{told} {helped}");
}
