//! How panels look.

use slotwright_stage::Vec3;

/// Below that luminance a finish is dark: it is lit more, and told by light lines.
const DARK: f32 = 0.08;

/// How panels look.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Paint {
    /// Colours of a face, of a ply along an edge and of one whose end grain is cut in it, linear.
    pub(crate) colours: [Vec3; 3],
    /// How much of the grain is seen on faces.
    pub(crate) grain: f32,
    /// Whether the film is clear.
    pub(crate) clear: bool,
}

impl Paint {
    /// From 0, light, to 1, dark.
    pub(super) fn darkness(&self) -> f32 {
        let [face, ..] = self.colours;
        // Source: relative luminance as in WCAG 2.2.
        1.0 - (face.dot(Vec3::new(0.2126, 0.7152, 0.0722)) / (2.0 * DARK)).min(1.0)
    }

    /// The colour of lines, as the screen has it: darker than a light finish, lighter than a dark one.
    pub(super) fn ink(&self) -> Vec3 {
        let [_, _, across] = self.colours;
        let root = across.map(f32::sqrt);
        if self.darkness() > 0.5 { root.lerp(Vec3::ONE, 0.45) } else { root * 0.38 }
    }
}
