//! Whether the back holds every upright where the statics of uprights count on it: at hooks no further apart than the
//! range says.

use super::Body;
use super::blocking::Along;
use super::cell::Axis;
use crate::cabinet::case::Case;
use crate::cabinet::joint::{Joint, JointKind};
use crate::cabinet::panel::{Panel, PanelId};
use crate::geometry::space::{Block, Spot};
use crate::range::Build;
use crate::units::quantity::Length;

/// The uprights that it does not hold; `cores` are the boxes that the parts hold.
pub(super) fn unheld(case: &Case, cores: &[Body], build: &Build) -> Vec<PanelId> {
    let bodies = || case.panels.iter().zip(cores);
    let back = bodies().find(|(panel, _)| panel.id == PanelId::Back).map(|(_, back)| back);
    let uprights = bodies().filter(|(panel, _)| matches!(panel.id, PanelId::Upright(_)));
    let loose = uprights.filter(|(panel, upright)| {
        let hooks = case.joints.iter().filter(|joint| joint.kind == JointKind::Hook && joint.id.goes_in == panel.id);
        let held = |joint: &&Joint| back.is_some_and(|back| holds(upright, back, joint.shared, build));
        let holding: Vec<&Joint> = hooks.filter(held).collect();
        !are_near_enough(panel, &holding, build.hook_apart_mm)
    });
    loose.map(|(panel, _)| panel.id).collect()
}

/// Whether there are two at least, and one within so much of each place along the upright.
fn are_near_enough(upright: &Panel, hooks: &[&Joint], apart: Length) -> bool {
    let bottom = upright.case_from_panel.origin.z;
    let middles = hooks.iter().map(|joint| (joint.shared.from.z + joint.shared.to.z) / 2.0);
    let mut heights: Vec<Length> = middles.chain([bottom, bottom + upright.height]).collect();
    heights.sort_by(Length::total_cmp);
    let most = apart + Length::mm(1e-3);
    hooks.len() > 1 && heights.windows(2).all(|pair| matches!(pair, [low, high] if *high - *low <= most))
}

/// Whether the neck there keeps the back from going to either side, and the nose behind it from going to the rear.
fn holds(upright: &Body, back: &Body, neck: Block, build: &Build) -> bool {
    let (over, beside) = (build.hook_rise_mm, build.hook_nose_mm + build.clearance_mm);
    let window = Block {
        from: Spot { y: neck.from.y, x: neck.from.x - beside, ..neck.from },
        to: Spot::new(neck.to.x + beside, neck.to.y + beside, neck.to.z + over),
    };
    let (upright, back) = (upright.within(window), back.within(window));
    let most = (build.clearance_mm + Length::mm(1e-3)).in_mm();
    let gaps = |axis| Along { axis, none: most, reach: most * 2.0 }.between(&upright, &back);
    let (sideways, lengthways) = (gaps(Axis::X), gaps(Axis::Y));
    sideways.ahead <= most && sideways.behind <= most && lengthways.behind <= most
}

#[cfg(test)]
mod tests;
