//! What a range names and no unit can have: left over, or wrong.

use alloc::collections::BTreeSet;

use super::{Remark, Said};
use crate::choice::Choice;
use crate::choice::change::Change;
use crate::range::{Key, Range};
use crate::rules::hole::passage;
use crate::solver::states::{State, states};
use crate::units::quantity::Length;

pub(super) fn check(out: &mut Vec<Said>, range: &Range) {
    named(out, range);
    plugs(out, range);
    answers(out, range);
}

/// Boards and finishes that no model names.
fn named(out: &mut Vec<Said>, range: &Range) {
    let boards: BTreeSet<&Key> =
        range.models.iter().flat_map(|model| model.backs.iter().chain([&model.body])).collect();
    for board in range.boards.iter().filter(|board| !boards.contains(&board.key)) {
        out.push((format!("board.{}", board.key), Remark::BoardUnused));
    }
    let finishes: BTreeSet<&Key> = range.models.iter().flat_map(|model| &model.finishes).collect();
    for finish in range.finishes.iter().filter(|finish| !finishes.contains(&finish.key)) {
        out.push((format!("finish.{}", finish.key), Remark::FinishUnused));
    }
}

/// Plugs and holes that do not go together with any.
fn plugs(out: &mut Vec<Said>, range: &Range) {
    for plug in &range.plugs {
        // How much each hole is too narrow for it.
        let lacks =
            range.holes.iter().map(|hole| passage(hole.shape, plug)).map(|(needs, gives)| (needs - gives, needs));
        if let Some((lack, needs)) =
            lacks.min_by(|one, other| one.0.total_cmp(&other.0)).filter(|(lack, _)| *lack > Length::ZERO)
        {
            out.push((format!("plug.{}", plug.key), Remark::PlugPassesNone { gives: needs - lack, needs }));
        }
    }
    for hole in range.holes.iter().filter(|_| !range.plugs.is_empty()) {
        let passes = |plug| {
            let (needs, gives) = passage(hole.shape, plug);
            needs <= gives
        };
        if !range.plugs.iter().any(passes) {
            out.push((format!("hole.{}.shape", hole.key), Remark::HolePassesNone));
        }
    }
}

/// Answers that cannot be had, whatever else is chosen.
fn answers(out: &mut Vec<Said>, range: &Range) {
    let (mut holes, mut devices) = (BTreeSet::new(), BTreeSet::new());
    for model in &range.models {
        let Some(states) = Choice::starting(model).and_then(|choice| states(range, &choice, &[])) else { continue };
        let in_model = |list: &str, at: Option<usize>| {
            let number = at.map_or(0, |at| at + 1);
            format!("model.{}.{list}.{number}", model.key)
        };
        let mut has_plinth = model.plinth_mm.is_none();
        for answer in states.all() {
            let shut = matches!(answer.state, State::Shut { .. });
            let place = match &answer.change {
                Change::Hole { hole: Some(hole), .. } if !shut => {
                    holes.insert(hole.kind.clone());
                    continue;
                }
                Change::Device { device: Some(device), .. } if !shut => {
                    devices.insert(device.clone());
                    continue;
                }
                Change::PlinthMm(Some(_)) if !shut => {
                    has_plinth = true;
                    continue;
                }
                _ if !shut => continue,
                Change::Back(key) => in_model("backs", model.backs.iter().position(|back| back == key)),
                Change::Finish(key) => in_model("finishes", model.finishes.iter().position(|finish| finish == key)),
                Change::CornerRadiusMm(radius) => {
                    in_model("corner_radii_mm", model.corner_radii_mm.iter().position(|known| known == radius))
                }
                _ => continue,
            };
            out.push((place, Remark::AnswerNeverMade));
        }
        if !has_plinth {
            out.push((format!("model.{}.plinth_mm", model.key), Remark::AnswerNeverMade));
        }
    }
    for hole in range.holes.iter().filter(|hole| !holes.contains(&hole.key)) {
        out.push((format!("hole.{}", hole.key), Remark::HoleWithoutRoom));
    }
    for device in range.devices.iter().filter(|device| !devices.contains(&device.key)) {
        out.push((format!("device.{}", device.key), Remark::DeviceWithoutRoom));
    }
}
