//! What stands out of a part takes a knock: hooks, tabs, ears and pivots; the ends of a plinth's boards beyond a lap; the wood of an
//! upright between two slots of shelves, and of the back beside and over its slots. Necks carry the back for good.
//!
//! The tongue of a detent is sprung: the top stops it before it breaks, what comes from the side meets it with its nose, and it is
//! lifted at each opening for as often as the range says.
//!
//! All is judged from the layout: of what is alike the narrowest and longest. The tests hold what is cut against it: each feature
//! that stands out of a part has its section here, with the same figures.

use super::{Rule, Subject, numbered, shelf_slot};
use crate::cabinet::blank::{Blanks, Rank};
use crate::cabinet::layout::BaySpan;
use crate::cabinet::leaf;
use crate::cabinet::panel::{End, PanelId};
use crate::choice::Fill;
use crate::range::{Detent, relief_radius};
use crate::rules::finding::{Figure, Finding, Limit, asked_by};
use crate::statics::detent::Tongue;
use crate::statics::fatigue;
use crate::statics::knock::{Bears, Stub, pin, strip};
use crate::units::quantity::{Force, Length, Stress};

#[cfg(test)]
mod tests;

/// What of a part bears so much, and what it may.
type Borne = (PanelId, Stress, Stress);

/// How what is knocked holds to its part.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Form {
    /// At a root as thick as the board: it is knocked across its face and in its plane.
    Stub(Stub),
    /// At a round root.
    Pin { reach: Length, diameter: Length },
    /// A tongue whose nose is lifted over its leaf again and again, pressed up to its stop in its plane, and knocked from the side, where
    /// it reaches so far: in the middle of its height with the nose, so far beside its own. Nothing gets at it from above.
    Spring { tongue: Tongue, over: Length, by: Length, reach: Length, beside: Length },
    /// At both ends: it is knocked in its middle, across its face.
    Strip { length: Length, width: Length, thickness: Length },
}

/// The one that bears most of what it may.
pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    if let Some((part, found, most)) = worst(unit).filter(|(_, found, most)| found > most) {
        let (found, most) = (Figure::stress(found), Figure::stress(most));
        out.push(Finding::stops(Rule::Knock, asked_by(part), found, Limit::AtMost, most).of([part]));
    }
}

/// Of all that is looked at, what bears most of what it may.
// Board strengths have no bending strength of their own: compression across the grain in the plane, which is less than bending,
// tension and compression in any direction of a plywood panel, stands for it, and planar (rolling) shear for all shear.
fn worst(unit: Subject<'_>) -> Option<Borne> {
    let (picked, layout) = (unit.picked, unit.layout);
    let limits = &picked.range.strength;
    // With what it bears of what it may.
    let mut worst: Option<(Borne, f64)> = None;
    let mut add = |part, bears: Bears, [bent, sheared]: [f64; 2]| {
        let board = if part == PanelId::Back { picked.back } else { picked.body };
        for (found, most) in
            [(bears.bending, board.bearing_n_per_mm2 * bent), (bears.shear, board.planar_shear_n_per_mm2 * sheared)]
        {
            let share = found / most;
            if worst.is_none_or(|(_, its_share)| share > its_share) {
                worst = Some(((part, found, most), share));
            }
        }
    };
    // Source: k_mod over γ_M of EN 1995-1-1:2004+A1, tables 3.1 and 2.3.
    let left = |kept| [kept / limits.material_factor; 2];
    sections(unit, &mut |part, form| {
        for bears in form.bears(limits.knock_n) {
            add(part, bears, left(limits.knock_strength));
        }
        if let Form::Spring { tongue, over, .. } = form {
            // It is lifted over the leaf twice each time.
            let times = 2.0 * f64::from(limits.detent_openings);
            add(part, tongue.bears(over), [fatigue::in_bending(times), fatigue::in_shear(times)]);
        }
    });
    // A stiff board on several supports may rest on two: one neck carries half of it, for good.
    let weight =
        unit.blanks.iter().find(|blank| blank.id == PanelId::Back).map(|blank| blank.most_mass(unit.coated).weight());
    let (half, thickness) = (weight.unwrap_or_default() / 2.0, picked.body.thickness());
    let reach = (layout.back + picked.range.build.clearance_mm) / 2.0;
    let hung = Stub { reach, width: layout.hooks.neck, thickness, beside: Length::ZERO };
    add(PanelId::Upright(1), hung.in_plane(half), left(limits.lasting_strength));
    worst.map(|(borne, _)| borne)
}

impl Form {
    /// What it bears, knocked from any side.
    fn bears(self, knock: Force) -> [Bears; 2] {
        match self {
            Self::Stub(stub) => [stub.in_plane(knock), stub.across(knock)],
            Self::Spring { tongue, by, reach, beside, .. } => {
                let Tongue { height: width, thickness, .. } = tongue;
                [tongue.bears(by), Stub { reach, width, thickness, beside }.across(knock)]
            }
            Self::Pin { reach, diameter } => [pin(knock, reach, diameter); 2],
            Self::Strip { length, width, thickness } => [strip(knock, length, width, thickness); 2],
        }
    }
}

/// Tells what is knocked, each of the first part that has it.
fn sections(unit: Subject<'_>, tell: &mut dyn FnMut(PanelId, Form)) {
    let (picked, layout) = (unit.picked, unit.layout);
    let (build, blanks, hooks) = (&picked.range.build, Blanks { picked, layout }, layout.hooks);
    let (clearance, relief) = (build.clearance_mm, relief_radius(build.cutter_mm));
    let (play, through) = (clearance / 2.0, layout.body - build.tab_short_mm);
    let (upright, board, back) = (PanelId::Upright(1), picked.body.thickness(), picked.back.thickness());
    let mut strip = |length, width| tell(PanelId::Back, Form::Strip { length, width, thickness: back });
    // A relief lies in both ends of each slot.
    strip(hooks.slot() + relief * 2.0, build.back_ear_mm - play);
    strip(layout.body + clearance, (hooks.pitch - hooks.slot()) / 2.0 - relief);
    leaves(unit, tell);
    let mut stub = |part, (reach, width, beside)| {
        let thickness = if part == PanelId::Back { back } else { board };
        tell(part, Form::Stub(Stub { reach, width, thickness, beside }));
    };
    // The nose's tip is where a knock turns the neck most, at its root and under the nose, where a relief lies in it; the nose
    // itself bends at the neck.
    let (long, thin) = (layout.back + clearance, hooks.neck - relief);
    stub(upright, (long + hooks.nose, hooks.neck, hooks.rise + hooks.neck / 2.0));
    stub(upright, (hooks.nose + relief, thin, hooks.rise + hooks.neck - thin / 2.0));
    stub(upright, (hooks.rise, hooks.nose, Length::ZERO));
    // Reliefs lie in a tab's flanks, at its root.
    let tab = |reach, width: Length| (reach, width - relief * 2.0, width / 2.0);
    stub(upright, tab(layout.floor - layout.base - build.tab_short_mm, blanks.upright_tab()));
    let clear = layout.bays.iter().map(BaySpan::clear).reduce(Length::min).unwrap_or_default();
    stub(PanelId::Back, tab(blanks.into_top(Rank::Rear), blanks.back_tab(clear)));
    if let Some((number, _)) = numbered(&layout.stiles).find(|(_, stile)| **stile) {
        stub(PanelId::Stile(number), tab(through, blanks.stile_tab()));
    }
    if let Some(end) = End::ALL.into_iter().find(|end| layout.bow(*end).is_some()) {
        stub(PanelId::Stave { end, number: 1 }, tab(through, picked.range.bow.tab_mm));
    }
    if let Some(plinth) = layout.plinth {
        let (_, width) = layout.plinth_tabs(build);
        stub(PanelId::PlinthFront, tab(through, width));
        // A relief lies in the floor of each cut. An end is knocked at its upper or lower corner, where that turns it most.
        let left = plinth.height - plinth.lap(clearance) - relief;
        let end = (plinth.beyond + layout.body + play, left, plinth.height - left / 2.0);
        stub(PanelId::PlinthFront, end);
        stub(PanelId::Bearer(1), end);
    }
    let slot = blanks.shelf_slot();
    let shelved = || numbered(&layout.bays).filter(|(_, span)| !span.shelves.is_empty());
    let is_end = |bay: u8| bay == 1 || usize::from(bay) == layout.bays.len();
    if let Some((bay, _)) = shelved().find(|(bay, _)| is_end(*bay)).or_else(|| shelved().next()) {
        // As long as its slot, with one root, behind.
        let reach = blanks.ear(is_end(bay)) + play;
        stub(PanelId::Shelf { bay, row: 1 }, (reach, slot - relief, (slot + relief) / 2.0));
    }
    if let Some((bay, span)) = shelved().min_by(|(_, a), (_, b)| a.clear().total_cmp(&b.clear())) {
        let tabs = tab(layout.back - build.tab_short_mm + play, blanks.shelf_tab(span.clear() - clearance));
        stub(PanelId::Shelf { bay, row: 1 }, tabs);
    }
    if let Some(wood) = shelf_slot::prong(layout, build) {
        stub(upright, (slot + play, wood, wood / 2.0));
    }
}

/// What of leaves and their stops is knocked.
fn leaves(unit: Subject<'_>, tell: &mut dyn FnMut(PanelId, Form)) {
    let (picked, layout, build) = (unit.picked, unit.layout, &unit.picked.range.build);
    let (thickness, relief) = (picked.body.thickness(), relief_radius(build.cutter_mm));
    let Some(leaf) = unit.blanks.iter().find(|blank| matches!(blank.id, PanelId::Leaf(_))) else { return };
    tell(leaf.id, Form::Pin { reach: layout.body + build.leaf_gap_mm, diameter: thickness });
    let Some((bay, _)) = numbered(&layout.bays).find(|(_, span)| span.stop.is_some()) else { return };
    let stop = PanelId::Stop(bay);
    let mut stub = |part, reach, width, beside| tell(part, Form::Stub(Stub { reach, width, thickness, beside }));
    let (_, long) = build.stop_tab();
    stub(stop, layout.body - build.tab_short_mm, long - relief * 2.0, long / 2.0);
    let Some(detent) = Detent::of(build, layout.body) else { return };
    // Up to the rear edge its upper tab has one root, in front.
    let ((_, long), into_top) = (build.stop_upper_tab(), Blanks { picked, layout }.into_top(Rank::Stop));
    stub(stop, into_top, long - relief, (long + relief) / 2.0);
    for ((bay, span), chosen) in numbered(&layout.bays).zip(&unit.choice.bays) {
        let Fill::Leaf(hung) = chosen.fill else { continue };
        let leaf = leaf::of(span, layout, build, hung);
        if let Some((wide, deep)) = leaf.corner(build, layout) {
            // What is left beside its corner.
            let left = leaf.right - leaf.left - wide;
            stub(PanelId::Leaf(bay), deep, left, left / 2.0);
        }
    }
    let (tongue, reach) = (Tongue::of(detent, picked.body), detent.free() + detent.out());
    // The leaf stands on the lower base plate, the stop on the upper one, which moves with the air; and all are cut by a machine.
    let over = detent.overlap + picked.range.moisture.thickens(layout.body) + picked.range.fit.cut_mm;
    let by = detent.lifts_by();
    tell(stop, Form::Spring { tongue, over, by, reach, beside: detent.rise / 2.0 });
}
