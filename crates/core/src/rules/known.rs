//! The range has what the choice names.

use super::dependencies::{Context, Dependencies};
use super::{Basics, Rule, numbered};
use crate::choice::question::Question;
use crate::range::Key;
use crate::rules::finding::{Figure, Finding, Limit};

/// Finds every name that leads nowhere; allowed is how many the range has.
pub(crate) fn check(out: &mut Vec<Finding>, Basics { range, choice, .. }: Basics<'_>) {
    let mut look = |about, known: bool, offered: usize| {
        if !known {
            let offered = Figure::count(u32::try_from(offered).unwrap_or(u32::MAX));
            out.push(Finding::stops(Rule::Known, about, Figure::count(0u32), Limit::OneOf, offered));
        }
    };
    let Some(model) = range.model(&choice.model) else {
        look(Question::Model, false, range.models.len());
        return;
    };
    let among = |keys: &[Key], key: &Key| keys.contains(key);
    look(Question::Back, among(&model.backs, &choice.back) && range.board(&choice.back).is_some(), model.backs.len());
    let finish = among(&model.finishes, &choice.finish) && range.finish(&choice.finish).is_some();
    look(Question::Finish, finish, model.finishes.len());
    let radius = model.corner_radii_mm.contains(&choice.corner_radius_mm);
    look(Question::Corners, radius, model.corner_radii_mm.len());
    let plinth = choice.plinth_mm.is_none() || model.plinth_mm.is_some();
    // Where none is on offer there is one answer.
    look(Question::Plinth, plinth, 1);
    for (bay, chosen) in numbered(&choice.bays) {
        let known = chosen.hole.as_ref().is_none_or(|hole| range.hole(&hole.kind).is_some());
        look(Question::Hole(bay), known, range.holes.len());
        let known = chosen.device.as_ref().is_none_or(|key| range.device(key).is_some());
        look(Question::Device(bay), known, range.devices.len());
    }
    let plug = choice.place.plug.as_ref().is_none_or(|key| range.plug(key).is_some());
    look(Question::Place, plug, range.plugs.len());
}

/// The answer that the range lacks, and its bay, without which the question is gone.
pub(super) fn dependencies(on: &mut Dependencies, finding: &Finding, _: Context<'_>) {
    on.answer(finding.about);
    if finding.about.bay().is_some() {
        on.answer(Question::Bays);
    }
}
