//! What is being shown and where it is heading: the camera and the pose follow their goals.

use crate::bounds::Bounds;
use crate::camera::{Camera, Place};
use crate::pose::{Pose, number, step_at};

/// Seconds in which a goal is all but reached.
const SOON: f32 = 0.35;
/// How many times as far as for a picture that is filled.
const FARTHEST: f32 = 3.0;
/// Seconds of one step of the assembly.
const STEP: f32 = 1.4;

/// The state of the stage between frames.
#[derive(Clone, Copy, Debug)]
pub struct Show {
    /// Where the camera stands.
    pub camera: Camera,
    /// How the unit is shown.
    pub pose: Pose,
    camera_goal: Camera,
    pose_goal: Pose,
    /// Steps of the assembly for which there has been time; without motion it runs ahead of the pose.
    clock: f32,
    /// The pose of the last step: what was drawn.
    drawn: Option<Pose>,
    playing: bool,
    /// Whether all that is shown is to be seen; not once a hand has gone nearer or aside.
    framed: bool,
}

impl Show {
    /// The finished unit from its corner.
    pub fn new(bounds: Bounds, aspect: f32) -> Self {
        let camera = Camera::at(Place::Corner, bounds, aspect);
        let pose = Pose::default();
        Self {
            camera,
            camera_goal: camera,
            pose,
            pose_goal: pose,
            clock: 0.0,
            drawn: None,
            playing: false,
            framed: true,
        }
    }

    /// Where the camera is going.
    pub fn heading(&self) -> Camera {
        self.camera_goal
    }

    /// The pose that is being taken; of an assembly the step that is shown.
    pub fn goal(&self) -> Pose {
        Pose { built: self.pose.built, ..self.pose_goal }
    }

    /// Goes to a standard place.
    pub fn look(&mut self, place: Place, bounds: Bounds, aspect: f32) {
        self.camera_goal = Camera::at(place, bounds, aspect);
        self.framed = true;
        // The short way round.
        let turn = core::f32::consts::TAU;
        let apart = self.camera.round - self.camera_goal.round;
        self.camera.round -= libm::roundf(apart / turn) * turn;
    }

    /// Keeps the direction and fits the picture: after a change of size, of pose, of the window.
    pub fn fit(&mut self, bounds: Bounds, aspect: f32) {
        self.camera_goal = self.camera_goal.fitted(bounds, aspect);
        self.framed = true;
    }

    /// The same, unless a hand has gone nearer or aside: after a step of the assembly.
    pub fn refit(&mut self, bounds: Bounds, aspect: f32) {
        if self.framed {
            self.fit(bounds, aspect);
        }
    }

    /// Turns the camera at once, as a hand does. What was seen as a whole stays so, and no larger than it was.
    pub fn turn(&mut self, (round, above): (f32, f32), bounds: Bounds, aspect: f32) {
        let turned = self.camera_goal.turned(round, above);
        let fitted = turned.fitted(bounds, aspect);
        let framed = Camera { distance: fitted.distance.max(turned.distance), ..fitted };
        self.take(if self.framed { framed } else { turned }.outside(bounds));
    }

    /// Goes nearer by a factor above 1, or farther, never so far that what is shown is lost in the picture.
    pub fn near(&mut self, factor: f32, bounds: Bounds, aspect: f32) {
        self.framed = false;
        let here = self.camera_goal;
        let far = (here.fitted(bounds, aspect).distance * FARTHEST).max(here.distance);
        let gone = here.nearer(factor);
        self.take(Camera { distance: gone.distance.min(far), ..gone }.outside(bounds));
    }

    /// Moves the camera sideways and up; what it looks at stays within what is shown.
    pub fn shift(&mut self, (right, up): (f32, f32), bounds: Bounds) {
        self.framed = false;
        let room = bounds.with(Bounds::of([self.camera_goal.target]));
        let moved = self.camera_goal.moved(right, up);
        self.take(Camera { target: moved.target.clamp(room.low, room.high), ..moved }.outside(bounds));
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
        let most = number(steps);
        let begun = self.pose.built.map(|_| self.clock);
        if playing {
            self.build_from(begun.filter(|clock| *clock < most).unwrap_or(0.0), most);
        } else {
            let here = begun.unwrap_or(most);
            self.build_from(here, here);
        }
        self.playing = playing;
    }

    /// Shows one step of the assembly, counted from 0: its part goes in.
    pub fn build(&mut self, step: usize, steps: usize) {
        self.playing = false;
        let step = number(step.min(steps.saturating_sub(1)));
        // Begun, so that it is this step that is shown.
        self.build_from(step + 1e-3, step + 1.0);
    }

    fn build_from(&mut self, clock: f32, goal: f32) {
        self.clock = clock;
        self.pose_goal = Pose { apart: 0.0, open: 0.0, built: Some(goal) };
        self.pose.built = Some(clock);
    }

    /// Shows the finished unit.
    pub fn whole(&mut self) {
        self.apart(0.0);
    }

    /// Which step of the assembly is shown.
    pub fn step_shown(&self, steps: usize) -> Option<usize> {
        self.pose.built.map(|built| step_at(built, steps))
    }

    /// Whether the assembly is running.
    pub fn is_playing(&self) -> bool {
        self.playing
    }

    /// Goes on by so many seconds; without motion goals are reached at once, and each step of a running
    /// assembly is shown done for the time that its move would take. Gives whether the parts moved, and
    /// whether anything goes on.
    pub fn step(&mut self, seconds: f32, still: bool) -> (bool, bool) {
        let share = if still { 1.0 } else { 1.0 - libm::expf(-seconds * 4.0 / SOON) };
        let near = |from: f32, to: f32| if (to - from).abs() < 2e-3 { to } else { from + (to - from) * share };
        self.pose.apart = near(self.pose.apart, self.pose_goal.apart);
        self.pose.open = near(self.pose.open, self.pose_goal.open);
        if let Some(goal) = self.pose_goal.built {
            self.clock = if still && !self.playing { goal } else { (self.clock + seconds / STEP).min(goal) };
            let done = (libm::floorf(self.clock) + 1.0).min(libm::ceilf(goal));
            self.pose.built = Some(if still { done } else { self.clock });
            self.playing &= self.clock < goal;
        }
        let camera = self.camera.towards(self.camera_goal, share);
        let settled = camera.is_near(self.camera_goal);
        self.camera = if settled { self.camera_goal } else { camera };
        // Goals of the pose are met to the bit: `near` and `min` see to it.
        let (pose, goal) = (self.pose, self.pose_goal);
        let posed = (pose.apart, pose.open) == (goal.apart, goal.open);
        let built = goal.built.is_none_or(|goal| self.clock >= goal);
        // A pose that was taken at once moved the parts as well.
        let moved = self.drawn.replace(pose) != Some(pose);
        (moved, !settled || !posed || !built)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use glam::Vec3;

    const BOUNDS: Bounds = Bounds { low: Vec3::new(0.0, 0.0, -0.45), high: Vec3::new(1.6, 0.5, 0.0) };

    #[test]
    fn goals_are_reached_and_the_stage_comes_to_rest() {
        let mut show = Show::new(BOUNDS, 1.5);
        assert_eq!(show.step(0.016, false), (true, false), "the first picture");
        assert_eq!(show.step(0.016, false), (false, false));
        show.apart(1.0);
        show.look(Place::Above, BOUNDS, 1.5);
        let mut frames = 0;
        while show.step(0.016, false).1 {
            frames += 1;
            assert!(frames < 200, "it never rests");
        }
        assert!(frames > 5 && show.pose.apart.to_bits() == 1.0_f32.to_bits(), "{frames} {show:?}");
        show.apart(0.0);
        assert_eq!(show.step(0.016, true), (true, false), "without motion at once");
    }

    #[test]
    fn the_assembly_plays_to_its_end() {
        let mut show = Show::new(BOUNDS, 1.0);
        show.play(true, 3);
        assert_eq!(show.pose.built, Some(0.0));
        for _ in 0..400 {
            show.step(0.016, false);
        }
        assert_eq!((show.pose.built, show.is_playing()), (Some(3.0), false));
        show.play(true, 3);
        assert_eq!(show.pose.built, Some(0.0), "from the start again");
        show.whole();
        assert_eq!(show.pose.built, None);
        assert!(show.step(0.016, false).0, "the finished unit is another picture");
    }

    /// Turned all the way round, nothing is cut off; a hand that went nearer stays near.
    #[test]
    fn turning_keeps_everything_in_sight() {
        let mut show = Show::new(BOUNDS, 1.5);
        for turn in 0..60u8 {
            show.turn((0.11, if turn < 20 { 0.05 } else { -0.05 }), BOUNDS, 1.5);
            let matrix = show.camera.clip_from_stage(1.5);
            let seen = BOUNDS.corners().all(|corner| {
                crate::camera::in_picture(matrix, corner).is_some_and(|(x, y)| x.abs().max(y.abs()) < 0.9)
            });
            assert!(seen, "{turn} {:?}", show.camera);
        }
        show.near(4.0, BOUNDS, 1.5);
        let near = show.camera.distance;
        show.turn((0.2, 0.0), BOUNDS, 1.5);
        assert!((show.camera.distance - near).abs() < 1e-6);
    }

    /// However far a hand goes, the unit stays in the picture and is no dot.
    #[test]
    fn the_unit_cannot_be_lost() {
        for (right, up) in [(0.3, 0.0), (-0.3, 0.1), (0.0, 0.4), (0.1, -0.4)] {
            let mut show = Show::new(BOUNDS, 1.5);
            for _ in 0..30 {
                show.shift((right, up), BOUNDS);
                show.near(0.8, BOUNDS, 1.5);
            }
            let matrix = show.camera.clip_from_stage(1.5);
            let seen: Vec<_> =
                BOUNDS.corners().map(|corner| crate::camera::in_picture(matrix, corner).unwrap()).collect();
            assert!(seen.iter().any(|(x, y)| x.abs().max(y.abs()) < 0.8), "{right} {up}: {seen:?}");
            let wide = seen.iter().map(|at| at.0).fold(f32::MIN, f32::max)
                - seen.iter().map(|at| at.0).fold(f32::MAX, f32::min);
            assert!(wide > 0.4, "{right} {up}: {wide}");
        }
    }

    /// A step that is asked for is played once and stays; another picture comes with the first frame.
    #[test]
    fn one_step_is_played() {
        let mut show = Show::new(BOUNDS, 1.0);
        show.build(1, 3);
        assert_eq!((show.step_shown(3), show.step(0.0, false).1), (Some(1), true));
        assert!(show.pose.built.unwrap() < 1.1, "it is on its way");
        while show.step(0.016, false).1 {}
        assert_eq!((show.pose.built, show.step_shown(3), show.is_playing()), (Some(2.0), Some(1), false));
        show.build(7, 3);
        assert_eq!(show.step_shown(3), Some(2), "the last one");
    }

    /// Without motion parts stand where they belong, whatever is done; each step has its time.
    #[test]
    fn without_motion_nothing_is_seen_on_its_way() {
        let mut show = Show::new(BOUNDS, 1.0);
        show.play(true, 3);
        let mut frames = [0; 3];
        let still = |show: &mut Show, at: usize| {
            assert_eq!(show.pose.built.unwrap().fract().to_bits(), 0.0_f32.to_bits(), "{show:?}");
            assert_eq!(show.step_shown(3), Some(at));
        };
        for _ in 0..1000 {
            let (_, goes_on) = show.step(0.016, true);
            let at = show.step_shown(3).unwrap();
            still(&mut show, at);
            frames[at] += 1;
            if !goes_on {
                break;
            }
        }
        assert!(frames.iter().all(|count| (86..=89).contains(count)), "1.4 s each: {frames:?}");
        show.build(1, 3);
        assert_eq!(show.step(0.016, true), (true, false));
        still(&mut show, 1);
        show.play(true, 3);
        for _ in 0..30 {
            show.step(0.016, true);
        }
        show.play(false, 3);
        assert!(!show.step(0.016, true).1, "paused");
        still(&mut show, 2);
    }
}
