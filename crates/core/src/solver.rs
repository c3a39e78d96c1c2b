//! For every answer to every question: can it be taken now, and if not, why. What else would have to
//! change is told by [`states`].

use serde::Serialize;

mod candidates;
pub mod carry;
mod effort;
mod explain;
pub mod goals;
pub mod kept;
mod no_good;
mod question_set;
pub mod remedy;
mod solve;
pub mod states;
pub mod track;
pub mod why;

use crate::choice::change::Change;
use crate::choice::question::Question;
use crate::choice::{Bowed, Choice, Fill, Hole, Hung};
use crate::range::{DimRange, Key, Model, Range};
use crate::rules::finding::Finding;
use crate::rules::first_stop;
use crate::units::quantity::Dim;

/// One answer.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Answer<S> {
    /// The change that takes it.
    pub change: Change,
    /// Whether it is the present one.
    pub taken: bool,
    /// Whether it can be taken.
    pub state: S,
}

/// The answers for one bay.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BayAnswers<S> {
    /// What it holds.
    pub fills: Vec<Answer<S>>,
    /// Its cable hole.
    pub holes: Vec<Answer<S>>,
    /// The device in it.
    pub devices: Vec<Answer<S>>,
}

/// All answers to all questions but the sizes.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Options<S> {
    /// Numbers of bays.
    pub bay_counts: Vec<Answer<S>>,
    /// Bay by bay.
    pub bays: Vec<BayAnswers<S>>,
    /// Boards of the back.
    pub backs: Vec<Answer<S>>,
    /// Finishes.
    pub finishes: Vec<Answer<S>>,
    /// Corner radii.
    pub corners: Vec<Answer<S>>,
    /// Heights of the plinth, none of them first; empty where none is on offer.
    pub plinths: Vec<Answer<S>>,
    /// Which ends are bowed; empty where the model has square ends alone.
    pub bowed: Vec<Answer<S>>,
}

impl<S> Options<S> {
    /// All of them, question by question.
    pub fn all(&self) -> impl Iterator<Item = &Answer<S>> {
        let bays = self.bays.iter().flat_map(|bay| bay.fills.iter().chain(&bay.holes).chain(&bay.devices));
        self.bay_counts
            .iter()
            .chain(bays)
            .chain(&self.backs)
            .chain(&self.finishes)
            .chain(&self.corners)
            .chain(&self.plinths)
            .chain(&self.bowed)
    }
}

/// A run of neighbouring sizes of the same state, if they are shut for the same reason.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Run<S> {
    /// First size.
    pub from: Dim,
    /// Last size.
    pub to: Dim,
    /// The state of the first of them.
    pub state: S,
}

/// All answers, each with its state.
fn lay<S>(range: &Range, choice: &Choice, state: &mut dyn FnMut(&Change, &Choice) -> S) -> Option<Options<S>> {
    let model = range.model(&choice.model)?;
    let mut answers = |changes: &mut dyn Iterator<Item = Change>| {
        let mut all = Vec::new();
        for change in changes {
            let changed = choice.with(&change, range);
            all.push(Answer { taken: changed == *choice, state: state(&change, &changed), change });
        }
        all
    };
    let bay_counts = answers(&mut (model.bays.least..=model.bays.most).map(Change::BayCount));
    let mut bays = Vec::new();
    for (bay, chosen) in (1..=u8::MAX).zip(&choice.bays) {
        bays.push(BayAnswers {
            fills: answers(&mut fills(model).map(|fill| Change::Fill { bay, fill })),
            holes: answers(&mut holes(range, chosen.hole.as_ref()).map(|hole| Change::Hole { bay, hole })),
            devices: answers(&mut devices(range).map(|device| Change::Device { bay, device })),
        });
    }
    let backs = answers(&mut model.backs.iter().cloned().map(Change::Back));
    let finishes = answers(&mut model.finishes.iter().cloned().map(Change::Finish));
    let corners = answers(&mut model.corner_radii_mm.iter().copied().map(Change::CornerRadiusMm));
    let plinths = answers(&mut plinths(model));
    let offered = if model.bow_mm.is_some() { Bowed::ALL.as_slice() } else { &[] };
    let bowed = answers(&mut offered.iter().map(|(_, bowed)| Change::Bowed(*bowed)));
    Some(Options { bay_counts, bays, backs, finishes, corners, plinths, bowed })
}

/// What stops each answer when nothing else changes, if anything does; `None` if the range lacks the model.
pub fn options(range: &Range, choice: &Choice) -> Option<Options<Option<Finding>>> {
    // The present answers to all questions are one choice.
    let own = first_stop(range, choice);
    lay(range, choice, &mut |_, changed| if changed == choice { own.clone() } else { first_stop(range, changed) })
}

/// What stops each size when nothing else changes, as runs from the model's least to its most.
///
/// Empty if the range lacks the model.
pub fn runs(range: &Range, choice: &Choice, size: Size) -> Vec<Run<Option<Finding>>> {
    let Some(model) = range.model(&choice.model) else {
        return Vec::new();
    };
    let mut runs: Vec<Run<Option<Finding>>> = Vec::new();
    for value in size.limits(model).values() {
        let changed = choice.with(&size.to(value), range);
        let state = first_stop(range, &changed).or_else(|| kept::breach(&changed, kept::own(size)));
        match runs.last_mut() {
            Some(run) if alike(run.state.as_ref(), state.as_ref()) => run.to = value,
            _ => runs.push(Run { from: value, to: value, state }),
        }
    }
    runs
}

/// Whether both are open, or stopped by the same.
fn alike(one: Option<&Finding>, other: Option<&Finding>) -> bool {
    match (one, other) {
        (Some(one), Some(other)) => one.is_like(other),
        (one, other) => one.is_none() && other.is_none(),
    }
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

/// No plinth, or one of each height; none of these where the model offers none.
fn plinths(model: &Model) -> impl Iterator<Item = Change> + use<> {
    let heights = model.plinth_mm.into_iter().flat_map(DimRange::values).map(Some);
    model.plinth_mm.map(|_| None).into_iter().chain(heights).map(Change::PlinthMm)
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
    /// How far bowed ends rise.
    Bow,
}

impl Size {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Width, Self::Height, Self::Depth, Self::Bow];

    /// Which question asks for it.
    pub const fn question(self) -> Question {
        match self {
            Self::Width => Question::Width,
            Self::Height => Question::Height,
            Self::Depth => Question::Depth,
            Self::Bow => Question::Bow,
        }
    }

    /// The model's limits for it.
    pub const fn limits(self, model: &Model) -> DimRange {
        match self {
            Self::Width => model.width_mm,
            Self::Height => model.height_mm,
            Self::Depth => model.depth_mm,
            Self::Bow => model.bows(),
        }
    }

    /// The present value.
    pub const fn of(self, choice: &Choice) -> Dim {
        match self {
            Self::Width => choice.width_mm,
            Self::Height => choice.height_mm,
            Self::Depth => choice.depth_mm,
            Self::Bow => choice.bow_mm,
        }
    }

    /// The change to a value.
    pub const fn to(self, value: Dim) -> Change {
        match self {
            Self::Width => Change::WidthMm(value),
            Self::Height => Change::HeightMm(value),
            Self::Depth => Change::DepthMm(value),
            Self::Bow => Change::BowMm(value),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::sample::{Wanted, choices};
    use crate::testing::demo;

    /// The set of a size does not depend on that size: the page takes it over while one is dragged.
    #[test]
    fn the_set_of_a_size_is_the_same_from_wherever_it_is_asked() {
        let range = demo();
        for choice in choices(&range, 41, Wanted::Any).take(60) {
            let Some(model) = range.model(&choice.model) else { continue };
            for size in Size::ALL {
                let limits = size.limits(model);
                for value in [limits.least, limits.most, Dim::mm(0)] {
                    let other = choice.with(&size.to(value), &range);
                    assert_eq!(
                        runs(&range, &other, size),
                        runs(&range, &choice, size),
                        "{size:?} {value:?} {choice:?}"
                    );
                }
            }
        }
    }
}
