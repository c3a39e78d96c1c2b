//! Steps of assembly and what comes free, in words.

use super::{mass, part};
use crate::assembly::{Disturbance, Disturbed, Step};
use crate::panel::PanelId;

/// What to do in a step, in one sentence.
pub fn step(step: &Step) -> String {
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

/// What to do when all parts are in, with a unit that is fastened to the wall or one that is not.
pub fn last_step(tethered: bool) -> &'static str {
    if tethered {
        "See that it stands level, then fasten it to the wall with its tether before you put anything in or on it."
    } else {
        "See that it stands level before you put anything in or on it."
    }
}

/// What a step weighs and how many people it takes.
pub fn burden(step: &Step) -> String {
    match step.people {
        0 | 1 => mass(step.mass),
        people => format!("{}, {people} people", mass(step.mass)),
    }
}

/// What comes free, and what to do about it.
pub fn disturbed(disturbed: &Disturbed) -> String {
    let first = list(&disturbed.first);
    let laid = |how: &str| {
        let swings = if disturbed.swings.is_empty() { "" } else { " Doors swing by their own weight." };
        format!("Laid on its {how} it comes apart: nothing holds {first}.{swings} Never lay it down whole.")
    };
    match disturbed.by {
        Disturbance::LiftedByTop => {
            format!("Lifted by its top, {first} comes off and the rest stays. Lift it under the lower base plate.")
        }
        Disturbance::LaidOnSide => laid("side"),
        Disturbance::LaidOnBack => laid("back"),
        Disturbance::LaidOnFront => laid("front"),
        Disturbance::Unlevel if disturbed.swings.is_empty() => {
            "Out of level nothing slides, but the unit tips sooner. Level it.".into()
        }
        Disturbance::Unlevel => {
            "Out of level nothing slides, but doors swing by themselves and the unit tips sooner. Level it.".into()
        }
    }
}

/// What everybody who puts a unit together should know.
// Common practice.
pub const CAUTIONS: [&str; 2] = [
    "To move it, take it apart: top first, then the steps backwards.",
    "Wear gloves, keep fingers out of slots, and let two people lift what one cannot hold with ease.",
];

/// Parts as people list them: `the lower base plate and the top`.
fn list(parts: &[PanelId]) -> String {
    let names: Vec<String> = parts.iter().map(|id| format!("the {}", part(*id))).collect();
    match names.split_last() {
        None => "no part".into(),
        Some((last, [])) => last.clone(),
        Some((last, others)) => format!("{} and {last}", others.join(", ")),
    }
}
