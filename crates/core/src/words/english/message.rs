//! Changes that are proposed, and why answers are shut.

use super::LOCALE;
use super::change::{alone, within};
use super::given::nearest_way;
use super::name::kept;
use crate::choice::change::Change;
use crate::words::finding::reason;
use crate::words::message::{Proposal, Refusal};
use crate::words::names::Names;

pub(in crate::words) fn proposal(proposal: Proposal<'_>, names: Names<'_>) -> String {
    match proposal {
        Proposal::Within(changes) => LOCALE.list(each(changes, names)),
        Proposal::Alone([]) => String::new(),
        Proposal::Alone([first, others @ ..]) => {
            LOCALE.list([alone(first, names)].into_iter().chain(each(others, names)))
        }
        Proposal::TakeLettingGo { pins, given, changes: [] } => format!("Let {} go and take this", kept(pins, given)),
        Proposal::TakeLettingGo { pins, given, changes } => {
            let others = ["take this".into()].into_iter().chain(each(changes, names));
            format!("Let {} go: {}", kept(pins, given), LOCALE.list(others))
        }
        Proposal::TakeWith(changes) => LOCALE.list(["Take this".into()].into_iter().chain(each(changes, names))),
        Proposal::LetGoAnd { pin, change } => format!("Let {} go and {}", kept(&[pin], &[]), within(change, names)),
    }
}

fn each<'a>(changes: &'a [Change], names: Names<'a>) -> impl Iterator<Item = String> {
    changes.iter().map(move |change| within(change, names))
}

pub(in crate::words) fn refusal(refusal: &Refusal<'_>) -> String {
    match refusal {
        Refusal::ByRule { reason: stop, kept: pins, given, one_bay_at_a_time, beyond, currency } => {
            let stop = reason(LOCALE, stop);
            // What was not searched is not ruled out.
            let unless =
                if *one_bay_at_a_time { ", unless perhaps several bays become wider or narrower at once" } else { "" };
            if pins.is_empty() && given.is_empty() {
                format!("{stop} No other change makes up for it{unless}.")
            } else {
                let said =
                    format!("{stop} You keep {}, so no other change makes up for it{unless}.", kept(pins, given));
                beyond.iter().fold(said, |said, beyond| format!("{said} {}", nearest_way(*beyond, currency)))
            }
        }
        Refusal::ByBay { bay, kept: pins, given } if pins.is_empty() && given.is_empty() => {
            format!("Bay {} would be gone. No other change makes up for it.", LOCALE.figure(*bay))
        }
        Refusal::ByBay { bay, kept: pins, given } => format!(
            "Bay {} would be gone. You keep {}, so no other change makes up for it.",
            LOCALE.figure(*bay),
            kept(pins, given)
        ),
        Refusal::NoWay(stop) => format!("{} No way round it was found.", reason(LOCALE, stop)),
    }
}
