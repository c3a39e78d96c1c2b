//! The sheets of a lot as pictures: true outlines, the mark of each part, the grain, and what is kept.

use core::fmt::Write;

use slotwright_core::range::Grain;
use slotwright_core::units::decimal::Plain;
use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_core::words::paper;
use slotwright_core::words::workshop::{Label, Message};
use slotwright_cutpack::pack::LotSheets;
use slotwright_cutpack::pack::draw::{mark_place, path_data};
use slotwright_cutpack::pack::path::Program;
use slotwright_cutpack::pack::sheet::{Placed, Rectangle, Sheet, Stock};

use crate::html::escaped;
use crate::orders::{sides, tint};

/// Height of letters at most, in millimetres of the sheet.
const LETTERS_MM: f64 = 105.0;
/// And at least: smaller ones nobody reads.
const LETTERS_LEAST_MM: f64 = 20.0;
/// A sheet among others is so wide on the screen at least, in pixels, and letters below so many of them are left out of it: list
/// and title have what they say, and so has the sheet in large.
const PICTURE_PX: f64 = 352.0;
const LEGIBLE_PX: f64 = 10.0;
/// A letter is about so wide by its height.
const LETTER_WIDE: f64 = 0.56;
/// Between lines of the grain, in turns: wood is not ruled.
const GRAIN_MM: [f64; 5] = [61.0, 38.0, 83.0, 47.0, 71.0];

/// All sheets of a lot, with how they are cut.
pub(crate) fn html(lot: &LotSheets<'_>) -> String {
    let (board, range) = (lot.lot.board, lot.lot.range);
    let cut_by = Message::CutBy {
        uncoated: &mm(board.thickness(), 2),
        coated: &mm(lot.lot.coated(), 2),
        cutter: &mm(range.build.cutter_mm, 2),
        spacing: &mm(range.spacing(), 2),
    };
    let mut html = format!("<p class=\"cut-by\">{}, {}</p><ul class=\"nest\">", escaped(&board.name), cut_by.text());
    for (sheet, program) in &lot.sheets {
        html.push_str(&one(lot, sheet, program));
    }
    html + "</ul>"
}

/// The name of a lot's tab.
pub(crate) fn tab(lot: &LotSheets<'_>) -> String {
    let thickness = mm(lot.lot.board.nominal_mm, 0);
    Message::Lot { finish: &lot.lot.finish.name, thickness: &thickness, sheets: lot.sheets.len() }.text()
}

fn mm(length: Length, decimals: u32) -> String {
    paper::Message::Millimetres(&words::decimal(length.in_mm(), decimals)).text()
}

fn one(lot: &LotSheets<'_>, sheet: &Sheet<'_>, program: &Program) -> String {
    let number = sheet.number;
    let figures = Message::SheetFigures {
        sides: &sides(&[sheet.length, sheet.width]),
        used: &Message::Percent(&words::decimal(sheet.used_share() * 100.0, 0)).text(),
        minutes: &paper::Message::Minutes(&words::decimal(program.minutes.ceil(), 0)).text(),
    };
    let mut told = escaped(&figures.text());
    if let Stock::Offcut(name) = &sheet.stock {
        let _ = write!(told, " \u{b7} {}", escaped(&Message::FromRack(name).text()));
    }
    format!(
        "<li><button type=\"button\" class=\"picture\" data-do=\"large {number}\" title=\"{}\">{}</button>\
         <p class=\"caption\"><b>{}</b> {told} {}{}</p>{}</li>",
        Label::ShowLarge.text(),
        svg(sheet),
        Message::Sheet(number).text(),
        drawing(&[&sheet.path(&lot.lot), ".dxf"].concat(), "DXF", &Message::Sheet(number).text()),
        drawing(&[&sheet.path(&lot.lot), ".svg"].concat(), "SVG", &Message::Sheet(number).text()),
        parts(sheet),
    )
}

/// A button that takes one drawing of the pack.
fn drawing(path: &str, format: &str, of: &str) -> String {
    let name = escaped(&Message::DrawingOf(format, of).text());
    format!(
        "<button type=\"button\" class=\"take-one\" data-do=\"take {}\" aria-label=\"{name}\" title=\"{name}\">{format}</button>",
        escaped(path)
    )
}

fn picture_name(sheet: &Sheet<'_>) -> String {
    let (number, parts) = (sheet.number, sheet.placed.len());
    Message::SheetPicture { number, parts, along: sheet.grain == Grain::Length }.text()
}

/// What lies on a sheet, for who reads or hears it.
fn parts(sheet: &Sheet<'_>) -> String {
    let mut placed: Vec<&Placed<'_>> = sheet.placed.iter().collect();
    placed.sort_by_key(|placed| (placed.part.order, placed.part.number));
    let rows: Vec<String> = placed
        .into_iter()
        .map(|Placed { part, .. }| {
            let (u, v) = part.panel.blank();
            let size = sides(&[u, v]);
            format!(
                "<tr><th scope=\"row\" class=\"{}\">{}</th><td>{}</td><td>{size}</td><td>{}</td></tr>",
                tint(part.order),
                part.mark(),
                escaped(&words::part(part.panel.id)),
                drawing(&part.path(), "DXF", &part.mark())
            )
        })
        .collect();
    let kept: Vec<String> = sheet
        .kept
        .iter()
        .map(|kept| {
            let (long, wide) = kept.size();
            format!(
                "<tr><th scope=\"row\">\u{2013}</th><td>{}</td><td>{}</td><td></td></tr>",
                Label::KeptOffcut.text(),
                sides(&[long, wide])
            )
        })
        .collect();
    let (count, label) = (sheet.placed.len(), Label::Parts.text());
    format!("<details><summary>{count} {label}</summary><table>{}{}</table></details>", rows.concat(), kept.concat())
}

fn n(length: Length) -> Plain {
    Plain::of(length.in_mm(), 1)
}

/// A sheet: a unit of the drawing is a millimetre. Colours are the page's, by classes.
pub(crate) fn svg(sheet: &Sheet<'_>) -> String {
    let (length, width) = (n(sheet.length), n(sheet.width));
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"cut-sheet\" viewBox=\"-4 -4 {} {}\" role=\"img\" aria-label=\"{}\">\
         <rect class=\"raw\" width=\"{length}\" height=\"{width}\"/>",
        n(sheet.length + Length::mm(8.0)),
        n(sheet.width + Length::mm(8.0)),
        escaped(&picture_name(sheet))
    );
    for kept in &sheet.kept {
        let (long, wide) = kept.size();
        let _ = write!(
            svg,
            "<rect class=\"kept-piece\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/>",
            n(kept.from.u),
            n(sheet.width - kept.to.v),
            n(long),
            n(wide)
        );
    }
    for placed in &sheet.placed {
        let outer = path_data(&placed.outline(), sheet.width);
        let holes: String = placed.holes().map(|hole| path_data(&hole, sheet.width)).collect();
        // Writing to a String cannot fail.
        let _ = write!(
            svg,
            "<path class=\"piece {}\" data-part=\"{1}\" fill-rule=\"evenodd\" d=\"{outer}{holes}\"><title>{} {}</title></path>",
            tint(placed.part.order),
            placed.part.mark(),
            escaped(&words::part(placed.part.panel.id))
        );
    }
    grain(&mut svg, sheet);
    for kept in &sheet.kept {
        kept_label(&mut svg, sheet, kept);
    }
    for placed in &sheet.placed {
        label(&mut svg, sheet, placed);
    }
    svg + "</svg>"
}

/// Fine lines along the grain, over the whole sheet.
fn grain(svg: &mut String, sheet: &Sheet<'_>) {
    let (along, across) = match sheet.grain {
        Grain::Length => (sheet.length, sheet.width),
        Grain::Width => (sheet.width, sheet.length),
    };
    svg.push_str("<path class=\"grain\" d=\"");
    let mut at = 24.0;
    for gap in GRAIN_MM.into_iter().cycle() {
        if at >= across.in_mm() {
            break;
        }
        let (line, end) = (Plain::of(at, 0), n(along));
        let _ = match sheet.grain {
            Grain::Length => write!(svg, "M0 {line}H{end}"),
            Grain::Width => write!(svg, "M{line} 0V{end}"),
        };
        at += gap;
    }
    svg.push_str("\"/>");
}

/// The height of letters with which a text fits a long and a short side; nothing if nobody could read it.
fn letters(text: &str, long: f64, short: f64) -> Option<f64> {
    let count: f64 = text.chars().map(|_| 1.0).sum();
    let height = LETTERS_MM.min(short * 0.62).min(long * 0.88 / (count * LETTER_WIDE));
    (height >= LETTERS_LEAST_MM).then_some(height)
}

/// The class of letters that nobody could read while their sheet is one among others.
fn fine(sheet: &Sheet<'_>, height: f64) -> &'static str {
    if height * PICTURE_PX < LEGIBLE_PX * sheet.length.in_mm() { " fine" } else { "" }
}

/// A part's mark in its middle, along its longer side.
fn label(svg: &mut String, sheet: &Sheet<'_>, placed: &Placed<'_>) {
    let (middle, turned, _) = mark_place(placed);
    let (u, v) = placed.size();
    let (long, short) = (u.max(v).in_mm(), u.min(v).in_mm());
    let mark = placed.part.mark();
    let Some(height) = letters(&mark, long, short) else { return };
    let (x, y, tint) = (n(middle.u), n(sheet.width - middle.v), tint(placed.part.order));
    let turn = if turned { format!(" transform=\"rotate(-90 {x} {y})\"") } else { String::new() };
    // Where there is room its name stands beneath, as files of parts are named.
    let name = placed.part.panel.id.to_string();
    let below = letters(&name, long, short / 2.6).map(|small| small.min(height * 0.62));
    let lift = below.map_or(0.0, |small| small * 0.62);
    let _ = write!(
        svg,
        "<text class=\"{tint}{}\" x=\"{x}\" y=\"{y}\" dy=\"{}\" font-size=\"{}\"{turn}>{mark}</text>",
        fine(sheet, height),
        Plain::of(height * 0.35 - lift, 0),
        Plain::of(height, 0)
    );
    if let Some(small) = below {
        let _ = write!(
            svg,
            "<text class=\"small {tint}{}\" x=\"{x}\" y=\"{y}\" dy=\"{}\" font-size=\"{}\"{turn}>{}</text>",
            fine(sheet, small),
            Plain::of(height * 0.35 + small * 0.7, 0),
            Plain::of(small, 0),
            escaped(&name)
        );
    }
}

/// The size of what is kept.
fn kept_label(svg: &mut String, sheet: &Sheet<'_>, kept: &Rectangle) {
    let (long, wide) = kept.size();
    let text = format!("{} {}", Label::KeptOffcut.text(), sides(&[long, wide]));
    let turned = wide > long;
    let Some(height) = letters(&text, long.max(wide).in_mm(), long.min(wide).in_mm()) else { return };
    let (x, y) = (n(kept.from.u + long / 2.0), n(sheet.width - kept.from.v - wide / 2.0));
    let turn = if turned { format!(" transform=\"rotate(-90 {x} {y})\"") } else { String::new() };
    let _ = write!(
        svg,
        "<text class=\"small{}\" x=\"{x}\" y=\"{y}\" dy=\"{}\" font-size=\"{}\"{turn}>{text}</text>",
        fine(sheet, height * 0.72),
        Plain::of(height * 0.25, 0),
        Plain::of(height * 0.72, 0)
    );
}
