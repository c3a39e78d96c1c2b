//! Units that stand by themselves.

use super::{Rule, Subject};
use crate::cabinet::blank::{Blank, Blanks, Cuts};
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit};
use crate::statics::stability::{Leaves, Moments, burdens, carpet, edge, middle};

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
    let edge = edge(&unit.picked.range.build, unit.layout);
    let moment = |blank: &Blank| {
        let (behind, up) = middle(unit.picked, unit.layout, blank.id, blank.size.0, Leaves::Open);
        let lever = (behind - edge - up * slope).in_mm();
        let mass = if lever > 0.0 { cuts.least_mass(blank, unit.coated) } else { blank.most_mass(unit.coated) };
        mass.in_kg() * lever
    };
    let (mut holds, mut tips) = (0.0, 0.0);
    let mut last: Option<(&Blank, f64)> = None;
    for blank in unit.blanks {
        // Neighbours that are alike stand as far behind, but for shelves over each other and staves along an arc.
        let is_alone = matches!(blank.id, PanelId::Shelf { .. } | PanelId::Stave { .. });
        let alike = last.filter(|(before, _)| !is_alone && blank.is_like(before));
        let moment = alike.map_or_else(|| moment(blank), |(_, moment)| moment);
        holds += f64::max(moment, 0.0);
        tips -= f64::min(moment, 0.0);
        last = Some((blank, moment));
    }
    holds >= tips * least
}
