//! Laws of the case, over the whole choice space.

use std::collections::BTreeMap;

use proptest::prelude::*;

use crate::business::price::Item;
use crate::business::promise::Backlog;
use crate::cabinet::case::Case;
use crate::cabinet::joint::{FeatureRef, Joint, JointKind};
use crate::cabinet::panel::{Edge, Feature, Hook, Panel, PanelId, TurnedSlot};
use crate::choice::Choice;
use crate::geometry::outline::{Corner, Point, Segment};
use crate::geometry::space::Block;
use crate::order::derive::{Derived, advise, derive};
use crate::order::document::Document;
use crate::range::Range;
use crate::rules::finding::Severity;
use crate::rules::judge;
use crate::rules::sample::{Wanted, choices};
use crate::testing::demo;
use crate::units::quantity::{Length, Mass};

fn close(found: f64, expected: f64, what: &str) {
    assert!((found - expected).abs() < 1e-6 * expected.abs().max(1.0), "{what}: {found} is not {expected}");
}

fn with(range: &Range, choice: &Choice, check: impl FnOnce(&Derived<'_>)) {
    let backlog = Backlog::default();
    check(&derive(range, choice, "2026-11-25".parse().unwrap(), &backlog));
}

/// The rectangle of a feature on its panel.
fn patch(panel: &Panel, feature: Feature) -> (Point, Point) {
    let at = |edge, from, to, inner: Length, outer: Length| match edge {
        Edge::Bottom => (Point::new(from, -outer), Point::new(to, inner)),
        Edge::Top => (Point::new(from, panel.height - inner), Point::new(to, panel.height + outer)),
        Edge::Left => (Point::new(-outer, from), Point::new(inner, to)),
        Edge::Right => (Point::new(panel.width - inner, from), Point::new(panel.width + outer, to)),
    };
    match feature {
        Feature::Tab { edge, from, to, depth, .. } => at(edge, from, to, Length::ZERO, depth),
        Feature::Pivot { edge, at: middle, diameter, depth } => {
            at(edge, middle - diameter / 2.0, middle + diameter / 2.0, Length::ZERO, depth)
        }
        // Its neck.
        Feature::Hook(Hook { from, to, neck, .. }) => at(Edge::Right, from, to, Length::ZERO, neck),
        Feature::Notch { edge, from, to, depth } => at(edge, from, to, depth, Length::ZERO),
        Feature::Slot { from, to } => (from, to),
        Feature::Bore { centre, diameter } => {
            let half = diameter / 2.0;
            (Point::new(centre.u - half, centre.v - half), Point::new(centre.u + half, centre.v + half))
        }
        Feature::Hole { .. } | Feature::Bow(_) | Feature::TurnedSlot(_) | Feature::Detent(_) => {
            panic!("of no joint, or of a turned one")
        }
    }
}

/// The feature as a block in the case, through the thickness of its panel.
fn block(case: &Case, of: FeatureRef) -> Block {
    let panel = case.panel(of.panel).unwrap();
    let feature = panel.features[usize::from(of.index)];
    let (from, to) = patch(panel, feature);
    // A pivot is thinner than its leaf.
    let skin = match feature {
        Feature::Pivot { diameter, .. } => (panel.thickness - diameter) / 2.0,
        _ => Length::ZERO,
    };
    let place = panel.case_from_panel;
    Block { from: place.spot(from, skin), to: place.spot(to, panel.thickness - skin) }
}

/// Free room of the taking side round the going-in side, along x, y and z.
fn free(case: &Case, joint: &Joint) -> [f64; 3] {
    let (inside, outside) = (block(case, joint.goes_in), block(case, joint.takes));
    let free =
        |inside: (Length, Length), outside: (Length, Length)| ((outside.1 - outside.0) - (inside.1 - inside.0)).in_mm();
    [
        free((inside.from.x, inside.to.x), (outside.from.x, outside.to.x)),
        free((inside.from.y, inside.to.y), (outside.from.y, outside.to.y)),
        free((inside.from.z, inside.to.z), (outside.from.z, outside.to.z)),
    ]
}

/// Axis of a panel's thickness.
fn thin(panel: &Panel) -> usize {
    let (near, far) = (
        panel.case_from_panel.spot(Point::default(), Length::ZERO),
        panel.case_from_panel.spot(Point::default(), panel.thickness),
    );
    [near.x != far.x, near.y != far.y, near.z != far.z].iter().position(|moved| *moved).unwrap()
}

/// Both sides of a joint, each read off its own panel, fit by the stated clearance.
fn check_joint(case: &Case, joint: &Joint) {
    if let Feature::TurnedSlot(slot) = case.panel(joint.id.takes).unwrap().features[usize::from(joint.takes.index)] {
        return check_turned(case, joint, slot);
    }
    let free = free(case, joint);
    let goes_in = thin(case.panel(joint.id.goes_in).unwrap());
    let takes = thin(case.panel(joint.id.takes).unwrap());
    let clearance = joint.clearance.in_mm();
    match joint.kind {
        // Through the taking part, the clearance is along the tab and across it.
        JointKind::Tab | JointKind::Pivot => {
            for axis in (0..3).filter(|axis| *axis != takes) {
                close(free[axis], clearance, &format!("{} along {axis}", joint.id));
            }
        }
        // Open at the front, so the clearance is across the ear, and half of it at the ear's end.
        JointKind::Ear => {
            close(free[goes_in], clearance, &format!("{} across", joint.id));
            close(free[1], clearance / 2.0, &format!("{} at its end", joint.id));
        }
        // Each is cut as wide as the other is thick, and both so deep that the floors of their cuts stay apart.
        JointKind::Lap => {
            close(free[goes_in], clearance, &format!("{} across the upper one", joint.id));
            close(free[takes], -clearance, &format!("{} across the lower one", joint.id));
            let (upper, lower) = (block(case, joint.goes_in), block(case, joint.takes));
            close((upper.to.z - lower.from.z).in_mm(), clearance, &format!("{} between the floors", joint.id));
            assert!(upper.from.z == Length::ZERO && upper.to.z < lower.to.z, "{} stands on the floor", joint.id);
        }
        // The slot is wider than the upright, the neck longer than the back is thick; the back lies on the neck, with
        // room for the nose under it.
        JointKind::Hook => {
            close(free[goes_in], clearance, &format!("{} across", joint.id));
            close(free[takes], -clearance, &format!("{} between edge and nose", joint.id));
            let (neck, slot) = (block(case, joint.goes_in), block(case, joint.takes));
            close(slot.to.z.in_mm(), neck.to.z.in_mm(), &format!("{} on its neck", joint.id));
            let panel = case.panel(joint.id.goes_in).unwrap();
            let Feature::Hook(hook) = panel.features[usize::from(joint.goes_in.index)] else { panic!("{}", joint.id) };
            assert!((neck.from.z - slot.from.z) > hook.rise, "{} has no room for its nose", joint.id);
        }
    }
}

/// The tab of a part that stands turned, in the axes of its slot: in its middle, as much smaller as the clearance says.
fn check_turned(case: &Case, joint: &Joint, slot: TurnedSlot) {
    let (stave, plate) = (case.panel(joint.id.goes_in).unwrap(), case.panel(joint.id.takes).unwrap());
    let Feature::Tab { from, to, .. } = stave.features[usize::from(joint.goes_in.index)] else {
        panic!("{}", joint.id)
    };
    let aim = slot.aim;
    let mut span = [(f64::INFINITY, f64::NEG_INFINITY); 2];
    for (u, deep) in [(from, Length::ZERO), (to, Length::ZERO), (from, stave.thickness), (to, stave.thickness)] {
        let at = plate.case_from_panel.point(stave.case_from_panel.spot(Point::new(u, Length::ZERO), deep));
        let (u, v) = ((at.u - slot.centre.u).in_mm(), (at.v - slot.centre.v).in_mm());
        for (span, along) in span.iter_mut().zip([u * aim.x + v * aim.y, v * aim.x - u * aim.y]) {
            *span = (span.0.min(along), span.1.max(along));
        }
    }
    let half = joint.clearance.in_mm() / 2.0;
    for (span, wide) in span.into_iter().zip([slot.length.in_mm(), slot.width.in_mm()]) {
        close(span.0 + wide / 2.0, half, &format!("{} before", joint.id));
        close(wide / 2.0 - span.1, half, &format!("{} behind", joint.id));
    }
    let (under, over) = (plate.case_from_panel.origin.z, plate.case_from_panel.origin.z + plate.thickness);
    assert!(joint.shared.from.z >= under && joint.shared.to.z <= over && joint.shared.from.z < joint.shared.to.z);
}

fn check_panel(panel: &Panel) {
    let outline = panel.outline();
    let holes: f64 = panel.holes().map(|hole| hole.area().in_mm2()).sum();
    assert!(panel.holes().all(|hole| hole.area().in_mm2() < 0.0), "{} has a hole the wrong way round", panel.id);
    close(outline.area().in_mm2() + holes, panel.area().in_mm2(), &format!("area of {}", panel.id));
    close(outline.length().in_mm(), panel.outer_length().in_mm(), &format!("outline of {}", panel.id));
    let inner: Length = panel.holes().map(|hole| hole.length()).sum();
    close(inner.in_mm(), panel.inner_length().in_mm(), &format!("holes of {}", panel.id));
    // With its holes by their own outlines.
    if panel.holes().next().is_some() {
        let loops: Vec<_> = panel
            .holes()
            .chain([outline.clone()])
            .map(|outline| (outline.area().in_mm2(), outline.centroid()))
            .collect();
        let moment = |of: fn(Point) -> Length| loops.iter().map(|(area, at)| area * of(*at).in_mm()).sum::<f64>();
        let (area, expected) = (panel.area().in_mm2(), panel.centroid());
        close(moment(|at| at.u) / area, expected.u.in_mm(), &format!("centroid of {}", panel.id));
        close(moment(|at| at.v) / area, expected.v.in_mm(), &format!("centroid of {}", panel.id));
    } else {
        let (found, expected) = (outline.centroid(), panel.centroid());
        close(found.u.in_mm(), expected.u.in_mm(), &format!("centroid of {}", panel.id));
        close(found.v.in_mm(), expected.v.in_mm(), &format!("centroid of {}", panel.id));
    }
    // The middle of an arc that bulges out is an extreme of the outline as well.
    let middles = outline.segments().filter(|segment| segment.bulge > 0.0).map(|segment| {
        let (middle, bulge) = (segment.at(0.5), segment.bulge / 2.0);
        let Segment { from, to, .. } = segment;
        Corner { at: Point::new(middle.u + (to.v - from.v) * bulge, middle.v - (to.u - from.u) * bulge), bulge: 0.0 }
    });
    let (mut low, mut high) = (Point::default(), Point::default());
    for corner in outline.corners().iter().copied().chain(middles) {
        low = Point::new(low.u.min(corner.at.u), low.v.min(corner.at.v));
        high = Point::new(high.u.max(corner.at.u), high.v.max(corner.at.v));
    }
    close((high.u - low.u).in_mm(), panel.blank().0.in_mm(), &format!("blank of {}", panel.id));
    close((high.v - low.v).in_mm(), panel.blank().1.in_mm(), &format!("blank of {}", panel.id));
}

/// The top meets its tabs rank by rank: the longest first, never more than two thirds of them at once, and each finds its slot.
#[test]
fn the_top_meets_its_tabs_one_rank_after_another() {
    let range = demo();
    let mut most = 0;
    for choice in choices(&range, 19, Wanted::Valid).take(200) {
        let judged = judge(&range, &choice);
        let case = Case::of(judged.picked.unwrap(), &choice, &judged.layout.unwrap()).unwrap();
        let top = case.joints.iter().filter(|joint| joint.id.takes == PanelId::Top);
        let mut ranks: BTreeMap<u64, usize> = BTreeMap::new();
        for joint in top.clone() {
            let reach = (joint.shared.to.z - joint.shared.from.z).to_hundredth_mm().to_bits();
            *ranks.entry(reach).or_default() += 1;
            let panel = case.panel(joint.goes_in.panel).unwrap();
            if let Feature::Tab { taper, .. } = panel.features[usize::from(joint.goes_in.index)] {
                assert!(taper.across == range.build.taper_across_mm && taper.along == range.build.taper_along_mm);
            }
        }
        let (all, largest) = (top.count(), ranks.values().copied().max().unwrap());
        assert!(ranks.len() >= 2 && largest * 3 <= all * 2, "{choice:?}: {ranks:?}");
        most = most.max(largest);
    }
    assert!(most <= 14, "{most} at once");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn no_choice_makes_it_panic_and_what_is_said_is_true(seed in any::<u64>()) {
        let range = demo();
        for choice in choices(&range, seed, Wanted::Any).take(3) {
            with(&range, &choice, |derived| {
                let text = serde_json::to_string(&Document::of(derived)).unwrap();
                assert!(!text.contains("null,null"), "{text}");
                assert_eq!(derived.orderable().is_some(), judge(&range, &choice).holds());
                assert!(derived.built.is_some() || derived.stops().next().is_some());
            });
        }
    }

    #[test]
    fn every_valid_unit_is_whole(seed in any::<u64>()) {
        let range = demo();
        let choice = choices(&range, seed, Wanted::Valid).next().unwrap();
        with(&range, &choice, |derived| {
            let built = derived.built.as_ref().unwrap();
            built.cut.case.panels.iter().for_each(check_panel);
            built.cut.case.joints.iter().for_each(|joint| check_joint(&built.cut.case, joint));
            assert!(built.cut.parts.iter().all(|(_, part)| part.mass > Mass::kg(0.05)));
            let sum: Mass = built.cut.parts.iter().map(|(_, part)| part.mass).sum();
            close(sum.in_kg(), built.whole.mass.in_kg(), "mass");
            let lines = built.price.lines.iter().map(|line| line.amount_minor).sum();
            assert_eq!(built.price.total_minor, lines);
            assert!(built.price.amount(Item::Sheets).in_minor() > 0);
            let ids: Vec<PanelId> = built.cut.case.panels.iter().map(|panel| panel.id).collect();
            assert!(ids.is_sorted() && built.cut.case.joints.is_sorted_by_key(|joint| joint.id));
        });
    }

    /// Seen in a mirror, a unit weighs and costs the same, its centre of gravity mirrored.
    #[test]
    fn a_mirrored_unit_weighs_and_costs_the_same(seed in any::<u64>()) {
        let range = demo();
        let choice = choices(&range, seed, Wanted::Valid).next().unwrap();
        let mirrored = choice.mirrored();
        with(&range, &choice, |derived| with(&range, &mirrored, |other| {
            let (one, two) = (derived.built.as_ref().unwrap(), other.built.as_ref().unwrap());
            close(one.whole.mass.in_kg(), two.whole.mass.in_kg(), "mass");
            close(one.whole.centre.x.in_mm(), choice.width_mm.length().in_mm() - two.whole.centre.x.in_mm(), "centre");
            let apart = one.price.total_minor - two.price.total_minor;
            assert!(apart.in_minor().abs() <= 2, "{apart:?}: the lines' rounding alone");
        }));
    }

    /// An offset by the cutter's radius leaves something of every relief, fillet and hole.
    #[test]
    fn inner_arcs_are_rounder_than_the_cutter(seed in any::<u64>(), cutter in 4u8..=12) {
        let mut range = demo();
        range.build.cutter_mm = Length::mm(f64::from(cutter));
        let choice = choices(&range, seed, Wanted::Valid).next().unwrap();
        let judged = judge(&range, &choice);
        let case = Case::of(judged.picked.unwrap(), &choice, &judged.layout.unwrap()).unwrap();
        let mut arcs = 0;
        for panel in &case.panels {
            for outline in panel.holes().chain([panel.outline()]) {
                // Material lies at the left: what turns right is inside.
                for arc in outline.segments().filter(|segment| segment.bulge < 0.0) {
                    let over = arc.radius() - range.build.cutter_mm / 2.0;
                    prop_assert!(over.in_mm() > 0.09, "{}: {over:?}", panel.id);
                    arcs += 1;
                }
            }
        }
        prop_assert!(arcs > 0);
    }

    /// A remedy was tried: after it the finding is gone, and no other has come that matters as much or more.
    #[test]
    fn remedies_mend(seed in any::<u64>()) {
        let range = demo();
        for choice in choices(&range, seed, Wanted::Any).take(2) {
            let findings = advise(&range, &choice, None);
            for finding in &findings {
                for remedy in &finding.remedies {
                    let after = judge(&range, &choice.with(remedy, &range)).findings;
                    for found in after.iter().filter(|found| found.severity <= finding.severity) {
                        assert!(!found.is_like(finding), "{remedy:?} leaves {found:?}");
                        assert!(findings.iter().any(|known| known.is_like(found)), "{remedy:?} brings {found:?}");
                    }
                }
            }
        }
    }

    /// Looser limits never add a finding that stops. Figures by which parts stand, as the ligament, are no mere limits.
    #[test]
    fn a_looser_limit_stops_nothing_new(seed in any::<u64>()) {
        let strict = demo();
        let mut loose = demo();
        loose.strength.sag_span_over /= 2.0;
        loose.strength.leaf_most_kg = loose.strength.leaf_most_kg * 2.0;
        loose.strength.knock_n = loose.strength.knock_n / 2.0;
        let choice = choices(&strict, seed, Wanted::Any).next().unwrap();
        let stops = |range: &Range| judge(range, &choice).findings.into_iter().filter(|found| found.severity == Severity::Stops).collect::<Vec<_>>();
        let before = stops(&strict);
        for found in stops(&loose) {
            prop_assert!(before.iter().any(|known| known.is_like(&found)), "{found:?}");
        }
    }
}
