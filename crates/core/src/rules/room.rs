//! Room: bays wide enough, rows high enough, shelves deep enough, uprights high enough for their hooks, bows long enough for a
//! row of staves.

use super::dependencies::{Context, Dependencies, Direction, ONE};
use super::{Basics, Rule, numbered};
use crate::cabinet::layout::{LEAST_ROOM, Layout};
use crate::cabinet::panel::PanelId;
use crate::cabinet::plinth::Plinth;
use crate::choice::question::Question;
use crate::choice::{Fill, SHARE_MOST};
use crate::range::Strength;
use crate::rules::finding::{Figure, Finding, Limit};
use crate::units::quantity::{Dim, Length};

pub(crate) fn check(out: &mut Vec<Finding>, Basics { picked, choice, layout, .. }: Basics<'_>) {
    let Some((picked, layout)) = picked.zip(layout) else { return };
    let (strength, model) = (&picked.range.strength, picked.model);
    // What is beyond its limits is told of itself: that it leaves no room says nothing more.
    let shared = choice.bays.iter().all(|bay| (1..=SHARE_MOST).contains(&bay.share));
    let bowed = choice.bow_mm <= model.bows().most && choice.bow_mm >= Dim::mm(0);
    let few = bowed && choice.bays.len() <= usize::from(model.bays.most);
    let plinth = choice.plinth_mm;
    let is_offered = plinth.is_none_or(|height| model.plinth_mm.is_some_and(|limits| height <= limits.most));
    let wide = choice.width_mm >= model.width_mm.least && few && shared;
    let high = choice.height_mm >= model.height_mm.least && is_offered;
    let is_crowded = |bay: u8| {
        let chosen = choice.bays.get(usize::from(bay).saturating_sub(1));
        chosen.is_some_and(|chosen| matches!(chosen.fill, Fill::Shelves(count) if count > model.shelves_most))
    };
    for (bay, span) in numbered(&layout.bays) {
        let (clear, least) = (span.clear(), bay_least(strength, layout));
        let (clear, least) = if clear < least { (clear, least) } else { (span.access(), LEAST_ROOM) };
        if wide && clear < least {
            let (found, least) = (Figure::length(clear), Figure::length(least));
            out.push(Finding::stops(Rule::BayRoom, Question::Bay(bay), found, Limit::AtLeast, least));
        }
        let (row, least) = (layout.row_height(span), strength.row_least_mm.max(LEAST_ROOM));
        if high && !is_crowded(bay) && row < least {
            let about = if span.shelves.is_empty() { Question::Height } else { Question::Bay(bay) };
            let (found, least) = (Figure::length(row), Figure::length(least));
            out.push(Finding::stops(Rule::RowRoom, about, found, Limit::AtLeast, least));
        }
    }
    let build = &picked.range.build;
    // Both tabs of an upright stand before the back, with wood between them; so could a stop.
    let least = (build.tab_mm * 2.0 + build.tab_inset_mm * 2.0 + build.ligament_mm).max(LEAST_ROOM * 2.0);
    let least = least.max(build.stop_gap_mm + build.stop_depth_mm + build.ligament_mm);
    let clear = layout.clear_depth();
    if clear < least && choice.depth_mm >= model.depth_mm.least {
        let (found, least) = (Figure::length(clear), Figure::length(least));
        out.push(Finding::stops(Rule::DepthRoom, Question::Depth, found, Limit::AtLeast, least));
    }
    let between = layout.plinth.filter(|_| is_offered).map(|plinth| plinth.between(layout.body));
    if let Some(between) = between.filter(|between| *between < LEAST_ROOM && choice.depth_mm >= model.depth_mm.least) {
        let (found, least) = (Figure::length(between), Figure::length(LEAST_ROOM));
        let finding = Finding::stops(Rule::DepthRoom, Question::Plinth, found, Limit::AtLeast, least);
        out.push(finding.of([PanelId::PlinthRear]));
    }
    let lacking = layout.bows.iter().flatten().find(|bow| !bow.has_room());
    if let Some(bow) = lacking.filter(|_| bowed && choice.depth_mm >= model.depth_mm.least) {
        // Where no row can be made, none stands.
        let (found, least) = (Figure::count(if bow.count < 2 { bow.count } else { 0 }), Figure::count(2u32));
        out.push(Finding::stops(Rule::BowRoom, Question::Bow, found, Limit::AtLeast, least));
    }
    let (pitch, least) = (layout.hooks.pitch, build.hook_least());
    if high && pitch < least {
        let (found, least) = (Figure::length(pitch), Figure::length(least));
        out.push(Finding::stops(Rule::HookRoom, Question::Height, found, Limit::AtLeast, least));
    }
}

/// The narrowest bay: that of the range, or what a plinth under it takes.
fn bay_least(strength: &Strength, layout: &Layout) -> Length {
    let under = layout.plinth.map_or(LEAST_ROOM, Plinth::bay_least);
    strength.bay_least_mm.max(LEAST_ROOM).max(under)
}

/// Where the arc can be, and what the row of staves along it comes from.
pub(super) fn bow_dependencies(on: &mut Dependencies, _: &Finding, context: Context<'_>) {
    on.answer(Question::Bow);
    on.answer(Question::Depth);
    on.film(context);
}

/// What the bay's width comes from: it is narrow between its uprights or, if it is not, between its stiles or between its leaf
/// and the stop of that.
pub(super) fn bay_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.clear_width(context, Direction::Up, ONE * context.widths_a_bay(finding));
    let plinth = context.layout.and_then(|layout| layout.plinth);
    if plinth.is_some_and(|plinth| finding.allowed == Figure::length(plinth.bay_least())) {
        on.answer(Question::Plinth);
    }
    if finding.allowed == Figure::length(LEAST_ROOM) {
        on.stiles(context, finding.about.bay().unwrap_or(0), Direction::Up, Some(context.influence.stiles));
    }
}

/// What the rows' height comes from.
pub(super) fn row_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.row_height(context, finding, Direction::Up, ONE * context.rows(finding));
    on.film(context);
}

/// What the height of the uprights comes from. Only a few hooks can be too near to each other: two at least stand there.
pub(super) fn hook_dependencies(on: &mut Dependencies, _: &Finding, context: Context<'_>) {
    on.size(Question::Height, Direction::Up, ONE * 2.0);
    on.plinth(context);
    on.film(context);
}

/// What the clear depth comes from.
pub(super) fn depth_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    if finding.about == Question::Plinth {
        on.answer(Question::Plinth);
    }
    on.clear_depth(context, Direction::Up, ONE);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::choice::change::Change;
    use crate::choice::{Bay, Choice, Hung};
    use crate::rules::judge_stops;
    use crate::testing::demo;

    /// What a size that is out of its bounds leaves too little room for is not told beside it.
    #[test]
    fn a_size_out_of_its_bounds_is_told_alone() {
        let range = demo();
        let choice = Choice::first_of(&range).unwrap();
        let model = range.model(&choice.model).unwrap();
        let (width, height, depth) = (model.width_mm, model.height_mm, model.depth_mm);
        for change in [
            Change::WidthMm(Dim::mm(64)),
            Change::WidthMm(Dim::mm(1)),
            Change::WidthMm(Dim::tenths(width.most.in_tenths() + 1)),
            Change::HeightMm(Dim::mm(40)),
            Change::DepthMm(Dim::mm(40)),
            Change::DepthMm(Dim::tenths(depth.least.in_tenths() - 1)),
        ] {
            let found = judge_stops(&range, &choice.with(&change, &range)).findings;
            let told: Vec<(Rule, Question)> = found.iter().map(|finding| (finding.rule, finding.about)).collect();
            assert_eq!(told, [(Rule::SizeLimit, change.question().unwrap())], "{change:?}");
        }
        // Another size that is wrong by itself is still told, and so is room that is lacking within the bounds.
        let low = choice.with(&Change::WidthMm(Dim::mm(64)), &range);
        let low = low.with(&Change::HeightMm(height.least), &range);
        let low = low.with(&Change::Fill { bay: 1, fill: Fill::Shelves(model.shelves_most) }, &range);
        let rules: Vec<Rule> = judge_stops(&range, &low).findings.iter().map(|finding| finding.rule).collect();
        assert_eq!(rules, [Rule::SizeLimit, Rule::RowRoom]);
        let many = choice.with(&Change::WidthMm(width.least), &range).with(&Change::BayCount(model.bays.most), &range);
        let rules: Vec<Rule> = judge_stops(&range, &many).findings.iter().map(|finding| finding.rule).collect();
        assert_eq!(rules, vec![Rule::BayRoom; usize::from(model.bays.most)]);
    }

    /// Nor is what too many bays or shelves leave no room for.
    #[test]
    fn too_many_are_told_alone() {
        let range = demo();
        let mut choice = Choice::first_of(&range).unwrap();
        let model = range.model(&choice.model).unwrap();
        let open = Bay { fill: Fill::Open, hole: None, device: None, ..choice.next_bay() };
        choice.bays = vec![open.clone(); usize::from(model.bays.most) + 20];
        let rules = |choice: &Choice| -> Vec<Rule> {
            judge_stops(&range, choice).findings.iter().map(|finding| finding.rule).collect()
        };
        assert_eq!(rules(&choice), [Rule::FitOutCount]);
        choice.bays = vec![Bay { fill: Fill::Shelves(40), ..open }; 3];
        assert_eq!(rules(&choice), [Rule::FitOutCount; 3]);
        choice.bays[0].fill = Fill::Leaf(Hung::Left);
        assert_eq!(rules(&choice), [Rule::FitOutCount; 2]);
    }
}
