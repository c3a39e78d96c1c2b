//! The force under which an upright gives way to the side.
//!
//! The back's slots enclose its hooks, one over the other along its rear edge: it is judged as a strip that is held
//! there and free at the front, and between two hooks as a column that is free at both edges; each under all that it
//! carries. Left out, on the safe side: what shelves and stiles hold.

use smallvec::SmallVec;

use super::sag::own_load;
use crate::cabinet::layout::{BaySpan, Layout, Picked};
use crate::range::BAYS_MOST;
use crate::units::quantity::{Area, AreaMass, Force, Length, Mass, Stiffness};

/// An upright as a flat strip that stands: from its front edge to the back, from base to top.
#[derive(Clone, Copy, Debug)]
pub struct Strip {
    /// From the front edge to the back.
    pub depth: Length,
    /// From the base to the top.
    pub height: Length,
    /// From one hook to the next.
    pub between: Length,
    /// Thickness of the wood.
    pub thickness: Length,
    /// Modulus of elasticity in bending along its height.
    pub bending: Stiffness,
    /// Panel shear modulus, by which it resists twisting.
    pub twisting: Stiffness,
}

impl Strip {
    /// Thickness³ / 12.
    fn inertia(self) -> f64 {
        let thick = self.thickness.in_mm();
        thick * thick * thick / 12.0
    }

    /// The force under which it buckles if it is held at its ends and along the back, free at the front. The force
    /// comes in over a share of the depth, from the free edge on: 1 for all of it.
    ///
    /// ```
    /// use slotwright_core::units::quantity::{Length, Stiffness};
    /// use slotwright_core::statics::buckling::Strip;
    /// // 300 × 1 800 mm of 17.6 mm, E 10 048, G 620 N/mm²: 12 × 281 675 / 300 + π² × 4 564 954 × 300 / 1 800² = 15 439 N.
    /// let [depth, height, between, thickness] = [300.0, 1800.0, 450.0, 17.6].map(Length::mm);
    /// let [bending, twisting] = [10048.0, 620.0].map(Stiffness::n_per_mm2);
    /// let strip = Strip { depth, height, between, thickness, bending, twisting };
    /// assert!((strip.held(1.0).in_newton() - 15_439.0).abs() < 1.0);
    /// // A force on the free edge alone does so at a third of it.
    /// assert!((strip.held(0.0).in_newton() - 15_439.0 / 3.0).abs() < 1.0);
    /// ```
    // Source: Kollár, J. Struct. Eng. 128 (2002) 1202, from memory: the strip turns about the line that holds it, so
    // N m = 4 D66 / b + π² D11 b / (3 L²), with m the mean of (y/b)² where the force comes in: a third over all of b.
    pub fn held(self, share: f64) -> Force {
        let (deep, slender) = (self.depth.in_mm(), core::f64::consts::PI / self.height.in_mm());
        let twist = 4.0 * self.twisting.in_n_per_mm2() * self.inertia() / deep;
        let bend = slender * slender * self.bending.in_n_per_mm2() * self.inertia() * deep / 3.0;
        // The mean of (y/b)² over that share at the free edge: (1 − (1 − s)³) / (3 s).
        let mean = 1.0 - share + share * share / 3.0;
        Force::newton((twist + bend) / mean)
    }

    /// The force under which it buckles between two hooks, free at both edges, with so much of its depth whole.
    ///
    /// ```
    /// use slotwright_core::units::quantity::{Length, Stiffness};
    /// use slotwright_core::statics::buckling::Strip;
    /// // 300 mm deep, hooks 450 mm apart, 17.6 mm, E 10 048 N/mm²: π² × 4 564 954 × 300 / 450² = 66 747 N.
    /// let [depth, height, between, thickness] = [300.0, 1800.0, 450.0, 17.6].map(Length::mm);
    /// let [bending, twisting] = [10048.0, 620.0].map(Stiffness::n_per_mm2);
    /// let strip = Strip { depth, height, between, thickness, bending, twisting };
    /// assert!((strip.free(1.0).in_newton() - 66_747.0).abs() < 2.0);
    /// ```
    // Source: Euler's column, held at both ends.
    pub fn free(self, whole: f64) -> Force {
        let slender = core::f64::consts::PI / self.between.in_mm();
        Force::newton(slender * slender * self.bending.in_n_per_mm2() * self.inertia() * self.depth.in_mm() * whole)
    }
}

/// What an upright of a unit is as a strip, over the years.
pub fn strip(picked: Picked<'_>, layout: &Layout) -> Strip {
    let creep = 1.0 + picked.range.strength.creep_factor;
    Strip {
        depth: layout.clear_depth(),
        height: layout.clear_height(),
        between: layout.hooks.pitch,
        thickness: picked.body.thickness(),
        // The face grain of uprights stands.
        bending: picked.body.e_along_n_per_mm2 / creep,
        twisting: picked.body.shear_modulus_n_per_mm2 / creep,
    }
}

/// What a bay brings to one of its uprights.
fn half_load(picked: Picked<'_>, layout: &Layout, span: &BaySpan) -> Mass {
    let own = own_load(picked.body);
    let on = |load: AreaMass, area: Area| Mass::kg((load + own).in_kg_per_m2() * area.in_m2() / 2.0);
    let shelf = on(picked.model.shelf_load_kg_per_m2, span.clear() * layout.clear_depth());
    let top = on(picked.model.top_load_kg_per_m2, span.clear() * layout.depth);
    top + shelf * f64::from(u32::try_from(span.shelves.len()).unwrap_or(u32::MAX))
}

/// What presses on each upright, from the left.
pub fn pressed(picked: Picked<'_>, layout: &Layout) -> SmallVec<[Mass; BAYS_MOST + 1]> {
    let mut all: SmallVec<[Mass; BAYS_MOST + 1]> = layout.stiles.iter().map(|_| Mass::ZERO).collect();
    for (bay, span) in layout.bays.iter().enumerate() {
        let half = half_load(picked, layout, span);
        // An upright carries half of the bay at each side of it.
        all.iter_mut().skip(bay).take(2).for_each(|upright| *upright += half);
    }
    all
}

/// What an upright carries: along the back, and between two hooks.
#[derive(Clone, Copy, Debug)]
pub struct Carries {
    held: Force,
    free: Force,
}

impl Carries {
    /// Shelves hang in slots of the front edge, over this share of the depth: their load comes in there, and only the
    /// wood behind is whole.
    pub fn of(strip: Strip, slot: f64) -> Self {
        Self { held: strip.held(slot), free: strip.free(1.0 - slot) }
    }

    /// How many times its load an upright carries.
    pub fn times(self, pressed: Mass) -> f64 {
        self.held.min(self.free) / pressed.weight()
    }
}
