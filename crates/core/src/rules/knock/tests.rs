//! The list of what is knocked against what is cut, and narrow wood against the ligament.

use core::cell::OnceCell;

use super::*;
use crate::cabinet::blank::Coated;
use crate::cabinet::layout::Picked;
use crate::cabinet::panel::{Edge, Feature, Panel};
use crate::choice::Choice;
use crate::geometry::neck::{Neck, NeckKind, necks};
use crate::range::Range;
use crate::rules::judge;
use crate::rules::sample::{Wanted, choices};
use crate::testing::demo;

fn with<T>(range: &Range, choice: &Choice, look: impl FnOnce(Subject<'_>) -> T) -> T {
    let judged = judge(range, choice);
    let (picked, layout) = (judged.picked.unwrap(), judged.layout.unwrap());
    let (blanks, coated) = (Blanks { picked, layout: &layout }.all(choice), Coated::of(picked));
    let (cut, work) = (OnceCell::new(), OnceCell::new());
    let (cut, work) = (&cut, &work);
    look(Subject { picked, choice, layout: &layout, blanks: &blanks, coated, cut, work })
}

/// At the share of its strength that the worst section bears it passes, a little below it is found.
#[test]
fn a_knock_is_borne_to_the_last_bit() {
    let mut range = demo();
    // What a tongue bears hangs on no knock.
    range.build.detent_rise_mm = Length::ZERO;
    for model in &demo().models {
        let choice = Choice::starting(model).unwrap();
        range.strength = demo().strength;
        let (part, found, most) = with(&range, &choice, worst).unwrap();
        assert!(found < most && part == PanelId::Upright(1), "{part} {found:?} {most:?}");
        let knock = range.strength.knock_n;
        for (by, stops) in [(0.999_9, false), (1.000_1, true)] {
            range.strength.knock_n = knock * (most / found * by);
            let told = judge(&range, &choice).findings.iter().any(|finding| finding.rule == Rule::Knock);
            assert_eq!(told, stops, "{by}");
        }
    }
}

// The demo range's tongue bears 8.72 N/mm² at 0.9 mm (`statics/detent`). Its board of 17.9 mm with coats grows by 3 × 0.3 % of that, and a cut
// may be off by 0.05 mm: 1.111 mm, 10.76 N/mm² of 24.8, a share of 0.433 9. That is left after 10^((1 − 0.433 9) × 10.45) = 823 700
// times, thrice counted, twice an opening: 137 300 openings.
#[test]
fn a_tongue_tires() {
    let mut range = demo();
    for (openings, stops) in [(135_000, false), (140_000, true)] {
        range.strength.detent_openings = openings;
        let mut looked = 0;
        for model in &range.models {
            let choice = Choice::starting(model).unwrap();
            let judged = judge(&range, &choice);
            let has_leaf = judged.layout.as_ref().unwrap().bays.iter().any(|bay| bay.stop.is_some());
            let told = judged.findings.iter().any(|finding| finding.rule == Rule::Knock);
            assert_eq!(told, stops && has_leaf, "{} {openings}", model.key);
            looked += usize::from(has_leaf);
        }
        assert!(looked > 1, "{looked}");
    }
}

/// Whatever cutter of the common ones cuts it, the demo range's tongue keeps to what its range promises.
#[test]
fn a_tongue_holds_by_any_cutter() {
    let mut range = demo();
    let choice = Choice::first_of(&range).unwrap();
    for cutter in [4.0, 5.0, 6.0, 8.0, 10.0] {
        range.build.cutter_mm = Length::mm(cutter);
        with(&range, &choice, |unit| {
            let (mut seen, left) = (0, fatigue::in_bending(2.0 * f64::from(range.strength.detent_openings)));
            sections(unit, &mut |_, form| {
                let Form::Spring { tongue, over, by, .. } = form else { return };
                let strength = unit.picked.body.bearing_n_per_mm2;
                let short = range.strength.knock_strength / range.strength.material_factor;
                assert!(tongue.bears(over).bending < strength * left, "{cutter}");
                assert!(tongue.bears(by).bending < strength * short, "{cutter}");
                seen += 1;
            });
            assert_eq!(seen, 1);
        });
    }
}

/// The kind of a part, whatever its number.
fn kind(id: PanelId) -> core::mem::Discriminant<PanelId> {
    // Both long boards are alike.
    core::mem::discriminant(&if id == PanelId::PlinthRear { PanelId::PlinthFront } else { id })
}

/// What stands out of a panel: how far, how wide at its root, and whether that is round. Notches at a front edge leave prongs,
/// laps leave ends.
fn standing_out(panel: &Panel, picked: Picked<'_>) -> Vec<(f64, f64, bool)> {
    let relief = relief_radius(picked.range.build.cutter_mm).in_mm();
    let mut all = Vec::new();
    let (mut slots, mut laps) = (Vec::new(), Vec::new());
    for feature in &panel.features {
        match *feature {
            Feature::Tab { edge, from, to, depth, .. } => {
                // At the end of its edge it has one root.
                let length = if matches!(edge, Edge::Bottom | Edge::Top) { panel.width } else { panel.height };
                let roots = if from.in_mm() > 1e-6 && (length - to).in_mm() > 1e-6 { 2.0 } else { 1.0 };
                all.push((depth.in_mm(), (to - from).in_mm() - roots * relief, false));
            }
            Feature::Pivot { diameter, depth, .. } => all.push((depth.in_mm(), diameter.in_mm(), true)),
            Feature::Hook(hook) => {
                let neck = (hook.to - hook.from).in_mm();
                all.push((hook.out().in_mm(), neck, false));
                all.push((hook.nose.in_mm() + relief, neck - relief, false));
                all.push((hook.rise.in_mm(), hook.nose.in_mm(), false));
            }
            // Its tongue stands out from the end of its slit.
            Feature::Detent(detent) => {
                all.push(((detent.free() + detent.out()).in_mm(), detent.tongue.in_mm(), false));
            }
            // Of an edge whose corner is cut off the rest stands out.
            Feature::Notch { edge: Edge::Top, from, to, depth } if from <= Length::ZERO || to >= panel.width => {
                all.push((depth.in_mm(), (panel.width - (to - from)).in_mm(), false));
            }
            Feature::Notch { edge: Edge::Left, from, to, depth } => {
                slots.push((from.in_mm(), to.in_mm(), depth.in_mm()));
            }
            Feature::Notch { from, to, depth, .. } => laps.push((from, to, panel.height - depth)),
            Feature::Slot { .. }
            | Feature::Bore { .. }
            | Feature::Hole { .. }
            | Feature::TurnedSlot(_)
            | Feature::Bow(_) => {}
        }
    }
    // What lies beyond the outermost laps of a board are its ends.
    let ends = laps.iter().map(|(_, to, left)| (*to, *left)).min_by(|a, b| a.0.total_cmp(&b.0)).into_iter();
    let ends =
        ends.chain(laps.iter().map(|(from, _, left)| (panel.width - *from, *left)).min_by(|a, b| a.0.total_cmp(&b.0)));
    all.extend(ends.map(|(reach, left)| (reach.in_mm(), left.in_mm() - relief, false)));
    let deep = slots.iter().map(|slot| slot.2).next();
    slots.extend(
        deep.into_iter().flat_map(|deep| [(0.0, 0.0, deep), (panel.height.in_mm(), panel.height.in_mm(), deep)]),
    );
    slots.sort_by(|a, b| a.0.total_cmp(&b.0));
    all.extend(slots.windows(2).map(|pair| (pair[1].2, pair[1].0 - pair[0].1, false)));
    all
}

/// Every feature that stands out of a part has its section among what is judged: as wide, and as long or longer; and every section
/// is that of a feature.
#[test]
fn what_is_judged_is_what_is_cut() {
    let range = demo();
    let mut seen = Vec::new();
    for choice in choices(&range, 67, Wanted::Valid).take(120) {
        with(&range, &choice, |unit| {
            let (case, mut judged) = (unit.cut().unwrap(), Vec::new());
            sections(unit, &mut |part, form| match form {
                Form::Stub(stub) => judged.push((part, stub.reach.in_mm(), stub.width.in_mm(), false)),
                Form::Pin { reach, diameter } => judged.push((part, reach.in_mm(), diameter.in_mm(), true)),
                Form::Spring { tongue, reach, .. } => {
                    judged.push((part, reach.in_mm(), tongue.height.in_mm(), false));
                }
                Form::Strip { .. } => {}
            });
            let mut met = vec![false; judged.len()];
            for panel in &case.case.panels {
                for (reach, width, round) in standing_out(panel, unit.picked) {
                    let like = |(part, far, wide, pin): &(PanelId, f64, f64, bool)| {
                        let same = kind(*part) == kind(panel.id) && *pin == round && *far > reach - 1e-9;
                        same && *wide < width + 1e-9
                    };
                    assert!(judged.iter().any(like), "{} {reach} {width} {judged:?}", panel.id);
                    for (section, met) in judged.iter().zip(&mut met) {
                        *met |= like(section) && section.1 < reach + 1e-9 && section.2 > width - 1e-9;
                    }
                    seen.push(kind(panel.id));
                }
            }
            for (section, met) in judged.iter().zip(met) {
                assert!(met, "{section:?} of {choice:?}");
            }
        });
    }
    seen.sort_by_key(|kind| format!("{kind:?}"));
    seen.dedup();
    // Uprights, back, shelves, stiles, stops, leaves, staves, bearers and long boards.
    assert_eq!(seen.len(), 9);
}

/// Whether a narrow place lies within a feature that stands out of a panel, reliefs and fillets counted.
fn stands_out(panel: &Panel, neck: Neck) -> bool {
    let relief = relief_radius(panel.cutter);
    panel.features.iter().any(|feature| {
        let (edge, from, to, out) = match *feature {
            Feature::Tab { edge, from, to, depth, .. } => (edge, from, to, depth),
            Feature::Pivot { edge, at, diameter, depth } => (edge, at - diameter / 2.0, at + diameter / 2.0, depth),
            Feature::Hook(hook) => (Edge::Right, hook.from, hook.to + hook.rise, hook.out()),
            _ => return false,
        };
        let (one, two) = (panel.beside(edge, from, Length::ZERO), panel.beside(edge, to, out));
        neck.chord.iter().all(|at| {
            let within = |at: Length, a: Length, b: Length| (a.min(b) - relief..=a.max(b) + relief).contains(&at);
            within(at.u, one.u, two.u) && within(at.v, one.v, two.v)
        })
    })
}

/// Whether it is what stays between the two reliefs in the end of a slot or in the floor of a notch. It stands out by no more than
/// a relief is deep, into the slot, and nothing is held by it.
fn is_between_reliefs(panel: &Panel, neck: Neck) -> bool {
    let reliefs = relief_radius(panel.cutter) * 4.0;
    panel.features.iter().any(|feature| {
        let wall = match *feature {
            Feature::Slot { from, to } => (to.u - from.u).min(to.v - from.v),
            Feature::TurnedSlot(slot) => slot.length.min(slot.width),
            Feature::Notch { from, to, .. } => to - from,
            _ => return false,
        };
        (wall - reliefs - neck.width).abs() < Length::mm(1e-6)
    })
}

/// Whether it is the spring of a detent: its tongue, or its root before the tab behind it, a relief of which lies there.
fn is_spring(panel: &Panel, neck: Neck) -> bool {
    panel.features.iter().any(|feature| {
        let Feature::Detent(detent) = *feature else { return false };
        let (low, high) = (panel.height - detent.deep().max(detent.wood()), panel.height + detent.slit);
        let behind = detent.root + detent.slit + detent.relief();
        neck.chord.iter().all(|at| (low..=high).contains(&at.v) && (-detent.out()..=behind).contains(&at.u))
    })
}

/// What of a unit is narrower than the ligament of its range, and neither stands out by no more than it is wide, nor lies between
/// two reliefs, nor is a spring.
fn too_narrow(range: &Range, choice: &Choice) -> Vec<(PanelId, Neck)> {
    let least = range.build.ligament_mm - Length::mm(1e-6);
    with(range, choice, |unit| {
        let narrow = unit.cut().unwrap().case.panels.iter().flat_map(|panel| {
            let outlines: Vec<_> = core::iter::once(panel.outline()).chain(panel.holes()).collect();
            let whole = move |neck: &Neck| {
                let stub = neck.kind == NeckKind::Stub && stands_out(panel, *neck);
                !stub && !is_between_reliefs(panel, *neck) && !is_spring(panel, *neck)
            };
            necks(&outlines, least).into_iter().filter(whole).map(|neck| (panel.id, neck)).collect::<Vec<_>>()
        });
        narrow.collect()
    })
}

/// No wood between two cut-outs, or between one and the edge, and no strip longer than it is wide, is narrower than the ligament of
/// the range. Shorter projections are those that a knock is judged for.
#[test]
fn no_wood_is_narrower_than_the_ligament() {
    let range = demo();
    for choice in choices(&range, 71, Wanted::Valid).take(300) {
        assert_eq!(too_narrow(&range, &choice), [], "{choice:?}");
    }
}

/// Figures of a range that its check would refuse leave such wood: before the slots of stiles, between those of staves, and beside
/// the holes of pivots.
#[test]
fn narrow_wood_is_found() {
    let found = |change: &dyn Fn(&mut Range), part: PanelId| {
        let mut range = demo();
        change(&mut range);
        choices(&range, 71, Wanted::Valid).take(12).any(|choice| {
            let narrow = too_narrow(&range, &choice);
            narrow.iter().any(|(id, neck)| *id == part && neck.kind == NeckKind::Ligament)
        })
    };
    assert!(found(&|range| range.build.front_inset_mm = range.build.ligament_mm, PanelId::Top));
    assert!(found(&|range| range.bow.tab_mm = Length::mm(26.0), PanelId::BaseUpper));
    assert!(found(&|range| range.build.pivot_inset_mm = Length::mm(14.0), PanelId::BaseUpper));
    assert!(!found(&|_| (), PanelId::Top));
}
