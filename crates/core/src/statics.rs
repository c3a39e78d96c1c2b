//! Forces and tolerances: what stands, bends, buckles and fits.

pub mod buckling;
pub mod detent;
pub mod fatigue;
pub mod fit;
pub mod knock;
pub mod lifting;
pub mod sag;
pub mod stability;
pub mod twist;
