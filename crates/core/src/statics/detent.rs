//! The spring of a detent, and what opens a leaf against it.
//!
//! A tongue in the plane of a board is a cantilever that bends over its height, by bending and by shear in that plane. The wood behind
//! its root gives too, and in the corners beside it stress is more than a rod has. Both come from finite elements on outlines like
//! that of `panel/detent`, for tongues 1 to 4 times as high as the radius of their slit is and 12 to 22 times as long as high, as the check
//! of ranges asks for (`range/check/relations`); `tests/outside/strength.py` holds them for the demo range's own and four round it.

use crate::cabinet::layout::{Layout, Picked};
use crate::cabinet::leaf;
use crate::choice::{Choice, Fill};
use crate::range::{Board, Detent};
use crate::statics::knock::{Bears, Stub};
use crate::units::quantity::{Force, Length, Stiffness};

/// So many times its height a tongue bends as if it were longer, since the wood behind its root gives. Found: 1.06 to 1.22.
const ROOT_GIVES: f64 = 1.1;

/// By this, times the root of height over radius, the corners beside its root bear more than a rod. Found: 0.40 to 0.50.
const CORNER: f64 = 0.51;

/// Friction of wood on wood, coated and dry.
// From memory: 0.3 to 0.5 at rest, less where it is waxed or worn.
pub const FRICTION: f64 = 0.4;

/// A tongue, from its root to the nose at its end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tongue {
    /// From its root to the tip of its nose.
    pub lever: Length,
    /// Its height, over which it bends.
    pub height: Length,
    /// Radius of the ends of the slit and of the gap over it, beside its root.
    pub relief: Length,
    /// Thickness of the wood.
    pub thickness: Length,
    /// Modulus of elasticity along it.
    pub bending: Stiffness,
    /// Shear modulus in the plane of the board.
    pub shear: Stiffness,
}

impl Tongue {
    /// That of a detent cut from a board with its face grain upright: it runs across that.
    // Plies of both directions lie beside each other where it bends in its plane, and bear as in tension and compression.
    pub fn of(detent: Detent, board: &Board) -> Self {
        Self {
            lever: detent.lever(),
            height: detent.tongue,
            relief: detent.relief(),
            thickness: board.thickness(),
            bending: board.e_plane_across_n_per_mm2,
            shear: board.shear_modulus_n_per_mm2,
        }
    }

    /// The force that lifts its nose by so much.
    ///
    /// ```
    /// use slotwright_core::statics::detent::Tongue;
    /// use slotwright_core::units::quantity::{Length, Stiffness};
    /// // 83.4 mm long and, as its root gives, 90, 6 mm high, 18 mm thick, E 7 500, G 600 N/mm²: it bends by 90³ / (3 × 7 500 × 324) =
    /// // 0.1 mm under a newton and slides by 1.2 × 83.4 / (600 × 108) = 0.001 544 mm.
    /// let [lever, height, relief, thickness] = [83.4, 6.0, 3.1, 18.0].map(Length::mm);
    /// let [bending, shear] = [7500.0, 600.0].map(Stiffness::n_per_mm2);
    /// let force = Tongue { lever, height, relief, thickness, bending, shear }.lifted(Length::mm(1.2));
    /// assert!((force.in_newton() - 1.2 / 0.101_544).abs() < 1e-4, "{force:?}");
    /// ```
    // Source: statics of a cantilever: δ = F L³ / (3 E I) + 1.2 F L / (G A), I = b h³ / 12.
    pub fn lifted(self, by: Length) -> Force {
        let [lever, high, thick] = [self.lever, self.height, self.thickness].map(Length::in_mm);
        let bends = lever + ROOT_GIVES * high;
        let bent = 4.0 * bends * bends * bends / (self.bending.in_n_per_mm2() * thick * high * high * high);
        let slid = 1.2 * lever / (self.shear.in_n_per_mm2() * thick * high);
        Force::newton(by.in_mm() / (bent + slid))
    }

    /// What it bears then at its root, in the corners beside it.
    pub fn bears(self, by: Length) -> Bears {
        let Self { lever: reach, height: width, thickness, .. } = self;
        let root = Stub { reach, width, thickness, beside: Length::ZERO }.in_plane(self.lifted(by));
        Bears { bending: root.bending * (1.0 + CORNER * libm::sqrt(width / self.relief)), shear: root.shear }
    }
}

/// The level force that draws a flank of a slope, rise over run, past an edge on which a force presses it down.
///
/// ```
/// use slotwright_core::statics::detent::drawn;
/// use slotwright_core::units::quantity::Force;
/// // A flank of 45° without friction takes the force itself; with friction of 0.5 it is 10 N × 1.5 / 0.5.
/// let force = |friction| drawn(Force::newton(10.0), 1.0, friction).in_newton();
/// assert!((force(0.0) - 10.0).abs() < 1e-12 && (force(0.5) - 30.0).abs() < 1e-12);
/// ```
// Source: statics of the inclined plane: N tan(α + φ), tan φ the friction.
pub fn drawn(presses: Force, slope: f64, friction: f64) -> Force {
    presses * ((slope + friction) / (1.0 - slope * friction))
}

/// What a finger opens a leaf with against its detent, in the leaf's hole or, where it has none, at its free edge: the most on the
/// way over the nose, and of all leaves of a unit. A leaf's weight is nothing to it, its width is. `None` where no leaf is, or no
/// detent.
pub fn leaf_opens(picked: Picked<'_>, choice: &Choice, layout: &Layout) -> Option<Force> {
    let build = &picked.range.build;
    let detent = Detent::of(build, layout.body)?;
    let at_nose = drawn(Tongue::of(detent, picked.body).lifted(detent.overlap), detent.slope, FRICTION);
    let forces = choice.bays.iter().zip(&layout.bays).filter_map(|(bay, span)| {
        let Fill::Leaf(hung) = bay.fill else { return None };
        let leaf = leaf::of(span, layout, build, hung);
        let hole = leaf.finger_hole(build, layout.body, hung);
        let finger = hole.map_or(leaf.free(), |hole| leaf.from_axis(hole.u));
        Some(at_nose * (leaf.to_stop(layout.body) / finger))
    });
    forces.reduce(Force::max)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::judge;
    use crate::testing::demo;

    // Worked for the demo range: a tongue of 109.3 × 6.5 mm, 17.7 mm thick, E 8 352, G 620 N/mm², bends as if it were 116.4 mm long:
    // 4 × 116.4³ / (8 352 × 17.7 × 6.5³) = 0.155 6 mm a newton, and 1.2 × 109.3 / (620 × 115) = 0.001 8 by shear: 5.72 N at 0.9 mm. Its
    // corners of 3.1 mm bear 1 + 0.51 √(6.5 / 3.1) = 1.738 times 6 × 5.72 × 109.3 / (17.7 × 6.5²), 8.72 N/mm². Up to the top it gives
    // 1.755 mm, and they bear 17.0 N/mm². The flank of 0.8 and friction of 0.4 make 5.72 × 1.2 / 0.68 = 10.1 N of it. A finger hole of
    // 34 mm begins where the stop ends behind the leaf, or a rounding of 6 and a ligament of 20 mm from its edge.
    #[test]
    fn a_leaf_opens_as_by_hand() {
        let range = demo();
        for model in &range.models {
            let choice = Choice::starting(model).unwrap();
            let judged = judge(&range, &choice);
            let (picked, layout) = (judged.picked.unwrap(), judged.layout.unwrap());
            let has_leaf = layout.bays.iter().any(|bay| bay.stop.is_some());
            let opens = leaf_opens(picked, &choice, &layout);
            assert_eq!(opens.is_some(), has_leaf, "{}", model.key);
            if let Some(opens) = opens {
                let detent = Detent::of(&range.build, layout.body).unwrap();
                let tongue = Tongue::of(detent, picked.body);
                let bears = [detent.overlap, detent.lifts_by()].map(|by| tongue.bears(by).bending.in_n_per_mm2());
                assert!((bears[0] - 8.72).abs() < 0.02 && (bears[1] - 17.0).abs() < 0.05, "{bears:?}");
                let leaves = choice.bays.iter().zip(&layout.bays).filter_map(|(bay, span)| match bay.fill {
                    Fill::Leaf(hung) => Some(leaf::of(span, &layout, &range.build, hung)),
                    _ => None,
                });
                // From the axis to the nose and to the finger; the narrowest leaf takes the most.
                let force = |leaf: leaf::Leaf| {
                    let free = leaf.free().in_mm();
                    let covered = leaf.covered.in_mm();
                    10.09 * (free - covered + layout.body.in_mm() / 2.0) / (free - covered.max(26.0) - 17.0)
                };
                let expected = leaves.map(force).fold(0.0, f64::max);
                assert!((opens.in_newton() - expected).abs() < 0.05, "{opens:?} {expected}");
            }
        }
    }
}
