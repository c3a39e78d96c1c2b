//! What is said of links: why one cannot be read, and what became different since one was made.

use super::reason;
use crate::business::price::Price;
use crate::choice::link::{Link, LinkError, Mark};
use crate::rules::finding::{Finding, Severity};
use crate::units::money::Money;

/// Since when something is different.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Since {
    /// Since its link was made.
    Link,
    /// Since the person saw this unit last: its link was kept for that.
    Visit,
}

/// A sentence about a link.
#[derive(Clone, Copy, Debug)]
pub enum Message<'a> {
    /// Why it cannot be read.
    Fault(&'a LinkError),
    /// The same, with what to do.
    Refused(&'a LinkError),
    /// The range does not have its model.
    NoModel(&'a str),
    /// The unit was opened from it; `saved` says whether something else is saved.
    Opened {
        /// Whether another unit is saved.
        saved: bool,
    },
    /// The range has changed since, but neither whether the unit can be ordered nor its price.
    SamePrice(Since),
    /// The price when it was made, and now.
    OtherPrice {
        /// Since when.
        since: Since,
        /// Whether the range has changed since.
        changed: bool,
        /// When it was made.
        then: Money,
        /// Now.
        now: Money,
        /// In which currency.
        currency: &'a str,
    },
    /// The unit could be ordered when it was made, but cannot be now.
    NoLonger {
        /// Since when.
        since: Since,
        /// Whether the range has changed since.
        changed: bool,
        /// Why not.
        reasons: &'a str,
    },
    /// The unit cannot be ordered, and could not then.
    CannotBeMade(&'a str),
}

/// Nobody reads more reasons at once; each stands beside its question as well.
const REASONS_MOST: usize = 3;

/// The first reasons why a unit cannot be made; nothing if nothing stops it.
fn reasons(findings: &[Finding]) -> String {
    let stops = findings.iter().filter(|finding| finding.severity == Severity::Stops);
    stops.take(REASONS_MOST).map(reason).collect::<Vec<_>>().join(" ")
}

/// That a unit which came from elsewhere cannot be made, and why; nothing if it can.
pub fn unmade(findings: &[Finding]) -> Option<String> {
    let reasons = reasons(findings);
    (!reasons.is_empty()).then(|| Message::CannotBeMade(&reasons).text())
}

/// What became different since a link was made, or why its unit cannot be made; nothing if all is as it was. The mark
/// is that of the present range, by which the unit was judged.
pub fn difference(
    link: &Link,
    since: Since,
    range: Mark,
    findings: &[Finding],
    price: Option<&Price>,
) -> Option<String> {
    let changed = link.made.is_some_and(|made| made.range != range);
    let reasons = reasons(findings);
    let message = if reasons.is_empty() {
        let (then, price) = (link.made?.price, price?);
        if then != price.total_minor {
            Message::OtherPrice { since, changed, then, now: price.total_minor, currency: &price.currency }
        } else if changed {
            Message::SamePrice(since)
        } else {
            return None;
        }
    } else {
        match link.made {
            Some(_) => Message::NoLonger { since, changed, reasons: &reasons },
            None => Message::CannotBeMade(&reasons),
        }
    };
    Some(message.text())
}
