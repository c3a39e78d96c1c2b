//! Steps of assembly and what comes free.

use super::LOCALE;
use super::count::number_of;
use super::name::{all_parts, part};
use crate::cabinet::assembly::{Disturbance, Disturbed, Step, Turn};
use crate::cabinet::panel::PanelId;
use crate::rules::tether::Tethers;
use crate::units::quantity::Length;
use crate::units::rounding::round_half_away;

pub(in crate::words) fn step(step: &Step, tethers: Option<Tethers>) -> String {
    let what = part(step.part);
    match step.part {
        PanelId::PlinthFront => {
            format!(
                "Set the {what} on edge, slots up, a step away from the wall, since the back goes in from behind, and let one more person hold it until two bearers are on."
            )
        }
        PanelId::PlinthRear => format!("Set the {what} behind it, slots up; the same person holds it too."),
        PanelId::Bearer(_) => format!("Drop {what} onto both plinth boards, slots over slots."),
        PanelId::BaseLower if !step.closes.is_empty() => {
            format!("See that the plinth stands level, then lower the {what} over its tabs.")
        }
        PanelId::BaseLower => {
            format!("Lay the {what} down a step away from the wall, since the back goes in from behind.")
        }
        PanelId::BaseUpper => format!("Lay the {what} on it, slots over slots."),
        PanelId::Upright(number) => {
            let held = if number == 1 {
                "let one more person hold it until the back is on"
            } else {
                "let the same person hold it too"
            };
            format!("Stand {what} up, tabs down through both base plates, and {held}.")
        }
        PanelId::Back => back(step, tethers),
        PanelId::Shelf { .. } => format!("Slide {what} in from the front until its tabs are in the back."),
        PanelId::Stile(_) => format!("Lower {what} in front of its upright into the base."),
        PanelId::Stave { .. } => format!("Lower {what} into the base: its slot sets its angle."),
        PanelId::Stop(_) if step.detent => {
            format!(
                "Lower the {what} into the base behind its door, tongue up and to the front: the tongue ends in front of the door's notched corner, and who holds the door may let go."
            )
        }
        PanelId::Stop(_) => format!("Lower the {what} into the base, either narrow edge to the front."),
        PanelId::Leaf(_) => leaf(step, &what),
        PanelId::Top => top(step),
    }
}

fn back(step: &Step, tethers: Option<Tethers>) -> String {
    let whole = |length: Length| LOCALE.distance(Length::mm(round_half_away(length.in_mm())));
    let hang = "the back forward over the hooks of the uprights, which one more person steadies, and let it down onto them. Push all to \
                its place by the base, never by the uprights, and level it, by wedges where the floor is not.";
    match tethers {
        None => format!("Bring {hang}"),
        Some(Tethers { screw, from_end, below, up, apart, gap }) => format!(
            "Screw a tether to the rear face of the back near each end, {} from the end and {} below the upper edge, by screws of {} at \
             most, or they come through. Fix what takes them to the wall, {} over the floor and {} apart. Then bring {hang} Fasten both \
             tethers from above, across {} or more where a skirting board keeps it off,{} and pull at the back: they have to hold.",
            whole(from_end),
            whole(below),
            LOCALE.distance(screw),
            whole(up),
            whole(apart),
            whole(gap),
            if step.is_overhead() { " on something firm and wide that does not tip," } else { "" }
        ),
    }
}

fn leaf(step: &Step, what: &str) -> String {
    match (step.detent, step.card.map(|thick| LOCALE.distance(thick))) {
        (true, Some(thick)) => format!(
            "Stand the {what} on its lower pivot, its notched corner up and away from the pivots, with a strip of card {thick} thick under its free lower \
             corner until the top is on. Hold it there until its stop stands, which one more person sets next."
        ),
        (true, None) => {
            format!(
                "Stand the {what} on its lower pivot, its notched corner up and away from the pivots, and hold it there until its stop stands, which one more person sets next."
            )
        }
        (false, Some(thick)) => format!(
            "Stand the {what} on its lower pivot, with a strip of card {thick} thick under its free lower corner until the top is on."
        ),
        (false, None) => format!("Stand the {what} on its lower pivot."),
    }
}

fn top(step: &Step) -> String {
    let high = if step.is_overhead() {
        let up = LOCALE.distance(Length::mm(libm::ceil(step.reaches.in_mm())));
        format!("It is lifted to {up}: let two people lift it, each on something firm and wide that does not tip. ")
    } else {
        String::new()
    };
    let leaves = step.closes.iter().filter(|id| matches!(id.goes_in, PanelId::Leaf(_))).count();
    let over = if leaves == 0 { "tabs" } else { "tabs and pivots" };
    let guided = match step.guided {
        0 => String::new(),
        1 => ", while one more person guides the head of the one part that stands free into it".into(),
        heads => format!(
            ", while one more person guides the heads of the {} that stand free into it, one after the other, those at the rear first",
            number_of(heads, "part", "parts")
        ),
    };
    let cards = match (step.card, leaves) {
        (None, _) => "",
        (Some(_), 1) => " Then draw the card out from under the door.",
        (Some(_), _) => " Then draw each card out from under its door.",
    };
    format!("{high}Lower the top over all {over}{guided}: its weight holds the unit.{cards}")
}

pub(in crate::words) fn last_step(tethered: bool) -> String {
    if tethered {
        "See that it still stands level, held to the wall by its tethers, before you put anything in or on it.".into()
    } else {
        "See that it stands level before you put anything in or on it.".into()
    }
}

/// Which way round a part goes in, where it would go in otherwise too and its step does not say it. Labels are stuck on the faces that
/// `paper` names.
pub(in crate::words) fn way_round(step: &Step, wrong: &[Turn]) -> Option<&'static str> {
    let has = |turn| wrong.contains(&turn);
    let other_face = wrong.iter().any(|turn| turn.shows_other_face());
    match step.part {
        // Slots are up by the step's sentence.
        PanelId::PlinthFront => has(Turn::AboutV).then_some("Label to the rear."),
        PanelId::PlinthRear => has(Turn::AboutV).then_some("Label to the front."),
        PanelId::BaseLower if has(Turn::InPlane) => Some("Label down, the edge with the nearer slots to the front."),
        PanelId::BaseLower | PanelId::BaseUpper | PanelId::Shelf { .. } | PanelId::Top => {
            other_face.then_some("Label down.")
        }
        PanelId::Bearer(_) => other_face.then_some("Label to the left."),
        PanelId::Upright(_) => (!wrong.is_empty()).then_some("Longer tabs down, hooks to the rear."),
        PanelId::Back => match (other_face, has(Turn::InPlane)) {
            (true, true) => Some("Label to the rear, slots and holes as in the picture."),
            (true, false) => Some("Label to the rear."),
            (false, true) => Some("Slots and holes as in the picture."),
            (false, false) => None,
        },
        PanelId::Stile(_) | PanelId::Stave { .. } => (!wrong.is_empty()).then_some("Longer tab down."),
        // A tongue and a notched corner say it in the step's sentence.
        PanelId::Stop(_) => None,
        PanelId::Leaf(_) => (other_face && !step.detent).then_some("Label to the rear."),
    }
}

pub(in crate::words) fn burden(step: &Step) -> String {
    match step.hands() {
        0 | 1 => LOCALE.mass(step.mass),
        people if step.for_length && step.helpers == 0 => {
            format!("{}, {people} people, for its length", LOCALE.mass(step.mass))
        }
        people => format!("{}, {people} people", LOCALE.mass(step.mass)),
    }
}

pub(in crate::words) fn disturbed(disturbed: &Disturbed) -> String {
    match laid(disturbed.by) {
        Some(_) => format!("{} {NEVER_LAID}", come_apart(&[disturbed])),
        None => stands(disturbed),
    }
}

/// Sides on which a unit is laid of which the same parts go are told together.
pub(in crate::words) fn all_disturbed(all: &[Disturbed]) -> Vec<String> {
    let mut told = Vec::new();
    let mut laid_with: Vec<Vec<&Disturbed>> = Vec::new();
    for disturbed in all.iter().filter(|disturbed| laid(disturbed.by).is_some()) {
        match laid_with.iter_mut().find(|group| group.iter().all(|known| known.first == disturbed.first)) {
            Some(group) => group.push(disturbed),
            None => laid_with.push(vec![disturbed]),
        }
    }
    let mut laid_on: Vec<String> = laid_with.iter().map(|group| come_apart(group)).collect();
    if let Some(last) = laid_on.last_mut() {
        *last = format!("{last} {NEVER_LAID}");
    }
    for disturbed in all {
        match laid(disturbed.by) {
            Some(_) => told.append(&mut laid_on),
            None => told.push(stands(disturbed)),
        }
    }
    told
}

const NEVER_LAID: &str = "Never lay it down whole.";

/// On what it is laid, if it is.
const fn laid(by: Disturbance) -> Option<&'static str> {
    match by {
        Disturbance::LaidOnSide => Some("side"),
        Disturbance::LaidOnBack => Some("back"),
        Disturbance::LaidOnFront => Some("front"),
        Disturbance::LiftedByTop | Disturbance::Unlevel => None,
    }
}

/// What comes free of a unit that is laid down, on whichever of some sides, which let the same parts go.
fn come_apart(all: &[&Disturbed]) -> String {
    let sides = |of: &mut dyn Iterator<Item = &&Disturbed>| {
        let sides: Vec<&str> = of.filter_map(|disturbed| laid(disturbed.by)).collect();
        match sides.split_last() {
            Some((last, others)) if !others.is_empty() => format!("{} or {last}", others.join(", ")),
            last => last.map_or_else(String::new, |(last, _)| (*last).into()),
        }
    };
    let parts = all.first().map_or_else(String::new, |disturbed| all_parts(&disturbed.first));
    let swing = || all.iter().filter(|disturbed| !disturbed.swings.is_empty());
    let doors = if swing().count() == all.len() {
        " Doors swing by their own weight.".into()
    } else if swing().count() > 0 {
        format!(" On its {} doors swing by their own weight.", sides(&mut swing()))
    } else {
        String::new()
    };
    format!("Laid on its {} it comes apart: nothing holds {parts}.{doors}", sides(&mut all.iter()))
}

/// What comes free of a unit that is lifted, or stands out of level.
fn stands(disturbed: &Disturbed) -> String {
    let doors = !disturbed.swings.is_empty();
    if disturbed.by == Disturbance::LiftedByTop {
        let first = all_parts(&disturbed.first);
        let rest = if doors { "doors can fall" } else { "the rest stays" };
        return format!("Lifted by its top, {first} comes off and {rest}. Take it apart to move it.");
    }
    if doors {
        "Out of level nothing slides, but doors swing by themselves and the unit tips sooner. Level it.".into()
    } else {
        "Out of level nothing slides, but the unit tips sooner. Level it.".into()
    }
}

// Common practice.
pub(in crate::words) const CAUTIONS: [&str; 2] = [
    "To move it, take it apart: top first, then the steps backwards, any tethers undone before the back comes off. Without the top a door, where there is one, stands on one pivot and can fall: somebody holds it until it is out.",
    "Wear gloves, keep fingers out of slots, and let two people lift what one cannot hold with ease.",
];
