//! How easily a unit tips, as the derived document says it.

use serde::Serialize;

use crate::statics::stability::push::{Push, Towards, least};
use crate::units::quantity::Force;
use crate::units::rounding::round_half_away;

/// The pushes at the top under which it begins to tip, over its foot or out of its base: a calculation, no test and no certificate.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StabilityDocument {
    /// The smallest of them, but for that to the rear: a wall stands there.
    pub least_push_n: f64,
    /// To which side that is.
    pub least_push_towards: Towards,
    /// To all four sides.
    pub pushes: Vec<PushDocument>,
}

/// The push to one side, its leaves open or shut as they hold it least.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PushDocument {
    /// To which side.
    pub towards: Towards,
    /// With nothing in it or on it.
    pub empty_n: f64,
    /// With what the range lays its shelves and its top out for.
    pub loaded_n: f64,
}

impl StabilityDocument {
    pub(super) fn of(pushes: [Push; 4]) -> Self {
        let least = least(pushes);
        let each = pushes.map(|Push { towards, empty, loaded, tied: _ }| PushDocument {
            towards,
            empty_n: newton(empty),
            loaded_n: newton(loaded),
        });
        Self { least_push_n: newton(least.empty), least_push_towards: least.towards, pushes: each.into() }
    }
}

/// A force to a tenth of a newton.
pub(super) fn newton(force: Force) -> f64 {
    round_half_away(force.in_newton() * 10.0) / 10.0
}
