//! Models: a cabinet type with its limits.

use serde::Serialize;

use super::{Bay, Fields, Key, read_bay};
use crate::units::quantity::{AreaMass, Dim, Length};

/// A cabinet type of the range.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Model {
    /// Short name.
    pub key: Key,
    /// Name as shown.
    pub name: String,
    /// What it is, in a few words.
    pub about: String,
    /// Board of everything but the back.
    pub body: Key,
    /// Boards on offer for the back, the usual one first.
    pub backs: Vec<Key>,
    /// Face-grain direction of the back.
    pub back_grain: BackGrain,
    /// Finishes on offer, the usual one first.
    pub finishes: Vec<Key>,
    /// Overall width.
    pub width_mm: DimRange,
    /// Overall height.
    pub height_mm: DimRange,
    /// Overall depth.
    pub depth_mm: DimRange,
    /// Radii on offer for the corners of top and base, the usual one first.
    pub corner_radii_mm: Vec<Dim>,
    /// Height of the plinth under it, where one is on offer; it begins without.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plinth_mm: Option<DimRange>,
    /// Width of a stile.
    pub stile_mm: Length,
    /// How far its ends may be bowed, 0 for square ends; none if it has these alone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bow_mm: Option<DimRange>,
    /// Number of bays.
    pub bays: BayCount,
    /// Most shelves in one bay; 0 if none.
    pub shelves_most: u8,
    /// Most door leaves in the unit; 0 if none.
    pub leaves_most: u8,
    /// Load that each shelf is laid out for.
    pub shelf_load_kg_per_m2: AreaMass,
    /// Load that the top is laid out for.
    pub top_load_kg_per_m2: AreaMass,
    /// What the bays hold to begin with.
    pub start_bays: Vec<Bay>,
}

/// Least, most, step and first value of a size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct DimRange {
    /// Smallest value.
    pub least: Dim,
    /// Largest value.
    pub most: Dim,
    /// Distance between neighbouring values, counted from the least.
    pub step: Dim,
    /// The value to begin with.
    pub start: Dim,
}

impl DimRange {
    /// Whether the value is within the limits and on a step.
    pub const fn holds(self, value: Dim) -> bool {
        let (least, most, step) = (self.least.in_tenths(), self.most.in_tenths(), self.step.in_tenths());
        let at = value.in_tenths();
        least <= at && at <= most && step > 0 && (at - least) % step == 0
    }

    /// The value on a step that is nearest, within the limits.
    #[must_use]
    pub fn nearest(self, value: Dim) -> Dim {
        let (least, step) = (self.least.in_tenths(), self.step.in_tenths().max(1));
        let last = (self.most.in_tenths() - least).max(0) / step;
        let steps = (value.in_tenths().saturating_sub(least) + step / 2).div_euclid(step);
        Dim::tenths(least + steps.clamp(0, last) * step)
    }

    /// What is taken of a value that somebody types: between two values the nearest one. What is beyond the limits stays:
    /// a rule says so.
    #[must_use]
    pub fn settle(self, value: Dim) -> Dim {
        if (self.least..=self.most).contains(&value) { self.nearest(value) } else { value }
    }

    /// All values, ascending.
    pub fn values(self) -> impl Iterator<Item = Dim> {
        let step = usize::try_from(self.step.in_tenths()).unwrap_or(1).max(1);
        (self.least.in_tenths()..=self.most.in_tenths()).step_by(step).map(Dim::tenths)
    }
}

/// Least and most bays.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct BayCount {
    /// Fewest.
    pub least: u8,
    /// Most.
    pub most: u8,
}

/// Face-grain direction of a back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum BackGrain {
    /// From left to right.
    Lying,
    /// From bottom to top.
    Standing,
}

impl Model {
    /// How far its ends may be bowed.
    pub const fn bows(&self) -> DimRange {
        match self.bow_mm {
            Some(bows) => bows,
            None => DimRange::SQUARE,
        }
    }

    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        let grains = [("lying", BackGrain::Lying), ("standing", BackGrain::Standing)];
        Self {
            key: fields.key("key"),
            name: fields.text("name"),
            about: fields.text("about"),
            body: fields.key("body"),
            backs: fields.keys("backs"),
            back_grain: fields.word("back_grain", &grains, BackGrain::Lying),
            finishes: fields.keys("finishes"),
            width_mm: fields.table("width_mm", DimRange::read).unwrap_or(DimRange::NOTHING),
            height_mm: fields.table("height_mm", DimRange::read).unwrap_or(DimRange::NOTHING),
            depth_mm: fields.table("depth_mm", DimRange::read).unwrap_or(DimRange::NOTHING),
            corner_radii_mm: fields.dims("corner_radii_mm"),
            plinth_mm: if fields.has("plinth_mm") { fields.table("plinth_mm", DimRange::read) } else { None },
            stile_mm: fields.length("stile_mm"),
            bow_mm: if fields.has("bow_mm") { fields.table("bow_mm", DimRange::read) } else { None },
            bays: fields.table("bays", BayCount::read).unwrap_or(BayCount { least: 1, most: 1 }),
            shelves_most: fields.small("shelves_most"),
            leaves_most: fields.small("leaves_most"),
            shelf_load_kg_per_m2: AreaMass::kg_per_m2(fields.number("shelf_load_kg_per_m2")),
            top_load_kg_per_m2: AreaMass::kg_per_m2(fields.number("top_load_kg_per_m2")),
            start_bays: fields.tables("start_bays", read_bay),
        }
    }
}

impl DimRange {
    /// No bow at all.
    const SQUARE: Self = Self { least: Dim::mm(0), most: Dim::mm(0), step: Dim::mm(1), start: Dim::mm(0) };

    const NOTHING: Self = Self { least: Dim::mm(1), most: Dim::mm(1), step: Dim::mm(1), start: Dim::mm(1) };

    fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            least: fields.dim("least"),
            most: fields.dim("most"),
            step: fields.dim("step"),
            start: fields.dim("start"),
        }
    }
}

impl BayCount {
    fn read(fields: &mut Fields<'_>) -> Self {
        Self { least: fields.small("least"), most: fields.small("most") }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_between_two_becomes_the_nearest_and_one_beyond_stays() {
        let dim = |least, most, step| DimRange {
            least: Dim::tenths(least),
            most: Dim::tenths(most),
            step: Dim::tenths(step),
            start: Dim::tenths(least),
        };
        let widths = dim(9_000, 24_000, 100);
        for (typed, taken) in [
            // 4′ 6″ are 1 371.6 mm.
            (13_716, 13_700),
            (13_749, 13_700),
            (13_750, 13_800),
            (13_700, 13_700),
            (9_000, 9_000),
            (24_000, 24_000),
            (23_999, 24_000),
            (8_999, 8_999),
            (24_001, 24_001),
            (0, 0),
        ] {
            assert_eq!(widths.settle(Dim::tenths(typed)), Dim::tenths(taken), "{typed}");
        }
        // The last value may stand before the limit.
        assert_eq!(dim(9_000, 9_250, 100).settle(Dim::tenths(9_250)), Dim::tenths(9_200));
        for typed in (8_000..26_000).step_by(7).map(Dim::tenths) {
            let taken = widths.settle(typed);
            let is_within = widths.least <= typed && typed <= widths.most;
            assert_eq!(widths.holds(taken), is_within, "{typed}");
            assert!(
                !is_within
                    || widths.values().all(|other| (other.in_tenths() - typed.in_tenths()).abs()
                        >= (taken.in_tenths() - typed.in_tenths()).abs())
            );
        }
    }
}
