//! Wood on wood: what ears and pivots press on.

use super::dependencies::{Context, Dependencies, Direction};
use super::{Rule, Subject, numbered};
use crate::cabinet::blank::{Blanks, Rank};
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::range::{Strength, relief_radius};
use crate::rules::finding::{Figure, Finding, Limit};
use crate::statics::sag::own_load;
use crate::units::quantity::{Area, Force, Length, Mass, Stress};

/// What a strength comes to for a load that stays.
// Source: k_mod over γ_M of EN 1995-1-1:2004+A1, tables 3.1 and 2.3.
fn lasting(strength: Stress, limits: &Strength) -> Stress {
    strength * (limits.lasting_strength / limits.material_factor)
}

/// What an ear bears: planar shear, by the parabola of a rectangle 1.5 × its mean, and pressure on its underside.
///
/// ```
/// use slotwright_core::units::quantity::{Force, Length};
/// use slotwright_core::rules::bearing::ear;
/// // 300 N on an ear 120 long, 9 deep, 18 thick: 1.5 × 300 / 2160 and 300 / 1080 N/mm².
/// let (shear, pressure) = ear(Force::newton(300.0), Length::mm(120.0), Length::mm(9.0), Length::mm(18.0));
/// assert!((shear.in_n_per_mm2() - 0.208_333).abs() < 1e-6 && (pressure.in_n_per_mm2() - 0.277_778).abs() < 1e-6);
/// ```
// Source: geometry; the load goes across the plies, so planar (rolling) shear decides. The rear tabs' help is left out.
pub fn ear(load: Force, length: Length, deep: Length, thickness: Length) -> (Stress, Stress) {
    (load.over(length * thickness) * 1.5, load.over(length * deep))
}

/// What pivots bear: pressure on the side of each from the leaf's pull, over diameter × depth, and on the
/// end of the lower one from its weight.
///
/// ```
/// use slotwright_core::units::quantity::{Force, Length};
/// use slotwright_core::rules::bearing::pivot;
/// // 80 N hung 200 mm before pivots 500 mm apart, 18 mm thick and deep: 32 N on 324 mm², 80 N on 254.5 mm².
/// let (side, end) = pivot(Force::newton(80.0), Length::mm(200.0), Length::mm(500.0), Length::mm(18.0), Length::mm(18.0));
/// assert!((side.in_n_per_mm2() - 0.098_765).abs() < 1e-6 && (end.in_n_per_mm2() - 0.314_380).abs() < 1e-6);
/// ```
// Source: statics: the pull is weight × (half width − inset) / height.
pub fn pivot(weight: Force, lever: Length, height: Length, diameter: Length, depth: Length) -> (Stress, Stress) {
    let end = Area::mm2(core::f64::consts::FRAC_PI_4 * diameter.in_mm() * diameter.in_mm());
    ((weight * (lever / height)).over(diameter * depth), weight.over(end))
}

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let (picked, layout) = (unit.picked, unit.layout);
    let (board, limits) = (picked.body, &picked.range.strength);
    let (most_shear, most_pressure) =
        (lasting(board.planar_shear_n_per_mm2, limits), lasting(board.bearing_n_per_mm2, limits));
    let mut find = |rule, bay, found, most, part| {
        let (found, most) = (Figure::stress(found), Figure::stress(most));
        out.push(Finding::stops(rule, Question::Bay(bay), found, Limit::AtMost, most).of([part]));
    };
    let (blanks, build, depth) = (Blanks { picked, layout }, &picked.range.build, layout.clear_depth());
    for (bay, span) in numbered(&layout.bays).filter(|(_, span)| !span.shelves.is_empty()) {
        let load = picked.model.shelf_load_kg_per_m2 + own_load(board);
        let half = Mass::kg(load.in_kg_per_m2() * (span.clear() * depth).in_m2() / 2.0);
        // At a divider the neighbour's ear has the other half; a relief lies at the root of each.
        let (long, deep) = (blanks.shelf_slot() - relief_radius(build.cutter_mm), blanks.ear(layout.bays.len() == 1));
        let (shear, pressure) = ear(half.weight(), long, deep, board.thickness());
        let shelf = PanelId::Shelf { bay, row: 1 };
        if shear > most_shear {
            find(Rule::ShelfEar, bay, shear, most_shear, shelf);
        } else if pressure > most_pressure {
            find(Rule::ShelfEar, bay, pressure, most_pressure, shelf);
        }
    }
    for leaf in unit.blanks {
        let PanelId::Leaf(bay) = leaf.id else { continue };
        let (width, height) = leaf.size;
        let lever = width / 2.0 - build.pivot_inset_mm;
        // Pivots are bare; the upper one reaches less deep, and its tip is chamfered.
        let (diameter, deep) = (board.thickness(), blanks.into_top(Rank::Face) - build.tab_chamfer_mm);
        let (side, end) = pivot(leaf.most_mass(unit.coated).weight(), lever, height, diameter, deep);
        if side.max(end) > most_pressure {
            find(Rule::LeafPivot, bay, side.max(end), most_pressure, leaf.id);
        }
    }
}

/// What the size of the shelf and of its ears comes from.
pub(super) fn ear_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.clear_width(context, Direction::Down, Length::ZERO);
    on.clear_depth(context, Direction::Either, Length::ZERO);
    on.answer(Question::Bay(finding.about.bay().unwrap_or(0)));
}

/// What the size of the leaf comes from.
pub(super) fn pivot_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.clear_width(context, Direction::Down, Length::ZERO);
    on.stiles(context, finding.about.bay().unwrap_or(0), Direction::Down, None);
    on.answer(Question::Height);
    on.answer(Question::Plinth);
}
