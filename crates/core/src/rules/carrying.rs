//! Parts that one or two people can carry.

use super::{Rule, RuleCard, Unit};
use crate::finding::{Figure, Finding, Limit, Question, Severity};
use crate::quantity::Mass;

/// See [`check`].
pub const PART_MASS: RuleCard = RuleCard {
    code: "part-mass",
    what: "No part is heavier than what two people may carry; from what one may carry on, two are asked for.",
    why: "The unit is put together by hand, and every part is lifted into its place.",
    source: "the range file; HSE INDG143, figure 1: 25 kg close to the body at knuckle height for one man. Local rules on manual handling decide",
};

/// No part is heavier than what two people may carry.
pub(crate) fn check(out: &mut Vec<Finding>, unit: Unit<'_>) {
    out.extend(over(unit, unit.picked.range.handling.two_people_kg));
}

/// A part that is heavier than what one person may carry asks for two.
pub(crate) fn advise(out: &mut Vec<Finding>, unit: Unit<'_>) {
    let stopped = out.iter().any(|finding| finding.rule == Rule::PartMass);
    if !stopped {
        let finding = over(unit, unit.picked.range.handling.one_person_kg);
        out.extend(finding.map(|finding| finding.but(Severity::Advises)));
    }
}

/// The heaviest part, if it is over `most`.
fn over(unit: Unit<'_>, most: Mass) -> Option<Finding> {
    let (id, mass) = unit.heaviest_over(most, unit.blanks)?;
    let (found, allowed) = (Figure::mass(mass), Figure::mass(most));
    Some(Finding::stops(Rule::PartMass, Question::Width, found, Limit::AtMost, allowed).of([id]))
}
