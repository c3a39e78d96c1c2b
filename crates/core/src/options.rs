//! For every answer to every question: can it be taken now, and if not, why.

use serde::Serialize;

use crate::change::Change;
use crate::choice::{Choice, Fill, Hole, Hung};
use crate::finding::Finding;
use crate::quantity::Dim;
use crate::range::{DimRange, Key, Model, Range};
use crate::rules::judge_stops;

/// Whether an answer can be taken.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum State {
    /// It can be taken now, and nothing else changes.
    Open,
    /// It cannot: the first reason.
    Shut(Finding),
}

impl State {
    /// Whether it can be taken.
    pub fn is_open(&self) -> bool {
        matches!(self, Self::Open)
    }
}

/// One answer.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Answer {
    /// The change that takes it.
    pub change: Change,
    /// Whether it is the present one.
    pub taken: bool,
    /// Whether it can be taken.
    pub state: State,
}

/// A run of neighbouring sizes that are all open or all shut for the same reason.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Run {
    /// First size.
    pub from: Dim,
    /// Last size.
    pub to: Dim,
    /// Whether they can be taken; the reason is that of the first size.
    pub state: State,
}

/// The answers for one bay.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BayAnswers {
    /// What it holds.
    pub fills: Vec<Answer>,
    /// Its cable hole.
    pub holes: Vec<Answer>,
    /// The device in it.
    pub devices: Vec<Answer>,
}

/// All answers to all questions.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Options {
    /// Numbers of bays.
    pub bay_counts: Vec<Answer>,
    /// Bay by bay.
    pub bays: Vec<BayAnswers>,
    /// Boards of the back.
    pub backs: Vec<Answer>,
    /// Finishes.
    pub finishes: Vec<Answer>,
    /// Corner radii.
    pub corners: Vec<Answer>,
}

/// What already stops the present choice; an answer is shut only by what it adds.
struct Asked<'a> {
    range: &'a Range,
    choice: &'a Choice,
    stops: Vec<Finding>,
}

impl<'a> Asked<'a> {
    fn of(range: &'a Range, choice: &'a Choice) -> Self {
        Self { range, choice, stops: judge_stops(range, choice).findings }
    }

    fn state(&self, choice: &Choice) -> State {
        let mut stops = judge_stops(self.range, choice).findings.into_iter();
        let added = stops.find(|finding| !self.stops.iter().any(|known| known.is_like(finding)));
        added.map_or(State::Open, State::Shut)
    }

    fn answers(&self, changes: impl IntoIterator<Item = Change>) -> Vec<Answer> {
        changes
            .into_iter()
            .map(|change| {
                let changed = self.choice.with(&change, self.range);
                Answer { taken: changed == *self.choice, state: self.state(&changed), change }
            })
            .collect()
    }
}

/// The answers to all questions but the sizes; `None` if the range lacks the model.
pub fn options(range: &Range, choice: &Choice) -> Option<Options> {
    let model = range.model(&choice.model)?;
    let asked = Asked::of(range, choice);
    let bays = (1..=u8::MAX).zip(&choice.bays).map(|(bay, chosen)| BayAnswers {
        fills: asked.answers(fills(model).map(|fill| Change::Fill { bay, fill })),
        holes: asked.answers(holes(range, chosen.hole.as_ref()).map(|hole| Change::Hole { bay, hole })),
        devices: asked.answers(devices(range).map(|device| Change::Device { bay, device })),
    });
    Some(Options {
        bay_counts: asked.answers((model.bays.least..=model.bays.most).map(Change::BayCount)),
        bays: bays.collect(),
        backs: asked.answers(model.backs.iter().cloned().map(Change::Back)),
        finishes: asked.answers(model.finishes.iter().cloned().map(Change::Finish)),
        corners: asked.answers(model.corner_radii_mm.iter().copied().map(Change::CornerRadiusMm)),
    })
}

/// What a bay can hold in a model.
fn fills(model: &Model) -> impl Iterator<Item = Fill> {
    let leaf: &[Hung] = if model.leaves_most > 0 { &[Hung::Left, Hung::Right] } else { &[] };
    let shelves = (1..=model.shelves_most).map(Fill::Shelves);
    core::iter::once(Fill::Open).chain(shelves).chain(leaf.iter().copied().map(Fill::Leaf))
}

/// No hole, or one of each kind where the present one is.
fn holes<'a>(range: &'a Range, now: Option<&Hole>) -> impl Iterator<Item = Option<Hole>> + use<'a> {
    let offset_mm = now.map_or(Dim::mm(0), |hole| hole.offset_mm);
    let kinds = range.holes.iter().map(move |kind| Some(Hole { kind: kind.key.clone(), offset_mm }));
    core::iter::once(None).chain(kinds)
}

/// No device, or one of those that the range names.
fn devices(range: &Range) -> impl Iterator<Item = Option<Key>> + '_ {
    core::iter::once(None).chain(range.devices.iter().map(|device| Some(device.key.clone())))
}

/// A size of the unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Size {
    /// From left to right.
    Width,
    /// From bottom to top.
    Height,
    /// From front to back.
    Depth,
}

impl Size {
    /// The model's limits for it.
    pub const fn limits(self, model: &Model) -> DimRange {
        match self {
            Self::Width => model.width_mm,
            Self::Height => model.height_mm,
            Self::Depth => model.depth_mm,
        }
    }

    /// The present value.
    pub const fn of(self, choice: &Choice) -> Dim {
        match self {
            Self::Width => choice.width_mm,
            Self::Height => choice.height_mm,
            Self::Depth => choice.depth_mm,
        }
    }

    /// The change to a value.
    pub const fn to(self, value: Dim) -> Change {
        match self {
            Self::Width => Change::WidthMm(value),
            Self::Height => Change::HeightMm(value),
            Self::Depth => Change::DepthMm(value),
        }
    }
}

/// The whole valid set of a size, as runs from the model's least to its most.
///
/// Empty if the range lacks the model.
pub fn runs(range: &Range, choice: &Choice, size: Size) -> Vec<Run> {
    let Some(model) = range.model(&choice.model) else {
        return Vec::new();
    };
    let asked = Asked::of(range, choice);
    let mut runs: Vec<Run> = Vec::new();
    for value in size.limits(model).values() {
        let state = asked.state(&choice.with(&size.to(value), range));
        match runs.last_mut() {
            Some(run) if alike(&run.state, &state) => run.to = value,
            _ => runs.push(Run { from: value, to: value, state }),
        }
    }
    runs
}

fn alike(a: &State, b: &State) -> bool {
    match (a, b) {
        (State::Open, State::Open) => true,
        (State::Shut(a), State::Shut(b)) => a.is_like(b),
        _ => false,
    }
}
