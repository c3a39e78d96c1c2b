//! What of parts stays uncoated, in English.

use super::LOCALE;
use super::count::counted;
use crate::words::masking::{Masked, Message};

pub(in crate::words) fn message(of: Message<'_>) -> String {
    match of {
        Message::Places { masked, count, edges, far } => {
            let (one, several) = names(masked);
            let what = counted(&count.to_string(), one, several);
            let place = edges.map(|edges| format!(" at {edges}")).unwrap_or_default();
            format!("{what}{place}: {}\u{a0}mm", LOCALE.list(far.iter().cloned()))
        }
        Message::How(masked) => how(masked).into(),
        Message::Why { coats, clearance } => format!(
            "Faces are coated all over, also where they lie in a slot: slots are cut for faces with all their coats. What the \
             table names is cut to fit without the coats after cutting: those on both walls of a slot would take {coats} of the {clearance} of clearance."
        ),
    }
}

/// One of them, and several.
const fn names(masked: Masked) -> (&'static str, &'static str) {
    match masked {
        Masked::Tabs => ("tab", "tabs"),
        Masked::Pivots => ("pivot", "pivots"),
        Masked::Ears => ("ear", "ears"),
        Masked::Hooks => ("hook", "hooks"),
        Masked::Tongue => ("tongue", "tongues"),
        Masked::Notches => ("notch", "notches"),
        Masked::Slots => ("slot", "slots"),
        Masked::Bores => ("hole for a pivot", "holes for pivots"),
        Masked::Corner => ("corner", "corners"),
    }
}

const fn how(masked: Masked) -> &'static str {
    match masked {
        Masked::Tabs => {
            "Tabs: both narrow sides, from the shoulder out. Their ends touch nothing, and are coated as edges are."
        }
        Masked::Pivots => "Pivots: all round and their tips, from the edge out.",
        Masked::Ears => {
            "Ears of shelves: the narrow side to the rear, from the shoulder out. The one to the front is seen, and is coated."
        }
        Masked::Hooks => "Hooks: all narrow sides, from the edge out.",
        Masked::Tongue => "Tongues of door stops: narrow sides and nose, from the edge out.",
        Masked::Notches => "Notches: both walls and the floor, from the edge in.",
        Masked::Slots => "Slots: all walls, through the whole thickness.",
        Masked::Bores => "Holes for pivots: the wall, through the whole thickness.",
        Masked::Corner => "Corners of doors, cut away for the tongue: both of their sides, from the edge in.",
    }
}
