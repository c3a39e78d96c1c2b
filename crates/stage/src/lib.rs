//! What the 3D stage shows: geometry ready for a graphics card, the camera, the way parts move.
//!
//! Nothing here draws. Axes of the stage: x to the right, y up, z to the front, metres; origin at the
//! unit's left front bottom corner.

pub mod bounds;
pub mod camera;
pub mod dimension;
pub mod label;
pub mod pose;
pub mod scene;
pub mod show;
pub mod sight;
pub mod words;

mod figure;
mod wood;

pub use glam::{Mat4, Vec3};

/// To the single precision of graphics cards.
#[expect(clippy::cast_possible_truncation, reason = "the numbers of graphics cards")]
pub(crate) const fn single(value: f64) -> f32 {
    value as f32
}
