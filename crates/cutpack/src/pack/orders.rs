//! Orders as they come into a pack: each is taken, or set aside with its reason.

use std::collections::BTreeMap;

use slotwright_core::order::derive::Derived;
use slotwright_core::order::intake::{KnownRange, Verified, read_known};
use slotwright_core::order::spec::{Checked, Difference, OrderSpec, SpecError};

/// An order that was read, with its range.
#[derive(Debug)]
pub struct OrderRead<'a> {
    /// Its number, by which parts and papers name it: where it stands among those that were given, from 1.
    pub number: u32,
    /// The name of its file.
    pub file: String,
    /// The order, or why there is none.
    pub result: Result<(OrderSpec, &'a KnownRange), SpecError>,
}

/// An order that is cut.
#[derive(Debug)]
pub struct TakenOrder<'a> {
    /// Its number; those that are set aside have theirs as well.
    pub number: u32,
    /// The name of its file.
    pub file: &'a str,
    /// The order.
    pub spec: &'a OrderSpec,
    /// The unit as it is cut.
    pub cut: Derived<'a>,
    /// What is different as it is cut, by the batches that were measured and the cutter that is set.
    pub differs_as_cut: Vec<Difference>,
}

/// An order that is not cut.
#[derive(Debug)]
pub struct SetAside<'a> {
    /// The name of its file.
    pub file: &'a str,
    /// Why.
    pub reason: Reason<'a>,
}

/// Why an order is not cut.
#[derive(Debug)]
pub enum Reason<'a> {
    /// It cannot be read or used.
    Unreadable(SpecError),
    /// Something does not come out as it was promised, or stops it.
    Differs(Checked),
    /// It holds as it was promised, but not with the batch or the cutter by which it would be cut.
    NotAsCut(Checked),
    /// It was given before, in that file.
    Again(&'a str),
}

/// All orders of a pack.
#[derive(Debug, Default)]
pub struct Orders<'a> {
    /// Those that are cut, in the order in which they were given.
    pub taken: Vec<TakenOrder<'a>>,
    /// Those that are not.
    pub aside: Vec<SetAside<'a>>,
}

impl<'a> OrderRead<'a> {
    /// Reads an order; what it promises is derived later.
    pub fn of(number: u32, file: String, bytes: &[u8], known: &'a [KnownRange]) -> Self {
        Self { number, file, result: read_known(bytes, &known.iter()) }
    }
}

impl<'a> Orders<'a> {
    /// Derives every order again.
    pub fn of(read: &'a [OrderRead<'a>]) -> Self {
        let (mut orders, mut first) = (Self::default(), BTreeMap::new());
        for OrderRead { number, file, result } in read {
            match taken(file, result, &mut first) {
                Ok(Verified { cut, differs_as_cut, .. }) => {
                    let Ok((spec, _)) = result else { continue };
                    orders.taken.push(TakenOrder { number: *number, file, spec, cut, differs_as_cut });
                }
                Err(reason) => orders.aside.push(SetAside { file, reason }),
            }
        }
        orders
    }
}

/// An order that holds and was not given before.
fn taken<'a>(
    file: &'a str,
    result: &'a Result<(OrderSpec, &'a KnownRange), SpecError>,
    first: &mut BTreeMap<String, &'a str>,
) -> Result<Verified<'a>, Reason<'a>> {
    let (spec, known) = result.as_ref().map_err(|error| Reason::Unreadable(error.clone()))?;
    let verified = known.verify(spec).map_err(Reason::Unreadable)?;
    if verified.stops_as_cut {
        return Err(Reason::NotAsCut(verified.checked));
    }
    if !verified.checked.holds() {
        return Err(Reason::Differs(verified.checked));
    }
    if let Some(before) = first.get(&spec.digest.to_string()) {
        return Err(Reason::Again(before));
    }
    first.insert(spec.digest.to_string(), file);
    Ok(verified)
}

#[cfg(test)]
mod tests;
