//! What is being shown and where it is heading: the camera and the pose follow their goals.

use glam::Vec3;

use crate::camera::{Camera, Place};
use crate::pose::Pose;

/// Seconds in which a goal is all but reached.
const SOON: f32 = 0.35;
/// Seconds of one step of the assembly.
const STEP: f32 = 1.4;

/// The state of the stage between frames.
#[derive(Clone, Copy, Debug)]
pub struct Show {
    /// Where the camera stands.
    pub camera: Camera,
    /// How the unit is shown.
    pub pose: Pose,
    /// Right upper corner of what stands by, such as a screen or a person.
    beside: Vec3,
    camera_goal: Camera,
    pose_goal: Pose,
    /// The pose of the last step: what was drawn.
    drawn: Option<Pose>,
    playing: bool,
}

impl Show {
    /// The finished unit from its corner.
    pub fn new(size: Vec3, aspect: f32) -> Self {
        let (low, high) = hull(size, Vec3::ZERO, Pose::default());
        let camera = Camera::at(Place::Corner, low, high, aspect);
        Self {
            camera,
            camera_goal: camera,
            pose: Pose::default(),
            pose_goal: Pose::default(),
            beside: Vec3::ZERO,
            drawn: None,
            playing: false,
        }
    }

    /// Goes to a standard place.
    pub fn look(&mut self, place: Place, size: Vec3, aspect: f32) {
        let (low, high) = hull(size, self.beside, self.pose_goal);
        self.camera_goal = Camera::at(place, low, high, aspect);
        // The short way round.
        let turn = core::f32::consts::TAU;
        let apart = self.camera.round - self.camera_goal.round;
        self.camera.round -= libm::roundf(apart / turn) * turn;
    }

    /// Lets things stand by that reach so far to the right and up.
    pub fn stand_by(&mut self, beside: Vec3) {
        self.beside = beside;
    }

    /// Keeps the direction and fits the picture: after a change of size, of pose, of the window.
    pub fn fit(&mut self, size: Vec3, aspect: f32) {
        let (low, high) = hull(size, self.beside, self.pose_goal);
        self.camera_goal = self.camera_goal.fitted(low, high, aspect);
    }

    /// Turns the camera at once, as a hand does.
    pub fn turn(&mut self, round: f32, above: f32) {
        self.take(self.camera_goal.turned(round, above));
    }

    /// Goes nearer by a factor above 1.
    pub fn near(&mut self, factor: f32) {
        self.take(self.camera_goal.nearer(factor));
    }

    /// Moves the camera sideways and up.
    pub fn shift(&mut self, right: f32, up: f32) {
        self.take(self.camera_goal.moved(right, up));
    }

    fn take(&mut self, camera: Camera) {
        (self.camera, self.camera_goal) = (camera, camera);
    }

    /// Draws the unit apart by a share.
    pub fn apart(&mut self, share: f32) {
        self.pose_goal = Pose { apart: share, built: None, ..self.pose_goal };
        (self.pose.built, self.playing) = (None, false);
    }

    /// Opens or shuts the leaves.
    pub fn open(&mut self, open: bool) {
        self.pose_goal.open = if open { 1.0 } else { 0.0 };
    }

    /// Begins the assembly, goes on with it or stops where it is.
    pub fn play(&mut self, playing: bool, steps: usize) {
        let most = steps_of(steps);
        let begun = self.pose.built.filter(|built| *built < most).unwrap_or(0.0);
        self.show_built(if playing { begun } else { self.pose.built.unwrap_or(most) });
        self.playing = playing;
    }

    /// Shows the unit with so many steps done.
    pub fn build(&mut self, done: usize, steps: usize) {
        self.playing = false;
        self.show_built(steps_of(done).min(steps_of(steps)));
    }

    fn show_built(&mut self, built: f32) {
        self.pose_goal = Pose { apart: 0.0, open: 0.0, built: Some(built) };
        self.pose = Pose { built: Some(built), ..self.pose };
    }

    /// Shows the finished unit.
    pub fn whole(&mut self) {
        self.apart(0.0);
    }

    /// Whether the assembly is running.
    pub fn is_playing(&self) -> bool {
        self.playing
    }

    /// Goes on by so many seconds; without motion goals are reached at once. Gives whether the parts
    /// moved, and whether anything goes on.
    pub fn step(&mut self, seconds: f32, still: bool, steps: usize) -> (bool, bool) {
        let share = if still { 1.0 } else { 1.0 - libm::expf(-seconds * 4.0 / SOON) };
        let near = |from: f32, to: f32| if (to - from).abs() < 2e-3 { to } else { from + (to - from) * share };
        self.pose.apart = near(self.pose.apart, self.pose_goal.apart);
        self.pose.open = near(self.pose.open, self.pose_goal.open);
        let most = steps_of(steps);
        if let (true, Some(built)) = (self.playing, self.pose.built) {
            // Without motion a step is shown for its time and then the next one.
            let built = (built + seconds / STEP).min(most);
            self.pose.built = Some(built);
            self.playing = built < most;
        }
        let camera = self.camera.towards(self.camera_goal, share);
        let settled = camera.is_near(self.camera_goal);
        self.camera = if settled { self.camera_goal } else { camera };
        // Goals of the pose are met to the bit: `near` sees to it.
        let (pose, goal) = (self.pose, self.pose_goal);
        let posed = (pose.apart, pose.open) == (goal.apart, goal.open);
        // A pose that was taken at once moved the parts as well.
        let moved = self.drawn.replace(pose) != Some(pose);
        (moved, !settled || self.playing || !posed)
    }
}

fn steps_of(count: usize) -> f32 {
    f32::from(u16::try_from(count).unwrap_or(u16::MAX))
}

/// A box that holds the unit in a pose, and what stands by.
fn hull(size: Vec3, beside: Vec3, pose: Pose) -> (Vec3, Vec3) {
    let side = size.x * 0.27 * pose.apart;
    let room = if pose.built.is_some() { Vec3::new(0.0, 0.25, 0.15) } else { Vec3::new(0.0, 0.95, 0.8) * pose.apart };
    let leaves = Vec3::new(0.0, 0.0, 0.25 * pose.open);
    let high = Vec3::new(size.x + side, size.y, 0.0) + room + leaves;
    (Vec3::new(-side, 0.0, size.z - 0.35 * pose.apart), high.max(beside))
}

#[cfg(test)]
mod tests {
    use super::*;

    const SIZE: Vec3 = Vec3::new(1.6, 0.5, -0.45);

    #[test]
    fn goals_are_reached_and_the_stage_comes_to_rest() {
        let mut show = Show::new(SIZE, 1.5);
        assert_eq!(show.step(0.016, false, 9), (true, false), "the first picture");
        assert_eq!(show.step(0.016, false, 9), (false, false));
        show.apart(1.0);
        show.look(Place::Above, SIZE, 1.5);
        let mut frames = 0;
        while show.step(0.016, false, 9).1 {
            frames += 1;
            assert!(frames < 200, "it never rests");
        }
        assert!(frames > 5 && show.pose.apart.to_bits() == 1.0_f32.to_bits(), "{frames} {show:?}");
        show.apart(0.0);
        assert_eq!(show.step(0.016, true, 9), (true, false), "without motion at once");
    }

    #[test]
    fn the_assembly_plays_to_its_end() {
        let mut show = Show::new(SIZE, 1.0);
        show.play(true, 3);
        assert_eq!(show.pose.built, Some(0.0));
        for _ in 0..400 {
            show.step(0.016, false, 3);
        }
        assert_eq!((show.pose.built, show.is_playing()), (Some(3.0), false));
        show.play(true, 3);
        assert_eq!(show.pose.built, Some(0.0), "from the start again");
        show.build(2, 3);
        assert_eq!((show.pose.built, show.is_playing()), (Some(2.0), false));
        assert!(show.step(0.016, false, 3).0, "two steps instead of three");
        show.whole();
        assert_eq!(show.pose.built, None);
        assert!(show.step(0.016, false, 3).0, "the finished unit is another picture");
    }
}
