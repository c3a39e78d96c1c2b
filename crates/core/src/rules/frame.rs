//! Uprights that stay straight.

use super::{Rule, Subject, numbered};
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit};
use crate::statics::buckling::{Carries, pressed, strip};

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let (picked, layout) = (unit.picked, unit.layout);
    let factor = picked.range.strength.buckling_factor;
    let slot = f64::from(picked.range.build.shelf_slot_per_mille) / 1000.0;
    let carries = Carries::of(strip(picked, layout), slot);
    let all = numbered(pressed(picked, layout)).map(|(number, pressed)| (number, carries.times(pressed)));
    if let Some((number, times)) = all.min_by(|a, b| a.1.total_cmp(&b.1)).filter(|(_, times)| *times < factor) {
        let (found, least) = (Figure::ratio(times), Figure::ratio(factor));
        let finding = Finding::stops(Rule::UprightBuckling, Question::Height, found, Limit::AtLeast, least);
        out.push(finding.of([PanelId::Upright(number)]));
    }
}
