//! A unit in a few sentences, for those who do not see the drawing and for documents.

use slotwright_core::choice::{Bay, Choice};
use slotwright_core::range::Range;
use slotwright_core::words;

/// The unit as it stands: model, size, bays with their fit-out, finish.
pub fn describe(range: &Range, choice: &Choice) -> String {
    let model = range.model(&choice.model).map_or_else(|| choice.model.to_string(), |model| model.name.clone());
    let finish = range.finish(&choice.finish).map_or_else(|| choice.finish.to_string(), |finish| finish.name.clone());
    let bays: Vec<String> = choice.bays.iter().take(12).map(|bay| describe_bay(range, bay)).collect();
    let screen = choice.place.screen_tenth_inch.map(|tenths| {
        format!(" A screen of {} inches is to stand on it.", words::decimal(f64::from(tenths) / 10.0, 1))
    });
    format!(
        "{model}, {} wide, {} high, {} deep. From the left: {}. Finish {finish}.{}",
        words::length(choice.width_mm),
        words::size(choice.height_mm),
        words::size(choice.depth_mm),
        if bays.is_empty() { "no bay".into() } else { bays.join("; ") },
        screen.unwrap_or_default(),
    )
}

fn describe_bay(range: &Range, bay: &Bay) -> String {
    let mut text = words::fill_within(bay.fill);
    if let Some(hole) = &bay.hole {
        let kind = range.hole(&hole.kind).map_or_else(|| hole.kind.to_string(), |kind| kind.name.clone());
        text = format!("{text}, {kind} {}", words::offset(hole.offset_mm));
    }
    if let Some(key) = &bay.device {
        let device = range.device(key).map_or_else(|| key.to_string(), |device| device.name.clone());
        text = format!("{text}, with {device}");
    }
    text
}
