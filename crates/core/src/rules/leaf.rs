//! Door leaves: shape and mass.

use super::{Rule, RuleCard, Unit, numbered};
use crate::case::Case;
use crate::choice::Fill;
use crate::finding::{Figure, Finding, Limit, Question};
use crate::panel::PanelId;

/// A leaf's shape.
pub const LEAF_SHAPE: RuleCard = RuleCard {
    code: "leaf-shape",
    what: "A leaf is at least as wide as the range asks, and its width over its height stays within the range's limits.",
    why: "A wide low leaf hangs on its pivots with a long lever and droops; a narrow one leaves no room to reach in.",
    source: "the range file; common practice",
};

/// A leaf's mass.
pub const LEAF_MASS: RuleCard = RuleCard {
    code: "leaf-mass",
    what: "A leaf is no heavier than what its wooden pivots carry.",
    why: "The lower pivot bears the whole leaf and wears.",
    source: "the range file; common practice",
};

pub(crate) fn check(out: &mut Vec<Finding>, unit: Unit<'_>) {
    let strength = &unit.picked.range.strength;
    for (bay, chosen) in numbered(&unit.choice.bays) {
        let Fill::Leaf(_) = chosen.fill else { continue };
        let id = PanelId::Leaf(bay);
        let Some(leaf) = unit.case.panel(id) else { continue };
        let mut find = |rule, found, limit, allowed| {
            out.push(Finding::stops(rule, Question::Bay(bay), found, limit, allowed).of([id]));
        };
        let shape = leaf.width / leaf.height;
        if leaf.width < strength.leaf_least_mm {
            let least = Figure::length(strength.leaf_least_mm);
            find(Rule::LeafShape, Figure::length(leaf.width), Limit::AtLeast, least);
        } else if shape > strength.leaf_widest {
            find(Rule::LeafShape, Figure::ratio(shape), Limit::AtMost, Figure::ratio(strength.leaf_widest));
        } else if shape < strength.leaf_narrowest {
            find(Rule::LeafShape, Figure::ratio(shape), Limit::AtLeast, Figure::ratio(strength.leaf_narrowest));
        }
        let mass = Case::weigh(leaf, unit.picked).mass;
        if mass > strength.leaf_most_kg {
            find(Rule::LeafMass, Figure::mass(mass), Limit::AtMost, Figure::mass(strength.leaf_most_kg));
        }
    }
}
