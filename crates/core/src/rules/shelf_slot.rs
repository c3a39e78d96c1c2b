//! Shelf slots in a shared divider.

use super::dependencies::{Context, Dependencies, Direction};
use super::{Rule, Subject, numbered};
use crate::cabinet::layout::Layout;
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::range::Build;
use crate::rules::finding::{Figure, Finding, Limit};
use crate::units::quantity::Length;

/// Slots closer than this at the same height are one.
const SAME: Length = Length::mm(0.01);

/// Compares the shelves of neighbouring bays: the wood between two slots that are not one.
pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let build = &unit.picked.range.build;
    for (bay, wood) in beside(unit.layout, build) {
        if wood < build.ligament_mm {
            let (found, least) = (Figure::length(wood), Figure::length(build.ligament_mm));
            let finding = Finding::stops(Rule::ShelfSlot, Question::Bay(bay + 1), found, Limit::AtLeast, least);
            out.push(finding.of([PanelId::Upright(bay + 1)]));
        }
    }
}

/// The least wood between two slots of neighbouring bays, with the first of them.
fn beside(layout: &Layout, build: &Build) -> impl Iterator<Item = (u8, Length)> {
    let slot = layout.body + build.clearance_mm;
    numbered(layout.bays.windows(2)).filter_map(move |(bay, pair)| {
        let [here, beside] = pair else { return None };
        let gaps = here.shelves.iter().flat_map(|a| beside.shelves.iter().map(move |b| (*a - *b).abs()));
        let closest = gaps.filter(|gap| *gap > SAME).min_by(Length::total_cmp)?;
        Some((bay, closest - slot))
    })
}

/// The least wood between two slots of an upright, if any has shelves: it stands out between them to the front.
pub(super) fn prong(layout: &Layout, build: &Build) -> Option<Length> {
    let rows = layout.bays.iter().filter(|bay| !bay.shelves.is_empty());
    // A single one has both edges of the upright beside it.
    let rows = rows.map(|bay| {
        let slots = if bay.shelves.len() == 1 { 0.5 } else { 1.0 };
        layout.row_height(bay) - build.clearance_mm * slots
    });
    rows.chain(beside(layout, build).map(|(_, wood)| wood)).reduce(Length::min)
}

/// The rows of both bays.
pub(super) fn dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.row_height(context, finding, Direction::Either, Length::ZERO);
    on.answer(Question::Bay(finding.about.bay().unwrap_or(0).saturating_sub(1)));
    on.film(context);
}
