//! Tall units and units with leaves are fastened to the wall.

use super::{Rule, RuleCard, Unit};
use crate::choice::Fill;
use crate::finding::{Figure, Finding, Limit, Question, Severity};
use crate::quantity::Length;

/// See [`check`].
pub const WALL_TETHER: RuleCard = RuleCard {
    code: "wall-tether",
    what: "A unit over 600 mm high, or with a door leaf, is fastened to the wall.",
    why: "Furniture that tips over kills children. This advice is always given; a calculation replaces no test, and local rules and qualified people decide.",
    source: "the height above which GB/T 10357.4-2013, 4.1 asks for a stability test; otherwise common practice",
};

// Source: GB/T 10357.4-2013, 4.1: stability is tested from this height on.
const LOW: Length = Length::mm(600.0);

pub(crate) fn check(out: &mut Vec<Finding>, unit: Unit<'_>) {
    let leaf = unit.choice.bays.iter().any(|bay| matches!(bay.fill, Fill::Leaf(_)));
    if unit.layout.height > LOW || leaf {
        let (found, low) = (Figure::length(unit.layout.height), Figure::length(LOW));
        let finding = Finding::stops(Rule::WallTether, Question::Height, found, Limit::AtMost, low);
        out.push(finding.but(Severity::Advises));
    }
}
