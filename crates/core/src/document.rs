//! The derived document: everything in one JSON value, with units in its names.
//!
//! Lengths are millimetres rounded to a hundredth, masses whole grams, money minor units.

mod assembly;
mod stability;

use serde::Serialize;

use crate::choice::Choice;
use crate::day::Day;
use crate::derive::{Built, Derived};
use crate::finding::Finding;
use crate::joint::JointKind;
use crate::layout::Picked;
use crate::outline::Outline;
use crate::panel::{Ease, Edge, GrainAxis, PanelId, Stock};
use crate::price::Price;
use crate::promise::Promise;
use crate::quantity::Length;
use crate::range::Key;
use crate::rules::tether;
use crate::seal::{Digest, canonical};
use crate::space::{Lie, Spot};
use crate::stability::push::{Push, pushes};
use crate::words;

pub use assembly::{AssemblyDocument, DisturbedDocument, StepDocument};
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

/// All panels and joints.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Parts {
    /// The panels in reading order.
    pub panels: Vec<PanelDocument>,
    /// The joints.
    pub joints: Vec<JointDocument>,
}

/// One panel.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PanelDocument {
    /// Which part.
    #[cfg_attr(feature = "schema", schemars(with = "String"))]
    pub id: PanelId,
    /// `body` or `back`.
    pub stock: &'static str,
    /// Direction of the face grain: `u` or `v`.
    pub grain: &'static str,
    /// Size of the blank with tabs: along u, along v.
    pub blank_mm: [f64; 2],
    /// Thickness with its film.
    pub thickness_mm: f64,
    /// Mass.
    pub mass_g: i64,
    /// Place of its lower left corner in the case: x, y, z.
    pub origin_mm: [f64; 3],
    /// `flat`, `facing` or `side`.
    pub lie: &'static str,
    /// What a hand eases on both faces.
    pub eased: Vec<EasedDocument>,
    /// The outer outline, counter-clockwise: u, v, bulge of each corner.
    pub outline: Vec<[f64; 3]>,
    /// The holes, clockwise.
    pub holes: Vec<Vec<[f64; 3]>>,
}

/// An edge that is eased by hand; the outline stays as it is.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EasedDocument {
    /// `bottom`, `right`, `top` or `left`.
    pub edge: &'static str,
    /// `chamfer` or `rounding`.
    pub how: &'static str,
    /// Width of the chamfer or radius of the rounding.
    pub size_mm: f64,
}

/// One joint.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct JointDocument {
    /// The part that goes in.
    #[cfg_attr(feature = "schema", schemars(with = "String"))]
    pub goes_in: PanelId,
    /// The part that takes it.
    #[cfg_attr(feature = "schema", schemars(with = "String"))]
    pub takes: PanelId,
    /// Which of several between the two.
    pub number: u8,
    /// `tab`, `ear`, `lap` or `pivot`.
    pub kind: &'static str,
    /// Clearance, both sides together.
    pub clearance_mm: f64,
    /// The material inside the taking part, lower corner: x, y, z.
    pub from_mm: [f64; 3],
    /// Its upper corner.
    pub to_mm: [f64; 3],
}

impl Document {
    pub(crate) fn of(derived: &Derived<'_>) -> Self {
        Self {
            format: "slotwright-derived",
            version: 1,
            range: derived.range.key.clone(),
            today: derived.today,
            choice: derived.choice.clone(),
            orderable: derived.orderable().is_some(),
            findings: derived.findings.iter().map(Said::of).collect(),
            built: derived.built.as_ref().zip(derived.assembly.as_ref()).and_then(|(built, assembly)| {
                let (picked, choice) = (Picked::of(derived.range, derived.choice)?, derived.choice);
                let tethered = tether::is_asked(picked, choice, &built.layout);
                let pushes = pushes(picked, choice, &built.layout, &built.case);
                Some(BuiltDocument::of(built, AssemblyDocument::of(assembly, tethered), pushes))
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
            price: built.price.clone(),
            promise: built.promise.clone(),
            assembly,
            parts_digest: parts.digest(),
            parts,
        }
    }
}

impl EasedDocument {
    fn of((edge, ease): (Edge, Ease)) -> Self {
        let (how, size) = match ease {
            Ease::Chamfer(width) => ("chamfer", width),
            Ease::Rounding(radius) => ("rounding", radius),
        };
        let edge = match edge {
            Edge::Bottom => "bottom",
            Edge::Right => "right",
            Edge::Top => "top",
            Edge::Left => "left",
        };
        Self { edge, how, size_mm: mm(size) }
    }
}

impl Parts {
    pub(crate) fn of(built: &Built) -> Self {
        let panels = built.case.panels.iter().zip(&built.parts).map(|(panel, (_, weighed))| {
            let (along_u, along_v) = panel.blank();
            PanelDocument {
                id: panel.id,
                stock: match panel.stock {
                    Stock::Body => "body",
                    Stock::Back => "back",
                },
                grain: match panel.grain {
                    GrainAxis::AlongU => "u",
                    GrainAxis::AlongV => "v",
                },
                blank_mm: [mm(along_u), mm(along_v)],
                thickness_mm: mm(panel.thickness),
                mass_g: weighed.mass.to_gram(),
                origin_mm: spot(panel.case_from_panel.origin),
                lie: match panel.case_from_panel.lie {
                    Lie::Flat => "flat",
                    Lie::Facing => "facing",
                    Lie::Side => "side",
                },
                eased: panel.eased().map(EasedDocument::of).collect(),
                outline: corners(&panel.outline()),
                holes: panel.holes().map(|hole| corners(&hole)).collect(),
            }
        });
        let joints = built.case.joints.iter().map(|joint| JointDocument {
            goes_in: joint.id.goes_in,
            takes: joint.id.takes,
            number: joint.id.number,
            kind: match joint.kind {
                JointKind::Tab => "tab",
                JointKind::Ear => "ear",
                JointKind::Lap => "lap",
                JointKind::Pivot => "pivot",
            },
            clearance_mm: mm(joint.clearance),
            from_mm: spot(joint.shared.from),
            to_mm: spot(joint.shared.to),
        });
        Self { panels: panels.collect(), joints: joints.collect() }
    }

    pub(crate) fn digest(&self) -> Digest {
        Digest::of(canonical(self).as_bytes())
    }
}

/// A length as documents show it; never −0.
fn mm(length: Length) -> f64 {
    length.to_hundredth_mm() + 0.0
}

fn spot(spot: Spot) -> [f64; 3] {
    [mm(spot.x), mm(spot.y), mm(spot.z)]
}

/// Bulges are rounded to a millionth: less than a hundredth of a millimetre on any arc here.
fn corners(outline: &Outline) -> Vec<[f64; 3]> {
    let bulge = |bulge: f64| crate::quantity::round_half_away(bulge * 1e6) / 1e6;
    outline.corners().iter().map(|corner| [mm(corner.at.u), mm(corner.at.v), bulge(corner.bulge)]).collect()
}
