//! The smallest set of answers that has to change, and why there may be none: exact, for any search space of
//! questions whose points can be judged.
//!
//! A point is judged as a whole; each fault names the questions that it depends on. While those keep
//! their answers (or others that are no better, or on a line of sizes stay as far on the wrong side as it
//! says) the fault stays, so it is a no-good: the search jumps back over questions that have nothing to do
//! with a failure, leaves out what a fault covers, halves lines of which nobody knows how far it goes, and
//! judges no point of which it knows a no-good already. Sets of questions are tried by their size, then by
//! importance, and only sets that meet every conflict found so far.
// Sources: backjumping by conflicts: Prosser, Computational Intelligence 9(3), 1993. No-goods that are
// remembered: Dechter, Artificial Intelligence 41(3), 1990. Hitting sets of conflicts: Reiter, Artificial
// Intelligence 32, 1987.

use alloc::collections::BTreeSet;
use core::cell::{Cell, OnceCell, RefCell};

use super::effort::EFFORT;
use super::no_good::{At, NoGood, NoGoods};
use super::question_set::QuestionSet;

/// What a question can be answered with instead.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Answers<'a> {
    /// That many, the nearest to the present one first.
    Set(usize),
    /// Places on a line, the nearest to the present one first.
    Line(&'a [i32]),
}

/// Questions whose answers make points, and a judge of points.
pub(crate) trait SearchSpace {
    /// All questions with their answers.
    type Point: Clone;

    /// Where a point stands.
    fn at(&self, point: &Self::Point) -> At;

    /// What is wrong with a point; if these rules forbid it, at least one fault of theirs: what comes from all parts together may be
    /// left out then. `None` if the rules ask for more than may be looked at.
    fn faults(&self, point: &Self::Point, at: &At, rules: u64) -> Option<Vec<NoGood>>;

    /// All of these rules that forbid a point.
    fn broken(&self, point: &Self::Point, at: &At, rules: u64) -> u64;

    /// The questions whose answers are places on a line.
    fn lines(&self) -> QuestionSet;

    /// What a question of the first point can be answered with instead of its present answer.
    fn answers(&self, question: u8) -> Answers<'_>;

    /// Where a point would stand with another answer: the number of one of a set, or a place on a line; `None` if
    /// that answer may not be given.
    fn moved(&self, at: &At, question: u8, answer: i32) -> Option<At>;

    /// The point with an answer that may be given.
    fn with(&self, point: &Self::Point, question: u8, answer: i32) -> Self::Point;
}

/// A point on the way of a search: most are known not to hold by where they stand, and never made.
struct Step<'a, P: SearchSpace> {
    at: At,
    origin: Origin<'a, P>,
    made: OnceCell<P::Point>,
}

/// What a point is made of.
enum Origin<'a, P: SearchSpace> {
    /// The one where the search began.
    Begin(&'a P::Point),
    /// Another one, with another answer.
    After(&'a Step<'a, P>, u8, i32),
}

impl<'a, P: SearchSpace> Step<'a, P> {
    fn begin(space: &P, point: &'a P::Point) -> Self {
        Self { at: space.at(point), origin: Origin::Begin(point), made: OnceCell::new() }
    }

    /// One with another answer; `None` if that may not be given.
    fn with(&'a self, space: &P, question: u8, answer: i32) -> Option<Self> {
        let at = space.moved(&self.at, question, answer)?;
        Some(Self { at, origin: Origin::After(self, question, answer), made: OnceCell::new() })
    }

    fn point(&self, space: &P) -> &P::Point {
        match self.origin {
            Origin::Begin(point) => point,
            Origin::After(before, question, answer) => {
                self.made.get_or_init(|| space.with(before.point(space), question, answer))
            }
        }
    }
}

/// What came of a search.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Outcome<P> {
    /// A point that holds.
    Point(P),
    /// There is none.
    Nothing(NoGood),
    /// The search was given up after as many steps as it may take.
    GivenUp,
}

/// What is known of a point.
enum Verdict {
    Holds,
    /// What leaves the fewest questions to be tried.
    Fails(NoGood),
    /// It may hold, and is not looked at any more: then no other one is that may hold either.
    Unseen,
}

/// Which question is answered anew first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Order {
    /// The most important one, so that it moves as little as it can: what is found is the same whatever is known.
    Importance,
    /// One that some fault names, and lines last: of them a fault says most. It is soon known whether anything holds.
    Use,
}

/// A search with a limit of steps.
struct Search<'a, P: SearchSpace> {
    space: &'a P,
    /// The rules that count.
    rules: u64,
    /// How many points it came to.
    steps: u32,
    /// How many it may come to.
    most: u32,
    /// Faults of all points that were judged, in this search or in others of these questions.
    faults: &'a RefCell<NoGoods>,
    order: Order,
    /// What this search proved; which answers may be given instead is its own, so another one cannot rely on it.
    proved: NoGoods,
}

impl<'a, P: SearchSpace> Search<'a, P> {
    fn with_rules(space: &'a P, faults: &'a RefCell<NoGoods>, rules: u64) -> Self {
        Self {
            space,
            rules,
            steps: 0,
            most: EFFORT.search,
            faults,
            order: Order::Use,
            proved: NoGoods::none(space.lines()),
        }
    }

    /// A point that differs from this one in free questions alone and holds.
    fn within(&mut self, point: &P::Point, free: QuestionSet) -> Outcome<P::Point> {
        self.mend(&Step::begin(self.space, point), free)
    }

    /// Whether a point holds.
    fn judge(&mut self, step: &Step<'_, P>, free: QuestionSet) -> Verdict {
        self.steps += 1;
        let (at, faults) = (&step.at, &mut self.faults.borrow_mut());
        let known = self.proved.closed(at, free, self.rules).or_else(|| faults.narrowest(at, free, self.rules));
        if let Some(known) = known {
            return Verdict::Fails(known);
        }
        let Some(found) = self.space.faults(step.point(self.space), at, self.rules) else { return Verdict::Unseen };
        for fault in &found {
            faults.add(fault);
        }
        // Nothing was known of it before, so what is known now is what was found.
        let counts = found.into_iter().filter(|fault| fault.rules & !self.rules == 0);
        let narrowest = counts.min_by_key(|fault| (fault.scope.meeting(free).len(), fault.scope.len(), fault.scope));
        narrowest.map_or(Verdict::Holds, Verdict::Fails)
    }

    /// The question to be answered anew, if a fault names any that may be.
    fn next(&self, named: QuestionSet, free: QuestionSet) -> Option<u8> {
        let last = named.last()?;
        match self.order {
            Order::Importance => free.last(),
            Order::Use => named.minus(self.space.lines()).last().or(Some(last)),
        }
    }

    fn mend(&mut self, step: &Step<'_, P>, free: QuestionSet) -> Outcome<P::Point> {
        let worst = match self.judge(step, free) {
            Verdict::Holds => return Outcome::Point(step.point(self.space).clone()),
            Verdict::Fails(worst) => worst,
            Verdict::Unseen => return Outcome::GivenUp,
        };
        let Some(question) = self.next(worst.scope.meeting(free), free) else { return Outcome::Nothing(worst) };
        if self.steps >= self.most {
            return Outcome::GivenUp;
        }
        let rest = free.without(question);
        // It may keep its answer, if another one mends the fault.
        let mut nothing = match self.mend(step, rest) {
            Outcome::Nothing(nothing) if nothing.scope.has(question) => nothing,
            other => return other,
        };
        let done = match self.space.answers(question) {
            Answers::Set(count) => self.try_set(step, (question, rest), count, &mut nothing),
            Answers::Line(places) => self.try_line(step, (question, rest), places, &mut nothing),
        };
        done.unwrap_or_else(|| {
            nothing.forget(question);
            self.proved.add(&nothing);
            Outcome::Nothing(nothing)
        })
    }

    fn try_set(
        &mut self,
        step: &Step<'_, P>,
        (question, rest): (u8, QuestionSet),
        count: usize,
        nothing: &mut NoGood,
    ) -> Option<Outcome<P::Point>> {
        // What is known to fail as others do is not tried.
        let mut tried = nothing.others(question);
        for answer in 0..i32::try_from(count).unwrap_or(i32::MAX) {
            if 1_u64.checked_shl(answer.cast_unsigned()).is_some_and(|bit| tried & bit != 0) {
                continue;
            }
            let Some(step) = step.with(self.space, question, answer) else { continue };
            match self.mend(&step, rest) {
                Outcome::Nothing(mut other) if other.scope.has(question) => {
                    tried |= other.others(question);
                    other.forget(question);
                    nothing.join(&other);
                }
                other => return Some(other),
            }
        }
        None
    }

    /// Finds the nearest place that holds, if one does. After a fault that says how far it stays the next place is
    /// tried, else the middle of what is left.
    fn try_line(
        &mut self,
        step: &Step<'_, P>,
        (question, rest): (u8, QuestionSet),
        places: &[i32],
        nothing: &mut NoGood,
    ) -> Option<Outcome<P::Point>> {
        let (from, to) = nothing.span(question);
        let mut left: Vec<i32> = places.iter().copied().filter(|place| !(from..=to).contains(place)).collect();
        let mut found = None;
        let mut nearest = true;
        loop {
            let at = if nearest { 0 } else { left.len() / 2 };
            let Some(&place) = left.get(at) else { break found };
            let Some(step) = step.with(self.space, question, place) else {
                left.remove(at);
                continue;
            };
            match self.mend(&step, rest) {
                Outcome::Point(point) => {
                    found = Some(Outcome::Point(point));
                    left.truncate(at);
                }
                Outcome::Nothing(mut other) if other.scope.has(question) => {
                    let (from, to) = other.span(question);
                    // A fault that says nothing of the line stays at this place alone.
                    left.retain(|left| *left != place && !(from..=to).contains(left));
                    nearest = from < place && place < to;
                    other.forget(question);
                    nothing.join(&other);
                }
                // A way that is known stays one, though a nearer one may not be found any more.
                other => break found.or(Some(other)),
            }
        }
    }
}

/// The smallest set of free questions that has to change for a point to keep some rules, the least important ones of
/// its size, and the point. Takes its steps from what is left of them for all searches together.
///
/// Both are the same whatever is known already, unless the steps do not suffice.
pub(crate) fn smallest<P: SearchSpace>(
    space: &P,
    point: &P::Point,
    (free, rules): (QuestionSet, u64),
    (faults, left): (&RefCell<NoGoods>, &Cell<u32>),
) -> Outcome<(QuestionSet, P::Point)> {
    let mut search = Search::with_rules(space, faults, rules);
    search.most = search.most.min(left.get());
    let found = match search.sets(point, free) {
        Outcome::GivenUp => search.alone(point, free).map_or(Outcome::GivenUp, Outcome::Nothing),
        found => found,
    };
    left.set(left.get().saturating_sub(search.steps));
    found
}

/// Any point that differs from this one in free questions alone and keeps some rules.
pub(crate) fn any<P: SearchSpace>(
    space: &P,
    point: &P::Point,
    free: QuestionSet,
    rules: u64,
    faults: &RefCell<NoGoods>,
) -> Outcome<P::Point> {
    let mut search = Search::with_rules(space, faults, rules);
    search.alone(point, free).map_or_else(|| search.within(point, free), Outcome::Nothing)
}

impl<P: SearchSpace> Search<'_, P> {
    /// Whether one of the rules that a point breaks forbids it by itself, whatever the free questions are answered
    /// with. That shows soon where all sets of questions would take long.
    fn alone(&mut self, point: &P::Point, free: QuestionSet) -> Option<NoGood> {
        let step = Step::begin(self.space, point);
        let mut rules = self.space.broken(point, &step.at, self.rules);
        while rules != 0 {
            let rule = rules & rules.wrapping_neg();
            rules -= rule;
            let mut lone = Search { most: EFFORT.one_rule, ..Search::with_rules(self.space, self.faults, rule) };
            let found = lone.mend(&step, free);
            self.steps += lone.steps;
            if let Outcome::Nothing(nothing) = found {
                return Some(nothing);
            }
        }
        None
    }

    fn sets(&mut self, point: &P::Point, free: QuestionSet) -> Outcome<(QuestionSet, P::Point)> {
        let mut waiting = BTreeSet::from([(0, QuestionSet::NONE)]);
        let mut last = NoGood::default();
        let mut conflicts: Vec<QuestionSet> = Vec::new();
        let (mut soon, most) = (EFFORT.all_at_once, self.most);
        self.order = Order::Importance;
        while let Some((size, set)) = waiting.pop_first() {
            self.steps += 1;
            if self.steps >= most {
                return Outcome::GivenUp;
            }
            if self.steps >= soon {
                (self.most, self.order) = (most.min(self.steps * 3), Order::Use);
                match self.within(point, free) {
                    Outcome::Nothing(nothing) => return Outcome::Nothing(nothing),
                    Outcome::Point(_) => soon = u32::MAX,
                    Outcome::GivenUp => soon = self.steps * 2,
                }
                (self.most, self.order) = (most, Order::Importance);
            }
            let known = conflicts.iter().copied().find(|conflict| conflict.meeting(set).is_empty());
            let conflict = match known {
                Some(known) => known,
                None => match self.within(point, set) {
                    Outcome::Point(point) => return Outcome::Point((set, point)),
                    Outcome::GivenUp => return Outcome::GivenUp,
                    Outcome::Nothing(nothing) => {
                        last = nothing;
                        conflicts.push(last.scope);
                        last.scope
                    }
                },
            };
            let more = conflict.meeting(free).minus(set);
            if more.is_empty() {
                break;
            }
            waiting.extend(more.places().map(|place| (size + 1, set.and(QuestionSet::at(place)))));
        }
        // No set is left, since what is known at last has no free question.
        Outcome::Nothing(last)
    }
}

#[cfg(test)]
mod tests;
