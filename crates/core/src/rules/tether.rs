//! Units are fastened to the wall: tall ones and those with leaves are told to, some have to be.

use super::{Rule, RuleCard, Subject};
use crate::case::Case;
use crate::choice::{Choice, Fill};
use crate::finding::{Figure, Finding, Limit, Severity};
use crate::layout::{Layout, Picked};
use crate::panel::PanelId;
use crate::quantity::{Force, Length};
use crate::question::Question;
use crate::stability::{Leaves, Moments, burdens, edge};

/// See [`check`].
pub const WALL_TETHER: RuleCard = RuleCard {
    code: "wall-tether",
    what: "A unit over 600 mm high, or with a door leaf, is fastened to the wall; one that tips in a load case that is usual in tests has to be.",
    why: "Furniture that tips over kills children. The load cases are calculated as guidance: no calculation replaces a test, and local rules and qualified people decide.",
    source: "the height above which GB/T 10357.4-2013, 4.1 asks for a stability test; loads on the top 50 mm from its edge as in EN 16122:2012, 11.2, their forces as in EN 14749 and EN 16121, from memory: 750 N, or 350 N and 50 N to the front over 1 000 mm, 75 N on an open leaf. Verify them before they decide",
};

// Source: GB/T 10357.4-2013, 4.1: stability is tested from this height on.
const LOW: Length = Length::mm(600.0);

// Source: EN 16122:2012, 11.2: one load up to this height, another above it; so far from the edge of the top.
const TALL: Length = Length::mm(1000.0);
const FROM_EDGE: Length = Length::mm(50.0);
// From memory: tables of EN 16121 and EN 14749.
const ON_TOP: Force = Force::newton(750.0);
const ON_TOP_TALL: Force = Force::newton(350.0);
const TO_FRONT: Force = Force::newton(50.0);
const ON_LEAF: Force = Force::newton(75.0);

/// Whether a unit is fastened to the wall: asked to be, or bound to be.
pub fn is_asked(picked: Picked<'_>, choice: &Choice, layout: &Layout) -> bool {
    is_tall_or_doored(choice, layout) || worst(picked, choice, layout).is_some_and(|left| left < 0.0)
}

fn is_tall_or_doored(choice: &Choice, layout: &Layout) -> bool {
    layout.height > LOW || choice.bays.iter().any(|bay| matches!(bay.fill, Fill::Leaf(_)))
}

/// What is left, in newton metres, in the worst of the load cases; negative if it tips.
fn worst(picked: Picked<'_>, choice: &Choice, layout: &Layout) -> Option<f64> {
    let case = Case::of(picked, choice, layout)?;
    let edge = edge(&picked.range.build);
    let standing = |leaves| {
        let parts = case.panels.iter().map(|panel| (panel.id, panel.width, Case::weigh(panel, picked).mass));
        Moments::of(burdens(picked, layout, leaves, parts), 0.0)
    };
    let (shut, open, at) = (standing(Leaves::Shut), standing(Leaves::Open), FROM_EDGE - edge);
    let top = if layout.height > TALL {
        shut.with(ON_TOP_TALL, at).with(TO_FRONT, -layout.height)
    } else {
        shut.with(ON_TOP, at)
    };
    let leaves = case.panels.iter().filter(|panel| matches!(panel.id, PanelId::Leaf(_))).map(|panel| {
        let reach = panel.width - picked.range.build.pivot_inset_mm;
        open.with(ON_LEAF, layout.face + layout.body / 2.0 - reach - edge)
    });
    leaves.chain([top]).map(Moments::left).min_by(f64::total_cmp)
}

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let left = worst(unit.picked, unit.choice, unit.layout).unwrap_or_default();
    let find = |found, allowed| Finding::stops(Rule::WallTether, Question::Height, found, Limit::AtMost, allowed);
    if left < 0.0 {
        out.push(find(Figure::moment(-left), Figure::moment(0.0)).but(Severity::Warns));
    } else if unit.layout.height > LOW {
        out.push(find(Figure::length(unit.layout.height), Figure::length(LOW)).but(Severity::Advises));
    } else {
        // A low one is asked to for its doors.
        let doors = unit.choice.bays.iter().filter(|bay| matches!(bay.fill, Fill::Leaf(_))).count();
        if let Some(doors) = u32::try_from(doors).ok().filter(|doors| *doors > 0) {
            out.push(find(Figure::count(doors), Figure::count(0u32)).but(Severity::Advises));
        }
    }
}
