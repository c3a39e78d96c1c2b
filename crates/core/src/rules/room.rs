//! Room inside: bays wide enough, rows high enough, shelves deep enough.

use super::dependencies::{Context, Dependencies, Direction, ONE};
use super::{Basics, Rule, numbered};
use crate::cabinet::layout::LEAST_ROOM;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit};

pub(crate) fn check(out: &mut Vec<Finding>, Basics { picked, choice, layout, .. }: Basics<'_>) {
    let Some((picked, layout)) = picked.zip(layout) else { return };
    let strength = &picked.range.strength;
    for (bay, span) in numbered(&layout.bays) {
        let (clear, least) = (span.clear(), strength.bay_least_mm.max(LEAST_ROOM));
        let (clear, least) = if clear < least { (clear, least) } else { (span.opening(), LEAST_ROOM) };
        if clear < least {
            let (found, least) = (Figure::length(clear), Figure::length(least));
            out.push(Finding::stops(Rule::BayRoom, Question::Bay(bay), found, Limit::AtLeast, least));
        }
        let (row, least) = (layout.row_height(span), strength.row_least_mm.max(LEAST_ROOM));
        if row < least {
            let about = if span.shelves.is_empty() { Question::Height } else { Question::Bay(bay) };
            let (found, least) = (Figure::length(row), Figure::length(least));
            out.push(Finding::stops(Rule::RowRoom, about, found, Limit::AtLeast, least));
        }
    }
    let build = &picked.range.build;
    // Both tabs of an upright stand before its lap with the back, with wood between them.
    let least = (build.tab_mm * 2.0 + build.tab_inset_mm * 2.0 + build.ligament_mm).max(LEAST_ROOM * 2.0);
    let clear = layout.clear_depth();
    if clear < least && choice.depth_mm >= picked.model.depth_mm.least {
        let (found, least) = (Figure::length(clear), Figure::length(least));
        out.push(Finding::stops(Rule::DepthRoom, Question::Depth, found, Limit::AtLeast, least));
    }
}

/// What the bay's width comes from: it is narrow between its uprights or, if it is not, between its stiles.
pub(super) fn bay_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.clear_width(context, Direction::Up, ONE * context.widths_a_bay(finding));
    if finding.allowed == Figure::length(LEAST_ROOM) {
        on.stiles(context, finding.about.bay().unwrap_or(0), Direction::Up, Some(context.influence.stiles));
    }
}

/// What the rows' height comes from.
pub(super) fn row_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.row_height(finding, Direction::Up, ONE * context.rows(finding));
    on.film(context);
}

/// What the clear depth comes from.
pub(super) fn depth_dependencies(on: &mut Dependencies, _: &Finding, context: Context<'_>) {
    on.clear_depth(context, Direction::Up, ONE);
}
