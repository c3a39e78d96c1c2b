//! Devices that a bay has to take: what a customer may name to see that it fits.

use serde::Serialize;

use super::{Fields, Key};
use crate::units::quantity::Length;

/// A device of a usual size, with the room that it needs round it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Device {
    /// Short name.
    pub key: Key,
    /// Name as shown.
    pub name: String,
    /// Its width.
    pub width_mm: Length,
    /// Its height, feet and knobs on top included.
    pub height_mm: Length,
    /// Its depth, without plugs.
    pub depth_mm: Length,
    /// Air wanted at either side.
    pub air_beside_mm: Length,
    /// Air wanted over it, or room to reach in.
    pub air_over_mm: Length,
    /// Room behind it for plugs and the bend of their cables.
    pub plug_behind_mm: Length,
}

impl Device {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            key: fields.key("key"),
            name: fields.text("name"),
            width_mm: fields.length("width_mm"),
            height_mm: fields.length("height_mm"),
            depth_mm: fields.length("depth_mm"),
            air_beside_mm: fields.length("air_beside_mm"),
            air_over_mm: fields.length("air_over_mm"),
            plug_behind_mm: fields.length("plug_behind_mm"),
        }
    }
}
