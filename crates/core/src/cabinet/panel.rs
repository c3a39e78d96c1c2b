//! A panel: one flat part, a rectangle with the features that its joints and holes give it.

use core::fmt;

use crate::geometry::space::Placement;
use crate::units::quantity::Length;

mod detent;
mod ease;
mod edge;
mod feature;
mod hook;
mod measure;
mod trace;
mod turned;

pub use ease::Ease;
pub use edge::Edge;
pub use feature::{Feature, Hook, Taper};
pub use turned::{EdgeBow, TurnedSlot};

/// Which part of the unit a panel is; numbers count from 1 at the left and at the bottom.
///
/// The order is the reading order of cut lists: from the ground up, from left to right.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PanelId {
    /// The front board of the plinth.
    PlinthFront,
    /// The rear board of the plinth.
    PlinthRear,
    /// A short board of the plinth, from front to rear.
    Bearer(u8),
    /// The lower base plate.
    BaseLower,
    /// The upper base plate.
    BaseUpper,
    /// An end or a divider.
    Upright(u8),
    /// The back.
    Back,
    /// A shelf.
    Shelf {
        /// Its bay.
        bay: u8,
        /// Its row, from the bottom.
        row: u8,
    },
    /// The strip before an upright.
    Stile(u8),
    /// The strip in a bay against which its leaf shuts.
    Stop(u8),
    /// The door leaf of a bay.
    Leaf(u8),
    /// One of the narrow uprights along a bowed end, from the front.
    Stave {
        /// At which end.
        end: End,
        /// Which of them.
        number: u8,
    },
    /// The top.
    Top,
}

/// An end of the unit, seen from the front.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum End {
    /// The left one.
    Left,
    /// The right one.
    Right,
}

impl End {
    /// Both of them.
    pub const ALL: [Self; 2] = [Self::Left, Self::Right];
}

impl fmt::Display for PanelId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::PlinthFront => f.write_str("plinth-front"),
            Self::PlinthRear => f.write_str("plinth-rear"),
            Self::Bearer(number) => write!(f, "bearer-{number}"),
            Self::BaseLower => f.write_str("base-lower"),
            Self::BaseUpper => f.write_str("base-upper"),
            Self::Upright(number) => write!(f, "upright-{number}"),
            Self::Back => f.write_str("back"),
            Self::Shelf { bay, row } => write!(f, "shelf-{bay}-{row}"),
            Self::Stile(number) => write!(f, "stile-{number}"),
            Self::Stop(bay) => write!(f, "stop-{bay}"),
            Self::Leaf(bay) => write!(f, "leaf-{bay}"),
            Self::Stave { end: End::Left, number } => write!(f, "stave-left-{number}"),
            Self::Stave { end: End::Right, number } => write!(f, "stave-right-{number}"),
            Self::Top => f.write_str("top"),
        }
    }
}

impl serde::Serialize for PanelId {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

/// A part's material: the range's board for the body or the chosen one for the back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stock {
    /// The model's body board.
    Body,
    /// The chosen back board.
    Back,
}

/// Direction of the face grain on a panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GrainAxis {
    /// Along u.
    AlongU,
    /// Along v.
    AlongV,
}

/// One flat part.
#[derive(Clone, Debug, PartialEq)]
pub struct Panel {
    /// Which part it is.
    pub id: PanelId,
    /// What it is cut from.
    pub stock: Stock,
    /// Width of its rectangle, without tabs.
    pub width: Length,
    /// Height of its rectangle, without tabs.
    pub height: Length,
    /// Thickness with its film.
    pub thickness: Length,
    /// Direction of its face grain.
    pub grain: GrainAxis,
    /// Radius of its four corners, but for those in which a bow ends.
    pub corner_radius: Length,
    /// Rounding of its two upright edges, on both faces: a leaf's, so that it clears while it swings.
    pub rounding: Length,
    /// Diameter of the cutter: what its reliefs are made for.
    pub cutter: Length,
    /// Chamfer of the edges that people touch.
    pub ease: Length,
    /// Chamfer of the ends of its tabs in the top.
    pub tab_chamfer: Length,
    /// Tabs, notches and holes, in the order in which joints name them.
    pub features: Vec<Feature>,
    /// Where it stands in the case.
    pub case_from_panel: Placement,
}
