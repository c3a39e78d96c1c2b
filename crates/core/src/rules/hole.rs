//! Cable holes: the plug passes, wood stays round the hole, no shelf stands before it, and no slot of one is near it.

use super::dependencies::{Context, Dependencies, Direction, ONE};
use super::{Rule, Subject, numbered};
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::range::{HoleShape, Plug};
use crate::rules::finding::{Figure, Finding, Limit, Severity};
use crate::units::quantity::Length;

/// How wide a gap a plug's body needs, and the gap that the shape gives it.
///
/// A body with square corners is measured by its diagonal in a round hole; in a lying slot with
/// half-round ends it must fit the rectangle of its own height.
pub fn passage(shape: HoleShape, plug: &Plug) -> (Length, Length) {
    let (long, short) = (plug.width_mm.max(plug.height_mm), plug.width_mm.min(plug.height_mm));
    match shape {
        HoleShape::Round { diameter_mm } if plug.round => (long, diameter_mm),
        HoleShape::Round { diameter_mm } => (Length::mm(libm::hypot(long.in_mm(), short.in_mm())), diameter_mm),
        HoleShape::Slotted { height_mm, .. } if short > height_mm => (short, height_mm),
        // A body with half-round ends passes lying: its ends are no wider than the slot's.
        HoleShape::Slotted { length_mm, .. } if plug.round => (long, length_mm),
        HoleShape::Slotted { length_mm, height_mm } => {
            // At half of the body's height the round ends stand back by r − √(r² − (h/2)²).
            let (radius, half) = (height_mm.in_mm() / 2.0, short.in_mm() / 2.0);
            let lost = radius - (radius * radius - half * half).sqrt();
            (long, length_mm - Length::mm(lost * 2.0))
        }
    }
}

/// A cable that has no room to turn behind the back.
pub(crate) fn advise(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let (range, chase) = (unit.picked.range, unit.picked.range.build.chase_mm);
    let plug = unit.choice.place.plug.as_ref().and_then(|key| range.plug(key));
    if let Some(bend) = plug.and_then(|plug| plug.bend_mm).filter(|bend| *bend > chase) {
        let (found, least) = (Figure::length(chase), Figure::length(bend));
        let finding = Finding::stops(Rule::CableBend, Question::Place, found, Limit::AtLeast, least);
        out.push(finding.but(Severity::Warns));
    }
}

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let range = unit.picked.range;
    let plug = unit.choice.place.plug.as_ref().and_then(|key| range.plug(key));
    let back_height = unit.layout.clear_height();
    for (bay, (chosen, span)) in numbered(unit.choice.bays.iter().zip(&unit.layout.bays)) {
        let Some(hole) = &chosen.hole else { continue };
        let Some(kind) = range.hole(&hole.kind) else { continue };
        let mut find = |rule, part, found: Length, allowed: Length| {
            let (found, allowed) = (Figure::length(found), Figure::length(allowed));
            out.push(Finding::stops(rule, Question::Hole(bay), found, Limit::AtLeast, allowed).of([part]));
        };
        if let Some(plug) = plug {
            let (needed, given) = passage(kind.shape, plug);
            if needed > given {
                find(Rule::HolePlug, PanelId::Back, given, needed);
            }
        }
        let (long, high) = kind.shape.extent();
        let least = range.build.ligament_mm;
        // Behind an upright no cable goes, so it keeps off its slots at whatever height they are. They are wider than what is in them.
        let play = range.build.clearance_mm / 2.0;
        let centre = span.middle() + hole.offset_mm.length();
        let beside = (centre - long / 2.0 - span.left - play).min(span.right - play - centre - long / 2.0);
        let within = |left: Length, right: Length| (centre - long / 2.0 - left).min(right - centre - long / 2.0);
        let shown = within(span.access_left, span.access_right);
        let (under, over) = (kind.rise_mm - high / 2.0, kind.rise_mm + high / 2.0);
        let bridge = beside.min(under).min(back_height - over);
        if bridge < least {
            find(Rule::HoleEdge, PanelId::Back, bridge, least);
        }
        if shown < Length::ZERO {
            let is_stile = within(span.opening_left, span.opening_right) < Length::ZERO;
            find(Rule::HoleStile, if is_stile { PanelId::Back } else { PanelId::Leaf(bay) }, shown, Length::ZERO);
        }
        let shelf = span.shelves.iter().map(|shelf| {
            // Its slots in the back begin half a clearance before it, as those of uprights do.
            let low = *shelf - unit.layout.floor;
            (low - play - over).max(under - low - unit.layout.body - play)
        });
        if let Some(gap) = shelf.min_by(Length::total_cmp).filter(|gap| *gap < least) {
            find(Rule::HoleShelf, PanelId::Back, gap, least);
        }
    }
}

/// The hole and the plug.
pub(super) fn plug_dependencies(on: &mut Dependencies, finding: &Finding, _: Context<'_>) {
    on.answer(finding.about);
    on.answer(Question::Place);
    on.answer(Question::Bays);
}

/// The hole, and what the edges of its field come from. It keeps its distance from the middle, so that half of what the
/// bay gains is beside it.
pub(super) fn edge_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.clear_width(context, Direction::Up, ONE * context.widths_a_bay(finding) * 2.0);
    on.answer(finding.about);
    on.size(Question::Height, Direction::Up, ONE);
    on.plinth(context);
}

/// The hole, and what the access to its bay comes from.
pub(super) fn stile_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.clear_width(context, Direction::Up, ONE * context.widths_a_bay(finding) * 2.0);
    on.stiles(context, finding.about.bay().unwrap_or(0), Direction::Up, Some(context.influence.stiles));
    on.answer(finding.about);
}

/// The hole and the shelves before it, of which the topmost moves most.
pub(super) fn shelf_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    let rows = context.rows(finding);
    on.row_height(
        context,
        finding,
        Direction::Either,
        if rows > 1.0 { ONE * (rows / (rows - 1.0)) } else { Length::ZERO },
    );
    on.answer(finding.about);
    on.film(context);
}
