//! The unit goes together part by part and then holds together.

use super::{Proof, Rule};
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit, Severity};
use crate::units::short;

/// What the proof of a unit that nothing else stops left open: an error of ours, which stops the order.
pub(crate) fn check(out: &mut Vec<Finding>, Proof { assembly, .. }: Proof<'_>) {
    let stops = out.iter().any(|finding| finding.severity == Severity::Stops);
    if stops || assembly.is_proven() {
        return;
    }
    let loose = assembly.loose.iter().flat_map(|loose| loose.parts.iter().copied());
    let unheld = assembly.unheld.iter().copied();
    let mut parts: Vec<PanelId> = assembly.stuck.iter().copied().chain(loose).chain(unheld).collect();
    short::sort(&mut parts, |part| *part);
    parts.dedup();
    let count = Figure::count(u32::try_from(parts.len()).unwrap_or(u32::MAX));
    let allowed = Figure::count(0u32);
    out.push(Finding::stops(Rule::Interlock, Question::Model, count, Limit::AtMost, allowed).of(parts));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cabinet::assembly::Assembly;
    use crate::cabinet::case::Case;
    use crate::cabinet::layout::{Layout, Picked};
    use crate::choice::Choice;
    use crate::testing::demo;

    /// A unit that something else stops is not found loose as well; one that is only warned of is.
    #[test]
    fn what_is_not_proven_stops_a_unit_that_nothing_else_stops() {
        let range = demo();
        let choice = Choice::first_of(&range).unwrap();
        let picked = Picked::of(&range, &choice).unwrap();
        let layout = Layout::of(picked, &choice).unwrap();
        let case = Case::of(picked, &choice, &layout).unwrap();
        let proven = Assembly::of(picked, &case);
        let stuck = Assembly { stuck: vec![PanelId::Top, PanelId::Back], ..proven.clone() };
        let one = Figure::count(1u32);
        let other = Finding::stops(Rule::SizeStep, Question::Width, one, Limit::AtMost, one);
        let found = |before: &[Finding], assembly: &Assembly| {
            let mut out = before.to_vec();
            check(&mut out, Proof { assembly, layout: &layout, build: &range.build });
            out.split_off(before.len())
        };
        let [finding] = &found(&[], &stuck)[..] else { panic!("it is found once") };
        assert_eq!((finding.rule, finding.severity, finding.found.value), (Rule::Interlock, Severity::Stops, 2.0));
        assert!(finding.parts.is_sorted() && finding.parts.contains(&PanelId::Back), "{:?}", finding.parts);
        assert_eq!(found(core::slice::from_ref(&other), &stuck), []);
        assert_eq!(found(&[other.but(Severity::Warns)], &stuck).len(), 1);
        assert_eq!(found(&[], &proven), []);
    }
}
