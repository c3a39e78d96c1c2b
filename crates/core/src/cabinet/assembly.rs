//! How the unit goes together, and the proof that it then holds together.
//!
//! From the real solids: which part stops which in the six directions of the case. Taking parts out
//! one by one along straight moves gives, reversed, the order in which they go in; each move is swept
//! free of everything that stands. Of the finished unit it is shown that
//!
//! - sideways and from front to back no part and no group of parts moves against the rest,
//! - downwards everything rests on the floor,
//! - upwards nothing moves without the top, and the top alone does: it is the only key, and its
//!   weight turns it.
// Source: directional blocking graphs: Wilson and Latombe, Artificial Intelligence 71 (1994); a key
// and what it locks: P. Song, C.-W. Fu, D. Cohen-Or, Recursive Interlocking Puzzles, ACM Transactions
// on Graphics 31(6), 2012. Gravity as the last lock is this construction's own.

use crate::cabinet::case::Case;
use crate::cabinet::joint::JointId;
use crate::cabinet::layout::Picked;
use crate::cabinet::panel::{Panel, PanelId};
use crate::geometry::space::{Block, Spot};
use crate::units::quantity::{Length, Mass};

mod blocking;
mod disturbance;
mod sequence;
mod solid;

pub use blocking::{Blocking, Body, Direction};
pub use disturbance::{Disturbance, Disturbed};
pub use solid::{Bound, blocks};

/// How a unit goes together and what holds it.
#[derive(Clone, Debug, PartialEq)]
pub struct Assembly {
    /// The parts in the order in which they go in.
    pub steps: Vec<Step>,
    /// Parts that no straight move takes out: there is no order for them. Empty for every valid unit.
    pub stuck: Vec<PanelId>,
    /// What moves in the finished unit though it should not. Empty for every valid unit.
    pub loose: Vec<Loose>,
    /// What comes free when the unit does not stand as it should.
    pub disturbed: Vec<Disturbed>,
}

/// One part going in.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// The part.
    pub part: PanelId,
    /// The way it goes in.
    pub moves: Direction,
    /// How far it goes from clear of everything to its place.
    pub travel: Length,
    /// The joints that it closes.
    pub closes: Vec<JointId>,
    /// Its mass.
    pub mass: Mass,
    /// How many people it takes.
    pub people: u8,
}

/// A group of parts that moves.
#[derive(Clone, Debug, PartialEq)]
pub struct Loose {
    /// The way it moves.
    pub moves: Direction,
    /// The group.
    pub parts: Vec<PanelId>,
}

impl Assembly {
    /// Finds the order and proves the lock of a case.
    pub fn of(picked: Picked<'_>, case: &Case) -> Self {
        let bodies = |bound| -> Vec<Body> {
            let parts = case.panels.iter().map(|panel| Body::of(blocks(panel, bound)));
            parts.chain([floor()]).collect()
        };
        let hulls = bodies(Bound::Hull);
        let blocking = Blocking::of(&hulls);
        let (order, stuck) = sequence::order(&blocking);
        let name = |at: usize| case.panels.get(at).map(|panel| panel.id);
        Self {
            steps: order.iter().filter_map(|taken| step(picked, case, &hulls, taken)).collect(),
            stuck: stuck.into_iter().filter_map(name).collect(),
            loose: loose(picked, case, &Blocking::of(&bodies(Bound::Core))),
            disturbed: disturbance::all(case, &blocking, play(picked, Direction::Up)),
        }
    }

    /// How many steps people take: one for each part, and a last one when all are in.
    pub fn count(&self) -> usize {
        self.steps.len() + 1
    }

    /// Whether every part has its place in the order and nothing moves that should not.
    pub fn is_proven(&self) -> bool {
        self.stuck.is_empty() && self.loose.is_empty()
    }
}

/// The ground that the unit stands on.
fn floor() -> Body {
    let (far, deep) = (Length::mm(100_000.0), Length::mm(1000.0));
    Body::of([Block { from: Spot::new(-far, -far, -deep), to: Spot::new(far, far, Length::ZERO) }])
}

/// Free play of parts in their joints: less than this is no move. Upwards a leaf has the gap over it;
/// downwards everything stands or hangs in its slot.
fn play(picked: Picked<'_>, direction: Direction) -> Length {
    let build = &picked.range.build;
    let most = match direction {
        Direction::Down => build.clearance_mm,
        Direction::Up => build.clearance_mm.max(build.leaf_gap_mm),
        Direction::Forwards | Direction::Back | Direction::Left | Direction::Right => {
            build.clearance_mm.max(build.pivot_clearance_mm)
        }
    };
    most + Length::mm(1e-3)
}

/// What moves in the finished unit though it should not.
fn loose(picked: Picked<'_>, case: &Case, cores: &Blocking) -> Vec<Loose> {
    let moves_with = |body, direction| cores.moves_with(body, direction, play(picked, direction));
    if holds(case, moves_with) { Vec::new() } else { groups(case, moves_with) }
}

fn top_of(case: &Case) -> Option<usize> {
    case.panels.iter().position(|panel| panel.id == PanelId::Top)
}

/// Every group that moves though it should not, part by part and direction by direction.
fn groups(case: &Case, moves_with: impl Fn(usize, Direction) -> Vec<usize>) -> Vec<Loose> {
    // The last of the bodies is the floor.
    let (floor, top) = (case.panels.len(), top_of(case));
    let mut loose: Vec<Loose> = Vec::new();
    for direction in Direction::ALL {
        for at in 0..floor {
            let group = moves_with(at, direction);
            let has = |wanted: usize| group.binary_search(&wanted).is_ok();
            let held = match direction {
                Direction::Down => has(floor),
                Direction::Up => top.is_some_and(|top| has(top) && (at != top || group.len() == 1)),
                Direction::Forwards | Direction::Back | Direction::Left | Direction::Right => group.len() == floor,
            };
            let parts: Vec<PanelId> =
                group.into_iter().filter_map(|at| case.panels.get(at)).map(|panel| panel.id).collect();
            if !held && !loose.iter().any(|known| known.moves == direction && known.parts == parts) {
                loose.push(Loose { moves: direction, parts });
            }
        }
    }
    loose
}

/// The same in the few steps that a unit takes which holds. What stops what along a direction is, read
/// backwards, what stops what along the opposite one: so one part's groups tell of all parts. Upwards
/// and downwards the play differs, and each is asked with its own.
fn holds(case: &Case, moves_with: impl Fn(usize, Direction) -> Vec<usize>) -> bool {
    let (floor, Some(top)) = (case.panels.len(), top_of(case)) else { return false };
    let sideways = [Direction::Forwards, Direction::Back, Direction::Left, Direction::Right];
    sideways.into_iter().all(|direction| moves_with(top, direction).len() == floor)
        && (0..floor).all(|part| moves_with(part, Direction::Down).binary_search(&floor).is_ok())
        && moves_with(top, Direction::Up) == [top]
        && (0..floor).all(|part| moves_with(part, Direction::Up).binary_search(&top).is_ok())
}

fn step(picked: Picked<'_>, case: &Case, hulls: &[Body], taken: &sequence::Taken) -> Option<Step> {
    let panel = case.panels.get(taken.body)?;
    let body = hulls.get(taken.body)?;
    let standing = || taken.standing.iter().filter_map(|at| Some((case.panels.get(*at)?.id, hulls.get(*at)?)));
    let stands = |id: PanelId| standing().any(|(known, _)| known == id);
    let closes = case
        .joints
        .iter()
        .map(|joint| joint.id)
        .filter(|id| id.goes_in == panel.id && stands(id.takes) || id.takes == panel.id && stands(id.goes_in));
    let mass = Case::weigh(panel, picked).mass;
    let travel = standing().map(|(_, other)| body.clear_of(other, taken.out)).fold(Length::ZERO, Length::max);
    Some(Step {
        part: panel.id,
        moves: taken.out.opposite(),
        travel,
        closes: closes.collect(),
        mass,
        people: people(picked, panel, mass),
    })
}

fn people(picked: Picked<'_>, panel: &Panel, mass: Mass) -> u8 {
    let (width, height) = panel.blank();
    picked.range.handling.people(mass, width.max(height))
}

#[cfg(test)]
mod tests;
