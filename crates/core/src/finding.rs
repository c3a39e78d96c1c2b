//! Findings: the results of checking rules, as data. [`crate::words`] turns them into sentences.

use core::fmt;

use serde::{Serialize, Serializer};

use crate::change::Change;
use crate::panel::PanelId;
use crate::quantity::{Force, Length, Mass, Stress};
use crate::rules::Rule;

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Severity {
    /// The unit cannot be ordered.
    Stops,
    /// It can, but somebody should know.
    Warns,
    /// Good to know.
    Advises,
}

impl fmt::Display for Severity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Stops => "stops",
            Self::Warns => "warns",
            Self::Advises => "advises",
        })
    }
}

/// The question that a finding concerns; bays count from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Question {
    /// Where it stands, what has to suit.
    Place,
    /// Which model.
    Model,
    /// How wide.
    Width,
    /// How high.
    Height,
    /// How deep.
    Depth,
    /// How many bays.
    Bays,
    /// What a bay holds.
    Bay(u8),
    /// How the width is shared among the bays.
    Shares,
    /// The cable hole of a bay.
    Hole(u8),
    /// The device in a bay.
    Device(u8),
    /// Board of the back.
    Back,
    /// The finish.
    Finish,
    /// The corners of top and base.
    Corners,
}

impl Question {
    /// The bay that it asks about, if it is about one.
    pub const fn bay(self) -> Option<u8> {
        match self {
            Self::Bay(bay) | Self::Hole(bay) | Self::Device(bay) => Some(bay),
            _ => None,
        }
    }
}

impl fmt::Display for Question {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Place => f.write_str("place"),
            Self::Model => f.write_str("model"),
            Self::Width => f.write_str("width"),
            Self::Height => f.write_str("height"),
            Self::Depth => f.write_str("depth"),
            Self::Bays => f.write_str("bays"),
            Self::Bay(number) => write!(f, "bay-{number}"),
            Self::Shares => f.write_str("shares"),
            Self::Hole(number) => write!(f, "hole-{number}"),
            Self::Device(number) => write!(f, "device-{number}"),
            Self::Back => f.write_str("back"),
            Self::Finish => f.write_str("finish"),
            Self::Corners => f.write_str("corners"),
        }
    }
}

/// A text that is no question.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{0:?} is no question: width, height, depth, bays, shares, back, finish, corners, or bay-1, hole-1, device-1")]
pub struct NotAQuestion(String);

impl core::str::FromStr for Question {
    type Err = NotAQuestion;

    fn from_str(text: &str) -> Result<Self, NotAQuestion> {
        let bare = [Self::Place, Self::Model, Self::Width, Self::Height, Self::Depth, Self::Bays, Self::Shares];
        let bare = bare.into_iter().chain([Self::Back, Self::Finish, Self::Corners]);
        let numbered = (1..=9).flat_map(|bay| [Self::Bay(bay), Self::Hole(bay), Self::Device(bay)]);
        let mut all = bare.chain(numbered);
        all.find(|question| question.to_string() == text).ok_or_else(|| NotAQuestion(text.chars().take(40).collect()))
    }
}

impl Serialize for Question {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

/// A figure with its unit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Figure {
    /// The value, rounded to a hundredth.
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

fn hundredth(value: f64) -> f64 {
    crate::quantity::round_half_away(value * 100.0) / 100.0
}

impl Figure {
    /// A length.
    pub fn length(length: Length) -> Self {
        Self { value: length.to_hundredth_mm(), unit: Unit::Mm }
    }

    /// A mass.
    pub fn mass(mass: Mass) -> Self {
        Self { value: hundredth(mass.in_kg()), unit: Unit::Kg }
    }

    /// A number of things.
    pub fn count(count: impl Into<u32>) -> Self {
        Self { value: f64::from(count.into()), unit: Unit::Count }
    }

    /// One thing over another of its kind.
    pub fn ratio(ratio: f64) -> Self {
        Self { value: hundredth(ratio), unit: Unit::Ratio }
    }

    /// A share of 1.
    pub fn share(share: f64) -> Self {
        Self { value: hundredth(share * 100.0), unit: Unit::Percent }
    }

    /// A force.
    pub fn force(force: Force) -> Self {
        Self { value: hundredth(force.in_newton()), unit: Unit::N }
    }

    /// A moment in newton metres.
    pub fn moment(newton_metres: f64) -> Self {
        Self { value: hundredth(newton_metres), unit: Unit::Nm }
    }

    /// A stress.
    pub fn stress(stress: Stress) -> Self {
        Self { value: hundredth(stress.in_n_per_mm2()), unit: Unit::NPerMm2 }
    }

    /// An angle in degrees.
    pub fn degrees(degrees: f64) -> Self {
        Self { value: hundredth(degrees), unit: Unit::Degree }
    }
}

/// Which side of the allowed figure is right.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Limit {
    /// Found must not be above allowed.
    AtMost,
    /// Found must not be below allowed.
    AtLeast,
    /// Found is not among what there is; allowed says how many there are.
    OneOf,
}

/// One result of checking a rule.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Finding {
    /// The rule.
    pub rule: Rule,
    /// How much it matters.
    pub severity: Severity,
    /// The question concerned.
    #[cfg_attr(feature = "schema", schemars(with = "String"))]
    pub about: Question,
    /// The parts concerned.
    #[cfg_attr(feature = "schema", schemars(with = "Vec<String>"))]
    pub parts: Vec<PanelId>,
    /// What was found.
    pub found: Figure,
    /// What is allowed.
    pub allowed: Figure,
    /// Which side of it is right.
    pub limit: Limit,
    /// Changes that were tried: after each this finding is gone, and none has come that matters as much or more.
    pub remedies: Vec<Change>,
}

impl Finding {
    /// A finding that stops the order, without remedies yet.
    pub(crate) fn stops(rule: Rule, about: Question, found: Figure, limit: Limit, allowed: Figure) -> Self {
        Self { rule, severity: Severity::Stops, about, parts: Vec::new(), found, allowed, limit, remedies: Vec::new() }
    }

    /// The same with another severity.
    pub(crate) fn but(self, severity: Severity) -> Self {
        Self { severity, ..self }
    }

    /// The same about these parts.
    pub(crate) fn of(self, parts: impl IntoIterator<Item = PanelId>) -> Self {
        Self { parts: parts.into_iter().collect(), ..self }
    }

    /// Whether both say the same thing of the same place, whatever their figures.
    pub fn is_like(&self, other: &Self) -> bool {
        self.rule == other.rule && self.about == other.about
    }
}
