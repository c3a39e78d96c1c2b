//! The isometric view: from the left front corner and above, as the stage first shows a unit.

use core::f64::consts::FRAC_1_SQRT_2;

/// 1/√6.
const ONE_SIXTH_ROOT: f64 = 0.408_248_290_463_863;
/// 1/√3.
const ONE_THIRD_ROOT: f64 = 0.577_350_269_189_625_8;

/// Length in the picture of a length along any of the three axes: √(2/3).
pub(super) const FORESHORTENED: f64 = 0.816_496_580_927_726;

/// A place in the picture, in millimetres of the unit: to the right, up, and towards the eye.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Seen {
    pub(super) x: f64,
    pub(super) y: f64,
    pub(super) near: f64,
}

impl Seen {
    /// Where a place in the case is seen: x to the right, y to the rear, z up.
    // Source: ISO 5456-3:1996, isometric axonometry: an orthogonal projection on a plane that makes equal
    // angles with the three axes.
    pub(super) fn of([x, y, z]: [f64; 3]) -> Self {
        Self { x: (x - y) * FRAC_1_SQRT_2, y: (x + y + 2.0 * z) * ONE_SIXTH_ROOT, near: (z - x - y) * ONE_THIRD_ROOT }
    }

    /// How high it lies over the floor: the view's three directions are at right angles and of length 1.
    pub(super) fn height(self) -> f64 {
        2.0 * self.y * ONE_SIXTH_ROOT + self.near * ONE_THIRD_ROOT
    }

    /// The place that far along a way.
    pub(super) fn plus(self, way: Self, times: f64) -> Self {
        Self { x: self.x + way.x * times, y: self.y + way.y * times, near: self.near + way.near * times }
    }

    /// The place at a part of the way to another: 0 is here, 1 is there.
    pub(super) fn towards(self, to: Self, part: f64) -> Self {
        self.plus(Self { x: to.x - self.x, y: to.y - self.y, near: to.near - self.near }, part)
    }

    /// Its distance from another in the picture.
    pub(super) fn apart(self, other: Self) -> f64 {
        libm::hypot(other.x - self.x, other.y - self.y)
    }
}

/// The room that something takes in the picture, and how near to the eye it comes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Bounds {
    pub(super) low: Seen,
    pub(super) high: Seen,
}

impl Bounds {
    /// Nothing yet.
    pub(super) const NONE: Self = {
        let (low, high) = (f64::INFINITY, f64::NEG_INFINITY);
        Self { low: Seen { x: low, y: low, near: low }, high: Seen { x: high, y: high, near: high } }
    };

    /// What holds all these places.
    pub(super) fn of(places: impl IntoIterator<Item = Seen>) -> Self {
        places.into_iter().fold(Self::NONE, |bounds, place| bounds.with(Self { low: place, high: place }))
    }

    /// What holds both.
    pub(super) fn with(self, other: Self) -> Self {
        let pick = |a: Seen, b: Seen, of: fn(f64, f64) -> f64| Seen {
            x: of(a.x, b.x),
            y: of(a.y, b.y),
            near: of(a.near, b.near),
        };
        Self { low: pick(self.low, other.low, f64::min), high: pick(self.high, other.high, f64::max) }
    }

    /// The same elsewhere.
    pub(super) fn moved(self, way: Seen) -> Self {
        Self { low: self.low.plus(way, 1.0), high: self.high.plus(way, 1.0) }
    }

    /// Whether it can hide any of the other: they overlap in the picture, and some of it is nearer.
    pub(super) fn may_hide(&self, other: &Self) -> bool {
        self.low.x <= other.high.x
            && other.low.x <= self.high.x
            && self.low.y <= other.high.y
            && other.low.y <= self.high.y
            && self.high.near > other.low.near
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_knows_how_high_it_lies() {
        for (place, high) in [([0.0, 0.0, 0.0], 0.0), ([500.0, -30.0, 712.0], 712.0), ([-4.0, 900.0, -8.0], -8.0)] {
            assert!((Seen::of(place).height() - high).abs() < 1e-9, "{place:?}");
        }
    }

    #[test]
    fn axes_are_equally_short_and_120_degrees_apart() {
        let origin = Seen::default();
        let ends = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]].map(Seen::of);
        for end in ends {
            assert!((origin.apart(end) - FORESHORTENED).abs() < 1e-12, "{end:?}");
        }
        let [x, y, z] = ends;
        for (a, b) in [(x, z), (y, z)] {
            // x and y run away from the eye, so they are drawn 60 degrees from z.
            let cosine = (a.x * b.x + a.y * b.y) / (FORESHORTENED * FORESHORTENED);
            assert!((cosine - 0.5).abs() < 1e-12, "{cosine}");
        }
        assert!(x.x > 0.0 && y.x < 0.0 && z.near > 0.0 && y.near < 0.0 && x.near < 0.0);
    }
}
