//! The rays that go square into the wood from one line or arc of an outline, or from an inside corner.

use core::f64::consts::{PI, TAU};

use super::wall::{Arc, Place, Wall, around};

/// Rays side by side; a place among them is a length along a line, an angle along an arc or in a corner.
#[derive(Clone, Copy, Debug)]
pub(super) enum Beam {
    /// From a line.
    Straight { from: Place, along: Place, length: f64 },
    /// From an arc, away from its centre or through it; from a corner if its radius is zero.
    Round { arc: Arc, inwards: bool },
}

impl Beam {
    pub(super) fn of(wall: &Wall) -> Self {
        match wall.arc {
            None => {
                let along = wall.to - wall.from;
                Self::Straight { from: wall.from, along: along.unit(), length: along.size() }
            }
            Some(arc) => Self::Round { arc, inwards: arc.sweep > 0.0 },
        }
    }

    /// That of a corner in which the outline turns to the right by so much.
    pub(super) fn of_corner(centre: Place, arrives: Place, turn: f64) -> Self {
        let arc = Arc { centre, radius: 0.0, start: arrives.left().angle(), sweep: -turn };
        Self::Round { arc, inwards: false }
    }

    /// The last place among its rays; the first is 0.
    pub(super) fn extent(&self) -> f64 {
        match self {
            Self::Straight { length, .. } => *length,
            Self::Round { arc, .. } => arc.sweep.abs(),
        }
    }

    /// The ray at a place: from where, and which way.
    pub(super) fn ray(&self, at: f64) -> (Place, Place) {
        match *self {
            Self::Straight { from, along, .. } => (from + along * at, along.left()),
            Self::Round { arc, inwards } => {
                let out = Place::at(arc.start + at * arc.sweep.signum(), 1.0);
                (arc.centre + out * arc.radius, out * if inwards { -1.0 } else { 1.0 })
            }
        }
    }

    /// The length of the outline between two places.
    pub(super) fn length(&self, from: f64, to: f64) -> f64 {
        match self {
            Self::Straight { .. } => to - from,
            Self::Round { arc, .. } => (to - from) * arc.radius,
        }
    }

    /// The corners of a box that holds its rays, each so long.
    pub(super) fn bounds(&self, width: f64) -> (Place, Place) {
        match *self {
            Self::Straight { from, along, length } => {
                let (to, deep) = (from + along * length, along.left() * width);
                let (one, two) = (around(from, to), around(from + deep, to + deep));
                (around(one.0, two.0).0, around(one.1, two.1).1)
            }
            Self::Round { arc, .. } => {
                let reach = Place { u: arc.radius + width, v: arc.radius + width };
                (arc.centre - reach, arc.centre + reach)
            }
        }
    }

    /// Adds the places between which a wall is hit by all rays or by none, nearer than `width` or not, and ever nearer or ever
    /// further; and others that do no harm.
    pub(super) fn breaks(&self, wall: &Wall, width: f64, out: &mut Vec<f64>) {
        match *self {
            Self::Straight { from, along, .. } => {
                let place = |at: Place| (at - from).dot(along);
                let height = |at: Place| (at - from).dot(along.left());
                let (begins, ends) = (place(wall.from), place(wall.to));
                out.extend([begins, ends]);
                if let Some(arc) = wall.arc {
                    let (middle, over) = (place(arc.centre), width - height(arc.centre));
                    let half = half_chord(arc.radius, over);
                    out.extend([0.0, arc.radius, half].into_iter().flat_map(|off| [middle - off, middle + off]));
                } else {
                    let (low, high) = (height(wall.from), height(wall.to));
                    out.push(begins + (ends - begins) * ((width - low) / (high - low)));
                }
            }
            Self::Round { arc, inwards } => {
                // Where rays end that are so long. The centre may lie between.
                let end = if inwards { arc.radius - width } else { arc.radius + width }.abs();
                let mut add = |angle: f64| {
                    let turned = |more: f64| ((angle + more - arc.start) * arc.sweep.signum()).rem_euclid(TAU);
                    out.extend([turned(0.0), turned(PI)]);
                };
                add((wall.from - arc.centre).angle());
                add((wall.to - arc.centre).angle());
                if let Some(other) = wall.arc {
                    let way = other.centre - arc.centre;
                    let (apart, middle) = (way.size(), way.angle());
                    let touches = libm::asin((other.radius / apart).min(1.0));
                    let meets = (end * end + apart * apart - other.radius * other.radius) / (2.0 * end * apart);
                    let meets = libm::acos(meets.clamp(-1.0, 1.0));
                    for off in [0.0, touches, meets] {
                        add(middle - off);
                        add(middle + off);
                    }
                } else {
                    let along = (wall.to - wall.from).unit();
                    let foot = wall.from - arc.centre - along * (wall.from - arc.centre).dot(along);
                    let half = along * half_chord(end, foot.size());
                    for at in [foot, foot + half, foot - half] {
                        add(at.angle());
                    }
                }
            }
        }
    }
}

/// Half of the chord of a circle, so far from its centre; nothing beyond it.
fn half_chord(radius: f64, off: f64) -> f64 {
    (radius * radius - off * off).max(0.0).sqrt()
}
