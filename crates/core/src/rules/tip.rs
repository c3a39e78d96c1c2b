//! Units that stand by themselves.

use super::{Rule, RuleCard, Unit};
use crate::blank::Blanks;
use crate::case::Case;
use crate::finding::{Figure, Finding, Limit, Question};
use crate::panel::PanelId;
use crate::stability::{Burden, Leaves, Moments, burdens, carpet};

/// See [`check`].
pub const TIP_OVER: RuleCard = RuleCard {
    code: "tip-over",
    what: "Empty, with all leaves open and the rear of its foot lifted by a carpet, the unit still stands, with the range's factor to spare.",
    why: "Furniture that tips over kills children. This is a calculation, no test and no certificate; local rules and qualified people decide, and the tether is fitted all the same.",
    source: "statics: moments about the front edge of the foot; of all combinations of leaves and loads this is the worst. The lift is that of ASTM F2057-23; the factor is the range file's",
};

pub(crate) fn check(out: &mut Vec<Finding>, unit: Unit<'_>) {
    let (picked, layout) = (unit.picked, unit.layout);
    let (slope, least) = (carpet(picked, layout), picked.range.strength.tip_factor);
    let stands = |moments: Moments| moments.holds >= moments.tips * least;
    if stands(Moments::of(worst(unit, slope), slope)) {
        return;
    }
    // Parts are cut only where their blanks leave it open.
    let Some(case) = Case::of(picked, unit.choice, layout) else { return };
    let parts = case.panels.iter().map(|panel| (panel.id, panel.width, Case::weigh(panel, picked).mass));
    let found = Moments::of(burdens(picked, layout, Leaves::Open, parts), slope);
    if !stands(found) {
        let (ratio, least) = (Figure::ratio(found.holds / found.tips), Figure::ratio(least));
        let leaves = case.panels.iter().map(|panel| panel.id).filter(|id| matches!(id, PanelId::Leaf(_)));
        out.push(Finding::stops(Rule::TipOver, Question::Depth, ratio, Limit::AtLeast, least).of(leaves));
    }
}

/// The parts as their blanks bound them: those that hold weigh the least, those that tip the most that they can.
fn worst(unit: Unit<'_>, slope: f64) -> impl Iterator<Item = Burden> {
    let blanks = Blanks { picked: unit.picked, layout: unit.layout };
    let most = unit.blanks.iter().map(move |blank| (blank.id, blank.size.0, blank.most_mass(unit.coated)));
    let most = burdens(unit.picked, unit.layout, Leaves::Open, most);
    most.zip(unit.blanks).map(move |(burden, blank)| match burden.behind > burden.up * slope {
        true => Burden { mass: blanks.least_mass(blank, unit.choice, unit.coated), ..burden },
        false => burden,
    })
}
