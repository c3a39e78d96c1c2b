//! Dimension lines of the unit in the picture.

use glam::{Mat4, Vec3, vec3};

use crate::camera::in_picture;

/// A dimension line in the picture, from −1 to 1 to the right and up, and what it measures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dimension {
    /// Its ends.
    pub ends: [(f32, f32); 2],
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

/// Cosine of 28°: what runs nearer to the line of sight than that cannot be read.
const TOWARDS: f32 = 0.88;

/// Width and depth on the floor, or level with the top when seen from high above, and height at a
/// corner, each on the side that is seen; those that run towards the eye are left out.
pub fn dimensions(clip_from_stage: Mat4, eye: Vec3, size: Vec3) -> Vec<Dimension> {
    let depth = -size.z;
    let front = if eye.z > size.z / 2.0 { OFF } else { size.z - OFF };
    let (side, other) = if eye.x < size.x / 2.0 { (-OFF, size.x + OFF) } else { (size.x + OFF, -OFF) };
    let edge = if other < 0.0 { 0.0 } else { size.x };
    let beside = libm::hypotf(eye.x - size.x / 2.0, eye.z - size.z / 2.0);
    let level = if eye.y > beside * 2.0 { size.y } else { 0.0 };
    let lines = [
        (Measures::Width, vec3(0.0, level, front), vec3(size.x, level, front)),
        (Measures::Depth, vec3(side, level, 0.0), vec3(side, level, -depth)),
        (
            Measures::Height,
            vec3(edge + OFF * (edge - size.x / 2.0).signum(), 0.0, 0.0),
            vec3(edge + OFF * (edge - size.x / 2.0).signum(), size.y, 0.0),
        ),
    ];
    let seen = lines.into_iter().filter_map(|(measures, from, to)| {
        let ends = [in_picture(clip_from_stage, from)?, in_picture(clip_from_stage, to)?];
        let along = (to - from).normalize().dot((eye - (from + to) / 2.0).normalize());
        (along.abs() < TOWARDS).then_some(Dimension { ends, measures })
    });
    seen.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::camera::{Camera, Place};

    /// Whatever is seen square on is measured, what runs towards the eye is not.
    #[test]
    fn what_is_seen_is_measured() {
        let size = vec3(1.6, 0.5, -0.45);
        let (low, high) = (vec3(0.0, 0.0, size.z), vec3(size.x, size.y, 0.0));
        for (place, measured) in [
            (Place::Corner, &[Measures::Width, Measures::Depth, Measures::Height][..]),
            (Place::Front, &[Measures::Width, Measures::Height]),
            (Place::Above, &[Measures::Width, Measures::Depth]),
        ] {
            let camera = Camera::at(place, low, high, 1.5);
            let found = dimensions(camera.clip_from_stage(1.5), camera.eye(), size);
            let found: Vec<Measures> = found.into_iter().map(|line| line.measures).collect();
            assert_eq!(found, measured, "{place:?}");
        }
    }
}
