//! Upright boxes round what is shown.

use glam::{Mat4, Vec3, vec3};

/// An upright box.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// Its left lower rear corner.
    pub low: Vec3,
    /// Its right upper front corner.
    pub high: Vec3,
}

/// A box round nothing.
impl Default for Bounds {
    fn default() -> Self {
        Self { low: Vec3::INFINITY, high: Vec3::NEG_INFINITY }
    }
}

impl Bounds {
    /// Round all points.
    pub fn of(points: impl IntoIterator<Item = Vec3>) -> Self {
        let around = |bounds: Self, at: Vec3| Self { low: bounds.low.min(at), high: bounds.high.max(at) };
        points.into_iter().fold(Self::default(), around)
    }

    /// Round both.
    #[must_use]
    pub fn with(self, other: Self) -> Self {
        Self { low: self.low.min(other.low), high: self.high.max(other.high) }
    }

    /// Round the box where it is taken.
    #[must_use]
    pub fn taken(self, by: Mat4) -> Self {
        Self::of(self.corners().map(|corner| by.transform_point3(corner)))
    }

    /// Its middle.
    pub fn middle(self) -> Vec3 {
        (self.low + self.high) / 2.0
    }

    /// Its eight corners.
    pub fn corners(self) -> impl Iterator<Item = Vec3> {
        let Self { low, high } = self;
        (0..8u8).map(move |at| {
            let pick = |bit: u8, low: f32, high: f32| if at & bit == 0 { low } else { high };
            vec3(pick(1, low.x, high.x), pick(2, low.y, high.y), pick(4, low.z, high.z))
        })
    }
}
