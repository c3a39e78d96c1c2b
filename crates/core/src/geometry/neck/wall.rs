//! One line or arc of an outline, for who looks at it from inside the wood.

use core::f64::consts::TAU;
use core::ops::{Add, Mul, Sub};

use crate::geometry::outline::{Point, Segment};
use crate::units::quantity::Length;

/// A place on a panel, or the way from one to another, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Place {
    pub(super) u: f64,
    pub(super) v: f64,
}

impl Place {
    /// So far from the origin, at an angle.
    pub(super) fn at(angle: f64, far: f64) -> Self {
        Self { u: libm::cos(angle) * far, v: libm::sin(angle) * far }
    }

    pub(super) fn point(self) -> Point {
        Point::new(Length::mm(self.u), Length::mm(self.v))
    }

    pub(super) fn dot(self, other: Self) -> f64 {
        self.u * other.u + self.v * other.v
    }

    pub(super) fn cross(self, other: Self) -> f64 {
        self.u * other.v - self.v * other.u
    }

    pub(super) fn size(self) -> f64 {
        libm::hypot(self.u, self.v)
    }

    pub(super) fn angle(self) -> f64 {
        libm::atan2(self.v, self.u)
    }

    /// As long, a quarter turn to the left.
    pub(super) fn left(self) -> Self {
        Self { u: -self.v, v: self.u }
    }

    /// The same way, of length 1.
    pub(super) fn unit(self) -> Self {
        self * (1.0 / self.size())
    }
}

impl From<Point> for Place {
    fn from(point: Point) -> Self {
        Self { u: point.u.in_mm(), v: point.v.in_mm() }
    }
}

impl Add for Place {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self { u: self.u + other.u, v: self.v + other.v }
    }
}

impl Sub for Place {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self { u: self.u - other.u, v: self.v - other.v }
    }
}

impl Mul<f64> for Place {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self { u: self.u * factor, v: self.v * factor }
    }
}

/// A part of a circle.
#[derive(Clone, Copy, Debug)]
pub(super) struct Arc {
    pub(super) centre: Place,
    pub(super) radius: f64,
    /// The angle from the centre at which it begins.
    pub(super) start: f64,
    /// How far it turns, counter-clockwise if positive.
    pub(super) sweep: f64,
}

/// A line or an arc, run with the wood at its left.
#[derive(Clone, Copy, Debug)]
pub(super) struct Wall {
    pub(super) from: Place,
    pub(super) to: Place,
    pub(super) arc: Option<Arc>,
}

/// Where a ray meets a wall.
#[derive(Clone, Copy, Debug)]
pub(super) struct Hit {
    pub(super) distance: f64,
    /// Of the two places at which it meets the whole circle the further one.
    further: bool,
}

/// What is nearer than this is where a ray begins.
const BEGINS: f64 = 1e-7;
/// What lies beside the end of a wall by no more is on it.
const ON: f64 = 1e-9;

impl Arc {
    /// How far an angle lies behind its beginning, the way it turns: from 0 to a whole turn.
    fn turned(&self, angle: f64) -> f64 {
        ((angle - self.start) * self.sweep.signum()).rem_euclid(TAU)
    }

    fn has(&self, angle: f64) -> bool {
        let turned = self.turned(angle);
        turned <= self.sweep.abs() + ON || turned >= TAU - ON
    }
}

impl Wall {
    pub(super) fn of(segment: Segment) -> Self {
        let (from, to, bulge) = (Place::from(segment.from), Place::from(segment.to), segment.bulge);
        let chord = to - from;
        let arc = (bulge != 0.0).then(|| {
            // The middle of the chord lies c (1 − b²) / (4 b) from the centre.
            let centre = (from + to) * 0.5 + chord.left() * ((1.0 - bulge * bulge) / (4.0 * bulge));
            let (start, sweep) = ((from - centre).angle(), 4.0 * libm::atan(bulge));
            Arc { centre, radius: segment.radius().in_mm(), start, sweep }
        });
        Self { from, to, arc }
    }

    /// The way that the outline goes at its beginning and at its end.
    pub(super) fn ways(&self) -> (Place, Place) {
        match self.arc {
            None => ((self.to - self.from).unit(), (self.to - self.from).unit()),
            Some(arc) => {
                let way = |angle| Place::at(angle, arc.sweep.signum()).left();
                (way(arc.start), way(arc.start + arc.sweep))
            }
        }
    }

    /// The corners of a box that holds it; of an arc the box round its circle.
    pub(super) fn bounds(&self) -> (Place, Place) {
        match self.arc {
            None => around(self.from, self.to),
            Some(Arc { centre, radius, .. }) => {
                let reach = Place { u: radius, v: radius };
                (centre - reach, centre + reach)
            }
        }
    }

    /// Where a ray from a place along a way of length 1 meets it first.
    pub(super) fn hit(&self, from: Place, ahead: Place) -> Option<Hit> {
        let Some(arc) = self.arc else {
            let along = self.to - self.from;
            let (distance, share) = ((self.from - from).cross(along), (self.from - from).cross(ahead));
            let (distance, share) = (distance / ahead.cross(along), share / ahead.cross(along));
            let beyond = ON / along.size();
            let is_on = (-beyond..=1.0 + beyond).contains(&share) && distance > BEGINS && distance.is_finite();
            return is_on.then_some(Hit { distance, further: false });
        };
        let both = [false, true].map(|further| Hit { distance: arc.meets(from, ahead, further), further });
        both.into_iter().find(|hit| {
            let at = from + ahead * hit.distance;
            hit.distance > BEGINS && arc.has((at - arc.centre).angle())
        })
    }

    /// How far a ray beside that one goes to the whole line or circle.
    pub(super) fn beside(&self, hit: Hit, from: Place, ahead: Place) -> f64 {
        match self.arc {
            None => {
                let along = self.to - self.from;
                (self.from - from).cross(along) / ahead.cross(along)
            }
            Some(arc) => arc.meets_or_passes(from, ahead, hit.further),
        }
    }

    /// How far along it a place on it lies.
    pub(super) fn along(&self, at: Place) -> f64 {
        match self.arc {
            None => (at - self.from).dot((self.to - self.from).unit()),
            Some(arc) => arc.turned((at - arc.centre).angle()) * arc.radius,
        }
    }

    /// What of it lies between two places on it, the first one before the second.
    pub(super) fn between(&self, from: Place, to: Place) -> Self {
        let arc = self.arc.map(|arc| {
            let start = (from - arc.centre).angle();
            let turned = Arc { start, ..arc }.turned((to - arc.centre).angle());
            // Ends that are one may be a last bit apart, either way.
            let turned = if turned > TAU - ON { 0.0 } else { turned };
            Arc { start, sweep: turned * arc.sweep.signum(), ..arc }
        });
        Self { from, to, arc }
    }

    /// How far it reaches from a place along a way of length 1.
    pub(super) fn reach(&self, from: Place, way: Place) -> f64 {
        let ends = (self.from - from).dot(way).max((self.to - from).dot(way));
        let round = self.arc.filter(|arc| arc.has(way.angle()));
        round.map_or(ends, |arc| ends.max((arc.centre - from).dot(way) + arc.radius))
    }
}

impl Arc {
    /// How far a ray goes to one of the two places at which it meets the whole circle; no number where it passes it.
    fn meets(&self, from: Place, ahead: Place, further: bool) -> f64 {
        let (middle, squared) = self.foot(from, ahead);
        middle + squared.sqrt() * if further { 1.0 } else { -1.0 }
    }

    /// The same for a ray that may pass the circle by its last bits.
    fn meets_or_passes(&self, from: Place, ahead: Place, further: bool) -> f64 {
        let (middle, squared) = self.foot(from, ahead);
        middle + squared.max(0.0).sqrt() * if further { 1.0 } else { -1.0 }
    }

    /// How far a ray goes to where it is nearest to the centre, and the square of how far it goes from there to the circle.
    fn foot(&self, from: Place, ahead: Place) -> (f64, f64) {
        let (along, across) = ((self.centre - from).dot(ahead), (self.centre - from).cross(ahead));
        (along, self.radius * self.radius - across * across)
    }
}

/// The corners of the box round two places.
pub(super) fn around(a: Place, b: Place) -> (Place, Place) {
    (Place { u: a.u.min(b.u), v: a.v.min(b.v) }, Place { u: a.u.max(b.u), v: a.v.max(b.v) })
}
