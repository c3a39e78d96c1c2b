//! The unit goes together part by part and then holds together.

use super::Rule;
use crate::cabinet::assembly::Assembly;
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit, Severity};

/// What the proof of a unit that nothing else stops left open: an error of ours, which stops the order.
pub(crate) fn check(out: &mut Vec<Finding>, assembly: &Assembly) {
    let stops = out.iter().any(|finding| finding.severity == Severity::Stops);
    if stops || assembly.is_proven() {
        return;
    }
    let loose = assembly.loose.iter().flat_map(|loose| loose.parts.iter().copied());
    let mut parts: Vec<PanelId> = assembly.stuck.iter().copied().chain(loose).collect();
    parts.sort_unstable();
    parts.dedup();
    let count = Figure::count(u32::try_from(parts.len()).unwrap_or(u32::MAX));
    let allowed = Figure::count(0u32);
    out.push(Finding::stops(Rule::Interlock, Question::Model, count, Limit::AtMost, allowed).of(parts));
}
