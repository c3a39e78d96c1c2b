//! Steps of assembly and what comes free.

use super::LOCALE;
use super::count::number_of;
use super::name::{all_parts, part};
use crate::cabinet::assembly::{Disturbance, Disturbed, Step};
use crate::cabinet::panel::PanelId;
use crate::units::quantity::Length;

pub(in crate::words) fn step(step: &Step) -> String {
    let what = part(step.part);
    match step.part {
        PanelId::PlinthFront => {
            format!("Set the {what} on edge, slots up, a step away from the wall: the back goes in from behind.")
        }
        PanelId::PlinthRear => format!("Set the {what} behind it, slots up."),
        PanelId::Bearer(_) => format!("Drop {what} onto both plinth boards, slots over slots."),
        PanelId::BaseLower if !step.closes.is_empty() => {
            format!("See that the plinth stands level, then lower the {what} over its tabs.")
        }
        PanelId::BaseLower => {
            format!("Lay the {what} level before the place where the unit is to stand: the back comes from behind.")
        }
        PanelId::BaseUpper => format!("Lay the {what} on it, slots over slots."),
        PanelId::Upright(_) => format!("Stand {what} up, tabs down through both base plates."),
        PanelId::Back => {
            format!(
                "Bring the {what} forward over the hooks of the uprights, let it down onto them, then push all to its place."
            )
        }
        PanelId::Shelf { .. } => format!("Slide {what} in from the front until its tabs are in the back."),
        PanelId::Stile(_) => format!("Lower {what} in front of its upright into the base."),
        PanelId::Stave { .. } => format!("Lower {what} into the base: its slot gives it its turn."),
        PanelId::Stop(_) if step.detent => {
            format!(
                "Lower the {what} into the base behind its door, nose up and to the front: that ends in front of the door's notched corner, and you may let go of the door."
            )
        }
        PanelId::Stop(_) => format!("Lower the {what} into the base, either narrow edge to the front."),
        PanelId::Leaf(_) => leaf(step, &what),
        PanelId::Top => top(step),
    }
}

fn leaf(step: &Step, what: &str) -> String {
    match (step.detent, step.card.map(|thick| LOCALE.distance(thick))) {
        (true, Some(thick)) => format!(
            "Stand the {what} on its lower pivot, notched corner up, on the free side, with a strip of card {thick} thick under its free lower \
             corner until the top is on. Let somebody hold it there until its stop stands, which comes next."
        ),
        (true, None) => {
            format!(
                "Stand the {what} on its lower pivot, notched corner up, on the free side, and let somebody hold it there until its stop stands, which comes next."
            )
        }
        (false, Some(thick)) => format!(
            "Stand the {what} on its lower pivot, with a strip of card {thick} thick under its free lower corner until the top is on."
        ),
        (false, None) => format!("Stand the {what} on its lower pivot."),
    }
}

fn top(step: &Step) -> String {
    let lower = match step.guided {
        0 => "Lower the top over all tabs and pivots: its weight holds the unit.".into(),
        1 => {
            "Lower the top over all tabs and pivots, while one more person guides the head of the one part that stands \
              free into it. Its weight holds the unit."
                .into()
        }
        heads => format!(
            "Lower the top over all tabs and pivots, while one more person guides the heads of the {} that stand free into \
             it, one after the other, those at the rear first. Its weight holds the unit.",
            number_of(heads, "part", "parts")
        ),
    };
    match step.card {
        Some(_) => format!("{lower} Then draw each card out from under its door."),
        None => lower,
    }
}

pub(in crate::words) fn last_step(longest_screw: Option<Length>) -> String {
    match longest_screw {
        Some(longest) => format!(
            "See that it stands level, then fasten it to the wall with its tether before you put anything in or on it. The tether \
             goes on the rear face of the back, beside the uppermost hook of an end upright, never on the top, which lifts off: by \
             screws of {} at most, or they come through.",
            LOCALE.distance(longest)
        ),
        None => "See that it stands level before you put anything in or on it.".into(),
    }
}

pub(in crate::words) fn burden(step: &Step) -> String {
    match step.people {
        0 | 1 => LOCALE.mass(step.mass),
        people => format!("{}, {people} people", LOCALE.mass(step.mass)),
    }
}

pub(in crate::words) fn disturbed(disturbed: &Disturbed) -> String {
    let first = all_parts(&disturbed.first);
    match (disturbed.by, disturbed.swings.is_empty()) {
        (Disturbance::LiftedByTop, _) => {
            format!("Lifted by its top, {first} comes off and the rest stays. Take it apart to move it.")
        }
        (Disturbance::LaidOnSide, true) => {
            format!("Laid on its side it comes apart: nothing holds {first}. Never lay it down whole.")
        }
        (Disturbance::LaidOnSide, false) => format!(
            "Laid on its side it comes apart: nothing holds {first}. Doors swing by their own weight. Never lay it down whole."
        ),
        (Disturbance::LaidOnBack, true) => {
            format!("Laid on its back it comes apart: nothing holds {first}. Never lay it down whole.")
        }
        (Disturbance::LaidOnBack, false) => format!(
            "Laid on its back it comes apart: nothing holds {first}. Doors swing by their own weight. Never lay it down whole."
        ),
        (Disturbance::LaidOnFront, true) => {
            format!("Laid on its front it comes apart: nothing holds {first}. Never lay it down whole.")
        }
        (Disturbance::LaidOnFront, false) => format!(
            "Laid on its front it comes apart: nothing holds {first}. Doors swing by their own weight. Never lay it down whole."
        ),
        (Disturbance::Unlevel, true) => "Out of level nothing slides, but the unit tips sooner. Level it.".into(),
        (Disturbance::Unlevel, false) => {
            "Out of level nothing slides, but doors swing by themselves and the unit tips sooner. Level it.".into()
        }
    }
}

// Common practice.
pub(in crate::words) const CAUTIONS: [&str; 2] = [
    "To move it, take it apart: top first, then the steps backwards. Without the top a door stands on one pivot and can fall: somebody holds it until it is out.",
    "Wear gloves, keep fingers out of slots, and let two people lift what one cannot hold with ease.",
];
