//! Boards and the sheets in which they come.

use serde::Serialize;

use super::{Batch, Fields, Key};
use crate::units::money::Money;
use crate::units::quantity::{Area, Density, Length, Stiffness, Stress};

/// Thickness of a ply.
// Common practice: birch plywood, 13 plies at 18 mm, 9 at 12 mm.
const PLY: Length = Length::mm(1.4);

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
    /// Modulus of elasticity in the plane of the board, across the face grain: that of tension and compression.
    pub e_plane_across_n_per_mm2: Stiffness,
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
    /// The format of which a square metre costs the least.
    pub fn cheapest(&self) -> Option<&Sheet> {
        self.sheets.iter().min_by(|a, b| a.per_m2().total_cmp(&b.per_m2()))
    }

    /// How many plies it has: as many as its nominal thickness holds, an odd number, so that both faces have one grain.
    pub fn plies(&self) -> u8 {
        let pairs = libm::round((self.nominal_mm / PLY - 1.0) / 2.0).clamp(1.0, 60.0);
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "1 to 60")]
        let pairs = pairs as u8;
        2 * pairs + 1
    }

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
            e_plane_across_n_per_mm2: Stiffness::n_per_mm2(fields.number("e_plane_across_n_per_mm2")),
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
    /// Its area.
    pub fn area(&self) -> Area {
        self.length_mm * self.width_mm
    }

    /// What a square metre of it costs, in minor units.
    #[expect(clippy::cast_precision_loss, reason = "prices are bounded")]
    pub fn per_m2(&self) -> f64 {
        self.price_minor.in_minor() as f64 / self.area().in_m2()
    }

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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::range::Range;

    // Common practice: plies of birch plywood by thickness, as merchants list them.
    #[test]
    fn plies_are_those_of_merchants() {
        let range = Range::parse(include_str!("../../../../web/ranges/fenland.toml")).unwrap();
        let board = range.boards.first().unwrap();
        for (nominal, plies) in [
            (4.0, 3),
            (6.5, 5),
            (9.0, 7),
            (12.0, 9),
            (15.0, 11),
            (18.0, 13),
            (21.0, 15),
            (24.0, 17),
            (0.0, 3),
            (1e9, 121),
        ] {
            assert_eq!(Board { nominal_mm: Length::mm(nominal), ..board.clone() }.plies(), plies, "{nominal} mm");
        }
    }
}
