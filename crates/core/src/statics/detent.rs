//! The spring of a detent, and what opens a leaf against it.
//!
//! A tongue in the plane of a board is a cantilever that bends over its height, by bending and by shear in that plane. That its root
//! gives a little too is not counted, which is on the safe side of what it bears.

use crate::cabinet::layout::{Layout, Picked};
use crate::choice::{Choice, Fill};
use crate::range::{Board, Detent};
use crate::statics::knock::{Bears, Stub};
use crate::units::quantity::{Force, Length, Stiffness};

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
    /// // 90 mm long, 6 mm high, 18 mm thick, E 7 500, G 600 N/mm²: it bends by 90³ / (3 × 7 500 × 324) = 0.1 mm under a newton
    /// // and slides by 1.2 × 90 / (600 × 108) = 0.001 667 mm.
    /// let [lever, height, thickness] = [90.0, 6.0, 18.0].map(Length::mm);
    /// let [bending, shear] = [7500.0, 600.0].map(Stiffness::n_per_mm2);
    /// let force = Tongue { lever, height, thickness, bending, shear }.lifted(Length::mm(1.2));
    /// assert!((force.in_newton() - 1.2 / 0.101_667).abs() < 1e-4, "{force:?}");
    /// ```
    // Source: statics of a cantilever: δ = F L³ / (3 E I) + 1.2 F L / (G A), I = b h³ / 12.
    pub fn lifted(self, by: Length) -> Force {
        let [lever, high, thick] = [self.lever, self.height, self.thickness].map(Length::in_mm);
        let bent = 4.0 * lever * lever * lever / (self.bending.in_n_per_mm2() * thick * high * high * high);
        let slid = 1.2 * lever / (self.shear.in_n_per_mm2() * thick * high);
        Force::newton(by.in_mm() / (bent + slid))
    }

    /// What its root bears then.
    pub fn bears(self, by: Length) -> Bears {
        let Self { lever: reach, height: width, thickness, .. } = self;
        Stub { reach, width, thickness, beside: Length::ZERO }.in_plane(self.lifted(by))
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

/// What opens a leaf of a unit at its free edge against its detent: the most on the way over the nose. It depends on no leaf's
/// weight or size; `None` where no leaf is, or no detent.
pub fn leaf_opens(picked: Picked<'_>, choice: &Choice, layout: &Layout) -> Option<Force> {
    let has_leaf = choice.bays.iter().any(|bay| matches!(bay.fill, Fill::Leaf(_)));
    let detent = Detent::of(&picked.range.build, layout.body).filter(|_| has_leaf)?;
    Some(drawn(Tongue::of(detent, picked.body).lifted(detent.overlap), detent.slope, FRICTION))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::judge;
    use crate::testing::demo;

    // Worked for the demo range: a tongue of 90.02 × 6 mm, 17.7 mm thick, E 8 352, G 620 N/mm², gives 4 × 90.02³ / (8 352 × 17.7 ×
    // 216) = 0.091 4 mm a newton by bending and 1.2 × 90.02 / (620 × 106.2) = 0.001 6 by shear: 12.9 N at 1.2 mm, and its root bears
    // 6 × 12.9 × 90.02 / (17.7 × 36) = 10.9 N/mm². The flank of 0.6 and friction of 0.4 make it 12.9 × 1.0 / 0.76 = 17.0 N. Up to
    // the top it gives 1.993 mm, which is 21.4 N and 18.2 N/mm².
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
                assert!((opens.in_newton() - 17.0).abs() < 0.1, "{opens:?}");
                let detent = Detent::of(&range.build, layout.body).unwrap();
                let tongue = Tongue::of(detent, picked.body);
                let bears = [detent.overlap, detent.lifts_by()].map(|by| tongue.bears(by).bending.in_n_per_mm2());
                assert!((bears[0] - 10.9).abs() < 0.1 && (bears[1] - 18.2).abs() < 0.1, "{bears:?}");
            }
        }
    }
}
