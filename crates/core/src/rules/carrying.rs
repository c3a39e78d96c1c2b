//! Parts and packages that people can carry.

use super::dependencies::{Context, Dependencies};
use super::{Rule, Subject};
use crate::business::carriage::{Excess, carriage};
use crate::cabinet::blank::Blank;
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit, Severity};
use crate::units::quantity::Mass;

/// Long parts, and packages that no carrier takes as usual.
// Common practice: from some length on a part takes two; the figures are those of the range file.
pub(crate) fn advise_sizes(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let range = unit.picked.range;
    let two = out.iter().any(|finding| finding.rule == Rule::PartMass);
    let find = |rule, found, most, parts: &[PanelId]| {
        Finding::stops(rule, Question::Width, found, Limit::AtMost, most).of(parts.iter().copied())
    };
    let most = range.handling.one_person_longest_mm;
    let long = |blank: &Blank| blank.whole().0.max(blank.whole().1);
    // Of equals the first.
    let longest = unit.blanks.iter().rev().max_by(|a, b| long(a).total_cmp(&long(b)));
    if let Some(part) = longest.filter(|part| long(part) > most && !two) {
        let (found, most) = (Figure::length(long(part)), Figure::length(most));
        out.push(find(Rule::PartLength, found, most, &[part.id]).but(Severity::Advises));
    }
    let Some((bill, _)) = unit.work() else { return };
    let Some(carriage) = carriage(range, bill) else { return };
    if let Some((package, Excess { found, allowed, lifted_by })) = carriage.refused(range) {
        let parts: Vec<PanelId> = package.parts.iter().map(|part| part.id).collect();
        let finding = find(Rule::Package, found, allowed, &parts).but(Severity::Warns);
        out.push(Finding { lifted_by, ..finding });
    }
}

/// No part is heavier than what three people may carry.
// Source: HSE INDG143, figure 1, for one; HSE L23: two carry two thirds, three half of the sum. Local rules decide.
pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    out.extend(over(unit, unit.picked.range.handling.together(3)));
}

/// A part that is heavier than what one person may carry asks for two, one that is heavier than what two may for three.
pub(crate) fn advise(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let stopped = out.iter().any(|finding| finding.rule == Rule::PartMass);
    if !stopped {
        let handling = &unit.picked.range.handling;
        let three = || over(unit, handling.together(2)).map(|finding| finding.but(Severity::Warns));
        let two = || over(unit, handling.together(1)).map(|finding| finding.but(Severity::Advises));
        out.extend(three().or_else(two));
    }
}

/// The heaviest part, if it is over `most`.
fn over(unit: Subject<'_>, most: Mass) -> Option<Finding> {
    let (id, mass) = unit.heaviest_over(most)?;
    let (found, allowed) = (Figure::mass(mass), Figure::mass(most));
    Some(Finding::stops(Rule::PartMass, Question::Width, found, Limit::AtMost, allowed).of([id]))
}

/// Everything that the parts come from: what is too heavy has to become smaller.
pub(super) fn dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.whole(context, context.to_less_mass(finding));
}
