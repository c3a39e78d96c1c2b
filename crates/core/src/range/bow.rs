//! How bowed ends are built.

use serde::Serialize;

use super::Fields;
use crate::units::quantity::Length;

/// Construction figures of bowed ends and the staves along them.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct BowBuild {
    /// From the edge of the plates to the outer faces of the staves.
    pub inset_mm: Length,
    /// Width of a stave.
    pub stave_mm: Length,
    /// Least gap between two staves.
    pub gap_mm: Length,
    /// Width of the tab at each end of a stave.
    pub tab_mm: Length,
    /// From a stave to the outer face of the end upright at least.
    pub behind_mm: Length,
}

impl BowBuild {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            inset_mm: fields.length("inset_mm"),
            stave_mm: fields.length("stave_mm"),
            gap_mm: fields.length("gap_mm"),
            tab_mm: fields.length("tab_mm"),
            behind_mm: fields.length("behind_mm"),
        }
    }
}
