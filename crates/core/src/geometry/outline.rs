//! Closed outlines of line and arc segments on a panel.
//!
//! Axes of a panel: u to the right, v up, as seen on its face; millimetres. Outer outlines run
//! counter-clockwise, cut-outs clockwise, so that signed areas add up.

use super::quarters::Quarters;
use crate::units::quantity::{Area, Length};

/// A point on a panel.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Point {
    /// To the right.
    pub u: Length,
    /// Up.
    pub v: Length,
}

impl Point {
    /// The point at these distances.
    pub const fn new(u: Length, v: Length) -> Self {
        Self { u, v }
    }
}

/// One corner of an outline and how the outline leaves it.
///
/// `bulge` is the tangent of a quarter of the arc's included angle, positive when it turns
/// counter-clockwise, 0 for a straight line: 1 is half a circle.
// Source: the bulge of the LWPOLYLINE entity, DXF reference.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    /// Where it is.
    pub at: Point,
    /// How the outline goes to the next corner.
    pub bulge: f64,
}

/// Bulge of a quarter circle: tan(π/8) = √2 − 1.
pub const QUARTER: f64 = core::f64::consts::SQRT_2 - 1.0;

/// A closed outline: each corner leads to the next, the last to the first.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outline {
    corners: Vec<Corner>,
}

/// A straight line or a circular arc between two points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Segment {
    /// Start.
    pub from: Point,
    /// End.
    pub to: Point,
    /// See [`Corner::bulge`].
    pub bulge: f64,
}

impl Segment {
    /// The point at a share of its chord: on the segment if that is straight.
    pub fn at(self, share: f64) -> Point {
        Point::new(self.from.u + (self.to.u - self.from.u) * share, self.from.v + (self.to.v - self.from.v) * share)
    }

    /// What lies between two shares of its length.
    #[must_use]
    pub fn part(self, from: f64, to: f64) -> Self {
        let bulge = libm::tan((to - from) * libm::atan(self.bulge));
        Self { from: self.along(from), to: self.along(to), bulge }
    }

    /// The point at a share of its length. The ends are its own to the last bit.
    fn along(self, share: f64) -> Point {
        if share >= 1.0 {
            return self.to;
        }
        if self.bulge == 0.0 {
            return self.at(share);
        }
        // The chord to it, against the whole chord: turned to the start by what is left of half the angle.
        let half = self.angle() / 2.0;
        let turned = half * (share - 1.0);
        let scale = libm::sin(half * share) / libm::sin(half);
        let (sine, cosine) = (libm::sin(turned) * scale, libm::cos(turned) * scale);
        let (du, dv) = (self.to.u - self.from.u, self.to.v - self.from.v);
        Point::new(self.from.u + du * cosine - dv * sine, self.from.v + du * sine + dv * cosine)
    }

    /// Direction in which it begins, as a vector of length 1.
    pub fn direction(self) -> (f64, f64) {
        let chord = self.chord();
        let (u, v) = ((self.to.u - self.from.u).in_mm() / chord, (self.to.v - self.from.v).in_mm() / chord);
        let half = self.angle() / 2.0;
        let (sine, cosine) = (libm::sin(half), libm::cos(half));
        (u * cosine + v * sine, v * cosine - u * sine)
    }

    fn chord(self) -> f64 {
        libm::hypot((self.to.u - self.from.u).in_mm(), (self.to.v - self.from.v).in_mm())
    }

    /// Included angle in radians, signed like the bulge.
    fn angle(self) -> f64 {
        4.0 * libm::atan(self.bulge)
    }

    /// Radius of the arc; zero for a line. r = c (1 + b²) / (4 |b|).
    pub fn radius(self) -> Length {
        Length::mm(self.chord() * (1.0 + self.bulge * self.bulge) / (4.0 * self.bulge.abs()))
    }

    /// Length along the segment.
    pub fn length(self) -> Length {
        if self.bulge == 0.0 { Length::mm(self.chord()) } else { self.radius() * self.angle().abs() }
    }

    /// The area between its chord and its arc, signed like the bulge, and where its centroid is.
    pub fn cap(self) -> (Area, Point) {
        if self.bulge == 0.0 {
            return (Area::ZERO, self.at(0.5));
        }
        let (u, v) = self.cap_centroid();
        (Area::mm2(self.cap_area()), Point::new(Length::mm(u), Length::mm(v)))
    }

    /// Area between chord and arc, signed: r² (θ − sin θ) / 2.
    fn cap_area(self) -> f64 {
        if self.bulge == 0.0 {
            return 0.0;
        }
        let radius = self.radius().in_mm();
        let angle = self.angle();
        radius * radius * (angle - libm::sin(angle)) / 2.0
    }

    /// Centroid of that area: it lies 4 r sin³(θ/2) / (3 (θ − sin θ)) from the arc's centre.
    fn cap_centroid(self) -> (f64, f64) {
        let (radius, angle) = (self.radius().in_mm(), self.angle().abs());
        let half = libm::sin(angle / 2.0);
        let from_centre = 4.0 * radius * half * half * half / (3.0 * (angle - libm::sin(angle)));
        // The centre lies this far from the chord's middle, away from the bulging side.
        let to_centre = radius - self.bulge.abs() * self.chord() / 2.0;
        let (du, dv) = ((self.to.u - self.from.u).in_mm(), (self.to.v - self.from.v).in_mm());
        let out = (from_centre - to_centre) / self.chord() * self.bulge.signum();
        let (mid_u, mid_v) = ((self.from.u + self.to.u).in_mm() / 2.0, (self.from.v + self.to.v).in_mm() / 2.0);
        (mid_u + dv * out, mid_v - du * out)
    }
}

impl Outline {
    /// An outline through these corners; neighbours at the same place and corners on a straight
    /// line between their neighbours are left out.
    pub fn through(corners: impl IntoIterator<Item = Corner>) -> Self {
        let mut kept: Vec<Corner> = Vec::new();
        for corner in corners {
            push_kept(&mut kept, corner);
        }
        // The seam: the last corners against the first ones.
        while let [first, .., before, last] = kept[..] {
            if coincide(last.at, first.at) && last.bulge == 0.0 || needless(before, last, first) {
                kept.pop();
            } else {
                break;
            }
        }
        while let [first, second, .., last] = kept[..] {
            if needless(last, first, second) {
                kept.remove(0);
            } else {
                break;
            }
        }
        Self { corners: kept }
    }

    /// A circle, counter-clockwise.
    pub fn circle(centre: Point, diameter: Length) -> Self {
        Self::stadium(centre, diameter, diameter)
    }

    /// A lying slot with half-round ends, counter-clockwise; `length` over the ends.
    pub fn stadium(centre: Point, length: Length, height: Length) -> Self {
        let (straight, radius) = ((length - height) / 2.0, height / 2.0);
        let corner = |u, v, bulge| Corner { at: Point::new(centre.u + u, centre.v + v), bulge };
        Self::through([
            corner(-straight, -radius, 0.0),
            corner(straight, -radius, 1.0),
            corner(straight, radius, 0.0),
            corner(-straight, radius, 1.0),
        ])
    }

    /// A rectangle, counter-clockwise.
    pub fn rectangle(from: Point, to: Point) -> Self {
        let corner = |u, v| Corner { at: Point::new(u, v), bulge: 0.0 };
        Self { corners: vec![corner(from.u, from.v), corner(to.u, from.v), corner(to.u, to.v), corner(from.u, to.v)] }
    }

    /// The same outline, turned about the origin, then moved.
    #[must_use]
    pub fn placed(&self, turn: Quarters, by: Point) -> Self {
        let place = |at: Point| {
            let (u, v) = turn.turn((at.u, at.v));
            Point::new(by.u + u, by.v + v)
        };
        let corners = self.corners.iter().map(|corner| Corner { at: place(corner.at), bulge: corner.bulge });
        Self { corners: corners.collect() }
    }

    /// The same outline with every corner moved by a turn and a shift, which keep arcs as they are.
    #[must_use]
    pub fn moved(&self, to: impl Fn(Point) -> Point) -> Self {
        Self { corners: self.corners.iter().map(|corner| Corner { at: to(corner.at), ..*corner }).collect() }
    }

    /// The same outline, begun that share along its segment `at`, which has to be straight; unchanged without one.
    #[must_use]
    pub fn begun_within(&self, at: usize, share: f64) -> Self {
        let Some(segment) = self.segments().nth(at).filter(|segment| segment.bulge == 0.0) else { return self.clone() };
        let begin = Corner { at: segment.at(share), bulge: 0.0 };
        let (before, after) = self.corners.split_at((at + 1).min(self.corners.len()));
        Self { corners: core::iter::once(begin).chain(after.iter().copied()).chain(before.iter().copied()).collect() }
    }

    /// The same outline run the other way.
    #[must_use]
    pub fn reversed(&self) -> Self {
        let corners = self.segments().map(|segment| Corner { at: segment.to, bulge: -segment.bulge });
        let mut reversed: Vec<Corner> = corners.collect();
        reversed.reverse();
        Self { corners: reversed }
    }

    /// The corners in order.
    pub fn corners(&self) -> &[Corner] {
        &self.corners
    }

    /// The segments in order; the last one ends where the first begins.
    pub fn segments(&self) -> impl Iterator<Item = Segment> + '_ {
        let ends = self.corners.iter().cycle().skip(1);
        self.corners.iter().zip(ends).map(|(corner, next)| Segment {
            from: corner.at,
            to: next.at,
            bulge: corner.bulge,
        })
    }

    /// Signed area: positive if counter-clockwise.
    pub fn area(&self) -> Area {
        Area::mm2(self.segments().map(|segment| cross(segment) / 2.0 + segment.cap_area()).sum())
    }

    /// Centroid of the enclosed area.
    pub fn centroid(&self) -> Point {
        let (mut area, mut moment_u, mut moment_v) = (0.0, 0.0, 0.0);
        for segment in self.segments() {
            let cross = cross(segment);
            area += cross / 2.0;
            moment_u += cross * (segment.from.u + segment.to.u).in_mm() / 6.0;
            moment_v += cross * (segment.from.v + segment.to.v).in_mm() / 6.0;
            if segment.bulge != 0.0 {
                let (cap, (u, v)) = (segment.cap_area(), segment.cap_centroid());
                area += cap;
                moment_u += cap * u;
                moment_v += cap * v;
            }
        }
        Point::new(Length::mm(moment_u / area), Length::mm(moment_v / area))
    }

    /// Length once round.
    pub fn length(&self) -> Length {
        self.segments().map(Segment::length).sum()
    }
}

/// Twice the signed area of the triangle from the origin.
fn cross(segment: Segment) -> f64 {
    segment.from.u.in_mm() * segment.to.v.in_mm() - segment.to.u.in_mm() * segment.from.v.in_mm()
}

/// Corners closer than this are one: a thousandth of what documents show.
const SAME_MM: f64 = 1e-5;

fn coincide(a: Point, b: Point) -> bool {
    (a.u - b.u).abs().in_mm() < SAME_MM && (a.v - b.v).abs().in_mm() < SAME_MM
}

/// Whether `mid` lies straight between its neighbours or goes back on itself.
fn needless(before: Corner, mid: Corner, after: Corner) -> bool {
    let straight = before.bulge == 0.0 && mid.bulge == 0.0;
    let level = |a: Length, b: Length, c: Length| (a - b).abs().in_mm() < SAME_MM && (b - c).abs().in_mm() < SAME_MM;
    straight && (level(before.at.u, mid.at.u, after.at.u) || level(before.at.v, mid.at.v, after.at.v))
}

fn push_kept(kept: &mut Vec<Corner>, corner: Corner) {
    if let Some(last) = kept.last_mut()
        && coincide(last.at, corner.at)
    {
        *last = corner;
        return;
    }
    while let [.., before, mid] = kept[..] {
        if needless(before, mid, corner) {
            kept.pop();
        } else {
            break;
        }
    }
    kept.push(corner);
}

#[cfg(test)]
mod tests;
