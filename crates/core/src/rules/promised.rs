//! A unit that nothing else stops has parts and a day: what has neither is told like all else that stops an order.

use super::Rule;
use crate::business::promise::NoDay;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit, Severity};

/// The calendar ends before the unit is there.
pub(crate) fn no_day(out: &mut Vec<Finding>, none: NoDay) {
    let (found, allowed) = (Figure::count(none.needed), Figure::count(none.there));
    out.push(Finding::stops(Rule::PromiseDay, Question::Model, found, Limit::AtMost, allowed));
}

/// Nothing was built though nothing stops: an error of ours or of a range that was not checked.
pub(crate) fn no_parts(out: &mut Vec<Finding>) {
    if !out.iter().any(|finding| finding.severity == Severity::Stops) {
        let (found, allowed) = (Figure::count(0u32), Figure::count(1u32));
        out.push(Finding::stops(Rule::NoParts, Question::Model, found, Limit::AtLeast, allowed));
    }
}
