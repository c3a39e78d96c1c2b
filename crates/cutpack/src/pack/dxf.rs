//! Drawings for the machine: DXF in millimetres.
//!
//! The version is that of the year 2000 (`AC1015`), the first with light polylines; whatever reads DXF reads it. Outlines are
//! closed polylines whose arcs are bulges, a layer holds one operation at one depth, and the cuts stand in the order
//! in which they are made.
// Source: DXF reference, 2000 to 2014, sections HEADER, TABLES, BLOCKS, ENTITIES and OBJECTS; group codes
// of LWPOLYLINE: 90 number of vertices, 70 bit 1 closed, 10 and 20 place, 42 bulge; $INSUNITS 4: millimetres.

use core::fmt::{Display, Write};

use slotwright_core::geometry::outline::{Corner, Outline, Point};
use slotwright_core::units::quantity::Length;

/// Colours of layers, by the index of the format.
// Source: DXF reference, group code 62: 1 red, 3 green, 5 blue, 7 black or white, 8 grey.
#[derive(Clone, Copy, Debug)]
pub enum Colour {
    /// Cuts round parts.
    Red = 1,
    /// Cuts inside parts.
    Blue = 5,
    /// Ways in.
    Green = 3,
    /// What is not cut.
    Grey = 8,
}

/// A drawing that is being written.
#[derive(Debug, Default)]
pub struct Dxf {
    layers: Vec<(String, Colour)>,
    entities: String,
    next: u32,
    most: (f64, f64),
}

/// The owner of all that is drawn: the record of the model's block.
const MODEL: &str = "1F";
/// Handles below this one belong to tables and blocks.
const FIRST_FREE: u32 = 0x100;

/// A group: its code and its value, each on a line of its own.
fn put(out: &mut String, code: u16, value: impl Display) {
    // Writing to a String cannot fail.
    let _ = write!(out, "{code}\r\n{value}\r\n");
}

/// A length to a ten-thousandth of a millimetre; never −0.
fn mm(length: Length) -> String {
    figure(length.in_mm(), 4)
}

fn figure(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let is_zero = text.trim_start_matches('-').bytes().all(|byte| byte == b'0' || byte == b'.');
    if is_zero { text.trim_start_matches('-').into() } else { text }
}

impl Dxf {
    /// An empty drawing.
    pub fn new() -> Self {
        Self { next: FIRST_FREE, ..Self::default() }
    }

    /// A layer; drawn on by its name.
    pub fn layer(&mut self, name: impl Into<String>, colour: Colour) {
        let name = name.into();
        if !self.layers.iter().any(|(known, _)| *known == name) {
            self.layers.push((name, colour));
        }
    }

    fn begin(&mut self, kind: &str, layer: &str, class: &str) {
        let handle = self.next;
        self.next += 1;
        let out = &mut self.entities;
        put(out, 0, kind);
        put(out, 5, format_args!("{handle:X}"));
        put(out, 330, MODEL);
        put(out, 100, "AcDbEntity");
        put(out, 8, layer);
        put(out, 100, class);
    }

    fn polyline(&mut self, layer: &str, corners: impl ExactSizeIterator<Item = (Point, f64)>, closed: bool) {
        self.begin("LWPOLYLINE", layer, "AcDbPolyline");
        put(&mut self.entities, 90, corners.len());
        put(&mut self.entities, 70, u8::from(closed));
        for (at, bulge) in corners {
            self.most = (self.most.0.max(at.u.in_mm()), self.most.1.max(at.v.in_mm()));
            put(&mut self.entities, 10, mm(at.u));
            put(&mut self.entities, 20, mm(at.v));
            if bulge != 0.0 {
                put(&mut self.entities, 42, figure(bulge, 9));
            }
        }
    }

    /// A closed outline.
    pub fn outline(&mut self, layer: &str, outline: &Outline) {
        let corners = outline.corners().iter().map(|corner| (corner.at, corner.bulge));
        self.polyline(layer, corners, true);
    }

    /// An open way with its arcs.
    pub fn open(&mut self, layer: &str, corners: &[Corner]) {
        self.polyline(layer, corners.iter().map(|corner| (corner.at, corner.bulge)), false);
    }

    /// A straight way, unless it has no length.
    pub fn way(&mut self, layer: &str, ends: [Point; 2]) {
        let [from, to] = ends.map(|end| (mm(end.u), mm(end.v)));
        if from != to {
            self.polyline(layer, ends.into_iter().map(|end| (end, 0.0)), false);
        }
    }

    /// A line of text with its middle at a point.
    pub fn text(&mut self, layer: &str, middle: Point, height: Length, turned: bool, text: &str) {
        self.begin("TEXT", layer, "AcDbText");
        let out = &mut self.entities;
        for (code, value) in [(10, mm(middle.u)), (20, mm(middle.v)), (40, mm(height))] {
            put(out, code, value);
        }
        put(out, 1, text);
        put(out, 50, if turned { 90 } else { 0 });
        // Both middles; the point of alignment is the second one.
        put(out, 72, 1);
        put(out, 11, mm(middle.u));
        put(out, 21, mm(middle.v));
        put(out, 100, "AcDbText");
        put(out, 73, 2);
    }

    /// The file; the remark stands before all, where readers pass it over and people see it.
    // Source: DXF reference, group code 999: a comment.
    pub fn write(self, remark: &str) -> String {
        let mut out = String::with_capacity(self.entities.len() + 8192);
        put(&mut out, 999, remark);
        self.header(&mut out);
        section(&mut out, "CLASSES", |_| {});
        section(&mut out, "TABLES", |out| self.tables(out));
        section(&mut out, "BLOCKS", blocks);
        section(&mut out, "ENTITIES", |out| out.push_str(&self.entities));
        section(&mut out, "OBJECTS", objects);
        put(&mut out, 0, "EOF");
        out
    }

    fn header(&self, out: &mut String) {
        section(out, "HEADER", |out| {
            let mut variable = |name: &str, values: &[(u16, String)]| {
                put(out, 9, name);
                for (code, value) in values {
                    put(out, *code, value);
                }
            };
            variable("$ACADVER", &[(1, "AC1015".into())]);
            variable("$HANDSEED", &[(5, format!("{:X}", self.next))]);
            variable("$INSUNITS", &[(70, "4".into())]);
            variable("$MEASUREMENT", &[(70, "1".into())]);
            let corner = |(u, v): (f64, f64)| vec![(10, figure(u, 4)), (20, figure(v, 4)), (30, "0.0".into())];
            variable("$EXTMIN", &corner((0.0, 0.0)));
            variable("$EXTMAX", &corner(self.most));
        });
    }

    fn tables(&self, out: &mut String) {
        table(out, "VPORT", "8", &[]);
        let line_types = ["ByBlock", "ByLayer", "CONTINUOUS"];
        let records: Vec<Record<'_>> = (0x14..)
            .zip(line_types)
            .map(|(handle, name)| Record {
                kind: "LTYPE",
                class: "AcDbLinetypeTableRecord",
                handle,
                name,
                rest: vec![
                    (70, "0".into()),
                    (3, String::new()),
                    (72, "65".into()),
                    (73, "0".into()),
                    (40, "0.0".into()),
                ],
            })
            .collect();
        table(out, "LTYPE", "5", &records);
        let layers =
            core::iter::once(("0", 7)).chain(self.layers.iter().map(|(name, colour)| (name.as_str(), *colour as u8)));
        let records: Vec<Record<'_>> = (0x40..)
            .zip(layers)
            .map(|(handle, (name, colour))| Record {
                kind: "LAYER",
                class: "AcDbLayerTableRecord",
                handle,
                name,
                // No style of plotting is asked for by its handle, 13: the placeholder below.
                rest: vec![(70, "0".into()), (62, colour.to_string()), (6, "CONTINUOUS".into()), (390, "13".into())],
            })
            .collect();
        table(out, "LAYER", "2", &records);
        let standard = Record {
            kind: "STYLE",
            class: "AcDbTextStyleTableRecord",
            handle: 0x11,
            name: "STANDARD",
            rest: [(70, "0"), (40, "0.0"), (41, "1.0"), (50, "0.0"), (71, "0"), (42, "2.5"), (3, "txt"), (4, "")]
                .map(|(code, value)| (code, value.into()))
                .into(),
        };
        table(out, "STYLE", "3", &[standard]);
        table(out, "VIEW", "6", &[]);
        table(out, "UCS", "7", &[]);
        let program = Record {
            kind: "APPID",
            class: "AcDbRegAppTableRecord",
            handle: 0x12,
            name: "ACAD",
            rest: vec![(70, "0".into())],
        };
        table(out, "APPID", "9", &[program]);
        table(out, "DIMSTYLE", "A", &[]);
        let blocks = [(0x1F, "*Model_Space"), (0x1B, "*Paper_Space")].map(|(handle, name)| Record {
            kind: "BLOCK_RECORD",
            class: "AcDbBlockTableRecord",
            handle,
            name,
            rest: Vec::new(),
        });
        table(out, "BLOCK_RECORD", "1", &blocks);
    }
}

fn section(out: &mut String, name: &str, content: impl FnOnce(&mut String)) {
    put(out, 0, "SECTION");
    put(out, 2, name);
    content(out);
    put(out, 0, "ENDSEC");
}

/// An entry of a table.
struct Record<'a> {
    kind: &'static str,
    class: &'static str,
    handle: u32,
    name: &'a str,
    rest: Vec<(u16, String)>,
}

fn table(out: &mut String, name: &str, handle: &str, records: &[Record<'_>]) {
    put(out, 0, "TABLE");
    put(out, 2, name);
    put(out, 5, handle);
    put(out, 330, 0);
    put(out, 100, "AcDbSymbolTable");
    put(out, 70, records.len());
    if name == "DIMSTYLE" {
        put(out, 100, "AcDbDimStyleTable");
    }
    for record in records {
        put(out, 0, record.kind);
        put(out, 5, format_args!("{:X}", record.handle));
        put(out, 330, handle);
        put(out, 100, "AcDbSymbolTableRecord");
        put(out, 100, record.class);
        put(out, 2, record.name);
        for (code, value) in &record.rest {
            put(out, *code, value);
        }
    }
    put(out, 0, "ENDTAB");
}

/// The two spaces that every drawing has, both without anything of their own.
fn blocks(out: &mut String) {
    for (name, owner, begin, end) in [("*Model_Space", "1F", "20", "21"), ("*Paper_Space", "1B", "1C", "1D")] {
        put(out, 0, "BLOCK");
        put(out, 5, begin);
        put(out, 330, owner);
        put(out, 100, "AcDbEntity");
        put(out, 8, 0);
        put(out, 100, "AcDbBlockBegin");
        put(out, 2, name);
        put(out, 70, 0);
        for code in [10, 20, 30] {
            put(out, code, "0.0");
        }
        put(out, 3, name);
        put(out, 1, "");
        put(out, 0, "ENDBLK");
        put(out, 5, end);
        put(out, 330, owner);
        put(out, 100, "AcDbEntity");
        put(out, 8, 0);
        put(out, 100, "AcDbBlockEnd");
    }
}

/// The dictionary that every drawing has, with the style of plotting that layers name.
fn objects(out: &mut String) {
    dictionary(out, "DICTIONARY", "C", "0");
    for (name, handle) in [("ACAD_GROUP", "D"), ("ACAD_PLOTSTYLENAME", "E")] {
        put(out, 3, name);
        put(out, 350, handle);
    }
    dictionary(out, "DICTIONARY", "D", "C");
    dictionary(out, "ACDBDICTIONARYWDFLT", "E", "C");
    put(out, 3, "NORMAL");
    put(out, 350, "13");
    put(out, 100, "AcDbDictionaryWithDefault");
    put(out, 340, "13");
    put(out, 0, "ACDBPLACEHOLDER");
    put(out, 5, "13");
    put(out, 330, "E");
}

/// How a dictionary begins: its kind, its handle and its owner's.
fn dictionary(out: &mut String, kind: &str, handle: &str, owner: &str) {
    put(out, 0, kind);
    put(out, 5, handle);
    put(out, 330, owner);
    put(out, 100, "AcDbDictionary");
    put(out, 281, 1);
}
