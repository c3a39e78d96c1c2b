//! The finishing sheet in English, as far as it is about parts.

use super::LOCALE;
use super::count::counted;
use crate::words::finishing::{Masked, Message};

pub(in crate::words) fn message(of: Message<'_>) -> String {
    match of {
        Message::EaseParts { are_rounded } => {
            let how = if are_rounded { "Chamfer and round" } else { "Chamfer" };
            format!(
                "{how} what the table says, by hand, on both faces. Edges are named as they stand in the unit; what is not named stays sharp."
            )
        }
        Message::RoundPivots { diameter, tip } => {
            let tip = tip.map(|tip| {
                format!(" Chamfer the tip of the upper one by {tip} all round: by that it finds its hole in the top.")
            });
            format!(
                "Round both pivots of each door by hand over their whole length to a diameter of {diameter}, the thickness of the bare \
                 board, until they turn freely in their holes.{}",
                tip.unwrap_or_default()
            )
        }
        Message::TabEnds(size) => format!(
            "Chamfer the ends of tabs that the table names by {size} on both faces: by that they find their slots in the top. All else of \
             them stays as it is."
        ),
        Message::RoundedPivots(diameter) => format!("pivots: {diameter} round"),
        Message::EasedTabs { edge, size } => format!("tabs at {edge}: {size}"),
        Message::Eased { edges, long, size } => format!("{edges}: {long}\u{a0}\u{d7}\u{a0}{size}"),
        Message::EasedRims { count, long, size } => {
            format!("{}: {long}\u{a0}\u{d7}\u{a0}{size}", counted(&count.to_string(), "rim of a hole", "rims of holes"))
        }
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
