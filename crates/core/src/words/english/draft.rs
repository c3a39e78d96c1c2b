//! Drafts in English.

use super::LOCALE;
use super::count::number_of;
use super::name::fill_within;
use crate::words::draft::{Deed, Done, Feature, Message, Row};
use crate::words::{money, size};

const PICK_SOME: &str = "Tick two to four of them to see them side by side.";

const fn deed(of: Deed) -> &'static str {
    match of {
        Deed::Open => "Open",
        Deed::Double => "Duplicate",
        Deed::Link => "Link",
        Deed::Delete => "Delete",
        Deed::Pick => "Compare",
        Deed::GoOn => "Go on with this",
    }
}

fn deed_with(of: Deed, name: &str) -> String {
    match of {
        Deed::Link => format!("Link to {name}"),
        Deed::Open | Deed::Double | Deed::Delete | Deed::Pick => format!("{} {name}", deed(of)),
        Deed::GoOn => format!("{}: {name}", deed(of)),
    }
}

fn done(of: Done, name: &str) -> String {
    match of {
        Done::Added => format!("\u{201c}{name}\u{201d} is kept."),
        Done::Replaced => format!("\u{201c}{name}\u{201d} is kept in place of the draft that had this name."),
        Done::Renamed => format!("It is called \u{201c}{name}\u{201d} now."),
        Done::Deleted => format!("\u{201c}{name}\u{201d} is deleted."),
        Done::Restored => format!("\u{201c}{name}\u{201d} is there again."),
        Done::Unnamed => "Give it a name first.".into(),
        Done::Unpicked => PICK_SOME.into(),
    }
}

fn row(of: Row) -> String {
    let name = match of {
        Row::Model => "Model",
        Row::Price => "Price with tax",
        Row::Weight => "Weight",
        Row::Day => "With you by",
        Row::Width => "Width, mm",
        Row::Height => "Height, mm",
        Row::Depth => "Depth, mm",
        Row::Finish => "Finish",
        Row::Back => "Back",
        Row::Corners => "Corners",
        Row::Plinth => "Plinth",
        Row::Ends => "Ends",
        Row::Bay(number) => return format!("Bay {number}"),
    };
    name.into()
}

fn feature(of: Feature<'_>) -> String {
    match of {
        Feature::Made => "that it can be made".into(),
        Feature::Bays(count) => number_of(count, "bay", "bays"),
        Feature::Doors(count) => number_of(count, "door", "doors"),
        Feature::Shelves(count) => number_of(count, "shelf", "shelves"),
        Feature::Holes(count) => number_of(count, "cable hole", "cable holes"),
        Feature::Device(name) => format!("the place of the {name}"),
    }
}

pub(in crate::words) fn message(of: Message<'_>) -> String {
    let text = match of {
        Message::Title => "Drafts",
        Message::Close => "Close",
        Message::ThisUnit => "This unit",
        Message::SavedAnyhow => "Saved as you go",
        Message::Name => "Name",
        Message::Keep => "Keep a copy",
        Message::KeptHere => "Kept in this browser",
        Message::NoneYet => "Nothing yet. A copy that you keep stays as it is, whatever you change.",
        Message::NameOf(name) => return format!("Name of {name}"),
        Message::Unnamed(model, width, height) => {
            return format!("{model} {}\u{202f}\u{d7}\u{202f}{}", size(width), size(height));
        }
        Message::Left => "Left for another unit; it stays here until you delete it.",
        Message::OtherTab => "Open in another tab, which goes on saving it.",
        Message::Figures(price, mass, day) => return format!("{price} \u{b7} {mass} \u{b7} {day}"),
        Message::OtherPrice { then, now, currency } => {
            return format!("Prices of this draft changed: {} to {}.", money(then, currency), money(now, currency));
        }
        Message::NoLonger(reasons) => {
            return format!("It could be ordered when it was kept, and cannot now. {reasons}");
        }
        Message::Unmade(reasons) => return format!("It cannot be made as it is. {reasons}"),
        Message::NoModel(model) => {
            return format!("The range does not have the model {model} any more, so it cannot be opened.");
        }
        Message::Do(of) => deed(of),
        Message::DoWith(of, name) => return deed_with(of, name),
        Message::Done(of, name) => return done(of, name),
        Message::BringBack => "Bring it back",
        Message::Compare => "Compare side by side",
        Message::PickSome => PICK_SOME,
        Message::NewVisitor => "New visitor",
        Message::NewVisitorMeans => {
            "Somebody else comes to this browser: clears the unit, all drafts and what was typed for an order. For a \
             minute you can take it back."
        }
        Message::SideBySide => "Side by side",
        Message::MoveToSee(count) => {
            return format!("{} side by side: move them sideways to see all.", number_of(count, "draft", "drafts"));
        }
        Message::BackToList => "All drafts",
        Message::Marked => "What differs from the first is bold.",
        Message::Differs => "differs: ",
        Message::Row(of) => return row(of),
        Message::Bay { fill, hole, device } => {
            let parts = [Some(fill_within(fill)), hole.map(Into::into), device.map(Into::into)];
            return parts.into_iter().flatten().collect::<Vec<_>>().join(", ");
        }
        Message::NoPlinth => "none",
        Message::Square => "square",
        Message::Against { name, against, lost, gained } => {
            let list = |features: &[Feature<'_>]| LOCALE.list(features.iter().map(|of| feature(*of)));
            let (lost, gained) = (list(lost), list(gained));
            return match (lost.is_empty(), gained.is_empty()) {
                (true, true) => format!("Against {against}, {name} loses and gains nothing."),
                (true, false) => format!("Against {against}, {name} loses nothing and gains {gained}."),
                (false, true) => format!("Against {against}, {name} loses {lost}."),
                (false, false) => format!("Against {against}, {name} loses {lost}; it gains {gained}."),
            };
        }
        Message::Unsuited(name, sentence) => return format!("{name}: {sentence}"),
    };
    text.into()
}
