//! Units that stand by themselves.

use super::dependencies::{Context, Dependencies, Direction};
use super::{Rule, Subject};
use crate::cabinet::blank::{Blanks, Cuts};
use crate::cabinet::case::Case;
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit};
use crate::statics::stability::{Burden, Leaves, Moments, burdens, carpet};

// Source: statics: moments about the front edge of the foot; the lift is that of ASTM F2057-23.
pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let (picked, layout) = (unit.picked, unit.layout);
    let (slope, least) = (carpet(picked, layout), picked.range.strength.tip_factor);
    let stands = |moments: Moments| moments.holds >= moments.tips * least;
    if stands(worst(unit, slope)) {
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

/// The moments as blanks bound them: parts that tip weigh the most, those that hold the least that they can.
fn worst(unit: Subject<'_>, slope: f64) -> Moments {
    let cuts = Cuts::of(Blanks { picked: unit.picked, layout: unit.layout }, unit.choice);
    let most = unit.blanks.iter().map(|blank| (blank.id, blank.size.0, blank.most_mass(unit.coated)));
    let most = burdens(unit.picked, unit.layout, Leaves::Open, most).zip(unit.blanks);
    let bounded = most.map(|(burden, blank)| {
        if burden.behind > burden.up * slope {
            Burden { mass: cuts.least_mass(blank, unit.coated), ..burden }
        } else {
            burden
        }
    });
    Moments::of(bounded, slope)
}

/// Everything that has a mass: nobody knows which way.
pub(super) fn dependencies(on: &mut Dependencies, _: &Finding, context: Context<'_>) {
    on.whole(context, Direction::Either);
}
