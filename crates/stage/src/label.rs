//! Names of parts beside the picture of the unit: in a column at either side, each with a line to its part.

use glam::{Mat4, Vec3};
use slotwright_core::units::short;

use crate::bounds::Bounds;
use crate::camera::{in_picture, in_pixels};

/// A name on the picture, in pixels from its upper left corner.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// The name.
    pub text: String,
    /// Where it ends towards the unit, at half its height.
    pub at: (f32, f32),
    /// Where its part is: a line leads there.
    pub part: (f32, f32),
    /// Whether it stands at the left of the unit.
    pub is_left: bool,
}

/// Height of a name and the width of one of its letters, on the average of a short name, in pixels.
const HEIGHT: f32 = 18.0;
const LETTER: f32 = 8.5;

/// From the unit to the names, in pixels.
const GAP: f32 = 16.0;

/// The names of parts with a point of each that is seen, beside a box round all of them, in a picture of that
/// extent in pixels. Names for which there is no room are left out.
pub fn labels(
    parts: impl Iterator<Item = (Vec3, String)>,
    bounds: Bounds,
    clip_from_stage: Mat4,
    extent @ (across, down): (f32, f32),
) -> Vec<Label> {
    let pixels = |at: Vec3| Some(in_pixels(in_picture(clip_from_stage, at)?, extent));
    let corners = bounds.corners().filter_map(pixels).map(|corner| corner.0);
    let (left, right) = corners.fold((across, 0.0_f32), |(low, high), x| (low.min(x), high.max(x)));
    let mut found: Vec<((f32, f32), String)> =
        parts.filter_map(|(middle, text)| Some((pixels(middle)?, text))).collect();
    short::sort(&mut found, |(at, _)| at.0);
    let beside = found.split_off(found.len() / 2);
    let column = |parts: Vec<((f32, f32), String)>, is_left: bool| {
        let widest = parts.iter().map(|(_, text)| wide(text)).fold(0.0, f32::max);
        let most = (across - widest).max(0.0);
        let x = if is_left { (left - GAP).clamp(widest.min(across), across) } else { (right + GAP).clamp(0.0, most) };
        spread(parts, down).into_iter().map(move |(part, y, text)| Label { text, at: (x, y), part, is_left })
    };
    column(found, true).chain(column(beside, false)).collect()
}

fn wide(text: &str) -> f32 {
    f32::from(u16::try_from(text.chars().count()).unwrap_or(u16::MAX)) * LETTER
}

/// Gives each name of a column its height: as near to its part's as its neighbours let it.
fn spread(mut parts: Vec<((f32, f32), String)>, down: f32) -> Vec<((f32, f32), f32, String)> {
    short::sort(&mut parts, |(at, _)| at.1);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "how many fit, not negative")]
    let room = (down / HEIGHT).max(0.0) as usize;
    parts.truncate(room);
    let mut heights: Vec<f32> = parts.iter().map(|(part, _)| part.1).collect();
    let mut least = HEIGHT / 2.0;
    for height in &mut heights {
        *height = height.max(least);
        least = *height + HEIGHT;
    }
    let mut most = down - HEIGHT / 2.0;
    for height in heights.iter_mut().rev() {
        *height = height.min(most);
        most = *height - HEIGHT;
    }
    parts.into_iter().zip(heights).map(|((part, text), height)| (part, height, text)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::camera::{Camera, Place};

    const BOUNDS: Bounds = Bounds { low: Vec3::ZERO, high: Vec3::ONE };

    fn named(count: u8, extent: (f32, f32)) -> Vec<Label> {
        let matrix = Camera::at(Place::Front, BOUNDS, extent.0 / extent.1).clip_from_stage(extent.0 / extent.1);
        let middle = |at: u8| Vec3::new(f32::from(at % 5) / 5.0, f32::from(at % 3) / 30.0, 0.5);
        labels((0..count).map(|at| (middle(at), format!("upright {at}"))), BOUNDS, matrix, extent)
    }

    /// Half of the names at each side of the unit, none over another, all within the picture.
    #[test]
    fn names_stand_beside_the_unit_and_clear_of_each_other() {
        let found = named(20, (600.0, 400.0));
        assert_eq!((found.len(), found.iter().filter(|label| label.is_left).count()), (20, 10));
        for (at, label) in found.iter().enumerate() {
            let same = found.iter().skip(at + 1).filter(|other| other.is_left == label.is_left);
            for other in same {
                assert!((label.at.1 - other.at.1).abs() > HEIGHT - 0.01, "{label:?} {other:?}");
            }
            assert!(label.at.1 >= HEIGHT / 2.0 - 0.01 && label.at.1 <= 400.0 - HEIGHT / 2.0 + 0.01, "{label:?}");
            let (from, to) = if label.is_left {
                (label.at.0 - wide(&label.text), label.at.0)
            } else {
                (label.at.0, label.at.0 + wide(&label.text))
            };
            assert!(from >= 0.0 && to <= 600.0, "{label:?}");
            assert!(if label.is_left { to < label.part.0 } else { from > label.part.0 }, "{label:?}");
        }
    }

    #[test]
    fn what_has_no_room_is_left_out() {
        assert_eq!(named(20, (600.0, 100.0)).len(), 10);
        assert!(named(3, (600.0, 10.0)).is_empty());
    }
}
