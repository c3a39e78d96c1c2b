//! Findings as sentences: what stops an order, and what is good to know.

use super::english;
use super::locale::Locale;
use crate::rules::finding::{Finding, Severity};

/// The sentence of any finding.
pub(super) fn sentence(locale: Locale, finding: &Finding) -> String {
    match finding.severity {
        Severity::Stops => reason(locale, finding),
        Severity::Warns | Severity::Advises => advice(locale, finding).unwrap_or_else(|| figures(locale, finding)),
    }
}

/// The sentence of a finding that stops the order.
pub(super) fn reason(locale: Locale, finding: &Finding) -> String {
    stop(locale, finding).unwrap_or_else(|| figures(locale, finding))
}

/// What stops an order; `None` if its rule never does. Apart from advice, whose sentences the page does without.
fn stop(locale: Locale, finding: &Finding) -> Option<String> {
    match locale {
        Locale::English => english::finding::stop(finding),
    }
}

/// What warns or advises; `None` if its rule does not.
fn advice(locale: Locale, finding: &Finding) -> Option<String> {
    match locale {
        Locale::English => english::finding::advice(finding),
    }
}

/// What is left to say where the table of rules and the sentences differ: a test holds that they do not.
fn figures(locale: Locale, finding: &Finding) -> String {
    match locale {
        Locale::English => english::finding::figures(finding),
    }
}

#[cfg(test)]
mod tests;
