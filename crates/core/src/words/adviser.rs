//! What the adviser says beside findings: what comes of a goal, and what to press.

use crate::choice::change::Change;
use crate::choice::question::Question;
use crate::range::Range;
use crate::solver::goals::Goal;
use crate::units::day::Day;

/// A goal as it was asked for.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// The goal.
    pub goal: Goal,
    /// The currency of its price.
    pub currency: &'a str,
    /// The day of asking.
    pub today: Day,
}

/// What the adviser says.
#[derive(Clone, Copy, Debug)]
pub enum Message<'a> {
    /// Which screen stands on it has to be said.
    SayScreen,
    /// The screen leaves no unit that suits the wall.
    ScreenOverWall,
    /// A button: an answer with the changes that go with it.
    TakeWith(&'a [Change], &'a Range),
    /// The day of a goal is past.
    PastDay {
        /// The day.
        by: Day,
        /// The day of asking.
        today: Day,
        /// The first day on which the present unit may arrive, if one can be promised.
        first: Option<Day>,
    },
    /// No way to a goal was found.
    NoWay {
        /// The goal.
        asked: Asked<'a>,
        /// Whether anything is kept.
        kept: bool,
        /// What of it stands in the way, where that is known.
        held: &'a [Question],
    },
    /// The cheapest that was found instead: its price, its weight, and the day on which it arrives.
    Cheapest(&'a str, &'a str, Option<&'a str>),
    /// A goal is met.
    Met {
        /// The goal.
        asked: Asked<'a>,
    },
    /// What a goal comes to.
    ComesTo {
        /// The goal.
        asked: Asked<'a>,
        /// The price with tax.
        price: &'a str,
        /// The weight of the whole.
        mass: &'a str,
        /// The day on which it arrives, if one can be promised.
        day: Option<&'a str>,
    },
}
