//! Units that stand by themselves.

use super::dependencies::{Context, Dependencies, Direction};
use super::{Rule, RuleCard, Subject};
use crate::blank::Blank;
use crate::case::Case;
use crate::finding::{Figure, Finding, Limit};
use crate::panel::PanelId;
use crate::question::Question;
use crate::stability::{Leaves, Moments, burdens, carpet};

/// See [`check`].
pub const TIP_OVER: RuleCard = RuleCard {
    code: "tip-over",
    what: "Empty, with all leaves open and the rear of its foot lifted by a carpet, the unit still stands, with the range's factor to spare.",
    why: "Furniture that tips over kills children. This is a calculation, no test and no certificate; local rules and qualified people decide, and the tether is fitted all the same.",
    source: "statics: moments about the front edge of the foot; of all combinations of leaves and loads this is the worst. The lift is that of ASTM F2057-23; the factor is the range file's",
};

/// At least so much of a blank is left of every part.
pub(crate) const LEFT: f64 = 0.8;

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let (picked, layout) = (unit.picked, unit.layout);
    let (slope, least) = (carpet(picked, layout), picked.range.strength.tip_factor);
    let stands = |moments: Moments| moments.holds >= moments.tips * least;
    let is_leaf = |id| matches!(id, PanelId::Leaf(_));
    // Parts are cut only where their blanks leave it open: light ones that hold, heavy ones that may tip.
    let least_of = |blank: &Blank| {
        let mass = blank.most_mass(unit.coated);
        (blank.id, blank.size.0, if is_leaf(blank.id) { mass } else { mass * LEFT })
    };
    if stands(Moments::of(burdens(picked, layout, Leaves::Open, unit.blanks.iter().map(least_of)), slope)) {
        return;
    }
    let Some(case) = Case::of(picked, unit.choice, layout) else { return };
    let parts = case.panels.iter().map(|panel| (panel.id, panel.width, Case::weigh(panel, picked).mass));
    let found = Moments::of(burdens(picked, layout, Leaves::Open, parts), slope);
    if !stands(found) {
        let (ratio, least) = (Figure::ratio(found.holds / found.tips), Figure::ratio(least));
        let leaves = case.panels.iter().map(|panel| panel.id).filter(|id| is_leaf(*id));
        out.push(Finding::stops(Rule::TipOver, Question::Depth, ratio, Limit::AtLeast, least).of(leaves));
    }
}

/// Everything that has a mass: nobody knows which way.
pub(super) fn dependencies(on: &mut Dependencies, _: &Finding, context: Context<'_>) {
    on.whole(context, Direction::Either);
}
