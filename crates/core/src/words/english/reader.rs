//! What the reader of orders says. As beside every place of a file, without a capital and a stop.

use super::LOCALE;
use super::json::unread;
use crate::words::reader::{Changed, Figure, Label, Message, Promise};

pub(in crate::words) fn message(of: Message<'_>) -> String {
    match of {
        Message::TooLarge { bytes, most } => format!("the file has {bytes} bytes; {most} are the most that is read"),
        Message::NotText(at) => format!("not text in UTF-8, from byte {at} on"),
        Message::Unread(error) => unread(error),
        Message::NoFormat => "this is no order: it has no member \"format\" that says so".into(),
        Message::OtherFormat { found, known } => format!("this is no order: its format is {found}, not \"{known}\""),
        Message::Choice => "this is a choice, and no order yet: nothing is promised in it".into(),
        Message::Version { found, known, read_by: Some(version) } => {
            format!("/version: version {found} is read by Slotwright {version}; this program reads version {known}")
        }
        Message::Version { found, known, read_by: None } => {
            format!("/version: this program reads version {known}, found {found}")
        }
        Message::Changed { what, stated, computed } => format!(
            "the file was changed after it was written{}; it states the digest {stated}, its content has {computed}",
            changed(what)
        ),
        Message::UnknownRange(digest) => format!("/range/digest: the range {digest} of this order is not on file"),
        Message::UnknownStage(stage) => {
            format!("/backlog/minutes/{stage}: the range of this order has no such stage")
        }
        Message::Empty(place) => format!("{place}: nothing is written here that can be seen"),
        Message::TooLong { place, found, most } => format!("{place}: {found} characters; {most} are the most"),
        Message::Unprintable(place) => format!("{place}: a character that cannot be printed stands in the text"),
        Message::AddressLines { found, most } => {
            format!("/customer/address: {found} lines; 1 to {most} are possible")
        }
    }
}

fn changed(what: Changed<'_>) -> String {
    match what {
        Changed::Unknown => String::new(),
        Changed::Picked => ": the unit in it is not the one that was promised".into(),
        Changed::Promised(figures) => {
            let each = |Figure { of, before, now }: &Figure<'_>| format!("{} was {before} and is {now}", promise(*of));
            format!(": {}", LOCALE.list(figures.iter().map(each)))
        }
        Changed::Other => {
            ": the unit and what was promised agree, so it was the customer, the remark, the day or the backlog".into()
        }
    }
}

const fn promise(of: Promise) -> &'static str {
    match of {
        Promise::Price => "the price",
        Promise::Currency => "the currency",
        Promise::Mass => "the mass",
        Promise::Day => "the day of arrival",
        Promise::Parts => "the digest of the parts",
        Promise::Range => "the key of the range",
    }
}

pub(in crate::words) const fn label(of: Label) -> &'static str {
    match of {
        Label::IsItTheOrder => "is this the file that was saved with the order?",
        Label::EmptyOrder => "save the order again, or ask for it to be sent again",
        Label::OneOrderAFile => {
            "put each order into a file of its own and give `slotwright check` all of them: `split -l 1 orders.jsonl \
             order-`, then `slotwright check order-*`"
        }
        Label::MakeAnOrder => {
            "`slotwright order --today YYYY-MM-DD --choice FILE --out order.json` makes an order of it; `slotwright \
             derive --choice FILE` tells what is known about it"
        }
        Label::NewerProgram => "a newer version of this program may read it",
        Label::OlderProgram => {
            "keep that version and the range file of that time for old orders, or make a new order of what stands at \
             \"choice\""
        }
        Label::SaveAgain => "ask for the order to be saved again",
        Label::Original => {
            "ask for the original; if the change is wanted, put what stands at \"choice\" into a file and make a new \
             order of it with `slotwright order --choice FILE`"
        }
        Label::AskTheWriter => "ask those who wrote this order; the page writes none of these",
        Label::NameTheRange => "name the range file of that time; old ranges are kept for old orders",
    }
}
