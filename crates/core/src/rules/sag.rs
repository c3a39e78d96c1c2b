//! Shelves and top bend under their load, and more so over the years.
//!
//! A shelf is taken as a beam on simple supports at the faces of its bay, the top likewise from
//! upright to upright (its continuity is left out, on the safe side).

use super::dependencies::{Context, Dependencies, Direction};
use super::{Rule, RuleCard, Subject, numbered};
use crate::finding::{Figure, Finding, Limit};
use crate::panel::PanelId;
use crate::quantity::{AreaMass, Force, Length, Stiffness};
use crate::question::Question;
use crate::range::{Board, Strength};

/// Shelves.
pub const SHELF_SAG: RuleCard = RuleCard {
    code: "shelf-sag",
    what: "Under the load that the range lays shelves out for, a shelf's sag over the years stays under its span divided by the range's figure.",
    why: "A shelf that bends visibly looks wrong, and it creeps further.",
    source: "Wood Handbook, FPL-GTR-190 (2010), eq. 9-2 and table 9-1 (simple ends, uniform load); creep by EN 1995-1-1:2004+A1, 2.2.3 and table 3.2; the limit is common practice",
};

/// The top.
pub const TOP_SAG: RuleCard = RuleCard {
    code: "top-sag",
    what: "Under the load that the range lays the top out for, its sag between two uprights over the years stays under that span divided by the range's figure.",
    why: "The top has to stay straight over leaves and tabs.",
    source: "Wood Handbook, FPL-GTR-190 (2010), eq. 9-2 and table 9-1 (simple ends, uniform load); creep by EN 1995-1-1:2004+A1, 2.2.3 and table 3.2; the limit is common practice",
};

/// The base.
pub const BASE_SAG: RuleCard = RuleCard {
    code: "base-sag",
    what: "Where the floor bears the base only under the uprights, its two plates sag over the years by less than their span divided by the range's figure.",
    why: "No floor is flat, and leaves hang on the base.",
    source: TOP_SAG.source,
};

/// Sag in mid-span of a board strip on simple supports under an area load; bending only.
///
/// δ = 5 w L⁴ / (384 E I) with I = t³/12 for a strip of unit width, so the depth of the shelf falls out.
///
/// ```
/// use slotwright_core::quantity::{AreaMass, Length, Stiffness};
/// use slotwright_core::rules::sag::sag;
/// // 40 kg over 800 × 300 mm of 17.6 mm birch plywood, E 10 048 N/mm²: 1.91 mm.
/// let load = AreaMass::kg_per_m2(40.0 / (0.8 * 0.3));
/// let found = sag(Length::mm(800.0), load, Length::mm(17.6), Stiffness::n_per_mm2(10048.0));
/// assert!((found.in_mm() - 1.910).abs() < 0.002);
/// ```
// Source: Wood Handbook, FPL-GTR-190 (2010), eq. 9-2, table 9-1: k_b = 5/384 with the total load.
pub fn sag(span: Length, load: AreaMass, thickness: Length, stiffness: Stiffness) -> Length {
    let (length, thick) = (span.in_mm(), thickness.in_mm());
    let inertia = thick * thick * thick / 12.0;
    Length::mm(5.0 * pressure(load) * length * length * length * length / (384.0 * stiffness.in_n_per_mm2() * inertia))
}

/// Sag in mid-span of a strip of a board on simple supports under a force on it so far from the nearer support.
///
/// ```
/// use slotwright_core::quantity::{Force, Length, Stiffness};
/// use slotwright_core::rules::sag::sag_of_point;
/// // 392.4 N in the middle of 800 × 300 mm of 17.6 mm birch plywood, E 10 048 N/mm²: 3.056 mm.
/// let (span, strip) = (Length::mm(800.0), (Length::mm(300.0), Length::mm(17.6)));
/// let found = sag_of_point(span, span / 2.0, Force::newton(392.4), strip, Stiffness::n_per_mm2(10048.0));
/// assert!((found.in_mm() - 3.056).abs() < 0.002);
/// ```
// Source: Wood Handbook, FPL-GTR-190 (2010), table 9-1: k_b = 1/48 in the middle; beside it the usual
// a (3 L² − 4 a²) / (48 E I) of beam tables, which is the same there.
pub fn sag_of_point(
    span: Length,
    from_support: Length,
    force: Force,
    (strip, thickness): (Length, Length),
    stiffness: Stiffness,
) -> Length {
    let (length, a, thick) = (span.in_mm(), from_support.in_mm(), thickness.in_mm());
    let inertia = strip.in_mm() * thick * thick * thick / 12.0;
    let bent = force.in_newton() * a * (3.0 * length * length - 4.0 * a * a);
    Length::mm(bent / (48.0 * stiffness.in_n_per_mm2() * inertia))
}

/// The pressure of a mass on an area, in N/mm².
fn pressure(load: AreaMass) -> f64 {
    // Source: standard gravity, ISO 80000-3:2006, 3-9.1.
    load.in_kg_per_m2() * 9.806_65 / 1_000_000.0
}

/// The load that bends as far at once as the given ones do over the years:
/// own weight × (1 + k) + imposed × (1 + ψ₂ k).
// Source: EN 1995-1-1:2004+A1, 2.2.3, final deflection for a permanent and one variable action.
pub fn lasting(own: AreaMass, imposed: AreaMass, strength: &Strength) -> AreaMass {
    own * (1.0 + strength.creep_factor) + imposed * (1.0 + strength.lasting_share * strength.creep_factor)
}

/// The own weight of a board for each unit of area.
pub fn own_load(board: &Board) -> AreaMass {
    AreaMass::kg_per_m2(board.density_kg_per_m3.in_kg_per_m3() * board.thickness().in_m())
}

/// The widest span whose sag stays within span / `over`: L³ = 384 E I / (5 w × over).
///
/// ```
/// use slotwright_core::quantity::{AreaMass, Length, Stiffness};
/// use slotwright_core::rules::sag::widest_span;
/// // 50 lb/ft² on 17.6 mm, E 10 048 N/mm², span/144: 1005.6 mm.
/// let load = AreaMass::kg_per_m2(244.1);
/// let found = widest_span(load, Length::mm(17.6), Stiffness::n_per_mm2(10048.0), 144.0);
/// assert!((found.in_mm() - 1005.6).abs() < 0.5);
/// ```
pub fn widest_span(load: AreaMass, thickness: Length, stiffness: Stiffness, over: f64) -> Length {
    let thick = thickness.in_mm();
    let inertia = thick * thick * thick / 12.0;
    Length::mm(libm::cbrt(384.0 * stiffness.in_n_per_mm2() * inertia / (5.0 * pressure(load) * over)))
}

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let Subject { picked, layout, .. } = unit;
    let (strength, board, model) = (&picked.range.strength, picked.body, picked.model);
    let (thickness, own) = (board.thickness(), own_load(board));
    // Two plates that lie on each other share the load of things on the base.
    let [on_shelf, on_top, on_base] =
        [model.shelf_load_kg_per_m2, model.top_load_kg_per_m2, model.shelf_load_kg_per_m2 / 2.0]
            .map(|imposed| lasting(own, imposed, strength));
    let bend = |span: Length, load: AreaMass| {
        let sag = sag(span, load, thickness, board.e_along_n_per_mm2);
        let most = span / strength.sag_span_over;
        (sag > most).then(|| (Figure::length(sag), Figure::length(most)))
    };
    for (bay, span) in numbered(&layout.bays) {
        if !span.shelves.is_empty()
            && let Some((found, most)) = bend(span.clear(), on_shelf)
        {
            let shelves = numbered(&span.shelves).map(|(row, _)| PanelId::Shelf { bay, row });
            out.push(Finding::stops(Rule::ShelfSag, Question::Bay(bay), found, Limit::AtMost, most).of(shelves));
        }
        if let Some((found, most)) = bend(span.clear(), on_top) {
            out.push(Finding::stops(Rule::TopSag, Question::Bay(bay), found, Limit::AtMost, most).of([PanelId::Top]));
        }
        if let Some((found, most)) = bend(span.clear(), on_base) {
            let plates = [PanelId::BaseLower, PanelId::BaseUpper];
            out.push(Finding::stops(Rule::BaseSag, Question::Bay(bay), found, Limit::AtMost, most).of(plates));
        }
    }
}

/// What the shelf's span comes from. How far it bends grows with the fourth power of that.
pub(super) fn shelf_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    plate_dependencies(on, finding, context);
    on.answer(Question::Bay(finding.about.bay().unwrap_or(0)));
}

/// The same for the top and the base.
pub(super) fn plate_dependencies(on: &mut Dependencies, _: &Finding, context: Context<'_>) {
    on.distance_tells_nothing();
    on.clear_width(context, Direction::Down, Length::ZERO);
}
