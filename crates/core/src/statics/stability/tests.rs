use proptest::prelude::*;

use super::push::{Towards, least, pushes};
use super::*;
use crate::cabinet::assembly::Bound;
use crate::cabinet::case::{Case, Weighed};
use crate::choice::change::Change;
use crate::choice::{Choice, Fill};
use crate::geometry::outline::{Point, Segment};
use crate::geometry::space::Block;
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
    let behind = (layout.upright_front + layout.back_front) / 2.0 - edge(&picked.range.build, layout);
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

/// The narrow tall shelf that a hand tips over: from its whole mass and centre, about 22 N to the front, 24 N to a side.
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
        assert!((push.tied.in_newton() - wanted).abs() < 1e-9, "{push:?} {wanted}");
        // The top's 80 kg/m² stand 86 to 176 mm within the uprights, over 2200 less two plates.
        let more = (push.loaded - push.empty).in_newton() * (2200.0 - 35.784) / (80.0 * 0.4 * 0.34 * 9.806_65);
        assert!((85.9..176.1).contains(&more), "{push:?} {more}");
    }
    let [front, _, left, _] = found.map(|push| push.tied.in_newton());
    assert!((22.0..23.0).contains(&front) && (23.5..24.5).contains(&left), "{front} {left}");
    // Two ends of 0.217 × 2.146 m at 147 mm, the back of 0.394 × 2.146 m at 265 and the top of 0.4 × 0.34 m at 170, all of 12.3 kg/m²,
    // over the uprights' front edge at 39 mm.
    let by_hand = 12.3 * 9.81 * (2.0 * 0.217 * 2.146 * 0.108 + 0.394 * 2.146 * 0.226 + 0.4 * 0.34 * 0.131) / 2.164;
    let case = least(found);
    assert!((case.empty.in_newton() / by_hand - 1.0).abs() < 0.02, "{case:?} {by_hand}");
    assert_eq!(case.towards, Towards::Front);
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
            prop_assert!(found.iter().all(|push| push.loaded >= push.empty && push.tied >= push.empty));
            let tied = [0, 2, 3].map(|side| found[side].tied.in_newton()).into_iter().fold(f64::MAX, f64::min);
            let foot = layout.foot(&range.build);
            let [before, left, right] = [foot.front, foot.left, foot.right].map(Length::in_mm);
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
                let moments = parts.iter().fold([0.0; 3], |[to_front, to_left, to_right], (force, (x, y))| {
                    [to_front + force * (y - before), to_left + force * (x - left), to_right + force * (right - x)]
                });
                let push = |moment: f64| moment.max(0.0) / layout.height.in_mm();
                smallest = moments.into_iter().map(push).fold(smallest, f64::min);
            }
            // Each side has a state in which every leaf stands as it holds least there.
            prop_assert!((tied - smallest).abs() < 1e-9);
        }
    }

    /// A case begins to rise out of its base where virtual work says so: turned by a little about its uprights' edge at that side, it
    /// lifts what it carries, and each leaf turns about its lower pivot, however many of them are open.
    #[test]
    fn a_case_rises_where_virtual_work_says(seed in any::<u64>()) {
        let range = demo();
        for choice in choices(&range, seed, Wanted::Valid).take(3) {
            let judged = judge(&range, &choice);
            let (picked, layout) = (judged.picked.unwrap(), judged.layout.unwrap());
            let case = Case::of(picked, &choice, &layout).unwrap();
            let uprights: Vec<_> = case.panels.iter().filter(|panel| matches!(panel.id, PanelId::Upright(_))).collect();
            let outline = |panel: &&crate::cabinet::panel::Panel| {
                let far = panel.case_from_panel.spot(Point { u: panel.width, v: panel.height }, panel.thickness);
                [panel.case_from_panel.origin, far]
            };
            let spots: Vec<_> = uprights.iter().flat_map(outline).collect();
            let along = |pick: fn(&crate::geometry::space::Spot) -> Length| {
                let all = spots.iter().map(pick).map(Length::in_mm);
                (all.clone().fold(f64::MAX, f64::min), all.fold(f64::MIN, f64::max))
            };
            let ((left, right), (front, rear), (floor, _)) = (along(|at| at.x), along(|at| at.y), along(|at| at.z));
            let found = pushes(picked, &choice, &layout, &case.weigh_parts(picked));
            for (push, (toward, line)) in found.iter().zip([((0.0, -1.0), front), ((0.0, 1.0), rear), ((-1.0, 0.0), left), ((1.0, 0.0), right)]) {
                let lifted = |panel: &crate::cabinet::panel::Panel| {
                    let part = Case::weigh(panel, picked);
                    let (newton, at) = (part.mass.weight().in_newton(), (part.centre.x.in_mm(), part.centre.y.in_mm()));
                    // How far something beside a line rises for an angle of one: it lies behind where the case goes.
                    let rises = |x: f64, y: f64| -(x * toward.0 + y * toward.1);
                    let line = line * (toward.0 + toward.1);
                    match panel.id {
                        PanelId::Upright(_) | PanelId::Back | PanelId::Shelf { .. } | PanelId::Top => newton * (rises(at.0, at.1) + line),
                        PanelId::Leaf(_) => {
                            let pivot = panel.features.iter().find_map(|feature| match feature {
                                crate::cabinet::panel::Feature::Pivot { at, .. } => Some(panel.case_from_panel.origin.x + *at),
                                _ => None,
                            });
                            let out = at.0 - pivot.unwrap().in_mm();
                            newton * rises(out, 0.0).min(rises(0.0, -out.abs()))
                        }
                        _ => 0.0,
                    }
                };
                let work: f64 = case.panels.iter().map(lifted).sum();
                let exact = (work.max(0.0) / (layout.height.in_mm() - floor)).min(push.tied.in_newton());
                prop_assert!((push.empty.in_newton() - exact).abs() < 1e-6, "{push:?} {exact}");
            }
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
            let exact = whole.mass.weight().in_newton() * (whole.centre.y - edge(&range.build, &layout)).in_m();
            let found = Moments::of(all, 0.0).left();
            prop_assert!((found - exact).abs() < exact * 0.03, "{found} {exact}");
        }
    }
}

/// Corners of the convex hull of points, counter-clockwise.
// Source: A. M. Andrew, Another efficient algorithm for convex hulls in two dimensions, Information Processing Letters 9 (1979).
fn hull(mut points: Vec<(f64, f64)>) -> Vec<(f64, f64)> {
    points.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let half = |points: &mut dyn Iterator<Item = (f64, f64)>| {
        let mut chain: Vec<(f64, f64)> = Vec::new();
        for at in points {
            while let [.., a, b] = chain[..]
                && (b.0 - a.0) * (at.1 - a.1) <= (b.1 - a.1) * (at.0 - a.0)
            {
                chain.pop();
            }
            chain.push(at);
        }
        chain.pop();
        chain
    };
    let (under, over) = (half(&mut points.iter().copied()), half(&mut points.iter().rev().copied()));
    [under, over].concat()
}

/// How far it is from a point within a convex polygon to its border, in a direction.
fn way_out(corners: &[(f64, f64)], (x, y): (f64, f64), (along, up): (f64, f64)) -> f64 {
    let edges = corners.iter().zip(corners.iter().cycle().skip(1));
    let ways = edges.filter_map(|(a, b)| {
        let (out_x, out_y) = (b.1 - a.1, a.0 - b.0);
        let leaves = along * out_x + up * out_y;
        (leaves > 1e-9).then(|| ((a.0 - x) * out_x + (a.1 - y) * out_y) / leaves)
    });
    ways.fold(f64::MAX, f64::min)
}

/// Points of an arc, a thousandth of it apart.
fn chords(arc: Segment) -> impl Iterator<Item = Point> {
    let Segment { from, to, bulge } = arc;
    // The centre is (1 − b²)/(4b) chords to the left of the chord's middle.
    let off = (1.0 - bulge * bulge) / (4.0 * bulge);
    let centre =
        Point::new((from.u + to.u) / 2.0 - (to.v - from.v) * off, (from.v + to.v) / 2.0 + (to.u - from.u) * off);
    let start = libm::atan2((from.v - centre.v).in_mm(), (from.u - centre.u).in_mm());
    (0..=1000).map(move |at| {
        let angle = start + 4.0 * libm::atan(bulge) * f64::from(at) / 1000.0;
        let radius = arc.radius();
        Point::new(centre.u + radius * libm::cos(angle), centre.v + radius * libm::sin(angle))
    })
}

/// A unit without leaves tips where its weight, turned by the push, leaves the hull of all that stands on the floor: of the base,
/// or of all boards of its plinth.
#[test]
fn a_unit_tips_about_the_border_of_what_stands_on_the_floor() {
    let range = demo();
    let (mut on_plinths, mut on_bases, mut on_bows) = (0, 0, 0);
    for mut choice in choices(&range, 91, Wanted::Valid).take(400) {
        choice.corner_radius_mm = Dim::mm(0);
        choice.bays.iter_mut().filter(|bay| matches!(bay.fill, Fill::Leaf(_))).for_each(|bay| bay.fill = Fill::Open);
        let judged = judge(&range, &choice);
        let (Some(picked), Some(layout)) = (judged.picked, judged.layout) else { continue };
        let Some(case) = Case::of(picked, &choice, &layout) else { continue };
        let on_floor = case.panels.iter().flat_map(|panel| crate::cabinet::assembly::solids(panel, Bound::Core).blocks);
        let on_floor = on_floor.filter(|block| block.from.z == Length::ZERO);
        let corners = on_floor.flat_map(|Block { from, to }| {
            [(from.x, from.y), (to.x, from.y), (to.x, to.y), (from.x, to.y)].map(|(x, y)| (x.in_mm(), y.in_mm()))
        });
        // A bow by its own outline, in short chords.
        let base = case.panel(PanelId::BaseLower).filter(|_| layout.plinth.is_none() && layout.bows != [None; 2]);
        let arcs = base.into_iter().flat_map(|base| {
            let points = base.outline().segments().filter(|arc| arc.bulge > 0.0).flat_map(chords).collect::<Vec<_>>();
            points.into_iter().map(|at| base.case_from_panel.spot(at, Length::ZERO)).collect::<Vec<_>>()
        });
        let bowed = base.is_some();
        let corners = hull(corners.chain(arcs.map(|spot| (spot.x.in_mm(), spot.y.in_mm()))).collect());
        let parts = case.weigh_parts(picked);
        let whole = Weighed::whole(&parts);
        let centre = (whole.centre.x.in_mm(), whole.centre.y.in_mm());
        let by_lever = whole.mass.weight().in_newton() / layout.height.in_mm();
        for push in pushes(picked, &choice, &layout, &parts) {
            let way = match push.towards {
                Towards::Front => (0.0, -1.0),
                Towards::Rear => (0.0, 1.0),
                Towards::Left => (-1.0, 0.0),
                Towards::Right => (1.0, 0.0),
            };
            let exact = by_lever * way_out(&corners, centre, way);
            let most = if bowed { 1e-2 } else { 1e-6 };
            assert!((push.tied.in_newton() - exact).abs() < most, "{push:?} {exact} {choice:?}");
        }
        *(if layout.plinth.is_some() { &mut on_plinths } else { &mut on_bases }) += 1;
        on_bows += usize::from(bowed);
    }
    assert!(on_plinths > 50 && on_bases > 50 && on_bows > 30, "{on_plinths} {on_bases} {on_bows}");
}
