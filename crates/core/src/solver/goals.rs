//! Solving backwards: the nearest choice that can be made and meets a goal.
//!
//! Goals of width are met by the states of widths, exactly. Goals of price, weight and date are met by the fewest
//! questions answered anew that a search of one and two questions finds, sizes before what the unit holds. If that is
//! not enough, the answer that brings the goal nearest is taken again and again; at last all sizes shrink.
//!
//! A smaller unit is lighter, but not always cheaper or sooner: it may leave less of its sheets that is worth keeping. What it
//! costs at least, by the area of its parts, does grow with its sizes: that bound is halved, and what it leaves is
//! walked, from the nearest size on.
//!
//! The cheapest unit is the cheapest that was found: see `cheapest`.

mod cheapest;

use super::Size;
use super::candidates::{ChoiceSpace, changes};
use super::effort::EFFORT;
use super::kept::{Given, Kept, Visit, broken};
use super::question_set::{self, QuestionSet};
use super::solve::{Answers, SearchSpace};
use super::states::{AnswerSearch, Reach, State, nearest};
use crate::business::promise::Backlog;
use crate::choice::Choice;
use crate::choice::change::Change;
use crate::choice::question::Question;
use crate::range::Range;
use crate::rules::{can_be_made, judge_stops, place};
use crate::units::day::Day;
use crate::units::money::Money;
use crate::units::quantity::{Dim, Length, Mass};

/// What is wanted of a unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Goal {
    /// It can be made.
    Valid,
    /// It is as wide as it can be, and as the wall allows.
    Widest,
    /// It is at least as wide as the screen on it, and as narrow as the wall asks.
    Screen,
    /// It costs no more, with tax.
    Price(Money),
    /// It costs as little as a search finds.
    Cheapest,
    /// No part is heavier.
    Part(Mass),
    /// It arrives on that day or before.
    By(Day),
}

/// What has to be answered anew to meet a goal; nothing if it is met. `None` if no way was found.
///
/// What is kept stays, and what was given is not broken.
pub fn toward<'a>(
    range: &Range,
    choice: &Choice,
    goal: Goal,
    kept: impl Into<Kept<'a>>,
    dated: (Day, &Backlog),
) -> Option<Vec<Change>> {
    let mut trials = EFFORT.goal_trials;
    way(range, choice, goal, kept.into(), dated, &mut trials)
}

/// The same with as many trials as are left.
fn way(
    range: &Range,
    choice: &Choice,
    goal: Goal,
    kept: Kept<'_>,
    (today, backlog): (Day, &Backlog),
    trials: &mut u32,
) -> Option<Vec<Change>> {
    match goal {
        Goal::Valid => nearest(range, choice, kept),
        Goal::Widest => widest(range, choice, kept),
        Goal::Screen => {
            let wide =
                choice.place.screen_tenth_inch.map_or(Length::ZERO, |tenths| place::screen(place::diagonal(tenths)).0);
            let fits = |width: Dim| width.length() >= wide && width <= wall(choice);
            if fits(choice.width_mm) {
                return nearest(range, choice, kept);
            }
            wide_as(range, choice, kept, &mut |width| fits(width), false)
        }
        _ => {
            let mut begun = after(range, choice, &nearest(range, choice, kept)?);
            // The goal takes the place of what was given before.
            let own = match goal {
                Goal::Price(_) | Goal::Cheapest => Given::Budget.bits(),
                Goal::By(_) => Given::Day.bits(),
                _ => 0,
            };
            let rules = !(broken(range, choice, kept.visit) | own);
            loop {
                let answers = AnswerSearch::of(range, range.model(&choice.model)?, &begun, kept);
                let (space, free) = answers.space(&begun, QuestionSet::NONE);
                let mut search = Search { range, goal, today, backlog, space, trials, rules, visit: kept.visit };
                let found = search.run(&begun, free)?;
                // A search never comes back to the answers that it began with, so the cheapest unit is looked for from there on.
                if goal != Goal::Cheapest || found == begun || *search.trials == 0 {
                    return Some(changes(choice, &found));
                }
                begun = found;
            }
        }
    }
}

/// Which kept answers stand in the way of a goal to which no way was found: those of which any one can be let go for a
/// way to be found. There may be none: two can be in the way at once.
pub fn in_the_way<'a>(
    range: &Range,
    choice: &Choice,
    goal: Goal,
    kept: impl Into<Kept<'a>>,
    dated: (Day, &Backlog),
) -> Vec<Question> {
    let (mut trials, kept) = (EFFORT.goal_trials, kept.into());
    let mut helps = |pin: &Question| {
        let others: Vec<Question> = kept.pins.iter().copied().filter(|other| other != pin).collect();
        way(range, choice, goal, Kept { pins: &others, ..kept }, dated, &mut trials).is_some()
    };
    kept.pins.iter().copied().filter(|pin| helps(pin)).collect()
}

fn after(range: &Range, choice: &Choice, changes: &[Change]) -> Choice {
    changes.iter().fold(choice.clone(), |choice, change| choice.with(change, range))
}

fn widest(range: &Range, choice: &Choice, kept: Kept<'_>) -> Option<Vec<Change>> {
    wide_as(range, choice, kept, &mut |width| width <= wall(choice), true)
}

/// How wide it may be where it stands.
fn wall(choice: &Choice) -> Dim {
    choice.place.wall_mm.unwrap_or(Dim::tenths(i32::MAX))
}

/// The first width that is wanted and can be had, with what goes with it; from the widest down or from the
/// narrowest up.
fn wide_as(
    range: &Range,
    choice: &Choice,
    kept: Kept<'_>,
    wanted: &mut dyn FnMut(Dim) -> bool,
    down: bool,
) -> Option<Vec<Change>> {
    if kept.pins.contains(&Question::Width) {
        return None;
    }
    let model = range.model(&choice.model)?;
    let answers = AnswerSearch::of(range, model, choice, kept);
    let mut widths: Vec<Dim> = model.width_mm.values().filter(|width| wanted(*width)).collect();
    if down {
        widths.reverse();
    }
    let had = answers
        .runs(Size::Width, widths.into_iter())
        .into_iter()
        .find(|run| matches!(run.state.reach, Reach::Open | Reach::Shifts))?;
    let wide = choice.with(&Change::WidthMm(had.from), range);
    match answers.state(&wide, QuestionSet::of(Question::Width)) {
        State::Open => Some(changes(choice, &wide)),
        State::Shifts { changes: more, .. } => Some(changes(choice, &after(range, &wide, &more))),
        State::Shut { .. } | State::Unfound { .. } => None,
    }
}

/// What a goal of price, weight or date asks of a unit: of two the smaller one is nearer to it.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
enum Figure {
    Price(Money),
    Part(Mass),
    Day(Day),
}

struct Search<'a> {
    range: &'a Range,
    goal: Goal,
    today: Day,
    backlog: &'a Backlog,
    space: ChoiceSpace<'a>,
    /// How many are left.
    trials: &'a mut u32,
    /// What of that which was given counts.
    rules: u64,
    visit: Option<&'a Visit>,
}

impl Search<'_> {
    /// Whether a unit that can be made meets the goal.
    fn meets(&mut self, choice: &Choice) -> bool {
        self.figure(choice).is_some_and(|figure| self.is_met(figure))
    }

    fn is_met(&self, figure: Figure) -> bool {
        match (self.goal, figure) {
            (Goal::Price(most), Figure::Price(price)) => price <= most,
            (Goal::Part(most), Figure::Part(mass)) => mass <= most,
            (Goal::By(day), Figure::Day(arrives)) => arrives <= day,
            // Of a cheaper one nobody knows before all are looked at.
            _ => false,
        }
    }

    /// What the goal asks of a unit; `None` if it has none.
    fn figure(&mut self, choice: &Choice) -> Option<Figure> {
        *self.trials = self.trials.saturating_sub(1);
        let (built, _) = judge_stops(self.range, choice).built(choice, (self.today, self.backlog))?;
        match self.goal {
            Goal::Price(_) | Goal::Cheapest => Some(Figure::Price(built.price.total_minor)),
            Goal::Part(_) => Some(Figure::Part(built.heaviest()?.1)),
            Goal::By(_) => Some(Figure::Day(built.promise?.arrives)),
            // These are met by the states of widths.
            Goal::Valid | Goal::Widest | Goal::Screen => None,
        }
    }

    /// Whether a unit might meet the goal, by the area of its parts; for a part's mass that is known at once.
    fn might(&mut self, choice: &Choice) -> bool {
        if matches!(self.goal, Goal::Part(_)) {
            return self.meets(choice);
        }
        let least = judge_stops(self.range, choice).at_least(choice, (self.today, self.backlog));
        least.is_some_and(|(price, arrives)| match self.goal {
            Goal::By(_) => arrives.is_some_and(|day| self.is_met(Figure::Day(day))),
            _ => self.is_met(Figure::Price(price)),
        })
    }

    fn is_done(&mut self, choice: &Choice) -> bool {
        let (range, rules, visit) = (self.range, self.rules, self.visit);
        let suits = |visit| broken(range, choice, visit) & rules == 0;
        suits(None) && can_be_made(range, choice) && self.meets(choice) && suits(visit)
    }

    fn run(&mut self, begun: &Choice, free: QuestionSet) -> Option<Choice> {
        if self.goal == Goal::Cheapest {
            return Some(self.cheapest(begun, free));
        }
        if self.is_done(begun) {
            return Some(begun.clone());
        }
        for question in free.places() {
            if let Some(found) = self.one(begun, question) {
                return Some(found);
            }
        }
        // Some trials are left for what follows.
        let later = EFFORT.goal_descent.min(*self.trials);
        *self.trials -= later;
        for second in free.places() {
            for first in free.places().take_while(|first| *first < second) {
                if let Some(found) = self.two(begun, first, second) {
                    return Some(found);
                }
            }
        }
        *self.trials += later;
        let nearest = self.descend(begun, free);
        if self.meets(&nearest) {
            return Some(nearest);
        }
        self.shrunk(begun, free).or_else(|| self.shrunk(&nearest, free))
    }

    /// Takes the answer that brings the goal nearest, no size, again and again until it is met or none does.
    fn descend(&mut self, begun: &Choice, free: QuestionSet) -> Choice {
        let mut point = begun.clone();
        let Some(mut figure) = self.figure(&point) else { return point };
        loop {
            let mut best = None;
            for question in free.places().filter(|question| !is_size(*question)) {
                for next in self.points(&point, question) {
                    if *self.trials == 0 {
                        return point;
                    }
                    if can_be_made(self.range, &next)
                        && broken(self.range, &next, self.visit) & self.rules == 0
                        && let Some(reached) = self.figure(&next).filter(|reached| *reached < figure)
                    {
                        (figure, best) = (reached, Some(next));
                    }
                }
            }
            let Some(next) = best else { return point };
            point = next;
            if self.is_met(figure) {
                return point;
            }
        }
    }

    /// Answers one question anew.
    fn one(&mut self, point: &Choice, question: u8) -> Option<Choice> {
        let points: Vec<Choice> = self.points(point, question);
        if is_size(question) {
            return self.first_small(&points).or_else(|| self.first_large(point, question));
        }
        points.into_iter().find(|point| *self.trials > 0 && self.is_done(point))
    }

    /// Answers two questions anew.
    fn two(&mut self, point: &Choice, first: u8, second: u8) -> Option<Choice> {
        let points = self.points(point, second);
        points.into_iter().find_map(|point| if *self.trials > 0 { self.one(&point, first) } else { None })
    }

    /// All other answers to a question, the nearest first; of sizes only the smaller ones.
    fn points(&self, point: &Choice, question: u8) -> Vec<Choice> {
        let at = self.space.at(point);
        let may = |number: &i32| self.space.moved(&at, question, *number).is_some();
        let with = |answer| self.space.with(point, question, answer);
        match self.space.answers(question) {
            Answers::Set(count) => (0..i32::try_from(count).unwrap_or(0)).filter(may).map(with).collect(),
            Answers::Line(_) if is_size(question) => self.sizes(point, question, |place, now| place < now),
            Answers::Line(_) => self.sizes(point, question, |place, now| place != now),
        }
    }

    /// Other sizes than the present one, the nearest first.
    fn sizes(&self, point: &Choice, question: u8, wanted: fn(i32, i32) -> bool) -> Vec<Choice> {
        let Answers::Line(places) = self.space.answers(question) else { return Vec::new() };
        let size = Size::ALL.into_iter().find(|size| question_set::place(size.question()) == question);
        let now = size.map_or(i32::MIN, |size| size.of(point).in_tenths());
        let mut wanted: Vec<i32> = places.iter().copied().filter(|place| wanted(*place, now)).collect();
        wanted.sort_by_key(|place| place.abs_diff(now));
        wanted.into_iter().map(|place| self.space.with(point, question, place)).collect()
    }

    /// The first of ever smaller units that is done: where the goal might be met is halved, what is left is walked.
    fn first_small(&mut self, points: &[Choice]) -> Option<Choice> {
        // The smallest may leave no room for their parts, and cost nothing that could be said.
        let room = points.partition_point(|point| judge_stops(self.range, point).layout.is_some());
        let points = points.get(..room)?;
        if *self.trials == 0 || !points.last().is_some_and(|least| self.might(least)) {
            return None;
        }
        let (mut from, mut to) = (0, points.len());
        while from < to {
            let middle = usize::midpoint(from, to);
            if self.might(points.get(middle)?) {
                to = middle;
            } else {
                from = middle + 1;
            }
        }
        points.get(from..)?.iter().find(|point| *self.trials > 0 && self.is_done(point)).cloned()
    }

    /// The first of ever larger units that is done, if a larger one may be cheaper or sooner.
    fn first_large(&mut self, point: &Choice, question: u8) -> Option<Choice> {
        if matches!(self.goal, Goal::Part(_)) {
            return None;
        }
        for larger in self.sizes(point, question, |place, now| place > now) {
            if *self.trials == 0 || !self.might(&larger) {
                return None;
            }
            if self.is_done(&larger) {
                return Some(larger);
            }
        }
        None
    }

    /// All sizes smaller, one after the other, until it is done.
    fn shrunk(&mut self, begun: &Choice, free: QuestionSet) -> Option<Choice> {
        let mut point = begun.clone();
        for question in [Question::Depth, Question::Height, Question::Width].map(question_set::place) {
            if !free.has(question) {
                continue;
            }
            let smaller = self.points(&point, question);
            if let Some(found) = self.first_small(&smaller) {
                return Some(found);
            }
            if let Some(least) = smaller.into_iter().rev().find(|point| can_be_made(self.range, point)) {
                point = least;
            }
        }
        None
    }
}

/// Whether its answers make the whole unit larger or smaller: a bow does not.
fn is_size(question: u8) -> bool {
    let sizes = [Size::Width, Size::Height, Size::Depth];
    sizes.into_iter().any(|size| question_set::place(size.question()) == question)
}

#[cfg(test)]
mod tests;
