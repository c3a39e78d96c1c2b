//! The camera: it goes round a target at a distance.

use glam::camera::rh::proj::opengl;
use glam::camera::rh::view::look_at_mat4;
use glam::{Mat4, Vec3, Vec4Swizzles, vec3};

use crate::bounds::Bounds;

/// No eye is farther away, in metres.
const FARTHEST: f32 = 100.0;

/// So far the eye stays away from what is shown, in metres.
const CLEAR: f32 = 0.12;

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
    /// Angle of sight from top to bottom, in radians.
    pub sight: f32,
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
    /// A standard place from which a box fills the picture.
    pub fn at(place: Place, bounds: Bounds, aspect: f32) -> Self {
        // From the corner as furniture is photographed, 24°; square on from far away, so that what is upright stays so
        // and what is nearer is hardly larger.
        let (round, above, sight) = match place {
            Place::Corner => (-0.6, 0.36, 0.42),
            Place::Front => (0.0, 0.0, 0.2),
            Place::Above => (0.0, 1.5, 0.1),
        };
        Self { round, above, distance: 1.0, target: bounds.middle(), sight }.fitted(bounds, aspect)
    }

    /// The same direction from so far that a box fits the picture.
    #[must_use]
    pub fn fitted(self, bounds: Bounds, aspect: f32) -> Self {
        let back = self.back();
        let right = vec3(libm::cosf(self.round), 0.0, -libm::sinf(self.round));
        let up = back.cross(right);
        let middle = bounds.middle();
        let tangent = libm::tanf(self.sight / 2.0) * FILLED;
        // Each corner c lies between the two planes of sight if |c − eye| ≤ tan · depth, which is linear in
        // the eye's place: the outermost corners of both sides give the nearest eye and its place between.
        let between = |across: Vec3, tangent: f32| {
            let side = |way: f32| {
                let reach = |corner: Vec3| way * (corner - middle).dot(across) + tangent * (corner - middle).dot(back);
                bounds.corners().map(reach).fold(f32::NEG_INFINITY, f32::max)
            };
            let (more, less) = (side(1.0), side(-1.0));
            ((more + less) / (2.0 * tangent), across * ((more - less) / 2.0))
        };
        let ((wide, aside), (tall, upwards)) = (between(right, tangent * aspect), between(up, tangent));
        Self { distance: wide.max(tall).max(0.1), target: grounded(middle + aside + upwards), ..self }
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
        let projection = opengl::perspective(self.sight, aspect, near, self.distance + 30.0);
        projection * look_at_mat4(self.eye(), self.target, Vec3::Y)
    }

    /// Turned by so many radians; never below the level or over the zenith.
    #[must_use]
    pub fn turned(self, round: f32, above: f32) -> Self {
        Self { round: self.round + round, above: (self.above + above).clamp(0.0, 1.5), ..self }
    }

    /// Nearer by a factor above 1, farther below.
    #[must_use]
    pub fn nearer(self, factor: f32) -> Self {
        Self { distance: (self.distance / factor).clamp(0.3, FARTHEST), ..self }
    }

    /// From so far that the eye is outside of a box, and clear of it.
    #[must_use]
    pub fn outside(self, bounds: Bounds) -> Self {
        let room = Bounds { low: bounds.low - CLEAR, high: bounds.high + CLEAR };
        let (back, eye) = (self.back(), self.eye());
        if eye.clamp(room.low, room.high) != eye {
            return self;
        }
        // Backwards to the first of its sides.
        let sides = [
            (eye.x, back.x, room.low.x, room.high.x),
            (eye.y, back.y, room.low.y, room.high.y),
            (eye.z, back.z, room.low.z, room.high.z),
        ];
        let leaves =
            sides.map(
                |(at, way, low, high)| {
                    if way.abs() < 1e-6 { f32::MAX } else { (if way > 0.0 { high - at } else { low - at }) / way }
                },
            );
        Self { distance: self.distance + leaves.into_iter().fold(f32::MAX, f32::min), ..self }
    }

    /// Moved sideways and up by shares of the picture's height, never below the floor.
    #[must_use]
    pub fn moved(self, right: f32, up: f32) -> Self {
        let back = self.back();
        let side = vec3(libm::cosf(self.round), 0.0, -libm::sinf(self.round));
        let scale = 2.0 * self.distance * libm::tanf(self.sight / 2.0);
        Self { target: grounded(self.target + (side * right + back.cross(side) * up) * scale), ..self }
    }

    /// Whether another place cannot be told from this one.
    pub fn is_near(self, other: Self) -> bool {
        let angles = (self.round - other.round).abs() + (self.above - other.above).abs();
        let lens = (self.sight - other.sight).abs();
        angles + lens + (self.distance - other.distance).abs() + self.target.distance(other.target) < 2e-3
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
            sight: between(self.sight, other.sight),
        }
    }
}

/// Not below the floor: a camera that looks at it from the level or above stands over the floor as well.
fn grounded(target: Vec3) -> Vec3 {
    target.with_y(target.y.max(0.02))
}

/// Takes points of the stage to the map of a light far away in that direction, which shows the box and
/// its shadow on the floor.
pub fn clip_from_light(towards: Vec3, bounds: Bounds) -> Mat4 {
    let view = look_at_mat4(towards, Vec3::ZERO, Vec3::Y);
    let on_floor = |at: Vec3| at - towards * (at.y / towards.y);
    let lit = bounds.corners().flat_map(|corner| [corner, on_floor(corner)]);
    let Bounds { low, high } = Bounds::of(lit.map(|at| view.transform_point3(at)));
    opengl::orthographic(low.x, high.x, low.y, high.y, -high.z, -low.z) * view
}

/// A point of the stage in the picture: from −1 to 1 to the right and up; `None` behind the camera.
pub fn in_picture(clip_from_stage: Mat4, point: Vec3) -> Option<(f32, f32)> {
    let clip = clip_from_stage * point.extend(1.0);
    (clip.w > 1e-3).then(|| {
        let place = clip.xy() / clip.w;
        (place.x, place.y)
    })
}

/// A place in the picture, in pixels from the upper left corner of one of that extent.
pub fn in_pixels((x, y): (f32, f32), (across, down): (f32, f32)) -> (f32, f32) {
    ((0.5 + x * 0.5) * across, (0.5 - y * 0.5) * down)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// From every standard place, whatever the picture's shape, the box stands in the middle of the picture
    /// and fills it in one of its directions.
    #[test]
    fn standard_places_fill_the_picture() {
        let bounds = Bounds { low: vec3(0.0, 0.0, -0.45), high: vec3(1.64, 0.5, 0.0) };
        for place in [Place::Corner, Place::Front, Place::Above] {
            for aspect in [0.5, 1.0, 1.9] {
                let matrix = Camera::at(place, bounds, aspect).clip_from_stage(aspect);
                let seen: Vec<_> = bounds.corners().map(|corner| in_picture(matrix, corner).unwrap()).collect();
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
        let camera = Camera::at(Place::Front, Bounds { low: Vec3::ZERO, high: Vec3::ONE }, 1.0);
        let matrix = camera.clip_from_stage(1.0);
        let (left, _) = in_picture(matrix, vec3(0.0, 0.5, 1.0)).unwrap();
        let (right, low) = in_picture(matrix, vec3(1.0, 0.0, 1.0)).unwrap();
        assert!(left < 0.0 && right > 0.0 && low < 0.0);
        assert!(in_picture(matrix, camera.eye() + vec3(0.0, 0.0, 1.0)).is_none());
    }

    /// Wherever it is turned and moved to, the eye stays over the floor.
    #[test]
    fn the_eye_stays_over_the_floor() {
        let bounds = Bounds { low: vec3(0.0, 0.0, -0.3), high: vec3(0.6, 0.3, 0.0) };
        let mut camera = Camera::at(Place::Corner, bounds, 0.6);
        for _ in 0..40 {
            camera = camera.turned(0.1, -0.2).moved(0.0, -0.1).nearer(0.8);
            assert!(camera.eye().y > 0.0, "{camera:?}");
            assert!(camera.fitted(bounds, 0.6).eye().y > 0.0, "{camera:?}");
        }
    }

    /// However near a hand goes and however it turns, the eye stays out of the wood.
    #[test]
    fn the_eye_stays_out_of_the_unit() {
        let bounds = Bounds { low: vec3(0.0, 0.0, -0.45), high: vec3(1.64, 0.5, 0.0) };
        let mut camera = Camera::at(Place::Corner, bounds, 1.5);
        for turn in 0..200u8 {
            camera = camera.nearer(1.2).turned(0.31, if turn % 2 == 0 { 0.3 } else { -0.2 }).outside(bounds);
            let eye = camera.eye();
            assert_ne!(eye.clamp(bounds.low, bounds.high), eye, "{turn}: {camera:?}");
        }
        let far = Camera::at(Place::Corner, bounds, 1.5);
        assert_eq!(far.outside(bounds), far);
    }

    /// The map of a light holds the box and its shadow on the floor and nothing more.
    #[test]
    fn a_light_sees_the_box_and_its_shadow() {
        let bounds = Bounds { low: vec3(0.0, 0.0, -0.45), high: vec3(1.64, 0.5, 0.0) };
        let towards = vec3(-0.48, 0.68, 0.55);
        let matrix = clip_from_light(towards, bounds);
        let shadow = vec3(1.64, 0.5, 0.0) - towards * (0.5 / 0.68);
        assert!(shadow.y.abs() < 1e-6);
        let seen = bounds.corners().chain([shadow]).map(|at| matrix.project_point3(at));
        let Bounds { low, high } = Bounds::of(seen);
        assert!(low.abs_diff_eq(Vec3::NEG_ONE, 1e-4) && high.x.min(high.y) > 0.999, "{low} {high}");
        assert!(high.max_element() < 1.0001 && low.min_element() > -1.0001, "{low} {high}");
    }
}
