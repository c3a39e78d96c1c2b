//! A unit that nothing else stops has parts and a day: what has neither is told like all else that stops an order.

use super::Rule;
use crate::business::promise::NoDay;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit, Severity};

/// The calendar ends before the unit is there: days that it takes. Or nobody ever collects it: days on which that could be.
pub(crate) fn no_day(out: &mut Vec<Finding>, none: NoDay) {
    let (found, limit, allowed) = match none {
        NoDay::TooFew { needed, there } => (needed, Limit::AtMost, there),
        NoDay::NeverCollected => (0, Limit::AtLeast, 1),
    };
    let (found, allowed) = (Figure::count(found), Figure::count(allowed));
    out.push(Finding::stops(Rule::PromiseDay, Question::Model, found, limit, allowed));
}

/// Nothing was built though nothing stops: an error of ours or of a range that was not checked.
pub(crate) fn no_parts(out: &mut Vec<Finding>) {
    if !out.iter().any(|finding| finding.severity == Severity::Stops) {
        let (found, allowed) = (Figure::count(0u32), Figure::count(1u32));
        out.push(Finding::stops(Rule::NoParts, Question::Model, found, Limit::AtLeast, allowed));
    }
}
