//! Cut packs in English.

use super::LOCALE;
use super::count::counted;
use crate::input::entry::{LARGEST, Refused};
use crate::words::pack::{Label, Message};

pub(in crate::words) const fn label(of: Label) -> &'static str {
    match of {
        Label::CheckOrders => "`slotwright check` says of each order what is wrong with it",
        Label::PartExample => {
            "write it as on its label, 2-07, or as 2/shelf-1-1, with the same orders given in the same order, or as the code of the \
             label says it: that means the same part whichever orders are given"
        }
        Label::OtherSheets => "give larger sheets, or a smaller cutter or allowance",
        Label::MoreSheets => "give more sheets, or fewer orders",
        Label::OffcutsExample => {
            "a pack has such a list: offcuts.csv, with name, board, finish, along_mm, across_mm and, where the board was \
             measured, board_mm"
        }
        Label::NotAPack => {
            "there is a folder of this name that is no pack, or has other files in it; it was left as it is"
        }
        Label::Orders => "orders",
        Label::Aside => "set aside",
        Label::Sheets => "sheets",
        Label::Offcuts => "offcuts",
        Label::Machine => "machine",
        Label::Pack => "pack",
        Label::Again => "cut again",
        Label::Loose => "parts would not hold on to each other",
        Label::Mind => "mind",
        Label::Late => "late",
        Label::Begins => "begins",
        Label::Booked => "booked",
        Label::AsBefore => "as before",
        Label::Name => "name",
        Label::Cutter => "cutter",
        Label::Allowance => "beyond the cutter",
        Label::ThinnerCutter => "take a thinner cutter: round cutters need reliefs in the corners of slots",
    }
}

/// Minutes, and the same in hours where that is shorter to think of.
pub(super) fn time(minutes: u32) -> String {
    let (written, hours, rest) = (LOCALE.decimal(f64::from(minutes), 0), minutes / 60, minutes % 60);
    if hours == 0 {
        format!("{written}\u{a0}min")
    } else {
        format!("{written}\u{a0}min ({hours}\u{a0}h\u{a0}{rest:02})")
    }
}

pub(in crate::words) fn message(of: Message<'_>) -> String {
    match of {
        Message::Orders { taken, parts } => format!(
            "{} with {}",
            counted(&taken.to_string(), "order", "orders"),
            counted(&parts.to_string(), "part", "parts")
        ),
        Message::Aside { file, reason } => format!("{file}: {reason}"),
        Message::Again(first) => format!("the same order as {first}: it is cut once"),
        Message::DoesNotHold(reasons) => format!("it does not hold: {}", reasons.join("; ")),
        Message::NotAsCut(reasons) => format!(
            "it holds as it was promised, but not with the batch and the cutter that are set: {}. Take a thinner cutter, or the range's own, or \
             another batch",
            reasons.join("; ")
        ),
        Message::CutAgain { mark, part, customer, finish, uncoated } => {
            format!(
                "{mark}, {part} for {customer}, {finish}, with slots for boards of {uncoated} mm: compare the label"
            )
        }
        Message::Lot { board, finish, sheets, parts, used, cost } => format!(
            "{board}, {finish}: {} for {}, {used} used, {cost} less what is kept",
            counted(&sheets.to_string(), "sheet", "sheets"),
            counted(&parts.to_string(), "part", "parts")
        ),
        Message::Kept(count) => format!("{} kept", counted(&count.to_string(), "offcut", "offcuts")),
        Message::Machine { minutes, metres } => {
            format!("{minutes} min for {metres} m of cuts, without set-up and loading")
        }
        Message::Written { files, folder } => {
            format!("{} in {folder}", counted(&files.to_string(), "file", "files"))
        }
        Message::NoOrder => "no order is left that could be cut".into(),
        Message::NoPart(part) => format!("no order has the part {part}"),
        Message::TooLarge { mark, board } => format!("part {mark} fits no sheet of the board {board}"),
        Message::TooFewSheets { board, left } => format!(
            "there are too few sheets of the board {board}: {} left over",
            counted(&left.to_string(), "part is", "parts are")
        ),
        Message::Cutter { mark, most } => {
            format!("part {mark} has a slot or a hole that takes a cutter of {most} mm at most")
        }
        Message::Late { orders, from } => {
            format!("{orders}, if all are made in turn from the day after {from}; batch.pdf has their days")
        }
        Message::SetBefore { set, from } => {
            format!(
                "after {from}, the day of the last order, and not after {set} as was set: nothing is made before it was ordered"
            )
        }
        Message::Unwritten(path) => format!("{path} could not be written"),
        Message::Bounds => "sizes or prices are beyond what can be nested".into(),
        Message::PartWanted(text) => {
            format!("{text:?} names no part: write it as 2-07 or 2/shelf-1-1, or as the code of its label says it")
        }
        Message::SheetsWanted(text) => format!("{text:?} counts no sheets: write it as birch-18/small=12"),
        Message::OneOf(words) => format!("write one of {}", words.join(", ")),
        Message::LengthWanted { text, least, most } => {
            format!("{text:?} is no length from {least} to {most} mm: write it as 6, 6.35 or 6,35")
        }
        Message::Named(name, program) => {
            format!("{name}, by version {program}: this stands on all of its papers and drawings")
        }
        Message::AsBefore { pack, otherwise: [] } => format!("pack {pack}, with all that was set for it"),
        Message::AsBefore { pack, otherwise } => format!("pack {pack}, but otherwise: {}", otherwise.join("; ")),
        Message::Instead { what, now, then } => format!("{what} {now} instead of {then}"),
        Message::MeasuredSince(board, mean) => format!("{board} measured since, {mean}"),
        Message::OtherProgram(then) => format!("made by version {then} then"),
        Message::OtherParts(order) => {
            format!("the parts of order {order} come out otherwise than they were cut: compare before you cut")
        }
        Message::NotBefore(order) => format!("order {order} was not in that pack"),
        Message::TimeWanted(text, Refused::Unread) => {
            format!("{text:?} is no time: write minutes or hours, as 600, 1 200 or 10 h 30 min")
        }
        Message::TimeWanted(text, Refused::Beyond) => {
            format!("{text:?} is out of all proportion: {} minutes are the most", LOCALE.decimal(LARGEST, 0))
        }
        Message::BookedWanted(text) => {
            format!("{text:?} books nothing: write the key of a stage and a time, as cut=600 or 'cut=10 h'")
        }
        Message::Booked(stages) => {
            let booked = stages.iter().map(|(stage, minutes)| format!("{stage} {}", time(*minutes)));
            booked.collect::<Vec<_>>().join(", ")
        }
        Message::Offcut { line, what } => format!("line {line} is no offcut: {what} cannot be used or is not there"),
    }
}
