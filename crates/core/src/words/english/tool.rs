//! The workshop's tool in English.

use super::count::counted;
use crate::range::Use;
use crate::words::tool::{Label, Measured, Message};

pub(in crate::words) const fn label(of: Label) -> &'static str {
    match of {
        Label::Error => "error",
        Label::Hint => "hint",
        Label::DemoRange => "the demo range",
        Label::StandardOutput => "standard output",
        Label::Holds => "holds",
        Label::DoesNotHold => "does not hold",
        Label::Unreadable => "unreadable",
        Label::Nothing => "nothing, it cannot be made",
        Label::Unknown => "unknown",
        Label::Again => "again",
        Label::Range => "range",
        Label::Unit => "unit",
        Label::Mass => "mass",
        Label::Price => "price",
        Label::Arrives => "arrives",
        Label::Parts => "parts",
        Label::CutToBatches => "cut to the measured batches, not to the thickness of the range",
        Label::BrokeOff => "checking this file, or one beside it, broke off: an error of this program",
        Label::CheckOneByOne => "check the files one by one, and tell those who keep this program which one it was",
        Label::What => "what",
        Label::Why => "why",
        Label::Source => "source",
        Label::Limit => "limit",
        Label::NoKey => "no key of the range: it is the same in all of them",
        Label::Finish => "finish",
        Label::Slot => "slot",
        Label::Likely => "likely ±",
        Label::Worst => "at worst ±",
        Label::TooTight => "too tight",
        Label::Outside => "outside",
        Label::TopSticks => "a top that sticks",
        Label::Dry => "dry",
        Label::Damp => "damp",
        Label::NotToBeCut => "not to be cut",
        Label::Shares => {
            "Too tight, outside: shares of joints at the worse end of 95 % of all batches. A top has twelve of them."
        }
        Label::Mind => "mind",
        Label::Makeable => "It can be made.",
        Label::NotMakeable => "It cannot be made as it is.",
        Label::NoChanges => "No changes with which it could were found.",
        Label::Open => "open",
        Label::WithChanges => "with changes",
        Label::Shut => "shut",
        Label::Unsuited => "does not suit",
        Label::NotFound => "not found",
        Label::RowOfSizes => "Of a row of sizes, reason and changes are those of the first.",
        Label::Models => "models",
        Label::Boards => "boards",
        Label::Finishes => "finishes",
        Label::OrdersUntil => "orders until",
        Label::Digest => "digest",
    }
}

pub(in crate::words) fn message(of: Message<'_>) -> String {
    match of {
        Message::SameOrder(first) => format!("the same order as {first}: it is made once"),
        Message::Differs { place, promised, derived } => format!("{place}: promised {promised}, derived {derived}"),
        Message::Ordered { model, sizes, finish, day } => format!("{model}, {sizes} mm, {finish}, ordered on {day}"),
        Message::WasPromised(now, promised) => format!("{now}, promised {promised}"),
        Message::AtHand { name, key, digest, until, file } => match until {
            Some(last) => format!("{name} ({key} {digest}), for orders until {last}, from {file}"),
            None => format!("{name} ({key} {digest}), for orders without a last day, from {file}"),
        },
        Message::ArrivesBy(day) => format!("by {day}"),
        Message::Cut { parts, measured, thickness, coated, slot, tight, outside, most } => {
            let parts = match parts {
                [Use::Body] => "body",
                [Use::Back] => "back",
                [] | [_, ..] => "body and back",
            };
            let known = match measured {
                Measured::Points => "measured at eight points",
                Measured::Mean => "measured, its mean alone",
                Measured::Not => "not measured",
            };
            format!(
                "{parts}: {thickness} mm {known}, {coated} mm with its film, slots {slot} mm; {tight} of joints too \
                 tight, {outside} outside the wanted clearance, {most} is usual"
            )
        }
        Message::NotSet(key) => format!("{key} is not set"),
        Message::Clearance { range, clearance, least, most } => {
            format!("{range}: a slot is {clearance} wider than what goes in; {least} to {most} are wanted.")
        }
        Message::BetterClearance(better) => format!("In the middle of that would be {better}."),
        Message::TooManyTight(most) => {
            format!("More than {most} of the joints would not go in: take another batch or finish, or more clearance.")
        }
        Message::DryAndDamp { made, dry, damp } => format!(
            "Dry, damp: the clearance to be expected when all the wood has {dry} % and {damp} % of moisture; it is cut at \
             {made} %."
        ),
        Message::Board { key, name, thickness, measured, deviation } => match measured {
            Measured::Points => {
                format!("{key}, {name}: {thickness} measured at eight points, deviation {deviation}")
            }
            Measured::Mean => format!("{key}, {name}: {thickness} measured, its mean alone"),
            Measured::Not => format!("{key}, {name}: {thickness}, not measured"),
        },
        Message::Kilograms(mass) => format!("{mass} kg"),
        Message::Millimetres(length) => format!("{length} mm"),
        Message::Percent(share) => format!("{share} %"),
        Message::ShareUnder(least) => format!("under {least} %"),
        Message::UnitOf { model, range, sizes, finish } => format!("{model} of {range}, {sizes} mm, {finish}"),
        Message::Kept(question) => format!("{question}, kept"),
        Message::WithThese(changes) => format!("It can be with these changes: {changes}."),
        Message::AsWell(reason, change) => format!("{reason} {change} as well."),
        Message::ShutUnless(reason, release) => format!("{reason} {release}."),
        Message::FromTo(from, to) => format!("{from} to {to} mm"),
        Message::Right { range, workshop, warnings: 0 } => format!("{range} of {workshop}: right"),
        Message::Right { range, workshop, warnings } => {
            format!("{range} of {workshop}: right, with {}", counted(&warnings.to_string(), "warning", "warnings"))
        }
        Message::Warning(file, about) => format!("warning: {file}:{about}"),
        Message::Placed { sheets, fewest, filled } => {
            let sheets_counted = counted(&sheets.to_string(), "sheet", "sheets");
            if sheets == fewest {
                format!("{sheets_counted}, {filled} of them parts; fewer are not possible")
            } else {
                format!("{sheets_counted}, {filled} of them parts; fewer than {fewest} are not possible")
            }
        }
        Message::OnStrip { length, filled } => format!("{length} of the strip, {filled} of it parts"),
        Message::Progress(done, of) => format!("{done} of {of}"),
    }
}
