//! Dimension lines of the unit in the picture.

use glam::{Mat4, Vec3, vec3};

use crate::bounds::Bounds;
use crate::camera::in_picture;

/// A dimension line in the picture, from −1 to 1 to the right and up, and what it measures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dimension {
    /// Its ends.
    pub ends: [(f32, f32); 2],
    /// The points of the unit between which it measures, each beside its end.
    pub points: [(f32, f32); 2],
    /// What it measures.
    pub measures: Measures,
}

/// What a dimension measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measures {
    /// Overall width.
    Width,
    /// Overall height.
    Height,
    /// Overall depth.
    Depth,
}

/// Clear of the unit by so many metres.
const OFF: f32 = 0.06;

/// Tangent of 8°: nobody sees how far something stands before a unit from so little above.
const FLAT: f32 = 0.14;

/// Cosine of 28°: what runs nearer to the line of sight than that cannot be read.
const TOWARDS: f32 = 0.88;

/// Dimension lines of a unit of that size; a box goes round all that is shown of it, its open doors too.
///
/// Width and depth on the floor, or level with the top when seen from high above, each on the side that
/// is seen, and height beside the corner that is outermost in the picture, clear of the box; those that run towards the
/// eye are left out.
pub fn dimensions(clip_from_stage: Mat4, eye: Vec3, size: Vec3, bounds: Bounds) -> Vec<Dimension> {
    let middle = vec3(size.x, 0.0, size.z) / 2.0;
    let (front, before) = if eye.z > middle.z { (0.0, OFF) } else { (size.z, -OFF) };
    let (side, beside, other) = if eye.x < middle.x { (0.0, -OFF, size.x) } else { (size.x, OFF, 0.0) };
    let from = (middle - eye).with_y(0.0);
    let level = if eye.y > from.length() * 2.0 { size.y } else { 0.0 };
    // Seen level, the floor is a line: what stands before the unit there stands below it instead.
    let flat = (eye.y - size.y / 2.0).abs() < from.length() * FLAT;
    let aside = |off: Vec3| if flat { vec3(0.0, -OFF, 0.0) } else { off };
    let mut lines = vec![
        (Measures::Width, [vec3(0.0, level, front), vec3(size.x, level, front)], aside(vec3(0.0, 0.0, before))),
        (Measures::Depth, [vec3(side, level, 0.0), vec3(side, level, size.z)], aside(vec3(beside, 0.0, 0.0))),
    ];
    // To the right in the picture; the height keeps away from the depth.
    let right = vec3(-from.z, 0.0, from.x).normalize_or_zero();
    let away = right * right.dot(vec3(other, 0.0, middle.z) - middle).signum();
    let far = |at: Vec3| (at - eye).dot(from).max(1e-3);
    let sideways = |at: Vec3| (at - eye).dot(away) / far(at);
    let corners = [(0.0, 0.0), (size.x, 0.0), (0.0, size.z), (size.x, size.z)].map(|(x, z)| vec3(x, 0.0, z));
    if let Some(corner) = corners.into_iter().max_by(|one, two| sideways(*one).total_cmp(&sideways(*two))) {
        // As far away as an open door that is nearer to the eye is seen.
        let most = bounds.corners().map(sideways).fold(sideways(corner), f32::max);
        let off = away * ((most - sideways(corner)) * far(corner) + OFF);
        lines.push((Measures::Height, [corner, corner.with_y(size.y)], off));
    }
    let seen = lines.into_iter().filter_map(|(measures, [from, to], off)| {
        let both = |off: Vec3| Some([in_picture(clip_from_stage, from + off)?, in_picture(clip_from_stage, to + off)?]);
        let along = (to - from).normalize().dot((eye - off - (from + to) / 2.0).normalize());
        (along.abs() < TOWARDS).then_some(Dimension { ends: both(off)?, points: both(Vec3::ZERO)?, measures })
    });
    seen.collect()
}

/// Between a dimension line and its figure, in pixels.
const CLEAR: f32 = 4.0;

/// Where the middle of a figure stands that is half so wide and high: clear of its line, on the side away from the points
/// of the unit that it measures, or on the line if the picture of that extent has no room there; `None` where the line is the
/// shorter of both. All in pixels.
pub fn figure_place(
    [from, to]: [(f32, f32); 2],
    points: [(f32, f32); 2],
    half: (f32, f32),
    extent: (f32, f32),
) -> Option<(f32, f32)> {
    let between = |[one, other]: [(f32, f32); 2]| (f32::midpoint(one.0, other.0), f32::midpoint(one.1, other.1));
    let (middle, measured) = (between([from, to]), between(points));
    let (along, down) = (to.0 - from.0, to.1 - from.1);
    let long = along.hypot(down).max(1.0);
    let across = (-down / long, along / long);
    let away = (middle.0 - measured.0) * across.0 + (middle.1 - measured.1) * across.1;
    let off = (across.0.abs() * half.0 + across.1.abs() * half.1 + CLEAR).copysign(away);
    let place = (middle.0 + across.0 * off, middle.1 + across.1 * off);
    let within = |at: f32, half: f32, extent: f32| at - half >= 0.0 && at + half <= extent;
    let has_room = within(place.0, half.0, extent.0) && within(place.1, half.1, extent.1);
    if has_room { Some(place) } else { (long >= 2.0 * half.0.max(half.1)).then_some(middle) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::camera::{Camera, Place};

    /// Whatever is seen square on is measured, what runs towards the eye is not.
    #[test]
    fn what_is_seen_is_measured() {
        let size = vec3(1.6, 0.5, -0.45);
        let bounds = Bounds { low: vec3(0.0, 0.0, size.z), high: vec3(size.x, size.y, 0.0) };
        for (place, measured) in [
            (Place::Corner, &[Measures::Width, Measures::Depth, Measures::Height][..]),
            (Place::Front, &[Measures::Width, Measures::Height]),
            (Place::Above, &[Measures::Width, Measures::Depth]),
        ] {
            let camera = Camera::at(place, bounds, 1.5);
            let found = dimensions(camera.clip_from_stage(1.5), camera.eye(), size, bounds);
            let found: Vec<Measures> = found.into_iter().map(|line| line.measures).collect();
            assert_eq!(found, measured, "{place:?}");
        }
    }

    /// From all sides, near and far, the height stands clear of the unit in the picture.
    #[test]
    fn the_height_never_lies_over_the_unit() {
        let size = vec3(1.6, 0.5, -0.45);
        let shut = Bounds { low: vec3(0.0, 0.0, size.z), high: vec3(size.x, size.y, 0.0) };
        let open = Bounds { low: vec3(-0.04, 0.0, size.z), high: vec3(size.x, size.y, 0.5) };
        for (turn, bounds) in (0..72u8).flat_map(|turn| [(turn, shut), (turn, open)]) {
            for (above, nearer) in [(0.0, 1.0), (0.0, 1.5), (0.4, 1.0), (0.8, 0.6)] {
                let camera = Camera { round: f32::from(turn) * 0.0873, above, ..Camera::at(Place::Front, bounds, 1.5) };
                let camera = camera.fitted(bounds, 1.5).nearer(nearer);
                let matrix = camera.clip_from_stage(1.5);
                let found = dimensions(matrix, camera.eye(), size, bounds);
                let height = found.iter().find(|line| line.measures == Measures::Height).unwrap();
                let [(x, _), (other, _)] = height.ends;
                let across = bounds.corners().map(|corner| in_picture(matrix, corner).unwrap().0);
                let (left, right) = across.fold((f32::MAX, f32::MIN), |(low, high), x| (low.min(x), high.max(x)));
                let clear = |x: f32| x < left || x > right;
                assert!(clear(x.midpoint(other)), "{turn} {above} {nearer}: {x} {other} in {left} {right}");
            }
        }
    }
    /// From all sides a figure stands off its line, farther from the unit than the line; on the line where the picture
    /// ends, if that is long enough for it.
    #[test]
    fn a_figure_stands_clear_of_its_line() {
        let (extent, half) = ((600.0, 400.0), (20.0, 6.0));
        for turn in 0..36u8 {
            let round = f32::from(turn) * core::f32::consts::PI / 18.0;
            let at = |along: f32, off: f32| {
                let (sin, cos) = (libm::sinf(round), libm::cosf(round));
                (300.0 + along * cos - off * sin, 200.0 + along * sin + off * cos)
            };
            let (line, points) = ([at(-90.0, 30.0), at(90.0, 30.0)], [at(-80.0, 0.0), at(100.0, 0.0)]);
            let (x, y) = figure_place(line, points, half, extent).unwrap();
            // How far the corner of its box that is nearest to the line is beyond that.
            let (sin, cos) = (libm::sinf(round), libm::cosf(round));
            let off = (y - 200.0) * cos - (x - 300.0) * sin - 30.0;
            let beyond = off - sin.abs() * half.0 - cos.abs() * half.1;
            assert!((beyond - CLEAR).abs() < 0.01, "{turn}: {beyond}");
            let narrow = (150.0, 400.0);
            assert_eq!(figure_place(line, points, (91.0, 6.0), narrow), None, "{turn}");
            let (x, y) = figure_place(line, points, (89.0, 6.0), narrow).unwrap();
            assert!((x - at(0.0, 30.0).0).abs() < 0.01 && (y - at(0.0, 30.0).1).abs() < 0.01, "{turn}: {x} {y}");
        }
    }
}
