//! The derived document: everything in one JSON value, with units in its names.
//!
//! Lengths are millimetres rounded to a hundredth, masses whole grams, money minor units.

mod assembly;
mod stability;

use serde::Serialize;

use crate::business::built::Built;
use crate::business::price::Price;
use crate::business::promise::Promise;
use crate::cabinet::layout::Picked;
use crate::choice::Choice;
use crate::input::seal::Digest;
use crate::order::derive::Derived;
use crate::order::parts::{Parts, spot};
use crate::range::Key;
use crate::rules::finding::Finding;
use crate::rules::tether::Tethers;
use crate::statics::detent::leaf_opens;
use crate::statics::stability::push::{Push, pushes};
use crate::units::day::Day;
use crate::words;

pub use assembly::{AssemblyDocument, DisturbedDocument, LegDocument, StepDocument};
use stability::newton;
pub use stability::{PushDocument, StabilityDocument};

/// Everything that is known about a choice.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Document {
    /// Always `slotwright-derived`.
    pub format: &'static str,
    /// Version of this format.
    pub version: u32,
    /// Key of the range.
    pub range: Key,
    /// The day of asking.
    pub today: Day,
    /// What was picked.
    pub choice: Choice,
    /// Whether nothing stops the order.
    pub orderable: bool,
    /// What the rules say.
    pub findings: Vec<Said>,
    /// What can be built of it.
    pub built: Option<BuiltDocument>,
}

/// A finding with its sentence.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Said {
    /// The finding's figures.
    #[serde(flatten)]
    pub finding: Finding,
    /// The same in words.
    pub sentence: String,
}

/// What can be built of a choice.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BuiltDocument {
    /// Mass of the whole.
    pub mass_g: i64,
    /// Centre of gravity, leaves closed: x, y, z.
    pub centre_mm: [f64; 3],
    /// How easily it tips.
    pub stability: StabilityDocument,
    /// What opens a leaf by its finger hole against what keeps it shut, the most of all leaves: a calculation, no test; `null` where
    /// nothing does.
    pub leaf_opens_n: Option<f64>,
    /// What it costs.
    pub price: Price,
    /// When it can be there.
    pub promise: Option<Promise>,
    /// Outlines and joints.
    pub parts: Parts,
    /// How it goes together.
    pub assembly: AssemblyDocument,
    /// Digest of the outlines and joints.
    pub parts_digest: Digest,
}

impl Document {
    /// All of it as a document, for `slotwright derive` and for comparing machines.
    pub fn of(derived: &Derived<'_>) -> Self {
        Self {
            format: "slotwright-derived",
            version: 2,
            range: derived.range.key.clone(),
            today: derived.today,
            choice: derived.choice.clone(),
            orderable: derived.orderable().is_some(),
            findings: derived.findings.iter().map(Said::of).collect(),
            built: derived.built.as_ref().zip(derived.assembly.as_ref()).and_then(|(built, assembly)| {
                let (picked, choice) = (Picked::of(derived.range, derived.choice)?, derived.choice);
                let pushes = pushes(picked, choice, &built.layout, &built.cut.parts);
                let opens = leaf_opens(picked, choice, &built.layout);
                let tethers = derived.is_tethered().then(|| Tethers::of(&built.layout, &built.cut.case)).flatten();
                Some(BuiltDocument {
                    leaf_opens_n: opens.map(newton),
                    ..BuiltDocument::of(built, AssemblyDocument::of(assembly, tethers), pushes)
                })
            }),
        }
    }
}

impl Said {
    fn of(finding: &Finding) -> Self {
        Self { sentence: words::sentence(finding), finding: finding.clone() }
    }
}

impl BuiltDocument {
    fn of(built: &Built, assembly: AssemblyDocument, pushes: [Push; 4]) -> Self {
        let parts = Parts::of(built);
        Self {
            mass_g: built.whole.mass.to_gram(),
            centre_mm: spot(built.whole.centre),
            stability: StabilityDocument::of(pushes),
            leaf_opens_n: None,
            price: built.price.clone(),
            promise: built.promise.clone(),
            assembly,
            parts_digest: parts.digest(),
            parts,
        }
    }
}
