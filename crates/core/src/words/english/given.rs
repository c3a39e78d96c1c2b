//! What was given for a visit, in English: how a unit goes beyond it, and to let it go.

use super::name::kept;
use crate::solver::kept::{Beyond, Given};
use crate::words::{day, money};

pub(in crate::words) fn beyond(of: Beyond, currency: &str) -> String {
    match of {
        Beyond::Budget { price_minor, most_minor } => {
            format!("It costs {}; you gave {}.", money(price_minor, currency), money(most_minor, currency))
        }
        Beyond::Day { arrives, by, today } if by < today => {
            past(arrives.map(|arrives| day(arrives, today)), &day(by, today))
        }
        Beyond::Day { arrives: Some(arrives), by, today } => {
            format!("It comes on {}; you want it by {}.", day(arrives, today), day(by, today))
        }
        Beyond::Day { arrives: None, by, today } => {
            format!("No day can be promised for it; you want it by {}.", day(by, today))
        }
    }
}

/// A day that is past, and the first one that is possible.
pub(super) fn past(first: Option<String>, by: &str) -> String {
    match first {
        Some(first) => format!("{by} is in the past; it comes on {first} at the earliest."),
        None => format!("{by} is in the past, and no day can be promised for it."),
    }
}

/// What the nearest way to an answer would break of it.
pub(super) fn nearest_way(of: Beyond, currency: &str) -> String {
    match of {
        Beyond::Budget { price_minor, most_minor } => {
            format!("The nearest way costs {}; you gave {}.", money(price_minor, currency), money(most_minor, currency))
        }
        Beyond::Day { arrives: Some(arrives), by, today } if by < today => {
            format!("{} is in the past; the nearest way comes on {}.", day(by, today), day(arrives, today))
        }
        Beyond::Day { arrives: Some(arrives), by, today } => {
            format!("The nearest way comes on {}; you want it by {}.", day(arrives, today), day(by, today))
        }
        Beyond::Day { arrives: None, by, today } => {
            format!("For the nearest way no day can be promised; you want it by {}.", day(by, today))
        }
    }
}

pub(in crate::words) fn let_go(given: Given) -> String {
    format!("Let {} go", kept(&[], &[given]))
}
