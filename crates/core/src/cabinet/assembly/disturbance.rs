//! What comes free when the finished unit does not stand as it should.

use serde::Serialize;

use super::way::Ways;
use super::{Direction, top_of};
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
    /// Leaves that swing by their own weight.
    pub swings: Vec<PanelId>,
}

/// All answers. Friction is not relied on: what nothing stops is said to move.
pub(super) fn all(case: &Case, ways: Ways<'_>, play: Length) -> Vec<Disturbed> {
    let names = |at: Vec<usize>| -> Vec<PanelId> {
        at.into_iter().filter_map(|at| case.panels.get(at)).map(|panel| panel.id).collect()
    };
    let leaves = || case.panels.iter().map(|panel| panel.id).filter(|id| matches!(id, PanelId::Leaf(_))).collect();
    let laid = |by, down: &[Direction]| {
        let mut gone = Vec::new();
        let first = free(ways, &gone, down);
        gone.extend(&first);
        let then = free(ways, &gone, down);
        // Pivots lie across their weight then: a leaf that faces down or sideways swings open.
        let swings = if by == Disturbance::LaidOnBack { Vec::new() } else { leaves() };
        Disturbed { by, first: names(first), then: names(then), swings }
    };
    let lifted = top_of(case).map(|top| ways.hulls.moves_with(top, Direction::Up, play));
    vec![
        Disturbed {
            by: Disturbance::LiftedByTop,
            first: names(lifted.unwrap_or_default()),
            then: Vec::new(),
            swings: Vec::new(),
        },
        laid(Disturbance::LaidOnSide, &[Direction::Left, Direction::Right]),
        laid(Disturbance::LaidOnBack, &[Direction::Back]),
        laid(Disturbance::LaidOnFront, &[Direction::Forwards]),
        // Only its horizontal share of weight is new, and sideways and lengthways nothing moves.
        Disturbed { by: Disturbance::Unlevel, first: Vec::new(), then: Vec::new(), swings: leaves() },
    ]
}

/// Bodies that go out without being lifted; the floor is nowhere near now, and those gone are left out.
fn free(ways: Ways<'_>, gone: &[usize], down: &[Direction]) -> Vec<usize> {
    let floor = ways.hulls.count().saturating_sub(1);
    let standing: Vec<usize> = (0..floor).filter(|at| !gone.contains(at)).collect();
    let goes = |body: usize, down: Direction| {
        let may = |out: Direction| out != down.opposite();
        ways.straight(body, &standing, may).or_else(|| ways.bent(body, &standing, may)).is_some()
    };
    let out = |body: usize| down.iter().any(|down| goes(body, *down));
    standing.iter().copied().filter(|body| out(*body)).collect()
}
