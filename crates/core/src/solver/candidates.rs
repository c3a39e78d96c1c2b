//! A choice as a search space: what each question can be answered with, and what is wrong with a choice.

mod numbers;
mod others;

use alloc::collections::BTreeMap;
use core::cell::Cell;

use super::effort::EFFORT;
use super::kept::{Given, VISIT, Visit};
use super::no_good::{At, NoGood};
use super::question_set::{QuestionSet, place};
use super::solve::{Answers, SearchSpace};
use super::{Size, plinths};
use crate::choice::change::Change;
use crate::choice::question::Question;
use crate::choice::{BAYS_MOST, Bay, Bowed, Choice, SHARE_MOST};
use crate::range::{Model, Range};
use crate::rules::dependencies::{Context, Direction, Influence};
use crate::rules::finding::{Finding, Limit};
use crate::rules::place::breaches;
use crate::rules::{Judged, Rule, each_dependency, judge_for_search, judge_stops};
use crate::units::quantity::Dim;

use numbers::{
    board_number, bowed_number, device_number, fill_number, finish_number, hole_number, number_of, plinth_number,
    shared,
};
use others::{fill_candidates, hole_candidates, nearest};

/// What every question of a choice can be answered with, the nearest to its present answer first.
#[derive(Clone, Debug)]
pub(crate) struct Candidates {
    /// Each with the number by which it is told apart from others.
    sets: BTreeMap<u8, Vec<(Change, i32)>>,
    lines: BTreeMap<u8, Vec<i32>>,
    influence: Influence,
    /// What was given for the visit, and how many units may still be priced and dated for it.
    visit: Option<Visit>,
    trials: Cell<u32>,
}

/// A choice with one answer taken, as a search space.
#[derive(Clone, Copy, Debug)]
pub(crate) struct ChoiceSpace<'a> {
    pub(crate) range: &'a Range,
    pub(crate) candidates: &'a Candidates,
    /// The choice with the answer: new bays are like its next one.
    pub(crate) choice: &'a Choice,
    /// No fewer bays than that: what is asked for, pinned, or holds a device stays.
    pub(crate) bays_least: usize,
}

impl Candidates {
    /// All answers to the questions of a choice.
    pub(crate) fn of(range: &Range, model: &Model, choice: &Choice) -> Self {
        let (mut sets, mut lines) = (BTreeMap::new(), BTreeMap::new());
        for size in Size::ALL {
            let now = size.of(choice).in_tenths();
            lines.insert(place(size.question()), nearest(size.limits(model).values().map(Dim::in_tenths), now));
        }
        let mut set = |question, changes: Vec<Change>| {
            let numbered = changes.into_iter().map(|change| (change.clone(), number_of(range, &change))).collect();
            sets.insert(place(question), numbered)
        };
        let other =
            |changes: Vec<Change>| changes.into_iter().filter(|change| choice.with(change, range) != *choice).collect();
        set(Question::Corners, other(model.corner_radii_mm.iter().copied().map(Change::CornerRadiusMm).collect()));
        let without = choice.plinth_mm.map(|_| Change::PlinthMm(None)).into_iter();
        set(Question::Plinth, other(without.chain(plinths(model).skip(1)).collect()));
        let bowed = if model.bow_mm.is_some() { Bowed::ALL.as_slice() } else { &[] };
        set(Question::Bowed, other(bowed.iter().map(|(_, bowed)| Change::Bowed(*bowed)).collect()));
        set(Question::Back, other(model.backs.iter().cloned().map(Change::Back).collect()));
        set(Question::Finish, other(model.finishes.iter().cloned().map(Change::Finish).collect()));
        let now = i32::try_from(choice.bays.len()).unwrap_or(i32::MAX);
        let counts = nearest((model.bays.least..=model.bays.most).map(i32::from), now);
        set(
            Question::Bays,
            counts.into_iter().filter_map(|count| u8::try_from(count).ok().map(Change::BayCount)).collect(),
        );
        // One bay becomes narrower or wider than the others. Their numbers are bits of a set: see `NoGood::extend`.
        const { assert!(SHARE_MOST as usize * BAYS_MOST <= u64::BITS as usize, "more shares than bits") };
        let shares = (1..=SHARE_MOST)
            .flat_map(|share| (1..=u8::try_from(BAYS_MOST).unwrap_or(0)).map(move |bay| Change::Share { bay, share }));
        set(Question::Shares, shares.collect());
        let next = choice.next_bay();
        for bay in 1..=u8::try_from(BAYS_MOST).unwrap_or(0) {
            let here = choice.bays.get(usize::from(bay) - 1);
            let chosen = here.unwrap_or(&next);
            // A new bay is like the last one, which may have another answer by then: this one is another way there.
            let like = here.is_none().then_some(chosen);
            let fills = like.map(|like| like.fill).into_iter().chain(fill_candidates(model, chosen.fill));
            set(Question::Bay(bay), fills.map(|fill| Change::Fill { bay, fill }).collect());
            let holes = like.map(|like| like.hole.clone()).into_iter().chain(hole_candidates(range, chosen));
            set(Question::Hole(bay), holes.map(|hole| Change::Hole { bay, hole }).collect());
            let device = chosen.device.is_some();
            set(Question::Device(bay), device.then_some(Change::Device { bay, device: None }).into_iter().collect());
        }
        let trials = Cell::new(EFFORT.kept_trials);
        Self { sets, lines, influence: Influence::of(range, model, choice), visit: None, trials }
    }
}

impl SearchSpace for ChoiceSpace<'_> {
    type Point = Choice;

    fn at(&self, point: &Choice) -> At {
        let mut at = At::NOWHERE;
        let mut set = |question, answer| at.set(place(question), answer);
        for size in Size::ALL {
            set(size.question(), size.of(point).in_tenths());
        }
        set(Question::Corners, point.corner_radius_mm.in_tenths());
        set(Question::Plinth, plinth_number(point.plinth_mm));
        set(Question::Bowed, bowed_number(point.bowed));
        set(Question::Back, board_number(self.range, &point.back));
        set(Question::Finish, finish_number(self.range, &point.finish));
        set(Question::Bays, i32::try_from(point.bays.len()).unwrap_or(i32::MAX));
        set(
            Question::Shares,
            (1..=u8::MAX).zip(&point.bays).fold(0, |all, (bay, chosen)| shared(all, bay, chosen.share)),
        );
        // Bays beyond the most share a place; a choice with them cannot be made, whatever they hold.
        for (bay, chosen) in (1..=u8::MAX).zip(&point.bays) {
            self.set_bay(&mut at, bay, chosen);
        }
        at
    }

    fn faults(&self, point: &Choice, at: &At, rules: u64) -> Option<Vec<NoGood>> {
        self.faults_of(&judge_for_search(self.range, point, rules), point, at, rules)
    }

    fn broken(&self, point: &Choice, at: &At, rules: u64) -> u64 {
        let faults = self.faults_of(&judge_stops(self.range, point), point, at, rules);
        rules & faults.into_iter().flatten().fold(0, |all, fault| all | fault.rules)
    }

    fn lines(&self) -> QuestionSet {
        LINES
    }

    fn answers(&self, question: u8) -> Answers<'_> {
        match self.candidates.lines.get(&question) {
            Some(places) => Answers::Line(places),
            None => Answers::Set(self.candidates.sets.get(&question).map_or(0, Vec::len)),
        }
    }

    fn moved(&self, at: &At, question: u8, answer: i32) -> Option<At> {
        let mut moved = *at;
        if LINES.has(question) {
            moved.set(question, answer);
            return Some(moved);
        }
        let (change, number) = self.candidates.change(question, answer)?;
        let is_there = |bay: u8| i32::from(bay) <= at.of(place(Question::Bays));
        match *change {
            Change::BayCount(count) => self.count(&mut moved, count)?,
            Change::Share { bay, share } if is_there(bay) => moved.set(question, shared(at.of(question), bay, share)),
            Change::Share { .. } => {}
            Change::Fill { bay, .. } | Change::Hole { bay, .. } | Change::Device { bay, .. } if !is_there(bay) => {}
            _ => moved.set(question, *number),
        }
        // What changes nothing is no other answer.
        (moved.of(question) != at.of(question)).then_some(moved)
    }

    fn with(&self, point: &Choice, question: u8, answer: i32) -> Choice {
        let mut changed = point.clone();
        match super::question_set::question(question) {
            Question::Width => changed.width_mm = Dim::tenths(answer),
            Question::Height => changed.height_mm = Dim::tenths(answer),
            Question::Depth => changed.depth_mm = Dim::tenths(answer),
            Question::Bow => changed.bow_mm = Dim::tenths(answer),
            _ => match self.candidates.change(question, answer) {
                Some((Change::BayCount(count), _)) => {
                    changed.bays.resize(usize::from(*count), self.choice.next_bay());
                }
                Some((change, _)) => return point.with(change, self.range),
                None => {}
            },
        }
        changed
    }
}

impl Candidates {
    /// The same where something was given for the visit.
    pub(crate) fn visited(mut self, visit: Option<&Visit>) -> Self {
        self.visit = visit.cloned();
        self
    }

    /// Whether all units that may be priced were.
    pub(crate) fn are_spent(&self) -> bool {
        self.visit.is_some() && self.trials.get() == 0
    }

    /// As many units as at first may be priced anew: each thing that is asked has its own share.
    pub(crate) fn share_anew(&self) {
        self.trials.set(EFFORT.kept_trials);
    }

    fn change(&self, question: u8, answer: i32) -> Option<&(Change, i32)> {
        self.sets.get(&question)?.get(usize::try_from(answer).ok()?)
    }
}

impl ChoiceSpace<'_> {
    /// What is wrong with a judged point.
    fn faults_of(&self, judged: &Judged<'_>, point: &Choice, at: &At, rules: u64) -> Option<Vec<NoGood>> {
        let mut faults = self.proofs(judged, point, at);
        let stops = !faults.is_empty();
        // What does not suit the place stays so while the size goes no further the right way.
        faults.extend(breaches(point).map(|finding| {
            let (size, end) = match finding.rule {
                Rule::ViewingHeight => (place(Question::Height), at.of(place(Question::Height))),
                _ => (place(Question::Width), at.of(place(Question::Width))),
            };
            let (from, to) = if finding.rule != Rule::ScreenWidth && finding.limit == Limit::AtMost {
                (end, i32::MAX)
            } else {
                (i32::MIN, end)
            };
            let mut proof = NoGood::of(finding.rule.bit());
            proof.narrow(size, from, to);
            proof
        }));
        let asked = rules & VISIT != 0 && !stops && faults.iter().all(|fault| fault.rules & rules == 0);
        if asked {
            faults.extend(self.visited(point, at)?);
        }
        Some(faults)
    }

    /// What a point that nothing else stops breaks of what was given for the visit: that says nothing of any other.
    /// `None` if it is not looked at any more.
    fn visited(&self, point: &Choice, at: &At) -> Option<Vec<NoGood>> {
        let Some(visit) = &self.candidates.visit else { return Some(Vec::new()) };
        self.candidates.trials.set(self.candidates.trials.get().checked_sub(1)?);
        let broken = visit.broken(self.range, point);
        let given = [Given::Budget, Given::Day].into_iter().filter(|given| given.bits() & broken != 0);
        let all = QuestionSet::all().places().filter(|question| at.of(*question) != At::NONE);
        let here = |mut proof: NoGood| {
            all.clone().for_each(|question| proof.narrow(question, at.of(question), at.of(question)));
            proof
        };
        Some(given.map(|given| here(NoGood::of(given.bits()))).collect())
    }

    /// What is proven by the findings of a judged point.
    pub(crate) fn proofs(&self, judged: &Judged<'_>, point: &Choice, at: &At) -> Vec<NoGood> {
        let (layout, build) = (judged.layout.as_ref(), &self.range.build);
        let context = Context { choice: point, layout, build, influence: self.candidates.influence };
        let proof = |finding: &Finding| {
            let mut proof = NoGood::of(finding.rule.bit());
            each_dependency(finding, context, |question, way, far| {
                let question = place(question);
                let (now, far) = (at.of(question), far.in_tenths());
                let (down, up) = (now.saturating_sub(far), now.saturating_add(far));
                let (from, to) = match way {
                    _ if !LINES.has(question) => (now, now),
                    Direction::Up => (i32::MIN, up),
                    Direction::Down => (down, i32::MAX),
                    Direction::Either => (down, up),
                };
                proof.narrow(question, from, to);
                if question == place(Question::Shares) {
                    proof.extend(question, self.no_better(finding, point, way));
                }
            });
            proof
        };
        judged.findings.iter().map(proof).collect()
    }

    /// Which other shares do no more for the bay that a finding is about: the numbers of those answers, as bits.
    fn no_better(&self, finding: &Finding, point: &Choice, way: Direction) -> u64 {
        let Some(about) = finding.about.bay() else { return 0 };
        let next = self.choice.next_bay();
        let begun = |bay: u8| u32::from(self.choice.bays.get(usize::from(bay) - 1).unwrap_or(&next).share);
        let bays = || (1..=u8::MAX).zip(&point.bays);
        let (own, all): (u32, u32) = bays().fold((0, 0), |(own, all), (bay, chosen)| {
            let share = u32::from(chosen.share);
            (if bay == about { share } else { own }, all + share)
        });
        let begun_all: u32 = bays().map(|(bay, _)| begun(bay)).sum();
        let mut alike = 0;
        let answers = self.candidates.sets.get(&place(Question::Shares)).into_iter().flatten();
        for (number, (change, _)) in (0..u64::BITS).zip(answers) {
            let Change::Share { bay, share } = *change else { continue };
            if usize::from(bay) > point.bays.len() {
                continue;
            }
            let share = u32::from(share);
            // Its part of the whole before and after, as fractions.
            let (own_then, all_then) =
                (if bay == about { share } else { begun(about) }, begun_all - begun(bay) + share);
            let (before, after) = (own * all_then, own_then * all);
            let no_better = match way {
                Direction::Up => after <= before,
                Direction::Down => after >= before,
                Direction::Either => false,
            };
            alike |= u64::from(no_better) << number;
        }
        alike
    }

    fn set_bay(&self, at: &mut At, bay: u8, chosen: &Bay) {
        at.set(place(Question::Bay(bay)), fill_number(chosen.fill));
        at.set(place(Question::Hole(bay)), hole_number(self.range, chosen.hole.as_ref()));
        at.set(place(Question::Device(bay)), device_number(self.range, chosen.device.as_ref()));
    }

    /// With another number of bays; `None` if it may not have it.
    fn count(&self, at: &mut At, count: u8) -> Option<()> {
        let before = at.of(place(Question::Bays));
        if usize::from(count) < self.bays_least {
            return None;
        }
        let next = self.choice.next_bay();
        let mut shares = at.of(place(Question::Shares));
        for bay in 1..=u8::try_from(BAYS_MOST).ok()?.saturating_add(1) {
            if bay > count {
                for question in [Question::Bay(bay), Question::Hole(bay), Question::Device(bay)] {
                    at.set(place(question), At::NONE);
                }
                shares = shared(shares, bay, 0);
            } else if i32::from(bay) > before {
                self.set_bay(at, bay, &next);
                shares = shared(shares, bay, next.share);
            }
        }
        at.set(place(Question::Shares), shares);
        at.set(place(Question::Bays), count.into());
        Some(())
    }
}

/// The questions whose answers are places on a line.
pub(crate) const LINES: QuestionSet = QuestionSet::of(Question::Width)
    .and(QuestionSet::of(Question::Height))
    .and(QuestionSet::of(Question::Depth))
    .and(QuestionSet::of(Question::Bow));

/// What has to be answered anew to come from one choice to another, in the order in which it is done.
pub(crate) fn changes(from: &Choice, to: &Choice) -> Vec<Change> {
    let mut changes = Vec::new();
    if from.bays.len() != to.bays.len() {
        changes.extend(u8::try_from(to.bays.len()).map(Change::BayCount));
    }
    let next = from.next_bay();
    for (bay, chosen) in (1..=u8::MAX).zip(&to.bays) {
        let before = from.bays.get(usize::from(bay) - 1).unwrap_or(&next);
        if before.fill != chosen.fill {
            changes.push(Change::Fill { bay, fill: chosen.fill });
        }
        if before.share != chosen.share {
            changes.push(Change::Share { bay, share: chosen.share });
        }
        if before.hole != chosen.hole {
            changes.push(Change::Hole { bay, hole: chosen.hole.clone() });
        }
        if before.device != chosen.device {
            changes.push(Change::Device { bay, device: chosen.device.clone() });
        }
    }
    let mut size = |differs: bool, change: Change| changes.extend(differs.then_some(change));
    size(from.width_mm != to.width_mm, Change::WidthMm(to.width_mm));
    size(from.height_mm != to.height_mm, Change::HeightMm(to.height_mm));
    size(from.depth_mm != to.depth_mm, Change::DepthMm(to.depth_mm));
    size(from.back != to.back, Change::Back(to.back.clone()));
    size(from.finish != to.finish, Change::Finish(to.finish.clone()));
    size(from.corner_radius_mm != to.corner_radius_mm, Change::CornerRadiusMm(to.corner_radius_mm));
    size(from.plinth_mm != to.plinth_mm, Change::PlinthMm(to.plinth_mm));
    size(from.bow_mm != to.bow_mm, Change::BowMm(to.bow_mm));
    size(from.bowed != to.bowed, Change::Bowed(to.bowed));
    changes
}

#[cfg(test)]
mod tests;
