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

/// Width and depth on the floor and height at a corner, each on the side that is seen; those that run
/// towards the eye are left out.
pub fn dimensions(clip_from_stage: Mat4, eye: Vec3, size: Vec3) -> Vec<Dimension> {
    let depth = -size.z;
    let front = if eye.z > size.z / 2.0 { OFF } else { size.z - OFF };
    let (side, other) = if eye.x < size.x / 2.0 { (-OFF, size.x + OFF) } else { (size.x + OFF, -OFF) };
    let edge = if other < 0.0 { 0.0 } else { size.x };
    let lines = [
        (Measures::Width, vec3(0.0, 0.0, front), vec3(size.x, 0.0, front)),
        (Measures::Depth, vec3(side, 0.0, 0.0), vec3(side, 0.0, -depth)),
        (
            Measures::Height,
            vec3(edge + OFF * (edge - size.x / 2.0).signum(), 0.0, 0.0),
            vec3(edge + OFF * (edge - size.x / 2.0).signum(), size.y, 0.0),
        ),
    ];
    let seen = lines.into_iter().filter_map(|(measures, from, to)| {
        let ends = [in_picture(clip_from_stage, from)?, in_picture(clip_from_stage, to)?];
        let long = libm::hypotf(ends[0].0 - ends[1].0, ends[0].1 - ends[1].1);
        (long > 0.12).then_some(Dimension { ends, measures })
    });
    seen.collect()
}
