//! What the customer picked, and nothing derived.

use serde::Serialize;

use crate::members::{Place as At, ReadError};
use crate::quantity::Dim;
use crate::question::Question;
use crate::range::{Key, Model, Range};

mod note;

pub(crate) use note::read_bay;

/// Most bays that a choice can name; models allow fewer.
pub const BAYS_MOST: usize = 6;

/// Largest share of a bay; the least is 1. What offers shares and what searches them has all of these.
pub const SHARE_MOST: u8 = 9;

/// A configured unit as picked.
///
/// Any value is a choice, however absurd: what cannot be made is said by findings.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Choice {
    /// The model.
    pub model: Key,
    /// Overall width.
    pub width_mm: Dim,
    /// Overall height.
    pub height_mm: Dim,
    /// Overall depth.
    pub depth_mm: Dim,
    /// The bays from left to right.
    pub bays: Vec<Bay>,
    /// Board of the back.
    pub back: Key,
    /// The finish.
    pub finish: Key,
    /// Radius of the upright corners of top and base.
    pub corner_radius_mm: Dim,
    /// Where the unit will stand.
    pub place: Place,
}

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

/// Where the unit will stand: what it has to suit.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Place {
    /// Length of the free wall.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wall_mm: Option<Dim>,
    /// Diagonal of the screen on top, in tenths of an inch.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub screen_tenth_inch: Option<u16>,
    /// The plug that has to pass the cable holes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plug: Option<Key>,
}

impl Choice {
    /// The choice that a model begins with.
    ///
    /// `None` if the model names no back, finish or corner radius; a parsed range always does.
    pub fn starting(model: &Model) -> Option<Self> {
        Some(Self {
            model: model.key.clone(),
            width_mm: model.width_mm.start,
            height_mm: model.height_mm.start,
            depth_mm: model.depth_mm.start,
            bays: model.start_bays.clone(),
            back: model.backs.first()?.clone(),
            finish: model.finishes.first()?.clone(),
            corner_radius_mm: *model.corner_radii_mm.first()?,
            place: Place::default(),
        })
    }

    /// The choice that the first model of the range begins with.
    pub fn first_of(range: &Range) -> Option<Self> {
        range.models.first().and_then(Self::starting)
    }

    /// The same unit seen in a mirror: bays reversed, leaves hung on the other side.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        let mut mirrored = self.clone();
        mirrored.bays.reverse();
        for bay in &mut mirrored.bays {
            bay.fill = match bay.fill {
                Fill::Leaf(Hung::Left) => Fill::Leaf(Hung::Right),
                Fill::Leaf(Hung::Right) => Fill::Leaf(Hung::Left),
                other => other,
            };
            if let Some(hole) = &mut bay.hole {
                hole.offset_mm = Dim::tenths(-hole.offset_mm.in_tenths());
            }
        }
        mirrored
    }
}

impl Choice {
    /// Whether it has what a question asks about: a bay may be gone.
    pub fn has(&self, question: Question) -> bool {
        question.bay().is_none_or(|bay| (1..=self.bays.len()).contains(&usize::from(bay)))
    }

    /// Reads a choice.
    ///
    /// # Errors
    ///
    /// The first unknown, missing or mistyped member with its JSON pointer.
    pub fn read(at: At) -> Result<Self, ReadError> {
        let mut members = at.members()?;
        let choice = Self {
            model: members.take("model")?.parsed()?,
            width_mm: members.take("width_mm")?.dim()?,
            height_mm: members.take("height_mm")?.dim()?,
            depth_mm: members.take("depth_mm")?.dim()?,
            bays: members.take("bays")?.list(Bay::read)?,
            back: members.take("back")?.parsed()?,
            finish: members.take("finish")?.parsed()?,
            corner_radius_mm: members.take("corner_radius_mm")?.dim()?,
            place: Place::read(members.take("place")?)?,
        };
        members.done()?;
        Ok(choice)
    }
}

impl Bay {
    fn read(at: At) -> Result<Self, ReadError> {
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
fn word<T: Copy>(at: &At, words: &[(&str, T)]) -> Result<T, ReadError> {
    let wanted = || words.iter().map(|(word, _)| format!("\"{word}\"")).collect::<Vec<_>>().join(" or ");
    if !at.is_text() {
        return at.refuse(&wanted());
    }
    let known = words.iter().find(|(word, _)| at.is(word));
    known.map_or_else(|| at.refuse(&wanted()), |(_, meaning)| Ok(*meaning))
}

impl Hole {
    fn read(at: At) -> Result<Self, ReadError> {
        let mut members = at.members()?;
        let hole = Self { kind: members.take("kind")?.parsed()?, offset_mm: members.take("offset_mm")?.dim()? };
        members.done()?;
        Ok(hole)
    }
}

impl Place {
    fn read(at: At) -> Result<Self, ReadError> {
        let mut members = at.members()?;
        let screen = members.maybe("screen_tenth_inch").map(|at| at.whole_between(0, 65_535)).transpose()?;
        let place = Self {
            wall_mm: members.maybe("wall_mm").map(At::dim).transpose()?,
            screen_tenth_inch: screen.map(|tenths| u16::try_from(tenths).unwrap_or(u16::MAX)),
            plug: members.maybe("plug").map(At::parsed).transpose()?,
        };
        members.done()?;
        Ok(place)
    }
}
