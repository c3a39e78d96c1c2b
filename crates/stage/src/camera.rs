//! The camera: it goes round a target at a distance.

use glam::camera::rh::proj::opengl;
use glam::camera::rh::view::look_at_mat4;
use glam::{Mat4, Vec3, Vec4Swizzles, vec3};

/// Angle of sight from top to bottom, in radians: 30°, close to how furniture is photographed.
const SIGHT: f32 = 0.52;

/// Share of the picture that a unit fills: dimension lines want the rest.
const FILLED: f32 = 0.84;

/// Where the camera stands and what it looks at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Camera {
    /// Round the unit, in radians; 0 stands before its front, positive to its right.
    pub round: f32,
    /// Above the level, in radians.
    pub above: f32,
    /// Distance to the target in metres.
    pub distance: f32,
    /// What it looks at.
    pub target: Vec3,
}

/// Standard places of the camera.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// Before the left front corner.
    Corner,
    /// Before the front.
    Front,
    /// Above.
    Above,
}

impl Camera {
    /// A standard place from which a box of that size fills the picture.
    pub fn at(place: Place, low: Vec3, high: Vec3, aspect: f32) -> Self {
        let (round, above) = match place {
            Place::Corner => (-0.6, 0.36),
            Place::Front => (0.0, 0.06),
            Place::Above => (0.0, 1.5),
        };
        Self { round, above, distance: 1.0, target: (low + high) / 2.0 }.fitted(low, high, aspect)
    }

    /// The same direction from so far that a box fits the picture.
    #[must_use]
    pub fn fitted(self, low: Vec3, high: Vec3, aspect: f32) -> Self {
        let back = self.back();
        let right = vec3(libm::cosf(self.round), 0.0, -libm::sinf(self.round));
        let up = back.cross(right);
        let middle = (low + high) / 2.0;
        let tangent = libm::tanf(SIGHT / 2.0) * FILLED;
        // Each corner c lies between the two planes of sight if |c − eye| ≤ tan · depth, which is linear in
        // the eye's place: the outermost corners of both sides give the nearest eye and its place between.
        let between = |across: Vec3, tangent: f32| {
            let side = |way: f32| {
                let reach = |corner: Vec3| way * (corner - middle).dot(across) + tangent * (corner - middle).dot(back);
                corners(low, high).map(reach).fold(f32::NEG_INFINITY, f32::max)
            };
            let (more, less) = (side(1.0), side(-1.0));
            ((more + less) / (2.0 * tangent), across * ((more - less) / 2.0))
        };
        let ((wide, aside), (tall, upwards)) = (between(right, tangent * aspect), between(up, tangent));
        Self { distance: wide.max(tall).max(0.1), target: middle + aside + upwards, ..self }
    }

    /// From the target to the camera, of length 1.
    fn back(self) -> Vec3 {
        let level = libm::cosf(self.above);
        vec3(libm::sinf(self.round) * level, libm::sinf(self.above), libm::cosf(self.round) * level)
    }

    /// Where it stands.
    pub fn eye(self) -> Vec3 {
        self.target + self.back() * self.distance
    }

    /// Takes points of the stage to the picture.
    pub fn clip_from_stage(self, aspect: f32) -> Mat4 {
        let near = (self.distance * 0.05).max(0.02);
        let projection = opengl::perspective(SIGHT, aspect, near, self.distance + 30.0);
        projection * look_at_mat4(self.eye(), self.target, Vec3::Y)
    }

    /// Turned by so many radians; never below the floor or over the zenith.
    #[must_use]
    pub fn turned(self, round: f32, above: f32) -> Self {
        Self { round: self.round + round, above: (self.above + above).clamp(-0.05, 1.5), ..self }
    }

    /// Nearer by a factor above 1, farther below.
    #[must_use]
    pub fn nearer(self, factor: f32) -> Self {
        Self { distance: (self.distance / factor).clamp(0.3, 20.0), ..self }
    }

    /// Moved sideways and up by shares of the picture's height.
    #[must_use]
    pub fn moved(self, right: f32, up: f32) -> Self {
        let back = self.back();
        let side = vec3(libm::cosf(self.round), 0.0, -libm::sinf(self.round));
        let scale = 2.0 * self.distance * libm::tanf(SIGHT / 2.0);
        Self { target: self.target + (side * right + back.cross(side) * up) * scale, ..self }
    }

    /// Whether another place cannot be told from this one.
    pub fn is_near(self, other: Self) -> bool {
        let angles = (self.round - other.round).abs() + (self.above - other.above).abs();
        angles + (self.distance - other.distance).abs() + self.target.distance(other.target) < 2e-3
    }

    /// Part of the way to another place.
    #[must_use]
    pub fn towards(self, other: Self, share: f32) -> Self {
        let between = |from: f32, to: f32| from + (to - from) * share;
        Self {
            round: between(self.round, other.round),
            above: between(self.above, other.above),
            distance: between(self.distance, other.distance),
            target: self.target.lerp(other.target, share),
        }
    }
}

/// Takes points of the stage to the map of a light far away in that direction, which shows the whole box.
pub fn clip_from_light(towards: Vec3, low: Vec3, high: Vec3) -> Mat4 {
    let middle = (low + high) / 2.0;
    let radius = (high - low).length() / 2.0;
    let view = look_at_mat4(middle + towards.normalize() * radius * 2.0, middle, Vec3::Y);
    opengl::orthographic(-radius, radius, -radius, radius, radius, radius * 3.0) * view
}

/// A point of the stage in the picture: from −1 to 1 to the right and up; `None` behind the camera.
pub fn in_picture(clip_from_stage: Mat4, point: Vec3) -> Option<(f32, f32)> {
    let clip = clip_from_stage * point.extend(1.0);
    (clip.w > 1e-3).then(|| {
        let place = clip.xy() / clip.w;
        (place.x, place.y)
    })
}

/// The eight corners of a box.
pub fn corners(low: Vec3, high: Vec3) -> impl Iterator<Item = Vec3> {
    (0..8u8).map(move |at| {
        let pick = |bit: u8, low: f32, high: f32| if at & bit == 0 { low } else { high };
        vec3(pick(1, low.x, high.x), pick(2, low.y, high.y), pick(4, low.z, high.z))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// From every standard place, whatever the picture's shape, the box stands in the middle of the picture
    /// and fills it in one of its directions.
    #[test]
    fn standard_places_fill_the_picture() {
        let (low, high) = (vec3(0.0, 0.0, -0.45), vec3(1.64, 0.5, 0.0));
        for place in [Place::Corner, Place::Front, Place::Above] {
            for aspect in [0.5, 1.0, 1.9] {
                let matrix = Camera::at(place, low, high, aspect).clip_from_stage(aspect);
                let seen: Vec<_> = corners(low, high).map(|corner| in_picture(matrix, corner).unwrap()).collect();
                let most = |of: fn(&(f32, f32)) -> f32| seen.iter().map(of).fold(f32::NEG_INFINITY, f32::max);
                let sides = [most(|at| at.0), most(|at| -at.0), most(|at| at.1), most(|at| -at.1)];
                let [right, left, top, bottom] = sides;
                let (wide, tall) = (right.midpoint(left), top.midpoint(bottom));
                assert!((wide.max(tall) - FILLED).abs() < 1e-3, "{place:?} {aspect}: {sides:?}");
                let (off_wide, off_tall) = ((right - left).abs(), (top - bottom).abs());
                assert!(if wide > tall { off_wide } else { off_tall } < 1e-3, "{place:?} {aspect}: {sides:?}");
                assert!(off_wide.max(off_tall) < 0.15, "{place:?} {aspect}: {sides:?}");
            }
        }
    }

    #[test]
    fn the_front_is_seen_from_the_front() {
        let camera = Camera::at(Place::Front, Vec3::ZERO, Vec3::ONE, 1.0);
        let matrix = camera.clip_from_stage(1.0);
        let (left, _) = in_picture(matrix, vec3(0.0, 0.5, 1.0)).unwrap();
        let (right, low) = in_picture(matrix, vec3(1.0, 0.0, 1.0)).unwrap();
        assert!(left < 0.0 && right > 0.0 && low < 0.0);
        assert!(in_picture(matrix, camera.eye() + vec3(0.0, 0.0, 1.0)).is_none());
    }
}
