//! Every panel has to come out of one sheet, its face grain in the right direction.

use super::dependencies::{Context, Dependencies, Direction};
use super::{Rule, Subject, numbered};
use crate::cabinet::blank::Blank;
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::range::{Grain, Sheet};
use crate::rules::finding::{Figure, Finding, Limit, Severity};
use crate::units::quantity::Length;

/// Usable size of a sheet along and across its face grain.
pub(crate) fn usable(sheet: &Sheet, trim: Length) -> (Length, Length) {
    let (length, width) = (sheet.length_mm - trim * 2.0, sheet.width_mm - trim * 2.0);
    match sheet.grain {
        Grain::Length => (length, width),
        Grain::Width => (width, length),
    }
}

/// Finds the panels that no sheet holds: how long they are along or across the grain, and the most
/// that a sheet gives in that direction.
pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let trim = unit.picked.range.build.sheet_trim_mm;
    let mut fitting: Option<&Blank> = None;
    for blank in unit.blanks {
        if fitting.is_some_and(|fitting| blank.is_like(fitting)) {
            continue;
        }
        let sheets = &unit.picked.board(blank.stock).sheets;
        let (along, across) = blank.by_grain();
        let fits =
            sheets.iter().map(|sheet| usable(sheet, trim)).any(|(length, width)| along <= length && across <= width);
        if fits {
            fitting = Some(blank);
            continue;
        }
        let longest = sheets.iter().map(|sheet| usable(sheet, trim).0).fold(Length::ZERO, Length::max);
        // Across: what the sheets that are long enough still give.
        let widest = sheets.iter().map(|sheet| usable(sheet, trim)).filter(|(length, _)| along <= *length);
        let widest = widest.map(|(_, width)| width).fold(Length::ZERO, Length::max);
        let (found, most) = if along > longest { (along, longest) } else { (across, widest) };
        let about = about(*blank, found);
        let finding = Finding::stops(Rule::SheetFit, about, Figure::length(found), Limit::AtMost, Figure::length(most));
        out.push(finding.of([blank.id]));
    }
}

/// A share of a sheet below which it is hardly used.
// Our own: what is left of such a sheet goes back to the rack for less than it cost, and a little smaller a unit may need none.
const LITTLE: f64 = 1.0 / 3.0;

/// Where a unit takes several sheets of a board, each of them is used.
pub(crate) fn advise(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let Some((_, materials)) = unit.work() else { return };
    let least = materials.iter().filter_map(|material| material.least_used);
    let least = least.fold(1.0, f64::min);
    if least < LITTLE {
        let (found, least) = (Figure::share(least), Figure::share(LITTLE));
        let finding = Finding::stops(Rule::SheetUse, Question::Width, found, Limit::AtLeast, least);
        out.push(finding.but(Severity::Advises));
    }
}

/// The size of the unit that the part's long side comes from.
fn about(blank: Blank, long: Length) -> Question {
    let along_u = blank.whole().0 == long;
    match blank.id {
        PanelId::PlinthFront
        | PanelId::PlinthRear
        | PanelId::BaseLower
        | PanelId::BaseUpper
        | PanelId::Top
        | PanelId::Back
            if along_u =>
        {
            Question::Width
        }
        PanelId::Upright(_) | PanelId::Bearer(_) if along_u => Question::Depth,
        PanelId::PlinthFront | PanelId::PlinthRear | PanelId::Bearer(_) => Question::Plinth,
        PanelId::BaseLower | PanelId::BaseUpper | PanelId::Top => Question::Depth,
        PanelId::Leaf(bay) if along_u => Question::Bay(bay),
        PanelId::Shelf { bay, .. } => Question::Bay(bay),
        PanelId::Back
        | PanelId::Upright(_)
        | PanelId::Stile(_)
        | PanelId::Stop(_)
        | PanelId::Stave { .. }
        | PanelId::Leaf(_) => Question::Height,
    }
}

/// What the part's blank comes from. Of a part that is a little shorter, or of another board, another sheet may be
/// long enough.
pub(super) fn dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.distance_tells_nothing();
    let smaller = |on: &mut Dependencies, size| on.size(size, Direction::Down, Length::ZERO);
    for part in &finding.parts {
        match *part {
            PanelId::BaseLower | PanelId::BaseUpper | PanelId::Top => {
                smaller(on, Question::Width);
                smaller(on, Question::Depth);
                // The lower one stands back at a bowed end.
                on.ends(context, Direction::Down);
            }
            PanelId::PlinthFront | PanelId::PlinthRear | PanelId::Bearer(_) => {
                smaller(on, Question::Width);
                smaller(on, Question::Depth);
                on.answer(Question::Plinth);
                on.answer(Question::Bays);
                on.answer(Question::Finish);
            }
            PanelId::Back => {
                smaller(on, Question::Width);
                smaller(on, Question::Height);
                on.answer(Question::Plinth);
                on.ends(context, Direction::Down);
                on.answer(Question::Back);
                on.answer(Question::Finish);
            }
            PanelId::Stave { .. } => {
                smaller(on, Question::Height);
                on.answer(Question::Bow);
                on.answer(Question::Finish);
            }
            PanelId::Upright(_) | PanelId::Stile(_) | PanelId::Stop(_) => {
                smaller(on, Question::Height);
                smaller(on, Question::Depth);
                on.answer(Question::Plinth);
                on.answer(Question::Back);
                on.answer(Question::Finish);
                on.answer(Question::Bays);
                numbered(&context.choice.bays).for_each(|(bay, _)| on.answer(Question::Bay(bay)));
            }
            PanelId::Shelf { bay, .. } | PanelId::Leaf(bay) => {
                on.clear_width(context, Direction::Down, Length::ZERO);
                on.stiles(context, bay, Direction::Down, None);
                on.clear_depth(context, Direction::Down, Length::ZERO);
                smaller(on, Question::Height);
                on.answer(Question::Plinth);
            }
        }
    }
}
