//! Steps of assembly and what comes free.

use super::LOCALE;
use super::name::{all_parts, part};
use crate::cabinet::assembly::{Disturbance, Disturbed, Step};
use crate::cabinet::panel::PanelId;

pub(in crate::words) fn step(step: &Step) -> String {
    let what = part(step.part);
    match step.part {
        PanelId::BaseLower => format!("Lay the {what} where the unit is to stand, level."),
        PanelId::BaseUpper => format!("Lay the {what} on it, slots over slots."),
        PanelId::Upright(_) => format!("Stand {what} up, tabs down through both base plates."),
        PanelId::Back => format!("Lower the {what} into its laps with the uprights."),
        PanelId::Shelf { .. } => format!("Slide {what} in from the front until its tabs are in the back."),
        PanelId::Stile(_) => format!("Lower {what} before its upright into the base."),
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
