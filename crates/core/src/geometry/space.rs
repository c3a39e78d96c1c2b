//! Places in the case: x from left to right, y from front to back, z up; origin at the front left
//! bottom corner.

use smallvec::SmallVec;

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

/// A direction level in the case: a vector of length 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aim {
    /// Its part to the right.
    pub x: f64,
    /// Its part to the rear.
    pub y: f64,
}

impl Aim {
    /// The direction at that angle (radians) from the right towards the rear.
    pub fn at(angle: f64) -> Self {
        Self { x: libm::cos(angle), y: libm::sin(angle) }
    }

    /// A quarter turn on, from the right towards the rear.
    #[must_use]
    pub fn quarter_on(self) -> Self {
        Self { x: -self.y, y: self.x }
    }
}

impl Block {
    /// The least box that holds this one and a point.
    #[must_use]
    pub fn around(self, spot: Spot) -> Self {
        let Self { from, to } = self;
        Self {
            from: Spot::new(from.x.min(spot.x), from.y.min(spot.y), from.z.min(spot.z)),
            to: Spot::new(to.x.max(spot.x), to.y.max(spot.y), to.z.max(spot.z)),
        }
    }
}

/// How a panel lies in the case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lie {
    /// Lying: u along x, v along y, thickness upwards.
    Flat,
    /// Facing front: u along x, v along z, thickness to the rear.
    Facing,
    /// Facing the side: u along y, v along z, thickness to the right.
    Side,
    /// Facing front, then turned about the upright axis through its origin: u along this direction, v along z, thickness a
    /// quarter turn further on.
    Turned(Aim),
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
            Lie::Turned(aim) => {
                Spot::new(x + point.u * aim.x - deep * aim.y, y + point.u * aim.y + deep * aim.x, z + point.v)
            }
        }
    }

    /// The point on the panel that lies under a place in the case.
    pub fn point(self, spot: Spot) -> Point {
        let (x, y, z) = (spot.x - self.origin.x, spot.y - self.origin.y, spot.z - self.origin.z);
        match self.lie {
            Lie::Flat => Point::new(x, y),
            Lie::Facing => Point::new(x, z),
            Lie::Side => Point::new(y, z),
            Lie::Turned(aim) => Point::new(x * aim.x + y * aim.y, z),
        }
    }
}

/// An upright prism in the case: a convex polygon in plan, counter-clockwise from the right towards the rear, between two heights.
#[derive(Clone, Debug, PartialEq)]
pub struct Prism {
    /// Its corners, level: x and y.
    pub plan: SmallVec<[(Length, Length); 4]>,
    /// Its underside.
    pub under: Length,
    /// Its upper side.
    pub over: Length,
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A turned panel goes where a facing or a side one does where its turn is none or a quarter; there and back again.
    #[test]
    fn a_turned_panel_goes_where_its_turn_takes_it() {
        let [u, v, deep] = [30.0, 40.0, 5.0].map(Length::mm);
        let origin = Spot::new(Length::mm(7.0), Length::mm(-3.0), Length::mm(2.0));
        let placed = |lie| Placement { origin, lie };
        let spot = |lie| placed(lie).spot(Point::new(u, v), deep);
        assert_eq!(spot(Lie::Turned(Aim { x: 1.0, y: 0.0 })), spot(Lie::Facing));
        let quarter = spot(Lie::Turned(Aim { x: 1.0, y: 0.0 }.quarter_on()));
        assert_eq!(quarter, Spot { x: origin.x - deep, ..spot(Lie::Side) });
        // Worked: at 30° a point 30 along and 5 deep lies 30 cos 30° − 5 sin 30° = 23.4808 and 30 sin 30° + 5 cos 30° = 19.3301 on.
        let turned = placed(Lie::Turned(Aim::at(core::f64::consts::FRAC_PI_6)));
        let found = turned.spot(Point::new(u, v), deep);
        assert!((found.x - origin.x - Length::mm(23.480_762)).abs() < Length::mm(1e-6), "{found:?}");
        assert!((found.y - origin.y - Length::mm(19.330_127)).abs() < Length::mm(1e-6), "{found:?}");
        let back = turned.point(found);
        assert!((back.u - u).abs() < Length::mm(1e-9) && (back.v - v).abs() < Length::mm(1e-9), "{back:?}");
    }
}
