//! The workshop's page in English.

use super::LOCALE;
use super::count::counted;
use crate::units::quantity::Dim;
use crate::words::workshop::{Label, Message};

#[expect(clippy::too_many_lines, reason = "one line a text")]
pub(in crate::words) const fn label(of: Label) -> &'static str {
    match of {
        Label::Title => "Slotwright at the saw: from orders to a cut pack",
        Label::Description => {
            "Bring the orders of the day: each is checked, its parts go on shared sheets, and drawings, labels and papers \
             come as one pack."
        }
        Label::AtTheSaw => "at the saw",
        Label::Loading => "Opening the workshop \u{2026}",
        Label::Stopped => "The page has stopped by a fault of its own. Load it again and bring the orders once more.",
        Label::Missing => "A part of the page did not arrive, or is of another day than the rest. Try again.",
        Label::TooOld => {
            "This browser cannot run the page: it is too old, or WebAssembly is switched off in it. Switch that on, or \
             use another browser."
        }
        Label::NoScript => {
            "This page computes in your browser, and for that it needs scripts. Allow them for this page, or use \
             another browser."
        }
        Label::Trouble => "The page does not go on",
        Label::TryAgain => "Try again",
        Label::ToTheShop => "To the shop",
        Label::Skip => "Skip to the sheets",
        Label::Orders => "Orders",
        Label::Sheets => "Sheets",
        Label::ToMake => "To make",
        Label::Papers => "Papers",
        Label::AddOrders => "Add orders",
        Label::Settings => "Stock and measures",
        Label::DropHere => "Drop the orders of the day here",
        Label::NothingYet => {
            "Order files, one or fifty. Each is checked again, and what holds goes on shared sheets. A list of offcuts \
             or the range file of an older order may come with them."
        }
        Label::Local => "All of it is worked out in this browser: nothing leaves this device.",
        Label::ScanHow => "Read the code of a label with a hand scanner: its sheet, its step and its order are shown.",
        Label::Gone => "Orders have names and addresses, so nothing is kept: they are gone with the page.",
        Label::SetAside => "Set aside",
        Label::AskAgain => ". Tell the customer what differs, and have the order written anew.",
        Label::AlsoHere => "Also here",
        Label::TakeOut => "Take out",
        Label::Parts => "parts",
        Label::NoSheets => "No sheets: an order has to be taken, and its parts have to go on what is in stock.",
        Label::ShowLarge => "Show large",
        Label::Smaller => "Smaller",
        Label::Larger => "Larger",
        Label::Close => "Close",
        Label::Lots => "Sheets by finish and thickness",
        Label::Part => "Part",
        Label::Size => "Size, mm",
        Label::KeptOffcut => "kept",
        Label::NoneKept => "none",
        Label::Pack => "Pack",
        Label::InParts => "In parts",
        Label::Cost => "Sheets less offcuts",
        Label::FromRack => "From the rack",
        Label::Machine => "Machine",
        Label::Packages => "Packages",
        Label::Finish => "Finish, with loss",
        Label::ByStage => "Minutes by stage",
        Label::Promises => "Promises",
        Label::Cautions => {
            "Dust: extraction and a fitted mask. Spraying: ventilation and the data sheet of each finish. The first \
             sheet of a batch: measure a slot before you cut on."
        }
        Label::Guidance => "Minutes, masses and days are guidance for a maker, no promise of a machine.",
        Label::LookLonger => "Look longer",
        Label::Stop => "Stop",
        Label::StopWriting => "Stop writing",
        Label::Halted => "Stopped: nothing was saved",
        Label::NotInPack => "This pack has none of that: one part alone has no papers of an order.",
        Label::PrintAll => "Papers to print",
        Label::TakePack => "Take the pack",
        Label::Reading => "Reading the orders \u{2026}",
        Label::Writing => "Writing drawings and papers \u{2026}",
        Label::Labels => "Labels",
        Label::CutList => "Cut list",
        Label::Finishing => "Finishing",
        Label::Batch => "Batch",
        Label::JobCards => "Job cards",
        Label::PackingLists => "Packing lists",
        Label::DeliveryNotes => "Delivery notes",
        Label::AssemblySheets => "Assembly",
        Label::Lists => "Lists as CSV",
        Label::PrintHow => {
            "Each opens beside this page, where your browser prints it; labels first, then what goes from stage to stage."
        }
        Label::CutAndPaper => "Cutting and paper",
        Label::OnePartAgain => "One part again",
        Label::OnePartHow => {
            "For a damaged part: only this one is cut. Type the code of its label, or scan it with a hand scanner into the field."
        }
        Label::OnePart => "Order and part",
        Label::OnePartHint => "2/shelf-1-1 or 2/7",
        Label::Measured => "Measured thickness",
        Label::MeasuredHow => {
            "Eight points of the batch in millimetres, sanded and uncoated, about 50 mm from the edge (EN 324-1). Slots are cut for it."
        }
        Label::Cutter => "Cutter, mm",
        Label::Allowance => "Between parts, beyond the cutter, mm",
        Label::ByRange => "by the range",
        Label::InStock => "Sheets in stock",
        Label::InStockHow => "Left empty, there are as many as it takes.",
        Label::PaperFormat => "Paper",
        Label::LabelFormat => "Labels on",
        Label::Rack => "Offcuts in the rack",
        Label::RackHow => {
            "Bring the list offcuts.csv of an earlier pack with the orders: an offcut is cut where that saves a sheet or a dearer one."
        }
        Label::WantsCount => "Write how many there are, as 12, or leave it empty.",
        Label::DayAndBooked => "Day and booked work",
        Label::DayAndBookedHow => {
            "For the batch sheet: work begins after this day, behind what is booked at each stage, and never before the last of the orders was made. Left empty, it is that day, and nothing is booked."
        }
        Label::FromDay => "Work begins after",
        Label::FromDayHint => "as 2026-12-01",
        Label::NotSaved => "This browser saves no files here.",
        Label::WorkerGone => "What cuts the sheets did not answer. Load the page again and bring the orders once more.",
        Label::RangeGone => "The workshop's range file is not there, so no order can be checked. Load the page again.",
        Label::NoPackYet => "There is no pack yet: no order is taken.",
    }
}

fn unit(model: &str, sides: &str, plinth: Option<Dim>, finish: &str) -> String {
    let plinth = plinth.map(|plinth| format!(", on a plinth of {}", LOCALE.length(plinth)));
    format!("{model} {sides}{}, {finish}", plinth.unwrap_or_default())
}

fn in_turn(all: bool, from: &str, is_booked: bool) -> String {
    let booked = if is_booked { "once what is booked is done" } else { "with nothing else booked" };
    let late = if all { "nothing promised is late." } else { "these would be late:" };
    format!("Made in turn from the day after {from}, {booked}, {late}")
}

fn done((taken, aside, parts): (usize, usize, usize), less: Option<&str>, (searched, looks): (bool, bool)) -> String {
    let mut said =
        format!("{}, {}", counted(&taken.to_string(), "order", "orders"), counted(&parts.to_string(), "part", "parts"));
    if aside > 0 {
        said = format!("{said}, {aside} set aside");
    }
    let verb = if looks { "looking on" } else { "nested" };
    match less {
        Some(less) => format!("{said}; {verb}: {less} less than the first nest"),
        None if looks || !searched => format!("{said}; {verb}"),
        None => format!("{said}; {verb}, nothing cheaper found"),
    }
}

fn not_here(code: &str) -> String {
    format!(
        "Nothing here has the code {code:?}: bring the order of that label. Where a code has other letters than 0a1b2c3d/shelf-1-1, \
         the scanner is set for another keyboard."
    )
}

pub(in crate::words) fn message(of: Message<'_>) -> String {
    match of {
        Message::Unit { model, sides, plinth, finish } => unit(model, sides, plinth, finish),
        Message::Holds { parts, day } => {
            format!("holds \u{b7} {} \u{b7} due {day}", counted(&parts.to_string(), "part", "parts"))
        }
        Message::AsCut(figures) => {
            format!(
                "cut by another batch or cutter than promised: {} differ",
                counted(&figures.to_string(), "figure", "figures")
            )
        }
        Message::RackOf(file, count) => {
            format!("{file}: {} of the rack", counted(&count.to_string(), "offcut", "offcuts"))
        }
        Message::RangeOf(file, range) => format!("{file}: the range {range}"),
        Message::NotRead(file, why) => format!("{file}: {why}"),
        Message::TakeOut(file) => format!("Take out {file}"),
        Message::Lot { finish, thickness, sheets } => format!("{finish}, {thickness}: {sheets}"),
        Message::CutBy { uncoated, coated, cutter, spacing } => {
            format!("slots for {uncoated}, sheets {coated} with their coats, cutter {cutter}, {spacing} between parts")
        }
        Message::Sheet(number) => format!("Sheet {number}"),
        Message::SheetFigures { sides, used, minutes } => format!("{sides} \u{b7} {used} in parts \u{b7} {minutes}"),
        Message::FromRack(name) => format!("offcut {name} of the rack"),
        Message::SheetPicture { number, parts, along } => {
            let grain = if along { "along" } else { "across" };
            format!("Sheet {number}, grain {grain} it, {}", counted(&parts.to_string(), "part", "parts"))
        }
        Message::KeptCount(count) => format!("{} worth keeping", counted(&count.to_string(), "offcut", "offcuts")),
        Message::Kept(sides, sheet) => format!("{sides} of sheet {sheet}"),
        Message::Percent(share) => format!("{share}\u{202f}%"),
        Message::SheetsFor(sheets, parts) => format!(
            "{} for {}",
            counted(&sheets.to_string(), "sheet", "sheets"),
            counted(&parts.to_string(), "part", "parts")
        ),
        Message::Machine(minutes, metres) => format!("{minutes} for {metres}"),
        Message::Packages(count, least, most) => {
            let counted = counted(&count.to_string(), "package", "packages");
            if least == most {
                format!("{counted} of {most}, with packing")
            } else {
                format!("{counted}, {least} to {most} with packing")
            }
        }
        Message::Litres(before, after) => format!("{before}, then {after} once cut"),
        Message::Days(days) => counted(&days.to_string(), "day", "days"),
        Message::Late(order, planned, promised) => format!("Order {order}: {planned}; promised for {promised}"),
        Message::Done { taken, aside, parts, less, searched, looks } => {
            done((taken, aside, parts), less, (searched, looks))
        }
        Message::AllAside(count) => {
            format!("No order is taken; {} set aside", counted(&count.to_string(), "file is", "files are"))
        }
        Message::Saved(name) => format!("Saved as {name}"),
        Message::Written(percent) => format!("Writing drawings and papers: {percent}\u{202f}%"),
        Message::PaperOf(customer, name) => format!("{name}, for {customer}"),
        Message::DrawingOf(format, of) => format!("{of} as {format}"),
        Message::SettingsWrong(names) => {
            format!("There is no pack until this can be read, or is empty: {}.", names.join("; "))
        }
        Message::ThicknessOf(board) => format!("the measured thickness of {board}"),
        Message::InTurn { all, from, is_booked } => in_turn(all, from, is_booked),
        Message::BookedAt(stage) => format!("Booked at \u{201c}{stage}\u{201d}, minutes or hours"),
        Message::Found { mark, part, customer, sheet, step } => match sheet {
            Some(sheet) => format!("{mark}, {part}, for {customer}: sheet {sheet}, step {step}"),
            None => format!("{mark}, {part}, for {customer}: step {step}; this pack does not cut it"),
        },
        Message::FoundOffcut { name, sides, sheet } => match sheet {
            Some(sheet) => format!("Offcut {name}, {sides}: kept of sheet {sheet}"),
            None => format!("Offcut {name}, {sides}: in the rack"),
        },
        Message::NotHere(code) => not_here(code),
        Message::Booked(minutes) => super::pack::time(minutes),
        Message::StockOf(board) => format!("the sheets of {board} in stock"),
        Message::RackUsed { used, fit, there } => {
            let there = counted(&there.to_string(), "offcut", "offcuts");
            if used > 0 {
                format!("{used} of {there}")
            } else if fit > 0 {
                format!("none of {there}: sheets that are needed anyway have room")
            } else {
                format!("none of {there}: they are of other boards, finishes or thicknesses")
            }
        }
        Message::FormatNamed(name) => match name {
            "a4" => "A4",
            "letter" => "Letter",
            "a4-3x8" => "A4 sheets, 3 \u{d7} 8",
            "a4-2x7" => "A4 sheets, 2 \u{d7} 7",
            "letter-3x10" => "Letter sheets, 3 \u{d7} 10",
            "100x50" => "a roll, 100 \u{d7} 50 mm",
            "62x29" => "a roll, 62 \u{d7} 29 mm",
            other => other,
        }
        .into(),
        Message::Format(board, sides) => format!("{board}, {sides}"),
        Message::Mean(mean, spread) => format!("Mean {mean}, spread {spread}"),
    }
}
