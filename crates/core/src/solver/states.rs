//! Open, with other changes, or shut: the exact state of every answer, with the smallest set of other
//! changes that it needs.

use core::cell::{Cell, OnceCell, RefCell};

use serde::Serialize;

use super::candidates::{self, Candidates, ChoiceSpace};
use super::effort::EFFORT;
use super::kept::{self, Beyond, Kept, Visit, breach, broken};
use super::no_good::{NoGood, NoGoods};
use super::question_set::{self, QuestionSet};
use super::solve::{self, Outcome, SearchSpace};
use super::{Options, Run, Size, alike, lay};
use crate::choice::change::Change;
use crate::choice::question::Question;
use crate::choice::{Bay, Choice};
use crate::range::{Model, Range};
use crate::rules::finding::{Figure, Finding, Limit};
use crate::rules::{Judged, Rule, can_be_made, first_stop, judge_for_search};
use crate::units::quantity::Dim;

/// Whether an answer can be taken.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum State {
    /// It can be taken now, and nothing else changes.
    Open,
    /// It can be taken together with other changes.
    Shifts {
        /// What stops it alone.
        reason: Finding,
        /// The smallest set of other changes that it needs, the least important ones of their number, in
        /// the order in which they are done.
        changes: Vec<Change>,
    },
    /// It cannot be had, whatever other answers are given: every one was ruled out, of shares those of one bay at a
    /// time.
    ///
    /// [`why_shut`](super::why::why_shut) tells why.
    Shut {
        /// What stops it alone.
        reason: Finding,
    },
    /// Whether it can be had was not found out: the search was given up.
    Unfound {
        /// What stops it alone.
        reason: Finding,
    },
}

impl State {
    /// Whether it can be taken and nothing else changes.
    pub fn is_open(&self) -> bool {
        matches!(self, Self::Open)
    }

    /// What stops it alone, if anything.
    pub fn reason(&self) -> Option<&Finding> {
        match self {
            Self::Open => None,
            Self::Shifts { reason, .. } | Self::Shut { reason } | Self::Unfound { reason } => Some(reason),
        }
    }
}

/// How far an answer can be reached.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Reach {
    /// It can be taken now, and nothing else changes.
    Open,
    /// It can be taken together with other changes.
    Shifts,
    /// It cannot be had.
    Shut,
    /// No way to it was found, and not all were tried.
    Unfound,
}

/// How far a size can be reached, and what stops it alone.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Reached {
    /// How far.
    pub reach: Reach,
    /// What stops it alone, if anything.
    pub reason: Option<Finding>,
}

/// A choice whose answers are asked for.
pub(super) struct AnswerSearch<'a> {
    range: &'a Range,
    choice: &'a Choice,
    /// The choice itself, judged when its answer to the first question is asked for.
    own: OnceCell<Judged<'a>>,
    candidates: Candidates,
    pins: QuestionSet,
    visit: Option<&'a Visit>,
    /// The rules that count: of what was given, what the choice keeps now.
    rules: u64,
    /// Steps that are left for all answers.
    left: Cell<u32>,
    /// Faults of the choices that were judged. They name shares by the numbers of [`Candidates`], which are alike for
    /// all answers: none of those that are asked for changes the shares that another one begins with.
    faults: RefCell<NoGoods>,
}

impl<'a> AnswerSearch<'a> {
    pub(super) fn of(range: &'a Range, model: &Model, choice: &'a Choice, kept: Kept<'a>) -> Self {
        let (pins, visit) = (QuestionSet::of_all(kept.pins).minus(FIXED), kept.visit);
        let left = Cell::new(EFFORT.together);
        let (candidates, faults) =
            (Candidates::of(range, model, choice), RefCell::new(NoGoods::none(candidates::LINES)));
        let rules = !broken(range, choice, visit);
        let (own, candidates) = (OnceCell::new(), candidates.visited(visit));
        Self { range, choice, own, candidates, pins, visit, rules, left, faults }
    }

    /// The rules that count where a question is asked.
    pub(super) fn rules(&self, asked: QuestionSet) -> u64 {
        let sizes = Size::ALL.into_iter().filter(|size| !asked.meeting(QuestionSet::of(size.question())).is_empty());
        sizes.fold(self.rules, |rules, size| rules & !kept::alone(size) | kept::own(size))
    }

    /// The choice with an answer taken, as a search space, and the questions that may shift.
    pub(super) fn space<'b>(&'b self, choice: &'b Choice, asked: QuestionSet) -> (ChoiceSpace<'b>, QuestionSet) {
        self.keeping(choice, asked, self.pins)
    }

    /// The same with other pins.
    fn keeping<'b>(
        &'b self,
        choice: &'b Choice,
        asked: QuestionSet,
        pins: QuestionSet,
    ) -> (ChoiceSpace<'b>, QuestionSet) {
        let fixed = pins.and(asked);
        let stays = |(bay, chosen): &(u8, &Bay)| {
            chosen.device.is_some() || !QuestionSet::of_bay(*bay).meeting(fixed).is_empty()
        };
        let stay = (1..=u8::MAX).zip(&choice.bays).filter(stays);
        let last = stay.map(|(bay, _)| usize::from(bay)).max().unwrap_or(0);
        let space = ChoiceSpace { range: self.range, candidates: &self.candidates, choice, bays_least: last };
        (space, SHIFTING.minus(fixed))
    }

    /// The state of a choice with an answer taken.
    pub(super) fn state(&self, choice: &Choice, asked: QuestionSet) -> State {
        if let Some(reason) = self.drops_kept_bay(choice, self.pins) {
            return State::Shut { reason };
        }
        let rules = self.rules(asked);
        let judge = || judge_for_search(self.range, choice, rules);
        // The present answers to all questions are one choice.
        let other = (choice != self.choice).then(judge);
        let judged = other.as_ref().unwrap_or_else(|| self.own.get_or_init(judge));
        let reason = judged.findings.first().cloned().or_else(|| breach(choice, rules));
        let Some(reason) = reason else { return State::Open };
        self.learn(&self.space(choice, asked).0, judged, choice);
        match self.smallest(choice, asked, (rules, self.pins)) {
            Outcome::Point((_, point)) => State::Shifts { reason, changes: candidates::changes(choice, &point) },
            Outcome::Nothing(_) => State::Shut { reason },
            Outcome::GivenUp => State::Unfound { reason },
        }
    }

    /// What stops a choice with an answer taken, if nothing else changes.
    pub(super) fn stops_alone(&self, choice: &Choice, asked: QuestionSet) -> Option<Finding> {
        first_stop(self.range, choice).or_else(|| breach(choice, self.rules(asked)))
    }

    /// How a choice goes beyond what was given for the visit.
    pub(super) fn beyond(&self, choice: &Choice) -> impl Iterator<Item = Beyond> + use<> {
        self.visit.map(|visit| visit.beyond(self.range, choice)).into_iter().flatten()
    }

    /// As many units may be priced and dated anew as at first.
    pub(super) fn share_anew(&self) {
        self.candidates.share_anew();
    }

    /// The fewest other questions of which an answer needs others, with some rules and pins.
    pub(super) fn smallest(
        &self,
        choice: &Choice,
        asked: QuestionSet,
        (rules, pins): (u64, QuestionSet),
    ) -> Outcome<(QuestionSet, Choice)> {
        let (space, free) = self.keeping(choice, asked, pins);
        let found = solve::smallest(&space, choice, (free, rules & !kept::VISIT), (&self.faults, &self.left));
        // Mostly what is found suits the visit too; only where it does not is it searched again.
        let breaks = |point: &Choice| self.visit.is_some_and(|visit| visit.broken(self.range, point) & rules != 0);
        match &found {
            // Where no more units are priced, nothing more can be found.
            Outcome::Point((_, point)) if breaks(point) && self.candidates.are_spent() => Outcome::GivenUp,
            Outcome::Point((_, point)) if breaks(point) => {
                let few = Cell::new(EFFORT.kept_steps);
                solve::smallest(&space, choice, (free, rules), (&self.faults, &few))
            }
            _ => found,
        }
    }

    /// A choice with an answer that some rules and pins allow, whatever else changes.
    pub(super) fn any(
        &self,
        choice: &Choice,
        asked: QuestionSet,
        (rules, pins): (u64, QuestionSet),
    ) -> Outcome<Choice> {
        if self.drops_kept_bay(choice, pins).is_some() {
            return Outcome::Nothing(NoGood::default());
        }
        let (space, free) = self.keeping(choice, asked, pins);
        solve::any(&space, choice, free, rules, &self.faults)
    }

    /// What stops an answer that leaves out a bay of which something is kept.
    pub(super) fn drops_kept_bay(&self, choice: &Choice, pins: QuestionSet) -> Option<Finding> {
        let bays = |choice: &Choice| u8::try_from(choice.bays.len()).unwrap_or(u8::MAX);
        let is_kept = |bay: &u8| !QuestionSet::of_bay(*bay).meeting(pins).is_empty();
        let last = (bays(choice).saturating_add(1)..=bays(self.choice)).rev().find(is_kept)?;
        let (found, least) = (Figure::count(bays(choice)), Figure::count(last));
        Some(Finding::stops(Rule::FitOutCount, Question::Bays, found, Limit::AtLeast, least))
    }

    /// Remembers what is wrong with a choice, if nothing is known of it yet.
    fn learn(&self, space: &ChoiceSpace<'_>, judged: &Judged<'_>, choice: &Choice) {
        let at = space.at(choice);
        if self.faults.borrow().closed(&at, QuestionSet::NONE, u64::MAX).is_some() {
            return;
        }
        for proof in space.proofs(judged, choice, &at) {
            self.faults.borrow_mut().add(&proof);
        }
    }

    /// The whole set of a size.
    pub(super) fn runs(&self, size: Size, values: impl Iterator<Item = Dim>) -> Vec<Run<Reached>> {
        let mut runs: Vec<Run<Reached>> = Vec::new();
        let mut neighbours = Neighbours::default();
        for value in values {
            let changed = self.choice.with(&size.to(value), self.range);
            let asked = QuestionSet::of(size.question());
            let reason = self.stops_alone(&changed, asked);
            let reach = if reason.is_none() { Reach::Open } else { self.reach(&changed, size, value, &mut neighbours) };
            match runs.last_mut() {
                Some(Run { to, state, .. })
                    if state.reach == reach && alike(state.reason.as_ref(), reason.as_ref()) =>
                {
                    *to = value;
                }
                _ => runs.push(Run { from: value, to: value, state: Reached { reach, reason } }),
            }
        }
        runs
    }

    /// Whether a size that is not open can be had at all. What is known of its neighbours often tells.
    fn reach(&self, changed: &Choice, size: Size, value: Dim, neighbours: &mut Neighbours) -> Reach {
        if let Some((from, to)) = neighbours.nothing
            && (from..=to).contains(&value.in_tenths())
        {
            return Reach::Shut;
        }
        let asked = QuestionSet::of(size.question());
        let rules = self.rules(asked);
        let holds = |choice: &Choice| {
            let choice = choice.with(&size.to(value), self.range);
            can_be_made(self.range, &choice) && broken(self.range, &choice, self.visit) & rules == 0
        };
        if neighbours.point.as_ref().is_some_and(holds) {
            return Reach::Shifts;
        }
        match self.smallest(changed, asked, (rules, self.pins)) {
            Outcome::Point((_, point)) => {
                neighbours.point = Some(point);
                Reach::Shifts
            }
            Outcome::Nothing(nothing) => {
                neighbours.nothing = Some(nothing.span(question_set::place(size.question())));
                Reach::Shut
            }
            Outcome::GivenUp => Reach::Unfound,
        }
    }
}

/// What is known of the neighbours of a size.
#[derive(Default)]
struct Neighbours {
    /// A choice that holds.
    point: Option<Choice>,
    /// The sizes between which none does.
    nothing: Option<(i32, i32)>,
}

/// What is never shifted: another model is another unit, and the place is what the customer has.
const FIXED: QuestionSet = QuestionSet::of(Question::Model).and(QuestionSet::of(Question::Place));

/// Everything that may be.
const SHIFTING: QuestionSet = QuestionSet::all().minus(FIXED);

/// The state of every answer; `None` if the range lacks the model. What is kept is never shifted.
pub fn states<'a>(range: &'a Range, choice: &'a Choice, kept: impl Into<Kept<'a>>) -> Option<Options<State>> {
    let answers = AnswerSearch::of(range, range.model(&choice.model)?, choice, kept.into());
    lay(range, choice, &mut |change, changed| {
        answers.state(changed, change.question().map_or(QuestionSet::NONE, QuestionSet::of))
    })
}

/// The state of one answer; `None` if the range lacks the model, or the change takes another one.
pub fn state<'a>(range: &'a Range, choice: &'a Choice, change: &Change, kept: impl Into<Kept<'a>>) -> Option<State> {
    let answers = AnswerSearch::of(range, range.model(&choice.model)?, choice, kept.into());
    Some(answers.state(&choice.with(change, range), QuestionSet::of(change.question()?)))
}

/// The whole set of a size, as runs from the model's least to its most. What is kept is never shifted.
///
/// Empty if the range lacks the model.
pub fn reaches<'a>(range: &'a Range, choice: &'a Choice, size: Size, kept: impl Into<Kept<'a>>) -> Vec<Run<Reached>> {
    let Some(model) = range.model(&choice.model) else {
        return Vec::new();
    };
    AnswerSearch::of(range, model, choice, kept.into()).runs(size, size.limits(model).values())
}

/// The nearest choice that can be made: the present one if it can, else with the fewest questions answered
/// anew. `None` if there is none, or the range lacks the model.
pub fn nearest<'a>(range: &'a Range, choice: &'a Choice, kept: impl Into<Kept<'a>>) -> Option<Vec<Change>> {
    let model = range.model(&choice.model)?;
    let answers = AnswerSearch::of(range, model, choice, kept.into());
    let way = |rules| match answers.smallest(choice, QuestionSet::NONE, (rules, answers.pins)) {
        Outcome::Point((_, point)) => Some(candidates::changes(choice, &point)),
        Outcome::Nothing(_) | Outcome::GivenUp => None,
    };
    // One that can be made stays as it is, though it may not suit its wall. Another one suits it, if any does.
    if can_be_made(range, choice) {
        way(answers.rules)
    } else {
        way(answers.rules | kept::own(Size::Width)).or_else(|| way(answers.rules))
    }
}

#[cfg(test)]
mod tests;
