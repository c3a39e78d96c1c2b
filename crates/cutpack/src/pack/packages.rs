//! The packages of an order, as they are packed and carried.

use slotwright_core::business::carriage::{self, Laid, carriage};
use slotwright_core::range::Carrier;
use slotwright_core::statics::lifting::{HIGH, Lift};
use slotwright_core::units::quantity::{Area, Length, Mass};

use super::TakenOrder;
use super::lot::{Part, parts};
use super::work::order_job;

/// Of a part so much at least lies on those below it, where the layers can be stacked so. Chosen, not measured.
const CARRIED: f64 = 0.5;

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
    /// Its layers, the lowest first.
    pub layers: Vec<Vec<Packed<'a>>>,
    /// Its mass, protection included.
    pub mass: Mass,
    /// How much of that is protection.
    pub packing: Mass,
    /// Its three sides: along its parts, across them, and how high it is.
    pub sides: [Length; 3],
    /// How many people lift it: by the range, and two at least where the equation calls it a high risk for one.
    pub people: u8,
    /// Whether they are as many for its length alone.
    pub is_for_length: bool,
    /// How one person would lift it, for the equation: information alone.
    pub lift: Lift,
}

/// A part in its place.
#[derive(Clone, Copy, Debug)]
pub struct Packed<'a> {
    /// The part.
    pub part: Part<'a>,
    /// The row of its layer in which it lies, from 1: all that begin as far from the side.
    pub row: u32,
    /// How far from one end of the package it begins, and from one side.
    pub at: [Length; 2],
}

impl Packed<'_> {
    /// How long and how wide its blank is.
    pub fn size(&self) -> [Length; 2] {
        let (width, height) = self.part.panel.blank();
        [width.max(height), width.min(height)]
    }

    fn covers(&self) -> Area {
        let [long, wide] = self.size();
        long * wide
    }

    /// What it covers of another part, below it.
    fn shared(&self, other: &Self) -> Area {
        let ([long, wide], [along, across]) = (self.size(), self.at);
        let ([its_long, its_wide], [its_along, its_across]) = (other.size(), other.at);
        let both = |from: Length, long: Length, its_from: Length, its_long: Length| {
            ((from + long).min(its_from + its_long) - from.max(its_from)).max(Length::ZERO)
        };
        both(along, long, its_along, its_long) * both(across, wide, its_across, its_wide)
    }
}

impl<'a> Package<'a> {
    /// Its parts, layer by layer from below, row by row.
    pub fn parts(&self) -> impl Iterator<Item = &Packed<'a>> {
        self.layers.iter().flatten()
    }

    /// The step of the assembly for which it is opened.
    fn opened(&self) -> Option<(u32, u32)> {
        self.parts().map(|packed| (packed.part.step, packed.part.number)).min()
    }
}

/// The packages of an order; nothing if its range has no carrier.
pub fn packages<'a>(order: &'a TakenOrder<'a>) -> Option<Packages<'a>> {
    let job = order_job(order)?;
    let range = job.range;
    let carriage = carriage(range, &job.bill)?;
    let all: Vec<Part<'a>> = parts(order.number, &order.cut).map(|(_, part)| part).collect();
    let package = |carriage::Package { parts, outer, .. }: &carriage::Package| {
        let layers = layers(&all, parts);
        let own: Mass = layers.iter().flatten().map(|packed| packed.part.mass).sum();
        let lift = Lift::of_package(outer.wide, outer.high);
        let alone = lift.index(outer.mass) <= HIGH;
        let people = |long| range.handling.people(outer.mass, long).max(if alone { 1 } else { 2 });
        Package {
            layers,
            mass: outer.mass,
            packing: outer.mass - own,
            sides: [outer.long, outer.wide, outer.high],
            people: people(outer.long),
            is_for_length: people(outer.long) > people(Length::ZERO),
            lift,
        }
    };
    let mut packages: Vec<Package<'a>> = carriage.packages.iter().map(package).collect();
    packages.sort_by_key(Package::opened);
    let carrier = range.carriers.iter().find(|carrier| carrier.key == carriage.carrier.key)?;
    Some(Packages { carrier, packages })
}

/// The layers of a package, the lowest first, so that what lies on others is carried: each layer, that whose parts together
/// cover the most first, goes where the fewest parts of the stack stand free, as high as it can.
fn layers<'a>(all: &[Part<'a>], laid: &[Laid]) -> Vec<Vec<Packed<'a>>> {
    let mut laid = laid.to_vec();
    laid.sort_by(|a, b| a.layer.cmp(&b.layer).then(a.across.total_cmp(&b.across)).then(a.along.total_cmp(&b.along)));
    let mut layers: Vec<Vec<Packed<'a>>> = Vec::new();
    for layer in laid.chunk_by(|a, b| a.layer == b.layer) {
        let rows = layer.chunk_by(|a, b| a.across.total_cmp(&b.across).is_eq());
        let packed = rows.zip(1..).flat_map(|(laid, row)| {
            laid.iter().filter_map(move |laid| {
                let part = *all.iter().find(|part| part.panel.id == laid.id)?;
                Some(Packed { part, row, at: [laid.along, laid.across] })
            })
        });
        layers.push(packed.collect());
    }
    layers.sort_by(|a, b| covers(b).total_cmp(&covers(a)));
    let mut stack: Vec<Vec<Packed<'a>>> = Vec::new();
    for layer in layers {
        // How many more stand free with it there; the first of equals is the highest.
        let more = |at: &usize| {
            let (below, above) = (at.checked_sub(1).and_then(|below| stack.get(below)), stack.get(*at));
            let of = |upper: Option<&Vec<Packed<'a>>>, lower: Option<&Vec<Packed<'a>>>| {
                upper.zip(lower).map_or(0, |(upper, lower)| standing_free(upper, lower))
            };
            // Those that stood free there before count no more.
            (of(Some(&layer), below) + of(above, Some(&layer))).cast_signed() - of(above, below).cast_signed()
        };
        let at = (0..=stack.len()).rev().min_by_key(more).unwrap_or(stack.len());
        stack.insert(at, layer);
    }
    stack
}

/// How many parts of a layer have less than half of themselves on parts of the one below.
fn standing_free(upper: &[Packed<'_>], lower: &[Packed<'_>]) -> usize {
    let is_free = |packed: &&Packed<'_>| {
        let carried: Area = lower.iter().map(|other| packed.shared(other)).sum();
        carried.in_m2() < packed.covers().in_m2() * CARRIED
    };
    upper.iter().filter(is_free).count()
}

/// What the parts of a layer cover together.
fn covers(layer: &[Packed<'_>]) -> Area {
    layer.iter().map(Packed::covers).sum()
}

#[cfg(test)]
mod tests;
