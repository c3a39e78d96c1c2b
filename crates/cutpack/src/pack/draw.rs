//! Sheets and parts as drawings: for the machine as DXF, for people as SVG at full size.

use core::fmt::Write;

use slotwright_core::geometry::outline::{Outline, Point};
use slotwright_core::range::Hold;
use slotwright_core::units::decimal::Plain;
use slotwright_core::units::quantity::Length;

use super::PROGRAM;
use super::dxf::{Colour, Dxf};
use super::lot::{Lot, Part};
use super::path::{Program, Side};
use super::sheet::{Placed, Sheet, turn};
use crate::drawing::escaped;

/// Height of marks on drawings.
const MARK_MM: f64 = 24.0;

/// Names of layers: the operation, and the depth in millimetres where there is one.
struct Layers {
    inside: String,
    outside: String,
    /// Through, between bridges.
    between: String,
}

const LEAD_IN: &str = "LEAD-IN";
const BRIDGE: &str = "BRIDGE";
const SHEET: &str = "SHEET";
const OFFCUT: &str = "OFFCUT";
const MARK: &str = "MARK";
const PACK: &str = "PACK";

/// Letters of the pack's name in the border of a sheet are as high as that allows, and at least and at most so high.
const NAME_MM: [f64; 2] = [4.0, 8.0];
/// A letter is about so wide by its height, in the plain font of drawings.
const LETTER_WIDE: f64 = 0.9;

impl Layers {
    fn of(program: &Program) -> Self {
        let layer = |operation: &str, depth: Length| format!("{operation}-{:.2}", depth.in_mm());
        Self {
            inside: layer("INSIDE", program.depths.through),
            outside: layer("OUTSIDE", program.depths.outside),
            between: layer("BETWEEN", program.depths.through),
        }
    }
}

/// Which sheet of which pack a drawing is, and what wrote it.
fn remark(what: &str, pack: &str) -> String {
    format!("{} {PROGRAM} {}", env!("CARGO_PKG_NAME"), of(what, pack))
}

/// Something of a pack.
fn of(what: &str, pack: &str) -> String {
    format!("{pack}/{what}")
}

/// Where the name of the pack stands on a sheet: in the lower border, from the left; its middle, and how high it is.
fn name_place(lot: &Lot<'_>, name: &str) -> (Point, Length) {
    let ([least, most], trim) = (NAME_MM.map(Length::mm), lot.range.build.sheet_trim_mm);
    let height = (trim * 0.6).max(least).min(most);
    (Point::new(trim + long(name, height) / 2.0, trim.max(height) / 2.0), height)
}

/// How long a text of that height is about.
fn long(text: &str, height: Length) -> Length {
    text.chars().map(|_| height * LETTER_WIDE).sum()
}

/// A sheet of the pack of that name for the machine: its cuts in their order, then what is not cut.
pub fn sheet_dxf(lot: &Lot<'_>, sheet: &Sheet<'_>, program: &Program, pack: &str) -> String {
    let mut dxf = Dxf::new();
    draw_cuts(&mut dxf, lot, program);
    for (layer, colour) in [(SHEET, Colour::Grey), (OFFCUT, Colour::Grey), (MARK, Colour::Grey), (PACK, Colour::Grey)] {
        dxf.layer(layer, colour);
    }
    dxf.outline(SHEET, &Outline::rectangle(Point::default(), Point::new(sheet.length, sheet.width)));
    for kept in &sheet.kept {
        dxf.outline(OFFCUT, &Outline::rectangle(kept.from, kept.to));
    }
    for placed in &sheet.placed {
        let (middle, turned, height) = mark_place(placed);
        dxf.text(MARK, middle, height, turned, &placed.part.mark());
    }
    let name = of(&sheet.number.to_string(), pack);
    let (middle, height) = name_place(lot, &name);
    dxf.text(PACK, middle, height, false, &name);
    dxf.write(&remark(&sheet.number.to_string(), pack))
}

/// A part alone for the machine, its grain along the first axis as on sheets with long grain, as deep as on the sheet from
/// which it is cut.
pub fn part_dxf(lot: &Lot<'_>, from: &Sheet<'_>, part: &Part<'_>, pack: &str) -> String {
    let sheet = alone(from, part);
    let mut dxf = Dxf::new();
    draw_cuts(&mut dxf, lot, &Program::of(lot, &sheet));
    dxf.layer(PACK, Colour::Grey);
    let name = of(&part.mark(), pack);
    for placed in &sheet.placed {
        let (middle, turned, height) = mark_place(placed);
        let (u, v) = placed.size();
        // Within the part, however short it is.
        let height = height * (u.max(v) * 0.9 / long(&name, height)).min(1.0);
        dxf.text(PACK, middle, height, turned, &name);
    }
    dxf.write(&remark(&part.mark(), pack))
}

/// A part on a sheet of its own size.
fn alone<'a>(from: &Sheet<'_>, part: &Part<'a>) -> Sheet<'a> {
    let grain = slotwright_core::range::Grain::Length;
    let placed = Placed { part: *part, turn: turn(part, grain), at: Point::default() };
    let (length, width) = placed.size();
    Sheet {
        number: 1,
        stock: super::sheet::Stock::Offcut(String::new()),
        length,
        width,
        grain,
        uncoated: from.uncoated,
        is_measured: from.is_measured,
        placed: vec![placed],
        kept: Vec::new(),
    }
}

fn draw_cuts(dxf: &mut Dxf, lot: &Lot<'_>, program: &Program) {
    let layers = Layers::of(program);
    dxf.layer(layers.inside.clone(), Colour::Blue);
    dxf.layer(layers.outside.clone(), Colour::Red);
    dxf.layer(LEAD_IN, Colour::Green);
    if matches!(lot.range.cutting.hold, Hold::Bridges { .. }) {
        dxf.layer(layers.between.clone(), Colour::Red);
        dxf.layer(BRIDGE, Colour::Green);
    }
    for cut in &program.cuts {
        dxf.way(LEAD_IN, cut.lead_in);
        let layer = match cut.side {
            Side::Inside => &layers.inside,
            Side::Outside => &layers.outside,
        };
        dxf.outline(layer, &cut.outline);
        for way in &cut.between {
            dxf.open(&layers.between, way);
        }
        for bridge in &cut.bridges {
            dxf.way(BRIDGE, *bridge);
        }
    }
}

/// Where a part's mark stands: in the middle of its blank, along the longer side.
pub fn mark_place(placed: &Placed<'_>) -> (Point, bool, Length) {
    let (u, v) = placed.size();
    let middle = Point::new(placed.at.u + u / 2.0, placed.at.v + v / 2.0);
    (middle, v > u, Length::mm(MARK_MM).min(u.min(v) * 0.6))
}

fn n(value: f64) -> Plain {
    Plain::of(value, 3)
}

/// An outline as the data of a path; v runs downwards from `height`, as in SVG.
pub fn path_data(outline: &Outline, height: Length) -> String {
    let mut data = String::new();
    let place = |at: Point| (n(at.u.in_mm()), n((height - at.v).in_mm()));
    for (number, segment) in outline.segments().enumerate() {
        // Writing to a String cannot fail.
        if number == 0 {
            let (u, v) = place(segment.from);
            let _ = write!(data, "M{u} {v}");
        }
        let (u, v) = place(segment.to);
        let _ = if segment.bulge == 0.0 {
            write!(data, "L{u} {v}")
        } else {
            let radius = n(segment.radius().in_mm());
            let large = u8::from(segment.bulge.abs() > 1.0);
            // Downwards a counter-clockwise arc turns clockwise, for which the flag is 0.
            write!(data, "A{radius} {radius} 0 {large} {} {u} {v}", u8::from(segment.bulge < 0.0))
        };
    }
    data + "Z"
}

/// A sheet of the pack of that name at full size: a unit of the drawing is a millimetre.
pub fn sheet_svg(lot: &Lot<'_>, sheet: &Sheet<'_>, pack: &str) -> String {
    let name = of(&sheet.number.to_string(), pack);
    let (length, width) = (n(sheet.length.in_mm()), n(sheet.width.in_mm()));
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{length}mm\" height=\"{width}mm\" viewBox=\"0 0 {length} {width}\">\
         <title>{name}</title><rect class=\"sheet\" width=\"{length}\" height=\"{width}\" fill=\"#fff\" stroke=\"#8a8578\"/>"
    );
    for kept in &sheet.kept {
        let (long, wide) = kept.size();
        let _ = write!(
            svg,
            "<rect class=\"kept\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" fill=\"#efece4\" stroke=\"#8a8578\" stroke-dasharray=\"24 12\"/>",
            n(kept.from.u.in_mm()),
            n((sheet.width - kept.to.v).in_mm()),
            n(long.in_mm()),
            n(wide.in_mm())
        );
    }
    for placed in &sheet.placed {
        let outer = path_data(&placed.outline(), sheet.width);
        let holes: String = placed.holes().map(|hole| path_data(&hole, sheet.width)).collect();
        let _ = write!(
            svg,
            "<path class=\"part\" data-part=\"{}\" d=\"{outer}{holes}\" fill=\"#e3cda4\" fill-rule=\"evenodd\" stroke=\"#2a2e2b\"/>",
            placed.part.mark()
        );
    }
    for placed in &sheet.placed {
        let (middle, turned, height) = mark_place(placed);
        let (u, v) = (n(middle.u.in_mm()), n((sheet.width - middle.v).in_mm()));
        let turn = if turned { format!(" transform=\"rotate(-90 {u} {v})\"") } else { String::new() };
        let _ = write!(
            svg,
            "<text x=\"{u}\" y=\"{v}\" font-family=\"sans-serif\" font-size=\"{}\" text-anchor=\"middle\" dominant-baseline=\"central\"{turn}>{}</text>",
            n(height.in_mm()),
            escaped(&placed.part.mark())
        );
    }
    let (middle, height) = name_place(lot, &name);
    let (u, v) = (n(middle.u.in_mm()), n((sheet.width - middle.v).in_mm()));
    let _ = write!(
        svg,
        "<text class=\"pack\" x=\"{u}\" y=\"{v}\" font-family=\"sans-serif\" font-size=\"{}\" text-anchor=\"middle\" dominant-baseline=\"central\">{name}</text>",
        n(height.in_mm())
    );
    svg + "</svg>\n"
}

#[cfg(test)]
mod tests;
