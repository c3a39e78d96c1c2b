//! Titles of pictures and the unit in words, in English.

use crate::choice::Bowed;
use crate::words::picture::{BayTold, StepTitle, UnitTold};
use crate::words::{decimal, fill_within, length, offset, part, size};

pub(in crate::words) fn unit(told: &UnitTold<'_>) -> String {
    let bays: Vec<String> = told.bays.iter().map(bay).collect();
    let mut text = format!(
        "{}, {} wide, {} high, {} deep. From the left: {}. Finish {}.",
        told.model,
        length(told.width),
        size(told.height),
        size(told.depth),
        if bays.is_empty() { "no bay".into() } else { bays.join("; ") },
        told.finish,
    );
    if let Some((rise, which)) = told.bow {
        let which = match which {
            Bowed::Both => "Both ends are",
            Bowed::Left => "The left end is",
            Bowed::Right => "The right end is",
        };
        text = format!("{text} {which} bowed by {}.", length(rise));
    }
    if let Some(plinth) = told.plinth {
        text = format!("{text} It stands on a plinth of {}.", length(plinth));
    }
    if let Some(tenths) = told.screen_tenth_inch {
        let inches = decimal(f64::from(tenths) / 10.0, 1);
        text = format!("{text} A screen of {inches} inches is to stand on it.");
    }
    text
}

pub(in crate::words) fn bay(told: &BayTold<'_>) -> String {
    let mut text = fill_within(told.fill);
    if let Some((hole, place)) = told.hole {
        text = format!("{text}, {hole} ({})", offset(place));
    }
    if let Some(device) = told.device {
        text = format!("{text}, with {device}");
    }
    text
}

pub(in crate::words) fn step_title(StepTitle { number, of, part: added }: StepTitle) -> String {
    match added {
        Some(added) => format!("Step {number} of {of}: {}", part(added)),
        None => format!("Step {number} of {of}: the whole unit"),
    }
}
