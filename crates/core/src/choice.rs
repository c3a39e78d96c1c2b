//! What the customer picked, and nothing derived.

use serde::Serialize;

use crate::choice::question::Question;
use crate::input::fault::ReadError;
use crate::input::members::Place as At;
use crate::range::{Key, Model, Range, word};
use crate::units::quantity::Dim;

pub mod change;
pub mod changed;
mod compact;
pub mod draft;
pub mod history;
pub mod link;
pub mod question;

pub use crate::range::{BAYS_MOST, Bay, Fill, Hole, Hung};

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
    /// Height of the plinth under it, which the overall height counts; nothing if it stands on its base.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plinth_mm: Option<Dim>,
    /// How far its bowed ends rise; 0 for square ends.
    #[serde(default, skip_serializing_if = "Dim::is_zero")]
    pub bow_mm: Dim,
    /// Which ends are bowed, if they are.
    #[serde(default, skip_serializing_if = "Bowed::is_both")]
    pub bowed: Bowed,
    /// Where the unit will stand.
    pub place: Place,
}

/// Which ends of the unit are bowed, seen from the front.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Bowed {
    /// Both of them.
    #[default]
    Both,
    /// The left one.
    Left,
    /// The right one.
    Right,
}

impl Bowed {
    /// All answers, with the words by which they are written.
    pub const ALL: [(&'static str, Self); 3] = [("both", Self::Both), ("left", Self::Left), ("right", Self::Right)];

    /// The word by which it is written.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Both => "both",
            Self::Left => "left",
            Self::Right => "right",
        }
    }

    #[expect(clippy::trivially_copy_pass_by_ref, reason = "as serde asks")]
    const fn is_both(&self) -> bool {
        matches!(self, Self::Both)
    }
}

/// Where the unit will stand: what it has to suit.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Place {
    /// Length of the free wall.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wall_mm: Option<Dim>,
    /// Height of the ceiling over the floor.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ceiling_mm: Option<Dim>,
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
            plinth_mm: None,
            bow_mm: model.bows().start,
            bowed: Bowed::Both,
            place: Place::default(),
        })
    }

    /// The choice that the first model of the range begins with.
    pub fn first_of(range: &Range) -> Option<Self> {
        range.models.first().and_then(Self::starting)
    }

    /// The same unit seen in a mirror: bays reversed, leaves hung and ends bowed on the other side.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        let mut mirrored = self.clone();
        mirrored.bays.reverse();
        mirrored.bowed = match self.bowed {
            Bowed::Both => Bowed::Both,
            Bowed::Left => Bowed::Right,
            Bowed::Right => Bowed::Left,
        };
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
            plinth_mm: members.maybe("plinth_mm").map(At::dim).transpose()?,
            bow_mm: members.maybe("bow_mm").map(At::dim).transpose()?.unwrap_or_default(),
            bowed: members.maybe("bowed").map(|at| word(&at, &Bowed::ALL)).transpose()?.unwrap_or_default(),
            place: Place::read(members.take("place")?)?,
        };
        members.done()?;
        Ok(choice)
    }
}

impl Place {
    fn read(at: At) -> Result<Self, ReadError> {
        let mut members = at.members()?;
        let screen = members.maybe("screen_tenth_inch").map(|at| at.whole_between(0, 65_535)).transpose()?;
        let place = Self {
            wall_mm: members.maybe("wall_mm").map(At::dim).transpose()?,
            ceiling_mm: members.maybe("ceiling_mm").map(At::dim).transpose()?,
            screen_tenth_inch: screen.map(|tenths| u16::try_from(tenths).unwrap_or(u16::MAX)),
            plug: members.maybe("plug").map(At::parsed).transpose()?,
        };
        members.done()?;
        Ok(place)
    }
}
