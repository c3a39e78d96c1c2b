//! The model's own limits: sizes, steps and counts.

use super::dependencies::{Context, Dependencies, Direction, ONE};
use super::{Basics, Rule, numbered};
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::choice::{Fill, SHARE_MOST};
use crate::range::DimRange;
use crate::rules::finding::{Figure, Finding, Limit};
use crate::units::quantity::Dim;

pub(crate) fn check(out: &mut Vec<Finding>, Basics { picked, choice, .. }: Basics<'_>) {
    let Some(model) = picked.map(|picked| picked.model) else { return };
    for (about, limits, size) in [
        (Question::Width, model.width_mm, choice.width_mm),
        (Question::Height, model.height_mm, choice.height_mm),
        (Question::Depth, model.depth_mm, choice.depth_mm),
        (Question::Bow, model.bows(), choice.bow_mm),
    ] {
        check_size(out, about, limits, size);
    }
    if let Some((limits, height)) = model.plinth_mm.zip(choice.plinth_mm) {
        check_size(out, Question::Plinth, limits, height);
    }
    let bays = u32::try_from(choice.bays.len()).unwrap_or(u32::MAX);
    count(out, Question::Bays, bays, u32::from(model.bays.least), u32::from(model.bays.most));
    let mut leaves = 0;
    for (bay, chosen) in numbered(&choice.bays) {
        match chosen.fill {
            Fill::Open => {}
            Fill::Shelves(shelves) => count(out, Question::Bay(bay), shelves.into(), 1, model.shelves_most.into()),
            Fill::Leaf(_) => {
                leaves += 1;
                if leaves > u32::from(model.leaves_most) {
                    let (found, most) = (Figure::count(leaves), Figure::count(model.leaves_most));
                    let finding = Finding::stops(Rule::FitOutCount, Question::Bay(bay), found, Limit::AtMost, most);
                    out.push(finding.of([PanelId::Leaf(bay)]));
                }
            }
        }
        let share = Figure::count(chosen.share);
        if chosen.share < 1 {
            out.push(Finding::stops(Rule::BayShare, Question::Bay(bay), share, Limit::AtLeast, Figure::count(1u32)));
        } else if chosen.share > SHARE_MOST {
            let most = Figure::count(SHARE_MOST);
            out.push(Finding::stops(Rule::BayShare, Question::Bay(bay), share, Limit::AtMost, most));
        }
    }
}

fn check_size(out: &mut Vec<Finding>, about: Question, limits: DimRange, size: Dim) {
    let figure = |dim: Dim| Figure::length(dim.length());
    if size < limits.least {
        out.push(Finding::stops(Rule::SizeLimit, about, figure(size), Limit::AtLeast, figure(limits.least)));
    } else if size > limits.most {
        out.push(Finding::stops(Rule::SizeLimit, about, figure(size), Limit::AtMost, figure(limits.most)));
    } else if !limits.holds(size) {
        out.push(Finding::stops(Rule::SizeStep, about, figure(size), Limit::OneOf, figure(limits.step)));
    }
}

fn count(out: &mut Vec<Finding>, about: Question, found: u32, least: u32, most: u32) {
    let finding = |limit, allowed: u32| {
        Finding::stops(Rule::FitOutCount, about, Figure::count(found), limit, Figure::count(allowed))
    };
    if found > most {
        out.push(finding(Limit::AtMost, most));
    } else if found < least {
        out.push(finding(Limit::AtLeast, least));
    }
}

/// The size itself.
pub(super) fn limit_dependencies(on: &mut Dependencies, finding: &Finding, _: Context<'_>) {
    on.size(finding.about, Direction::to(finding.limit), ONE);
}

/// The size itself; the next step is on either side.
pub(super) fn step_dependencies(on: &mut Dependencies, finding: &Finding, _: Context<'_>) {
    on.answer(finding.about);
}

/// What the bays up to this one hold: leaves are counted from the left.
pub(super) fn count_dependencies(on: &mut Dependencies, finding: &Finding, _: Context<'_>) {
    on.answer(Question::Bays);
    (1..=finding.about.bay().unwrap_or(0)).for_each(|bay| on.answer(Question::Bay(bay)));
}

/// The shares.
pub(super) fn share_dependencies(on: &mut Dependencies, _: &Finding, _: Context<'_>) {
    on.answer(Question::Shares);
    on.answer(Question::Bays);
}
