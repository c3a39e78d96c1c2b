//! Documents that show all that `slotwright_cutpack::paper` can do, for readers that are not ours. Their figures are invented.

use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::geometry::outline::{Outline, Point};
use slotwright_core::order::derive::derive;
use slotwright_core::units::quantity::Length;
use slotwright_cutpack::drawing::{self, Subject, View};
use slotwright_cutpack::paper::{
    Cell, Column, Face, Format, Labels, Paper, Plate, Row, Running, Setting, Style, Table, WriteError, Written, qr,
};
use slotwright_cutpack::picture;
use slotwright_cutpack::vector::{Align, Colour, Fill, Spot, Stroke, Vector, outline};

use crate::demo;

/// Their names.
pub const NAMES: [&str; 9] = [
    "pack-a4",
    "pack-letter",
    "long-a4",
    "long-letter",
    "labels-a4-3-by-8",
    "labels-a4-2-by-7",
    "labels-letter-3-by-10",
    "label-100-by-50",
    "label-62-by-29",
];

/// How many rows the long table has.
pub const ROWS: u32 = 200;

/// A document by its name.
///
/// # Errors
///
/// If there is none of that name, or the writer objects.
pub fn document(name: &str) -> Result<Written, String> {
    let written = match name {
        "pack-a4" => pack(Format::A4),
        "pack-letter" => pack(Format::LETTER),
        "long-a4" => long(Format::A4),
        "long-letter" => long(Format::LETTER),
        "labels-a4-3-by-8" => labels(Labels::A4_3_BY_8, 5, 30),
        "labels-a4-2-by-7" => labels(Labels::A4_2_BY_7, 0, 9),
        "labels-letter-3-by-10" => labels(Labels::LETTER_3_BY_10, 0, 12),
        "label-100-by-50" => labels(Labels::ROLL_100_BY_50, 0, 2),
        "label-62-by-29" => labels(Labels::ROLL_62_BY_29, 0, 2),
        _ => return Err(format!("there is no document {name:?}")),
    };
    written.map_err(|error| error.to_string())
}

fn setting(format: Format, title: &str) -> Setting {
    Setting {
        format,
        title: title.to_owned(),
        language: "en-GB".to_owned(),
        running: Some(Running {
            left: "Odd Lintel Workshop".to_owned(),
            right: "Batch 12 · birch, white oil".to_owned(),
            foot: "Calculated, not tested. Guidance for a maker, no certificate.".to_owned(),
            page_of: |page, of| format!("page {page} of {of}"),
        }),
    }
}

/// A table of many rows.
fn long(format: Format) -> Result<Written, WriteError> {
    let mut paper = Paper::new(setting(format, "A long list"));
    paper.title("A long list");
    paper.paragraph("Its head stands on every page, and no row is broken.");
    let mut table = Table::new([
        Column::fit("Row").end(),
        Column::share("Part", 2.0),
        Column::share("Remark", 3.0),
        Column::fit("Length").end(),
        Column::fit("Done").middle(),
    ]);
    for row in 1..=ROWS {
        let remark = if row % 7 == 0 {
            "The face goes up, and the grain runs along the longer side, whatever the nest says of it."
        } else {
            "Face up"
        };
        let cells = [format!("R{row:03}"), format!("Upright {row}"), remark.to_owned(), format!("{} mm", 300 + row)];
        table.rows.push(Row::Cells(cells.map(Cell::from).into_iter().chain([Cell::Tick]).collect()));
    }
    paper.table(&table);
    paper.write()
}

/// A document with everything in it.
fn pack(format: Format) -> Result<Written, WriteError> {
    let mut paper = Paper::new(setting(format, "Cut list of batch 12"));
    paper.title("Cut list");
    paper.pairs(
        4,
        &[
            ("Order", "2611-0042"),
            ("For", "Ōtani Łucja"),
            ("Ready on", "14 December 2026"),
            ("Boards", "3 sheets, 1\u{202f}220 × 2\u{202f}440 mm"),
            ("Measured", "17.61 mm, −0.39 mm from nominal"),
            ("Cutter", "6 mm, down"),
            ("Price of boards", "€\u{a0}412.50"),
            ("Also for", "李 and the café"),
        ],
    );
    paper.paragraph(
        "Sheets are coated before they are cut, so each sheet has parts of one finish. Cut what lies inside before what lies outside, and small parts before large ones; the grain runs along the arrow ↑ on every part.",
    );
    paper.caution(
        "Wood dust harms: switch on the extraction and wear a fitted mask. Keep hands ≥ 150 mm from the cutter; let it stop before a part is taken out.",
    );
    paper.heading("Parts");
    parts(&mut paper);
    paper.heading("Before you begin");
    paper.ticks(&[
        "Measure the batch at eight points and enter the mean.",
        "Check that the sheets lie flat: a bow of more than 4 mm over 2\u{202f}440 mm wants more clamps.",
        "Set the zero at the lower left corner of the sheet, on its face.",
    ]);
    paper.minor("Reliefs");
    paper.list(&[
        "in tabs: in their flanks",
        "in slots: in their end walls",
        "elsewhere only where the cutter is ⅓ too thick",
    ]);
    drawn(&mut paper);
    paper.write()
}

fn parts(paper: &mut Paper) {
    let mut table = Table::new([
        Column::fit("").middle(),
        Column::fit("No").end(),
        Column::share("Part", 1.0),
        Column::fixed("Form", Length::mm(16.0)),
        Column::fit("Length mm").end(),
        Column::fit("Width mm").end(),
        Column::fit("Mass kg").end(),
        Column::fit("Sheet").middle(),
    ]);
    for (board, names) in [("Birch 18 mm, white oil", 7_u32), ("Birch 12 mm, white oil", 4)] {
        table.rows.push(Row::group(board));
        for number in 1..=names {
            let length = 1_240.5 - f64::from(number) * 133.7;
            let width = 318.0 + f64::from(number % 3) * 11.1;
            let name =
                ["Top", "Bottom", "Upright, left", "Upright, right", "Shelf of bay 2, upper row", "Back", "Plinth"];
            let name = name.get(usize::try_from(number - 1).unwrap_or(0)).copied().unwrap_or("Shelf");
            let mut cells = vec![Cell::Tick, Cell::from(number.to_string()), Cell::Strong(name.to_owned())];
            cells.push(Cell::Picture(panel(length, width, 0.012), "its outline".to_owned()));
            let figures = [length, width, length * width * 18.0 * 680e-9];
            cells.extend(figures.map(|figure| Cell::from(format!("{figure:.1}"))));
            cells.push(Cell::Soft(if number > 4 { "B" } else { "A" }.to_owned()));
            table.rows.push(Row::Cells(cells));
        }
    }
    table.rows.push(Row::total(["", "11", "parts", "", "", "", "27.4", ""]));
    paper.table(&table);
}

/// A panel with a hole in it, at a scale.
fn panel(length: f64, width: f64, scale: f64) -> Vector {
    let (long, wide) = (Length::mm(length), Length::mm(width));
    let mut vector = Vector::new(long * scale, wide * scale);
    let place = |point: Point| Spot::new(point.u * scale, (wide - point.v) * scale);
    let mut steps = outline(&Outline::rectangle(Point::default(), Point::new(long, wide)), place);
    let hole = Outline::stadium(Point::new(long / 3.0, wide / 2.0), Length::mm(160.0), Length::mm(80.0));
    steps.extend(outline(&hole.reversed(), place));
    vector.shape(steps, Some(Fill::of(Colour::WOOD)), Some(Stroke::mm(0.18, Colour::INK)));
    vector
}

/// The demo range's first unit, to scale and step by step.
fn drawn(paper: &mut Paper) {
    let Ok(range) = demo() else { return };
    let Some(choice) = Choice::first_of(&range) else { return };
    let backlog = Backlog::default();
    let Ok(today) = "2026-11-25".parse() else { return };
    let derived = derive(&range, &choice, today, &backlog);
    let (Some(built), Some(assembly)) = (&derived.built, &derived.assembly) else { return };
    let subject = Subject { range: &range, choice: &choice, built };
    paper.next_page();
    paper.heading("The unit");
    let front = drawing::to_scale(subject, View::Sheet, 20);
    paper.figure(&front, "The unit from the front, cut from front to back, and from above", "Scale 1:20, sizes in mm");
    let steps = picture::steps(built, assembly, true);
    let plates = steps.iter().map(|step| Plate {
        vector: step.vector(),
        alternative: step.sentence.clone(),
        name: format!("{} of {}", step.number, step.of),
        text: step.sentence.clone(),
    });
    paper.plates("Putting it together", 2, &plates.collect::<Vec<Plate>>());
}

/// What the code of a label says.
pub fn code(number: u32) -> String {
    format!("https://workshop.example/part#2611-0042/{number:02}")
}

fn labels(kind: Labels, used: u32, count: u32) -> Result<Written, WriteError> {
    let mut paper =
        Paper::of_labels(Setting { running: None, ..setting(kind.format, "Labels of batch 12") }, kind, used);
    for number in 1..=count {
        label(&mut paper, number);
    }
    paper.write()
}

fn label(paper: &mut Paper, number: u32) {
    let mut block = paper.label();
    // All of it grows with the label.
    let times = (block.height / Length::mm(37.0)).clamp(0.9, 1.35);
    let pad = Length::mm(if times < 1.0 { 2.0 } else { 3.5 } * times);
    let inner = block.height - pad * 2.0;
    let side = inner.min(Length::mm(25.0 * times));
    let width = block.width - pad * 3.0 - side;
    let at = |x: Length, y: f64| Spot::new(pad + x, pad + Length::mm(y * times));
    let big = Style::of(Face::Heading, 17.0 * times, Colour::INK).level();
    let mark = format!("{number:02}");
    block.heading(at(Length::ZERO, 0.0), width, &mark, &big, 1);
    let beside = block.length(&mark, &big) + Length::mm(2.5);
    let name = if number == 2 { "Shelf of bay 2, upper row, behind the door" } else { "Upright, left" };
    let small = Style::SMALL.level().sized(7.5 * times);
    block.line(at(beside, 0.2), width - beside, name, &Style::STRONG.sized(9.0 * times), Align::Start);
    block.line(at(beside, 3.9), width - beside, "Order 2611-0042", &small, Align::Start);
    let size = Style::BODY.level().sized(8.5 * times);
    block.line(at(Length::ZERO, 8.2), width, "318.0 × 1\u{202f}240.5 × 18 mm", &size, Align::Start);
    block.line(at(Length::ZERO, 12.2), width, "Sheet A · step 3 · white oil", &small, Align::Start);
    let below = Length::mm(17.0 * times);
    let room = inner - below;
    let picture = panel(1_240.5, 318.0, 0.03).fitted(width, room);
    if room > Length::mm(3.0) {
        block.picture(Spot::new(pad, pad + below + (room - picture.height)), &picture, "the outline of the part");
    }
    if let Some(code) = qr::code(&code(number), side) {
        let at = Spot::new(block.width - pad - side, pad + (inner - side) / 2.0);
        block.picture(at, &code, "the part as a QR code");
    }
}
