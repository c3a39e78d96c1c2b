//! Parts that one or two people can carry.

use super::{Rule, RuleCard, Unit};
use crate::case::Case;
use crate::finding::{Figure, Finding, Limit, Question, Severity};

/// See [`check`].
pub const PART_MASS: RuleCard = RuleCard {
    code: "part-mass",
    what: "No part is heavier than what two people may carry; from what one may carry on, two are asked for.",
    why: "The unit is put together by hand, and every part is lifted into its place.",
    source: "the range file; HSE INDG143, figure 1: 25 kg close to the body at knuckle height for one man. Local rules on manual handling decide",
};

/// The heaviest part against both limits.
pub(crate) fn check(out: &mut Vec<Finding>, unit: Unit<'_>) {
    let handling = &unit.picked.range.handling;
    let weighed = unit.case.panels.iter().map(|panel| (panel.id, Case::weigh(panel, unit.picked).mass));
    let Some((id, mass)) = weighed.max_by(|a, b| a.1.total_cmp(&b.1)) else { return };
    let finding = |most| {
        Finding::stops(Rule::PartMass, Question::Width, Figure::mass(mass), Limit::AtMost, Figure::mass(most)).of([id])
    };
    if mass > handling.two_people_kg {
        out.push(finding(handling.two_people_kg));
    } else if mass > handling.one_person_kg {
        out.push(finding(handling.one_person_kg).but(Severity::Advises));
    }
}
