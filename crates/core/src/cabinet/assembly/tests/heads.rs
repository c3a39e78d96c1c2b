//! What stands free until the top comes, and what is said of it.

use super::super::heads::Head;
use super::super::{Step, Way};
use super::*;
use crate::business::bill::Bill;
use crate::cabinet::panel::{Ease, Edge, Feature, Panel};
use crate::units::quantity::Mass;

/// A part that stands in the base alone leans by what its socket lets it. Worked for 18 mm boards: 0.15 mm of clearance over a tab
/// 17.4 mm deep, times its height; of a leaf the 0.4 mm of its pivot over all of the plate. A tall stile leans 15 mm and a stave
/// 8 mm, which no chamfer of 2 mm catches: the step of the top says how many heads a hand has to guide.
#[test]
fn whatever_leans_further_than_its_chamfer_catches_is_guided() {
    let mut range = demo();
    let ([mut stile, mut stave], mut seen) = ([0.0_f64; 2], [0; 2]);
    for chamfer in [2.0, 4.0] {
        range.build.tab_chamfer_mm = Length::mm(chamfer);
        let build = &range.build;
        for choice in choices(&range, 5, Wanted::Valid).take(60) {
            let (picked, case) = made(&range, &choice);
            let body = Layout::of(picked, &choice).unwrap().body;
            let mut heads = 0;
            for panel in &case.panels {
                let (socket, loose) = match panel.id {
                    PanelId::Stile(_) | PanelId::Stop(_) | PanelId::Stave { .. } => {
                        (build.clearance_mm / (body - build.tab_short_mm), build.clearance_loose_mm)
                    }
                    PanelId::Leaf(_) => (build.pivot_clearance_mm / body, build.pivot_clearance_mm),
                    _ => {
                        assert!(Head::of(&case, panel.id).is_none(), "{}", panel.id);
                        continue;
                    }
                };
                let leans = panel.height * socket;
                let head = Head::of(&case, panel.id).unwrap();
                assert!((head.leans - leans).abs() < Length::mm(1e-6), "{} leans {:?}", panel.id, head.leans);
                match panel.id {
                    PanelId::Stile(_) => stile = stile.max(leans.in_mm()),
                    PanelId::Stave { .. } => stave = stave.max(leans.in_mm()),
                    _ => {}
                }
                heads += u8::from(leans.in_mm() > chamfer + loose.in_mm() / 2.0);
                seen[usize::from(leans.in_mm() > chamfer + loose.in_mm() / 2.0)] += 1;
            }
            let steps = Assembly::of(picked, &case).steps;
            let (top, others) = steps.split_last().unwrap();
            assert_eq!((top.part, top.guided), (PanelId::Top, heads), "{choice:?}");
            assert!(others.iter().all(|step| step.guided == 0));
            let said = words::step(top, None);
            assert_eq!(said.contains("one more person guides"), heads > 0, "{said}");
            // Over the shoulders nobody lifts alone.
            let alone = top.reaches > Length::mm(1600.0) && top.people == 1;
            assert_eq!(top.helpers, u8::from(heads > 0) + u8::from(alone), "{said}");
        }
    }
    assert!((15.0..20.0).contains(&stile) && stave > 7.5, "{stile} {stave}");
    assert!(seen[0] > 5 && seen[1] > 300, "{seen:?}");
}

/// A leaf on its lower pivot alone sinks by the gap under it. Its nose then clears it, and its upper pivot stands off by as much as
/// the leaf is higher than it is wide: further than that finds its hole by itself. So a card as thick as the gap lies under its free
/// corner, and is drawn out when the top is on.
#[test]
fn a_card_bears_a_leaf_until_the_top_is_on() {
    let mut range = demo();
    let mut off = 0;
    for (rise, gap, said) in
        [(1.2, 2.5, "card 2.5\u{a0}mm thick"), (0.0, 3.1, "card 3.1\u{a0}mm thick"), (0.0, 0.0, "")]
    {
        (range.build.detent_rise_mm, range.build.leaf_gap_mm) = (Length::mm(rise), Length::mm(gap));
        let build = &range.build;
        for choice in choices(&demo(), 5, Wanted::Valid).take(60) {
            let (picked, case) = made(&range, &choice);
            let steps = Assembly::of(picked, &case).steps;
            let mut leaves = 0;
            for step in steps.iter().filter(|step| matches!(step.part, PanelId::Leaf(_))) {
                leaves += 1;
                assert_eq!(step.card.map(Length::in_mm), (gap > 0.0).then_some(gap));
                let told = words::step(step, None);
                assert!(told.contains(said) && (gap > 0.0 || !told.contains("card")), "{told}");
                let panel = case.panel(step.part).unwrap();
                let free = (panel.width - build.pivot_inset_mm).in_mm();
                let sinks = (gap / free).min(build.pivot_clearance_mm / panel.thickness);
                let aside = sinks * panel.height.in_mm();
                if rise > 0.0 && panel.height > panel.width {
                    assert!(
                        sinks * (free - 30.0) > build.detent_rise_mm.in_mm(),
                        "the nose holds {}",
                        panel.width.in_mm()
                    );
                    assert!(aside > (build.tab_chamfer_mm + build.pivot_clearance_mm / 2.0).in_mm(), "{aside}");
                    off += 1;
                }
            }
            let top = steps.last().unwrap();
            let draws = leaves > 0 && gap > 0.0;
            assert_eq!(top.card.is_some(), draws);
            let told = words::step(top, None);
            let draw = if leaves == 1 {
                "draw the card out from under the door."
            } else {
                "draw each card out from under its door."
            };
            assert_eq!(told.ends_with(draw), draws, "{told}");
            assert_eq!(told.contains("card"), draws, "{told}");
        }
    }
    assert!(off > 20, "{off}");
}

/// One head is guided, or several one after the other. A top that goes on over shoulders wants something to stand on.
#[test]
fn the_top_says_how_many_heads_are_guided_and_how_high_it_is_lifted() {
    let said = |guided, reaches| {
        let top = Step {
            part: PanelId::Top,
            way: Way::default(),
            reaches: Length::mm(reaches),
            closes: Vec::new(),
            at_once: 0,
            mass: Mass::kg(8.0),
            people: 1,
            for_length: false,
            helpers: 0,
            detent: false,
            card: None,
            guided,
        };
        words::step(&top, None)
    };
    assert!(!said(0, 1600.0).contains("lifted"), "{}", said(0, 1600.0));
    assert!(
        said(0, 1655.5)
            .contains("It is lifted to 1\u{202f}656\u{a0}mm: let two people lift it, each on something firm"),
        "{}",
        said(0, 1655.5)
    );
    let said = |guided| said(guided, 900.0);
    assert!(!said(0).contains("guides"), "{}", said(0));
    assert!(said(1).contains("the head of the one part that stands free into it: its weight"), "{}", said(1));
    assert!(
        said(7).contains(
            "the heads of the seven parts that stand free into it, one after the other, those at the rear first: its weight"
        ),
        "{}",
        said(7)
    );
}

/// Chamfered are the upper tabs of all that may lean across its face; whatever else goes into the top is held from front to rear by
/// hooks, or is a pivot.
#[test]
fn the_ends_of_tabs_that_may_lean_are_chamfered() {
    let range = demo();
    let chamfered = |panel: &Panel| {
        panel.eased().find_map(|(edge, ease)| match ease {
            Ease::TabEnds(wide) => Some((edge, wide, panel.eased_length(edge, ease))),
            Ease::Chamfer(_) | Ease::Rounding(_) => None,
        })
    };
    for choice in choices(&range, 5, Wanted::Valid).take(40) {
        let (_, case) = made(&range, &choice);
        for panel in &case.panels {
            let ends: Length = case
                .joints
                .iter()
                .filter(|joint| (joint.id.goes_in, joint.id.takes) == (panel.id, PanelId::Top))
                .filter_map(|joint| panel.features.get(usize::from(joint.goes_in.index)))
                .map(|feature| match *feature {
                    Feature::Tab { from, to, taper, .. } => to - from - taper.across * 2.0,
                    _ => Length::ZERO,
                })
                .sum();
            let held = matches!(panel.id, PanelId::Back | PanelId::Leaf(_));
            let expected = (ends > Length::ZERO && !held).then_some((Edge::Top, Length::mm(2.0), ends));
            assert_eq!(chamfered(panel), expected, "{}", panel.id);
            let without = Panel { tab_chamfer: Length::ZERO, ..panel.clone() };
            assert_eq!(chamfered(&without), None);
            // A chamfer at each face, in the time that chamfers take.
            let [with, without] = [panel, &without].map(|panel| {
                let mut bill = Bill::default();
                bill.add(panel, Mass::kg(1.0));
                bill.chamfers
            });
            let ends = if held { Length::ZERO } else { ends };
            assert!((with - without - ends * 2.0).abs() < Length::mm(1e-6), "{}", panel.id);
        }
    }
}

/// A light part that is long says why two carry it; who helps is counted, and then the sentence says what for.
#[test]
fn what_a_part_weighs_is_said_with_all_who_are_needed() {
    let range = demo();
    let mut met = [0, 0, 0];
    for choice in choices(&range, 31, Wanted::Valid).take(60) {
        let (picked, case) = made(&range, &choice);
        for step in Assembly::of(picked, &case).steps {
            let said = words::burden(&step);
            let by_mass = range.handling.people(step.mass, Length::ZERO);
            let for_length = step.people > by_mass && step.helpers == 0;
            assert_eq!(said.ends_with(", for its length"), for_length, "{said}");
            let all = step.people + step.helpers;
            assert_eq!(said.contains(&format!(", {all} people")), all > 1, "{said}");
            met[usize::from(for_length) + 2 * usize::from(step.helpers > 0)] += 1;
        }
    }
    assert!(met.iter().all(|met| *met > 10), "{met:?}");
}
