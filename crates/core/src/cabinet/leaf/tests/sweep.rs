//! The swing of every leaf, swept: turned about its pivots it meets no other part on its way out, and its stop on its way in.
//!
//! In plan, since the axis is upright. The leaf is a polygon round it, with its rounded edges, and above the corner that is cut off it
//! another one; other parts are the boxes and prisms that hold them, as far as they stand at the height of either. The nose of
//! its stop alone is in its way, by what its tongue gives. A step of the sweep is as large as the gap to a part allows,
//! when no point of the leaf moves further than that gap less a margin: so between two steps the leaf is never nearer to the part
//! than the margin.
// Source: conservative advancement: B. Mirtich, Impulse-based Dynamic Simulation of Rigid Body Systems, Berkeley 1996; from memory.

use alloc::collections::BTreeMap;
use core::f64::consts::FRAC_PI_2;

use crate::cabinet::assembly::{Bound, Solids, solids};
use crate::cabinet::case::Case;
use crate::cabinet::layout::Layout;
use crate::cabinet::panel::{Ease, Edge, Feature, Panel, PanelId};
use crate::choice::{Choice, Fill, Hung};
use crate::geometry::outline::Point;
use crate::geometry::space::Block;
use crate::range::{Build, Detent};
use crate::rules::judge;
use crate::rules::leaf::OPEN;
use crate::rules::sample::{Wanted, choices};
use crate::testing::demo;
use crate::units::quantity::Length;

/// A point in plan, in millimetres.
type Dot = (f64, f64);

/// A convex polygon in plan.
type Plan = Vec<Dot>;

/// A leaf turns further inwards by no more than this, in degrees.
const GIVES: f64 = 0.6;

/// A leaf about its axis, its free edge to one side.
struct Turning {
    axis: Dot,
    /// From the axis: what is near it and what is far, since what is near moves little.
    pieces: [Plan; 2],
    /// Which way round it goes as it opens.
    outwards: f64,
}

impl Turning {
    /// Its rounded edges lie within the polygon (`round`), or the polygon within them.
    fn of(panel: &Panel, round: bool) -> Self {
        let (wide, thick, r) = (panel.width.in_mm(), panel.thickness.in_mm(), panel.rounding.in_mm());
        let pivot = panel.features.iter().find_map(|feature| match feature {
            Feature::Pivot { at, .. } => Some(*at),
            _ => None,
        });
        let at = pivot.unwrap();
        let axis = panel.case_from_panel.spot(Point::new(at, Length::ZERO), panel.thickness / 2.0);
        let corners = [(wide - r, r), (wide - r, thick - r), (r, thick - r), (r, r)];
        // Tangents meet over the middles of the steps, chords go from end to end.
        let step = FRAC_PI_2 / 8.0;
        let (count, first, out) = if round { (8, 0.5, r / libm::cos(step / 2.0)) } else { (9, 0.0, r) };
        let mut plan = Plan::new();
        for (corner, (u, deep)) in (0..4u8).zip(corners) {
            for at_step in 0..count {
                let angle = (f64::from(corner) - 1.0) * FRAC_PI_2 + (f64::from(at_step) + first) * step;
                plan.push((u + out * libm::cos(angle) - at.in_mm(), deep + out * libm::sin(angle) - thick / 2.0));
            }
        }
        let is_left = at < panel.width / 2.0;
        let (side, near) = (if is_left { 1.0 } else { -1.0 }, 60.0);
        let pieces = [halved(&plan, |dot| near - dot.0 * side), halved(&plan, |dot| dot.0 * side - near)];
        Self { axis: (axis.x.in_mm(), axis.y.in_mm()), pieces, outwards: -side }
    }

    /// What of it goes on beside a corner so wide.
    fn beside(self, panel: &Panel, wide: Length) -> Self {
        let free = self.pieces.iter().flatten().map(|dot| dot.0.abs()).fold(0.0, f64::max);
        let reach = free - wide.in_mm();
        assert!(wide < panel.width && reach > 60.0, "{}", panel.id);
        let pieces = self.pieces.map(|piece| halved(&piece, |dot| reach - dot.0.abs()));
        Self { pieces, ..self }
    }

    /// One of its pieces, turned outwards by an angle in radians.
    fn turned(&self, piece: &Plan, by: f64) -> Plan {
        let (sine, cosine) = (libm::sin(by * self.outwards), libm::cos(by * self.outwards));
        piece.iter().map(|(x, y)| (self.axis.0 + x * cosine - y * sine, self.axis.1 + x * sine + y * cosine)).collect()
    }

    /// The angle, in degrees, at which it comes too near to something while it turns from shut by so many; outwards if that is
    /// positive. It keeps the margin all the way, and twice as much at each step.
    fn meets(&self, other: &Plan, by: f64, margin: f64) -> Option<f64> {
        let way = by.signum();
        for piece in self.pieces.iter().filter(|piece| piece.len() > 2) {
            let reach = piece.iter().map(|(x, y)| libm::hypot(*x, *y)).fold(0.0, f64::max);
            let (mut turned, end) = (0.0, by.abs().to_radians());
            loop {
                let gap = apart(&self.turned(piece, turned * way), other);
                if gap < margin * 2.0 {
                    return Some(turned.to_degrees() * way);
                }
                if turned >= end {
                    break;
                }
                turned = end.min(turned + (gap - margin) / reach);
            }
        }
        None
    }

    /// Whether it overlaps something when it is turned inwards by an angle in degrees.
    fn is_stopped(&self, other: &Plan, inwards: f64) -> bool {
        self.pieces.iter().any(|piece| apart(&self.turned(piece, -inwards.to_radians()), other) <= 0.0)
    }
}

/// What of a polygon lies where a measure is positive, which is linear.
fn halved(plan: &Plan, measure: impl Fn(Dot) -> f64) -> Plan {
    let mut half = Plan::new();
    for (at, from) in plan.iter().enumerate() {
        let to = plan[(at + 1) % plan.len()];
        let (here, there) = (measure(*from), measure(to));
        if here >= 0.0 {
            half.push(*from);
        }
        if (here >= 0.0) != (there >= 0.0) {
            let share = here / (here - there);
            half.push((from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share));
        }
    }
    half
}

fn edges(plan: &Plan) -> impl Iterator<Item = (Dot, Dot)> + '_ {
    plan.iter().copied().zip(plan.iter().copied().cycle().skip(1))
}

/// How far two convex polygons are apart; nothing if they overlap.
fn apart(one: &Plan, other: &Plan) -> f64 {
    let parted = edges(one).chain(edges(other)).any(|(from, to)| {
        let normal = (to.1 - from.1, from.0 - to.0);
        let extent = |plan: &Plan| {
            let along = plan.iter().map(|dot| dot.0 * normal.0 + dot.1 * normal.1);
            along.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)))
        };
        let (one, other) = (extent(one), extent(other));
        one.1 < other.0 || other.1 < one.0
    });
    let nearest = |dots: &Plan, plan: &Plan| {
        let pairs = dots.iter().flat_map(|dot| edges(plan).map(move |edge| to_edge(*dot, edge)));
        pairs.fold(f64::INFINITY, f64::min)
    };
    if parted { nearest(one, other).min(nearest(other, one)) } else { 0.0 }
}

fn to_edge(dot: Dot, (from, to): (Dot, Dot)) -> f64 {
    let (along, beside) = ((to.0 - from.0, to.1 - from.1), (dot.0 - from.0, dot.1 - from.1));
    let length = along.0 * along.0 + along.1 * along.1;
    let share = ((beside.0 * along.0 + beside.1 * along.1) / length).clamp(0.0, 1.0);
    libm::hypot(beside.0 - along.0 * share, beside.1 - along.1 * share)
}

fn rectangle((left, front): Dot, (right, rear): Dot) -> Plan {
    vec![(left, front), (right, front), (right, rear), (left, rear)]
}

/// From the lower to the upper edge of a part's rectangle.
fn heights(panel: &Panel) -> (Length, Length) {
    let under = panel.case_from_panel.origin.z;
    (under, under + panel.height)
}

/// Width of the corner that is cut off a leaf, and how high up it begins.
fn corner(panel: &Panel) -> (Length, Length) {
    let corner = panel.features.iter().find_map(|feature| match *feature {
        Feature::Notch { edge: Edge::Top, from, to, depth } => Some((to - from, panel.height - depth)),
        _ => None,
    });
    corner.unwrap()
}

/// The detent of a stop, and the height of its upper edge.
fn detent(stop: &Panel) -> (Detent, Length) {
    let detent = stop.features.iter().find_map(|feature| match *feature {
        Feature::Detent(detent) => Some(detent),
        _ => None,
    });
    (detent.unwrap(), heights(stop).1)
}

/// What of a part stands at some heights, in plan.
fn plans(panel: &Panel, bound: Bound, (under, over): (Length, Length)) -> Vec<Plan> {
    let Solids { blocks, prisms } = solids(panel, bound);
    let stands = |low: Length, high: Length| low < over && high > under;
    let dot = |x: Length, y: Length| (x.in_mm(), y.in_mm());
    let blocks = blocks.into_iter().filter(|Block { from, to }| stands(from.z, to.z));
    let blocks = blocks.map(|Block { from, to }| rectangle(dot(from.x, from.y), dot(to.x, to.y)));
    let prisms = prisms.into_iter().filter(|prism| stands(prism.under, prism.over));
    blocks.chain(prisms.map(|prism| prism.plan.iter().map(|(x, y)| dot(*x, *y)).collect())).collect()
}

/// A stop without the corners that a hand takes off its front edge.
fn stop_plan(panel: &Panel) -> Plan {
    let eased = panel.eased().find_map(|(edge, ease)| match ease {
        Ease::Chamfer(wide) if edge == Edge::Left => Some(wide.in_mm()),
        Ease::Chamfer(_) | Ease::Rounding(_) | Ease::TabEnds(_) => None,
    });
    let (origin, off) = (panel.case_from_panel.origin, eased.unwrap());
    let (left, front) = (origin.x.in_mm(), origin.y.in_mm());
    let (right, rear) = (left + panel.thickness.in_mm(), front + panel.width.in_mm());
    vec![
        (left + off, front),
        (right - off, front),
        (right, front + off),
        (right, rear),
        (left, rear),
        (left, front + off),
    ]
}

/// Every leaf of a unit, with what it was found in.
fn each_leaf(choice: &Choice, mut look: impl FnMut(&Panel, &Case, &Layout, Hung)) {
    let range = demo();
    let judged = judge(&range, choice);
    let (picked, layout) = (judged.picked.unwrap(), judged.layout.unwrap());
    let case = Case::of(picked, choice, &layout).unwrap();
    for (bay, chosen) in (1..).zip(&choice.bays) {
        if let Fill::Leaf(hung) = chosen.fill {
            look(case.panel(PanelId::Leaf(bay)).unwrap(), &case, &layout, hung);
        }
    }
}

/// Out to where a hand pushes it each leaf keeps clear of everything, whatever else is shut, by more than its pivots have play, but
/// for the nose that it lifts; and so it does inwards, until its stop holds it.
#[test]
fn a_leaf_meets_nothing_on_its_way_out() {
    let margin = demo().build.pivot_clearance_mm.in_mm() / 2.0;
    let mut swept: BTreeMap<(String, &str), u32> = BTreeMap::new();
    let (mut beside_bows, mut beside_leaves) = (0, 0);
    for choice in choices(&demo(), 83, Wanted::Valid).take(400) {
        each_leaf(&choice, |panel, case, layout, hung| {
            let ((wide, high), (under, over)) = (corner(panel), heights(panel));
            let leaf = [Turning::of(panel, true), Turning::of(panel, true).beside(panel, wide)];
            for part in case.panels.iter().filter(|part| part.id != panel.id) {
                let is_stop = matches!(part.id, PanelId::Stop(_));
                let inwards = if is_stop { 0.0 } else { -GIVES };
                // Below its corner it meets the nose of its stop, and lifts it.
                let below = if is_stop && same_bay(part.id, panel.id) {
                    let (detent, top) = detent(part);
                    top - detent.deep() - Length::mm(1e-6)
                } else {
                    under + high
                };
                for (leaf, at) in leaf.iter().zip([(under, below), (under + high, over)]) {
                    for plan in plans(part, Bound::Hull, at) {
                        for by in [OPEN, inwards] {
                            let met = leaf.meets(&plan, by, margin);
                            assert_eq!(met, None, "{} meets {} of {choice:?}", panel.id, part.id);
                        }
                    }
                }
                beside_leaves += u32::from(matches!(part.id, PanelId::Leaf(_)));
            }
            beside_bows += u32::from(layout.bows.iter().any(Option::is_some));
            let hand = if hung == Hung::Left { "left" } else { "right" };
            *swept.entry((choice.model.to_string(), hand)).or_default() += 1;
        });
    }
    assert!(swept.len() == 6 && swept.values().all(|count| *count >= 15), "{swept:?}");
    assert!(beside_bows > 40 && beside_leaves > 100, "{beside_bows} {beside_leaves}");
}

/// Whether a stop is that of a leaf.
fn same_bay(stop: PanelId, leaf: PanelId) -> bool {
    matches!((stop, leaf), (PanelId::Stop(one), PanelId::Leaf(other)) if one == other)
}

/// Outwards the nose of its stop stands in the way of each leaf before it has turned by 2.5°. As it hangs it overlaps the nose by what
/// the range says, whatever its size, clear of the tongue itself; as it is drawn, plumb, by more, which the tongue gives as well.
#[test]
fn a_leaf_is_held_by_a_nose() {
    let build = demo().build;
    let (mut held, mut widest, mut narrowest) = (0, 0.0_f64, f64::INFINITY);
    for choice in choices(&demo(), 97, Wanted::Valid).take(300) {
        each_leaf(&choice, |panel, case, layout, _| {
            let PanelId::Leaf(bay) = panel.id else { return };
            let (detent, top) = detent(case.panel(PanelId::Stop(bay)).unwrap());
            let ((wide, high), (under, _)) = (corner(panel), heights(panel));
            let free = Turning::of(panel, false).pieces.iter().flatten().map(|dot| dot.0.abs()).fold(0.0, f64::max);
            // The middle of the tongue is a gap, a rounded corner and half a thickness within the end of the cut.
            let beside = free - (wide - build.leaf_gap_mm - detent.relief() - layout.body / 2.0).in_mm();
            let leans = Length::mm(build.pivot_clearance_mm.in_mm() * beside / layout.clear_height().in_mm());
            let (drawn, hangs) = (under + high, under + high - leans);
            let close =
                |found: Length, expected: Length| assert!((found - expected).abs() < Length::mm(1e-9), "{choice:?}");
            close(hangs - (top - detent.deep()), build.detent_rise_mm);
            close(top - detent.under() - hangs, build.detent_play_mm);
            assert!(top - detent.under() - drawn > build.pivot_clearance_mm / 2.0, "{} leans by {leans:?}", panel.id);
            assert!(drawn - (top - detent.deep()) < detent.lifts_by(), "{} leans by {leans:?}", panel.id);
            // Of the nose what is sure to be wood, as high as the leaf hangs.
            let stop = case.panel(PanelId::Stop(bay)).unwrap();
            let nose = plans(stop, Bound::Core, (top - detent.deep(), hangs));
            let leaf = Turning::of(panel, false);
            let meets = |tenths: u8| nose.iter().any(|plan| leaf.is_stopped(plan, -f64::from(tenths) / 10.0));
            let first = (0..=25).find(|tenths| meets(*tenths));
            assert!(first.is_some_and(|first| first > 0), "{} of {choice:?}: {first:?}", panel.id);
            let shape = (panel.width / panel.height).max(0.0);
            (held, widest, narrowest) = (held + 1, widest.max(shape), narrowest.min(shape));
        });
    }
    assert!(held > 150 && widest > 1.2 && narrowest < 0.4, "{held} {widest} {narrowest}");
}

/// Inwards each leaf turns by what the gap to its stop gives, and no further: over its whole height the stop stands behind it.
#[test]
fn a_leaf_is_held_by_its_stop() {
    let build = demo().build;
    let (mut held, mut most) = (0, 0.0_f64);
    for choice in choices(&demo(), 89, Wanted::Valid).take(300) {
        each_leaf(&choice, |panel, case, layout, hung| {
            let PanelId::Leaf(bay) = panel.id else { return };
            let stop = case.panel(PanelId::Stop(bay)).unwrap();
            let ((under, over), (low, high)) = (heights(panel), heights(stop));
            assert!(low <= under && over <= high, "{} does not reach over all of its leaf", stop.id);
            let (leaf, plan) = (Turning::of(panel, false), stop_plan(stop));
            let gives = gives(&build, layout, panel, &plan, leaf.axis);
            let at = |angle: f64| leaf.is_stopped(&plan, angle);
            assert!(!at(0.0) && at(gives) && gives < GIVES, "{} of {choice:?}: {gives}", panel.id);
            // It would have to pass through the stop, which is deeper than it gets in so many degrees.
            let further = |step: u8| gives + f64::from(step) / 10.0;
            assert!((1..=30).all(|step| at(further(step))), "{} goes through", panel.id);
            // At a right angle it leaves the access to its bay, up to its stop.
            let open = leaf.pieces.iter().flat_map(|piece| leaf.turned(piece, FRAC_PI_2)).map(|(x, _)| x);
            let (stop, span) = (stop.case_from_panel.origin.x, &layout.bays[usize::from(bay) - 1]);
            let (beside, ends) = if hung == Hung::Left {
                (open.fold(f64::NEG_INFINITY, f64::max), (span.access_left, stop))
            } else {
                (open.fold(f64::INFINITY, f64::min), (span.access_right, stop + layout.body))
            };
            assert!((beside - ends.0.in_mm()).abs() < 1e-6, "{} ends at {beside}: {span:?}", panel.id);
            let at_stop = if hung == Hung::Left { span.access_right } else { span.access_left };
            assert!((ends.1 - at_stop).abs() < Length::mm(1e-9), "{span:?}");
            (held, most) = (held + 1, most.max(gives));
        });
    }
    assert!(held > 150 && most > 0.2, "{held} {most}");
}

/// By how many degrees a leaf turns inwards at most: its flat goes over the gap where the stop's far corner is. It meets at least
/// what of its flat it should.
fn gives(build: &Build, layout: &Layout, panel: &Panel, stop: &Plan, axis: Dot) -> f64 {
    let reaches = |(x, _): &Dot| (x - axis.0).abs();
    let far = stop.iter().map(reaches).fold(f64::INFINITY, f64::min);
    let origin = panel.case_from_panel.origin.x.in_mm();
    let free = (origin - axis.0).abs().max((origin + panel.width.in_mm() - axis.0).abs());
    let flat = free - panel.rounding.in_mm();
    assert!(flat - far >= build.stop_overlap_mm.in_mm() - 1e-9, "{} overlaps by {}", panel.id, flat - far);
    assert_eq!(layout.stop_front, layout.upright_front + build.stop_gap_mm);
    // Behind the corner that was taken off, a little more than the gap.
    libm::atan(build.stop_gap_mm.in_mm() * 1.02 / (far + build.ease_mm.in_mm())).to_degrees()
}

/// The sweep finds what stands in its way: the same leaf with a part set where it has to pass.
#[test]
fn a_sweep_finds_what_stands_in_its_way() {
    let choice = Choice::first_of(&demo()).unwrap();
    let mut looked = 0;
    each_leaf(&choice, |panel, _, _, hung| {
        let leaf = Turning::of(panel, true);
        let (x, y) = leaf.axis;
        let side = if hung == Hung::Left { 1.0 } else { -1.0 };
        // A pole 300 mm before the axis and as far beside it: at half a right angle a leaf that long has just not met it.
        let pole = |at: f64| rectangle((x + at * side - 1.0, y - at - 1.0), (x + at * side + 1.0, y - at + 1.0));
        let met = leaf.meets(&pole(200.0), OPEN, 0.2).unwrap();
        assert!((40.0..45.0).contains(&met), "{met}");
        assert_eq!(leaf.meets(&pole(400.0), OPEN, 0.2), None);
        assert_eq!(leaf.meets(&pole(200.0), 35.0, 0.2), None);
        looked += 1;
    });
    assert_eq!(looked, 1);
}

/// Worked: a square of 2 and one of 4 mm whose nearest corners are 3 and 4 mm apart, 5 in all.
#[test]
fn polygons_are_as_far_apart_as_their_corners() {
    let (one, other) = (rectangle((0.0, 0.0), (2.0, 2.0)), rectangle((5.0, 6.0), (9.0, 10.0)));
    assert!((apart(&one, &other) - 5.0).abs() < 1e-12);
    assert!(apart(&one, &rectangle((1.0, 1.0), (3.0, 3.0))) <= 0.0);
    assert!((apart(&one, &rectangle((-1.0, 3.5), (3.0, 4.0))) - 1.5).abs() < 1e-12);
}
