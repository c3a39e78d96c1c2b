//! Stages of an order, the people who do them, working days and carriers.

use serde::Serialize;

use super::{Fields, Key};
use crate::units::day::Day;
use crate::units::money::Money;
use crate::units::quantity::{Length, Mass};

/// People who share their day among several stages: one person, or some who work together.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Crew {
    /// Short name.
    pub key: Key,
    /// Minutes of work done in one working day, in all their stages together.
    pub minutes_per_day: u32,
}

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
    /// Who does it, if they have other stages to do as well.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub crew: Option<Key>,
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
    /// Minutes from the beginning to the end of a working day, in which work and drying take turns.
    pub day_minutes: u32,
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
    /// Heaviest package that it accepts.
    pub package_most_kg: Mass,
    /// How many people carry a package: it is never heavier than they may lift.
    pub people: u8,
    /// Longest package.
    pub longest_mm: Length,
    /// Most of length plus girth.
    pub length_and_girth_mm: Length,
    /// Days on the road, counted on the days on which it travels.
    pub days: u16,
    /// Weekdays on which it collects and delivers, Monday 1 to Sunday 7.
    pub weekdays: Vec<u8>,
    /// Single days on which it does not, apart from the workshop's own.
    #[serde(default)]
    pub closed: Vec<Day>,
    /// Price of one package, without tax.
    pub package_minor: Money,
}

impl Work {
    /// Every kind, by its word.
    pub(crate) const ALL: [(&'static str, Self); 4] =
        [("sheets", Self::Sheets), ("cut", Self::Cut), ("edges", Self::Edges), ("pack", Self::Pack)];
}

impl Crew {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self { key: fields.key("key"), minutes_per_day: fields.whole("minutes_per_day", 1_000_000) }
    }
}

impl Stage {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            key: fields.key("key"),
            name: fields.text("name"),
            work: fields.word("work", &Work::ALL, Work::Sheets),
            crew: fields.has("crew").then(|| fields.key("crew")),
            minutes_per_day: fields.whole("minutes_per_day", 1_000_000),
            wait_days: u16::try_from(fields.whole("wait_days", 65_535)).unwrap_or(u16::MAX),
        }
    }
}

impl Calendar {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            day_minutes: fields.whole("day_minutes", 1440),
            weekdays: fields.smalls("weekdays"),
            closed: closed(fields),
            shutdowns: if fields.has("shutdowns") { fields.tables("shutdowns", Shutdown::read) } else { Vec::new() },
        }
    }
}

/// Single days off, if there are any.
fn closed(fields: &mut Fields<'_>) -> Vec<Day> {
    if fields.has("closed") { fields.days("closed") } else { Vec::new() }
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
            people: fields.small("people"),
            longest_mm: fields.length("longest_mm"),
            length_and_girth_mm: fields.length("length_and_girth_mm"),
            days: u16::try_from(fields.whole("days", 65_535)).unwrap_or(u16::MAX),
            weekdays: fields.smalls("weekdays"),
            closed: closed(fields),
            package_minor: fields.money("package_minor"),
        }
    }
}
