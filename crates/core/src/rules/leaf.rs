//! Door leaves: shape and mass.

use super::{Rule, RuleCard, Unit};
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
    for leaf in unit.blanks {
        let PanelId::Leaf(bay) = leaf.id else { continue };
        let (id, (width, height)) = (leaf.id, leaf.size);
        let mut find = |rule, found, limit, allowed| {
            out.push(Finding::stops(rule, Question::Bay(bay), found, limit, allowed).of([id]));
        };
        let shape = width / height;
        if width < strength.leaf_least_mm {
            let least = Figure::length(strength.leaf_least_mm);
            find(Rule::LeafShape, Figure::length(width), Limit::AtLeast, least);
        } else if shape > strength.leaf_widest {
            find(Rule::LeafShape, Figure::ratio(shape), Limit::AtMost, Figure::ratio(strength.leaf_widest));
        } else if shape < strength.leaf_narrowest {
            find(Rule::LeafShape, Figure::ratio(shape), Limit::AtLeast, Figure::ratio(strength.leaf_narrowest));
        }
        let most = strength.leaf_most_kg;
        if let Some((_, mass)) = unit.heaviest_over(most, core::slice::from_ref(leaf)) {
            find(Rule::LeafMass, Figure::mass(mass), Limit::AtMost, Figure::mass(most));
        }
    }
}
