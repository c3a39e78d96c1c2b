//! What comes free when the finished unit does not stand as it should.

use serde::Serialize;

use super::way::Standing;
use super::{Blocking, Direction, top_of};
use crate::cabinet::case::Case;
use crate::cabinet::panel::PanelId;
use crate::units::quantity::Length;

/// What is done to the unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Disturbance {
    /// Somebody lifts it by its top.
    LiftedByTop,
    /// It is laid on its left or right side.
    LaidOnSide,
    /// It is laid on its back.
    LaidOnBack,
    /// It is laid on its front.
    LaidOnFront,
    /// It stands a few degrees out of level.
    Unlevel,
}

/// What comes free then.
#[derive(Clone, Debug, PartialEq)]
pub struct Disturbed {
    /// What is done.
    pub by: Disturbance,
    /// Parts that move at once.
    pub first: Vec<PanelId>,
    /// Parts that nothing holds any more when those are gone.
    pub then: Vec<PanelId>,
    /// Leaves that swing by their own weight, or lose the pivot by which they stand.
    pub swings: Vec<PanelId>,
}

/// All answers. Friction is not relied on: what nothing stops is said to move.
pub(super) fn all(case: &Case, hulls: &Blocking, standing: &Standing<'_>, play: Length) -> Vec<Disturbed> {
    let names = |at: Vec<usize>| -> Vec<PanelId> {
        at.into_iter().filter_map(|at| case.panels.get(at)).map(|panel| panel.id).collect()
    };
    let leaves = || case.panels.iter().map(|panel| panel.id).filter(|id| matches!(id, PanelId::Leaf(_))).collect();
    // The floor is nowhere near then.
    let mut lifted = standing.clone();
    lifted.take(case.panels.len());
    let laid = |by, down: &[Direction]| {
        let mut standing = lifted.clone();
        let first = free(&standing, down);
        for body in &first {
            standing.take(*body);
        }
        let then = free(&standing, down);
        // Pivots lie across their weight then: a leaf that faces down or sideways swings open.
        let swings = if by == Disturbance::LaidOnBack { Vec::new() } else { leaves() };
        Disturbed { by, first: names(first), then: names(then), swings }
    };
    let with_top = top_of(case).map(|top| hulls.moves_with(top, Direction::Up, play));
    vec![
        Disturbed {
            by: Disturbance::LiftedByTop,
            first: names(with_top.unwrap_or_default()),
            then: Vec::new(),
            swings: leaves(),
        },
        laid(Disturbance::LaidOnSide, &[Direction::Left, Direction::Right]),
        laid(Disturbance::LaidOnBack, &[Direction::Back]),
        laid(Disturbance::LaidOnFront, &[Direction::Forwards]),
        // Only its horizontal share of weight is new, and sideways and lengthways nothing moves.
        Disturbed { by: Disturbance::Unlevel, first: Vec::new(), then: Vec::new(), swings: leaves() },
    ]
}

/// Bodies that go out without being lifted.
fn free(standing: &Standing<'_>, down: &[Direction]) -> Vec<usize> {
    let goes = |body: usize, down: Direction| {
        let may = |out: Direction| out != down.opposite();
        standing.straight(body, may).or_else(|| standing.bent(body, may)).is_some()
    };
    let out = |body: usize| down.iter().any(|down| goes(body, *down));
    standing.bodies.iter().copied().filter(|body| out(*body)).collect()
}
