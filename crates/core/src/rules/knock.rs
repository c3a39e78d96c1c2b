//! What stands out of a part takes a knock: the hooks of the uprights, the tabs of back and staves, and the strips of the back
//! beside and over its slots; the ends and tabs of a plinth's boards; and necks carry the back for good.

use super::dependencies::{Context, Dependencies, Direction};
use super::{Rule, Subject};
use crate::cabinet::layout::BaySpan;
use crate::cabinet::panel::{End, PanelId};
use crate::cabinet::plinth::Plinth;
use crate::choice::question::Question;
use crate::range::relief_radius;
use crate::rules::finding::{Figure, Finding, Limit};
use crate::statics::knock::{Bears, Stub, strip};
use crate::units::quantity::{Length, Stress};

/// What of a part bears so much, and what it may.
type Borne = (PanelId, Stress, Stress);

/// The one that bears most of what it may.
pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let share = |(_, found, most): &Borne| *found / *most;
    let worst = borne(unit).into_iter().max_by(|a, b| share(a).total_cmp(&share(b)));
    if let Some((part, found, most)) = worst.filter(|(_, found, most)| found > most) {
        let (found, most) = (Figure::stress(found), Figure::stress(most));
        let about =
            if matches!(part, PanelId::Bearer(_) | PanelId::PlinthFront) { Question::Plinth } else { Question::Back };
        out.push(Finding::stops(Rule::Knock, about, found, Limit::AtMost, most).of([part]));
    }
}

/// All that is looked at, with its stresses.
// Board strengths have no bending strength of their own: compression across the grain in the plane, which is less than bending,
// tension and compression in any direction of a plywood panel, stands for it, and planar (rolling) shear for all shear.
fn borne(unit: Subject<'_>) -> Vec<Borne> {
    let (picked, layout) = (unit.picked, unit.layout);
    let (build, limits, hooks) = (&picked.range.build, &picked.range.strength, layout.hooks);
    let (knock, body, back) = (limits.knock_n, picked.body, picked.back);
    let (upright, panel) = (PanelId::Upright(1), PanelId::Back);
    let mut all = Vec::with_capacity(16);
    let mut add = |part, bears: Bears, kept: f64| {
        let board = if part == panel { back } else { body };
        // Source: k_mod over γ_M of EN 1995-1-1:2004+A1, tables 3.1 and 2.3.
        let left = kept / limits.material_factor;
        all.push((part, bears.bending, board.bearing_n_per_mm2 * left));
        all.push((part, bears.shear, board.planar_shear_n_per_mm2 * left));
    };
    let long = layout.back + build.clearance_mm;
    let thickness = body.thickness();
    // The nose's tip is where a knock turns the neck most; the nose itself bends at the neck.
    let beside = hooks.rise + hooks.neck / 2.0;
    let neck = Stub { reach: long + hooks.nose, width: hooks.neck, thickness, beside };
    let nose = Stub { reach: hooks.rise, width: hooks.nose, thickness, beside: Length::ZERO };
    for stub in [neck, nose] {
        add(upright, stub.in_plane(knock), limits.knock_strength);
        add(upright, stub.across(knock), limits.knock_strength);
    }
    // A stiff board on several supports may rest on two: one neck carries half of it, for good.
    let weight = unit.blanks.iter().find(|blank| blank.id == panel).map(|blank| blank.most_mass(unit.coated).weight());
    let half = weight.unwrap_or_default() / 2.0;
    let hung = Stub { reach: long / 2.0, width: hooks.neck, thickness, beside: Length::ZERO };
    add(upright, hung.in_plane(half), limits.lasting_strength);
    let thickness = back.thickness();
    let narrowest = layout.bays.iter().map(BaySpan::clear).reduce(Length::min).unwrap_or_default();
    let tab = Stub {
        reach: layout.body - build.tab_short_mm,
        width: build.tab_mm.min(narrowest / 2.0),
        thickness,
        beside: Length::ZERO,
    };
    add(panel, tab.across(knock), limits.knock_strength);
    if let Some(end) = End::ALL.into_iter().find(|end| layout.bow(*end).is_some()) {
        let width = picked.range.bow.tab_mm;
        let tab =
            Stub { reach: layout.body - build.tab_short_mm, width, thickness: body.thickness(), beside: Length::ZERO };
        for bears in [tab.across(knock), tab.in_plane(knock)] {
            add(PanelId::Stave { end, number: 1 }, bears, limits.knock_strength);
        }
    }
    let play = build.clearance_mm / 2.0;
    let outside = strip(knock, hooks.slot(), build.back_ear_mm - play, thickness);
    let over = strip(knock, layout.body + build.clearance_mm, (hooks.pitch - hooks.slot()) / 2.0, thickness);
    add(panel, outside, limits.knock_strength);
    add(panel, over, limits.knock_strength);
    if let Some(plinth) = layout.plinth {
        for (part, stub) in on_plinth(unit, plinth) {
            add(part, stub.in_plane(knock), limits.knock_strength);
            add(part, stub.across(knock), limits.knock_strength);
        }
    }
    all
}

/// What stands out of the boards of a plinth: their ends beyond a lap, on the half that it leaves, and tabs.
fn on_plinth(unit: Subject<'_>, plinth: Plinth) -> [(PanelId, Stub); 3] {
    let (layout, build) = (unit.layout, &unit.picked.range.build);
    let (clearance, thickness) = (build.clearance_mm, unit.picked.body.thickness());
    // A relief lies in the floor of each cut. An end is knocked at its upper or lower corner, where that turns it most.
    let left = plinth.height - plinth.lap(clearance) - relief_radius(build.cutter_mm);
    let end = Stub {
        reach: plinth.beyond + layout.body + clearance / 2.0,
        width: left,
        thickness,
        beside: plinth.height - left / 2.0,
    };
    let (_, width) = layout.plinth_tabs(build);
    let tab = Stub { reach: layout.body - build.tab_short_mm, width, thickness, beside: width / 2.0 };
    [(PanelId::Bearer(1), end), (PanelId::PlinthFront, end), (PanelId::PlinthFront, tab)]
}

/// Everything that the sections and the back's weight come from.
pub(super) fn dependencies(on: &mut Dependencies, _: &Finding, context: Context<'_>) {
    on.whole(context, Direction::Either);
}

#[cfg(test)]
mod tests {
    use core::cell::OnceCell;

    use super::*;
    use crate::cabinet::blank::{Blanks, Coated};
    use crate::cabinet::case::Case;
    use crate::cabinet::panel::Feature;
    use crate::choice::Choice;
    use crate::rules::judge;
    use crate::rules::sample::{Wanted, choices};
    use crate::testing::demo;

    fn worst(choice: &Choice, range: &crate::range::Range) -> Borne {
        let judged = judge(range, choice);
        let (picked, layout) = (judged.picked.unwrap(), judged.layout.unwrap());
        let (blanks, coated) = (Blanks { picked, layout: &layout }.all(choice), Coated::of(picked));
        let (cut, materials) = (OnceCell::new(), OnceCell::new());
        let (cut, materials) = (&cut, &materials);
        let unit = Subject { picked, choice, layout: &layout, blanks: &blanks, coated, cut, materials };
        borne(unit).into_iter().max_by(|a, b| (a.1 / a.2).total_cmp(&(b.1 / b.2))).unwrap()
    }

    /// At the share of its strength that the worst section bears it passes, a little below it is found.
    #[test]
    fn a_knock_is_borne_to_the_last_bit() {
        let mut range = demo();
        for model in &demo().models {
            let choice = Choice::starting(model).unwrap();
            range.strength = demo().strength;
            let (part, found, most) = worst(&choice, &range);
            assert!(found < most && part == PanelId::Upright(1), "{found:?} {most:?}");
            let knock = range.strength.knock_n;
            for (by, stops) in [(0.999_9, false), (1.000_1, true)] {
                range.strength.knock_n = knock * (most / found * by);
                let told = judge(&range, &choice).findings.iter().any(|finding| finding.rule == Rule::Knock);
                assert_eq!(told, stops, "{by}");
            }
        }
    }

    /// The sections that are judged are those of the parts that are cut.
    #[test]
    fn what_is_judged_is_what_is_cut() {
        let range = demo();
        for choice in choices(&range, 67, Wanted::Valid).take(60) {
            let judged = judge(&range, &choice);
            let (picked, layout) = (judged.picked.unwrap(), judged.layout.unwrap());
            let case = Case::of(picked, &choice, &layout).unwrap();
            let (hooks, build) = (layout.hooks, &range.build);
            let close = |a: Length, b: Length| assert!((a - b).abs() < Length::mm(1e-9), "{a:?} {b:?}");
            let mut met = 0;
            for feature in case.panels.iter().flat_map(|panel| &panel.features) {
                if let Feature::Hook(hook) = feature {
                    close(hook.to - hook.from, hooks.neck);
                    close(hook.neck, layout.back + build.clearance_mm);
                    assert_eq!((hook.nose, hook.rise), (hooks.nose, hooks.rise));
                    met += 1;
                }
            }
            assert_eq!(met, layout.stiles.len() * usize::from(hooks.count));
            let back = case.panel(PanelId::Back).unwrap();
            for feature in &back.features {
                if let Feature::Slot { from, to } = *feature
                    && to.v - from.v > layout.body * 2.0
                {
                    close(to.v - from.v, hooks.slot());
                    let beside = from.u.min(back.width - to.u);
                    assert!(beside >= build.back_ear_mm - build.clearance_mm / 2.0 - Length::mm(1e-9), "{beside:?}");
                    let over = from.v.min(back.height - to.v);
                    assert!(over >= (hooks.pitch - hooks.slot()) / 2.0 - Length::mm(1e-9), "{over:?}");
                }
            }
        }
    }
}
