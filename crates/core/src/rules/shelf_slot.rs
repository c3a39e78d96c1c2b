//! Shelf slots in a shared divider.

use super::dependencies::{Context, Dependencies, Direction};
use super::{Rule, Subject, numbered};
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit};
use crate::units::quantity::Length;

/// Slots closer than this at the same height are one.
const SAME: Length = Length::mm(0.01);

/// Compares the shelves of neighbouring bays: the wood between two slots that are not one.
pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let build = &unit.picked.range.build;
    let slot = unit.layout.body + build.clearance_mm;
    for (bay, pair) in numbered(unit.layout.bays.windows(2)) {
        let [here, beside] = pair else { continue };
        let gaps = here.shelves.iter().flat_map(|a| beside.shelves.iter().map(move |b| (*a - *b).abs()));
        let closest = gaps.filter(|gap| *gap > SAME).min_by(Length::total_cmp);
        if let Some(wood) = closest.map(|gap| gap - slot).filter(|wood| *wood < build.ligament_mm) {
            let (found, least) = (Figure::length(wood), Figure::length(build.ligament_mm));
            let finding = Finding::stops(Rule::ShelfSlot, Question::Bay(bay + 1), found, Limit::AtLeast, least);
            out.push(finding.of([PanelId::Upright(bay + 1)]));
        }
    }
}

/// The rows of both bays.
pub(super) fn dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.row_height(context, finding, Direction::Either, Length::ZERO);
    on.answer(Question::Bay(finding.about.bay().unwrap_or(0).saturating_sub(1)));
    on.film(context);
}
