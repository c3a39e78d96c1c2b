//! Forces and tolerances: what stands, bends, buckles and fits.

pub mod buckling;
pub mod sag;
