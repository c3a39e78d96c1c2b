//! What is kept whatever is asked for: pinned answers, and what the customer gave. Neither is broken by a way out
//! unless it is let go.

use serde::Serialize;

use crate::business::promise::Backlog;
use crate::choice::Choice;
use crate::choice::change::Change;
use crate::choice::question::Question;
use crate::range::Range;
use crate::rules::finding::Finding;
use crate::rules::{Rule, judge_stops, place};
use crate::units::day::Day;
use crate::units::money::Money;

use super::Size;

/// Something that the customer gave.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Given {
    /// The free wall.
    Wall,
    /// The screen on the top.
    Screen,
    /// What it may cost: of the visit, not of the order.
    Budget,
    /// When it has to be there: of the visit, not of the order.
    Day,
}

/// Bits of a set of rules that no rule has.
const BUDGET: u64 = 1 << 62;
const DAY: u64 = 1 << 63;
const _: () = assert!(Rule::ALL.len() <= 62, "budget and day have bits of their own");

impl Given {
    /// All of them, those that are rather let go first.
    pub const ALL: [Self; 4] = [Self::Day, Self::Budget, Self::Screen, Self::Wall];

    /// What breaks it, as bits of a set of rules.
    pub(super) const fn bits(self) -> u64 {
        match self {
            Self::Wall => Rule::WallWidth.bit(),
            Self::Screen => Rule::ScreenWidth.bit() | Rule::ViewingHeight.bit(),
            Self::Budget => BUDGET,
            Self::Day => DAY,
        }
    }

    /// What lets it go, if a choice says it.
    pub const fn undone(self) -> Option<Change> {
        match self {
            Self::Wall => Some(Change::WallMm(None)),
            Self::Screen => Some(Change::ScreenTenthInch(None)),
            Self::Budget | Self::Day => None,
        }
    }
}

/// What breaks anything that was given.
pub(super) const GIVEN: u64 = Given::Wall.bits() | Given::Screen.bits() | Given::Budget.bits() | Given::Day.bits();

/// What breaks anything that was given for a visit.
pub(super) const VISIT: u64 = BUDGET | DAY;

/// What was given for a visit.
#[derive(Clone, Debug)]
pub struct Visit {
    /// It costs no more, with tax.
    pub budget: Option<Money>,
    /// It arrives on that day or before.
    pub by: Option<Day>,
    /// The day of asking.
    pub today: Day,
    /// Work that is booked.
    pub backlog: Backlog,
}

impl Visit {
    /// What of it a choice breaks, as bits; nothing if nothing can be built of it.
    pub(crate) fn broken(&self, range: &Range, choice: &Choice) -> u64 {
        if self.budget.is_none() && self.by.is_none() {
            return 0;
        }
        let built = judge_stops(range, choice).built(choice, (self.today, &self.backlog));
        let Some((built, _)) = built else { return 0 };
        let dear = self.budget.is_some_and(|most| built.price.total_minor > most);
        let late = self.by.is_some_and(|by| built.promise.is_none_or(|promise| promise.arrives > by));
        (u64::from(dear) * BUDGET) | (u64::from(late) * DAY)
    }

    /// What of it a choice breaks.
    pub fn breaks(&self, range: &Range, choice: &Choice) -> Vec<Given> {
        let broken = self.broken(range, choice);
        Given::ALL.into_iter().filter(|given| given.bits() & broken != 0).collect()
    }
}

/// What is kept.
#[derive(Clone, Copy, Debug, Default)]
pub struct Kept<'a> {
    /// Questions whose answers are pinned.
    pub pins: &'a [Question],
    /// What was given for the visit; wall and screen are the choice's own.
    pub visit: Option<&'a Visit>,
}

impl<'a> From<&'a [Question]> for Kept<'a> {
    fn from(pins: &'a [Question]) -> Self {
        Self { pins, visit: None }
    }
}

impl<'a, const N: usize> From<&'a [Question; N]> for Kept<'a> {
    fn from(pins: &'a [Question; N]) -> Self {
        Self { pins, visit: None }
    }
}

impl<'a> From<&'a Vec<Question>> for Kept<'a> {
    fn from(pins: &'a Vec<Question>) -> Self {
        Self { pins, visit: None }
    }
}

impl Kept<'_> {
    /// Whether it says that.
    pub(super) fn says(self, given: Given, choice: &Choice) -> bool {
        match given {
            Given::Wall => choice.place.wall_mm.is_some(),
            Given::Screen => choice.place.screen_tenth_inch.is_some(),
            Given::Budget => self.visit.is_some_and(|visit| visit.budget.is_some()),
            Given::Day => self.visit.is_some_and(|visit| visit.by.is_some()),
        }
    }
}

/// What of that which was given a choice breaks, as bits.
pub(crate) fn broken(range: &Range, choice: &Choice, visit: Option<&Visit>) -> u64 {
    let place = place::breaches(choice).fold(0, |all, finding| all | finding.rule.bit());
    place | visit.map_or(0, |visit| visit.broken(range, choice))
}

/// What a size itself may not break, whatever the present one does: the sizes that go do not depend on the present one.
/// How high eyes are before a screen only warns.
pub(super) const fn own(size: Size) -> u64 {
    match size {
        Size::Width => Rule::WallWidth.bit() | Rule::ScreenWidth.bit(),
        Size::Height | Size::Depth => 0,
    }
}

/// What a size may break where it is asked for.
pub(super) const fn alone(size: Size) -> u64 {
    match size {
        Size::Height => Rule::ViewingHeight.bit(),
        Size::Width | Size::Depth => 0,
    }
}

/// What a choice breaks of these, if anything.
pub(super) fn breach(choice: &Choice, rules: u64) -> Option<Finding> {
    // Where nothing was given, as mostly, nothing is looked at: every size that goes comes here.
    if choice.place.wall_mm.is_none() && choice.place.screen_tenth_inch.is_none() {
        return None;
    }
    place::breaches(choice).find(|finding| finding.rule.bit() & rules != 0)
}

#[cfg(test)]
mod tests;
