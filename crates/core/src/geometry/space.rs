//! Places in the case: x from left to right, y from front to back, z up; origin at the front left
//! bottom corner.

use crate::geometry::outline::Point;
use crate::units::quantity::Length;

/// A point in the case.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Spot {
    /// From the left.
    pub x: Length,
    /// From the front.
    pub y: Length,
    /// From the floor.
    pub z: Length,
}

impl Spot {
    /// The point at these distances.
    pub const fn new(x: Length, y: Length, z: Length) -> Self {
        Self { x, y, z }
    }
}

/// An upright box in the case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Block {
    /// Left front bottom corner.
    pub from: Spot,
    /// Right rear top corner.
    pub to: Spot,
}

/// How a panel lies in the case.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lie {
    /// Lying: u along x, v along y, thickness upwards.
    Flat,
    /// Facing front: u along x, v along z, thickness to the rear.
    Facing,
    /// Facing the side: u along y, v along z, thickness to the right.
    Side,
}

/// Takes points on a panel to their place in the case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placement {
    /// Where the panel's lower left corner, front of its thickness, goes.
    pub origin: Spot,
    /// How it lies.
    pub lie: Lie,
}

impl Placement {
    /// The place in the case of a point on the panel, `deep` into its thickness.
    pub fn spot(self, point: Point, deep: Length) -> Spot {
        let Spot { x, y, z } = self.origin;
        match self.lie {
            Lie::Flat => Spot::new(x + point.u, y + point.v, z + deep),
            Lie::Facing => Spot::new(x + point.u, y + deep, z + point.v),
            Lie::Side => Spot::new(x + deep, y + point.u, z + point.v),
        }
    }

    /// The point on the panel that lies under a place in the case.
    pub fn point(self, spot: Spot) -> Point {
        let (x, y, z) = (spot.x - self.origin.x, spot.y - self.origin.y, spot.z - self.origin.z);
        match self.lie {
            Lie::Flat => Point::new(x, y),
            Lie::Facing => Point::new(x, z),
            Lie::Side => Point::new(y, z),
        }
    }
}
