//! Findings: the results of checking rules, as data. [`crate::words`] turns them into sentences.

use core::fmt;

use serde::Serialize;

use crate::cabinet::panel::PanelId;
use crate::choice::change::Change;
use crate::choice::question::Question;
use crate::rules::id::Rule;
use crate::units::quantity::finite;
use crate::units::rounding::round_half_away;

pub use crate::units::figure::{Figure, Unit};

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

/// Parts of one to which values are rounded, and to which at the finest.
const ROUNDED: f64 = 100.0;
const FINEST: f64 = 1e6;

/// Both figures rounded alike, as finely as it takes for them to differ.
fn rounded(found: Figure, allowed: Figure) -> (Figure, Figure) {
    let mut parts = ROUNDED;
    loop {
        // Without a sign before zero.
        let to = |value: f64| round_half_away(finite(value) * parts) / parts + 0.0;
        let pair = (to(found.value), to(allowed.value));
        if pair.0.total_cmp(&pair.1).is_ne() || parts >= FINEST {
            return (Figure { value: pair.0, ..found }, Figure { value: pair.1, ..allowed });
        }
        parts *= 10.0;
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

/// The question to which a part owes that it is there: what a finding about the part is about.
pub(super) const fn asked_by(part: PanelId) -> Question {
    match part {
        PanelId::Bearer(_) | PanelId::PlinthFront | PanelId::PlinthRear => Question::Plinth,
        PanelId::Shelf { bay, .. } | PanelId::Leaf(bay) | PanelId::Stop(bay) => Question::Bay(bay),
        PanelId::Stave { .. } => Question::Bow,
        PanelId::Stile(_) => Question::Height,
        PanelId::Back | PanelId::BaseLower | PanelId::BaseUpper | PanelId::Upright(_) | PanelId::Top => Question::Back,
    }
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
    /// How many people lift no more than what is allowed, where that limits a package, and one more would lift it, up to
    /// three; without them its carrier limits it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lifted_by: Option<u8>,
    /// Changes that were tried: after each this finding is gone, and none has come that matters as much or more.
    pub remedies: Vec<Change>,
}

impl Finding {
    /// A finding that stops the order, without remedies yet.
    pub(crate) fn stops(rule: Rule, about: Question, found: Figure, limit: Limit, allowed: Figure) -> Self {
        let (found, allowed) = rounded(found, allowed);
        Self {
            rule,
            severity: Severity::Stops,
            about,
            parts: Vec::new(),
            found,
            allowed,
            limit,
            lifted_by: None,
            remedies: Vec::new(),
        }
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
