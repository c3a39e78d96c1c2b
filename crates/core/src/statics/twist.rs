//! How far a board that three of its corners hold twists under a push at the fourth.

use crate::units::quantity::{Force, Length, Stiffness};

/// How far the free corner of a board moves under a force on it, so far along both edges from the corner that lies across.
///
/// Forces at the corners alone twist it evenly, w = κ x y: its twisting moment is half of the force and G t³ / 6 times κ, so that
/// δ = 3 F a b / (G t³). A tab or a pivot holds a corner at a point; the finite elements of `tests/outside` give way a little less.
///
/// ```
/// use slotwright_core::statics::twist::corner;
/// use slotwright_core::units::quantity::{Force, Length, Stiffness};
/// // 10 N at the corner of 383 × 1778 mm of 17.7 mm, G 620 N/mm²: 3 × 10 × 383 × 1778 / (620 × 5545.2) = 5.942 mm.
/// let sides = [383.0, 1778.0].map(Length::mm);
/// let found = corner(Force::newton(10.0), sides, Length::mm(17.7), Stiffness::n_per_mm2(620.0));
/// assert!((found.in_mm() - 5.942).abs() < 0.001);
/// ```
// Source: torsion of a thin rectangle, J = b t³ / 3: S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed.,
// § 11, from memory.
pub fn corner(force: Force, [along, across]: [Length; 2], thickness: Length, shear: Stiffness) -> Length {
    let (thick, area) = (thickness.in_mm(), along.in_mm() * across.in_mm());
    Length::mm(3.0 * force.in_newton() * area / (shear.in_n_per_mm2() * thick * thick * thick))
}
