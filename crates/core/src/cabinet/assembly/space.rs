//! The room that people need round a unit while they put it together.

use super::Assembly;
use crate::cabinet::case::Case;
use crate::cabinet::layout::Layout;
use crate::cabinet::panel::PanelId;
use crate::units::quantity::Length;

/// So much floor somebody takes who carries a part and bends: behind the unit, from where the back comes, and before it.
// Common practice, from memory: 800 mm for a passage in which something is carried.
const STEP: Length = Length::mm(800.0);

/// Floor and height that the assembly takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Space {
    /// From left to right: the unit.
    pub wide: Length,
    /// From front to rear, with what is free before it and behind it.
    pub deep: Length,
    /// Behind it.
    pub behind: Length,
    /// Before it: a step, or what the widest leaf sweeps.
    pub before: Length,
    /// Over the floor: how high a part reaches that is lifted.
    pub high: Length,
    /// Whether a leaf swings there.
    pub swings: bool,
}

impl Space {
    /// That of a unit.
    pub fn of(layout: &Layout, case: &Case, assembly: &Assembly) -> Self {
        let leaves = case.panels.iter().filter(|panel| matches!(panel.id, PanelId::Leaf(_)));
        let sweep = leaves.map(|panel| panel.width).fold(Length::ZERO, Length::max);
        let (behind, before) = (STEP, STEP.max(sweep));
        Self {
            wide: layout.width,
            deep: behind + layout.depth + before,
            behind,
            before,
            high: assembly.reaches().max(layout.height),
            swings: sweep > Length::ZERO,
        }
    }
}
