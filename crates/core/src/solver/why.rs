//! Why an answer is shut, by reasons of which none can be left out, and what of that which is kept to let go for it.

use core::cell::Cell;

use serde::Serialize;

use super::candidates;
use super::explain::{conflict, diagnosis};
use super::kept::{Beyond, GIVEN, Given, Kept, breach};
use super::question_set::{QuestionSet, place};
use super::solve::Outcome;
use super::states::AnswerSearch;
use crate::choice::Choice;
use crate::choice::change::Change;
use crate::choice::question::Question;
use crate::range::Range;
use crate::rules::finding::Finding;
use crate::rules::{Rule, judge_stops};
use crate::units::short;

/// Why an answer cannot be had at all, or not with what is pinned.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Why {
    /// What stops it by one of those rules: alone, or if something else stops it first then with other changes. Where
    /// that was not found out, what stops it alone.
    pub reason: Finding,
    /// Rules that forbid it together, whatever else is answered; none of them can be left out. If the basics leave
    /// something, they are taken for granted, and these are beyond them; none if it leaves out a bay of which something
    /// is pinned.
    pub rules: Vec<Rule>,
    /// Pinned questions with which they do; none of them can be left out.
    #[cfg_attr(feature = "schema", schemars(with = "Vec<String>"))]
    pub pins: Vec<Question>,
    /// What was given with which they do; none of it can be left out.
    pub given: Vec<Given>,
    /// Whether it is known that nothing of rules, pins and what was given can be left out, and nothing of what is let go can
    /// stay: with a budget or a day that may take more units than are priced and dated.
    pub is_least: bool,
    /// Whether other shares of the width were ruled out one bay at a time, and not those of several bays together.
    pub one_bay_at_a_time: bool,
    /// What to let go for it; none if it cannot be had without any pin either, or if nothing was found.
    pub release: Option<Release>,
}

/// What to let go for an answer.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Release {
    /// Pinned questions, none of which could stay pinned; the least important ones, if there is a choice.
    #[cfg_attr(feature = "schema", schemars(with = "Vec<String>"))]
    pub pins: Vec<Question>,
    /// What was given and is so no longer.
    pub given: Vec<Given>,
    /// What changes then besides the answer.
    pub changes: Vec<Change>,
    /// How it goes beyond what was given for the visit then.
    pub beyond: Vec<Beyond>,
}

impl Release {
    /// All that changes besides the answer, what was given with it.
    pub fn all(&self) -> Vec<Change> {
        self.given.iter().filter_map(|given| given.undone()).chain(self.changes.iter().cloned()).collect()
    }
}

/// What is kept, one by one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Held {
    Pin(Question),
    Given(Given),
}

/// Why an answer is shut: nothing of it can be left out, as far as that was found out.
///
/// `None` for an answer that can be had, and for one of which that was not found out. Each part of why has as many units
/// to price and to date as [`state`](super::states::state) has: what that calls shut is told why.
pub fn why_shut<'a>(range: &'a Range, choice: &'a Choice, change: &Change, kept: impl Into<Kept<'a>>) -> Option<Why> {
    let (kept, asked) = (kept.into(), QuestionSet::of(change.question()?));
    let answers = AnswerSearch::of(range, range.model(&choice.model)?, choice, kept);
    // What is broken already is not kept.
    let counts = answers.rules(asked);
    let given = Given::ALL.into_iter().rev().filter(|given| kept.says(*given, choice) && given.bits() & counts != 0);
    let held: Vec<Held> = kept.pins.iter().copied().map(Held::Pin).chain(given.map(Held::Given)).collect();
    let changed = choice.with(change, range);
    // What goes alone is open, whatever it breaks of that which was given for the visit.
    let alone = answers.drops_kept_bay(&changed, QuestionSet::of_all(kept.pins));
    let alone = alone.or_else(|| answers.stops_alone(&changed, asked))?;
    let answer = Answer { answers, changed, asked, counts, unsure: Cell::new(false) };
    if !answer.is_shut(&held) {
        return None;
    }
    // What was not found out may be.
    let may = |rules, held: &[Held]| !matches!(answer.any(rules, held), Outcome::Nothing(_));
    answer.unsure.set(false);
    answer.answers.share_anew();
    let least = conflict(&held, &mut |held| may(u64::MAX, held));
    answer.answers.share_anew();
    let release = answer.release(&held);
    answer.answers.share_anew();
    let (pins, given) = parted(&least);
    // One bay has all of the width, whatever its share.
    let several = answer.changed.bays.len() > 1 || !asked.has(place(Question::Bays)) && !pins.contains(&Question::Bays);
    // Where it was not found out, it may be so.
    let one_bay_at_a_time = several
        && match answer.any(u64::MAX, &least) {
            Outcome::Nothing(nothing) => nothing.exhausted.has(place(Question::Shares)),
            Outcome::Point(_) | Outcome::GivenUp => true,
        };
    if let Some(reason) = answer.answers.drops_kept_bay(&answer.changed, QuestionSet::of_all(&pins)) {
        let is_least = !answer.unsure.get();
        return Some(Why { reason, rules: Vec::new(), pins, given, is_least, one_bay_at_a_time, release });
    }
    let sum = |rules: &[Rule]| rules.iter().fold(0, |all, rule| all | rule.bit());
    // What was given is among what is kept.
    let own = Rule::ALL.iter().filter(|rule| rule.bit() & GIVEN == 0);
    let (basics, others): (Vec<Rule>, Vec<Rule>) = own.partition(|rule| rule.is_basic());
    let (always, of) = if may(sum(&basics), &least) { (sum(&basics), others) } else { (0, basics) };
    let rules = conflict(&of, &mut |rules| may(always | sum(rules), &least));
    let is_least = !answer.unsure.get();
    let asks = given.iter().fold(0, |all, given| all | given.bits()) & counts;
    let broken = |choice: &Choice| judge_stops(range, choice).findings.into_iter().find(|f| rules.contains(&f.rule));
    let reason = broken(&answer.changed).or_else(|| breach(&answer.changed, asks));
    let reason = reason.or_else(|| match answer.any(always, &least) {
        Outcome::Point(point) => broken(&point),
        Outcome::Nothing(_) | Outcome::GivenUp => None,
    });
    // With what else changes something may be too wide for its wall.
    let reason = reason.or_else(|| match answer.any(sum(&rules) | always, &held_pins(&least)) {
        Outcome::Point(point) => breach(&point, asks),
        Outcome::Nothing(_) | Outcome::GivenUp => None,
    });
    let reason = reason.unwrap_or(alone);
    Some(Why { reason, rules, pins, given, is_least, one_bay_at_a_time, release })
}

fn held_pins(held: &[Held]) -> Vec<Held> {
    held.iter().copied().filter(|held| matches!(held, Held::Pin(_))).collect()
}

/// Pins, and what was given.
fn parted(held: &[Held]) -> (Vec<Question>, Vec<Given>) {
    let pins = held.iter().filter_map(|held| match held {
        Held::Pin(pin) => Some(*pin),
        Held::Given(_) => None,
    });
    let given = held.iter().filter_map(|held| match held {
        Held::Given(given) => Some(*given),
        Held::Pin(_) => None,
    });
    (pins.collect(), given.collect())
}

/// A choice with an answer taken that cannot be had.
struct Answer<'a> {
    answers: AnswerSearch<'a>,
    changed: Choice,
    asked: QuestionSet,
    /// The rules that count for it.
    counts: u64,
    /// Whether a search was given up.
    unsure: Cell<bool>,
}

impl Answer<'_> {
    /// The rules of these that count where something is held, and its pins.
    fn within(&self, rules: u64, held: &[Held]) -> (u64, QuestionSet) {
        let (pins, given) = parted(held);
        let given = given.iter().fold(0, |all, given| all | given.bits());
        (self.counts & (rules & !GIVEN | given), QuestionSet::of_all(&pins))
    }

    /// Whether it is known that it cannot be had with what is held.
    fn is_shut(&self, held: &[Held]) -> bool {
        match self.any(u64::MAX, held) {
            Outcome::Nothing(_) => true,
            Outcome::Point(_) => false,
            // The search for the fewest changes goes another way, which may end sooner.
            Outcome::GivenUp => {
                self.answers.share_anew();
                let found = self.answers.smallest(&self.changed, self.asked, self.within(u64::MAX, held));
                matches!(found, Outcome::Nothing(_))
            }
        }
    }

    /// A choice with the answer that some rules, and what is held, allow.
    fn any(&self, rules: u64, held: &[Held]) -> Outcome<Choice> {
        let found = self.answers.any(&self.changed, self.asked, self.within(rules, held));
        self.unsure.set(self.unsure.get() || matches!(found, Outcome::GivenUp));
        found
    }

    fn release(&self, held: &[Held]) -> Option<Release> {
        let mut held = held.to_vec();
        // The least important ones first; facts of the customer are let go last.
        short::sort(&mut held, |held| match held {
            Held::Pin(pin) => place(*pin),
            Held::Given(_) => u8::MAX,
        });
        held.dedup();
        let gone = diagnosis(&held, &mut |kept| matches!(self.any(u64::MAX, kept), Outcome::Point(_)))?;
        held.retain(|held| !gone.contains(held));
        let (pins, given) = parted(&gone);
        match self.answers.smallest(&self.changed, self.asked, self.within(u64::MAX, &held)) {
            Outcome::Point((_, point)) => {
                let beyond = self.answers.beyond(&point).filter(|beyond| given.contains(&beyond.given())).collect();
                Some(Release { pins, given, changes: candidates::changes(&self.changed, &point), beyond })
            }
            Outcome::Nothing(_) | Outcome::GivenUp => None,
        }
        .filter(|_| !gone.is_empty())
    }
}

#[cfg(test)]
mod tests;
