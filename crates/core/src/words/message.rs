//! What is said of several things at once, as data: which message, with its figures. What a finding, a change, a step
//! of assembly or a question says needs none: each is a message itself.

use crate::choice::change::Change;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding};
use crate::rules::id::Rule;
use crate::solver::kept::{Beyond, Given};
use crate::solver::why::{Release, Why};

/// Changes that are proposed, and what else is done with them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Proposal<'a> {
    /// Changes alone, as they stand within a sentence.
    Within(&'a [Change]),
    /// Changes alone, standing alone.
    Alone(&'a [Change]),
    /// To press: take an answer, let go of what is kept, and make other changes.
    TakeLettingGo {
        /// What is let go.
        pins: &'a [Question],
        /// What of that which was given is.
        given: &'a [Given],
        /// What changes then.
        changes: &'a [Change],
    },
    /// To press: take an answer, and make other changes.
    TakeWith(&'a [Change]),
    /// To press: let go of what is kept, and make a change.
    LetGoAnd {
        /// What is let go.
        pin: Question,
        /// What changes then.
        change: &'a Change,
    },
}

impl<'a> Proposal<'a> {
    /// What to press to take a shut answer.
    pub(super) fn release(release: &'a Release) -> Self {
        Self::TakeLettingGo { pins: &release.pins, given: &release.given, changes: &release.changes }
    }
}

/// Why an answer is shut.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Refusal<'a> {
    /// By a rule.
    ByRule {
        /// What stops it.
        reason: &'a Finding,
        /// What is kept and has a part in it.
        kept: Vec<Question>,
        /// What was given and has.
        given: Vec<Given>,
        /// Whether no more than one bay at a time was made wider or narrower.
        one_bay_at_a_time: bool,
        /// How the nearest way goes beyond what was given for the visit.
        beyond: &'a [Beyond],
        /// In which currency.
        currency: &'a str,
    },
    /// Because it leaves out a bay of which something is kept.
    ByBay {
        /// The number of the bay.
        bay: Figure,
        /// What is kept and has a part in it.
        kept: Vec<Question>,
        /// What was given and has.
        given: Vec<Given>,
    },
    /// No more was found out than what stops it.
    NoWay(&'a Finding),
}

impl<'a> Refusal<'a> {
    /// All that is let go for the answer is named, though less of it may be enough.
    pub(super) fn of(why: &'a Why, currency: &'a str) -> Self {
        let releases = || why.release.iter();
        let gone = releases().flat_map(|release| &release.pins).filter(|pin| !why.pins.contains(pin));
        let kept = why.pins.iter().chain(gone).copied().collect();
        let gone = releases().flat_map(|release| &release.given).filter(|given| !why.given.contains(given));
        let given = why.given.iter().chain(gone).copied().collect();
        // What leaves out a bay that is kept breaks no rule.
        match why.rules.as_slice() {
            [] if why.reason.rule == Rule::FitOutCount => Self::ByBay { bay: why.reason.allowed, kept, given },
            [] | [_, ..] => {
                let beyond = why.release.as_ref().map(|release| release.beyond.as_slice()).unwrap_or_default();
                let one_bay_at_a_time = why.one_bay_at_a_time;
                Self::ByRule { reason: &why.reason, kept, given, one_bay_at_a_time, beyond, currency }
            }
        }
    }
}
