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

/// How a unit goes beyond what was given for a visit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Beyond {
    /// It costs more.
    Budget {
        /// What it costs, with tax.
        price_minor: Money,
        /// What it may cost.
        most_minor: Money,
    },
    /// It comes later.
    Day {
        /// The day on which it arrives; `None` if no day can be promised.
        arrives: Option<Day>,
        /// The day on which it has to be there.
        by: Day,
        /// The day of asking: the one before may be past.
        today: Day,
    },
}

impl Beyond {
    /// What it goes beyond.
    pub const fn given(&self) -> Given {
        match self {
            Self::Budget { .. } => Given::Budget,
            Self::Day { .. } => Given::Day,
        }
    }
}

impl Visit {
    /// How a choice goes beyond it, the day first; nothing if nothing can be built of it.
    pub fn beyond(&self, range: &Range, choice: &Choice) -> impl Iterator<Item = Beyond> + use<> {
        let asks = self.budget.is_some() || self.by.is_some();
        let built = asks.then(|| judge_stops(range, choice).built(choice, (self.today, &self.backlog))).flatten();
        let (price, arrives) = built.map_or((Money::ZERO, None), |(built, _)| {
            (built.price.total_minor, Some(built.promise.map(|promise| promise.arrives)))
        });
        let day = self.by.zip(arrives).filter(|(by, arrives)| arrives.is_none_or(|arrives| arrives > *by));
        let today = self.today;
        let day = day.map(|(by, arrives)| Beyond::Day { arrives, by, today });
        let budget = self.budget.filter(|most| price > *most);
        let budget = budget.map(|most_minor| Beyond::Budget { price_minor: price, most_minor });
        day.into_iter().chain(budget)
    }

    /// What of it a choice breaks, as bits; nothing if nothing can be built of it.
    pub(crate) fn broken(&self, range: &Range, choice: &Choice) -> u64 {
        if let (Some(most), None) = (self.budget, self.by)
            && let Some((price, _)) = judge_stops(range, choice).at_least(choice, (self.today, &self.backlog))
            && price > most
        {
            return BUDGET;
        }
        self.beyond(range, choice).fold(0, |all, beyond| all | beyond.given().bits())
    }

    /// What of it a choice breaks.
    pub fn breaks(&self, range: &Range, choice: &Choice) -> Vec<Given> {
        self.beyond(range, choice).map(|beyond| beyond.given()).collect()
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
        Size::Height | Size::Depth | Size::Bow => 0,
    }
}

/// What a size may break where it is asked for.
pub(super) const fn alone(size: Size) -> u64 {
    match size {
        Size::Height => Rule::ViewingHeight.bit(),
        Size::Width | Size::Depth | Size::Bow => 0,
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
