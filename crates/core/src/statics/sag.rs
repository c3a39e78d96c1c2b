//! How far boards bend under their load, and over the years.
//!
//! A board is taken as a beam on simple supports.

use crate::range::{Board, Strength};
use crate::units::quantity::{AreaMass, Force, Length, Stiffness};

/// A board as a beam: how thick it is, how stiff along its span, and how its plies slide on each other.
#[derive(Clone, Copy, Debug)]
pub struct Beam {
    /// Thickness of the wood.
    pub thickness: Length,
    /// Modulus of elasticity in bending along the span.
    pub bending: Stiffness,
    /// Modulus of planar (rolling) shear; `None` leaves shear out, as many published tables do.
    pub planar: Option<Stiffness>,
}

impl Beam {
    /// A board whose face grain runs along the span.
    pub fn along(board: &Board) -> Self {
        Self {
            thickness: board.thickness(),
            bending: board.e_along_n_per_mm2,
            planar: Some(board.planar_shear_modulus_n_per_mm2),
        }
    }

    /// E I of a strip 1 mm wide.
    fn rigid(self) -> f64 {
        let thick = self.thickness.in_mm();
        self.bending.in_n_per_mm2() * thick * thick * thick / 12.0
    }

    /// 1 / (G A′) of a strip 1 mm wide, A′ = 5/6 of its section.
    // Source: Wood Handbook, FPL-GTR-190 (2010), eq. 9-2; A′ = 5 b h / 6 from memory.
    fn slides(self) -> f64 {
        self.planar.map_or(0.0, |planar| 6.0 / (5.0 * planar.in_n_per_mm2() * self.thickness.in_mm()))
    }
}

/// Sag in mid-span of a board on simple supports under an area load, by bending and by shear.
///
/// δ = 5 w L⁴ / (384 E I) + w L² / (8 G A′) for a strip of unit width, so the depth of the shelf falls out.
///
/// ```
/// use slotwright_core::units::quantity::{AreaMass, Length, Stiffness};
/// use slotwright_core::statics::sag::{Beam, sag};
/// // 40 kg over 800 × 300 mm of 17.6 mm birch plywood, E 10 048 N/mm²: 1.910 mm; plies that slide with
/// // 200 N/mm² add 392.4 × 800 / (8 × 200 × 5/6 × 300 × 17.6) = 0.0446 mm.
/// let load = AreaMass::kg_per_m2(40.0 / (0.8 * 0.3));
/// let beam = Beam { thickness: Length::mm(17.6), bending: Stiffness::n_per_mm2(10048.0), planar: None };
/// let [bent, both] = [None, Some(Stiffness::n_per_mm2(200.0))].map(|planar| sag(Length::mm(800.0), load, Beam { planar, ..beam }));
/// assert!((bent.in_mm() - 1.910).abs() < 0.002 && ((both - bent).in_mm() - 0.0446).abs() < 0.0001);
/// ```
// Source: Wood Handbook, FPL-GTR-190 (2010), eq. 9-2, table 9-1: k_b = 5/384, k_s = 1/8 with the total load.
pub fn sag(span: Length, load: AreaMass, beam: Beam) -> Length {
    Gives::of(beam).under(span, load)
}

/// How far a strip 1 mm wide gives under 1 N on each millimetre: by bending, over the span⁴; by shear, over its square.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Gives {
    bending: f64,
    shear: f64,
}

impl Gives {
    /// A strip of that board.
    pub(crate) fn of(beam: Beam) -> Self {
        Self { bending: 5.0 / (384.0 * beam.rigid()), shear: beam.slides() / 8.0 }
    }

    /// Its sag in mid-span under an area load.
    pub(crate) fn under(self, span: Length, load: AreaMass) -> Length {
        let square = span.in_mm() * span.in_mm();
        Length::mm(pressure(load) * square * (square * self.bending + self.shear))
    }
}

/// Sag in mid-span of a strip of a board on simple supports under a force on it so far from the nearer support.
///
/// ```
/// use slotwright_core::units::quantity::{Force, Length, Stiffness};
/// use slotwright_core::statics::sag::{Beam, sag_of_point};
/// // 392.4 N in the middle of 800 × 300 mm of 17.6 mm birch plywood, E 10 048 N/mm²: 3.056 mm.
/// let beam = Beam { thickness: Length::mm(17.6), bending: Stiffness::n_per_mm2(10048.0), planar: None };
/// let span = Length::mm(800.0);
/// let found = sag_of_point(span, span / 2.0, Force::newton(392.4), Length::mm(300.0), beam);
/// assert!((found.in_mm() - 3.056).abs() < 0.002);
/// ```
// Source: Wood Handbook, FPL-GTR-190 (2010), table 9-1: k_b = 1/48, k_s = 1/4 in the middle; beside it the usual
// a (3 L² − 4 a²) / (48 E I) of beam tables, and the moment there over G A′, F a / (2 G A′), which are the same there.
pub fn sag_of_point(span: Length, from_support: Length, force: Force, strip: Length, beam: Beam) -> Length {
    let (length, a) = (span.in_mm(), from_support.in_mm());
    let bent = (3.0 * length * length - 4.0 * a * a) / (48.0 * beam.rigid());
    Length::mm(force.in_newton() * a / strip.in_mm() * (bent + beam.slides() / 2.0))
}

/// The pressure of a mass on an area, in N/mm².
fn pressure(load: AreaMass) -> f64 {
    // Source: standard gravity, ISO 80000-3:2006, 3-9.1.
    load.in_kg_per_m2() * 9.806_65 / 1_000_000.0
}

/// The load that bends as far at once as the given ones do over the years:
/// own weight × (1 + k) + imposed × (1 + ψ₂ k).
// Source: EN 1995-1-1:2004+A1, 2.2.3, final deflection for a permanent and one variable action.
pub fn lasting(own: AreaMass, imposed: AreaMass, strength: &Strength) -> AreaMass {
    own * (1.0 + strength.creep_factor) + imposed * (1.0 + strength.lasting_share * strength.creep_factor)
}

/// The own weight of a board for each unit of area.
pub fn own_load(board: &Board) -> AreaMass {
    AreaMass::kg_per_m2(board.density_kg_per_m3.in_kg_per_m3() * board.thickness().in_m())
}

/// The widest span whose sag stays within span / `over`: 5 w L³ / (384 E I) + w L / (8 G A′) = 1 / over.
///
/// ```
/// use slotwright_core::units::quantity::{AreaMass, Length, Stiffness};
/// use slotwright_core::statics::sag::{Beam, widest_span};
/// // 50 lb/ft² on 17.6 mm, E 10 048 N/mm², span/144, no shear: 1005.6 mm.
/// let beam = Beam { thickness: Length::mm(17.6), bending: Stiffness::n_per_mm2(10048.0), planar: None };
/// let found = widest_span(AreaMass::kg_per_m2(244.1), beam, 144.0);
/// assert!((found.in_mm() - 1005.6).abs() < 0.5);
/// ```
pub fn widest_span(load: AreaMass, beam: Beam, over: f64) -> Length {
    // L³ + 3 p L = 2 q by Cardano's rule: both terms help, so there is one real root.
    let unit = 384.0 * beam.rigid() / 5.0;
    let (p, q) = (unit * beam.slides() / 24.0, unit / (2.0 * pressure(load) * over));
    let root = libm::cbrt(q + (q * q + p * p * p).sqrt());
    Length::mm(root - p / root)
}
