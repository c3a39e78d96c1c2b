//! Which other way round parts would go in, and what is said of it.

use std::collections::BTreeMap;

use super::super::Turn;
use super::*;
use crate::cabinet::joint::JointId;
use crate::cabinet::panel::{Edge, Feature, Panel};

/// How far tabs stand out of an edge: the least and the most.
fn tabs(panel: &Panel, wanted: Edge) -> (f64, f64) {
    let depths = panel.features.iter().filter_map(|feature| match *feature {
        Feature::Tab { edge, depth, .. } if edge == wanted => Some(depth.in_mm()),
        _ => None,
    });
    depths.fold((f64::INFINITY, 0.0), |(least, most), depth| (depth.min(least), depth.max(most)))
}

/// From the front edge to the foremost slot, and from the rearmost one to the rear edge.
fn from_edges(panel: &Panel) -> (f64, f64) {
    let slots = panel.features.iter().filter_map(|feature| match feature {
        Feature::Slot { from, to } => Some((from.v.in_mm(), (panel.height - to.v).in_mm())),
        _ => None,
    });
    slots.fold((f64::INFINITY, f64::INFINITY), |(front, rear), slot| (slot.0.min(front), slot.1.min(rear)))
}

/// What is said is true of the part, and tells the right way from every wrong one that would go in: it names the face, or the end, or
/// both, as far as the step's sentence does not.
#[test]
fn what_is_said_of_a_way_round_tells_it_from_the_wrong_ones() {
    let range = demo();
    let mut met: BTreeMap<&str, u32> = BTreeMap::new();
    for choice in choices(&range, 5, Wanted::Valid).take(120) {
        let (picked, case) = made(&range, &choice);
        for step in Assembly::of(picked, &case).steps {
            let panel = case.panel(step.part).unwrap();
            let wrong = Turn::wrong(&case, step.part, &step.closes);
            let said = words::way_round(&step, &wrong).unwrap_or_default();
            let ((_, down), (_, up)) = (tabs(panel, Edge::Bottom), tabs(panel, Edge::Top));
            let all = |turns: &[Turn]| wrong.iter().all(|turn| turns.contains(turn));
            let faces = wrong.iter().any(|turn| turn.shows_other_face());
            match step.part {
                PanelId::Upright(_) => assert!(said.starts_with("Longer tabs down, hooks") && down > up + 1.0),
                PanelId::Stile(_) | PanelId::Stave { .. } => {
                    // A turn that leaves its lower end down leaves it as it is.
                    assert!(all(&[Turn::InPlane, Turn::AboutU]), "{:?} of {}", wrong, step.part);
                    assert_eq!(said == "Longer tab down.", down > up + 0.5, "{}", step.part);
                }
                PanelId::BaseLower if step.closes.is_empty() => {
                    let (front, rear) = from_edges(panel);
                    assert_eq!(said.contains("nearer slots to the front"), wrong.contains(&Turn::InPlane));
                    assert!(front < rear - 10.0, "{front} {rear}");
                    assert_eq!(said.contains("Label down"), faces);
                }
                PanelId::Back => {
                    assert_eq!(said.contains("Label to the rear"), faces);
                    assert_eq!(
                        said.to_lowercase().contains("slots and holes as in the picture"),
                        wrong.contains(&Turn::InPlane)
                    );
                }
                PanelId::PlinthFront | PanelId::PlinthRear => {
                    assert_eq!(said.contains("Label"), wrong.contains(&Turn::AboutV));
                }
                PanelId::Stop(_) => assert!(all(&[Turn::AboutV]) && words::step(&step, None).contains("tongue up")),
                PanelId::Leaf(_) => assert!(all(&[Turn::AboutU]) && words::step(&step, None).contains("corner up")),
                // Whichever way they go in, they are the same; else they do not go in.
                PanelId::Shelf { .. } | PanelId::Bearer(_) | PanelId::Top => assert!(all(&[]), "{}", step.part),
                PanelId::BaseLower | PanelId::BaseUpper => assert_eq!(said.contains("Label down"), faces),
            }
            assert!(said.len() < 70, "{said}");
            *met.entry(said).or_default() += 1;
        }
    }
    assert!(met.len() > 6 && met.values().all(|met| *met > 0), "{met:?}");
}

/// Worked by hand: a strip with one tab at each end goes in upside down if the other tab is no longer, and that is wrong if it is shorter;
/// with the upper one aside it goes in mirrored.
#[test]
fn a_strip_goes_in_upside_down_if_its_other_tab_is_no_longer() {
    let range = demo();
    let choice = choices(&range, 5, Wanted::Valid)
        .find(|choice| made(&range, choice).1.panels.iter().any(|panel| panel.id == PanelId::Stile(1)))
        .unwrap();
    let (_, case) = made(&range, &choice);
    let turns = |upper: f64, aside: f64| {
        let mut case = case.clone();
        let foot: Vec<JointId> = case
            .joints
            .iter()
            .map(|joint| joint.id)
            .filter(|id| id.goes_in == PanelId::Stile(1) && id.takes != PanelId::Top)
            .collect();
        let stile = case.panels.iter_mut().find(|panel| panel.id == PanelId::Stile(1)).unwrap();
        let lower = tabs(stile, Edge::Bottom).1;
        for feature in &mut stile.features {
            if let Feature::Tab { edge: Edge::Top, from, to, depth, .. } = feature {
                *depth = Length::mm(lower + upper);
                (*from, *to) = (*from + Length::mm(aside), *to + Length::mm(aside));
            }
        }
        Turn::wrong(&case, PanelId::Stile(1), &foot)
    };
    assert_eq!(turns(0.0, 0.0), []);
    assert_eq!(turns(-2.0, 0.0), [Turn::InPlane, Turn::AboutU]);
    assert_eq!(turns(2.0, 0.0), []);
    // Mirrored it stands in the base, and the top does not go on.
    assert_eq!(turns(0.0, 3.0), [Turn::AboutV]);
}

/// A part of which nothing is wrong says nothing.
#[test]
fn nothing_is_said_where_no_turn_is_wrong() {
    let range = demo();
    let choice = choices(&range, 5, Wanted::Valid).next().unwrap();
    let (picked, case) = made(&range, &choice);
    for step in Assembly::of(picked, &case).steps {
        assert_eq!(words::way_round(&step, &[]), None);
    }
}
