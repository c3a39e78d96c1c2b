//! Each rule at its edge: just inside passes, just outside is found.

use super::{Rule, can_be_made, first_stop, judge, judge_for_search, judge_stops};
use crate::business::bill::Bill;
use crate::cabinet::case::{Case, WeighedCase};
use crate::cabinet::panel::PanelId;
use crate::choice::change::Change;
use crate::choice::{Choice, Fill, Hole, Hung};
use crate::range::{HoleShape, Plug, Range};
use crate::rules::finding::{Finding, Severity};
use crate::rules::hole::passage;
use crate::rules::sample::{Wanted, choices};
use crate::statics::sag::{Beam, lasting, own_load, widest_span};
use crate::testing::demo;
use crate::units::quantity::{AreaMass, Dim, Length, Mass};

mod advice;
mod hole;
mod strength;

fn start(range: &Range, model: &str) -> Choice {
    Choice::starting(range.models.iter().find(|known| known.key.as_str() == model).unwrap()).unwrap()
}

fn changed(range: &Range, model: &str, changes: &[Change]) -> Choice {
    changes.iter().fold(start(range, model), |choice, change| choice.with(change, range))
}

/// The rules that stop a choice, and those that only speak.
fn found(range: &Range, choice: &Choice) -> (Vec<Rule>, Vec<Rule>) {
    let findings = judge(range, choice).findings;
    let of = |stops: bool| {
        let mut rules: Vec<Rule> = findings
            .iter()
            .filter(|found| (found.severity == Severity::Stops) == stops)
            .map(|found| found.rule)
            .collect();
        rules.dedup();
        rules
    };
    (of(true), of(false))
}

fn fill(bay: u8, fill: Fill) -> Change {
    Change::Fill { bay, fill }
}

fn device(bay: u8, key: &str) -> Change {
    Change::Device { bay, device: Some(key.parse().unwrap()) }
}

fn hole(bay: u8, kind: &str, offset: i32) -> Change {
    Change::Hole { bay, hole: Some(Hole { kind: kind.parse().unwrap(), offset_mm: Dim::mm(offset) }) }
}

#[test]
fn the_models_as_they_begin_can_be_made() {
    let range = demo();
    for model in &range.models {
        assert_eq!(found(&range, &Choice::starting(model).unwrap()).0, [], "{}", model.name);
    }
}

#[test]
fn limits_hold_to_the_step() {
    let range = demo();
    for (change, rules) in [
        (Change::WidthMm(Dim::mm(2400)), &[][..]),
        (Change::WidthMm(Dim::mm(2410)), &[Rule::SizeLimit]),
        (Change::WidthMm(Dim::mm(890)), &[Rule::SizeLimit]),
        (Change::WidthMm(Dim::tenths(16_401)), &[Rule::SizeStep]),
        (Change::HeightMm(Dim::mm(650)), &[Rule::SizeLimit]),
        (Change::DepthMm(Dim::mm(350)), &[Rule::SizeLimit]),
        (Change::BayCount(6), &[]),
        (Change::BayCount(7), &[Rule::FitOutCount]),
        (Change::BayCount(0), &[Rule::FitOutCount]),
        (fill(3, Fill::Shelves(3)), &[Rule::HoleShelf]),
        (fill(1, Fill::Shelves(4)), &[Rule::FitOutCount]),
        (Change::Share { bay: 1, share: 0 }, &[Rule::BayShare]),
        (Change::Share { bay: 1, share: 10 }, &[Rule::BayShare]),
        (Change::Finish("moss".parse().unwrap()), &[Rule::Known]),
        (Change::CornerRadiusMm(Dim::mm(13)), &[Rule::Known]),
    ] {
        assert_eq!(found(&range, &changed(&range, "sedge", std::slice::from_ref(&change))).0, rules, "{change:?}");
    }
}

#[test]
fn a_count_says_what_it_counts() {
    let range = demo();
    let said = |model, changes: &[Change]| {
        let findings = judge_stops(&range, &changed(&range, model, changes)).findings;
        crate::words::reason(&findings.into_iter().find(|finding| finding.rule == Rule::FitOutCount).unwrap())
    };
    let doors = [Change::BayCount(2), fill(1, Fill::Leaf(Hung::Left)), fill(2, Fill::Leaf(Hung::Right))];
    assert_eq!(said("bulrush", &doors), "Up to bay 2 there would be 2 doors; the most is 1.");
    assert_eq!(said("sedge", &[fill(1, Fill::Shelves(4))]), "In bay 1 there would be 4 shelves; the most is 3.");
    assert_eq!(said("sedge", &[Change::BayCount(7)]), "7 bays are too many; the most is 6.");
}

/// The widest single bay with a shelf is the one that the sag formula solves for.
#[test]
fn the_widest_bay_follows_from_the_sag() {
    let range = demo();
    let model = range.models.iter().find(|model| model.key.as_str() == "bulrush").unwrap();
    let board = range.board(&model.body).unwrap();
    let load = lasting(own_load(board), model.shelf_load_kg_per_m2, &range.strength);
    let span = widest_span(load, Beam::along(board), range.strength.sag_span_over);
    let film = range.finishes[0].dry_film() * 2.0;
    let width = span + range.build.end_inset_mm * 2.0 + (board.thickness() + film) * 2.0;
    #[expect(clippy::cast_possible_truncation, reason = "a width in centimetres")]
    let widest = (width.in_mm() / 10.0).floor() as i32 * 10;
    assert!((700..900).contains(&widest), "{widest}");
    for (width, rules) in [(widest, &[][..]), (widest + 10, &[Rule::ShelfSag])] {
        let choice = changed(&range, "bulrush", &[Change::BayCount(1), Change::WidthMm(Dim::mm(width))]);
        assert_eq!(found(&range, &choice).0, rules, "{width}");
    }
}

#[test]
fn a_panel_longer_than_every_sheet_is_found() {
    let mut range = demo();
    let longest = Length::mm(2100.0) + range.build.sheet_trim_mm * 2.0;
    for sheet in &mut range.boards[0].sheets {
        sheet.length_mm = longest;
    }
    let wide = changed(&range, "teasel", &[Change::WidthMm(Dim::mm(2100))]);
    assert_eq!(found(&range, &wide).0, []);
    for sheet in &mut range.boards[0].sheets {
        sheet.length_mm = longest - Length::mm(0.1);
    }
    assert_eq!(found(&range, &wide).0, [Rule::SheetFit]);
    let findings = judge(&range, &wide).findings;
    assert!(findings.iter().any(|found| found.parts == [PanelId::Top]), "{findings:?}");
}

/// Whatever little room a range asks for: what nothing stops can be built.
#[test]
fn what_cannot_be_built_is_found() {
    let mut range = demo();
    range.strength.bay_least_mm = Length::ZERO;
    range.strength.row_least_mm = Length::ZERO;
    range.models.iter_mut().for_each(|model| model.stile_mm = Length::mm(160.0));
    (range.build.tab_mm, range.build.tab_inset_mm) = (Length::mm(12.0), Length::ZERO);
    let mut narrow = 0;
    for choice in choices(&range, 11, Wanted::Any).take(3000) {
        let judged = judge(&range, &choice);
        match (judged.picked, &judged.layout) {
            (Some(picked), Some(layout)) => assert!(Case::of(picked, &choice, layout).is_some(), "{choice:?}"),
            _ => assert!(judged.stops().next().is_some(), "{choice:?}"),
        }
        narrow += u32::from(judged.findings.iter().any(|finding| finding.rule == Rule::BayRoom));
    }
    assert!(narrow > 10, "{narrow}");
}

#[test]
fn uprights_have_room_for_two_tabs() {
    let mut range = demo();
    let choice = changed(&range, "bulrush", &[Change::DepthMm(Dim::mm(340))]);
    let clear = judge(&range, &choice).layout.unwrap().clear_depth();
    // Two tabs of 60 mm, 36 mm to either end and 20 mm of wood between them: 212 mm of 218.
    assert_eq!(found(&range, &choice).0, []);
    range.build.tab_inset_mm = range.build.tab_inset_mm + (clear - Length::mm(212.0)) / 2.0 + Length::mm(0.01);
    assert_eq!(found(&range, &choice).0, [Rule::DepthRoom]);
}

#[test]
fn slots_of_neighbours_meet_or_keep_apart() {
    let range = demo();
    let shelves = |left, right| {
        let changes = [fill(1, Fill::Shelves(left)), fill(2, Fill::Shelves(right)), fill(3, Fill::Open)];
        found(&range, &changed(&range, "teasel", &changes)).0
    };
    // Clear height 706.3 mm: one, three equal; two and three are 43 mm apart, less a slot of 18.
    assert_eq!(shelves(1, 3), []);
    assert_eq!(shelves(2, 2), []);
    assert_eq!(shelves(2, 3), []);
    assert_eq!(shelves(3, 4), [Rule::ShelfSlot]);
}

#[test]
fn leaves_keep_their_shape_and_mass() {
    let mut range = demo();
    let leaf = |changes: &[Change]| [&[fill(1, Fill::Leaf(Hung::Left)), fill(2, Fill::Open)], changes].concat();
    let narrow = leaf(&[Change::HeightMm(Dim::mm(1000)), Change::WidthMm(Dim::mm(660))]);
    assert_eq!(found(&range, &changed(&range, "bulrush", &narrow)).0, []);
    let tall = leaf(&[Change::HeightMm(Dim::mm(2200)), Change::WidthMm(Dim::mm(860))]);
    assert_eq!(found(&range, &changed(&range, "bulrush", &tall)).0, [Rule::LeafShape]);
    range.strength.leaf_most_kg = Mass::kg(2.0);
    assert_eq!(found(&range, &changed(&range, "bulrush", &narrow)).0, [Rule::LeafMass]);
}

/// Geometry: a square body passes a round hole by its diagonal, a round one by its diameter.
#[test]
fn plugs_pass_where_geometry_lets_them() {
    let plug = |width, height, round| Plug {
        key: "plug".parse().unwrap(),
        name: String::new(),
        width_mm: Length::mm(width),
        height_mm: Length::mm(height),
        round,
        bend_mm: None,
    };
    let round = |diameter| HoleShape::Round { diameter_mm: Length::mm(diameter) };
    let slotted = HoleShape::Slotted { length_mm: Length::mm(90.0), height_mm: Length::mm(42.0) };
    for (shape, plug, passes) in [
        (round(50.0), plug(40.0, 30.0, false), true),
        (round(49.9), plug(40.0, 30.0, false), false),
        (round(40.0), plug(40.0, 40.0, true), true),
        (round(39.9), plug(40.0, 40.0, true), false),
        (slotted, plug(48.0, 42.0, false), true),
        (slotted, plug(48.1, 42.0, false), false),
        (slotted, plug(43.0, 42.1, false), false),
        // Turned, the flat one lies along the slot.
        (slotted, plug(10.0, 42.1, false), true),
        (slotted, plug(90.0, 42.0, true), true),
        (slotted, plug(80.0, 20.0, true), true),
        (slotted, plug(90.1, 20.0, true), false),
    ] {
        let (needed, given) = passage(shape, &plug);
        assert_eq!(needed.in_mm() <= given.in_mm() + 1e-9, passes, "{shape:?} {plug:?}: {needed:?} in {given:?}");
    }
}

#[test]
fn the_named_plug_has_to_pass() {
    let range = demo();
    let with =
        |kind, plug: &str| changed(&range, "sedge", &[hole(2, kind, 0), Change::Plug(Some(plug.parse().unwrap()))]);
    assert_eq!(found(&range, &with("slot-90", "cee-7")).0, []);
    // 50 × 50 has a diagonal of 70.7 mm: only the large hole passes it, and bay 3 has a small one.
    assert_eq!(found(&range, &with("round-80", "bs-1363")).0, [Rule::HolePlug]);
}

#[test]
fn heavy_parts_ask_for_two_people_and_too_heavy_ones_stop() {
    let mut range = demo();
    let choice = start(&range, "sedge");
    let heaviest = |range: &Range| {
        let judged = judge(range, &choice);
        let (picked, layout) = (judged.picked.unwrap(), judged.layout.unwrap());
        Bill::of(&WeighedCase::of(picked, &choice, &layout).unwrap()).flat.first().unwrap().mass
    };
    let mass = heaviest(&range);
    range.handling.one_person_longest_mm = choice.width_mm.length();
    assert_eq!(found(&range, &choice), (vec![], vec![Rule::WallTether]));
    range.handling.one_person_longest_mm = choice.width_mm.length() - Length::mm(0.1);
    assert_eq!(found(&range, &choice), (vec![], vec![Rule::PartLength, Rule::WallTether]));
    range.handling.one_person_kg = mass - Mass::kg(0.01);
    // The top is heavy; the base is as long.
    assert_eq!(found(&range, &choice), (vec![], vec![Rule::PartMass, Rule::PartLength, Rule::WallTether]));
    // Beyond what two may carry it needs three, beyond what three may another cut.
    let told = |range: &Range| {
        let findings = judge(range, &choice).findings;
        let finding = findings.into_iter().find(|found| found.rule == Rule::PartMass).unwrap();
        (finding.severity, finding.allowed.value)
    };
    assert_eq!(told(&range).0, Severity::Advises);
    range.handling.two_people_kg = mass - Mass::kg(0.01);
    let hundredth = |kg: f64| crate::units::rounding::round_half_away(kg * 100.0) / 100.0;
    let allowed = hundredth(mass.in_kg() - 0.01);
    assert_eq!(told(&range), (Severity::Warns, allowed));
    range.handling.one_person_kg = (mass - Mass::kg(0.01)) / 1.5;
    assert_eq!(told(&range), (Severity::Stops, allowed));
    assert_eq!(found(&range, &choice).0, [Rule::PartMass]);
}

// Source: HSE L23: two people two thirds, three half of the sum of what each may carry: 33 kg and 37.5 kg for 25 kg each,
// 21 kg and 24 kg for 16 kg each.
#[test]
fn people_carry_less_together_than_apart() {
    let mut handling = demo().handling;
    assert_eq!([1, 2, 3].map(|people| handling.together(people).to_gram()), [25_000, 33_000, 37_500]);
    let people = |kg: f64, long: f64| demo().handling.people(Mass::kg(kg), Length::mm(long));
    assert_eq!([25.0, 25.1, 33.0, 33.1, 60.0].map(|kg| people(kg, 1600.0)), [1, 2, 2, 3, 3]);
    assert_eq!([10.0, 34.0].map(|kg| people(kg, 1601.0)), [2, 3]);
    (handling.one_person_kg, handling.two_people_kg) = (Mass::kg(16.0), Mass::kg(21.0));
    assert_eq!([1, 2, 3].map(|people| handling.together(people).to_gram()), [16_000, 21_000, 24_000]);
}

/// A range may not let two people carry more than two thirds of twice what one may.
#[test]
fn a_range_knows_how_people_carry_together() {
    let with = |two: &str| Range::parse(&crate::testing::DEMO.replace("two_people_kg = 33\n", two));
    assert!(with("two_people_kg = 33.3\n").is_ok());
    for two in ["two_people_kg = 33.4\n", "two_people_kg = 42\n", "two_people_kg = 24\n"] {
        assert!(with(two).unwrap_err().0.iter().any(|wrong| wrong.path.contains("handling.two_people_kg")), "{two}");
    }
}

#[test]
fn screen_and_wall_are_compared_with_the_width() {
    let mut range = demo();
    (range.handling.one_person_longest_mm, range.screen.kg_per_m2) = (Length::mm(2500.0), AreaMass::ZERO);
    for (change, rule) in [
        (Change::WallMm(Some(Dim::mm(1640))), None),
        (Change::WallMm(Some(Dim::mm(1630))), Some(Rule::WallWidth)),
        // 74 in are 1638.3 mm wide, 75 in 1660.4 mm.
        (Change::ScreenTenthInch(Some(740)), None),
        (Change::ScreenTenthInch(Some(750)), Some(Rule::ScreenWidth)),
    ] {
        let (stops, said) = found(&range, &changed(&range, "sedge", std::slice::from_ref(&change)));
        assert_eq!(
            (stops, said.first().filter(|rule| **rule != Rule::WallTether).copied()),
            (vec![], rule),
            "{change:?}"
        );
    }
}

/// Low units without leaves need no tether; all others are told to use one.
#[test]
fn the_tether_is_asked_for_where_it_matters() {
    let mut range = demo();
    range.handling.one_person_longest_mm = Length::mm(2500.0);
    let low = [fill(1, Fill::Open), Change::HeightMm(Dim::mm(600))];
    assert_eq!(found(&range, &changed(&range, "sedge", &low)).1, []);
    let higher = [fill(1, Fill::Open), Change::HeightMm(Dim::mm(610))];
    assert_eq!(found(&range, &changed(&range, "sedge", &higher)).1, [Rule::WallTether]);
}

/// What stops alone is what stops among everything that is said.
#[test]
fn what_stops_is_the_same_with_and_without_advice() {
    let range = demo();
    for choice in choices(&range, 23, Wanted::Any).take(1500) {
        let all = judge(&range, &choice);
        let stops = judge_stops(&range, &choice);
        assert!(all.stops().eq(&stops.findings), "{choice:?}");
        assert_eq!(first_stop(&range, &choice).as_ref(), stops.findings.first(), "{choice:?}");
        assert_eq!(can_be_made(&range, &choice), all.holds(), "{choice:?}");
    }
}

/// A search is told all that stops a choice but for what comes from all parts together, and that where nothing else of its rules
/// does.
#[test]
fn a_search_lacks_nothing_but_what_comes_from_all_parts() {
    let (mut range, of_all) = (demo(), [Rule::UprightBuckling, Rule::Knock, Rule::TipOver]);
    // So that units tip over which nothing else stops.
    range.strength.tip_factor *= 3.0;
    let (mut left_out, mut told) = (0, 0);
    for choice in choices(&range, 29, Wanted::Any).take(3000) {
        let all = judge_stops(&range, &choice).findings;
        let first = all.first().map_or(0, |finding| finding.rule.bit());
        for rules in [u64::MAX, !first] {
            let found = judge_for_search(&range, &choice, rules).findings;
            let counts = |finding: &&Finding| rules & finding.rule.bit() != 0;
            assert_eq!(all.iter().any(|finding| counts(&finding)), found.iter().any(|finding| counts(&finding)));
            let lacking: Vec<&Finding> = all.iter().filter(|finding| !found.contains(finding)).collect();
            assert!(lacking.iter().all(|finding| of_all.contains(&finding.rule)), "{lacking:?}");
            assert_eq!(all.len(), found.len() + lacking.len(), "{choice:?}");
            left_out += lacking.len();
            told += found.iter().filter(|finding| of_all.contains(&finding.rule)).count();
        }
    }
    assert!(left_out > 20 && told > 20, "{left_out} {told}");
}

/// To the tenth of a millimetre: width between stiles or past an open leaf and its stop, air beside, height with air, depth with plugs.
#[test]
fn a_device_goes_in_with_its_air_and_plugs() {
    let mut range = demo();
    for held in [Fill::Open, Fill::Leaf(Hung::Left), Fill::Leaf(Hung::Right)] {
        let choice = changed(&range, "sedge", &[Change::BayCount(2), fill(1, held), device(1, "router")]);
        let judged = judge(&range, &choice);
        let layout = judged.layout.unwrap();
        let span = layout.bays.first().unwrap();
        let tenth = Length::mm(0.1);
        let [access, clear, height, depth] =
            [span.access(), span.clear(), layout.row_height(span), layout.clear_depth()];
        assert!(access < clear, "the other bay has a stile");
        for (width, air, high, deep, rules) in [
            (access, Length::ZERO, height, depth, &[][..]),
            (access + tenth, Length::ZERO, height, depth, &[Rule::DeviceWidth]),
            (access, (clear - access) / 2.0, height, depth, &[]),
            (access, (clear - access) / 2.0 + tenth, height, depth, &[Rule::DeviceWidth]),
            (access, Length::ZERO, height + tenth, depth, &[Rule::DeviceHeight]),
            (access, Length::ZERO, height, depth + tenth, &[Rule::DeviceDepth]),
        ] {
            let router = range.devices.iter_mut().find(|device| device.key.as_str() == "router").unwrap();
            (router.width_mm, router.air_beside_mm) = (width, air);
            (router.height_mm, router.air_over_mm) = (high - Length::mm(20.0), Length::mm(20.0));
            (router.depth_mm, router.plug_behind_mm) = (deep - Length::mm(30.0), Length::mm(30.0));
            assert_eq!(found(&range, &choice).0, rules, "{held:?} {width:?} {air:?} {high:?} {deep:?}");
        }
    }
}
