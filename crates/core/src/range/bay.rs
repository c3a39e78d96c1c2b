//! Bays as a model begins with them, and as a customer picks them.

use serde::Serialize;

use super::{Fields, Key};
use crate::input::fault::{ReadError, Wanted};
use crate::input::members::Place as At;
use crate::units::quantity::Dim;

/// Most bays that a choice can name; models allow fewer.
pub const BAYS_MOST: usize = 6;

/// One bay: its share of the width, what it holds, its cable hole, the device in it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Bay {
    /// Weight of its clear width among the bays, 1 to 9; equal weights are equal widths.
    pub share: u8,
    /// What it holds.
    pub fill: Fill,
    /// Its cable hole in the back, if any.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hole: Option<Hole>,
    /// The device that its lowest row has to take, if any.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub device: Option<Key>,
}

/// What a bay holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Fill {
    /// Nothing.
    Open,
    /// That many shelves, evenly spaced.
    Shelves(u8),
    /// A door leaf.
    Leaf(Hung),
}

/// The side on which a leaf is hung, seen from the front.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Hung {
    /// Pivots on the left.
    Left,
    /// Pivots on the right.
    Right,
}

/// A cable hole in the back of a bay.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Hole {
    /// Which of the range's holes.
    pub kind: Key,
    /// From the middle of the bay to the hole's centre, positive to the right.
    pub offset_mm: Dim,
}

impl Bay {
    /// Reads a bay of an order.
    pub(crate) fn read(at: At) -> Result<Self, ReadError> {
        let mut members = at.members()?;
        let bay = Self {
            share: members.take("share")?.small()?,
            fill: Fill::read(members.take("fill")?)?,
            hole: members.maybe("hole").map(Hole::read).transpose()?,
            device: members.maybe("device").map(At::parsed).transpose()?,
        };
        members.done()?;
        Ok(bay)
    }
}

impl Fill {
    /// `"open"`, `{"shelves": 2}` or `{"leaf": "left"}`.
    fn read(at: At) -> Result<Self, ReadError> {
        if at.is_text() {
            return word(&at, &[("open", Self::Open)]);
        }
        let mut members = at.members()?;
        let fill = match members.maybe("leaf") {
            Some(leaf) => Self::Leaf(word(&leaf, &[("left", Hung::Left), ("right", Hung::Right)])?),
            None => Self::Shelves(members.take("shelves")?.small()?),
        };
        members.done()?;
        Ok(fill)
    }
}

/// One word of a few.
pub(crate) fn word<T: Copy>(at: &At, words: &[(&'static str, T)]) -> Result<T, ReadError> {
    let known = words.iter().find(|(word, _)| at.is(word));
    let wanted = || Wanted::Words(words.iter().map(|(word, _)| *word).collect());
    known.map_or_else(|| at.refuse(wanted()), |(_, meaning)| Ok(*meaning))
}

impl Hole {
    fn read(at: At) -> Result<Self, ReadError> {
        let mut members = at.members()?;
        let hole = Self { kind: members.take("kind")?.parsed()?, offset_mm: members.take("offset_mm")?.dim()? };
        members.done()?;
        Ok(hole)
    }
}

/// A bay, in a compact text as in a range file.
pub(crate) fn read_bay(fields: &mut Fields<'_>) -> Bay {
    Bay {
        share: fields.small("share"),
        fill: read_fill(fields),
        hole: if fields.has("hole") { fields.table("hole", read_hole) } else { None },
        device: fields.has("device").then(|| fields.key("device")),
    }
}

/// `fill = "open"`, `fill = { shelves = 2 }` or `fill = { leaf = "left" }`.
fn read_fill(fields: &mut Fields<'_>) -> Fill {
    if !fields.is_table("fill") {
        return fields.word("fill", &[("open", Fill::Open)], Fill::Open);
    }
    let read = |fields: &mut Fields<'_>| {
        if fields.has("leaf") {
            Fill::Leaf(fields.word("leaf", &[("left", Hung::Left), ("right", Hung::Right)], Hung::Left))
        } else {
            Fill::Shelves(fields.small("shelves"))
        }
    };
    fields.table("fill", read).unwrap_or(Fill::Open)
}

fn read_hole(fields: &mut Fields<'_>) -> Hole {
    Hole { kind: fields.key("kind"), offset_mm: fields.dim("offset_mm") }
}
