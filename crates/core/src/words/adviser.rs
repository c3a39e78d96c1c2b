//! What the adviser says beside findings: what comes of a goal, and what to press.

use crate::choice::change::Change;
use crate::choice::question::Question;
use crate::range::Range;
use crate::solver::goals::Goal;

/// What the adviser says.
#[derive(Clone, Copy, Debug)]
pub enum Message<'a> {
    /// Which screen stands on it has to be said.
    SayScreen,
    /// The screen leaves no unit that suits the wall.
    ScreenOverWall,
    /// A button: an answer with the changes that go with it.
    TakeWith(&'a [Change], &'a Range),
    /// No way to a goal was found.
    NoWay {
        /// The goal.
        goal: Goal,
        /// The currency of its price.
        currency: &'a str,
        /// Whether anything is kept.
        kept: bool,
        /// What of it stands in the way, where that is known.
        held: &'a [Question],
    },
    /// A goal is met.
    Met {
        /// The goal.
        goal: Goal,
        /// The currency of its price.
        currency: &'a str,
    },
    /// What a goal comes to.
    ComesTo {
        /// The goal.
        goal: Goal,
        /// The currency of its price.
        currency: &'a str,
        /// The price with tax.
        price: &'a str,
        /// The weight of the whole.
        mass: &'a str,
        /// The day on which it arrives, if one can be promised.
        day: Option<&'a str>,
    },
}
