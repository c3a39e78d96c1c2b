//! The page in English.

use super::count::counted;
use crate::choice::Bowed;
use crate::input::entry::Refused;
use crate::words::page::{Label, Message};
use crate::words::{fill, length, mass, money, part, question};

#[expect(clippy::too_many_lines, reason = "one line a text")]
pub(in crate::words) const fn label(of: Label) -> &'static str {
    match of {
        Label::Skip => "Skip to the questions",
        Label::SkipToOrder => "Skip to price and order (Ctrl+Enter)",
        Label::Questions => "Questions",
        Label::Cautions => {
            "Slotwright calculates; it does not test, and it certifies nothing. Fasten tall units and units with \
             doors to the wall. Local rules and qualified people decide."
        }
        Label::Close => "Close",
        Label::Mm => "mm",
        Label::Kg => "kg",
        Label::Inch => "inch",
        Label::OpenOrder => "Open an order",
        Label::TakeItBack => "Take it back",
        Label::SeeStops => "See what stops it",
        Label::Offline => " \u{b7} offline",
        Label::Undo => "Undo",
        Label::Redo => "Redo",
        Label::BeginAfresh => "Begin afresh",
        Label::Menu => "Menu",
        Label::Print => "Print",
        Label::NothingOrdered => "Nothing can be ordered now.",
        Label::BuiltInRange => "What you see is the range that came with the page; its prices may be old.",
        Label::TryAgain => "Try again",
        Label::FetchingRange => "Fetching the range file \u{2026}",
        Label::RangeNotFetched => "The range file could not be fetched. Is there a connection?",
        Label::RangeUnread => "The workshop\u{2019}s range cannot be read at the moment.",
        Label::RangeSilent => "The workshop\u{2019}s range does not come: the line is very slow.",
        Label::ForTheWorkshop => "What is wrong with it, for the workshop",
        Label::WithoutAdvice => {
            "Advice cannot be given now. What can be made, price and day hold all the same; load the page again, or use \
             another browser, for the rest."
        }
        Label::FileUnread => "This file cannot be read, or is far too large for an order.",
        Label::FileNotSaved => "The browser did not let the file be saved.",
        Label::FileNotShared => "The browser did not hand it over. It is saved: attach it to a message by hand.",
        Label::WhereItStands => "Where it stands",
        Label::HowBig => "How big",
        Label::WhatInEachBay => "What goes in each bay",
        Label::HowItLooks => "How it looks",
        Label::FreeWall => "Free wall",
        Label::Ceiling => "Ceiling",
        Label::ScreenOnTop => "Screen on top",
        Label::PlugToPass => "Plug to pass",
        Label::Any => "any",
        Label::Model => "Model",
        Label::Width => "Width",
        Label::Height => "Height",
        Label::Depth => "Depth",
        Label::BayCount => "Number of bays",
        Label::BayToLookAt => "Bay to look at",
        Label::ShareOfWidth => "Share of the width",
        Label::PlaceOfHole => "Place of the hole",
        Label::NoHole => "No hole",
        Label::NoDevice => "No device",
        Label::Finish => "Finish",
        Label::Back => "Back",
        Label::Corners => "Corners of top and base",
        Label::Square => "Square",
        Label::Plinth => "Plinth",
        Label::NoPlinth => "No plinth",
        Label::Without => "none",
        Label::WithinHeight => "Counted in the height.",
        Label::Bow => "Bow of ends",
        Label::BowedEnds => "Bowed ends",
        Label::BothEnds => "Both ends",
        Label::LeftEnd => "Left end",
        Label::RightEnd => "Right end",
        Label::Keep => "Keep",
        Label::TheWidth => "The width",
        Label::TheHeight => "The height",
        Label::TheDepth => "The depth",
        Label::TheBow => "The bow of the ends",
        Label::ThePlinth => "The plinth",
        Label::TheFreeWall => "The free wall",
        Label::TheCeiling => "The ceiling",
        Label::TheScreen => "The screen",
        Label::ThePrice => "The price",
        Label::TheWeight => "The weight",
        Label::TheDay => "The day",
        Label::CannotBeMade => "Cannot be made.",
        Label::Mind => "Mind.",
        Label::Why => "Why",
        Label::FindOneThat => "Find one that",
        Label::IsWidest => "is as wide as can be",
        Label::TakesScreen => "takes the screen",
        Label::CostsLeast => "costs as little as can be",
        Label::CostsAtMost => "costs at most",
        Label::HasPartsUpTo => "has parts up to",
        Label::IsThereBy => "is there by",
        Label::NoDay => "This is no day. Write it as 2027-01-31.",
        Label::Drawing => "Drawing",
        Label::View => "View",
        Label::Solid => "Solid",
        Label::Sheet => "Sheet",
        Label::Elevation => "Elevation",
        Label::Plan => "Plan",
        Label::Section => "Section",
        Label::NothingToDraw => "There is nothing to draw.",
        Label::NoSolid => "This browser draws no solid unit here; the drawing shows it.",
        Label::Corner => "Corner",
        Label::Front => "Front",
        Label::FromAbove => "From above",
        Label::TurnLeft => "Turn to the left",
        Label::TurnRight => "Turn to the right",
        Label::LookFromHigher => "Look from higher",
        Label::LookFromLower => "Look from lower",
        Label::Nearer => "Nearer",
        Label::Farther => "Farther",
        Label::DoorsOpen => "Doors open",
        Label::Person => "Person, 1.70 m",
        Label::BuildItUp => "Build it up",
        Label::StepBack => "One step back",
        Label::StepOn => "One step on",
        Label::Steps => "Steps",
        Label::Play => "Play",
        Label::Pause => "Pause",
        Label::SceneKeys => {
            "Arrow keys turn it, with Shift they move it, plus and minus go nearer and farther, Home goes back to the \
             corner."
        }
        Label::LookFrom => "Look from",
        Label::Show => "Show",
        Label::PullApart => "Pull apart",
        Label::Apart => "Apart",
        Label::More => "More",
        Label::TakeAway => "Take away",
        Label::SaveSolid => "Save as a 3D file",
        Label::StandInRoom => "Stand it in your room",
        Label::NoRoom => "This device cannot stand things in your room.",
        Label::UnmadeNotWritten => "Only a unit that can be made is written: see what stops it.",
        Label::WritingSolid => "Writing the solid \u{2026}",
        Label::MakingSolid => "Making the solid \u{2026}",
        Label::ViewerNotLoaded => "The viewer could not be loaded. Is there a connection?",
        Label::InYourRoom => "In your room",
        Label::RoomCautions => {
            "Turn it here, then stand it in the room by the button on the picture. It comes in its true size, but a \
             camera is no tape measure: measure the wall. Look round while you walk; mind steps, people and pets."
        }
        Label::StandItHere => "Stand it here",
        Label::Link => "Link",
        Label::MakingLink => "Making the link \u{2026}",
        Label::LinkCopied => "Copied.",
        Label::LinkNotCopied => "The browser did not copy it. It is selected: copy it from there.",
        Label::Drafts => "Drafts",
        Label::OpeningDrafts => "Opening the drafts \u{2026}",
        Label::Saved => "Saved",
        Label::Saving => "Saving \u{2026}",
        Label::NotSaved => "Not saved",
        Label::OwnUnit => {
            "Another tab shows the unit as it was, and saves that. From here on this tab has a unit of its own; both \
             are kept."
        }
        Label::LeftUnit => "The unit that was here before is kept among the drafts.",
        Label::StorageFull => {
            "This browser has no room left to save in: what you change now is gone when you leave. Delete drafts, or \
             copy the link, which carries the unit."
        }
        Label::StorageShut => {
            "This browser lets the page save nothing: what you change is gone when you leave. Copy the link, which \
             carries the unit, or allow this page to keep data."
        }
        Label::ClearedForVisitor => {
            "The unit, all drafts and what was typed for an order are cleared. For a minute you can take it back."
        }
        Label::PriceWithTax => "Price with tax",
        Label::Weight => "Weight",
        Label::WithYouBy => "With you by",
        Label::NotJudgedYet => "Not judged yet",
        Label::VerdictUnmakeable => "Cannot be made",
        Label::NotOrderedNow => "Cannot be ordered now",
        Label::CanBeMade => "Can be made",
        Label::MadeButUnsuited => "Can be made, does not suit",
        Label::Which => "Which",
        Label::NoRangeFile => "No range file",
        Label::DateIsWrong => "The date is wrong",
        Label::OrderSpec => "Order",
        Label::Price => "Price",
        Label::TotalWithTax => "Total with tax",
        Label::DoneBy => "When it is done",
        Label::Material => "Material",
        Label::Making => "Making",
        Label::PackingAndCarriage => "Packing and carriage",
        Label::Tax => "Tax",
        Label::ForTheDelivery => {
            "What you enter here is for the delivery only: it goes into the file and nowhere else. Nothing is sent, and it is \
             gone once you begin afresh or leave the page."
        }
        Label::Name => "Name",
        Label::Contact => "E-mail or telephone",
        Label::Address => "Address, up to six lines",
        Label::Remark => "Remark for workshop and driver, if any",
        Label::SaveOrder => "Save the order",
        Label::WritingOrder => "Writing the order \u{2026}",
        Label::DeskNotLoaded => "The order desk could not be loaded. Is there a connection?",
        Label::DeskSilent => "The order desk has not answered. Load the page anew and try again.",
    }
}

pub(in crate::words) fn message(of: Message<'_>) -> String {
    match of {
        Message::ModelGone(model) => {
            format!("What you chose last time is of the model {model}, which this range no longer has.")
        }
        Message::RangeNamed(name) => format!("{name} range"),
        Message::WrongClock(day) => {
            format!("This device says that it is {day}, so no day can be promised. Set its clock, then try again.")
        }
        Message::Keep(about) => format!("Keep {}", question(about)),
        Message::BayCard(number, holds) => format!("{number}: {}", fill(holds)),
        Message::BayHolds(number) => format!("Bay {number} holds"),
        Message::BayHole(number) => format!("Cable hole in the back of bay {number}"),
        Message::BayDevice(number) => format!("Device in bay {number}"),
        Message::Radius(radius) => format!("Radius {}", length(radius)),
        Message::BowedBy(bow, Bowed::Both) => format!("Both bowed by {}", length(bow)),
        Message::BowedBy(bow, Bowed::Left) => format!("The left one bowed by {}", length(bow)),
        Message::BowedBy(bow, Bowed::Right) => format!("The right one bowed by {}", length(bow)),
        Message::Less(of) => format!("{of}: less"),
        Message::More(of) => format!("{of}: more"),
        Message::StepLess(of) => format!("{of}: one step less"),
        Message::StepMore(of) => format!("{of}: one step more"),
        Message::OnToBay(number) => format!("On to bay {number}"),
        Message::AtSize(size, why) => format!("At {}: {why}", length(size)),
        Message::CannotBeHad { asked, answer, why } => format!("{asked}: {answer}. This cannot be had: {why}"),
        Message::NotAlone { asked, answer, why } => format!("{asked}: {answer}. This does not go alone: {why}"),
        Message::Looks { shifts, shut } => format!(
            "<span id=\"{shifts}\"><b>Dashed</b> goes with another change</span>, <span id=\"{shut}\"><b><s>struck \
             through</s></b> cannot be had</span>: press it to see why."
        ),
        Message::Source(source) => format!("Source: {source}."),
        Message::NotTaken(field, Refused::Unread) => format!("{} cannot be read", label(field)),
        Message::NotTaken(field, Refused::Beyond) => format!("{} is out of bounds", label(field)),
        Message::LongestStep(stage) => format!("Longest step: {stage}"),
        Message::Hints(count) => counted(&count.to_string(), "hint", "hints"),
        Message::Reasons(count) => counted(&count.to_string(), "reason", "reasons"),
        Message::TaxOfIt(tax, currency) => format!("{} of it tax", money(tax, currency)),
        Message::Heaviest(id, heavy) => format!("{}: {}", part(id), mass(heavy)),
        Message::Spoken { price, mass, day } => format!("{price}, {mass}, with you by {day}."),
        Message::SpokenBut { verdict, price, mass, day } => format!("{verdict}. {price}, {mass}, by {day}."),
        Message::SpokenStop(verdict, about) => format!("{verdict}: {about}."),
        Message::SpokenStep(what, effect) => format!("{what} {effect}."),
        Message::SpokenUnread(which, wrong) => format!("{which}. {wrong}"),
        Message::SpokenWay(why, way) => format!("{why}\nEnter: {way}."),
        Message::NotOrderedYet(why) => format!("Not to be ordered yet. {why}"),
        Message::CopyOf(name) => format!("{name}, second"),
        Message::BroughtBy(carrier) => format!("With you: {carrier}"),
        Message::Saved(file) => format!("Saved as {file}."),
        Message::OrderSaved(file) => format!(
            "Saved as {file}, where this browser keeps what it downloads. Nothing was sent: send it to the workshop."
        ),
    }
}
