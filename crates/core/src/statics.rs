//! Forces and tolerances: what stands, bends, buckles and fits.

pub mod buckling;
pub mod fit;
pub mod sag;
pub mod stability;
