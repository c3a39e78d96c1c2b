//! Units are fastened to the wall: tall ones and those with leaves are told to, some have to be.

use super::{Rule, Subject};
use crate::cabinet::case::{Case, WeighedCase};
use crate::cabinet::joint::JointKind;
use crate::cabinet::layout::{Layout, Picked};
use crate::cabinet::panel::{Feature, Panel, PanelId};
use crate::choice::question::Question;
use crate::choice::{Choice, Fill};
use crate::geometry::outline::Point;
use crate::rules::finding::{Figure, Finding, Limit, Severity};
use crate::statics::stability::push::{least, pushes};
use crate::statics::stability::{Burden, Leaves, Moments, Rising, burdens, edge};
use crate::units::quantity::{Force, Length, Mass};

// Source: GB/T 10357.4-2013, 4.1: stability is tested from this height on.
const LOW: Length = Length::mm(600.0);

// Source: EN 16122:2012, 11.2: one load up to this height, another above it; so far from the edge of the top.
const TALL: Length = Length::mm(1000.0);
const FROM_EDGE: Length = Length::mm(50.0);
// From memory: tables of EN 16121 and EN 14749. Their 75 N on an open leaf are less than the child below.
const ON_TOP: Force = Force::newton(750.0);
const ON_TOP_TALL: Force = Force::newton(350.0);
const TO_FRONT: Force = Force::newton(50.0);
// Source: ASTM F2057-23: 60 lb.
const CHILD: Mass = Mass::kg(27.2);
// From memory: 87 FR 72598: the centre of a child that climbs is 0.52 ft before what it stands on.
const LEANS_OUT: Length = Length::mm(158.0);

/// Wood that stays before the tip of a screw in the back.
// From memory: common practice is 2 mm.
const BEFORE_TIP: Length = Length::mm(2.0);

/// The longest screw with which a tether is fastened to the back, in whole millimetres: it does not come through.
///
/// The back it is, beside a hook: the top lifts off, uprights do not reach behind the back but for their hooks, and these hold it
/// from the rear.
pub fn longest_screw(layout: &Layout) -> Length {
    Length::mm((layout.back - BEFORE_TIP).in_mm().max(0.0).floor())
}

/// So far inwards of an end upright's middle a tether is screwed to the back: clear of its hook and the slot of that.
// Chosen: half a hook's thickness, and room for a foot with a driver beside it.
const BESIDE: Length = Length::mm(45.0);
/// Half a tether's foot and some wood round it: no slot and no hole comes nearer to its middle.
// Common practice: feet of such straps and brackets are up to 50 mm wide; that of what comes with the unit decides.
const FOOT: Length = Length::mm(30.0);
/// By so much it is moved up or down until it is clear.
const STEP: Length = Length::mm(5.0);

/// Where the two tethers of a unit go: on the rear face of its back, each beside the uppermost hook of an end upright, or as near to it
/// as the slots of shelves and the holes for cables leave room at both ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tethers {
    /// The longest screw in the back.
    pub screw: Length,
    /// From each end of the back.
    pub from_end: Length,
    /// Below its upper edge.
    pub below: Length,
    /// Over the floor, where the back hangs.
    pub up: Length,
    /// From one to the other.
    pub apart: Length,
    /// What they bridge: from the back to a wall that the top touches.
    pub gap: Length,
}

impl Tethers {
    /// Those of a case; none if nothing hangs its back.
    pub fn of(layout: &Layout, case: &Case) -> Option<Self> {
        let hooks = || case.joints.iter().filter(|joint| joint.kind == JointKind::Hook).map(|joint| joint.shared);
        let middle = |from: Length, to: Length| (from + to) / 2.0;
        let across = || hooks().map(|hook| middle(hook.from.x, hook.to.x));
        let (left, right) = across().reduce(Length::min).zip(across().reduce(Length::max)).filter(|(a, b)| a < b)?;
        let up = hooks().map(|hook| middle(hook.from.z, hook.to.z)).reduce(Length::max)?;
        let back = case.panel(PanelId::Back)?;
        let from_end = (back.width - (right - left)) / 2.0 + BESIDE;
        let under = back.case_from_panel.origin.z;
        let is_clear = |up: &Length| {
            let ends = [from_end, back.width - from_end];
            ends.into_iter().all(|across| has_room(back, Point::new(across, *up - under)))
        };
        let moved = (0..i16::MAX).map(|number| STEP * f64::from(number)).take_while(|by| *by < back.height);
        // Told it is in any case: who finds a slot there moves it, who is told nothing fastens nothing.
        let up = moved.flat_map(|by| [up + by, up - by]).find(is_clear).unwrap_or(up);
        Some(Self {
            screw: longest_screw(layout),
            from_end,
            below: layout.ceiling - up,
            up,
            apart: right - left - BESIDE * 2.0,
            gap: layout.depth - layout.back_front - layout.back,
        })
    }
}

/// Whether a foot with this middle lies on whole wood of a panel.
fn has_room(panel: &Panel, Point { u, v }: Point) -> bool {
    let within = |at: Length, size: Length| at >= FOOT && at <= size - FOOT;
    let apart = |at: Length, from: Length, to: Length| at <= from - FOOT || at >= to + FOOT;
    within(u, panel.width)
        && within(v, panel.height)
        && panel.features.iter().all(|feature| {
            let (from, to) = match *feature {
                Feature::Slot { from, to } => (from, to),
                Feature::Hole { centre, length, height } => {
                    let half = Point::new(length / 2.0, height / 2.0);
                    (Point::new(centre.u - half.u, centre.v - half.v), Point::new(centre.u + half.u, centre.v + half.v))
                }
                // Of these a back has only tabs, which stand out of it.
                Feature::Tab { .. }
                | Feature::Pivot { .. }
                | Feature::Hook(_)
                | Feature::Detent(_)
                | Feature::Notch { .. }
                | Feature::Bore { .. }
                | Feature::TurnedSlot(_)
                | Feature::Bow(_) => return true,
            };
            apart(u, from.u, to.u) || apart(v, from.v, to.v)
        })
}

/// Whether a unit is fastened to the wall: asked to be, or bound to be.
pub fn is_asked(picked: Picked<'_>, choice: &Choice, layout: &Layout, cut: &WeighedCase) -> bool {
    is_tall_or_doored(choice, layout) || danger(picked, choice, layout, cut).is_some()
}

fn is_tall_or_doored(choice: &Choice, layout: &Layout) -> bool {
    layout.height > LOW || choice.bays.iter().any(|bay| matches!(bay.fill, Fill::Leaf(_)))
}

/// Why a unit has to be fastened.
#[derive(Clone, Copy, Debug)]
enum Danger {
    /// Under this push at its top it begins to tip.
    Push(Force),
    /// In the worst of the load cases it tips by this moment, in newton metres.
    Case(f64),
}

fn danger(picked: Picked<'_>, choice: &Choice, layout: &Layout, cut: &WeighedCase) -> Option<Danger> {
    let push = least(pushes(picked, choice, layout, &cut.parts)).empty;
    if push < picked.range.strength.tether_push_n {
        return Some(Danger::Push(push));
    }
    worst(picked, layout, cut).filter(|left| *left < 0.0).map(|left| Danger::Case(-left))
}

/// What is left, in newton metres, in the worst of the load cases, of the unit or of the case in its base; negative if it tips.
fn worst(picked: Picked<'_>, layout: &Layout, cut: &WeighedCase) -> Option<f64> {
    Rising::ALL.into_iter().filter_map(|rising| worst_of(rising, picked, layout, cut)).min_by(f64::total_cmp)
}

fn worst_of(rising: Rising, picked: Picked<'_>, layout: &Layout, cut: &WeighedCase) -> Option<f64> {
    let build = &picked.range.build;
    let (foot, edge) = (edge(build, layout), rising.foot(build, layout).front);
    // Where leaves hang, and who climbs one, the case has its edge in the pivots.
    let pivots = if rising == Rising::Case { layout.face + layout.body / 2.0 } else { edge };
    let standing = |leaves| {
        let parts =
            |is_leaf| cut.masses().filter(move |(id, ..)| matches!(id, PanelId::Leaf(_)) == is_leaf && rising.has(*id));
        let about = |line: Length, is_leaf| {
            let burdens = burdens(picked, layout, leaves, parts(is_leaf));
            burdens.map(move |burden| Burden { behind: burden.behind + foot - line, ..burden })
        };
        Moments::of(about(edge, false).chain(about(pivots, true)), 0.0)
    };
    let (shut, open, at) = (standing(Leaves::Shut), standing(Leaves::Open), FROM_EDGE - edge);
    let top = if layout.height > TALL {
        shut.with(ON_TOP_TALL, at).with(TO_FRONT, rising.under(layout) - layout.height)
    } else {
        shut.with(ON_TOP, at)
    };
    let climbed = cut.case.panels.iter().filter_map(|panel| {
        let (before, line) = match panel.id {
            PanelId::Leaf(_) => (panel.width - build.pivot_inset_mm - layout.face - layout.body / 2.0, pivots),
            PanelId::Shelf { .. } => (LEANS_OUT - layout.upright_front, edge),
            _ => return None,
        };
        Some(open.with(CHILD.weight(), -before - line))
    });
    climbed.chain([top]).map(Moments::left).min_by(f64::total_cmp)
}

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let (picked, layout) = (unit.picked, unit.layout);
    let find = |found, limit, allowed| Finding::stops(Rule::WallTether, Question::Height, found, limit, allowed);
    let Some(cut) = unit.cut() else { return };
    // Figures tell what has to be fastened, by a push or a moment, from what ought to be; what tips over kills, so either
    // is a warning.
    let finding = match danger(picked, unit.choice, layout, cut) {
        Some(Danger::Push(push)) => {
            let least = picked.range.strength.tether_push_n;
            find(Figure::force(push), Limit::AtLeast, Figure::force(least))
        }
        Some(Danger::Case(by)) => find(Figure::moment(by), Limit::AtMost, Figure::moment(0.0)),
        None if layout.height > LOW => find(Figure::length(layout.height), Limit::AtMost, Figure::length(LOW)),
        None => {
            // A low one is asked to for its doors.
            let doors = unit.choice.bays.iter().filter(|bay| matches!(bay.fill, Fill::Leaf(_))).count();
            let Some(doors) = u32::try_from(doors).ok().filter(|doors| *doors > 0) else { return };
            find(Figure::count(doors), Limit::AtMost, Figure::count(0u32))
        }
    };
    out.push(finding.but(Severity::Warns));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::business::promise::Backlog;
    use crate::choice::change::Change;
    use crate::geometry::space::Block;
    use crate::order::derive::derive;
    use crate::rules::sample::{Wanted, choices};
    use crate::testing::demo;
    use crate::units::rounding::round_half_away;
    use crate::words;

    /// The step of the back says where tethers go, by how long screws and when, with the figures of the case: 10 mm in the back of
    /// 12 mm, 15 in that of 18, which measures 17.7 and has a film.
    #[test]
    fn the_step_of_the_back_says_where_tethers_go_and_how_long_their_screws_may_be() {
        let range = demo();
        let day = "2026-11-25".parse().unwrap();
        let begun = Choice::first_of(&range).unwrap();
        for (board, most) in [("birch-12", 10.0), ("birch-18", 15.0)] {
            let choice = begun.with(&Change::Back(board.parse().unwrap()), &range);
            let backlog = Backlog::default();
            let derived = derive(&range, &choice, day, &backlog);
            let (built, assembly) = (derived.built.unwrap(), derived.assembly.unwrap());
            let (layout, case) = (&built.layout, &built.cut.case);
            let tethers = Tethers::of(layout, case).unwrap();
            assert_eq!(tethers.screw, Length::mm(most), "{board}");
            assert!(tethers.screw + BEFORE_TIP <= layout.back);
            // Measured from the other side: both ends and what is between them are the back, and over it is the top.
            let back = case.panel(PanelId::Back).unwrap();
            assert!((tethers.from_end * 2.0 + tethers.apart - back.width).abs() < Length::mm(1e-9));
            assert!((tethers.up + tethers.below - layout.ceiling).abs() < Length::mm(1e-9));
            assert!((tethers.gap - range.build.chase_mm).abs() < Length::mm(1e-9), "{:?}", tethers.gap);
            let step = assembly.steps.iter().find(|step| step.part == PanelId::Back).unwrap();
            assert_eq!(step.helpers, 1, "somebody steadies the uprights");
            let said = words::step(step, Some(tethers));
            let mm = |length: Length| format!("{}\u{a0}mm", round_half_away(length.in_mm()));
            let Tethers { from_end, below, up, apart, gap, .. } = tethers;
            let figures = [from_end, below, up, apart, gap].map(mm);
            assert!(
                figures.iter().all(|figure| said.replace('\u{202f}', "").contains(figure)),
                "{figures:?} in {said}"
            );
            let screws = format!("screws of {most}\u{a0}mm at most");
            for part in ["rear face of the back near each end", "Fasten both tethers", screws.as_str()] {
                assert!(said.contains(part), "{part} in {said}");
            }
            assert!(!words::step(step, None).contains("tether"));
        }
    }

    /// No foot of a tether lies on a joint or a hole of the back, and nearly all beside the uppermost hook; where slots of shelves are in
    /// its way it is moved. Looked at in the case, by what goes into the back.
    #[test]
    fn no_tether_is_screwed_over_a_slot() {
        let range = demo();
        let (mut units, mut moved) = (0, 0);
        for choice in choices(&range, 47, Wanted::Valid).take(600) {
            let picked = Picked::of(&range, &choice).unwrap();
            let layout = Layout::of(picked, &choice).unwrap();
            let cut = WeighedCase::of(picked, &choice, &layout).unwrap();
            let Tethers { from_end, up, apart, .. } = Tethers::of(&layout, &cut.case).unwrap();
            let back = cut.case.panel(PanelId::Back).unwrap();
            let (left, half) = (back.case_from_panel.origin.x + from_end, Length::mm(25.0));
            let hook = cut.case.joints.iter().filter(|joint| joint.kind == JointKind::Hook).map(|joint| joint.shared);
            let highest = hook.map(|hook| (hook.from.z + hook.to.z) / 2.0).reduce(Length::max).unwrap();
            for x in [left, left + apart] {
                for joint in cut.case.joints.iter().filter(|joint| joint.id.takes == PanelId::Back) {
                    let Block { from, to } = joint.shared;
                    let beside = x + half <= from.x || x - half >= to.x || up + half <= from.z || up - half >= to.z;
                    assert!(beside, "{}: {choice:?}", joint.id);
                }
                assert!(up + half < layout.ceiling && up - half > layout.floor, "{choice:?}");
            }
            units += 1;
            moved += usize::from((up - highest).abs() > Length::mm(1e-6));
        }
        assert!(units == 600 && moved > 5 && moved < units / 4, "{moved} of {units}");
    }
}
