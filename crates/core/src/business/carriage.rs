//! Which carrier takes the unit, and what lies in which package.

use crate::business::bill::{Bill, FlatPart};
use crate::cabinet::panel::PanelId;
use crate::range::{Carrier, Handling, Range};
use crate::units::figure::Figure;
use crate::units::quantity::{Length, Mass};

/// The carrier that takes the unit, and the packages.
#[derive(Clone, Debug, PartialEq)]
pub struct Carriage<'a> {
    /// The carrier.
    pub carrier: &'a Carrier,
    /// The packages, the one with the heaviest part first.
    pub packages: Vec<Package>,
}

/// A stack of whole parts with their protection.
#[derive(Clone, Debug, PartialEq)]
pub struct Package {
    /// Its parts.
    pub parts: Vec<PanelId>,
    /// What it weighs, protection included.
    pub mass: Mass,
    /// The longest side of its parts.
    pub long: Length,
    /// The widest of their shorter sides.
    pub wide: Length,
    /// Their thicknesses on each other.
    pub high: Length,
}

/// What one package of a carrier may be.
#[derive(Clone, Copy, Debug)]
pub struct Most<'a> {
    carrier: &'a Carrier,
    handling: &'a Handling,
}

/// What of a package is beyond a limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Excess {
    /// What it is.
    pub found: Figure,
    /// The limit.
    pub allowed: Figure,
    /// The most people who may not lift it, if they set the limit; else the carrier does.
    pub lifted_by: Option<u8>,
}

impl<'a> Most<'a> {
    /// That of a carrier.
    pub fn of(range: &'a Range, carrier: &'a Carrier) -> Self {
        Self { carrier, handling: &range.handling }
    }

    /// What of a package is beyond it: its mass first.
    pub fn excess(self, package: &Package) -> Option<Excess> {
        let accepted = self.carrier.package_most_kg;
        let of_mass =
            |most, lifted_by| Excess { found: Figure::mass(package.mass), allowed: Figure::mass(most), lifted_by };
        let of_length =
            |found, most| Excess { found: Figure::length(found), allowed: Figure::length(most), lifted_by: None };
        let girth = package.long + (package.wide + package.high) * 2.0;
        // What the carrier does not accept it does not, whoever lifts it.
        if package.mass > accepted {
            Some(of_mass(accepted, None))
        } else if let Some((people, lifted)) = self.overburdened(package.mass) {
            Some(of_mass(lifted, Some(people)))
        } else if package.long > self.carrier.longest_mm {
            Some(of_length(package.long, self.carrier.longest_mm))
        } else {
            let most = self.carrier.length_and_girth_mm;
            (girth > most).then(|| of_length(girth, most))
        }
    }

    /// The most people, no fewer than the carrier has, who may not lift a mass, and what they may: one more may lift it,
    /// if more are counted on at all.
    fn overburdened(self, mass: Mass) -> Option<(u8, Mass)> {
        let lifted =
            (self.carrier.people..=Handling::PEOPLE_MOST).map(|people| (people, self.handling.together(people)));
        lifted.take_while(|(_, lifted)| mass > *lifted).last()
    }
}

impl Package {
    /// The same with one more part.
    fn with(&self, part: &FlatPart, range: &Range) -> Self {
        let mut parts = self.parts.clone();
        parts.push(part.id);
        let protection = Mass::kg(range.rates.pack_kg_per_m2.in_kg_per_m2() * part.face.in_m2());
        Self {
            parts,
            mass: self.mass + part.mass + protection,
            long: self.long.max(part.long),
            wide: self.wide.max(part.wide),
            high: self.high + part.thick,
        }
    }

    fn of(part: &FlatPart, range: &Range) -> Self {
        let (mass, none) = (range.rates.pack_kg_per_package, Length::ZERO);
        Self { parts: Vec::new(), mass, long: none, wide: none, high: none }.with(part, range)
    }
}

/// The first carrier of the range within whose limits all packages stay, else the last one.
///
/// `None` only if the range has no carrier.
pub fn carriage<'a>(range: &'a Range, bill: &Bill) -> Option<Carriage<'a>> {
    let mut last = None;
    for carrier in &range.carriers {
        let carriage = Carriage { carrier, packages: packages(range, carrier, bill) };
        if carriage.refused(range).is_none() {
            return Some(carriage);
        }
        last = Some(carriage);
    }
    last
}

impl Carriage<'_> {
    /// The first package that its carrier does not take as usual, and what of it is beyond a limit.
    pub fn refused(&self, range: &Range) -> Option<(&Package, Excess)> {
        let most = Most::of(range, self.carrier);
        self.packages.iter().find_map(|package| Some((package, most.excess(package)?)))
    }
}

/// First-fit decreasing: each part, the heaviest first, goes into the first package that it leaves within the limits.
/// What is beyond them by itself has a package of its own.
// Source: D. S. Johnson, Near-optimal bin packing algorithms, thesis, MIT (1973).
fn packages(range: &Range, carrier: &Carrier, bill: &Bill) -> Vec<Package> {
    let most = Most::of(range, carrier);
    let mut packages: Vec<Package> = Vec::new();
    for part in &bill.flat {
        let room = packages.iter_mut().find_map(|package| {
            let fuller = package.with(part, range);
            most.excess(&fuller).is_none().then_some((package, fuller))
        });
        match room {
            Some((package, fuller)) => *package = fuller,
            None => packages.push(Package::of(part, range)),
        }
    }
    packages
}

#[cfg(test)]
mod tests;
