//! Shelves and top bend under their load, and more so over the years.
//!
//! A shelf is taken as a beam on simple supports at the faces of its bay, the top likewise from
//! upright to upright (its continuity is left out, on the safe side). So is the base, as if it hung between them: on a plinth
//! a bearer stands under each divider and beside each end, and it spans no further.

use super::dependencies::{Context, Dependencies, Direction, ONE, ROUNDING};
use super::{Rule, Subject, numbered};
use crate::cabinet::layout::BaySpan;
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit};
use crate::statics::sag::{Beam, Gives, lasting, own_load};
use crate::units::quantity::{AreaMass, Length};

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let Subject { picked, layout, .. } = unit;
    let (strength, board, model) = (&picked.range.strength, picked.body, picked.model);
    let (gives, own) = (Gives::of(Beam::along(board)), own_load(board));
    // Two plates that lie on each other share the load of things on the base.
    let [on_shelf, on_top, on_base] =
        [model.shelf_load_kg_per_m2, model.top_load_kg_per_m2, model.shelf_load_kg_per_m2 / 2.0]
            .map(|imposed| lasting(own, imposed, strength));
    let bend = |span: Length, load: AreaMass| {
        let sag = gives.under(span, load);
        let most = span / strength.sag_span_over;
        (sag > most).then(|| (Figure::length(sag), Figure::length(most)))
    };
    for (bay, span) in numbered(&layout.bays) {
        if !span.shelves.is_empty()
            && let Some((found, most)) = bend(span.clear(), on_shelf)
        {
            let shelves = numbered(&span.shelves).map(|(row, _)| PanelId::Shelf { bay, row });
            out.push(Finding::stops(Rule::ShelfSag, Question::Bay(bay), found, Limit::AtMost, most).of(shelves));
        }
        if let Some((found, most)) = bend(span.clear(), on_top) {
            out.push(Finding::stops(Rule::TopSag, Question::Bay(bay), found, Limit::AtMost, most).of([PanelId::Top]));
        }
        if let Some((found, most)) = bend(span.clear(), on_base) {
            let plates = [PanelId::BaseLower, PanelId::BaseUpper];
            out.push(Finding::stops(Rule::BaseSag, Question::Bay(bay), found, Limit::AtMost, most).of(plates));
        }
    }
}

/// What the shelf's span comes from.
pub(super) fn shelf_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    plate_dependencies(on, finding, context);
    on.answer(Question::Bay(finding.about.bay().unwrap_or(0)));
}

/// The same for the top and the base. How far they bend of what they may grows with the third power of the span at most, so it
/// stays while the span does not fall below its cube root.
pub(super) fn plate_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    let bay = finding.about.bay().map(|bay| usize::from(bay).wrapping_sub(1));
    let span = bay.zip(context.layout).and_then(|(bay, layout)| layout.bays.get(bay)).map(BaySpan::clear);
    // Of what bends by hardly more than figures are rounded to nothing is known.
    let found = finding.found.value - ROUNDING;
    let left = if found > 0.0 { ((finding.allowed.value + ROUNDING) / found).min(1.0) } else { 1.0 };
    on.distance(span.unwrap_or_default() * (1.0 - libm::cbrt(left)));
    on.clear_width(context, Direction::Down, ONE * context.widths_a_bay(finding));
}
