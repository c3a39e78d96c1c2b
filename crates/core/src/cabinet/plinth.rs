//! The plinth that a unit may stand on: a front and a rear board on edge, and bearers from front to rear that are lapped
//! with them.
//!
//! Each crossing is a lap: the long board is open from above, the bearer from below, each over half of its height, so that
//! bearers drop onto the long boards and all of them stand on the floor. Both reach a ligament beyond a crossing. The lower base
//! plate takes tabs of the long boards, which hold it to the plinth and the plinth together.

use crate::choice::Choice;
use crate::range::Build;
use crate::units::quantity::Length;

/// Where a plinth stands in the case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plinth {
    /// Height of its boards, tabs left out.
    pub height: Length,
    /// Front ends of the bearers.
    pub front: Length,
    /// Rear ends of the bearers.
    pub rear: Length,
    /// How far boards reach beyond a crossing.
    pub beyond: Length,
}

/// What of a unit stands on the floor, from its outermost lines.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Foot {
    /// The line in front.
    pub front: Length,
    /// The line behind.
    pub rear: Length,
    /// The line at the left.
    pub left: Length,
    /// The line at the right.
    pub right: Length,
}

impl Plinth {
    /// That of a choice in a unit of that depth, if it has one.
    pub(crate) fn of(build: &Build, choice: &Choice, depth: Length) -> Option<Self> {
        let height = choice.plinth_mm?.length();
        let (front, rear) = (build.plinth_toe_mm, depth - build.plinth_rear_mm);
        // To the cut, which is wider than the board in it.
        let beyond = build.ligament_mm + build.clearance_mm / 2.0;
        Some(Self { height, front, rear, beyond })
    }

    /// Front faces of the long boards of that thickness.
    pub fn long(self, thickness: Length) -> [Length; 2] {
        [self.front + self.beyond, self.rear - self.beyond - thickness]
    }

    /// Narrowest bay that it goes under: in the only one two bearers and a tab have wood beside each other.
    pub(crate) fn bay_least(self) -> Length {
        self.beyond * 5.0
    }

    /// How far a bearer is free between the two long boards.
    pub fn between(self, thickness: Length) -> Length {
        let [front, rear] = self.long(thickness);
        rear - front - thickness
    }

    /// How deep boards are cut at a crossing: there is a clearance between the two floors, so that all stand on the ground.
    pub fn lap(self, clearance: Length) -> Length {
        (self.height + clearance) / 2.0
    }
}

#[cfg(test)]
mod tests;
