//! Uprights that stay straight, and a back that keeps the whole square.

use smallvec::SmallVec;

use super::dependencies::{Context, Dependencies, Direction};
use super::{Rule, RuleCard, Subject, numbered};
use crate::choice::BAYS_MOST;
use crate::finding::{Figure, Finding, Limit};
use crate::layout::{BaySpan, Layout, Picked};
use crate::panel::PanelId;
use crate::quantity::{Area, AreaMass, Force, Length, Mass, Stiffness};
use crate::question::Question;
use crate::rules::sag::own_load;

/// Uprights.
pub const UPRIGHT_BUCKLING: RuleCard = RuleCard {
    code: "upright-buckling",
    what: "An upright carries as many times the load of its shelves and of the top as the range asks before its front edge gives way to the side.",
    why: "A tall thin upright under heavy shelves bends out without warning.",
    source: "plate in compression, held at its ends and along the back, free at the front: k = 0.425 + (depth/height)² (Timoshenko and Gere, Theory of Elastic Stability, from memory); stiffness from the range file, less by creep as in EN 1995-1-1:2004+A1, table 3.2",
};

/// The whole.
pub const LEAN: RuleCard = RuleCard {
    code: "lean",
    what: "Pushed sideways at the top, the unit leans by no more than its height divided by the range's figure.",
    why: "A unit that sways works its joints loose.",
    source: "shear of the back in its plane, F h / (G t b), and the play of its laps with the uprights; modulus from the range file (Handbook of Finnish Plywood, 2002, table 3, from memory)",
};

/// The force under which a plate's free edge buckles, held along its other three.
///
/// ```
/// use slotwright_core::quantity::{Length, Stiffness};
/// use slotwright_core::rules::frame::critical;
/// // 300 wide and 1 800 high of 17.6 mm, E 7 452 N/mm²: σ = 0.4528 × π² E / 12 × (17.6/300)² = 9.551 N/mm².
/// let found = critical(Length::mm(300.0), Length::mm(1800.0), Length::mm(17.6), Stiffness::n_per_mm2(7452.0));
/// assert!((found.in_newton() - 9.551 * 300.0 * 17.6).abs() < 10.0, "{found:?}");
/// ```
pub fn critical(depth: Length, height: Length, thickness: Length, stiffness: Stiffness) -> Force {
    let (flat, slender) = (depth / height, thickness / depth);
    let square = core::f64::consts::PI * core::f64::consts::PI;
    let stress = (0.425 + flat * flat) * square * stiffness.in_n_per_mm2() / 12.0 * slender * slender;
    Force::newton(stress * (depth * thickness).in_mm2())
}

/// How far the top moves under a push to the side: shear of the back, and the play of its laps, which are half as
/// high as the unit and so let it turn by play over that.
///
/// ```
/// use slotwright_core::quantity::{Force, Length, Stiffness};
/// use slotwright_core::rules::frame::lean;
/// // 350 N on 860 × 1 800 mm of 12 mm, G 620 N/mm²: 0.0985 mm; and twice 0.15 mm.
/// let size = (Length::mm(860.0), Length::mm(1800.0));
/// let found = lean(Force::newton(350.0), size, Length::mm(12.0), Stiffness::n_per_mm2(620.0), Length::mm(0.15));
/// assert!((found.in_mm() - 0.398_46).abs() < 1e-4, "{found:?}");
/// ```
pub fn lean(push: Force, (width, height): (Length, Length), back: Length, modulus: Stiffness, play: Length) -> Length {
    let shear = push.over(width * back).in_n_per_mm2() / modulus.in_n_per_mm2();
    height * shear + play * 2.0
}

/// The mass that a bay brings to one of its uprights.
fn half_load(picked: Picked<'_>, layout: &Layout, span: &BaySpan) -> Mass {
    let own = own_load(picked.body);
    let on = |load: AreaMass, area: Area| Mass::kg((load + own).in_kg_per_m2() * area.in_m2());
    let shelf = on(picked.model.shelf_load_kg_per_m2, span.clear() * layout.clear_depth());
    let top = on(picked.model.top_load_kg_per_m2, span.clear() * layout.depth);
    (span.shelves.iter().map(|_| shelf).sum::<Mass>() + top) / 2.0
}

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let (picked, layout) = (unit.picked, unit.layout);
    let (strength, build) = (&picked.range.strength, &picked.range.build);
    // The face grain of uprights stands.
    let stiffness = picked.body.e_along_n_per_mm2 / (1.0 + strength.creep_factor);
    let most = critical(layout.clear_depth(), layout.clear_height(), picked.body.thickness(), stiffness);
    let half: SmallVec<[Mass; BAYS_MOST]> = layout.bays.iter().map(|span| half_load(picked, layout, span)).collect();
    let at = |bay: Option<usize>| bay.and_then(|bay| half.get(bay)).copied().unwrap_or(Mass::ZERO);
    // An upright carries half of the bay at each side of it.
    let loads = (0..).zip(numbered(&layout.stiles));
    let loads = loads.map(|(bay, (number, _))| (number, at(usize::checked_sub(bay, 1)) + at(Some(bay))));
    if let Some((number, mass)) = loads.max_by(|a, b| a.1.total_cmp(&b.1)) {
        let times = most / mass.weight();
        if times < strength.buckling_factor {
            let (found, least) = (Figure::ratio(times), Figure::ratio(strength.buckling_factor));
            let finding = Finding::stops(Rule::UprightBuckling, Question::Height, found, Limit::AtLeast, least);
            out.push(finding.of([PanelId::Upright(number)]));
        }
    }
    let size = (layout.width - (build.end_inset_mm - build.back_ear_mm) * 2.0, layout.height);
    let (back, modulus) = (picked.back.thickness(), picked.back.shear_modulus_n_per_mm2);
    let leans = lean(strength.push_n, size, back, modulus, build.clearance_mm);
    let most = layout.height / strength.lean_height_over;
    if leans > most {
        let (found, most) = (Figure::length(leans), Figure::length(most));
        out.push(Finding::stops(Rule::Lean, Question::Width, found, Limit::AtMost, most).of([PanelId::Back]));
    }
}

/// Everything that carries and is carried: nobody knows which way.
pub(super) fn dependencies(on: &mut Dependencies, _: &Finding, context: Context<'_>) {
    on.whole(context, Direction::Either);
}
