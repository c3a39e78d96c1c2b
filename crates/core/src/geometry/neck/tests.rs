//! Worked shapes, and slow twins: rays against polygons of many corners, distances between dense samples.

use proptest::prelude::*;

use super::*;
use crate::geometry::outline::Corner;

fn at(u: f64, v: f64) -> Point {
    Point::new(Length::mm(u), Length::mm(v))
}

/// An outline through corners, each with the bulge of what follows it.
fn outline(corners: &[(f64, f64, f64)]) -> Outline {
    Outline::through(corners.iter().map(|(u, v, bulge)| Corner { at: at(*u, *v), bulge: *bulge }))
}

fn board(width: f64, height: f64) -> Outline {
    Outline::rectangle(at(0.0, 0.0), at(width, height))
}

fn bore(u: f64, v: f64, diameter: f64) -> Outline {
    Outline::circle(at(u, v), Length::mm(diameter)).reversed()
}

fn found(outlines: &[Outline], width: f64) -> Vec<Neck> {
    necks(outlines, Length::mm(width))
}

fn check(outlines: &[Outline], width: f64, kind: NeckKind, expected: (f64, f64)) {
    let all = found(outlines, width);
    assert!(!all.is_empty() && all.iter().all(|neck| neck.kind == kind), "{all:?}");
    let least = all.iter().map(|neck| neck.width.in_mm()).fold(f64::MAX, f64::min);
    let length = all.iter().map(|neck| neck.length.in_mm()).fold(0.0, f64::max);
    assert!((least - expected.0).abs() < 1e-6 && (length - expected.1).abs() < 1e-6, "{all:?}");
}

// Two holes of 20 mm, 26 mm apart: 6 mm of wood. A ray that leaves one at an angle φ goes 7 mm to the other where
// 17² + 26² − 2 · 17 · 26 cos φ = 10², so φ = 11.93°, both ways: 2 · 10 φ = 4.164 mm.
#[test]
fn wood_between_two_holes_is_a_ligament() {
    let cosine: f64 = (17.0 * 17.0 + 26.0 * 26.0 - 100.0) / (2.0 * 17.0 * 26.0);
    let holes = [board(120.0, 80.0), bore(40.0, 40.0, 20.0), bore(66.0, 40.0, 20.0)];
    check(&holes, 7.0, NeckKind::Ligament, (6.0, 20.0 * libm::acos(cosine)));
    assert_eq!(found(&holes, 6.0 - 1e-9), []);
}

// A slot of 30 × 18 mm, 12 mm before the edge. One that is turned by 45° comes as near with a corner alone.
#[test]
fn wood_between_a_slot_and_an_edge_is_a_ligament() {
    let slot = Outline::rectangle(at(40.0, 12.0), at(70.0, 30.0)).reversed();
    check(&[board(120.0, 80.0), slot], 15.0, NeckKind::Ligament, (12.0, 30.0));
    let half = 0.5_f64.sqrt();
    let turn = |p: Point| at((p.u.in_mm() - p.v.in_mm()) * half + 60.0, (p.u.in_mm() + p.v.in_mm()) * half + 12.0);
    let turned = board(20.0, 20.0).moved(turn).reversed();
    // Below the corner the edge is nearer than 15 mm over 3 mm at both sides.
    check(&[board(120.0, 80.0), turned], 15.0, NeckKind::Ligament, (12.0, 6.0));
}

// Two slots, corner to corner: 3 mm beside and 4 mm over each other.
#[test]
fn two_corners_face_each_other() {
    let slots = [board(120.0, 80.0), board(20.0, 20.0), board(20.0, 20.0)];
    let [board, one, two] = slots;
    let (one, two) = (
        one.moved(|p| at(p.u.in_mm() + 20.0, p.v.in_mm() + 20.0)),
        two.moved(|p| at(p.u.in_mm() + 43.0, p.v.in_mm() + 44.0)),
    );
    check(&[board, one.reversed(), two.reversed()], 8.0, NeckKind::Ligament, (5.0, 0.0));
}

/// A comb of two prongs of 10 mm on a board of 80 × 40 mm, 30 mm between them.
fn comb(long: f64) -> Outline {
    let tip = 40.0 + long;
    let prongs =
        [(60.0, 40.0), (60.0, tip), (50.0, tip), (50.0, 40.0), (20.0, 40.0), (20.0, tip), (10.0, tip), (10.0, 40.0)];
    let corners: Vec<_> =
        [(0.0, 0.0), (80.0, 0.0), (80.0, 40.0)].into_iter().chain(prongs).chain([(0.0, 40.0)]).collect();
    outline(&corners.iter().map(|(u, v)| (*u, *v, 0.0)).collect::<Vec<_>>())
}

#[test]
fn prongs_are_strips_if_they_are_longer_than_wide() {
    check(&[comb(30.0)], 12.0, NeckKind::Strip, (10.0, 30.0));
    check(&[comb(10.1)], 12.0, NeckKind::Strip, (10.0, 10.1));
    check(&[comb(9.9)], 12.0, NeckKind::Stub, (10.0, 9.9));
    assert_eq!(found(&[comb(9.9)], 12.0).len(), 4, "each prong from both sides");
}

/// A board of 60 × 30 mm with a hook at its right edge: a neck of 24 mm, 12 mm long, a nose of 20 mm that rises so far over it.
fn hook(rise: f64) -> Outline {
    let corners = [
        (0.0, 0.0),
        (60.0, 0.0),
        (60.0, 40.0),
        (92.0, 40.0),
        (92.0, 64.0 + rise),
        (72.0, 64.0 + rise),
        (72.0, 64.0),
        (60.0, 64.0),
        (60.0, 120.0),
        (0.0, 120.0),
    ];
    outline(&corners.map(|(u, v)| (u, v, 0.0)))
}

#[test]
fn the_nose_of_a_hook_is_a_stub_while_it_is_no_longer_than_wide() {
    check(&[hook(20.0)], 22.0, NeckKind::Stub, (20.0, 20.0));
    check(&[hook(25.0)], 22.0, NeckKind::Strip, (20.0, 25.0));
}

// The upper edge of a board of 100 × 60 mm is an arc that comes down to 40 mm: (50² + 20²) / 40 = 72.5 mm of radius. It is lower
// than 41 mm over 2 √(72.5² − 71.5²) = 24 mm of the lower edge, and lower than 45 mm over 52.9.
#[test]
fn an_arc_over_a_line_leaves_a_waist() {
    let waist = outline(&[(0.0, 0.0, 0.0), (100.0, 0.0, 0.0), (100.0, 60.0, -0.4), (0.0, 60.0, 0.0)]);
    let below = |width| {
        let all = found(core::slice::from_ref(&waist), width);
        let lower = all.iter().find(|neck| neck.chord[0].v == Length::ZERO).unwrap();
        assert!((lower.width.in_mm() - 40.0).abs() < 1e-9);
        (lower.kind, lower.length.in_mm())
    };
    let ((kind, length), (longer, more)) = (below(41.0), below(45.0));
    assert!(kind == NeckKind::Ligament && (length - 24.0).abs() < 1e-6, "{kind:?} {length}");
    assert!(longer == NeckKind::Strip && (more - 2.0 * 700_f64.sqrt()).abs() < 1e-6, "{longer:?} {more}");
}

// A tip that grows by a fifth of its length is narrower than 8 mm over 40 mm of its lower edge.
#[test]
fn a_tip_goes_down_to_nothing() {
    let tip = outline(&[(0.0, 0.0, 0.0), (100.0, 0.0, 0.0), (0.0, 20.0, 0.0)]);
    let all = found(&[tip], 8.0);
    assert!(all.iter().all(|neck| neck.width.in_mm() < 1e-6), "{all:?}");
    // The other corner, of 78.7°, is wider than long.
    assert!(all.iter().all(|neck| (neck.kind == NeckKind::Strip) == (neck.chord[0].u > Length::mm(50.0))), "{all:?}");
    assert!(all.iter().any(|neck| (neck.length.in_mm() - 40.0).abs() < 1e-6), "{all:?}");
    // A square corner is no narrow place.
    assert_eq!(found(&[board(50.0, 50.0)], 49.0), []);
}

#[test]
fn a_button_is_as_wide_as_its_diameter() {
    let button = [Outline::circle(at(5.0, 5.0), Length::mm(10.0))];
    let [neck] = &found(&button, 12.0)[..] else { panic!("one once round") };
    assert!((neck.width.in_mm() - 10.0).abs() < 1e-9, "{neck:?}");
    assert!((neck.length.in_mm() - 10.0 * core::f64::consts::PI).abs() < 1e-9, "{neck:?}");
    assert_eq!(found(&button, 9.99), []);
}

#[test]
fn nothing_is_narrow_where_there_is_nothing() {
    assert_eq!(found(&[], 10.0), []);
    assert_eq!(found(&[Outline::default()], 10.0), []);
}

/// An outline as a polygon: arcs as so many chords for half a circle and more for more.
fn polygon(outline: &Outline) -> Vec<(f64, f64)> {
    let mut all = Vec::new();
    for segment in outline.segments() {
        let (from, to) = (segment.from, segment.to);
        let (chord_u, chord_v) = ((to.u - from.u).in_mm(), (to.v - from.v).in_mm());
        let parts = if segment.bulge == 0.0 { 1 } else { 400 };
        for part in 0..parts {
            // Each point sees the chord under the same angle; by the bulge of the first part of it.
            let share = f64::from(part) / f64::from(parts);
            let angle = 2.0 * libm::atan(segment.bulge);
            let (sine, whole) = (libm::sin(angle * share), libm::sin(angle));
            let scale = if segment.bulge == 0.0 { 0.0 } else { sine / whole };
            // The chord of the first part is turned by what is left of the angle.
            let turn = -angle * (1.0 - share);
            let (cosine, sine) = (libm::cos(turn), libm::sin(turn));
            all.push((
                from.u.in_mm() + scale * (chord_u * cosine - chord_v * sine),
                from.v.in_mm() + scale * (chord_u * sine + chord_v * cosine),
            ));
        }
    }
    all
}

/// How far a place is from the sides of a polygon.
fn off((u, v): (f64, f64), polygon: &[(f64, f64)]) -> f64 {
    let sides = polygon.iter().zip(polygon.iter().cycle().skip(1));
    let each = sides.map(|(a, b)| {
        let (along, to) = ((b.0 - a.0, b.1 - a.1), (u - a.0, v - a.1));
        let share = ((along.0 * to.0 + along.1 * to.1) / (along.0 * along.0 + along.1 * along.1)).clamp(0.0, 1.0);
        libm::hypot(to.0 - along.0 * share, to.1 - along.1 * share)
    });
    each.fold(f64::MAX, f64::min)
}

/// How far a ray goes to a polygon, beyond where it begins.
fn far(polygons: &[Vec<(f64, f64)>], from: (f64, f64), ahead: (f64, f64)) -> f64 {
    let mut least = f64::MAX;
    for polygon in polygons {
        for (a, b) in polygon.iter().zip(polygon.iter().cycle().skip(1)) {
            let (along, to) = ((b.0 - a.0, b.1 - a.1), (a.0 - from.0, a.1 - from.1));
            let crossed = ahead.0 * along.1 - ahead.1 * along.0;
            let (distance, share) =
                ((to.0 * along.1 - to.1 * along.0) / crossed, (to.0 * ahead.1 - to.1 * ahead.0) / crossed);
            if distance > 0.02 && (0.0..=1.0).contains(&share) {
                least = least.min(distance);
            }
        }
    }
    least
}

/// The least chord, and the length of outline along which chords are shorter than `width`, by rays from the polygons' sides and
/// from their inside corners.
fn sampled(outlines: &[Outline], width: f64) -> (f64, f64) {
    let polygons: Vec<_> = outlines.iter().map(polygon).collect();
    let (mut least, mut length) = (f64::MAX, 0.0);
    let mut look = |from, angle: f64, counts: f64| {
        let size = far(&polygons, from, (libm::cos(angle), libm::sin(angle)));
        least = least.min(size);
        length += if size < width { counts } else { 0.0 };
    };
    for polygon in &polygons {
        let sides: Vec<_> = polygon.iter().copied().zip(polygon.iter().copied().cycle().skip(1)).collect();
        let angle = |(a, b): ((f64, f64), (f64, f64))| libm::atan2(b.1 - a.1, b.0 - a.0);
        for (side, before) in sides.iter().zip(sides.iter().cycle().skip(sides.len() - 1)) {
            let (a, b) = *side;
            let long = libm::hypot(b.0 - a.0, b.1 - a.1);
            let parts = (long / 0.1).ceil().max(1.0);
            let into = angle(*side) + core::f64::consts::FRAC_PI_2;
            let mut part = 0.5;
            while part < parts {
                let share = part / parts;
                look((a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share), into, long / parts);
                part += 1.0;
            }
            // Chords of an arc turn by less than a degree.
            let turn = libm::remainder(angle(*before) - angle(*side), core::f64::consts::TAU);
            if turn > 0.02 {
                (0..=160).for_each(|part| look(a, into + turn * f64::from(part) / 160.0, 0.0));
            }
        }
    }
    (least, length)
}

/// A board with notches and tabs along its upper edge, and holes in a row that may be turned.
fn shapes() -> impl Strategy<Value = Vec<Outline>> {
    let teeth = prop::collection::vec((4.0..14.0_f64, 4.0..14.0_f64, -18.0..25.0_f64), 0..4);
    let holes = prop::collection::vec((0u8..3, 4.0..24.0_f64, 6.0..20.0_f64, 0.0..3.0_f64, 0.0..9.0_f64), 0..4);
    (teeth, holes, -0.3..0.3_f64).prop_map(|(teeth, holes, bulge)| {
        let mut corners = vec![(0.0, 0.0, bulge.max(0.0)), (120.0, 0.0, 0.0), (120.0, 70.0, 0.0)];
        let mut left = 120.0;
        for (gap, wide, out) in teeth {
            left -= gap;
            corners.extend([
                (left, 70.0, 0.0),
                (left, 70.0 + out, 0.0),
                (left - wide, 70.0 + out, 0.0),
                (left - wide, 70.0, 0.0),
            ]);
            left -= wide;
        }
        corners.push((0.0, 70.0, 0.0));
        let mut all = vec![outline(&corners)];
        let mut begin = 1.0;
        for (kind, wide, high, turn, gap) in holes {
            let reach = libm::hypot(wide, high) / 2.0;
            let middle = (begin + gap + reach, 26.0 + gap);
            if middle.0 + reach > 119.0 {
                break;
            }
            begin = middle.0 + reach;
            all.push(match kind {
                0 => bore(middle.0, middle.1, reach * 2.0),
                1 => Outline::stadium(
                    at(middle.0, middle.1),
                    Length::mm(wide.max(high) + 0.5),
                    Length::mm(wide.min(high)),
                )
                .reversed(),
                _ => {
                    let (cosine, sine) = (libm::cos(turn), libm::sin(turn));
                    let place = |p: Point| {
                        let (u, v) = (p.u.in_mm() - wide / 2.0, p.v.in_mm() - high / 2.0);
                        at(middle.0 + u * cosine - v * sine, middle.1 + u * sine + v * cosine)
                    };
                    board(wide, high).moved(place).reversed()
                }
            });
        }
        all
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// The slow twin finds the same least chord and the same length of narrow outline.
    #[test]
    fn rays_against_polygons_find_the_same(outlines in shapes(), width in 3.0..20.0_f64) {
        let all = found(&outlines, width);
        let (least, length) = sampled(&outlines, width);
        let exact = all.iter().map(|neck| neck.width.in_mm()).fold(f64::MAX, f64::min);
        if least < width - 0.05 || exact < width - 0.05 {
            prop_assert!((exact - least).abs() < 0.05, "{exact} {least} {all:?}");
        }
        let sum: f64 = all.iter().map(|neck| neck.length.in_mm()).sum();
        // Each end of a stretch is found to a step.
        prop_assert!((sum - length).abs() < 0.2 + 0.2 * f64::from(u16::try_from(all.len()).unwrap()), "{sum} {length} {all:?}");
    }

    /// The narrowest wood between two outlines is as wide as their polygons are apart: from a corner of one to a side of the other.
    #[test]
    fn ligaments_are_as_wide_as_outlines_are_apart(outlines in shapes()) {
        let polygons: Vec<_> = outlines.iter().map(polygon).collect();
        let others = |one| polygons.iter().enumerate().filter(move |(other, _)| *other != one).map(|(_, other)| other);
        let corners = polygons.iter().enumerate().flat_map(|(one, polygon)| polygon.iter().map(move |at| (one, *at)));
        let apart = corners.flat_map(|(one, at)| others(one).map(move |other| off(at, other))).fold(f64::MAX, f64::min);
        let ligaments = found(&outlines, 25.0).into_iter().filter(|neck| {
            let on = neck.chord.map(|at| {
                let at = (at.u.in_mm(), at.v.in_mm());
                polygons.iter().position(|polygon| off(at, polygon) < 1e-3)
            });
            on[0] != on[1]
        });
        let exact = ligaments.inspect(|neck| assert_eq!(neck.kind, NeckKind::Ligament)).map(|neck| neck.width.in_mm());
        let exact = exact.fold(f64::MAX, f64::min);
        if apart.min(exact) < 24.9 {
            prop_assert!((exact - apart).abs() < 2e-3, "{exact} {apart}");
        }
    }
}
