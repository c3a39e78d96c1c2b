//! What material and work cost.

use serde::Serialize;

use super::Fields;
use crate::units::money::Money;
use crate::units::quantity::{AreaMass, Mass};

/// Rates of the workshop, all without tax.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Rates {
    /// How the sheets of a unit are counted.
    pub material: MaterialBy,
    /// One hour of the machine with its operator.
    pub machine_hour_minor: Money,
    /// One hour in the spray room.
    pub spray_hour_minor: Money,
    /// One hour at the bench.
    pub bench_hour_minor: Money,
    /// Feed of the cutter.
    pub feed_mm_per_min: f64,
    /// Passes to cut through a body board.
    pub passes: u8,
    /// Setting the machine up for one order: program, zero points, cutter.
    pub setup_minutes: f64,
    /// Loading and unloading one sheet.
    pub sheet_minutes: f64,
    /// Sanding, of each face before coating.
    pub sand_minutes_per_m2: f64,
    /// Setting the spray gun up and cleaning it: once before cutting and once after it, if coats are sprayed then.
    pub spray_setup_minutes: f64,
    /// Spraying one coat.
    pub coat_minutes_per_m2: f64,
    /// Turning one sheet, so that a coat gets on its other face.
    pub turn_minutes_per_sheet: f64,
    /// Sanding between two coats.
    pub between_coats_minutes_per_m2: f64,
    /// Finishing cut edges by hand.
    pub edge_minutes_per_m: f64,
    /// Chamfering one corner of an edge; an edge has two, one at each face.
    pub chamfer_minutes_per_m: f64,
    /// Rounding one corner of a leaf's upright edge.
    pub rounding_minutes_per_m: f64,
    /// Rounding one pivot of a leaf.
    pub pivot_minutes: f64,
    /// Trying one joint together, dry.
    pub dry_fit_minutes_per_joint: f64,
    /// Masking tabs and slots of one part before the coats after cutting.
    pub mask_minutes_per_part: f64,
    /// Labelling one part.
    pub label_minutes_per_part: f64,
    /// Packing, for each part.
    pub pack_minutes_per_part: f64,
    /// Packing material, for each square metre of parts.
    pub pack_minor_per_m2: Money,
    /// Mass of the packing material, for each square metre of parts.
    pub pack_kg_per_m2: AreaMass,
    /// Mass of the packing material, for each package.
    pub pack_kg_per_package: Mass,
    /// Overhead on material and work, per mille.
    pub overhead_per_mille: u32,
    /// Margin as a share of the price, per mille.
    pub margin_per_mille: u32,
    /// Tax on the price, per mille.
    pub tax_per_mille: u32,
}

/// How the sheets of a unit are counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum MaterialBy {
    /// Its parts are nested on whole sheets; what is kept of these is worth something.
    Nest,
    /// The area of its parts over a share of a sheet that ends up in parts.
    Yield {
        /// That share, per mille.
        per_mille: u32,
    },
}

impl MaterialBy {
    /// `material = "nest"` or `material = { yield = { per_mille = 780 } }`.
    fn read(fields: &mut Fields<'_>) -> Self {
        if !fields.is_table("material") {
            return fields.word("material", &[("nest", Self::Nest)], Self::Nest);
        }
        let read = |fields: &mut Fields<'_>| {
            fields.table("yield", |fields| Self::Yield { per_mille: fields.whole("per_mille", 1_000_000) })
        };
        fields.table("material", read).flatten().unwrap_or(Self::Nest)
    }
}

impl Rates {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            material: MaterialBy::read(fields),
            machine_hour_minor: fields.money("machine_hour_minor"),
            spray_hour_minor: fields.money("spray_hour_minor"),
            bench_hour_minor: fields.money("bench_hour_minor"),
            feed_mm_per_min: fields.number("feed_mm_per_min"),
            passes: fields.small("passes"),
            setup_minutes: fields.number("setup_minutes"),
            sheet_minutes: fields.number("sheet_minutes"),
            sand_minutes_per_m2: fields.number("sand_minutes_per_m2"),
            spray_setup_minutes: fields.number("spray_setup_minutes"),
            coat_minutes_per_m2: fields.number("coat_minutes_per_m2"),
            turn_minutes_per_sheet: fields.number("turn_minutes_per_sheet"),
            between_coats_minutes_per_m2: fields.number("between_coats_minutes_per_m2"),
            edge_minutes_per_m: fields.number("edge_minutes_per_m"),
            chamfer_minutes_per_m: fields.number("chamfer_minutes_per_m"),
            rounding_minutes_per_m: fields.number("rounding_minutes_per_m"),
            pivot_minutes: fields.number("pivot_minutes"),
            dry_fit_minutes_per_joint: fields.number("dry_fit_minutes_per_joint"),
            mask_minutes_per_part: fields.number("mask_minutes_per_part"),
            label_minutes_per_part: fields.number("label_minutes_per_part"),
            pack_minutes_per_part: fields.number("pack_minutes_per_part"),
            pack_minor_per_m2: fields.money("pack_minor_per_m2"),
            pack_kg_per_m2: AreaMass::kg_per_m2(fields.number("pack_kg_per_m2")),
            pack_kg_per_package: Mass::kg(fields.number("pack_kg_per_package")),
            overhead_per_mille: fields.whole("overhead_per_mille", 1_000_000),
            margin_per_mille: fields.whole("margin_per_mille", 1_000_000),
            tax_per_mille: fields.whole("tax_per_mille", 1_000_000),
        }
    }
}
