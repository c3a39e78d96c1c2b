//! How the parts stand: whole, apart, going together, leaves open.

use glam::{Mat4, Vec3};
use slotwright_core::cabinet::assembly::{Assembly, Direction, Leg, Step};
use slotwright_core::cabinet::panel::PanelId;

use crate::bounds::Bounds;
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

/// By the inverse of that share of being apart the wall is gone.
const WALL_GONE: f32 = 30.0;

/// How far beyond clear of everything a part begins its move, in metres.
const APPROACH: f32 = 0.1;

/// Of a longer way in only the end is shown, or a tall unit would be small in its own picture; in metres.
const WAY_MOST: f32 = 0.3;

impl Pose {
    /// Where a part stands: what takes its points to where they are seen; `None` if it is not there yet.
    pub fn stand(self, part: &Part, assembly: &Assembly) -> Option<Mat4> {
        let swing = part.swing.map_or(Mat4::IDENTITY, |(axis, open)| {
            Mat4::from_translation(axis) * Mat4::from_rotation_y(open * self.open) * Mat4::from_translation(-axis)
        });
        let mut shift = part.apart * self.apart;
        if let Some(built) = self.built {
            let (at, step) = step_of(part, assembly)?;
            let begun = built - number(at);
            if begun <= 0.0 {
                return None;
            }
            shift += left(step, begun);
        }
        Some(Mat4::from_translation(shift) * swing)
    }

    /// A box round all places that a part takes in this pose: the way in during its own step while the unit is
    /// built, its own place in all others; the way round while its leaf is open.
    pub fn reach(self, part: &Part, assembly: &Assembly) -> Bounds {
        if let Some(built) = self.built {
            let shown = step_at(built, steps(assembly));
            let Some((_, step)) = step_of(part, assembly).filter(|(at, _)| *at == shown) else { return part.bounds };
            // It is furthest off where one move ends and the next one begins.
            let legs = step.way.len();
            let ends = (0..legs).map(|done| left(step, number(done) / number(legs)));
            let places = ends.map(|shift| part.bounds.taken(Mat4::from_translation(shift)));
            return places.fold(part.bounds, Bounds::with);
        }
        // A leaf reaches furthest where it stands square to the front.
        let square = part.swing.map_or(1.0, |(_, open)| (core::f32::consts::FRAC_PI_2 / open.abs()).min(1.0));
        [0.0, 0.5, square, 1.0]
            .into_iter()
            .filter_map(|share| Self { open: self.open.min(share), ..self }.stand(part, assembly))
            .fold(Bounds::default(), |bounds, stand| bounds.with(part.bounds.taken(stand)))
    }

    /// The panel whose step is shown; none in the last one.
    pub fn moving(self, assembly: &Assembly) -> Option<PanelId> {
        let at = step_at(self.built?, steps(assembly));
        assembly.steps.get(at).map(|step| step.part)
    }

    /// Whether the unit stands as it is used: neither apart nor half built.
    pub fn is_whole(self) -> bool {
        self.built.is_none() && self.apart < 1e-3
    }

    /// How much of the wall behind the unit is seen: none while parts go where it stands.
    pub fn wall(self) -> f32 {
        if self.built.is_some() { 0.0 } else { 1.0 - eased(self.apart * WALL_GONE) }
    }
}

fn step_of<'a>(part: &Part, assembly: &'a Assembly) -> Option<(usize, &'a Step)> {
    assembly.steps.iter().enumerate().find(|(_, step)| step.part == part.id)
}

/// From a part's place to where it is once that share of its step is done: its moves take equal shares.
fn left(step: &Step, done: f32) -> Vec3 {
    let legs = number(step.way.len());
    let left = |(at, leg): (usize, &Leg)| {
        let beyond = if at == 0 { APPROACH } else { 0.0 };
        let way = direction(leg.moves) * -(single(leg.travel.in_m()).min(WAY_MOST) + beyond);
        way * (1.0 - eased(done * legs - number(at)))
    };
    step.way.iter().enumerate().map(left).sum()
}

/// How many steps are shown: all that people take.
pub fn steps(assembly: &Assembly) -> usize {
    assembly.count()
}

/// The step that is shown: its number from 0.
pub fn step_at(built: f32, steps: usize) -> usize {
    let last = steps.saturating_sub(1);
    (0..last).find(|at| built <= number(*at) + 1.0).unwrap_or(last)
}

pub(crate) fn number(count: usize) -> f32 {
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
