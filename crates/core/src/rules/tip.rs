//! Units that stand by themselves.

use super::dependencies::{Context, Dependencies, Direction};
use super::{Rule, Subject};
use crate::cabinet::blank::{Blanks, Cuts};
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit};
use crate::statics::stability::{Leaves, Moments, burdens, carpet, middle};

// Source: statics: moments about the front edge of the foot; the lift is that of ASTM F2057-23.
pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let (picked, layout) = (unit.picked, unit.layout);
    let (slope, least) = (carpet(picked, layout), picked.range.strength.tip_factor);
    if surely_stands(unit, slope, least) {
        return;
    }
    // Parts are cut only where their blanks leave it open.
    let Some(cut) = unit.cut() else { return };
    let found = Moments::of(burdens(picked, layout, Leaves::Open, cut.masses()), slope);
    if found.holds < found.tips * least {
        let (ratio, least) = (Figure::ratio(found.holds / found.tips), Figure::ratio(least));
        let leaves = cut.parts.iter().map(|(id, _)| *id).filter(|id| matches!(id, PanelId::Leaf(_)));
        out.push(Finding::stops(Rule::TipOver, Question::Depth, ratio, Limit::AtLeast, least).of(leaves));
    }
}

/// Whether it stands as blanks bound the moments: parts that tip weigh the most, those that hold the least that they
/// can. Every answer that is tried comes here, so gravity is left out on both sides, and each part is weighed once.
fn surely_stands(unit: Subject<'_>, slope: f64, least: f64) -> bool {
    let cuts = Cuts::of(Blanks { picked: unit.picked, layout: unit.layout }, unit.choice);
    let (mut holds, mut tips) = (0.0, 0.0);
    for blank in unit.blanks {
        let (behind, up) = middle(unit.picked, unit.layout, blank.id, blank.size.0, Leaves::Open);
        let lever = (behind - up * slope).in_mm();
        if lever > 0.0 {
            holds += cuts.least_mass(blank, unit.coated).in_kg() * lever;
        } else {
            tips -= blank.most_mass(unit.coated).in_kg() * lever;
        }
    }
    holds >= tips * least
}

/// Everything that has a mass: nobody knows which way.
pub(super) fn dependencies(on: &mut Dependencies, _: &Finding, context: Context<'_>) {
    on.whole(context, Direction::Either);
}
