//! Stages of an order, working days and carriers.

use serde::Serialize;

use super::{Fields, Key};
use crate::day::Day;
use crate::money::Money;
use crate::quantity::{Length, Mass};

/// One stage that every order passes.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Stage {
    /// Short name.
    pub key: Key,
    /// Name as shown.
    pub name: String,
    /// Which work of the order it takes in.
    pub work: Work,
    /// Minutes of that work done in one working day.
    pub minutes_per_day: u32,
    /// Working days to let pass afterwards, for drying or curing.
    pub wait_days: u16,
}

/// The kinds of work in an order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Work {
    /// Sanding and coating the sheets.
    Sheets,
    /// Cutting.
    Cut,
    /// Finishing the edges and the last coats.
    Edges,
    /// Packing.
    Pack,
}

/// The days on which the workshop works.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Calendar {
    /// Working weekdays, Monday 1 to Sunday 7.
    pub weekdays: Vec<u8>,
    /// Single days off.
    #[serde(default)]
    pub closed: Vec<Day>,
    /// Stretches of days off.
    #[serde(default)]
    pub shutdowns: Vec<Shutdown>,
}

/// A stretch of days off, both ends included.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Shutdown {
    /// First day off.
    pub from: Day,
    /// Last day off.
    pub to: Day,
}

/// A carrier with its limits for one package.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Carrier {
    /// Short name.
    pub key: Key,
    /// Name as shown.
    pub name: String,
    /// Heaviest package.
    pub package_most_kg: Mass,
    /// Longest package.
    pub longest_mm: Length,
    /// Most of length plus girth.
    pub length_and_girth_mm: Length,
    /// Working days on the road.
    pub days: u16,
    /// Price of one package, without tax.
    pub package_minor: Money,
}

impl Work {
    /// Every kind, by its word.
    pub(super) const ALL: [(&'static str, Self); 4] =
        [("sheets", Self::Sheets), ("cut", Self::Cut), ("edges", Self::Edges), ("pack", Self::Pack)];
}

impl Stage {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            key: fields.key("key"),
            name: fields.text("name"),
            work: fields.word("work", &Work::ALL, Work::Sheets),
            minutes_per_day: fields.whole("minutes_per_day", 1_000_000),
            wait_days: u16::try_from(fields.whole("wait_days", 65_535)).unwrap_or(u16::MAX),
        }
    }
}

impl Calendar {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            weekdays: fields.smalls("weekdays"),
            closed: if fields.has("closed") { fields.days("closed") } else { Vec::new() },
            shutdowns: if fields.has("shutdowns") { fields.tables("shutdowns", Shutdown::read) } else { Vec::new() },
        }
    }
}

impl Shutdown {
    fn read(fields: &mut Fields<'_>) -> Self {
        Self { from: fields.day("from"), to: fields.day("to") }
    }
}

impl Carrier {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            key: fields.key("key"),
            name: fields.text("name"),
            package_most_kg: Mass::kg(fields.number("package_most_kg")),
            longest_mm: fields.length("longest_mm"),
            length_and_girth_mm: fields.length("length_and_girth_mm"),
            days: u16::try_from(fields.whole("days", 65_535)).unwrap_or(u16::MAX),
            package_minor: fields.money("package_minor"),
        }
    }
}
