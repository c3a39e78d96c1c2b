//! The order desk in English.

use crate::range::Problem;
use crate::words::desk::{Entry, Message};

const fn entry(of: Entry) -> &'static str {
    match of {
        Entry::Name => "The name",
        Entry::Contact => "E-mail or telephone",
        Entry::Remark => "The remark",
        Entry::AddressLine => "A line of the address",
    }
}

/// Nobody reads more of them at once; the workshop's tool lists all.
const FAULTS_SHOWN: usize = 3;

/// The first of them, a line each as the tool says them, and how many more there are.
fn range_faults(problems: &[Problem]) -> String {
    let mut told = String::from("The range file has problems");
    told += if problems.is_empty() { "." } else { ":" };
    for problem in problems.iter().take(FAULTS_SHOWN) {
        told = told + "\n" + &crate::words::problem(problem);
    }
    match problems.len().saturating_sub(FAULTS_SHOWN) {
        0 => {}
        more => told = format!("{told}\nand {more} more"),
    }
    told + "\n"
}

pub(in crate::words) fn message(of: Message<'_>) -> String {
    let text = match of {
        Message::RangeFaults(problems) => return range_faults(problems),
        Message::Unmade => "Only a unit that can be made is written.",
        Message::LinkToUnit => "A link to this unit",
        Message::Link => "Link",
        Message::Copy => "Copy",
        Message::Share => "Share",
        Message::Close => "Close",
        Message::LinkCautions => {
            "A phone opens it when its camera sees the code. It holds the unit and what it costs today, nothing about \
             you."
        }
        Message::CodeTitle => "QR code of the link to this unit",
        Message::NoCode => "This link is too long for a QR code.",
        Message::MailTo(address) => return format!("Write to {address}"),
        Message::OrdersPage(address) => return format!("Open {address}"),
        Message::ShareFile => "Share the file",
        Message::Subject(file) => return format!("Order {file}"),
        Message::Attach => "Attach the saved file to the message yourself: a page cannot.",
        Message::Empty(of) => return format!("{} is empty.", entry(of)),
        Message::TooLong { entry: of, found, most } => {
            return format!("{} has {found} characters; {most} are the most.", entry(of));
        }
        Message::Unprintable(of) => return format!("{} holds a character that cannot be printed.", entry(of)),
        Message::AddressLines { found, most } => {
            return format!("The address has {found} lines; 1 to {most} are possible.");
        }
        Message::NoOrder => "This file is no order. Choose the one that was saved with the order.",
        Message::Newer => "This order was saved by a newer page than this one. Load the page anew.",
        Message::Older => {
            "This order was saved by an older page, and units are built otherwise now. Choose it anew, or ask the workshop."
        }
        Message::Changed => "This order was changed after it was saved. Ask for the original.",
        Message::PartUnread(place) => {
            return format!("A part of this order cannot be read ({place}). Ask for it to be saved again.");
        }
        Message::BadEntry(sentence) => return format!("{sentence} Ask for the order to be saved again."),
        Message::OtherRange => "This order was made with another range.",
        Message::OtherVersion => {
            "The order was made with another version of this range; price, weight and date are those of today."
        }
        Message::Holds(day) => return format!("The order of {day} is open. Everything that it promised still holds."),
        Message::Differs(day) => {
            return format!("The order of {day} is open, but not all that it promised holds any more.");
        }
    };
    text.into()
}
