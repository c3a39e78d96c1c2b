//! What a finding says that it depends on is all that it depends on.

use proptest::prelude::*;
use proptest::sample::Index;

use super::*;
use crate::choice::{Fill, Hole, Place};
use crate::range::{DimRange, Sheet};
use crate::rules::Rule;
use crate::rules::sample::{Wanted, choices};
use crate::solver::question_set::question;
use crate::testing::demo;
use crate::units::quantity::{Force, Length, Stress};

/// The demo range with figures by which rules speak that seldom do, and two boards of other sheets.
fn strict() -> Range {
    let mut range = demo();
    // Three people carry 12 kg.
    range.handling.one_person_kg = crate::units::quantity::Mass::kg(8.0);
    range.strength.leaf_most_kg = crate::units::quantity::Mass::kg(4.0);
    // Thick films differ, boards are soft.
    range.fit.film_per_mille = 1000;
    range.strength.buckling_factor = 40.0;
    let soft = range.boards.first_mut().unwrap();
    (soft.planar_shear_n_per_mm2, soft.bearing_n_per_mm2) = (Stress::n_per_mm2(0.25), Stress::n_per_mm2(0.4));
    // Light knocks: it is heavy backs that its necks do not carry.
    range.strength.knock_n = Force::newton(5.0);
    // Hard pushes.
    range.strength.push_n = Force::newton(40.0);
    let thin = range.boards.iter_mut().find(|board| board.key.as_str() == "birch-12").unwrap();
    for sheet in &mut thin.sheets {
        (sheet.length_mm, sheet.width_mm) = (sheet.length_mm / 2.0, sheet.width_mm / 2.0);
    }
    // One is shorter and wider than the other, so that a little less length may be much more width.
    let square = thin.sheets.first().unwrap().clone();
    thin.sheets.push(Sheet { length_mm: square.length_mm * 0.7, width_mm: square.width_mm * 1.4, ..square });
    range
}

/// Another answer to a question that leaves a fault where it is, if there is one.
fn aside(space: &ChoiceSpace<'_>, point: &Choice, fault: &NoGood, at: u8, pick: Index) -> Option<Choice> {
    let line = |places: &[i32]| {
        let (from, to) = fault.span(at);
        let mut places: Vec<i32> = places.iter().copied().filter(|place| (from..=to).contains(place)).collect();
        // Beyond what a model has, too.
        places.extend([from.max(-5000), to.min(50_000)]);
        places.get(pick.index(places.len())).copied()
    };
    let answer = match space.answers(at) {
        Answers::Line(places) => line(places)?,
        Answers::Set(_) if fault.scope.has(at) => return None,
        Answers::Set(0) => return None,
        Answers::Set(count) => i32::try_from(pick.index(count)).unwrap(),
    };
    let moved = with(space, point, at, answer)?;
    // An answer may take others with it: a bay that goes takes its device.
    let (here, there) = (space.at(point), space.at(&moved));
    let keeps = |place: u8| space.lines().has(place) || here.of(place) == there.of(place);
    fault.scope.places().all(keeps).then_some(moved)
}

/// The point with another answer, if that may be given.
fn with(space: &ChoiceSpace<'_>, point: &Choice, question: u8, answer: i32) -> Option<Choice> {
    space.moved(&space.at(point), question, answer).map(|_| space.with(point, question, answer))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    /// However questions outside a fault's scope are answered, and sizes moved within its spans, nothing holds.
    #[test]
    fn a_fault_stays_while_its_questions_keep_their_answers(
        seed in any::<u64>(),
        tries in proptest::collection::vec(proptest::collection::vec((0..30u8, any::<Index>()), 1..6), 12),
    ) {
        let range = strict();
        for choice in choices(&range, seed, Wanted::Any).take(4) {
            let Some(model) = range.model(&choice.model) else { continue };
            let candidates = Candidates::of(&range, model, &choice);
            let space = ChoiceSpace { range: &range, candidates: &candidates, choice: &choice, bays_least: 0 };
            for fault in space.faults(&choice, &space.at(&choice), u64::MAX).unwrap() {
                for tried in &tries {
                    let point = tried.iter().fold(choice.clone(), |point, (at, pick)| {
                        aside(&space, &point, &fault, *at, *pick).unwrap_or(point)
                    });
                    let rules: Vec<Rule> = Rule::ALL.iter().copied().filter(|rule| fault.rules & rule.bit() != 0).collect();
                    // What does not suit the place stops nothing by itself.
                    let suits = !breaches(&point).any(|finding| finding.rule.bit() == fault.rules);
                    let holds = judge_stops(&range, &point).holds() && suits;
                    prop_assert!(!holds, "{rules:?} {fault:?}\n{choice:?}\n{point:?}");
                }
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    /// A rule is still broken at the last size for which its fault says so, unless the basics are.
    #[test]
    fn a_fault_stays_as_far_as_it_says(seed in any::<u64>()) {
        let mut range = strict();
        // A hole before which the topmost shelf stands, which moves most.
        range.holes.iter_mut().for_each(|hole| hole.rise_mm = Length::mm(220.0));
        let choices: Vec<Choice> = choices(&range, seed, Wanted::Any).take(25).collect();
        // Every tenth of a millimetre can be had, so that nothing else stops a size.
        for model in &mut range.models {
            for limits in [&mut model.width_mm, &mut model.height_mm, &mut model.depth_mm] {
                *limits = DimRange { least: Dim::mm(1), most: Dim::mm(4000), step: Dim::tenths(1), ..*limits };
            }
        }
        for choice in choices {
            let Some(model) = range.model(&choice.model) else { continue };
            let influence = Influence::of(&range, model, &choice);
            let candidates = Candidates { sets: BTreeMap::new(), lines: BTreeMap::new(), influence, visit: None, trials: Cell::new(0) };
            let space = ChoiceSpace { range: &range, candidates: &candidates, choice: &choice, bays_least: 0 };
            for fault in space.faults(&choice, &space.at(&choice), u64::MAX).unwrap() {
                for size in Size::ALL.into_iter().filter(|size| fault.scope.has(place(size.question()))) {
                    let (from, to) = fault.span(place(size.question()));
                    for end in [from, to].into_iter().filter(|end| (10..=40_000).contains(end)) {
                        let moved = choice.with(&size.to(Dim::tenths(end)), &range);
                        let findings = judge_stops(&range, &moved).findings.into_iter().chain(breaches(&moved));
                        let mut rules = findings.map(|finding| finding.rule);
                        let basic = Rule::ALL.iter().any(|rule| rule.bit() == fault.rules && rule.is_basic());
                        let stays = rules.any(|rule| rule.bit() == fault.rules || !basic && rule.is_basic());
                        prop_assert!(stays, "{fault:?} {size:?} {end}\n{choice:?}");
                    }
                }
            }
        }
    }

    /// Where a point would stand is where it stands when it is made, after however many answers.
    #[test]
    fn a_point_stands_where_it_was_said_to_stand(
        seed in any::<u64>(),
        steps in proptest::collection::vec((0..30u8, any::<Index>()), 1..12),
    ) {
        let range = demo();
        for choice in choices(&range, seed, Wanted::Any).take(6) {
            let Some(model) = range.model(&choice.model) else { continue };
            let candidates = Candidates::of(&range, model, &choice);
            let space = ChoiceSpace { range: &range, candidates: &candidates, choice: &choice, bays_least: 0 };
            let (mut point, mut at) = (choice.clone(), space.at(&choice));
            for (question, pick) in &steps {
                let answer = match space.answers(*question) {
                    Answers::Line(places) => places.get(pick.index(places.len().max(1))).copied(),
                    Answers::Set(count) => Some(i32::try_from(pick.index(count.max(1))).unwrap()),
                };
                let Some(answer) = answer else { continue };
                let Some(moved) = space.moved(&at, *question, answer) else { continue };
                let after = space.with(&point, *question, answer);
                prop_assert!(after != point || LINES.has(*question), "{question} {answer} {point:?}");
                let made = space.at(&after);
                for place in 0..31 {
                    prop_assert_eq!(moved.of(place), made.of(place), "{} {} {:?} {:?}", place, question, &point, &after);
                }
                (point, at) = (after, moved);
            }
        }
    }
}

/// With the other shares that a fault names nothing holds, in however many bays the width is shared.
#[test]
fn a_fault_stays_with_the_other_shares_that_it_names() {
    let (range, shares) = (strict(), place(Question::Shares));
    let (mut named, mut tried) = (0, 0);
    for choice in choices(&range, 29, Wanted::Any).take(120) {
        let Some(model) = range.model(&choice.model) else { continue };
        let candidates = Candidates::of(&range, model, &choice);
        let space = ChoiceSpace { range: &range, candidates: &candidates, choice: &choice, bays_least: 0 };
        let all = |point: &Choice, question| -> Vec<Choice> {
            let Answers::Set(count) = space.answers(question) else { return Vec::new() };
            (0..i32::try_from(count).unwrap()).filter_map(|answer| with(&space, point, question, answer)).collect()
        };
        for begun in all(&choice, place(Question::Bays)).into_iter().chain([choice.clone()]) {
            for point in all(&begun, shares).into_iter().step_by(5).chain([begun.clone()]) {
                for fault in space
                    .faults(&point, &space.at(&point), u64::MAX)
                    .unwrap()
                    .iter()
                    .filter(|fault| fault.scope.has(shares))
                {
                    let others = (0..64).filter(|answer| fault.others(shares) & (1 << answer) != 0);
                    for other in others.filter_map(|answer| with(&space, &begun, shares, answer)) {
                        assert!(!judge_stops(&range, &other).holds(), "{fault:?}\n{point:?}\n{other:?}");
                        named += 1;
                    }
                    tried += 1;
                }
            }
        }
    }
    assert!(named > 8_000, "{named} of {tried}");
}

/// However much too wide a part is for the sheets that are long enough: with less film a shorter one may be.
#[test]
fn whether_a_part_goes_on_a_sheet_depends_on_its_film() {
    let mut range = demo();
    for sheet in range.boards.iter_mut().flat_map(|board| &mut board.sheets) {
        sheet.width_mm = Length::mm(300.0);
    }
    let choice = Choice::first_of(&range).unwrap();
    let candidates = Candidates::of(&range, &range.models[0], &choice);
    let space = ChoiceSpace { range: &range, candidates: &candidates, choice: &choice, bays_least: 0 };
    let faults = space.faults(&choice, &space.at(&choice), u64::MAX).unwrap();
    let mut of_back = faults.iter().filter(|fault| fault.scope.has(place(Question::Back)));
    assert!(of_back.any(|fault| fault.rules == Rule::SheetFit.bit() && fault.scope.has(place(Question::Finish))));
}

/// Every rule that stops is met by the law above, else it would say little.
#[test]
fn the_sample_breaks_every_rule_that_stops() {
    let range = strict();
    let mut met: Vec<Rule> = choices(&range, 3, Wanted::Any)
        .take(4000)
        .flat_map(|choice| judge_stops(&range, &choice).findings)
        .map(|finding| finding.rule)
        .collect();
    met.sort_unstable();
    met.dedup();
    // Advice, and what no sample of sizes on their steps can break.
    let mut silent = vec![
        Rule::Interlock,
        Rule::Headroom,
        Rule::AtOnce,
        Rule::OrderDay,
        Rule::DepthRoom,
        Rule::HookRoom,
        Rule::SizeStep,
    ];
    silent.extend([Rule::PartMoisture, Rule::PromiseDay, Rule::NoParts, Rule::SheetUse]);
    silent.extend([Rule::PartLength, Rule::Package, Rule::LeafGap, Rule::LeafGrip, Rule::LeafSwing]);
    silent.extend([
        Rule::DeviceShut,
        Rule::DeviceCable,
        Rule::CableBend,
        Rule::FinishEdges,
        Rule::FinishSun,
        Rule::ScreenWidth,
    ]);
    silent.extend([Rule::WallWidth, Rule::ScreenFeet, Rule::ViewingHeight, Rule::WallTether]);
    let missing: Vec<&Rule> = Rule::ALL.iter().filter(|rule| !met.contains(rule) && !silent.contains(rule)).collect();
    assert!(missing.is_empty(), "{missing:?}");
}

/// Doing the changes leads from the one choice to the other.
#[test]
fn changes_lead_from_one_choice_to_another() {
    let range = demo();
    let all: Vec<Choice> = choices(&range, 5, Wanted::Valid).take(600).collect();
    for pair in all.windows(4) {
        let (from, to) = (&pair[0], &pair[3]);
        assert_eq!(from.model, to.model);
        let mut to = to.clone();
        to.place = Place::clone(&from.place);
        let done = changes(from, &to).iter().fold(from.clone(), |choice, change| choice.with(change, &range));
        assert_eq!(done, to);
    }
}

/// Choices that differ in the answer to a question stand elsewhere: what is known of one is never taken for the other.
#[test]
fn every_answer_has_a_place_of_its_own() {
    let range = demo();
    let spoiled = |choice: &Choice, fill, kind: &str| {
        let mut spoiled = choice.clone();
        let bay = spoiled.bays.first_mut().unwrap();
        (bay.fill, bay.device) = (fill, Some("no-longer-known".parse().unwrap()));
        bay.hole = Some(Hole { kind: kind.parse().unwrap(), offset_mm: Dim::mm(120) });
        spoiled.back = "no-longer-known".parse().unwrap();
        spoiled
    };
    let mut places = 0;
    for choice in
        choices(&range, 11, Wanted::Any).filter(|choice| (1..=BAYS_MOST).contains(&choice.bays.len())).take(60)
    {
        let own = choice.bays[0].fill;
        for choice in [choice.clone(), spoiled(&choice, Fill::Shelves(0), "slot-90"), spoiled(&choice, own, "gone")] {
            let Some(model) = range.model(&choice.model) else { continue };
            let candidates = Candidates::of(&range, model, &choice);
            let space = ChoiceSpace { range: &range, candidates: &candidates, choice: &choice, bays_least: 0 };
            for at in 0..31 {
                let line: Vec<i32> = match space.answers(at) {
                    Answers::Set(count) => (0..i32::try_from(count).unwrap()).collect(),
                    Answers::Line(places) => places.to_vec(),
                };
                let points: Vec<Choice> = line.iter().filter_map(|answer| with(&space, &choice, at, *answer)).collect();
                let mut stands: Vec<i32> = points.iter().chain([&choice]).map(|point| space.at(point).of(at)).collect();
                places += stands.len();
                stands.sort_unstable();
                let before = stands.len();
                stands.dedup();
                assert_eq!(stands.len(), before, "{:?} {choice:?}", question(at));
            }
        }
    }
    assert!(places > 10_000, "{places}");
}

#[test]
fn every_place_is_of_one_question() {
    for at in 0..31 {
        assert_eq!(place(question(at)), at);
    }
}

/// Between open bays a device that is a little too wide gains by no fit-out, unless stiles are narrower than the
/// uprights behind them: then shelves beside it widen its opening.
#[test]
fn an_open_bay_depends_on_stiles_that_would_widen_it() {
    let mut range = demo();
    let named = |range: &Range| {
        let begun = Choice::first_of(range).unwrap();
        let open = (1..=3).fold(begun, |choice, bay| choice.with(&Change::Fill { bay, fill: Fill::Open }, range));
        let device = Some("receiver".parse().unwrap());
        let choice = open.with(&Change::Device { bay: 2, device }, range);
        let model = range.model(&choice.model).unwrap();
        let mut named = 0;
        for width in model.width_mm.values() {
            let choice = choice.with(&Change::WidthMm(width), range);
            let candidates = Candidates::of(range, model, &choice);
            let space = ChoiceSpace { range, candidates: &candidates, choice: &choice, bays_least: 0 };
            let faults = space.faults(&choice, &space.at(&choice), u64::MAX).unwrap();
            let wide = faults.into_iter().filter(|fault| fault.rules == Rule::DeviceWidth.bit());
            named += wide.filter(|fault| (1..=3).all(|bay| fault.scope.has(place(Question::Bay(bay))))).count();
        }
        named
    };
    assert_eq!(named(&range), 0);
    range.models.iter_mut().for_each(|model| model.stile_mm = Length::mm(10.0));
    assert!(named(&range) > 0);
}
