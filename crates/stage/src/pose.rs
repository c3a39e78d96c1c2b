//! How the parts stand: whole, apart, going together, leaves open.

use glam::{Mat4, Vec3};
use slotwright_core::assembly::{Assembly, Direction};

use crate::scene::Part;
use crate::single;

/// How the unit is shown.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Pose {
    /// From 0, whole, to 1, apart.
    pub apart: f32,
    /// From 0, leaves shut, to 1, open.
    pub open: f32,
    /// Steps of the assembly that are done, with the share of the next one; `None` for the finished unit.
    pub built: Option<f32>,
}

/// Where a part stands, and whether it is the one that moves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stand {
    /// Takes the part's points to where they are seen.
    pub stage_from_part: Mat4,
    /// Whether it goes in right now.
    pub moves: bool,
}

/// How far beyond clear of everything a part begins its move, in metres.
const APPROACH: f32 = 0.16;

impl Pose {
    /// Where a part stands; `None` if it is not there yet.
    pub fn stand(self, part: &Part, assembly: &Assembly) -> Option<Stand> {
        let swing = part.swing.map_or(Mat4::IDENTITY, |(axis, open)| {
            Mat4::from_translation(axis) * Mat4::from_rotation_y(open * self.open) * Mat4::from_translation(-axis)
        });
        let mut moves = false;
        let mut shift = part.apart * self.apart;
        if let Some(built) = self.built {
            let at = assembly.steps.iter().position(|step| step.part == part.id)?;
            let step = assembly.steps.get(at)?;
            let begun = built - number(at);
            if begun <= 0.0 {
                return None;
            }
            moves = begun < 1.0;
            let back = (single(step.travel.in_m()) + APPROACH) * (1.0 - eased(begun.min(1.0)));
            shift -= direction(step.moves) * back;
        }
        Some(Stand { stage_from_part: Mat4::from_translation(shift) * swing, moves })
    }
}

/// The step that is shown: its number from 0.
pub fn step_at(built: f32, steps: usize) -> usize {
    let last = steps.saturating_sub(1);
    (0..last).find(|at| built <= number(*at) + 1.0).unwrap_or(last)
}

fn number(count: usize) -> f32 {
    f32::from(u16::try_from(count).unwrap_or(u16::MAX))
}

/// Starts and ends gently.
pub fn eased(share: f32) -> f32 {
    let share = share.clamp(0.0, 1.0);
    share * share * (3.0 - 2.0 * share)
}

fn direction(way: Direction) -> Vec3 {
    match way {
        Direction::Up => Vec3::Y,
        Direction::Down => Vec3::NEG_Y,
        Direction::Forwards => Vec3::Z,
        Direction::Back => Vec3::NEG_Z,
        Direction::Left => Vec3::NEG_X,
        Direction::Right => Vec3::X,
    }
}
