//! How an outline goes round its corners: roundings of show corners, reliefs of inside corners.
//!
//! A round cutter leaves its radius in every inside corner. Where another part must reach into the
//! corner, a relief is cut: half a circle that begins in the corner itself. It is a little rounder than the cutter, so
//! that the cutter's centre runs through it and does not stand still.

use core::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI, SQRT_2};

use crate::geometry::outline::{Corner, Point, QUARTER};
use crate::units::quantity::{Area, Length};

/// A direction on a panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Heading {
    /// Along u.
    Right,
    /// Along v.
    Up,
    /// Against u.
    Left,
    /// Against v.
    Down,
}

impl Heading {
    /// A quarter turn counter-clockwise.
    #[must_use]
    pub const fn turned_left(self) -> Self {
        match self {
            Self::Right => Self::Up,
            Self::Up => Self::Left,
            Self::Left => Self::Down,
            Self::Down => Self::Right,
        }
    }

    /// The other way.
    #[must_use]
    pub const fn back(self) -> Self {
        self.turned_left().turned_left()
    }

    /// A quarter turn clockwise.
    #[must_use]
    pub const fn turned_right(self) -> Self {
        self.back().turned_left()
    }

    /// How far along a point lies.
    pub fn along(self, point: Point) -> Length {
        match self {
            Self::Right => point.u,
            Self::Up => point.v,
            Self::Left => -point.u,
            Self::Down => -point.v,
        }
    }

    /// The point that far from another.
    pub fn from(self, point: Point, by: Length) -> Point {
        match self {
            Self::Right => Point::new(point.u + by, point.v),
            Self::Up => Point::new(point.u, point.v + by),
            Self::Left => Point::new(point.u - by, point.v),
            Self::Down => Point::new(point.u, point.v - by),
        }
    }
}

/// How a corner is taken; each length is a radius.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Turn {
    /// As it is.
    Sharp,
    /// An outside corner, rounded.
    Rounded(Length),
    /// An outside corner, cut off straight: so far back along the wall before it, and so far along the wall after it.
    CutOff {
        /// Along the wall before it.
        back: Length,
        /// Along the wall after it.
        ahead: Length,
    },
    /// An inside corner that no part reaches, as round as a relief.
    Fillet(Length),
    /// A relief in the wall after the corner.
    Ahead(Length),
    /// A relief in the wall before the corner.
    Behind(Length),
    /// A relief on the diagonal, through the corner.
    Across(Length),
    /// As it is, and the wall after it is an arc of that bulge.
    Arc(f64),
}

/// One corner of an outline of axis-parallel walls, run with the material at the left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bend {
    /// Where the walls meet.
    pub at: Point,
    /// Which way the next wall goes.
    pub leaves: Heading,
    /// How the corner is taken.
    pub turn: Turn,
}

impl Bend {
    /// From the corner back along the wall before it.
    fn back(self) -> Heading {
        match self.turn {
            // An outside corner turns left, an inside corner right.
            Turn::Rounded(_) | Turn::CutOff { .. } => self.leaves.turned_right().back(),
            Turn::Sharp | Turn::Fillet(_) | Turn::Ahead(_) | Turn::Behind(_) | Turn::Across(_) | Turn::Arc(_) => {
                self.leaves.turned_left().back()
            }
        }
    }

    /// The corners of the outline that it makes.
    pub fn corners(self) -> impl Iterator<Item = Corner> {
        let Self { at, leaves, turn } = self;
        let (before, after, bulge) = match turn {
            Turn::Sharp => (Length::ZERO, Length::ZERO, 0.0),
            Turn::Arc(bulge) => (Length::ZERO, Length::ZERO, bulge),
            Turn::Rounded(radius) => (radius, radius, QUARTER),
            Turn::CutOff { back, ahead } => (back, ahead, 0.0),
            Turn::Fillet(radius) => (radius, radius, -QUARTER),
            Turn::Ahead(radius) => (Length::ZERO, radius * 2.0, -1.0),
            Turn::Behind(radius) => (radius * 2.0, Length::ZERO, -1.0),
            Turn::Across(radius) => (radius * SQRT_2, radius * SQRT_2, -1.0),
        };
        let arc = Corner { at: self.back().from(at, before), bulge };
        let end = Corner { at: leaves.from(at, after), bulge: 0.0 };
        core::iter::once(arc).chain((before > Length::ZERO || after > Length::ZERO).then_some(end))
    }

    /// What the turn adds to the outline's length, compared with a sharp corner.
    pub fn added_length(self) -> Length {
        match self.turn {
            // An arc's own length and area are those of its bow.
            Turn::Sharp | Turn::Arc(_) => Length::ZERO,
            Turn::Rounded(radius) | Turn::Fillet(radius) => radius * (FRAC_PI_2 - 2.0),
            Turn::CutOff { back, ahead } => Length::mm(libm::hypot(back.in_mm(), ahead.in_mm())) - back - ahead,
            Turn::Ahead(radius) | Turn::Behind(radius) => radius * (PI - 2.0),
            Turn::Across(radius) => radius * (PI - 2.0 * SQRT_2),
        }
    }

    /// What the turn adds to the material's area, and the centroid of it.
    ///
    /// Centroids: half a disc 4r/(3π) from its flat side; a square less a quarter disc
    /// r (10 − 3π) / (12 − 3π) from its corner along both sides; a triangle a third of each side from its right angle.
    pub fn added_area(self) -> (Area, Point) {
        let Self { at, leaves, turn } = self;
        let back = self.back();
        match turn {
            Turn::Sharp | Turn::Arc(_) => (Area::ZERO, at),
            Turn::Rounded(radius) | Turn::Fillet(radius) => {
                let sign = if matches!(turn, Turn::Rounded(_)) { -1.0 } else { 1.0 };
                let off = radius * ((10.0 - 3.0 * PI) / (12.0 - 3.0 * PI));
                (radius * radius * (sign * (1.0 - FRAC_PI_4)), leaves.from(back.from(at, off), off))
            }
            Turn::CutOff { back: long, ahead } => {
                (long * ahead / -2.0, leaves.from(back.from(at, long / 3.0), ahead / 3.0))
            }
            // The half disc lies beyond the wall, on the material's side: the left.
            Turn::Ahead(radius) => half_disc(leaves.from(at, radius), leaves.turned_left(), radius),
            Turn::Behind(radius) => half_disc(back.from(at, radius), back.turned_right(), radius),
            Turn::Across(radius) => {
                // The half disc beyond the chord, less the triangle that was free before.
                let (disc, triangle) = (FRAC_PI_2, 1.0);
                let (disc_at, triangle_at) = (4.0 / (3.0 * PI), 1.0 / 3.0);
                let towards = (disc * disc_at - triangle * triangle_at) / (disc - triangle);
                // The corner is r from the chord's middle, so r (1 − towards) from the centroid.
                let off = radius * ((1.0 - towards) / SQRT_2);
                (radius * radius * (triangle - disc), leaves.from(back.from(at, off), off))
            }
        }
    }
}

fn half_disc(middle: Point, into: Heading, radius: Length) -> (Area, Point) {
    (radius * radius * -FRAC_PI_2, into.from(middle, radius * (4.0 / (3.0 * PI))))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::outline::Outline;

    /// An L of 100 by 100 with its inside corner at (40, 40), run counter-clockwise.
    fn bracket(turn: Turn) -> (Outline, Bend) {
        let at = |u, v| Point::new(Length::mm(u), Length::mm(v));
        let inside = Bend { at: at(40.0, 40.0), leaves: Heading::Up, turn };
        let sharp = |u, v| Corner { at: at(u, v), bulge: 0.0 };
        let corners = [sharp(0.0, 0.0), sharp(100.0, 0.0), sharp(100.0, 40.0)];
        (
            Outline::through(
                corners.into_iter().chain(inside.corners()).chain([sharp(40.0, 100.0), sharp(0.0, 100.0)]),
            ),
            inside,
        )
    }

    /// What a turn says that it adds is what the outline's own measures find.
    #[test]
    fn turns_measure_what_their_outlines_do() {
        let radius = Length::mm(5.0);
        let (plain, _) = bracket(Turn::Sharp);
        let (plain_area, plain_at) = (plain.area().in_mm2(), plain.centroid());
        for turn in [Turn::Fillet(radius), Turn::Ahead(radius), Turn::Behind(radius), Turn::Across(radius)] {
            let (outline, bend) = bracket(turn);
            let (area, at) = bend.added_area();
            let close =
                |found: f64, expected: f64| assert!((found - expected).abs() < 1e-9, "{turn:?}: {found} {expected}");
            close(outline.area().in_mm2(), plain_area + area.in_mm2());
            close(outline.length().in_mm(), plain.length().in_mm() + bend.added_length().in_mm());
            let moment =
                |a: Length, b: Length| (plain_area * a.in_mm() + area.in_mm2() * b.in_mm()) / outline.area().in_mm2();
            close(outline.centroid().u.in_mm(), moment(plain_at.u, at.u));
            close(outline.centroid().v.in_mm(), moment(plain_at.v, at.v));
        }
    }

    /// Worked: a square of 100 whose corner at (100, 100) is cut off 8 back and 3 ahead loses 12 mm², 11 less √73 of its length.
    #[test]
    fn a_corner_cut_off_measures_what_its_outline_does() {
        let at = |u, v| Point::new(Length::mm(u), Length::mm(v));
        let turn = Turn::CutOff { back: Length::mm(8.0), ahead: Length::mm(3.0) };
        let bend = Bend { at: at(100.0, 100.0), leaves: Heading::Left, turn };
        let sharp = |u, v| Corner { at: at(u, v), bulge: 0.0 };
        let outline = Outline::through(
            [sharp(0.0, 0.0), sharp(100.0, 0.0)].into_iter().chain(bend.corners()).chain([sharp(0.0, 100.0)]),
        );
        let corners: Vec<_> = bend.corners().map(|corner| (corner.at.u.in_mm(), corner.at.v.in_mm())).collect();
        assert_eq!(corners, [(100.0, 92.0), (97.0, 100.0)]);
        let (area, centre) = bend.added_area();
        assert!((area.in_mm2() + 12.0).abs() < 1e-12 && (outline.area().in_mm2() - 9988.0).abs() < 1e-9);
        assert!((outline.length().in_mm() - 400.0 - bend.added_length().in_mm()).abs() < 1e-9);
        assert!((bend.added_length().in_mm() - (73.0_f64.sqrt() - 11.0)).abs() < 1e-12);
        let moment = (10_000.0 * 50.0 + area.in_mm2() * centre.u.in_mm()) / 9988.0;
        assert!((outline.centroid().u.in_mm() - moment).abs() < 1e-9, "{centre:?}");
    }

    /// Worked: a relief passes through the corner itself, so that a square part reaches it.
    #[test]
    fn a_relief_passes_through_its_corner() {
        let (outline, _) = bracket(Turn::Across(Length::mm(5.0)));
        let arc = outline.segments().find(|segment| segment.bulge != 0.0).unwrap();
        let middle = Point::new((arc.from.u + arc.to.u) / 2.0, (arc.from.v + arc.to.v) / 2.0);
        let apart = libm::hypot((middle.u - Length::mm(40.0)).in_mm(), (middle.v - Length::mm(40.0)).in_mm());
        assert!((apart - arc.radius().in_mm()).abs() < 1e-12 && (apart - 5.0).abs() < 1e-12, "{apart}");
    }
}
