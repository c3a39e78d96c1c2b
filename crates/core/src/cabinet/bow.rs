//! A bowed end: the plates end in an arc, and narrow staves stand along it, each at its own angle.
//!
//! The arc rises over a chord as long as the plates are deep. The staves are chords of a smaller circle with the same
//! centre, evenly placed from front to rear: as many as the least gap between two of them lets stand. Behind them stands the
//! end upright, as far in as if the outermost staves stood behind the ends of the arc: they never reach further, and so its
//! place follows from the rise alone.

use crate::cabinet::panel::{Edge, EdgeBow, End};
use crate::geometry::outline::{Point, Segment};
use crate::geometry::space::{Aim, Lie, Placement, Spot};
use crate::range::Range;
use crate::units::quantity::{Area, Length};

/// A bowed end. What is measured along the width begins at the outermost point of its arc.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bow {
    /// How far the arc rises over its chord.
    pub rise: Length,
    /// Its chord: the depth of the upper plates.
    pub chord: Length,
    /// Its radius.
    pub radius: Length,
    /// From the centre of the arc to the outer faces of the staves.
    pub staves: Length,
    /// How many staves there are.
    pub count: u8,
    /// From one stave to the next, in radians.
    pub pitch: f64,
    /// Width of a stave.
    pub wide: Length,
    /// To the innermost corner of a stave.
    pub inner: Length,
    /// To the outer face of the end upright.
    pub upright: Length,
    /// From a stave to the end upright at least.
    pub behind: Length,
    /// How far the lower base plate stands back from the upper one.
    pub recess: Length,
}

impl Bow {
    /// That of a unit of that depth, its body parts of that thickness. Any rise but none, however absurd: [`Bow::has_room`]
    /// says whether staves stand.
    pub fn of(range: &Range, rise: Length, depth: Length, body: Length) -> Self {
        let (build, row) = (&range.build, &range.bow);
        let (s, c) = (rise.in_mm(), depth.in_mm());
        let radius = (c * c / 4.0 + s * s) / (2.0 * s);
        let (outer, half) = (radius - row.inset_mm.in_mm(), row.stave_mm.in_mm() / 2.0);
        let inner = outer - body.in_mm();
        // The corner of a stave at an angle φ that is furthest from the middle lies outer sin φ + half cos φ before it.
        let reach = c / 2.0 - build.front_inset_mm.in_mm();
        let last = arc_sine(reach / libm::hypot(outer, half)) - libm::atan2(half, outer);
        // The inner corners of two neighbours are 2 (inner sin φ/2 − half cos φ/2) apart.
        let least = (arc_sine(row.gap_mm.in_mm() / 2.0 / libm::hypot(inner, half)) + libm::atan2(half, inner)) * 2.0;
        let gaps = whole(last * 2.0 / least);
        let corner = Length::mm(radius - (inner * libm::cos(last) - half * libm::sin(last)));
        Self {
            rise,
            chord: depth,
            radius: Length::mm(radius),
            staves: Length::mm(outer),
            count: gaps.saturating_add(1),
            pitch: last * 2.0 / f64::from(gaps.max(1)),
            wide: row.stave_mm,
            inner: corner,
            upright: rise + row.inset_mm + body + row.behind_mm,
            behind: row.behind_mm,
            recess: build.foot_recess_mm,
        }
    }

    /// Whether its staves stand along no more than half a circle, two at least.
    pub(crate) fn has_room(&self) -> bool {
        let circle = self.rise > Length::ZERO && self.rise * 2.0 <= self.chord && self.pitch.is_finite();
        let within = self.inner + self.behind <= self.upright;
        circle && within && (2..STAVES_MOST).contains(&self.count) && self.staves >= self.wide
    }

    /// How far the chord of the lower base plate's arc lies from the outermost point of the upper one's: it has the same centre.
    fn lower_chord(&self) -> Length {
        let (radius, half) = ((self.radius - self.recess).in_mm(), (self.chord / 2.0 - self.recess).in_mm());
        self.radius - Length::mm(libm::sqrt((radius * radius - half * half).max(0.0)))
    }

    /// How far the rectangle of a plate lies from the outermost point: of the lower base plate, or of the others.
    pub(crate) fn plate_inset(&self, lower: bool) -> Length {
        if lower { self.lower_chord() } else { self.rise }
    }

    /// The bow of a plate: of the lower base plate, or of the others.
    pub(crate) fn of_plate(&self, end: End, lower: bool) -> EdgeBow {
        let edge = match end {
            End::Left => Edge::Left,
            End::Right => Edge::Right,
        };
        if lower {
            // It begins where the plate does, so far behind the others, and ends as far before the rear edge.
            let (to, rise) = (self.chord - self.recess * 2.0, self.lower_chord() - self.recess);
            return EdgeBow { edge, from: Length::ZERO, to, rise };
        }
        EdgeBow { edge, from: Length::ZERO, to: self.chord, rise: self.rise }
    }

    /// The area of a plate beyond its chord, and how far beyond it its centroid lies: of the lower base plate, or of the others.
    pub(crate) fn cap(&self, lower: bool) -> (Area, Length) {
        let EdgeBow { to, rise, .. } = self.of_plate(End::Right, lower);
        let corner = |v| Point::new(Length::ZERO, v);
        // As the outline of a right end runs.
        let arc = Segment { from: corner(Length::ZERO), to: corner(to), bulge: 2.0 * (rise / to) };
        let (area, centroid) = arc.cap();
        (area, centroid.u)
    }

    /// How far the edge of the lower base plate lies further in than its outermost point, so far behind the front of the unit.
    pub(crate) fn foot_within(&self, end: End, behind: Length) -> Length {
        let bow = self.of_plate(end, true);
        bow.rise - bow.out_at(behind - self.recess)
    }

    /// The angles of its staves from the front to the rear: none is straight out.
    pub fn angles(&self) -> impl Iterator<Item = f64> + use<> {
        let (pitch, middle) = (self.pitch, f64::from(self.count - self.count.min(1)) / 2.0);
        (0..self.count).map(move |at| (f64::from(at) - middle) * pitch)
    }

    /// Where the stave at an angle stands in a unit of that width, on a plate at that height.
    pub(crate) fn stave(&self, end: End, angle: f64, width: Length, over: Length) -> Placement {
        let (sine, cosine) = (libm::sin(angle), libm::cos(angle));
        let in_from = self.radius - self.staves * cosine;
        // Seen from outside its face lies to the right of its origin.
        let (aim, x) = match end {
            End::Left => (Aim { x: -sine, y: -cosine }, in_from),
            End::Right => (Aim { x: -sine, y: cosine }, width - in_from),
        };
        let y = self.chord / 2.0 + self.staves * sine;
        let half = self.wide / 2.0;
        Placement { origin: Spot::new(x - half * aim.x, y - half * aim.y, over), lie: Lie::Turned(aim) }
    }
}

/// More staves than that are no row.
const STAVES_MOST: u8 = 60;

fn arc_sine(sine: f64) -> f64 {
    libm::asin(sine.clamp(-1.0, 1.0))
}

/// The whole number below, from 0 to 255.
fn whole(number: f64) -> u8 {
    (0..u8::MAX).find(|whole| number < f64::from(*whole) + 1.0 - 1e-9).unwrap_or(u8::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::demo;

    fn bow(rise: f64, depth: f64) -> Bow {
        Bow::of(&demo(), Length::mm(rise), Length::mm(depth), Length::mm(18.0))
    }

    // Worked: rise 80 over a chord of 420: R = (210² + 80²) / 160 = 315.625. Faces of staves 44 wide at 291.625 and, 18
    // behind, 273.625. The last reaches to 21 before the front: asin(189 / √(291.625² + 22²)) − atan(22 / 291.625) =
    // 40.260° − 4.314° = 35.946°. Two are 2 (asin(2.5 / 274.508) + atan(22 / 273.625)) = 10.236° apart at least: 7 gaps.
    #[test]
    fn staves_stand_along_their_circle() {
        let bow = bow(80.0, 420.0);
        assert!((bow.radius.in_mm() - 315.625).abs() < 1e-9);
        assert_eq!(bow.count, 8);
        assert!((bow.pitch.to_degrees() - 71.892 / 7.0).abs() < 1e-3, "{}", bow.pitch.to_degrees());
        let last = 35.946_f64.to_radians();
        let corner = 315.625 - (273.625 * libm::cos(last) - 22.0 * libm::sin(last));
        assert!((bow.inner.in_mm() - corner).abs() < 5e-3, "{:?} {corner}", bow.inner);
        assert_eq!(bow.upright, Length::mm(80.0 + 24.0 + 18.0 + 22.0));
    }

    /// Read off the places of the staves themselves: equal gaps, none less than asked, corners within the plate and the
    /// innermost one where it is said, at both ends and for every rise.
    #[test]
    fn gaps_are_equal_and_corners_lie_where_they_are_said() {
        let (range, width) = (demo(), Length::mm(1500.0));
        for (rise, depth) in
            (1..=17).flat_map(|rise| [340.0, 420.0, 520.0].map(|depth| (f64::from(rise) * 10.0, depth)))
        {
            let bow = bow(rise, depth);
            assert!(bow.has_room(), "{bow:?}");
            let apart = |a: Spot, b: Spot| libm::hypot((a.x - b.x).in_mm(), (a.y - b.y).in_mm());
            for end in End::ALL {
                let placed: Vec<Placement> =
                    bow.angles().map(|angle| bow.stave(end, angle, width, Length::ZERO)).collect();
                let corner =
                    |place: &Placement, u: Length, deep: f64| place.spot(Point::new(u, Length::ZERO), Length::mm(deep));
                let gaps: Vec<f64> = placed
                    .windows(2)
                    .map(|pair| {
                        let ends = [(Length::ZERO, bow.wide), (bow.wide, Length::ZERO)];
                        ends.map(|(u, v)| apart(corner(&pair[0], u, 18.0), corner(&pair[1], v, 18.0)))
                            .into_iter()
                            .fold(f64::MAX, f64::min)
                    })
                    .collect();
                let (least, most) =
                    (gaps.iter().copied().fold(f64::MAX, f64::min), gaps.iter().copied().fold(0.0, f64::max));
                assert!(most - least < 1e-9 && least > range.bow.gap_mm.in_mm() - 1e-9, "{rise} {depth} {gaps:?}");
                let corners: Vec<Spot> = placed
                    .iter()
                    .flat_map(|place| [Length::ZERO, bow.wide].map(|u| [0.0, 18.0].map(|deep| corner(place, u, deep))))
                    .flatten()
                    .collect();
                let within = |x: Length| if end == End::Left { x } else { width - x };
                let inner = corners.iter().map(|spot| within(spot.x)).fold(Length::ZERO, Length::max);
                assert!((inner - bow.inner).abs() < Length::mm(1e-9), "{rise} {depth} {inner:?} {bow:?}");
                for spot in corners {
                    assert!(spot.y > range.build.front_inset_mm - Length::mm(1e-9), "{rise} {depth}");
                    assert!(Length::mm(depth) - spot.y > range.build.front_inset_mm - Length::mm(1e-9));
                    let centre = Spot::new(bow.radius, bow.chord / 2.0, Length::ZERO);
                    let out = apart(centre, Spot { x: within(spot.x), ..spot });
                    assert!(bow.radius.in_mm() - out > range.build.ligament_mm.in_mm(), "{rise} {depth}");
                }
            }
            // The lower base plate stays under the upper one.
            let (upper, lower) = (bow.of_plate(End::Left, false), bow.of_plate(End::Left, true));
            for v in (0..=40).map(|part| lower.to * (f64::from(part) / 40.0)) {
                let over = bow.plate_inset(false) - upper.out_at(v + bow.recess);
                let under = bow.plate_inset(true) - lower.out_at(v);
                assert!(under - over > bow.recess * 0.999, "{rise} {depth} {v:?}");
            }
        }
    }

    #[test]
    fn absurd_figures_are_no_bow() {
        for (rise, depth) in [(-5.0, 400.0), (300.0, 400.0), (50.0, 0.0), (1e9, 1e9), (1.0, 50.0), (20.0, -400.0)] {
            assert!(!bow(rise, depth).has_room(), "{rise} {depth}");
        }
    }
}
