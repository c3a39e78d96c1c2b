//! How the unit goes together, and the proof that it then holds together.
//!
//! From the real solids: which part stops which in the six directions of the case. Taking parts out
//! one by one, each along one straight move or along two, gives, reversed, the order in which they go in; each move is
//! swept free of everything that stands. Of the finished unit it is shown that
//!
//! - sideways and from front to back no part and no group of parts moves against the rest,
//! - downwards everything rests on the floor,
//! - upwards nothing moves without the top, and the top alone does: it is the only key, and its
//!   weight turns it,
//! - the back holds every upright where the statics of uprights count on it.
// Source: directional blocking graphs: Wilson and Latombe, Artificial Intelligence 71 (1994); a key
// and what it locks: P. Song, C.-W. Fu, D. Cohen-Or, Recursive Interlocking Puzzles, ACM Transactions
// on Graphics 31(6), 2012. Gravity as the last lock is this construction's own.

use crate::cabinet::case::Case;
use alloc::collections::BTreeMap;

use crate::cabinet::joint::{Joint, JointId, JointKind};
use crate::cabinet::layout::Picked;
use crate::cabinet::panel::{Feature, PanelId};
use crate::geometry::space::{Block, Spot};
use crate::units::quantity::{Dim, Length, Mass};

mod blocking;
mod body;
mod cell;
mod direction;
mod disturbance;
mod heads;
mod held;
mod sequence;
mod solid;
mod space;
mod turn;
mod way;

pub use blocking::Blocking;
pub use body::Body;
pub use direction::Direction;
pub use disturbance::{Disturbance, Disturbed};
pub use solid::{Bound, Solids, solids};
pub use space::Space;
pub use turn::Turn;
pub use way::{Leg, Way};

use way::{Standing, Ways};

/// How a unit goes together and what holds it.
#[derive(Clone, Debug, PartialEq)]
pub struct Assembly {
    /// The parts in the order in which they go in.
    pub steps: Vec<Step>,
    /// Parts that no way takes out: there is no order for them. Empty for every valid unit.
    pub stuck: Vec<PanelId>,
    /// What moves in the finished unit though it should not. Empty for every valid unit.
    pub loose: Vec<Loose>,
    /// Uprights that the back does not hold as often as it should. Empty for every valid unit.
    pub unheld: Vec<PanelId>,
    /// What comes free when the unit does not stand as it should.
    pub disturbed: Vec<Disturbed>,
}

/// One part going in.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// The part.
    pub part: PanelId,
    /// The way it goes in, from clear of everything to its place.
    pub way: Way,
    /// How high over the floor it reaches on that way.
    pub reaches: Length,
    /// The joints that it closes.
    pub closes: Vec<JointId>,
    /// The most of them that it meets at the same moment.
    pub at_once: u32,
    /// Its mass.
    pub mass: Mass,
    /// How many people carry it.
    pub people: u8,
    /// Whether fewer could carry its mass: it is long.
    pub for_length: bool,
    /// How many more hold or guide something meanwhile.
    pub helpers: u8,
    /// Whether it is a leaf that a detent keeps shut, or the stop that bears this.
    pub detent: bool,
    /// How thick the card is on which the free corner of a leaf stands until the top is on; of the top, that of all leaves.
    pub card: Option<Length>,
    /// Heads that lean further than the top catches them by itself: of the top, into which a hand guides them.
    pub guided: u8,
}

/// A group of parts that moves.
#[derive(Clone, Debug, PartialEq)]
pub struct Loose {
    /// The way it moves.
    pub moves: Direction,
    /// The group.
    pub parts: Vec<PanelId>,
}

/// Above it nobody lifts from the floor.
// Common practice: about the shoulder of a tall person; HSE INDG143 allows a man half at shoulder height and less above it, from
// memory.
const OVERHEAD: Length = Length::mm(1600.0);

impl Step {
    /// Whether who lifts, guides or fastens it stands on something: top and back of a high unit.
    pub fn is_overhead(&self) -> bool {
        matches!(self.part, PanelId::Top | PanelId::Back) && self.reaches > OVERHEAD
    }

    /// How many people it takes in all.
    pub const fn hands(&self) -> u8 {
        self.people.saturating_add(self.helpers)
    }
}

impl Assembly {
    /// The most people that a step takes.
    pub fn people(&self) -> u8 {
        self.steps.iter().map(Step::hands).max().unwrap_or(1)
    }

    /// Finds the order and proves the lock of a case.
    pub fn of(picked: Picked<'_>, case: &Case) -> Self {
        let bodies = |bound| -> Vec<Body> {
            let parts = case.panels.iter().map(|panel| Body::of_solids(solids(panel, bound)));
            parts.chain([floor()]).collect()
        };
        let (hulls, cores) = (bodies(Bound::Hull), bodies(Bound::Core));
        let build = &picked.range.build;
        let play = |direction| play(picked, direction);
        let most = Direction::ALL.map(play).into_iter().fold(Length::ZERO, Length::max);
        let blocking = Blocking::as_far_as(&hulls, play, Length::mm(f64::MAX));
        let ways = Ways { hulls: &blocking, bodies: &hulls, play: most, room: build.hook_play_mm };
        let standing = Standing::all(ways);
        let (order, stuck) = sequence::order(standing.clone());
        let name = |at: usize| case.panels.get(at).map(|panel| panel.id);
        Self {
            steps: order.iter().filter_map(|taken| step(picked, case, &hulls, taken)).collect(),
            stuck: stuck.into_iter().filter_map(name).collect(),
            loose: loose(picked, case, &Blocking::as_far_as(&cores, play, most * 2.0)),
            unheld: held::unheld(case, &cores, build),
            disturbed: disturbance::all(case, &blocking, &standing, play(Direction::Up)),
        }
    }

    /// How many steps people take: one for each part, and a last one when all are in.
    pub fn count(&self) -> usize {
        self.steps.len() + 1
    }

    /// How high over the floor the part reaches that is lifted highest.
    pub fn reaches(&self) -> Length {
        self.steps.iter().map(|step| step.reaches).fold(Length::ZERO, Length::max)
    }

    /// Whether every part has its place in the order, nothing moves that should not, and all is held that should be.
    pub fn is_proven(&self) -> bool {
        self.stuck.is_empty() && self.loose.is_empty() && self.unheld.is_empty()
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
            build.clearance_loose_mm.max(build.pivot_clearance_mm)
        }
    };
    most + Length::mm(1e-3)
}

/// What moves in the finished unit though it should not.
fn loose(picked: Picked<'_>, case: &Case, cores: &Blocking) -> Vec<Loose> {
    let play = |direction| play(picked, direction);
    let moves_with = |body, direction| cores.moves_with(body, direction, play(direction));
    if holds(case, cores, play) { Vec::new() } else { groups(case, moves_with) }
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

/// The same in the few steps that a unit takes which holds. What stops what along a direction is, read backwards, what stops
/// what along the opposite one, and with the same play: so the groups of one body tell of all that have it in theirs.
fn holds(case: &Case, cores: &Blocking, play: impl Fn(Direction) -> Length) -> bool {
    let (floor, Some(top)) = (case.panels.len(), top_of(case)) else { return false };
    let sideways = [Direction::Forwards, Direction::Back, Direction::Left, Direction::Right];
    let with = |body, direction| cores.moves_with(body, direction, play(direction));
    let without = |body, direction: Direction| cores.moves_with(body, direction.opposite(), play(direction));
    sideways.into_iter().all(|direction| with(top, direction).len() == floor)
        && without(floor, Direction::Down).len() == cores.count()
        && with(top, Direction::Up) == [top]
        && without(top, Direction::Up).len() == cores.count()
}

fn step(picked: Picked<'_>, case: &Case, hulls: &[Body], taken: &sequence::Taken) -> Option<Step> {
    let panel = case.panels.get(taken.body)?;
    let body = hulls.get(taken.body)?;
    let standing = || taken.standing.iter().filter_map(|at| Some((case.panels.get(*at)?.id, hulls.get(*at)?)));
    let stands = |id: PanelId| standing().any(|(known, _)| known == id);
    let closes = case.joints.iter().filter(|Joint { id, .. }| {
        id.goes_in == panel.id && stands(id.takes) || id.takes == panel.id && stands(id.goes_in)
    });
    let mass = Case::weigh(panel, picked).mass;
    let (way, lifted) = taken.out.reversed(body, standing().map(|(_, other)| other));
    let at_once = at_once(&way, closes.clone());
    let (width, height) = panel.blank();
    let longest = width.max(height);
    let (reaches, carriers) = (body.top() + lifted, picked.range.handling.people(mass, longest));
    // Nobody lifts a top over the shoulders alone.
    let is_alone = panel.id == PanelId::Top && reaches > OVERHEAD && carriers < 2;
    let detent = has_detent(case, panel.id);
    let guided = if panel.id == PanelId::Top { heads::guided(case, &picked.range.build) } else { 0 };
    Some(Step {
        part: panel.id,
        way,
        reaches,
        at_once,
        closes: closes.map(|joint| joint.id).collect(),
        mass,
        people: carriers,
        for_length: picked.range.handling.is_for_length(mass, longest),
        helpers: helpers(panel.id, detent, guided) + u8::from(is_alone),
        detent,
        card: heads::card(case, &picked.range.build, panel.id),
        guided,
    })
}

/// Who holds boards of the plinth on edge until two bearers are on, and uprights until the back is, steadies them meanwhile, holds a
/// door until the stop with its detent stands, guides heads into the top.
const fn helpers(id: PanelId, detent: bool, guided: u8) -> u8 {
    let helps = match id {
        PanelId::PlinthFront | PanelId::PlinthRear | PanelId::Bearer(1 | 2) | PanelId::Upright(_) | PanelId::Back => {
            true
        }
        PanelId::Stop(_) => detent,
        PanelId::Top => guided > 0,
        PanelId::Bearer(_)
        | PanelId::BaseLower
        | PanelId::BaseUpper
        | PanelId::Shelf { .. }
        | PanelId::Stile(_)
        | PanelId::Stave { .. }
        | PanelId::Leaf(_) => false,
    };
    helps as u8
}

/// Whether a part is a stop with a detent, or the leaf before one.
fn has_detent(case: &Case, id: PanelId) -> bool {
    let (PanelId::Stop(bay) | PanelId::Leaf(bay)) = id else { return false };
    let stop = case.panel(PanelId::Stop(bay));
    stop.is_some_and(|stop| stop.features.iter().any(|feature| matches!(feature, Feature::Detent(_))))
}

/// The most of some joints that a part meets at the same moment on its way. Hooks are met on the first of two moves, all others on
/// the last; those that reach as far along it begin together.
fn at_once<'a>(way: &Way, joints: impl Iterator<Item = &'a Joint>) -> u32 {
    let Some(last) = way.last() else { return 0 };
    let one = last.moves.step(Length::mm(1.0));
    let mut together: BTreeMap<(bool, i32), u32> = BTreeMap::new();
    for Joint { kind, shared: Block { from, to }, .. } in joints {
        let along = [(to.x - from.x, one.x), (to.y - from.y, one.y), (to.z - from.z, one.z)];
        let reach: f64 = along.into_iter().map(|(long, share)| long.in_mm() * share.in_mm()).sum();
        let reach = if *kind == JointKind::Hook { 0.0 } else { reach.abs() };
        *together.entry((*kind == JointKind::Hook, Dim::within(Length::mm(reach)).in_tenths())).or_default() += 1;
    }
    together.into_values().max().unwrap_or(0)
}

#[cfg(test)]
mod tests;
