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
    let find = |rule, found, most, parts: &[PanelId]| {
        Finding::stops(rule, Question::Width, found, Limit::AtMost, most).of(parts.iter().copied())
    };
    let most = range.handling.one_person_longest_mm;
    let long = |blank: &Blank| blank.whole().0.max(blank.whole().1);
    // What is told to be heavy is told to need two already.
    let is_heavy = |part: PanelId| out.iter().any(|told| told.rule == Rule::PartMass && told.parts.contains(&part));
    let all = || unit.blanks.iter().filter(|part| long(part) > most && !is_heavy(part.id));
    // Of equals the first.
    if let Some(longest) = all().rev().max_by(|a, b| long(a).total_cmp(&long(b))) {
        let (found, most) = (Figure::length(long(longest)), Figure::length(most));
        let others = all().map(|part| part.id).filter(|id| *id != longest.id);
        let parts: Vec<PanelId> = core::iter::once(longest.id).chain(others).collect();
        out.push(find(Rule::PartLength, found, most, &parts).but(Severity::Advises));
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::business::bill::{Bill, FlatPart};
    use crate::choice::Choice;
    use crate::rules::judge;
    use crate::testing::demo;
    use crate::words::sentence;

    /// All parts over the length are named, the longest first, the others in reading order, but for those that are told to be heavy.
    #[test]
    fn every_long_part_is_named() {
        let mut range = demo();
        let choice = Choice::first_of(&range).unwrap();
        for (one_kg, heavy) in [(25.0, false), (8.0, true)] {
            range.handling.one_person_longest_mm = crate::units::quantity::Length::mm(1500.0);
            range.handling.one_person_kg = Mass::kg(one_kg);
            let judged = judge(&range, &choice);
            let find = |rule| judged.findings.iter().find(|found| found.rule == rule);
            let finding = find(Rule::PartLength).unwrap();
            let built = Bill::of(
                &crate::cabinet::case::WeighedCase::of(
                    judged.picked.unwrap(),
                    &choice,
                    judged.layout.as_ref().unwrap(),
                )
                .unwrap(),
            );
            let told = find(Rule::PartMass).map(|heavy| heavy.parts[0]);
            assert_eq!(told.is_some(), heavy);
            let wanted = |part: &&FlatPart| part.long.in_mm() > 1500.0 && Some(part.id) != told;
            let mut long: Vec<&FlatPart> = built.flat.iter().filter(wanted).collect();
            long.sort_by_key(|part| part.id);
            // `max_by` takes the last of equals.
            let longest = (0..long.len()).rev().max_by(|a, b| long[*a].long.total_cmp(&long[*b].long)).unwrap();
            long[..=longest].rotate_right(1);
            let wanted: Vec<PanelId> = long.iter().map(|part| part.id).collect();
            assert!(finding.parts == wanted && wanted.len() >= 2, "{:?} {wanted:?}", finding.parts);
            let said = sentence(finding);
            assert!(said.ends_with("lift each with two people."), "{said}");
        }
    }
}
