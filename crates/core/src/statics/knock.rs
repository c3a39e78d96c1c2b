//! What a knock does to what stands out of a panel, and to a strip of it between two cut-outs.
//!
//! Elementary statics of rods with a rectangular or a round section. A knock in the panel's plane bends the section over its width, one
//! across the face bends it over its thickness, shears its plies on each other, and twists it where it comes beside
//! the middle.

use core::f64::consts::PI;

use crate::units::quantity::{Force, Length, Stress};

/// What a section bears.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bears {
    /// Along the plies, by bending.
    pub bending: Stress,
    /// Between the plies, by shear and by twisting.
    pub shear: Stress,
}

/// What stands out of a panel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stub {
    /// From its root to where it is knocked.
    pub reach: Length,
    /// Width of its root, in the panel's plane.
    pub width: Length,
    /// Thickness of the wood.
    pub thickness: Length,
    /// From the middle of the root's width to where it is knocked, across `reach`.
    pub beside: Length,
}

impl Stub {
    /// What its root bears under a force in the panel's plane, square to its reach.
    ///
    /// ```
    /// use slotwright_core::statics::knock::Stub;
    /// use slotwright_core::units::quantity::{Force, Length};
    /// // 100 N on a nose of 16 mm, 10 mm over the neck, 18 mm thick: 6 × 1 000 / (18 × 16²) N/mm².
    /// let [reach, width, thickness, beside] = [10.0, 16.0, 18.0, 0.0].map(Length::mm);
    /// let bears = Stub { reach, width, thickness, beside }.in_plane(Force::newton(100.0));
    /// assert!((bears.bending.in_n_per_mm2() - 1.302_083).abs() < 1e-6, "{bears:?}");
    /// ```
    // Source: statics of a cantilever: σ = 6 F a / (b h²), τ = 1.5 F / (b h).
    pub fn in_plane(self, force: Force) -> Bears {
        Bears { bending: bent(force, self.reach, self.thickness, self.width), shear: self.sheared(force) }
    }

    /// What its root bears under a force across the panel's face.
    ///
    /// ```
    /// use slotwright_core::statics::knock::Stub;
    /// use slotwright_core::units::quantity::{Force, Length};
    /// // 50 N at the end of 38 mm on a root of 24 × 17.7 mm, 32 mm beside its middle: 6 × 1 900 / (24 × 17.7²) N/mm²; 1.5 ×
    /// // 50 / (24 × 17.7) and, by twisting, 3 × 1 600 / (8 × 12 × 8.85²) × 1.478 N/mm².
    /// let [reach, width, thickness, beside] = [38.0, 24.0, 17.7, 32.0].map(Length::mm);
    /// let bears = Stub { reach, width, thickness, beside }.across(Force::newton(50.0));
    /// assert!((bears.bending.in_n_per_mm2() - 1.516).abs() < 1e-3, "{bears:?}");
    /// assert!((bears.shear.in_n_per_mm2() - (0.1766 + 0.9434)).abs() < 1e-3, "{bears:?}");
    /// ```
    // Source: the same cantilever the other way round.
    pub fn across(self, force: Force) -> Bears {
        let bending = bent(force, self.reach, self.width, self.thickness);
        Bears { bending, shear: self.sheared(force) + twisted(force, self.beside, self.width, self.thickness) }
    }

    fn sheared(self, force: Force) -> Stress {
        force.over(self.width * self.thickness) * 1.5
    }
}

/// What the root of a round pin bears under a force at its end, from any side.
///
/// ```
/// use slotwright_core::statics::knock::pin;
/// use slotwright_core::units::quantity::{Force, Length};
/// // 50 N at the end of 20 mm on a pin of 16 mm: 32 × 1 000 / (π × 16³) and 16 × 50 / (3 π × 16²) N/mm².
/// let bears = pin(Force::newton(50.0), Length::mm(20.0), Length::mm(16.0));
/// assert!((bears.bending.in_n_per_mm2() - 2.486_796).abs() < 1e-6, "{bears:?}");
/// assert!((bears.shear.in_n_per_mm2() - 0.331_573).abs() < 1e-6, "{bears:?}");
/// ```
// Source: statics of a cantilever with a round section: σ = 32 F a / (π d³), τ = 4 F / (3 A).
pub fn pin(force: Force, reach: Length, diameter: Length) -> Bears {
    let square = force.over(diameter * diameter);
    Bears { bending: square * (32.0 / PI * (reach / diameter)), shear: square * (16.0 / 3.0 / PI) }
}

/// What a strip between two cut-outs bears under a force in its middle, across the panel's face.
///
/// ```
/// use slotwright_core::statics::knock::strip;
/// use slotwright_core::units::quantity::{Force, Length};
/// // 50 N on a strip of 48 × 21 mm, 12 mm thick: 1.5 × 50 × 48 / (21 × 12²) and 0.75 × 50 / (21 × 12) N/mm².
/// let bears = strip(Force::newton(50.0), Length::mm(48.0), Length::mm(21.0), Length::mm(12.0));
/// assert!((bears.bending.in_n_per_mm2() - 1.190_476).abs() < 1e-6, "{bears:?}");
/// assert!((bears.shear.in_n_per_mm2() - 0.148_810).abs() < 1e-6, "{bears:?}");
/// ```
// Source: statics of a beam on two supports, on the safe side, as its ends are whole: M = F l / 4, V = F / 2.
pub fn strip(force: Force, length: Length, width: Length, thickness: Length) -> Bears {
    let bending = bent(force, length / 4.0, width, thickness);
    Bears { bending, shear: force.over(width * thickness) * 0.75 }
}

/// 6 F a / (b h²): bending over `high`.
fn bent(force: Force, lever: Length, wide: Length, high: Length) -> Stress {
    force.over(wide * high) * (6.0 * (lever / high))
}

/// The most shear in a rectangular rod that a force twists, so far beside its middle.
// Source: Roark's Formulas for Stress and Strain, 7th ed., table 10.1, solid rectangular section, 2a by 2b, a ≥ b; from memory:
// τ = 3 T / (8 a b²) (1 + 0.6095 b/a + 0.8865 (b/a)² − 1.8023 (b/a)³ + 0.9100 (b/a)⁴).
fn twisted(force: Force, beside: Length, wide: Length, high: Length) -> Stress {
    let (a, b) = (wide.max(high) / 2.0, wide.min(high) / 2.0);
    let ratio = b / a;
    let shape = 1.0 + ratio * (0.6095 + ratio * (0.8865 + ratio * (-1.8023 + ratio * 0.91)));
    force.over(a * b) * (3.0 / 8.0 * shape * (beside / b))
}

#[cfg(test)]
mod tests {
    use super::*;

    // Source: Timoshenko and Goodier, Theory of Elasticity, 3rd ed., section 109, table: the most shear of a twisted bar is
    // T / (k₂ w t²), k₂ = 0.208 of a square and 0.246 of one twice as wide; from memory.
    #[test]
    fn a_twisted_bar_is_that_of_the_handbook() {
        for (wide, factor) in [(20.0, 0.208), (40.0, 0.246)] {
            let found = twisted(Force::newton(100.0), Length::mm(30.0), Length::mm(wide), Length::mm(20.0));
            let expected = 100.0 * 30.0 / (factor * wide * 20.0 * 20.0);
            assert!((found.in_n_per_mm2() / expected - 1.0).abs() < 0.01, "{found:?} {expected}");
        }
    }
}
