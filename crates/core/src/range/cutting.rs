//! How parts are cut from sheets, and what of a sheet is worth keeping.

use serde::Serialize;

use super::Fields;
use crate::units::quantity::{Area, Length};

/// How the machine cuts parts from a sheet.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Cutting {
    /// Between two parts, beyond the diameter of the cutter.
    pub allowance_mm: Length,
    /// How far the last pass goes below the sheet, into the board that lies under it.
    pub below_mm: Length,
    /// On how long a way, beside the part, the cutter goes down to it.
    pub lead_in_mm: Length,
    /// Lifting the cutter, moving it on and putting it down again: once for each outline.
    pub outline_minutes: f64,
    /// What holds parts while they are cut.
    pub hold: Hold,
}

/// What holds a part until the sheet is unloaded.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Hold {
    /// The vacuum of the table alone.
    Vacuum,
    /// A skin that the last pass leaves under the outline ("onion skin"), cut by hand.
    Skin {
        /// How thick it is.
        thickness_mm: Length,
    },
    /// Bridges that are left in the outline, cut by hand.
    Bridges {
        /// How long each is, along the outline.
        length_mm: Length,
        /// How thick it is, from the lower face.
        thickness_mm: Length,
        /// Two of a part's bridges are at most so far apart, along its outline.
        apart_mm: Length,
    },
}

/// What is left of a sheet, and what it is worth.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct OffcutRules {
    /// What is kept is at least so long, along its face grain.
    pub least_along_mm: Length,
    /// And so wide, across it.
    pub least_across_mm: Length,
    /// What it is worth, of the price of as much of its sheet.
    pub worth_per_mille: u32,
}

impl OffcutRules {
    /// What of an area that is kept counts as not used.
    pub fn worth(&self, kept: Area) -> Area {
        kept * (f64::from(self.worth_per_mille) / 1000.0)
    }
}

impl Cutting {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            allowance_mm: fields.length("allowance_mm"),
            below_mm: fields.length("below_mm"),
            lead_in_mm: fields.length("lead_in_mm"),
            outline_minutes: fields.number("outline_minutes"),
            hold: Hold::read(fields),
        }
    }
}

impl Hold {
    /// `hold = "vacuum"`, `hold = { skin = { … } }` or `hold = { bridges = { … } }`.
    fn read(fields: &mut Fields<'_>) -> Self {
        if !fields.is_table("hold") {
            return fields.word("hold", &[("vacuum", Self::Vacuum)], Self::Vacuum);
        }
        let read = |fields: &mut Fields<'_>| {
            if fields.has("skin") {
                fields.table("skin", |fields| Self::Skin { thickness_mm: fields.length("thickness_mm") })
            } else {
                fields.table("bridges", |fields| Self::Bridges {
                    length_mm: fields.length("length_mm"),
                    thickness_mm: fields.length("thickness_mm"),
                    apart_mm: fields.length("apart_mm"),
                })
            }
        };
        fields.table("hold", read).flatten().unwrap_or(Self::Vacuum)
    }
}

impl OffcutRules {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            least_along_mm: fields.length("least_along_mm"),
            least_across_mm: fields.length("least_across_mm"),
            worth_per_mille: fields.whole("worth_per_mille", 1000),
        }
    }
}
