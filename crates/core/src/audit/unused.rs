//! What a range names and no unit can have: left over, or wrong.

use alloc::collections::BTreeSet;

use super::Said;
use crate::change::Change;
use crate::choice::Choice;
use crate::options::states::{State, states};
use crate::quantity::Length;
use crate::range::{Key, Range};
use crate::rules::hole::passage;
use crate::words;

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
        let text = "no model is made of this board; name it in a model's `body` or `backs`, or take it out";
        out.push((format!("board.{}", board.key), text.into()));
    }
    let finishes: BTreeSet<&Key> = range.models.iter().flat_map(|model| &model.finishes).collect();
    for finish in range.finishes.iter().filter(|finish| !finishes.contains(&finish.key)) {
        let text = "no model comes in this finish; name it in a model's `finishes`, or take it out";
        out.push((format!("finish.{}", finish.key), text.into()));
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
            let (gives, needs) = ((needs - lack).in_mm(), needs.in_mm());
            let text = format!(
                "this plug passes none of the holes: the best has {} mm for it, it needs {} mm",
                words::decimal(gives, 1),
                words::decimal(needs, 1)
            );
            out.push((format!("plug.{}", plug.key), text));
        }
    }
    for hole in range.holes.iter().filter(|_| !range.plugs.is_empty()) {
        let passes = |plug| {
            let (needs, gives) = passage(hole.shape, plug);
            needs <= gives
        };
        if !range.plugs.iter().any(passes) {
            out.push((format!("hole.{}.shape", hole.key), "none of the plugs passes this hole; make it larger".into()));
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
        for answer in states.all() {
            let shut = matches!(answer.state, State::Shut { proven: true, .. });
            let place = match &answer.change {
                Change::Hole { hole: Some(hole), .. } if !shut => {
                    holes.insert(hole.kind.clone());
                    continue;
                }
                Change::Device { device: Some(device), .. } if !shut => {
                    devices.insert(device.clone());
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
            out.push((place, "no unit of this model can be made with it, whatever else is chosen".into()));
        }
    }
    for hole in range.holes.iter().filter(|hole| !holes.contains(&hole.key)) {
        out.push((
            format!("hole.{}", hole.key),
            "no bay of any model has room for this hole, whatever else is chosen".into(),
        ));
    }
    for device in range.devices.iter().filter(|device| !devices.contains(&device.key)) {
        let text = "no bay of any model has room for this device, whatever else is chosen";
        out.push((format!("device.{}", device.key), text.into()));
    }
}
