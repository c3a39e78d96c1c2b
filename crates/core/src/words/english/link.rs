//! Links in English.

use crate::choice::link::{LinkError, Part, VERSION};
use crate::words::link::{Message, Since};
use crate::words::money;

/// What a part is called.
fn part(of: Part) -> String {
    let name = match of {
        Part::Model => "the model",
        Part::Sizes => "width, height and depth",
        Part::Corners => "the corner radius",
        Part::Back => "the back",
        Part::Finish => "the finish",
        Part::Bow => "the bow of the ends",
        Part::Bays => "the bays",
        Part::Bay(number) => return format!("bay {number}"),
        Part::Plinth => "the plinth",
        Part::Wall => "the free wall",
        Part::Ceiling => "the ceiling",
        Part::Screen => "the screen",
        Part::Plug => "the plug",
        Part::Made => "the price",
    };
    name.into()
}

fn fault(of: &LinkError) -> String {
    match of {
        LinkError::TooLong => "This link is far too long.".into(),
        LinkError::NoLink => "This is no link of a unit.".into(),
        LinkError::OtherVersion(version) => {
            format!("This link is of version {version}; here versions 1 to {VERSION} are read.")
        }
        LinkError::Missing(of) => format!("This link ends before {}.", part(*of)),
        LinkError::Unread(of, text) => format!("In this link {} cannot be read: \u{201c}{text}\u{201d}.", part(*of)),
        LinkError::TooManyBays(count) => format!("This link has {count} bays, more than any unit has."),
        LinkError::Unexpected(text) => format!("This link has a part that no link has: \u{201c}{text}\u{201d}."),
    }
}

fn range_changed(since: Since) -> &'static str {
    match since {
        Since::Link => "The range has changed since its link was made",
        Since::Visit => "The range has changed since you last saw this unit",
    }
}

fn when(since: Since) -> &'static str {
    match since {
        Since::Link => "When its link was made",
        Since::Visit => "When you last saw this unit",
    }
}

pub(in crate::words) fn message(of: Message<'_>) -> String {
    match of {
        Message::Fault(of) => fault(of),
        Message::Refused(of) => {
            let way = match of {
                LinkError::OtherVersion(_) => "Load the page anew, or ask for a new link.",
                LinkError::TooLong | LinkError::TooManyBays(_) => "Ask for it once more.",
                LinkError::NoLink | LinkError::Missing(_) | LinkError::Unread(..) | LinkError::Unexpected(_) => {
                    "Copy all of it, or ask for it once more."
                }
            };
            format!("{} {way} What you see is not its unit.", fault(of))
        }
        Message::NoModel(model) => {
            format!(
                "This link is of the model {model}, which this range does not have. Ask the workshop for it, or choose \
                 another one. What you see is not its unit."
            )
        }
        Message::Opened { saved: false } => "This unit was opened from a link.".into(),
        Message::Opened { saved: true } => {
            "This unit was opened from a link. What you chose before is among the drafts.".into()
        }
        Message::SamePrice(since) => format!("{}; the price is the same.", range_changed(since)),
        Message::OtherPrice { since, changed, then, now, currency } => {
            let (then, now) = (money(then, currency), money(now, currency));
            if changed {
                format!("{}: it cost {then} with tax, and costs {now} now.", range_changed(since))
            } else {
                format!("{} it cost {then} with tax; it costs {now} now.", when(since))
            }
        }
        Message::NoLonger { since, changed: true, reasons } => {
            format!("{}: it could be ordered, and cannot be now. {reasons}", range_changed(since))
        }
        Message::NoLonger { since, changed: false, reasons } => {
            format!("{} it could be ordered; it cannot be now. {reasons}", when(since))
        }
        Message::CannotBeMade(reasons) => format!("It cannot be made as it is. {reasons}"),
    }
}
