//! Why an answer is shut, by reasons of which none can be left out, and what of that which is kept to let go for it.

use serde::Serialize;

use super::explain::{conflict, diagnosis};
use super::scope::{Scope, place};
use super::solve::Found;
use super::states::Table;
use super::ways;
use crate::change::Change;
use crate::choice::Choice;
use crate::finding::Finding;
use crate::question::Question;
use crate::range::Range;
use crate::rules::{Rule, judge_stops};

/// Why an answer cannot be had at all, or not with what is pinned.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Why {
    /// What stops it by one of those rules: alone, or if something else stops it first then with other changes.
    pub reason: Finding,
    /// Rules that forbid it together, whatever else is answered; none of them can be left out. If the basics leave
    /// something, they are taken for granted, and these are beyond them; none if it leaves out a bay of which something
    /// is pinned.
    pub rules: Vec<Rule>,
    /// Pinned questions with which they do; none of them can be left out.
    #[cfg_attr(feature = "schema", schemars(with = "Vec<String>"))]
    pub pins: Vec<Question>,
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
    /// What changes then besides the answer.
    pub changes: Vec<Change>,
}

/// Why an answer is shut: nothing of it can be left out, as far as that was found out.
///
/// `None` for an answer that can be had, and for one of which that was not found out.
pub fn why_shut(range: &Range, choice: &Choice, change: &Change, pins: &[Question]) -> Option<Why> {
    let table = Table::of(range, range.model(&choice.model)?, choice, pins);
    let answer = Answer { table, changed: choice.with(change, range), asked: Scope::of(change.question()?) };
    // What was not found out may be.
    let may = |rules, pins: &[Question]| !matches!(answer.any(rules, pins), Found::Nothing(_));
    if may(u64::MAX, pins) {
        return None;
    }
    let least = conflict(pins, &mut |pins| may(u64::MAX, pins));
    let release = answer.release(pins);
    if let Some(reason) = answer.table.drops_kept_bay(&answer.changed, Scope::of_all(&least)) {
        return Some(Why { reason, rules: Vec::new(), pins: least, release });
    }
    let sum = |rules: &[Rule]| rules.iter().fold(0, |all, rule| all | rule.bit());
    let (basics, others): (Vec<Rule>, Vec<Rule>) = Rule::ALL.iter().partition(|rule| rule.is_basic());
    let (always, of) = if may(sum(&basics), &least) { (sum(&basics), others) } else { (0, basics) };
    let rules = conflict(&of, &mut |rules| may(always | sum(rules), &least));
    if may(always | sum(&rules), &least) {
        return None;
    }
    let broken = |choice: &Choice| judge_stops(range, choice).findings.into_iter().find(|f| rules.contains(&f.rule));
    let reason = broken(&answer.changed).or_else(|| match answer.any(always, &least) {
        Found::Point(point) => broken(&point),
        Found::Nothing(_) | Found::GivenUp => None,
    })?;
    Some(Why { reason, rules, pins: least, release })
}

/// A choice with an answer taken that cannot be had.
struct Answer<'a> {
    table: Table<'a>,
    changed: Choice,
    asked: Scope,
}

impl Answer<'_> {
    /// A choice with the answer that some rules and pins allow.
    fn any(&self, rules: u64, pins: &[Question]) -> Found<Choice> {
        self.table.any(&self.changed, self.asked, (rules, Scope::of_all(pins)))
    }

    fn release(&self, pins: &[Question]) -> Option<Release> {
        let mut pins = pins.to_vec();
        // The least important ones first.
        pins.sort_by_key(|pin| place(*pin));
        pins.dedup();
        let gone = diagnosis(&pins, &mut |kept| matches!(self.any(u64::MAX, kept), Found::Point(_)))?;
        let kept: Vec<Question> = pins.into_iter().filter(|pin| !gone.contains(pin)).collect();
        match self.table.smallest(&self.changed, self.asked, Scope::of_all(&kept)) {
            Found::Point((_, point)) => Some(Release { pins: gone, changes: ways::changes(&self.changed, &point) }),
            Found::Nothing(_) | Found::GivenUp => None,
        }
        .filter(|release| !release.pins.is_empty())
    }
}

#[cfg(test)]
mod tests;
