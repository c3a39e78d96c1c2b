//! The packages of an order, as they are packed and carried.

use slotwright_core::business::carriage::{self, carriage};
use slotwright_core::range::Carrier;
use slotwright_core::statics::lifting::{HIGH, Lift};
use slotwright_core::units::quantity::{Length, Mass};

use super::TakenOrder;
use super::lot::{Part, parts};
use super::work::order_job;

/// The packages of an order and who takes them.
#[derive(Clone, Debug)]
pub struct Packages<'a> {
    /// The carrier.
    pub carrier: &'a Carrier,
    /// The packages: the one that is opened first comes first.
    pub packages: Vec<Package<'a>>,
}

/// A package.
#[derive(Clone, Debug)]
pub struct Package<'a> {
    /// Its parts: what goes in first lies on top.
    pub parts: Vec<Part<'a>>,
    /// Its mass, protection included.
    pub mass: Mass,
    /// Its three sides, the longest first.
    pub sides: [Length; 3],
    /// How many people lift it: by the range, and two at least where the equation calls it a high risk for one.
    pub people: u8,
    /// How one person would lift it, for the equation: information alone.
    pub lift: Lift,
}

/// The packages of an order; nothing if its range has no carrier.
pub fn packages<'a>(order: &'a TakenOrder<'a>) -> Option<Packages<'a>> {
    let job = order_job(order)?;
    let range = job.range;
    let carriage = carriage(range, &job.bill)?;
    let all: Vec<Part<'a>> = parts(order.number, &order.cut).map(|(_, part)| part).collect();
    let package = |carriage::Package { parts, mass, long, wide, high }: &carriage::Package| {
        let mut inside: Vec<Part<'a>> = all.iter().filter(|part| parts.contains(&part.panel.id)).copied().collect();
        inside.sort_by_key(|part| (part.step, part.number));
        let lift = Lift::of_package(*wide, *high);
        let alone = lift.index(*mass) <= HIGH;
        Package {
            parts: inside,
            mass: *mass,
            sides: [*long, *wide, *high],
            people: range.handling.people(*mass, *long).max(if alone { 1 } else { 2 }),
            lift,
        }
    };
    let mut packages: Vec<Package<'a>> = carriage.packages.iter().map(package).collect();
    packages.sort_by_key(|package| package.parts.first().map(|part| (part.step, part.number)));
    let carrier = range.carriers.iter().find(|carrier| carrier.key == carriage.carrier.key)?;
    Some(Packages { carrier, packages })
}
