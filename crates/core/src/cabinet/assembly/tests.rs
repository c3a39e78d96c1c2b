//! The small cases of the literature, and the laws over the whole choice space.

use proptest::prelude::*;

use super::{Assembly, Blocking, Body, Bound, Direction, Disturbance, Solids, floor, groups, play, solids};
use crate::cabinet::case::Case;
use crate::cabinet::layout::{Layout, Picked};
use crate::cabinet::panel::PanelId;
use crate::choice::{Choice, Fill};
use crate::geometry::outline::Outline;
use crate::geometry::space::{Block, Prism, Spot};
use crate::range::Range;
use crate::rules::sample::{Wanted, choices};
use crate::testing::{DEMO, cases, demo};
use crate::units::quantity::{Dim, Length};
use crate::words;

mod cores;
mod detent;
mod heads;
mod turn;

fn block(from: [f64; 3], to: [f64; 3]) -> Block {
    let spot = |[x, y, z]: [f64; 3]| Spot::new(Length::mm(x), Length::mm(y), Length::mm(z));
    Block { from: spot(from), to: spot(to) }
}

const TOUCHING: Length = Length::mm(1e-3);

/// Parts that must move together along a direction, from 1.
fn group(blocking: &Blocking, part: usize, direction: Direction) -> Vec<usize> {
    blocking.moves_with(part - 1, direction, TOUCHING).into_iter().map(|at| at + 1).collect()
}

/// A published interlocking cube of nine parts, 4 × 4 × 4 voxels.
// Source: P. Wang, P. Song, M. Pauly, DESIA: A General Framework for Designing Interlocking
// Assemblies, ACM Transactions on Graphics 37(6), 2018; data set Cube_4x4x4_K9 of its repository (MIT).
const CUBE: [[&str; 4]; 4] = [
    ["4111", "3221", "3211", "2215"],
    ["4474", "3444", "2555", "2595"],
    ["6677", "3697", "8697", "8597"],
    ["6399", "3398", "6688", "8887"],
];

/// The cube's first index runs along x, its second along y, its third along z.
fn cube(without: &[usize]) -> Vec<Body> {
    let voxels = |part: usize| {
        let mut blocks = Vec::new();
        for (x, rows) in (0u8..).zip(CUBE) {
            for (y, row) in (0u8..).zip(rows) {
                for (z, digit) in (0u8..).zip(row.bytes()) {
                    if usize::from(digit - b'0') == part {
                        let at = [f64::from(x), f64::from(y), f64::from(z)];
                        blocks.push(block(at, at.map(|low| low + 1.0)));
                    }
                }
            }
        }
        blocks
    };
    (1..=9).map(|part| Body::of(if without.contains(&part) { Vec::new() } else { voxels(part) })).collect()
}

#[test]
fn the_published_cube_has_one_key() {
    let cube = Blocking::of(&cube(&[]));
    let all: Vec<usize> = (1..=9).collect();
    for direction in [Direction::Forwards, Direction::Back, Direction::Up, Direction::Down] {
        (1..=9).for_each(|part| assert_eq!(group(&cube, part, direction), all, "{direction:?}"));
    }
    assert_eq!(group(&cube, 1, Direction::Left), [1]);
    (2..=9).for_each(|part| assert_eq!(group(&cube, part, Direction::Left), all));
    (2..=9).for_each(|part| assert_eq!(group(&cube, part, Direction::Right), [2, 3, 4, 5, 6, 7, 8, 9]));
    assert_eq!(group(&cube, 1, Direction::Right), all);
}

#[test]
fn the_published_cube_comes_apart_as_published() {
    let singles = |without: &[usize]| -> Vec<(usize, Direction)> {
        let blocking = Blocking::of(&cube(without));
        let parts = (1..=9).filter(|part| !without.contains(part));
        let alone = |part| Direction::ALL.map(move |direction| (part, direction));
        let mut found: Vec<_> =
            parts.flat_map(alone).filter(|(part, direction)| group(&blocking, *part, *direction).len() == 1).collect();
        found.sort_unstable();
        found
    };
    assert_eq!(singles(&[]), [(1, Direction::Left)]);
    assert_eq!(singles(&[1]), [(2, Direction::Back)]);
    assert_eq!(group(&Blocking::of(&cube(&[1])), 4, Direction::Up), [4, 7]);
    let after: Vec<_> = singles(&[1, 2]);
    for expected in [(3, Direction::Right), (4, Direction::Left), (5, Direction::Left)] {
        assert!(after.contains(&expected), "{expected:?} in {after:?}");
    }
}

/// Worked: two laps cross; each comes out only its own way.
#[test]
fn a_cross_lap_opens_one_way_each() {
    let along_x =
        [([0.0, 4.0, 0.0], [10.0, 6.0, 1.0]), ([0.0, 4.0, 1.0], [4.0, 6.0, 2.0]), ([6.0, 4.0, 1.0], [10.0, 6.0, 2.0])];
    let along_y =
        [([4.0, 0.0, 1.0], [6.0, 10.0, 2.0]), ([4.0, 0.0, 0.0], [6.0, 4.0, 1.0]), ([4.0, 6.0, 0.0], [6.0, 10.0, 1.0])];
    let body = |blocks: [([f64; 3], [f64; 3]); 3]| Body::of(blocks.map(|(from, to)| block(from, to)));
    let lap = Blocking::of(&[body(along_x), body(along_y)]);
    assert_eq!(group(&lap, 2, Direction::Up), [2]);
    assert_eq!(group(&lap, 1, Direction::Down), [1]);
    for direction in [Direction::Left, Direction::Right, Direction::Forwards, Direction::Back] {
        assert_eq!(group(&lap, 1, direction), [1, 2]);
        assert_eq!(group(&lap, 2, direction), [1, 2]);
    }
    assert_eq!(group(&lap, 2, Direction::Down), [1, 2]);
}

/// Worked: a bridge comes off a beam 8 mm high once its legs are past it; with one leg alone it may leave at once, to the other side.
#[test]
fn what_stands_astride_is_lifted_over() {
    let (deck, legs) = (([0.0, 0.0, 8.0], [9.0, 10.0, 9.0]), [0.0, 8.0].map(|y| ([0.0, y, 0.0], [9.0, y + 2.0, 8.0])));
    let beam = Body::of([block([0.0, 4.0, 0.0], [9.0, 6.0, 8.0])]);
    let lifted = |parts: &[_]| Body::of(parts.iter().map(|&(from, to)| block(from, to))).clear_of(&beam, Direction::Up);
    assert_eq!([lifted(&[deck, legs[0], legs[1]]), lifted(&[deck, legs[0]])], [8.0, 0.0].map(Length::mm));
}

/// Worked: a rail with through tabs in two sides falls apart; wedges outside the sides lock it.
#[test]
fn wedges_lock_a_tabbed_frame() {
    let rail = [
        ([0.0, 0.0, 0.0], [10.0, 4.0, 4.0]),
        ([-3.0, 1.0, 1.0], [0.0, 3.0, 3.0]),
        ([10.0, 1.0, 1.0], [13.0, 3.0, 3.0]),
    ];
    // The tabs beyond the sides are split by the wedges' mortises.
    let split = |from: f64, to: f64| [([from, 1.0, 1.0], [to, 1.5, 3.0]), ([from, 2.5, 1.0], [to, 3.0, 3.0])];
    let rail: Vec<_> =
        rail.into_iter().chain(split(-5.0, -3.0)).chain(split(13.0, 15.0)).map(|(from, to)| block(from, to)).collect();
    let side = |x: f64| {
        [
            ([x, -2.0, -2.0], [x + 3.0, 1.0, 6.0]),
            ([x, 3.0, -2.0], [x + 3.0, 6.0, 6.0]),
            ([x, 1.0, -2.0], [x + 3.0, 3.0, 1.0]),
            ([x, 1.0, 3.0], [x + 3.0, 3.0, 6.0]),
        ]
    };
    let side = |x: f64| Body::of(side(x).map(|(from, to)| block(from, to)));
    let wedge = |x: f64| Body::of([block([x, 1.5, -1.0], [x + 2.0, 2.5, 5.0])]);
    let open = Blocking::of(&[Body::of(rail.clone()), side(-3.0), side(10.0)]);
    assert_eq!(group(&open, 2, Direction::Left), [2]);
    assert_eq!(group(&open, 3, Direction::Right), [3]);
    let locked = Blocking::of(&[Body::of(rail), side(-3.0), side(10.0), wedge(-5.0), wedge(13.0)]);
    for direction in [Direction::Left, Direction::Right] {
        (1..=3).for_each(|part| assert!(group(&locked, part, direction).len() > 1, "{part} {direction:?}"));
    }
    for wedge in [4, 5] {
        assert_eq!(group(&locked, wedge, Direction::Up), [wedge]);
    }
}

/// What a choice names, and its case.
fn made<'a>(range: &'a Range, choice: &Choice) -> (Picked<'a>, Case) {
    let picked = Picked::of(range, choice).unwrap();
    let layout = Layout::of(picked, choice).unwrap();
    (picked, Case::of(picked, choice, &layout).unwrap())
}

fn built(seed: u64, check: impl FnOnce(&Case, &Assembly)) {
    let range = demo();
    let choice = choices(&range, seed, Wanted::Valid).next().unwrap();
    let (picked, case) = made(&range, &choice);
    check(&case, &Assembly::of(picked, &case));
}

/// The proof sees what is missing: shelves go without their stiles, the rest without the top.
#[test]
fn a_unit_that_lacks_its_locks_is_found_loose() {
    let range = demo();
    let shelved = |choice: &Choice| choice.bays.iter().all(|bay| matches!(bay.fill, Fill::Shelves(_)));
    let choice = choices(&range, 3, Wanted::Valid).find(shelved).unwrap();
    let (picked, whole) = made(&range, &choice);
    let moves = |lacks: fn(PanelId) -> bool| -> Vec<Direction> {
        let panels = whole.panels.iter().filter(|panel| !lacks(panel.id)).cloned().collect();
        let mut moves: Vec<_> =
            Assembly::of(picked, &Case { panels, joints: Vec::new() }).loose.iter().map(|loose| loose.moves).collect();
        moves.dedup();
        moves
    };
    assert_eq!(moves(|_| false), []);
    assert!(moves(|id| matches!(id, PanelId::Stile(_))).contains(&Direction::Forwards));
    assert!(moves(|id| id == PanelId::Top).contains(&Direction::Up));
}

proptest! {
    #![proptest_config(cases(150))]

    #[test]
    fn every_valid_unit_goes_together_and_holds(seed in any::<u64>()) {
        built(seed, |case, assembly| {
            assert_eq!((&assembly.stuck, &assembly.loose, &assembly.unheld), (&vec![], &vec![], &vec![]));
            let moves = |part| -> Vec<Direction> {
                let step = assembly.steps.iter().find(|step| step.part == part).unwrap();
                step.way.iter().map(|leg| leg.moves).collect()
            };
            assert_eq!(assembly.steps.last().unwrap().part, PanelId::Top);
            assert_eq!((moves(PanelId::Top), moves(PanelId::Back)), (vec![Direction::Down], vec![Direction::Forwards, Direction::Down]));
            let bent = assembly.steps.iter().filter(|step| step.way.len() > 1);
            assert_eq!(bent.count(), 1, "the back alone takes two moves");
            // Every joint is closed once, by the later of its two parts.
            let mut closed: Vec<_> = assembly.steps.iter().flat_map(|step| step.closes.clone()).collect();
            closed.sort_unstable();
            assert_eq!(closed, case.joints.iter().map(|joint| joint.id).collect::<Vec<_>>());
            assert_eq!(assembly.steps.len(), case.panels.len());
        });
    }

    /// The slow twin of the proof: part by part and direction by direction.
    #[test]
    fn no_group_of_parts_moves(seed in any::<u64>()) {
        let range = demo();
        let choice = choices(&range, seed, Wanted::Valid).next().unwrap();
        let (picked, case) = made(&range, &choice);
        let bodies = case.panels.iter().map(|panel| Body::of_solids(solids(panel, Bound::Core))).chain([floor()]);
        let cores = Blocking::of(&bodies.collect::<Vec<_>>());
        let moves_with = |body, direction| cores.moves_with(body, direction, play(picked, direction));
        prop_assert_eq!(groups(&case, moves_with), vec![]);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(20))]

    /// The slow twin of the order: parts pulled out by a third of the thinnest board at a time never
    /// share room with what stands.
    #[test]
    fn no_step_runs_into_what_stands(seed in any::<u64>()) {
        built(seed, |case, assembly| {
            let mut standing: Vec<Body> = Vec::new();
            for step in &assembly.steps {
                let panel = case.panel(step.part).unwrap();
                // The way out: the last move first, and a little further at its end.
                let mut turn = Spot::default();
                for (at, leg) in step.way.iter().enumerate().rev() {
                    let (direction, beyond) = (leg.moves.opposite(), if at == 0 { 4.0 } else { 0.0 });
                    let (mut out, end) = (Length::ZERO, leg.travel + Length::mm(beyond));
                    loop {
                        let moved = plus(turn, direction.step(out));
                        let body = Body::of_solids(shifted(solids(panel, Bound::Hull), moved));
                        assert!(standing.iter().all(|other| !other.shares_room(&body)), "{} at {moved:?}", step.part);
                        if out >= end {
                            break;
                        }
                        out = (out + Length::mm(4.0)).min(end);
                    }
                    turn = plus(turn, direction.step(leg.travel));
                }
                standing.push(Body::of_solids(solids(panel, Bound::Hull)));
            }
        });
    }
}

/// Where staves are wide enough for the wood between their slots a range may set them edge to edge, a joint of half a millimetre
/// apart: a closed row.
#[test]
fn a_row_of_staves_may_be_closed() {
    let text = DEMO.replace("stave_mm = 44 ", "stave_mm = 52 ").replace("\ngap_mm = 5 ", "\ngap_mm = 0.5 ");
    let range = Range::parse(&text).unwrap();
    assert!((range.bow.gap_mm.in_mm() - 0.5).abs() < 1e-9);
    for choice in choices(&range, 5, Wanted::Valid).filter(|choice| choice.bow_mm > Dim::mm(0)).take(20) {
        let (picked, case) = made(&range, &choice);
        let assembly = Assembly::of(picked, &case);
        assert_eq!((&assembly.stuck, &assembly.loose, &assembly.unheld), (&vec![], &vec![], &vec![]));
        assert!(case.panels.iter().any(|panel| matches!(panel.id, PanelId::Stave { .. })));
    }
}

/// What is said to come free of a unit with shelves and a leaf; reasoned by hand. Nothing but weight keeps
/// the top on and the lower base plate under it, or the long boards of a plinth: they go when the unit lies. After the top
/// follows what drops in from above, after the lower plate nothing but the upper one, after the long boards the bearers on them.
#[test]
fn what_comes_free_is_what_weight_alone_holds() {
    let range = demo();
    let leafed = |choice: &Choice| choice.bays.iter().any(|bay| matches!(bay.fill, Fill::Leaf(_)));
    let all = choices(&range, 3, Wanted::Valid).filter(leafed).take(40);
    let (on_base, on_plinth): (Vec<Choice>, Vec<Choice>) = all.partition(|choice| choice.plinth_mm.is_none());
    comes_free(&range, &on_base[0], &[PanelId::BaseLower], PanelId::BaseUpper);
    comes_free(&range, &on_plinth[0], &[PanelId::PlinthFront, PanelId::PlinthRear], PanelId::Bearer(1));
}

/// What goes first of a unit that lies, but for its top, and one of those that follow.
fn comes_free(range: &Range, choice: &Choice, at_once: &[PanelId], then_one: PanelId) {
    let (picked, case) = made(range, choice);
    let disturbed = Assembly::of(picked, &case).disturbed;
    let of = |by| disturbed.iter().find(|known| known.by == by).unwrap();
    assert_eq!(of(Disturbance::LiftedByTop).first, [PanelId::Top]);
    // Nor is there a place by which it could be lifted whole.
    let lifted = words::disturbed(of(Disturbance::LiftedByTop));
    let has_leaves = case.panels.iter().any(|panel| matches!(panel.id, PanelId::Leaf(_)));
    assert!(
        lifted.ends_with("Take it apart to move it.") && lifted.contains("doors can fall") == has_leaves,
        "{lifted}"
    );
    assert_eq!(of(Disturbance::Unlevel).first, []);
    for by in [Disturbance::LaidOnSide, Disturbance::LaidOnBack, Disturbance::LaidOnFront] {
        assert_eq!(of(by).first, [at_once, &[PanelId::Top]].concat(), "{by:?}");
        let then = &of(by).then;
        assert!(then.contains(&then_one), "{then:?}");
        // Under its tongue a leaf stays.
        assert!(then.iter().any(|id| matches!(id, PanelId::Stop(_))), "{then:?}");
        assert!(!then.iter().any(|id| matches!(id, PanelId::Shelf { .. })), "{then:?}");
    }
}

/// Sides on which the same parts go are told in one sentence, doors by the sides on which they swing; each side of which others go has
/// its own. Only the last one says to do none of it.
#[test]
fn sides_that_let_the_same_parts_go_are_told_together() {
    let of = |by, first: &[PanelId], swings: &[PanelId]| super::Disturbed {
        by,
        first: first.to_vec(),
        then: Vec::new(),
        swings: swings.to_vec(),
    };
    let (top, leaf, both) = (&[PanelId::Top][..], &[PanelId::Leaf(1)][..], &[PanelId::BaseLower, PanelId::Top][..]);
    let told = |back: &[PanelId]| {
        words::all_disturbed(&[
            of(Disturbance::LiftedByTop, top, leaf),
            of(Disturbance::LaidOnSide, top, leaf),
            of(Disturbance::LaidOnBack, back, &[]),
            of(Disturbance::LaidOnFront, top, leaf),
            of(Disturbance::Unlevel, &[], leaf),
        ])
    };
    let same = told(top);
    assert_eq!(same.len(), 3, "{same:?}");
    assert_eq!(
        same[1],
        "Laid on its side, back or front it comes apart: nothing holds the top. On its side or front doors swing by their own \
         weight. Never lay it down whole."
    );
    let differing = told(both);
    assert_eq!(differing.len(), 4, "{differing:?}");
    assert_eq!(
        differing[1],
        "Laid on its side or front it comes apart: nothing holds the top. Doors swing by their own weight."
    );
    assert_eq!(
        differing[2],
        "Laid on its back it comes apart: nothing holds the lower base plate and the top. Never lay it down whole."
    );
}

fn plus(spot: Spot, by: Spot) -> Spot {
    Spot::new(spot.x + by.x, spot.y + by.y, spot.z + by.z)
}

fn shifted(solids: Solids, by: Spot) -> Solids {
    let block = |block: Block| Block { from: plus(block.from, by), to: plus(block.to, by) };
    let prism = |prism: Prism| Prism {
        plan: prism.plan.into_iter().map(|(x, y)| (x + by.x, y + by.y)).collect(),
        under: prism.under + by.z,
        over: prism.over + by.z,
    };
    Solids {
        blocks: solids.blocks.into_iter().map(block).collect(),
        prisms: solids.prisms.into_iter().map(prism).collect(),
    }
}

/// Places just within the corners of a prism and in its middle, at its underside and its upper side.
fn within(prism: &Prism) -> Vec<Spot> {
    let count = f64::from(u32::try_from(prism.plan.len()).unwrap());
    let (x, y) = prism.plan.iter().fold((Length::ZERO, Length::ZERO), |(x, y), at| (x + at.0, y + at.1));
    let middle = (x / count, y / count);
    let inner = |at: &(Length, Length)| (at.0 + (middle.0 - at.0) * 1e-2, at.1 + (middle.1 - at.1) * 1e-2);
    let heights = [prism.under + Length::mm(1e-2), prism.over - Length::mm(1e-2)];
    let level = prism.plan.iter().map(inner).chain([middle]);
    level.flat_map(|(x, y)| heights.map(|z| Spot::new(x, y, z))).collect()
}
