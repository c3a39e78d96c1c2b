//! A unit that nothing else stops has parts and a day: what has neither is told like all else that stops an order.

use super::{Rule, RuleCard};
use crate::finding::{Figure, Finding, Limit, Severity};
use crate::promise::NoDay;
use crate::question::Question;

/// See [`no_day`].
pub const PROMISE_DAY: RuleCard = RuleCard {
    code: "promise-day",
    what: "The calendar has as many working days as the unit takes until it is there, booked work included.",
    why: "An order without a day of arrival promises nothing.",
    source: "the range file; ten years are looked ahead, to the last day of the year 9999 at most",
};

/// See [`no_parts`].
pub const NO_PARTS: RuleCard = RuleCard {
    code: "no-parts",
    what: "A choice that keeps every other rule comes to parts.",
    why: "What has no parts can neither be priced nor made. No right range breaks it.",
    source: "the parts themselves",
};

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
