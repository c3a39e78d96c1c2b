//! The feet of the screen on the top.

use super::{Rule, Subject, place};
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit, Severity};
use crate::statics::sag::{Beam, own_load, sag, sag_of_point};
use crate::units::quantity::{Length, Mass};

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let Some(tenths) = unit.choice.place.screen_tenth_inch else { return };
    let diagonal = place::diagonal(tenths);
    let (wide, high) = place::screen(diagonal);
    feet(out, unit, (wide, high));
}

fn feet(out: &mut Vec<Finding>, unit: Subject<'_>, (wide, high): (Length, Length)) {
    let (picked, layout) = (unit.picked, unit.layout);
    let (screen, strength, board) = (&picked.range.screen, &picked.range.strength, picked.body);
    let mass = Mass::kg(screen.kg_per_m2.in_kg_per_m2() * (wide * high).in_m2());
    let half = wide * (f64::from(screen.feet_apart_per_mille) / 2000.0);
    let creep = 1.0 + strength.creep_factor;
    let (strip, beam) = (screen.foot_mm.min(layout.depth), Beam::along(board));
    let bends = layout.bays.iter().filter_map(|span| {
        let feet = [layout.width / 2.0 - half, layout.width / 2.0 + half];
        let near = feet.map(|foot| (foot - span.left).min(span.right - foot));
        let bent: Length = near
            .into_iter()
            .filter(|near| *near > Length::ZERO)
            .map(|near| sag_of_point(span.clear(), near, mass.weight() * (creep / 2.0), strip, beam))
            .sum();
        let own = sag(span.clear(), own_load(board) * creep, beam);
        (bent > Length::ZERO).then_some((bent + own, span.clear() / strength.sag_span_over))
    });
    if let Some((found, most)) = bends.filter(|(bent, most)| bent > most).max_by(|a, b| a.0.total_cmp(&b.0)) {
        let (found, most) = (Figure::length(found), Figure::length(most));
        let finding = Finding::stops(Rule::ScreenFeet, Question::Place, found, Limit::AtMost, most);
        out.push(finding.of([PanelId::Top]).but(Severity::Warns));
    }
}
