//! Why an order is not cut, and why there is no pack, in words.

use slotwright_core::rules::Rule;
use slotwright_core::rules::finding::Finding;
use slotwright_core::words;
use slotwright_core::words::pack::{Label, Message};
use slotwright_core::words::tool;

use super::{NoPack, Reason};

impl Reason<'_> {
    /// Why the order is set aside, and what to do where it cannot be read.
    pub fn text(&self) -> String {
        match self {
            Self::Unreadable(error) => format!("{error}; {}", error.hint()),
            Self::Again(first) => Message::Again(first).text(),
            Self::NotAsCut(checked) => {
                // As the range has it the proof never fails.
                let stop = |stop: &Finding| match stop.rule {
                    Rule::Interlock => Label::Loose.text().into(),
                    _ => words::sentence(stop),
                };
                Message::NotAsCut(&checked.stops.iter().map(stop).collect::<Vec<_>>()).text()
            }
            Self::Differs(checked) => {
                let differs = checked.differences.iter().map(|differs| {
                    let derived = differs.derived.as_deref().unwrap_or(tool::Label::Nothing.text());
                    tool::Message::Differs { place: differs.pointer, promised: &differs.promised, derived }.text()
                });
                let all: Vec<String> = differs.chain(checked.stops.iter().map(words::sentence)).collect();
                Message::DoesNotHold(&all).text()
            }
        }
    }
}

impl NoPack {
    /// Why there is none.
    pub fn text(&self) -> String {
        let message = match self {
            Self::NoOrder => Message::NoOrder,
            Self::NoPart(one) => return Message::NoPart(&one.to_string()).text(),
            Self::TooLarge { mark, board } => Message::TooLarge { mark, board },
            Self::TooFewSheets { board, left } => Message::TooFewSheets { board, left: *left },
            Self::Cutter { mark, most } => {
                // What is named fits: rounded down.
                let most = libm::floor(most.in_mm() * 100.0) / 100.0;
                return Message::Cutter { mark, most: &words::decimal(most, 2) }.text();
            }
            Self::Bounds => Message::Bounds,
        };
        message.text()
    }

    /// What to do about it.
    pub const fn hint(&self) -> &'static str {
        match self {
            Self::NoOrder => Label::CheckOrders,
            Self::NoPart(_) => Label::PartExample,
            Self::TooLarge { .. } | Self::Bounds => Label::OtherSheets,
            Self::TooFewSheets { .. } => Label::MoreSheets,
            Self::Cutter { .. } => Label::ThinnerCutter,
        }
        .text()
    }
}
