//! The bill of work: how much of everything one unit takes. Price and promise are made from it.

use alloc::collections::BTreeMap;

use crate::quantity::{Area, Length, Mass};
use crate::range::{Key, Work};

/// Quantities of material and work for one unit.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bill {
    /// Area of the blanks (the rectangle that each part is cut from), by board.
    pub blanks: BTreeMap<Key, Area>,
    /// Length of all cuts: outer outlines and cut-outs.
    pub cut: Length,
    /// Area of both faces of all parts.
    pub faces: Area,
    /// Length of the outer edges that are finished by hand.
    pub edges: Length,
    /// Number of parts.
    pub parts: u32,
    /// Mass of the heaviest part.
    pub heaviest: Mass,
    /// Mass of all parts.
    pub mass: Mass,
    /// Longest blank side and the widest shorter side: the flat pack's footprint.
    pub footprint: (Length, Length),
    /// Sum of the thicknesses of the parts, as if they were stacked.
    pub stack: Length,
}

/// Minutes by kind of work.
pub type Minutes = BTreeMap<Work, f64>;
