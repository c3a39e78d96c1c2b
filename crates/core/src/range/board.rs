//! Boards and the sheets in which they come.

use serde::Serialize;

use super::{Batch, Fields, Key};
use crate::units::money::Money;
use crate::units::quantity::{Density, Length, Stiffness, Stress};

/// A kind of plywood with its strength by face-grain direction.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Board {
    /// Short name.
    pub key: Key,
    /// Name as shown.
    pub name: String,
    /// Thickness by which it is sold.
    pub nominal_mm: Length,
    /// Mean thickness of the batch in the rack, sanded and uncoated, if it was measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured_mm: Option<Length>,
    /// The eight measured points of that batch instead, from which mean and spread come.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured_points_mm: Option<Batch>,
    /// Density at the workshop's moisture content.
    pub density_kg_per_m3: Density,
    /// Modulus of elasticity in bending along the face grain.
    pub e_along_n_per_mm2: Stiffness,
    /// Modulus of elasticity in bending across the face grain.
    pub e_across_n_per_mm2: Stiffness,
    /// Panel shear modulus: in the plane of the board, which is what resists twisting.
    pub shear_modulus_n_per_mm2: Stiffness,
    /// Planar (rolling) shear modulus: plies that slide on each other while the board bends.
    pub planar_shear_modulus_n_per_mm2: Stiffness,
    /// Characteristic planar (rolling) shear strength.
    pub planar_shear_n_per_mm2: Stress,
    /// Characteristic strength in compression on an edge.
    pub bearing_n_per_mm2: Stress,
    /// What it may be used for.
    pub uses: Vec<Use>,
    /// The formats in which it is bought.
    #[serde(rename = "sheet")]
    pub sheets: Vec<Sheet>,
}

impl Board {
    /// The measured thickness if there is one, else the nominal one.
    pub fn thickness(&self) -> Length {
        let mean = self.measured_points_mm.as_ref().map(Batch::mean);
        mean.or(self.measured_mm).unwrap_or(self.nominal_mm)
    }
}

impl Board {
    /// Whether its batch was measured, point by point or by its mean.
    pub const fn is_measured(&self) -> bool {
        self.measured_points_mm.is_some() || self.measured_mm.is_some()
    }

    /// Takes a measured batch in place of what was known.
    pub fn measure(&mut self, batch: Batch) {
        (self.measured_mm, self.measured_points_mm) = (None, Some(batch));
    }
}

/// A use of a board.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Use {
    /// Base, uprights, shelves, stiles, leaves, top.
    Body,
    /// Backs.
    Back,
}

impl Use {
    /// Its word in a range file.
    pub(super) const fn word(self) -> &'static str {
        match self {
            Self::Body => "body",
            Self::Back => "back",
        }
    }
}

/// A format of a board.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Sheet {
    /// Short name, unique within the board.
    pub key: Key,
    /// The longer side.
    pub length_mm: Length,
    /// The shorter side.
    pub width_mm: Length,
    /// Direction of the face grain.
    pub grain: Grain,
    /// Price of one sheet, without tax.
    pub price_minor: Money,
}

/// Direction of the face grain on a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Grain {
    /// Along the longer side ("long grain").
    Length,
    /// Along the shorter side ("cross grain").
    Width,
}

impl Board {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            measured_mm: fields.has("measured_mm").then(|| fields.length("measured_mm")),
            measured_points_mm: fields
                .has("measured_points_mm")
                .then(|| Batch::of(fields.lengths("measured_points_mm"))),
            key: fields.key("key"),
            name: fields.text("name"),
            nominal_mm: fields.length("nominal_mm"),
            density_kg_per_m3: Density::kg_per_m3(fields.number("density_kg_per_m3")),
            e_along_n_per_mm2: Stiffness::n_per_mm2(fields.number("e_along_n_per_mm2")),
            e_across_n_per_mm2: Stiffness::n_per_mm2(fields.number("e_across_n_per_mm2")),
            shear_modulus_n_per_mm2: Stiffness::n_per_mm2(fields.number("shear_modulus_n_per_mm2")),
            planar_shear_modulus_n_per_mm2: Stiffness::n_per_mm2(fields.number("planar_shear_modulus_n_per_mm2")),
            planar_shear_n_per_mm2: Stress::n_per_mm2(fields.number("planar_shear_n_per_mm2")),
            bearing_n_per_mm2: Stress::n_per_mm2(fields.number("bearing_n_per_mm2")),
            uses: fields.words("uses", &[Use::Body, Use::Back].map(|used| (used.word(), used))),
            sheets: fields.tables("sheet", Sheet::read),
        }
    }
}

impl Sheet {
    fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            key: fields.key("key"),
            length_mm: fields.length("length_mm"),
            width_mm: fields.length("width_mm"),
            grain: fields.word("grain", &[("length", Grain::Length), ("width", Grain::Width)], Grain::Length),
            price_minor: fields.money("price_minor"),
        }
    }
}
