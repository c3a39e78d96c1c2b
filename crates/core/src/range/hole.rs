//! Cable holes and the plugs that go through them.

use serde::Serialize;

use super::{Fields, Key};
use crate::units::quantity::Length;

/// A cable hole on offer.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct HoleKind {
    /// Short name.
    pub key: Key,
    /// Name as shown.
    pub name: String,
    /// Height of its centre above the base.
    pub rise_mm: Length,
    /// Its shape.
    pub shape: HoleShape,
}

/// Shape of a cable hole.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum HoleShape {
    /// A circle.
    Round {
        /// Its diameter.
        diameter_mm: Length,
    },
    /// A lying slot with half-round ends.
    Slotted {
        /// Length over the round ends.
        length_mm: Length,
        /// Height.
        height_mm: Length,
    },
}

impl HoleShape {
    /// Size over all: width, height.
    pub const fn extent(self) -> (Length, Length) {
        match self {
            Self::Round { diameter_mm } => (diameter_mm, diameter_mm),
            Self::Slotted { length_mm, height_mm } => (length_mm, height_mm),
        }
    }
}

/// A plug whose body has to pass a cable hole.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Plug {
    /// Short name.
    pub key: Key,
    /// Name as shown.
    pub name: String,
    /// The smallest cross-section of its body, longer side.
    pub width_mm: Length,
    /// The smallest cross-section of its body, shorter side.
    pub height_mm: Length,
    /// Whether that cross-section is round or oval instead of square-cornered.
    #[serde(default)]
    pub round: bool,
    /// The tightest bend of its cable, where it is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bend_mm: Option<Length>,
}

impl HoleKind {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            key: fields.key("key"),
            name: fields.text("name"),
            rise_mm: fields.length("rise_mm"),
            shape: fields.table("shape", HoleShape::read).unwrap_or(HoleShape::NOTHING),
        }
    }
}

impl HoleShape {
    const NOTHING: Self = Self::Round { diameter_mm: Length::ZERO };

    /// `{ round = { … } }` or `{ slotted = { … } }`.
    fn read(fields: &mut Fields<'_>) -> Self {
        let shape = if fields.has("slotted") {
            fields.table("slotted", |fields| Self::Slotted {
                length_mm: fields.length("length_mm"),
                height_mm: fields.length("height_mm"),
            })
        } else {
            fields.table("round", |fields| Self::Round { diameter_mm: fields.length("diameter_mm") })
        };
        shape.unwrap_or(Self::NOTHING)
    }
}

impl Plug {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            key: fields.key("key"),
            name: fields.text("name"),
            width_mm: fields.length("width_mm"),
            height_mm: fields.length("height_mm"),
            round: fields.has("round") && fields.truth("round"),
            bend_mm: fields.has("bend_mm").then(|| fields.length("bend_mm")),
        }
    }
}
