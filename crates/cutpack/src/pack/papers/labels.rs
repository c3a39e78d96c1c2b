//! A label for each part and for each offcut that is kept, sheet by sheet as they come off the machine.

use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_core::words::paper::{Label, Message};
use slotwright_core::words::shell;

use super::super::lot::Lot;
use super::super::nest::StoredOffcut;
use super::super::sheet::{Placed, Sheet};
use super::super::{Kind, Pack, TakenOrder, list};
use super::{Desk, sketch, thickness};
use crate::paper::{Block, Face, Paper, Setting, Style, qr};
use crate::vector::{Align, Colour, Spot, Vector};

/// From the edge of a label to what stands on it: sheets of labels shift a little in the printer.
const MARGIN_MM: f64 = 4.5;
/// To a code, which has white round it.
const MARGIN_OF_CODE_MM: f64 = 3.0;
/// Between things.
const GAP_MM: f64 = 0.6;
/// A picture that is lower shows nothing.
const PICTURE_LEAST_MM: f64 = 3.0;
/// Labels that are narrower have smaller letters.
const NARROW_MM: f64 = 70.0;

pub(super) fn write(desk: &mut Desk<'_, '_>) {
    let setting = Setting {
        format: desk.pack.settings.papers.labels.format,
        title: Label::Labels.text().into(),
        language: shell::Label::Language.text().into(),
        running: None,
    };
    let mut paper = Paper::of_labels(setting, desk.pack.settings.papers.labels, 0);
    for (lot, sheet, _) in desk.pack.sheets() {
        for placed in &sheet.placed {
            part(&mut paper.label(), desk.pack, sheet, placed);
        }
        for kept in list::kept(lot, sheet, &desk.pack.name) {
            offcut(&mut paper.label(), lot, (sheet, &desk.pack.name), &kept);
        }
    }
    desk.put(Kind::Labels, None, paper);
}

/// What the code of a part says: the beginning of its order's digest, and its id.
fn code(pack: &Pack<'_>, placed: &Placed<'_>) -> String {
    let is_its = |order: &&TakenOrder<'_>| order.number == placed.part.order;
    let digest = pack.orders.taken.iter().find(is_its).map(|order| order.spec.digest.short()).unwrap_or_default();
    format!("{digest}/{}", placed.part.panel.id)
}

fn part(block: &mut Block<'_>, pack: &Pack<'_>, sheet: &Sheet<'_>, placed: &Placed<'_>) {
    let part = &placed.part;
    let name = words::part(part.panel.id);
    let (along, across) = part.along_and_across();
    let size = super::sides(&[along, across, part.panel.thickness]);
    let way = Message::PartOf { order: part.order, sheet: sheet.number, step: part.step, pack: &pack.name }.text();
    let content = Content {
        heading: part.mark(),
        lines: [name.clone(), size, way, Message::StickOn(part.panel.id).text()],
        code: code(pack, placed),
        size: placed.size(),
        alternative: Message::PartPicture(&name).text(),
    };
    set(block, &content, &|width, height| sketch::part(placed, sheet.grain, width, height));
}

fn offcut(block: &mut Block<'_>, lot: &Lot<'_>, (sheet, pack): (&Sheet<'_>, &str), kept: &StoredOffcut) {
    let size = (kept.size.along, kept.size.across);
    let sides = [size.0, size.1].map(|side| words::decimal(side.in_mm(), 0));
    let measured = kept.measured.map(thickness);
    let coated = thickness(sheet.coated(lot));
    let content = Content {
        heading: kept.name.clone(),
        lines: [
            Message::Lot { board: &lot.board.name, finish: &lot.finish.name }.text(),
            Message::ByGrain(&sides).text(),
            Message::OffcutThickness { coated: &coated, measured: measured.as_deref() }.text(),
            Message::OffcutOf { sheet: sheet.number, pack }.text(),
        ],
        code: kept.name.clone(),
        size,
        alternative: Message::OffcutPicture(&kept.name).text(),
    };
    set(block, &content, &|width, height| sketch::offcut(size, width, height));
}

/// What stands on a label.
struct Content {
    heading: String,
    /// The first one stands out.
    lines: [String; 4],
    code: String,
    /// Sides of what is pictured, as it lies there.
    size: (Length, Length),
    alternative: String,
}

/// Sets a label: letters to the left, the code to the right, and the picture where it is largest, below the one or the other.
fn set(block: &mut Block<'_>, content: &Content, picture: &dyn Fn(Length, Length) -> Vector) {
    let (margin, gap) = (Length::mm(MARGIN_MM), Length::mm(GAP_MM));
    let (top, low) = (margin / 2.0, block.height - margin / 2.0);
    // The code is square; a low label gives it what it has.
    let side = (block.height * 0.5).max(Length::mm(15.0)).min(block.height - margin);
    let right = block.width - Length::mm(MARGIN_OF_CODE_MM) - side;
    let wide = right - margin - Length::mm(2.0);
    let down = letters(block, content, (Spot::new(margin, top), wide));
    let code = Message::Code(&content.code).text();
    match qr::code(&content.code, side) {
        Some(square) => block.picture(Spot::new(right, top), &square, &code),
        None => block.no_room(&code),
    }
    let under_code = top + side + gap;
    let under_letters = down + gap;
    let across = if under_letters < under_code { wide } else { block.width - margin * 2.0 };
    let rooms = [(Spot::new(margin, under_letters), across), (Spot::new(right, under_code), side)];
    let fits = |(at, width): (Spot, Length)| {
        let (long, high) = content.size;
        let height = low - at.y;
        (height >= Length::mm(PICTURE_LEAST_MM)).then(|| ((width / long).min(height / high), at, width, height))
    };
    let largest = rooms.into_iter().filter_map(fits).max_by(|a, b| a.0.total_cmp(&b.0));
    match largest {
        Some((_, at, width, height)) => block.picture(at, &picture(width, height), &content.alternative),
        None => block.no_room(&content.alternative),
    }
}

/// Sets heading and lines; how far down they reach.
fn letters(block: &mut Block<'_>, content: &Content, (at, wide): (Spot, Length)) -> Length {
    let points = if block.width < Length::mm(NARROW_MM) { 7.0 } else { 8.0 };
    let heading = Style::of(Face::Heading, (block.height.in_mm() * 0.55).min(26.0), Colour::INK);
    let long = block.length(&content.heading, &heading);
    let fitted = if long > wide { Style { size: heading.size * (wide / long), ..heading } } else { heading };
    block.heading(at, wide, &content.heading, &fitted, 1);
    let mut down = at.y + heading.leading();
    for (number, line) in content.lines.iter().enumerate() {
        let style = if number == 0 { Style::STRONG.sized(points * 1.2) } else { Style::SMALL.sized(points).level() };
        block.line(Spot::new(at.x, down), wide, line, &style, Align::Start);
        down += style.leading();
    }
    down
}
