//! Devices in bays: each goes in between the stiles, or past an open leaf and its stop, and stands there with the air it needs.

use super::dependencies::{Context, Dependencies, Direction, ONE};
use super::{Rule, Subject, numbered};
use crate::choice::Fill;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit, Severity};
use crate::units::quantity::Length;

/// Devices that will grow warm, and devices without a way for their cables.
pub(crate) fn advise(out: &mut Vec<Finding>, unit: Subject<'_>) {
    for (bay, chosen) in numbered(&unit.choice.bays) {
        let Some(device) = chosen.device.as_ref().and_then(|key| unit.picked.range.device(key)) else { continue };
        let mut find = |rule, found, allowed| {
            let finding = Finding::stops(rule, Question::Device(bay), found, Limit::AtLeast, allowed);
            out.push(finding.but(Severity::Advises));
        };
        if matches!(chosen.fill, Fill::Leaf(_)) && device.air_over_mm > Length::ZERO {
            find(Rule::DeviceShut, Figure::length(Length::ZERO), Figure::length(device.air_over_mm));
        }
        if chosen.hole.is_none() && device.plug_behind_mm > Length::ZERO {
            find(Rule::DeviceCable, Figure::count(0u32), Figure::count(1u32));
        }
    }
}

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    for (bay, (chosen, span)) in numbered(unit.choice.bays.iter().zip(&unit.layout.bays)) {
        let Some(device) = chosen.device.as_ref().and_then(|key| unit.picked.range.device(key)) else { continue };
        let mut check = |rule, given: Length, needed: Length| {
            if given < needed {
                let (given, needed) = (Figure::length(given), Figure::length(needed));
                out.push(Finding::stops(rule, Question::Device(bay), given, Limit::AtLeast, needed));
            }
        };
        let aired = device.width_mm + device.air_beside_mm * 2.0;
        if span.clear() < aired {
            check(Rule::DeviceWidth, span.clear(), aired);
        } else {
            check(Rule::DeviceWidth, span.access(), device.width_mm);
        }
        check(Rule::DeviceHeight, unit.layout.row_height(span), device.height_mm + device.air_over_mm);
        check(Rule::DeviceDepth, unit.layout.clear_depth(), device.depth_mm + device.plug_behind_mm);
    }
}

/// The device, and what the access to its bay comes from.
pub(super) fn width_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.clear_width(context, Direction::Up, ONE * context.widths_a_bay(finding));
    on.stiles(context, finding.about.bay().unwrap_or(0), Direction::Up, Some(context.influence.stiles));
    on.answer(finding.about);
}

/// The device, and what the height of its row comes from.
pub(super) fn height_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.row_height_of_kept(context, finding, Direction::Up, ONE * context.rows(finding));
    on.answer(finding.about);
    on.film(context);
}

/// The device, and what the clear depth comes from.
pub(super) fn depth_dependencies(on: &mut Dependencies, finding: &Finding, context: Context<'_>) {
    on.clear_depth(context, Direction::Up, ONE);
    on.answer(finding.about);
}
