//! Which carrier takes the unit, in how many packages.

use crate::bill::Bill;
use crate::quantity::Length;
use crate::range::{Carrier, Range};

/// The carrier that takes the unit and the number of packages.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Carriage<'a> {
    /// The carrier.
    pub carrier: &'a Carrier,
    /// How many packages.
    pub packages: u32,
}

/// The first carrier of the range within whose limits the flat packs stay, else the last one.
///
/// A package is a stack of parts: as long and as wide as the largest blank, its share of the
/// parts' thicknesses high. `None` only if the range has no carrier.
pub fn carriage<'a>(range: &'a Range, bill: &Bill) -> Option<Carriage<'a>> {
    let carrier = range.carriers.iter().find(|carrier| takes(carrier, bill)).or(range.carriers.last())?;
    Some(Carriage { carrier, packages: bill.packages(carrier.package_most_kg) })
}

/// Whether the flat packs stay within a carrier's limits.
pub(crate) fn takes(carrier: &Carrier, bill: &Bill) -> bool {
    let (long, wide) = bill.footprint;
    let high = bill.stack / f64::from(bill.packages(carrier.package_most_kg));
    let girth: Length = (wide + high) * 2.0;
    bill.heaviest <= carrier.package_most_kg
        && long <= carrier.longest_mm
        && long + girth <= carrier.length_and_girth_mm
}
