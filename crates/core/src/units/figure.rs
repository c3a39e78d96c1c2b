//! A figure with its unit, as findings tell it.

use serde::Serialize;

use crate::units::quantity::{Force, Length, Mass, Stress};

/// A figure with its unit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Figure {
    /// The value, rounded to a hundredth; found and allowed to as much as a millionth where they would be equal.
    pub value: f64,
    /// Its unit.
    pub unit: Unit,
}

/// Units of figures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Unit {
    /// Millimetres.
    Mm,
    /// Kilograms.
    Kg,
    /// A number of things.
    Count,
    /// One thing over another of its kind.
    Ratio,
    /// Parts of a hundred.
    Percent,
    /// Newtons.
    N,
    /// Newton metres.
    Nm,
    /// Newtons on a square millimetre.
    NPerMm2,
    /// Degrees.
    Degree,
}

impl Figure {
    /// A length.
    pub fn length(length: Length) -> Self {
        Self { value: length.in_mm(), unit: Unit::Mm }
    }

    /// A mass.
    pub fn mass(mass: Mass) -> Self {
        Self { value: mass.in_kg(), unit: Unit::Kg }
    }

    /// A number of things.
    pub fn count(count: impl Into<u32>) -> Self {
        Self { value: f64::from(count.into()), unit: Unit::Count }
    }

    /// One thing over another of its kind.
    pub fn ratio(ratio: f64) -> Self {
        Self { value: ratio, unit: Unit::Ratio }
    }

    /// A share of 1.
    pub fn share(share: f64) -> Self {
        Self { value: share * 100.0, unit: Unit::Percent }
    }

    /// A force.
    pub fn force(force: Force) -> Self {
        Self { value: force.in_newton(), unit: Unit::N }
    }

    /// A moment in newton metres.
    pub fn moment(newton_metres: f64) -> Self {
        Self { value: newton_metres, unit: Unit::Nm }
    }

    /// A stress.
    pub fn stress(stress: Stress) -> Self {
        Self { value: stress.in_n_per_mm2(), unit: Unit::NPerMm2 }
    }

    /// An angle in degrees.
    pub fn degrees(degrees: f64) -> Self {
        Self { value: degrees, unit: Unit::Degree }
    }
}
