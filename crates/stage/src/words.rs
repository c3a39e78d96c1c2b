//! What is shown, in words: for those who do not see the picture.

use core::f32::consts::FRAC_PI_4;

use slotwright_core::words::stage::{Height, Message, Side};

use crate::camera::Camera;
use crate::pose::{Pose, step_at};

/// From which side, counted in eighths of a turn to the right of the front.
const SIDES: [Side; 8] = [
    Side::Front,
    Side::FrontRight,
    Side::Right,
    Side::RearRight,
    Side::Rear,
    Side::RearLeft,
    Side::Left,
    Side::FrontLeft,
];

/// In radians above the level: below it one looks level, above it down, and above that straight down.
const LEVEL: f32 = 0.15;
const HIGH: f32 = 0.7;
const STRAIGHT: f32 = 1.2;

/// Direction of view, pose and company, each as a sentence. `steps` is how many steps are shown.
pub fn shown(camera: Camera, pose: Pose, steps: usize, person: bool) -> String {
    let pose_of = match pose.built {
        Some(built) => Some(Message::GoingTogether(step_at(built, steps) + 1, steps)),
        None if pose.apart > 0.0 => Some(Message::Apart),
        None => None,
    };
    let doors = (pose.open > 0.0).then_some(Message::DoorsOpen);
    let company = person.then_some(Message::Person);
    let all = [Some(seen_from(camera)), pose_of, doors, company];
    all.into_iter().flatten().map(Message::text).collect::<Vec<_>>().join(" ")
}

fn seen_from(camera: Camera) -> Message<'static> {
    if camera.above > STRAIGHT {
        return Message::SeenFromAbove;
    }
    #[expect(clippy::cast_possible_truncation, reason = "eighths of a turn")]
    let eighths = libm::roundf(camera.round / FRAC_PI_4) as i32;
    let at = usize::try_from(eighths.rem_euclid(8)).unwrap_or(0);
    let side = SIDES.get(at).copied().unwrap_or(Side::Front);
    let height = match camera.above {
        above if above > HIGH => Height::HighAbove,
        above if above > LEVEL => Height::Above,
        _ => Height::Level,
    };
    Message::Seen(side, height)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bounds::Bounds;
    use crate::camera::Place;
    use crate::{Vec3, words};

    #[test]
    fn what_is_seen_is_said() {
        let bounds = Bounds { low: Vec3::ZERO, high: Vec3::ONE };
        let camera = |place| Camera::at(place, bounds, 1.0);
        let whole = Pose::default();
        let said = |camera, pose| words::shown(camera, pose, 14, false);
        assert_eq!(said(camera(Place::Corner), whole), "Seen from the front left, from a little above.");
        assert_eq!(said(camera(Place::Front), whole), "Seen from the front.");
        assert_eq!(said(camera(Place::Above), whole), "Seen from straight above.");
        let behind = Camera { round: -3.2, above: 0.0, ..camera(Place::Front) };
        let open = Pose { open: 1.0, apart: 0.5, built: None };
        assert_eq!(said(behind, open), "Seen from the rear. Its parts are drawn apart. Its doors are open.");
        let built = Pose { built: Some(2.5), ..whole };
        let text = words::shown(camera(Place::Front), built, 14, true);
        assert_eq!(text, "Seen from the front. Going together, step 3 of 14. A person of 1.70 m stands beside it.");
    }
}
