//! Where a part can be seen: it may lie behind others.

use glam::{Mat4, Vec3};

use crate::bounds::Bounds;

/// A part as it stands: round it where it belongs, and what takes its points to where they are seen.
pub type Standing = (Bounds, Mat4);

/// Points along each side of a face that are looked at.
const POINTS: u8 = 4;

/// The point of a part in the midst of what is seen of it, and how many of its points are seen; `None` if others
/// hide it. Parts are taken to be their boxes.
pub fn seen(parts: &[Standing], which: usize, eye: Vec3) -> Option<(Vec3, usize)> {
    let (bounds, stand) = *parts.get(which)?;
    let own_eye = stand.inverse().transform_point3(eye);
    let others: Vec<(Bounds, Mat4, Vec3)> = parts
        .iter()
        .enumerate()
        .filter(|(at, _)| *at != which)
        .map(|(_, (bounds, stand))| (*bounds, stand.inverse(), stand.inverse().transform_point3(eye)))
        .collect();
    let points = faced(bounds, own_eye).map(|point| stand.transform_point3(point));
    let free = |point: &Vec3| {
        let hides = |(bounds, back, eye): &(Bounds, Mat4, Vec3)| crosses(*bounds, back.transform_point3(*point), *eye);
        !others.iter().any(hides)
    };
    let seen: Vec<Vec3> = points.filter(free).collect();
    #[expect(clippy::cast_precision_loss, reason = "a few dozen")]
    let middle = seen.iter().sum::<Vec3>() / seen.len() as f32;
    let best = seen.iter().copied().min_by(|a, b| a.distance(middle).total_cmp(&b.distance(middle)))?;
    Some((best, seen.len()))
}

/// Points of those faces of a box that are turned towards the eye.
fn faced(bounds: Bounds, eye: Vec3) -> impl Iterator<Item = Vec3> {
    let Bounds { low, high } = bounds;
    let side = (high - low) / f32::from(POINTS);
    let along = |at: u8| f32::from(at) + 0.5;
    let grid = move || (0..POINTS).flat_map(|one| (0..POINTS).map(move |other| (one, other)));
    (0..3usize)
        .filter_map(move |axis| {
            let (at, from, to) = (eye[axis], low[axis], high[axis]);
            let face = if at > to {
                to
            } else if at < from {
                from
            } else {
                return None;
            };
            Some(grid().map(move |(one, other)| {
                let mut point = low;
                let (first, second) = ((axis + 1) % 3, (axis + 2) % 3);
                point[axis] = face;
                point[first] += side[first] * along(one);
                point[second] += side[second] * along(other);
                point
            }))
        })
        .flatten()
}

/// Whether the line between two points passes through a box.
fn crosses(bounds: Bounds, from: Vec3, to: Vec3) -> bool {
    let way = to - from;
    let (one, other) = ((bounds.low - from) / way, (bounds.high - from) / way);
    let (enters, leaves) = (one.min(other).max_element(), one.max(other).min_element());
    // A little way from the point: boxes touch each other.
    enters.max(1e-4) < leaves.min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    const EYE: Vec3 = Vec3::new(0.5, 0.5, 10.0);

    fn plate(z: f32, from: f32, to: f32) -> Standing {
        (Bounds { low: Vec3::new(from, 0.0, z - 0.1), high: Vec3::new(to, 1.0, z) }, Mat4::IDENTITY)
    }

    #[test]
    fn what_is_behind_another_part_is_seen_beside_it_or_not_at_all() {
        let parts = [plate(0.0, 0.0, 1.0), plate(1.0, -0.2, 0.6), plate(0.5, 0.1, 0.4)];
        let (point, count) = seen(&parts, 0, EYE).unwrap();
        assert!(point.x > 0.6 && point.z.abs() < 1e-6 && count == 8, "{point} {count}");
        assert_eq!(seen(&parts, 1, EYE).unwrap().1, 16);
        assert_eq!(seen(&parts, 2, EYE), None);
        // Drawn aside, the hidden one comes into sight.
        let mut apart = parts;
        apart[2].1 = Mat4::from_translation(Vec3::new(0.0, 2.0, 0.0));
        assert!(seen(&apart, 2, EYE).unwrap().0.y > 2.0);
    }
}
