//! The files of a pack, written one after another: whoever waits for them can be heard in between.

use super::draw::{part_dxf, sheet_dxf, sheet_svg};
use super::papers::{Desk, Document, Remark, documents};
use super::{Kind, LotSheets, Pack, PackFile, list, manifest};

/// What is written at once.
#[derive(Clone, Copy, Debug)]
enum Piece {
    /// Lists for programs.
    Lists,
    /// The drawing and the picture of a sheet: of which lot, and where it stands there.
    Sheet(usize, usize),
    /// The drawing of a part, likewise.
    Part(usize, usize),
    /// A document.
    Document(Document),
    /// What the pack was made from, and what is in it.
    Manifest,
}

/// A pack that is being written.
#[derive(Debug)]
pub struct Writing<'p, 'a> {
    pack: &'p Pack<'a>,
    desk: Desk<'p, 'a>,
    pieces: Vec<Piece>,
    written: usize,
}

impl<'p, 'a> Writing<'p, 'a> {
    pub(super) fn begin(pack: &'p Pack<'a>) -> Self {
        let each = |count: fn(&LotSheets<'_>) -> usize, piece: fn(usize, usize) -> Piece| {
            let lots = pack.lots.iter().enumerate();
            lots.flat_map(move |(lot, sheets)| (0..count(sheets)).map(move |at| piece(lot, at)))
        };
        let mut pieces = vec![Piece::Lists];
        pieces.extend(each(|lot| lot.sheets.len(), Piece::Sheet));
        pieces.extend(each(|lot| lot.lot.parts.len(), Piece::Part));
        pieces.extend(documents(pack).into_iter().map(Piece::Document));
        pieces.push(Piece::Manifest);
        Self { pack, desk: Desk::new(pack), pieces, written: 0 }
    }

    /// Writes the next piece; whether there is more.
    pub fn step(&mut self) -> bool {
        if let Some(piece) = self.pieces.get(self.written).copied() {
            self.write(piece);
            self.written += 1;
        }
        self.written < self.pieces.len()
    }

    /// How much of it is written, in percent.
    pub fn percent(&self) -> usize {
        self.written * 100 / self.pieces.len().max(1)
    }

    /// All files, the manifest last, and what on the paper is not as it was given.
    pub fn done(self) -> (Vec<PackFile>, Vec<Remark>) {
        self.desk.done()
    }

    fn write(&mut self, piece: Piece) {
        let pack = self.pack;
        match piece {
            Piece::Lists => {
                self.desk.take(PackFile::new(Kind::PartList, "parts.csv", list::parts(pack)));
                self.desk.take(PackFile::new(Kind::SheetList, "sheets.csv", list::sheets(pack)));
                self.desk.take(PackFile::new(Kind::OffcutList, "offcuts.csv", list::offcuts(&pack.rack_after())));
            }
            Piece::Sheet(lot, at) => {
                let Some(LotSheets { lot, sheets, .. }) = pack.lots.get(lot) else { return };
                let Some((sheet, program)) = sheets.get(at) else { return };
                let (number, path) = (sheet.number, sheet.path(lot));
                let (name, drawn) =
                    (pack.full_name(), |kind, end, text| PackFile::of(kind, number, format!("{path}.{end}"), text));
                let (dxf, svg) = (sheet_dxf(lot, sheet, program, &name), sheet_svg(lot, sheet, &name));
                self.desk.take(drawn(Kind::SheetDrawing, "dxf", dxf));
                self.desk.take(drawn(Kind::SheetPicture, "svg", svg));
            }
            Piece::Part(lot, at) => {
                let Some(LotSheets { lot, sheets, .. }) = pack.lots.get(lot) else { return };
                let Some(part) = lot.parts.get(at) else { return };
                let mut sheets = sheets.iter().map(|(sheet, _)| sheet);
                let Some(sheet) = sheets.find(|sheet| sheet.has(part)) else { return };
                let drawing = part_dxf(lot, sheet, part, &pack.full_name());
                self.desk.take(PackFile::of(Kind::PartDrawing, part.mark(), part.path(), drawing));
            }
            Piece::Document(document) => self.desk.write(document),
            Piece::Manifest => {
                let bytes = manifest::write(pack, self.desk.files()).into_bytes();
                self.desk.take(PackFile { path: "manifest.json".into(), kind: None, of: None, bytes });
            }
        }
    }
}
