//! Door leaves: shape, mass, gap, grip, and how far they open.

use super::dependencies::{Context, Dependencies, Direction, ONE};
use super::{Rule, Subject, numbered};
use crate::cabinet::case::Case;
use crate::cabinet::leaf::of;
use crate::cabinet::panel::PanelId;
use crate::cabinet::swing::hinge_gap;
use crate::choice::question::Question;
use crate::choice::{Fill, Hung};
use crate::rules::finding::{Figure, Finding, Limit, Severity, Unit};
use crate::units::quantity::Length;

/// The narrowest hole that a finger goes into and comes out of again.
// Source: 25 mm is what EN 14749 asks of gaps that open and shut, as cited in trade notes; for a hole by analogy.
const FINGER: Length = Length::mm(25.0);

// Common practice: less binds when the wood swells, more looks careless.
const GAP: (Length, Length) = (Length::mm(2.0), Length::mm(3.0));
/// As far as a hand pushes a leaf, in degrees.
// Common practice.
pub(crate) const OPEN: f64 = 95.0;

/// The angle to which two leaves beside each other can both stand open, in degrees.
///
/// ```
/// use slotwright_core::units::quantity::Length;
/// // Axes 80 mm apart, 18 mm thick, reaching 400 mm each: sin⁻¹(62/800) = 4.445° beyond a right angle.
/// let found = slotwright_core::rules::leaf::touch(Length::mm(62.0), Length::mm(800.0));
/// assert!((found - 94.445).abs() < 1e-3);
/// ```
// Source: geometry: both lean over by width × sin of what is beyond a right angle.
pub fn touch(apart: Length, reaches: Length) -> f64 {
    90.0 + libm::asin((apart / reaches).clamp(0.0, 1.0)).to_degrees()
}

/// Gaps that are not as they should be, leaves that touch or have nothing to open them by.
pub(crate) fn advise(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let (build, layout) = (&unit.picked.range.build, unit.layout);
    let bays = || numbered(unit.choice.bays.iter().zip(&layout.bays));
    let gap = hinge_gap(build, layout.body);
    let gap = if build.leaf_gap_mm < GAP.0 { build.leaf_gap_mm } else { gap };
    let first = bays().find(|(_, (bay, _))| matches!(bay.fill, Fill::Leaf(_)));
    if let Some((bay, _)) = first.filter(|_| gap > GAP.1 || gap < GAP.0) {
        let (limit, allowed) = if gap > GAP.1 { (Limit::AtMost, GAP.1) } else { (Limit::AtLeast, GAP.0) };
        let (found, allowed) = (Figure::length(gap), Figure::length(allowed));
        out.push(Finding::stops(Rule::LeafGap, Question::Bay(bay), found, limit, allowed).but(Severity::Warns));
    }
    for (bay, (chosen, span)) in bays() {
        let Fill::Leaf(hung) = chosen.fill else { continue };
        let hole = of(span, layout, build, hung).finger_hole(build, layout.body, hung);
        let found = hole.map_or(Length::ZERO, |_| build.finger_hole_mm);
        if found < FINGER {
            let (found, least) = (Figure::length(found), Figure::length(FINGER));
            let finding = Finding::stops(Rule::LeafGrip, Question::Bay(bay), found, Limit::AtLeast, least);
            out.push(finding.but(Severity::Warns).of([PanelId::Leaf(bay)]));
        }
    }
    for ((left, (here, span)), (bay, (beside, next))) in bays().zip(bays().skip(1)) {
        if (here.fill, beside.fill) != (Fill::Leaf(Hung::Right), Fill::Leaf(Hung::Left)) {
            continue;
        }
        let (one, other) = (of(span, layout, build, Hung::Right), of(next, layout, build, Hung::Left));
        let reaches = (one.axis - one.left) + (other.right - other.axis);
        let touch = touch(other.axis - one.axis - layout.body, reaches);
        if touch < OPEN {
            let (found, least) = (Figure::degrees(touch), Figure::degrees(OPEN));
            let finding = Finding::stops(Rule::LeafSwing, Question::Bay(bay), found, Limit::AtLeast, least);
            out.push(finding.but(Severity::Advises).of([PanelId::Leaf(left), PanelId::Leaf(bay)]));
        }
    }
}

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
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
        // It is cut only where its blank leaves it open, and nothing else with it.
        let cut = (leaf.most_mass(unit.coated) > most).then(|| Case::leaf(unit.picked, unit.choice, unit.layout, bay));
        let mass = cut.flatten().map(|panel| Case::weigh(&panel, unit.picked).mass);
        if let Some(mass) = mass.filter(|mass| *mass > most) {
            find(Rule::LeafMass, Figure::mass(mass), Limit::AtMost, Figure::mass(most));
        }
    }
}

/// What the leaf's width comes from, and its height where that matters.
pub(super) fn shape_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    let (wider, widths) = (Direction::to(finding.limit), context.widths_a_bay(finding));
    let is_ratio = finding.found.unit == Unit::Ratio;
    on.clear_width(context, wider, if is_ratio { context.leaf_height() * widths } else { ONE * widths });
    on.stiles(context, finding.about.bay().unwrap_or(0), wider, None);
    if is_ratio {
        let higher = if wider == Direction::Up { Direction::Down } else { Direction::Up };
        on.size(Question::Height, higher, Length::ZERO);
        on.answer(Question::Plinth);
    }
}

/// What the leaf's size comes from.
pub(super) fn mass_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    let smaller = context.to_less_mass(finding);
    on.clear_width(context, smaller, Length::ZERO);
    on.stiles(context, finding.about.bay().unwrap_or(0), smaller, None);
    on.size(Question::Height, smaller, Length::ZERO);
    on.answer(Question::Plinth);
}
