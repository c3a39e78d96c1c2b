//! The files of a pack, each by what it is.

use core::fmt::Display;

/// What a file is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// All parts with their places, for programs.
    PartList,
    /// All sheets, for programs.
    SheetList,
    /// The rack afterwards, for programs.
    OffcutList,
    /// A sheet for the machine.
    SheetDrawing,
    /// A sheet for people.
    SheetPicture,
    /// A part for the machine.
    PartDrawing,
    /// Labels of parts and offcuts.
    Labels,
    /// For whoever runs the machine.
    CutList,
    /// For whoever sands and coats.
    Finishing,
    /// The whole batch.
    Batch,
    /// What goes with an order from stage to stage.
    JobCard,
    /// Which part lies in which package.
    PackingList,
    /// What goes along with the unit, and its addresses.
    Delivery,
    /// How the unit goes together.
    Assembly,
}

impl Kind {
    /// Its word in the manifest; documents have it in their names.
    pub const fn word(self) -> &'static str {
        match self {
            Self::PartList => "part-list",
            Self::SheetList => "sheet-list",
            Self::OffcutList => "offcut-list",
            Self::SheetDrawing => "sheet-drawing",
            Self::SheetPicture => "sheet-picture",
            Self::PartDrawing => "part-drawing",
            Self::Labels => "labels",
            Self::CutList => "cut-list",
            Self::Finishing => "finishing",
            Self::Batch => "batch",
            Self::JobCard => "job-card",
            Self::PackingList => "packing-list",
            Self::Delivery => "delivery",
            Self::Assembly => "assembly",
        }
    }
}

/// A file of a pack.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PackFile {
    /// Its path within the pack, with `/` between folders.
    pub path: String,
    /// What it is; nothing for the manifest itself.
    pub kind: Option<Kind>,
    /// Of what, where there are several: the number of its sheet or its order, or the mark of its part.
    pub of: Option<String>,
    /// What is in it.
    pub bytes: Vec<u8>,
}

impl PackFile {
    /// One of its kind.
    pub fn new(kind: Kind, path: impl Into<String>, bytes: impl Into<Vec<u8>>) -> Self {
        Self { path: path.into(), kind: Some(kind), of: None, bytes: bytes.into() }
    }

    /// One of several.
    pub fn of(kind: Kind, of: impl Display, path: String, bytes: impl Into<Vec<u8>>) -> Self {
        Self { of: Some(of.to_string()), ..Self::new(kind, path, bytes) }
    }
}
