use super::*;
use crate::cabinet::assembly::{Assembly, Direction};
use crate::cabinet::case::Case;
use crate::cabinet::layout::{Layout, Picked};
use crate::cabinet::panel::{Edge, Feature, Panel, PanelId};
use crate::choice::change::Change;
use crate::range::Range;
use crate::rules::Rule;
use crate::rules::finding::{Finding, Limit};
use crate::rules::sample::{Wanted, choices};
use crate::rules::{can_be_made, judge_stops};
use crate::testing::demo;
use crate::units::quantity::Dim;

fn on_plinth(range: &Range, mm: i32) -> Choice {
    Choice::first_of(range).unwrap().with(&Change::PlinthMm(Some(Dim::mm(mm))), range)
}

fn made<'a>(range: &'a Range, choice: &Choice) -> (Picked<'a>, Layout, Case) {
    let picked = Picked::of(range, choice).unwrap();
    let layout = Layout::of(picked, choice).unwrap();
    let case = Case::of(picked, choice, &layout).unwrap();
    (picked, layout, case)
}

/// Seeded units on plinths that nothing stops.
fn seeded(range: &Range, seed: u64, count: usize) -> Vec<Choice> {
    choices(range, seed, Wanted::Valid).filter(|choice| choice.plinth_mm.is_some()).take(count).collect()
}

// Worked: 1640 × 520 × 420 mm, its ends 24 mm in, so the long boards are 1592 mm long; bearers from 44 to 370 mm, 326 mm long,
// which reach 20.075 mm beyond boards at 64.075 and at 349.925 − t. With 80 mm and 0.15 mm of clearance both are cut 40.075 mm deep. The
// base lies 80 mm up, and the rest has 80 mm less: the unit is as high as before.
#[test]
fn a_plinth_by_hand() {
    let range = demo();
    let choice = on_plinth(&range, 80);
    let (_, layout, case) = made(&range, &choice);
    let before = made(&range, &choice.with(&Change::PlinthMm(None), &range)).1;
    let plinth = layout.plinth.unwrap();
    assert_eq!((layout.base, layout.height, before.base), (Length::mm(80.0), before.height, Length::ZERO));
    assert!((before.clear_height() - layout.clear_height() - Length::mm(80.0)).abs() < Length::mm(1e-9));
    assert_eq!(plinth.long(layout.body), [Length::mm(64.075), Length::mm(349.925) - layout.body]);
    let board = |id| case.panel(id).unwrap();
    let size = |id| (board(id).width.to_hundredth_mm(), board(id).height.to_hundredth_mm());
    assert_eq!((size(PanelId::PlinthFront), size(PanelId::PlinthRear)), ((1592.0, 80.0), (1592.0, 80.0)));
    assert_eq!(size(PanelId::Bearer(1)), (326.0, 80.0));
    let lefts: Vec<f64> = layout.bearers().map(Length::in_mm).collect();
    let uprights: Vec<f64> = (0..4).filter_map(|at| layout.upright_left(at)).map(Length::in_mm).collect();
    let worked = [44.075, uprights[1], uprights[2], uprights[3] - 20.075];
    assert!(lefts.iter().zip(worked).all(|(left, worked)| (left - worked).abs() < 1e-9), "{lefts:?}");
    assert_eq!(lefts.len(), 4);
    for id in [PanelId::PlinthFront, PanelId::Bearer(1)] {
        let depths = board(id).features.iter().filter_map(|feature| match feature {
            Feature::Notch { depth, .. } => Some(depth.in_mm()),
            _ => None,
        });
        assert!(depths.clone().count() >= 2 && depths.clone().all(|deep| (deep - 40.075).abs() < 1e-9), "{id}");
    }
}

/// The gaps between cuts and to the border of a panel, along both axes: the larger of the two is wood that holds together.
fn wood(panel: &Panel) -> Vec<f64> {
    let cuts: Vec<[f64; 4]> = panel
        .features
        .iter()
        .filter_map(|feature| match *feature {
            Feature::Slot { from, to } => Some([from.u.in_mm(), to.u.in_mm(), from.v.in_mm(), to.v.in_mm()]),
            _ => None,
        })
        .collect();
    let (width, height) = (panel.width.in_mm(), panel.height.in_mm());
    let mut all: Vec<f64> =
        cuts.iter().map(|[left, right, low, high]| left.min(width - right).min(*low).min(height - high)).collect();
    for (at, a) in cuts.iter().enumerate() {
        all.extend(cuts.iter().skip(at + 1).map(|b| {
            let apart = |a: (f64, f64), b: (f64, f64)| (b.0 - a.1).max(a.0 - b.1);
            apart((a[0], a[1]), (b[0], b[1])).max(apart((a[2], a[3]), (b[2], b[3])))
        }));
    }
    all
}

/// No slot of the lower base plate is nearer to another one or to the border than the ligament, but for the clearance; nor a
/// tab of a long board to a lap.
#[test]
fn wood_is_left_between_tabs_and_laps() {
    let range = demo();
    let least = (range.build.ligament_mm - range.build.clearance_mm).in_mm();
    let mut units = 0;
    for choice in seeded(&range, 71, 120) {
        let (_, layout, case) = made(&range, &choice);
        let wood = wood(case.panel(PanelId::BaseLower).unwrap());
        assert!(wood.iter().all(|wood| *wood >= least), "{wood:?} {choice:?}");
        let (_, long) = layout.plinth_tabs(&range.build);
        for id in [PanelId::PlinthFront, PanelId::PlinthRear] {
            let board = case.panel(id).unwrap();
            let mut spans: Vec<(Length, Length)> = board
                .features
                .iter()
                .filter_map(|feature| match *feature {
                    Feature::Tab { edge: Edge::Top, from, to, .. } => {
                        assert!((to - from - long).abs() < Length::mm(1e-9));
                        Some((from, to))
                    }
                    Feature::Notch { edge: Edge::Top, from, to, .. } => Some((from, to)),
                    _ => None,
                })
                .collect();
            spans.sort_by(|a, b| a.0.total_cmp(&b.0));
            let inside = spans.windows(2).map(|pair| (pair[1].0 - pair[0].1).in_mm());
            let ends = [spans[0].0.in_mm(), (board.width - spans[spans.len() - 1].1).in_mm()];
            assert!(inside.chain(ends).all(|wood| wood >= least), "{spans:?} {choice:?}");
        }
        units += 1;
    }
    assert_eq!(units, 120);
}

/// Plinth boards stand first and the base comes down on them; without the long ones bearers go sideways, and without tabs
/// the unit slides off its plinth.
#[test]
fn the_base_comes_down_on_a_plinth_that_stands() {
    let range = demo();
    for choice in seeded(&range, 72, 40) {
        let (picked, _, case) = made(&range, &choice);
        let assembly = Assembly::of(picked, &case);
        assert!(assembly.is_proven(), "{choice:?}");
        let boards = choice.bays.len() + 3;
        let order: Vec<PanelId> = assembly.steps.iter().map(|step| step.part).collect();
        assert!(order[..boards].iter().all(|id| *id < PanelId::BaseLower), "{order:?}");
        assert_eq!((order[boards], *order.last().unwrap()), (PanelId::BaseLower, PanelId::Top));
        let step = |at: usize| &assembly.steps[at];
        assert!((2..=boards).all(|at| step(at).way.iter().all(|leg| leg.moves == Direction::Down)), "{order:?}");
        assert!(step(boards).closes.len() <= 4 && step(boards - 1).closes.len() == 2);
        let lacking = |lacks: &dyn Fn(&Panel) -> Option<Panel>| {
            let panels = case.panels.iter().filter_map(lacks).collect();
            Assembly::of(picked, &Case { panels, joints: Vec::new() }).loose
        };
        let without = |gone: [PanelId; 2]| lacking(&|panel| (!gone.contains(&panel.id)).then(|| panel.clone()));
        assert!(!without([PanelId::PlinthFront, PanelId::PlinthRear]).is_empty());
        let untabbed = lacking(&|panel| {
            let mut panel = panel.clone();
            if matches!(panel.id, PanelId::PlinthFront | PanelId::PlinthRear) {
                panel.features.retain(|feature| !matches!(feature, Feature::Tab { .. }));
            }
            Some(panel)
        });
        assert!(untabbed.iter().any(|loose| loose.moves == Direction::Back), "{untabbed:?}");
    }
}

/// Plinths that the model has not are told, each by its bound; one that leaves no room names itself among the ways out.
#[test]
fn a_plinth_is_judged_and_is_a_way_out() {
    let range = demo();
    let told = |choice: &Choice| -> Vec<(Rule, Limit)> {
        judge_stops(&range, choice).findings.iter().map(|found| (found.rule, found.limit)).collect()
    };
    for (mm, found) in [(80, None), (50, Some(Limit::AtLeast)), (160, Some(Limit::AtMost))] {
        let expected: Vec<(Rule, Limit)> = found.map(|limit| (Rule::SizeLimit, limit)).into_iter().collect();
        assert_eq!(told(&on_plinth(&range, mm)), expected, "{mm}");
    }
    assert_eq!(told(&on_plinth(&range, 65)), [(Rule::SizeStep, Limit::OneOf)]);
    let tall = Choice::starting(range.model(&"bulrush".parse().unwrap()).unwrap()).unwrap();
    assert_eq!(told(&Choice { plinth_mm: Some(Dim::mm(80)), ..tall }), [(Rule::Known, Limit::OneOf)]);
    // Four shelves in the lowest unit have room on its base, and none on the highest plinth.
    let model = range.model(&"teasel".parse().unwrap()).unwrap();
    let low = Choice { height_mm: model.height_mm.least, ..Choice::starting(model).unwrap() };
    let low = low.with(&Change::Fill { bay: 2, fill: crate::choice::Fill::Shelves(4) }, &range);
    assert!(can_be_made(&range, &low), "{:?}", told(&low));
    let high = Choice { plinth_mm: Some(Dim::mm(150)), ..low };
    let findings: Vec<Finding> = crate::order::derive::advise(&range, &high, None);
    let finding = findings.iter().find(|finding| finding.rule == Rule::RowRoom).unwrap();
    assert!(!finding.remedies.is_empty());
    let lower = crate::solver::states::states(&range, &high, &[]).unwrap();
    let open = |answer: &&crate::solver::Answer<crate::solver::states::State>| {
        answer.state == crate::solver::states::State::Open
    };
    assert!(lower.plinths.iter().any(|answer| open(&answer) && answer.change == Change::PlinthMm(None)));
}
