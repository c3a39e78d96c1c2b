//! Laws of the case, over the whole choice space.

use proptest::prelude::*;

use crate::business::price::Item;
use crate::business::promise::Backlog;
use crate::cabinet::case::Case;
use crate::cabinet::joint::{FeatureRef, Joint, JointKind};
use crate::cabinet::panel::{Edge, Feature, Panel, PanelId};
use crate::choice::Choice;
use crate::geometry::outline::Point;
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
        Feature::Tab { edge, from, to, depth } => at(edge, from, to, Length::ZERO, depth),
        Feature::Pivot { edge, at: middle, diameter, depth } => {
            at(edge, middle - diameter / 2.0, middle + diameter / 2.0, Length::ZERO, depth)
        }
        Feature::Notch { edge, from, to, depth } => at(edge, from, to, depth, Length::ZERO),
        Feature::Slot { from, to } => (from, to),
        Feature::Bore { centre, diameter } => {
            let half = diameter / 2.0;
            (Point::new(centre.u - half, centre.v - half), Point::new(centre.u + half, centre.v + half))
        }
        Feature::Hole { .. } => panic!("no joint has a hole for cables or fingers"),
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
        // Each part is as wide as its own thickness; the other's notch is wider by the clearance.
        JointKind::Lap => {
            for (notched, standing) in [(joint.takes, joint.id.goes_in), (joint.goes_in, joint.id.takes)] {
                let notch = block(case, notched);
                let other = case.panel(standing).unwrap();
                let sizes = [notch.to.x - notch.from.x, notch.to.y - notch.from.y, notch.to.z - notch.from.z];
                close(
                    sizes[thin(other)].in_mm(),
                    (other.thickness + joint.clearance).in_mm(),
                    &format!("{}", joint.id),
                );
            }
        }
    }
}

fn check_panel(panel: &Panel) {
    let outline = panel.outline();
    let holes: f64 = panel.holes().map(|hole| hole.area().in_mm2()).sum();
    assert!(panel.holes().all(|hole| hole.area().in_mm2() < 0.0), "{} has a hole the wrong way round", panel.id);
    close(outline.area().in_mm2() + holes, panel.area().in_mm2(), &format!("area of {}", panel.id));
    close(outline.length().in_mm(), panel.outer_length().in_mm(), &format!("outline of {}", panel.id));
    let inner: Length = panel.holes().map(|hole| hole.length()).sum();
    close(inner.in_mm(), panel.inner_length().in_mm(), &format!("holes of {}", panel.id));
    if panel.holes().next().is_none() {
        let (found, expected) = (outline.centroid(), panel.centroid());
        close(found.u.in_mm(), expected.u.in_mm(), &format!("centroid of {}", panel.id));
        close(found.v.in_mm(), expected.v.in_mm(), &format!("centroid of {}", panel.id));
    }
    let corners = outline.corners().iter();
    let (mut low, mut high) = (Point::default(), Point::default());
    for corner in corners {
        low = Point::new(low.u.min(corner.at.u), low.v.min(corner.at.v));
        high = Point::new(high.u.max(corner.at.u), high.v.max(corner.at.v));
    }
    close((high.u - low.u).in_mm(), panel.blank().0.in_mm(), &format!("blank of {}", panel.id));
    close((high.v - low.v).in_mm(), panel.blank().1.in_mm(), &format!("blank of {}", panel.id));
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

    /// Looser limits never add a finding that stops.
    #[test]
    fn a_looser_limit_stops_nothing_new(seed in any::<u64>()) {
        let strict = demo();
        let mut loose = demo();
        loose.strength.sag_span_over /= 2.0;
        loose.strength.leaf_most_kg = loose.strength.leaf_most_kg * 2.0;
        loose.build.ligament_mm = loose.build.ligament_mm / 2.0;
        let choice = choices(&strict, seed, Wanted::Any).next().unwrap();
        let stops = |range: &Range| judge(range, &choice).findings.into_iter().filter(|found| found.severity == Severity::Stops).collect::<Vec<_>>();
        let before = stops(&strict);
        for found in stops(&loose) {
            prop_assert!(before.iter().any(|known| known.is_like(&found)), "{found:?}");
        }
    }
}
