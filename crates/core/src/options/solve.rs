//! The smallest set of answers that has to change, and why there may be none: exact, for any puzzle of
//! questions whose points can be judged.
//!
//! A point is judged as a whole; each fault names the questions that it depends on. While those keep
//! their answers (or, on a line of sizes, stay on the wrong side) the fault stays, so it is a no-good:
//! the search jumps back over questions that have nothing to do with a failure, and halves lines instead
//! of walking them. Sets of questions are tried by their size, then by importance, and only sets that
//! meet every conflict found so far.
// Sources: backjumping by conflicts: Prosser, Computational Intelligence 9(3), 1993. Hitting sets of
// conflicts: Reiter, Artificial Intelligence 32, 1987. Minimal conflicts: Junker, QuickXplain, AAAI 2004.

use alloc::collections::BTreeSet;
use core::cell::Cell;

use super::scope::Scope;

/// Why a point does not hold.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Fault {
    /// The rule, as a bit of a set.
    pub(crate) rule: u64,
    /// The questions that it depends on.
    pub(crate) scope: Scope,
    /// For questions on a line: the places between which it stays, everything else as it is.
    pub(crate) spans: Spans,
}

/// Places on lines, question by question; a question that is not named has no limit.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Spans(smallvec::SmallVec<[(u8, i32, i32); 4]>);

impl Spans {
    /// Limits a question's places further.
    pub(crate) fn narrow(&mut self, question: u8, from: i32, to: i32) {
        match self.0.iter_mut().find(|span| span.0 == question) {
            Some((_, low, high)) => (*low, *high) = ((*low).max(from), (*high).min(to)),
            None => self.0.push((question, from, to)),
        }
    }

    /// Between which places a question stays.
    pub(crate) fn of(&self, question: u8) -> (i32, i32) {
        self.0.iter().find(|span| span.0 == question).map_or((i32::MIN, i32::MAX), |span| (span.1, span.2))
    }
}

/// What a question can be answered with instead.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Answers<'a> {
    /// That many, the nearest to the present one first.
    Set(usize),
    /// Places on a line, the nearest to the present one first.
    Line(&'a [i32]),
}

/// Questions whose answers make points, and a judge of points.
pub(crate) trait Puzzle {
    /// All questions with their answers.
    type Point: Clone;

    /// Everything that is wrong with a point.
    fn faults(&self, point: &Self::Point) -> Vec<Fault>;

    /// What a question of the first point can be answered with instead of its present answer.
    fn answers(&self, question: u8) -> Answers<'_>;

    /// The point with another answer: the number of one of a set, or a place on a line; `None` if that
    /// answer may not be given.
    fn with(&self, point: &Self::Point, question: u8, answer: i32) -> Option<Self::Point>;
}

/// A proof that there is nothing: as long as the questions of the scope keep their answers, or their
/// places within the spans, those rules forbid every point.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct NoGood {
    pub(crate) rules: u64,
    pub(crate) scope: Scope,
    pub(crate) spans: Spans,
}

impl NoGood {
    fn of(fault: &Fault) -> Self {
        Self { rules: fault.rule, scope: fault.scope, spans: fault.spans.clone() }
    }

    fn join(&mut self, other: &Self) {
        self.rules |= other.rules;
        self.scope = self.scope.and(other.scope);
        for &(question, from, to) in &other.spans.0 {
            self.spans.narrow(question, from, to);
        }
    }
}

/// What came of a search.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Found<P> {
    /// A point that holds.
    Point(P),
    /// There is none.
    Nothing(NoGood),
    /// The search was given up after as many judgements as it may make.
    GivenUp,
}

/// A search with a limit of judgements.
pub(crate) struct Search<'a, P: Puzzle> {
    puzzle: &'a P,
    /// The rules that count.
    rules: u64,
    judgements: u32,
    /// How many it may make.
    most: u32,
}

/// Most judgements of one search: some ten milliseconds.
const JUDGEMENTS: u32 = 20_000;

/// Most judgements of all searches for the answers of one choice: some tenths of a second.
pub(crate) const TOGETHER: u32 = 120_000;

/// Most judgements for the question whether there is anything at all.
const SOON: u32 = 600;

impl<'a, P: Puzzle> Search<'a, P> {
    pub(crate) fn new(puzzle: &'a P) -> Self {
        Self { puzzle, rules: u64::MAX, judgements: 0, most: JUDGEMENTS }
    }

    /// The same with these rules alone.
    pub(crate) fn with_rules(puzzle: &'a P, rules: u64) -> Self {
        Self { puzzle, rules, judgements: 0, most: JUDGEMENTS }
    }

    fn faults(&mut self, point: &P::Point) -> Vec<Fault> {
        self.judgements += 1;
        let mut faults = self.puzzle.faults(point);
        faults.retain(|fault| fault.rule & self.rules != 0);
        faults
    }

    /// A point that differs from this one in free questions alone and holds.
    pub(crate) fn within(&mut self, point: &P::Point, free: Scope) -> Found<P::Point> {
        let faults = self.faults(point);
        self.mend(point, free, &faults)
    }

    fn mend(&mut self, point: &P::Point, free: Scope, faults: &[Fault]) -> Found<P::Point> {
        let choices = |fault: &&Fault| (fault.scope.meeting(free).len(), fault.scope.len());
        let Some(worst) = faults.iter().min_by_key(choices) else { return Found::Point(point.clone()) };
        let Some(question) = worst.scope.meeting(free).last() else { return Found::Nothing(NoGood::of(worst)) };
        if self.judgements >= self.most {
            return Found::GivenUp;
        }
        let rest = free.without(question);
        // The most important one first, so that it moves as little as it can. It may keep its answer, if another
        // one mends the fault.
        let mut nothing = match self.mend(point, rest, faults) {
            Found::Nothing(nothing) if nothing.scope.has(question) => nothing,
            other => return other,
        };
        let done = match self.puzzle.answers(question) {
            Answers::Set(count) => self.try_set(point, (question, rest), count, &mut nothing),
            Answers::Line(places) => self.try_line(point, (question, rest), places, &mut nothing),
        };
        done.unwrap_or_else(|| {
            nothing.scope = nothing.scope.without(question);
            nothing.spans.0.retain(|span| span.0 != question);
            Found::Nothing(nothing)
        })
    }

    fn try_set(
        &mut self,
        point: &P::Point,
        (question, rest): (u8, Scope),
        count: usize,
        nothing: &mut NoGood,
    ) -> Option<Found<P::Point>> {
        for answer in 0..i32::try_from(count).unwrap_or(i32::MAX) {
            let Some(point) = self.puzzle.with(point, question, answer) else { continue };
            match self.within(&point, rest) {
                Found::Nothing(other) if other.scope.has(question) => nothing.join(&other),
                other => return Some(other),
            }
        }
        None
    }

    /// Halves the places that are left, until the nearest one that holds is known or none is left.
    fn try_line(
        &mut self,
        point: &P::Point,
        (question, rest): (u8, Scope),
        places: &[i32],
        nothing: &mut NoGood,
    ) -> Option<Found<P::Point>> {
        let (from, to) = nothing.spans.of(question);
        let mut left: Vec<i32> = places.iter().copied().filter(|place| !(from..=to).contains(place)).collect();
        let mut found = None;
        while let Some(&place) = left.get(left.len() / 2) {
            let Some(point) = self.puzzle.with(point, question, place) else {
                left.retain(|left| *left != place);
                continue;
            };
            match self.within(&point, rest) {
                Found::Point(point) => {
                    found = Some(Found::Point(point));
                    left.truncate(left.len() / 2);
                }
                Found::Nothing(other) if other.scope.has(question) => {
                    let (from, to) = other.spans.of(question);
                    // A fault that says nothing of the line stays at this place alone.
                    left.retain(|left| *left != place && !(from..=to).contains(left));
                    let mut other = other;
                    other.spans.0.retain(|span| span.0 != question);
                    nothing.join(&other);
                }
                other => return Some(other),
            }
        }
        found
    }
}

/// The smallest set of free questions that has to change for a point to hold, the least important ones of
/// its size, and the point. Takes its judgements from what is left of them for all searches together.
pub(crate) fn smallest<P: Puzzle>(
    puzzle: &P,
    point: &P::Point,
    free: Scope,
    left: &Cell<u32>,
) -> Found<(Scope, P::Point)> {
    let mut search = Search::new(puzzle);
    search.most = search.most.min(left.get());
    let found = sets(&mut search, point, free);
    left.set(left.get().saturating_sub(search.judgements));
    found
}

fn sets<P: Puzzle>(search: &mut Search<'_, P>, point: &P::Point, free: Scope) -> Found<(Scope, P::Point)> {
    let mut conflicts: Vec<Scope> = Vec::new();
    let mut waiting = BTreeSet::from([(0, Scope::NONE)]);
    let mut last = NoGood::default();
    let mut asked = false;
    while let Some((size, set)) = waiting.pop_first() {
        search.judgements += 1;
        // Before larger sets are tried: is there any point at all? What cannot be told soon is not asked again.
        if size == 3 && !asked {
            asked = true;
            let mut any = Search::new(search.puzzle);
            any.most = SOON;
            if let Found::Nothing(nothing) = any.within(point, free) {
                return Found::Nothing(nothing);
            }
        }
        let known = conflicts.iter().copied().find(|conflict| conflict.meeting(set).is_empty());
        let conflict = match known {
            Some(conflict) => conflict,
            None => match search.within(point, set) {
                Found::Point(point) => return Found::Point((set, point)),
                Found::GivenUp => return Found::GivenUp,
                Found::Nothing(nothing) => {
                    conflicts.push(nothing.scope);
                    let conflict = nothing.scope;
                    last = nothing;
                    conflict
                }
            },
        };
        let more = conflict.meeting(free).minus(set);
        waiting.extend(more.places().map(|place| (size + 1, set.and(Scope::at(place)))));
    }
    // No set is left, since some conflict has no free question.
    Found::Nothing(last)
}

/// A smallest part of some things that cannot hold together, none of which can be left out: the earlier
/// ones are rather kept. `holds` says whether some of them, with what is always there, can.
// Source: Junker, "QuickXplain", AAAI 2004.
pub(crate) fn conflict<T: Copy>(things: &[T], holds: &mut impl FnMut(&[T]) -> bool) -> Vec<T> {
    fn part<T: Copy>(base: &[T], added: bool, things: &[T], holds: &mut impl FnMut(&[T]) -> bool) -> Vec<T> {
        if added && !holds(base) {
            return Vec::new();
        }
        if things.len() <= 1 {
            return things.to_vec();
        }
        let (first, second) = things.split_at(things.len() / 2);
        let late = part(&[base, first].concat(), !first.is_empty(), second, holds);
        let early = part(&[base, &*late].concat(), !late.is_empty(), first, holds);
        [early, late].concat()
    }
    if holds(things) { Vec::new() } else { part(&[], true, things, holds) }
}

#[cfg(test)]
mod tests;
