//! The assembly as a document: steps with their sentences, and what comes free.

use serde::Serialize;

use crate::cabinet::assembly::{Assembly, Direction, Disturbance};
use crate::cabinet::panel::PanelId;
use crate::order::parts::mm;
use crate::rules::tether::Tethers;
use crate::words;

/// How a unit goes together.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AssemblyDocument {
    /// Whether every part has its step and nothing moves that should not.
    pub proven: bool,
    /// The most people that a step takes.
    pub people: u8,
    /// How high over the floor the part reaches that is lifted highest.
    pub reaches_mm: f64,
    /// The steps in order.
    pub steps: Vec<StepDocument>,
    /// What to do when all parts are in.
    pub last_step: String,
    /// What comes free when the unit does not stand as it should.
    pub disturbed: Vec<DisturbedDocument>,
    /// What everybody who puts it together should know.
    #[cfg_attr(feature = "schema", schemars(with = "Vec<String>"))]
    pub cautions: [&'static str; 2],
}

/// One part going in.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StepDocument {
    /// The part.
    #[cfg_attr(feature = "schema", schemars(with = "String"))]
    pub part: PanelId,
    /// The straight moves by which it goes in, from clear of everything to its place, in their order.
    pub way: Vec<LegDocument>,
    /// How high over the floor it reaches on that way.
    pub reaches_mm: f64,
    /// The joints that it closes.
    pub closes: Vec<String>,
    /// Its mass.
    pub mass_g: i64,
    /// How many people carry it.
    pub people: u8,
    /// How many more hold or guide something meanwhile.
    pub helpers: u8,
    /// What to do.
    pub sentence: String,
}

/// One straight move.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LegDocument {
    /// The way it goes.
    pub moves: Direction,
    /// How far.
    pub travel_mm: f64,
}

/// What comes free when something is done to the unit.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DisturbedDocument {
    /// What is done.
    pub by: Disturbance,
    /// Parts that move at once.
    #[cfg_attr(feature = "schema", schemars(with = "Vec<String>"))]
    pub first: Vec<PanelId>,
    /// Parts that nothing holds any more when those are gone.
    #[cfg_attr(feature = "schema", schemars(with = "Vec<String>"))]
    pub then: Vec<PanelId>,
    /// Leaves that swing by their own weight, or lose the pivot by which they stand.
    #[cfg_attr(feature = "schema", schemars(with = "Vec<String>"))]
    pub swings: Vec<PanelId>,
    /// What to do about it.
    pub sentence: String,
}

impl AssemblyDocument {
    pub(super) fn of(assembly: &Assembly, tethers: Option<Tethers>) -> Self {
        let steps = assembly.steps.iter().map(|step| StepDocument {
            part: step.part,
            way: step.way.iter().map(|leg| LegDocument { moves: leg.moves, travel_mm: mm(leg.travel) }).collect(),
            reaches_mm: mm(step.reaches),
            closes: step.closes.iter().map(ToString::to_string).collect(),
            mass_g: step.mass.to_gram(),
            people: step.people,
            helpers: step.helpers,
            sentence: words::step(step, tethers),
        });
        let disturbed = assembly.disturbed.iter().map(|disturbed| DisturbedDocument {
            by: disturbed.by,
            first: disturbed.first.clone(),
            then: disturbed.then.clone(),
            swings: disturbed.swings.clone(),
            sentence: words::disturbed(disturbed),
        });
        Self {
            proven: assembly.is_proven(),
            people: assembly.people(),
            reaches_mm: mm(assembly.reaches()),
            steps: steps.collect(),
            last_step: words::last_step(tethers.is_some()),
            disturbed: disturbed.collect(),
            cautions: words::CAUTIONS,
        }
    }
}
