//! Steps of assembly and what comes free.

use super::LOCALE;
use super::name::{all_parts, part};
use crate::cabinet::assembly::{Disturbance, Disturbed, Step};
use crate::cabinet::panel::PanelId;

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
        PanelId::Stile(_) => format!("Lower {what} before its upright into the base."),
        PanelId::Stave { .. } => format!("Lower {what} into the base: its slot gives it its turn."),
        PanelId::Stop(_) if step.detent => {
            format!(
                "Lower the {what} into the base behind its door, nose up and to the front: it comes down before the door."
            )
        }
        PanelId::Stop(_) => format!("Lower the {what} into the base, either narrow edge to the front."),
        PanelId::Leaf(_) if step.detent => {
            format!("Stand the {what} on its lower pivot, cut-off corner up, and hold it there: its stop comes next.")
        }
        PanelId::Leaf(_) => format!("Stand the {what} on its lower pivot."),
        PanelId::Top => "Lower the top over all tabs and pivots: its weight holds the unit.".into(),
    }
}

pub(in crate::words) const fn last_step(tethered: bool) -> &'static str {
    if tethered {
        "See that it stands level, then fasten it to the wall with its tether before you put anything in or on it."
    } else {
        "See that it stands level before you put anything in or on it."
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
            format!("Lifted by its top, {first} comes off and the rest stays. Lift it under the lower base plate.")
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
    "To move it, take it apart: top first, then the steps backwards.",
    "Wear gloves, keep fingers out of slots, and let two people lift what one cannot hold with ease.",
];
