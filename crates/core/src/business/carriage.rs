//! Which carrier takes the unit, and what lies in which package.

use crate::business::bill::{Bill, FlatPart};
use crate::cabinet::panel::PanelId;
use crate::range::{Carrier, Handling, Range};
use crate::units::figure::Figure;
use crate::units::quantity::{Length, Mass};

/// Sums of the same lengths in another order differ by less than this, which is no length.
const ROUNDING: Length = Length::mm(1e-6);

/// The carrier that takes the unit, and the packages.
#[derive(Clone, Debug, PartialEq)]
pub struct Carriage<'a> {
    /// The carrier.
    pub carrier: &'a Carrier,
    /// The packages, the one with the heaviest part first.
    pub packages: Vec<Package>,
}

/// Whole parts with their protection, in layers: all of them lie lengthwise, end to end and side by side.
#[derive(Clone, Debug, PartialEq)]
pub struct Package {
    /// Its parts, as they were laid: the longest first, or the heaviest where that is lower.
    pub parts: Vec<Laid>,
    /// What it is from outside.
    pub outer: Outer,
    /// How thick its layers are, each as its thickest part.
    layers: Vec<Length>,
    rows: Vec<Row>,
}

/// A part in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Laid {
    /// Which part.
    pub id: PanelId,
    /// In which layer, the one that was begun first is 0; layers may lie on each other in any order.
    pub layer: usize,
    /// How far from one end of the package it begins.
    pub along: Length,
    /// How far from one side.
    pub across: Length,
}

/// A package from outside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outer {
    /// What it weighs, protection included.
    pub mass: Mass,
    /// How long it is: as its longest part.
    pub long: Length,
    /// How wide: as its widest part or, where that is more, as rows that lie side by side.
    pub wide: Length,
    /// How high: its layers on each other.
    pub high: Length,
}

/// Where one more part lies, and what the package is then.
#[derive(Clone, Copy, Debug)]
struct Next {
    /// The number of its row.
    at: usize,
    /// That row before it.
    row: Row,
    /// How thick its layer is with it.
    thick: Length,
    outer: Outer,
}

/// Parts of a layer that lie end to end.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Row {
    layer: usize,
    /// How far from one side it begins.
    across: Length,
    /// How wide it is: as its first part.
    wide: Length,
    /// How long it is so far.
    along: Length,
}

/// A rectangle of a layer where nothing lies.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Room {
    along: Length,
    across: Length,
    long: Length,
    wide: Length,
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
    pub fn excess(self, package: Outer) -> Option<Excess> {
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
    fn empty(range: &Range) -> Self {
        let (mass, none) = (range.rates.pack_kg_per_package, Length::ZERO);
        let outer = Outer { mass, long: none, wide: none, high: none };
        Self { parts: Vec::new(), outer, layers: Vec::new(), rows: Vec::new() }
    }

    /// Where one more part lies: at the end of the first row with room for it; else in a row beside the others of the first layer
    /// with room; else in a layer of its own. A row is no longer than the package. Side by side rows are no wider than its
    /// widest part, or as it is high, so that narrow parts alone make no tower.
    fn next(&self, part: &FlatPart, range: &Range) -> Next {
        let Outer { mass, long, wide, high } = self.outer;
        let (long, widest) = (long.max(part.long), wide.max(part.wide).max(high));
        let has_room = |row: &Row| part.wide <= row.wide && row.along + part.long <= long;
        let begun = |layer| {
            let across = self.rows.iter().filter(|row| row.layer == layer).map(|row| row.wide).sum();
            Row { layer, across, wide: part.wide, along: Length::ZERO }
        };
        let (at, row) = self.rows.iter().copied().enumerate().find(|(_, row)| has_room(row)).unwrap_or_else(|| {
            let beside = (0..self.layers.len()).map(begun).find(|row| row.across + part.wide <= widest);
            (self.rows.len(), beside.unwrap_or_else(|| begun(self.layers.len())))
        });
        let thick = self.layers.get(row.layer).copied().unwrap_or(Length::ZERO);
        let protection = Mass::kg(range.rates.pack_kg_per_m2.in_kg_per_m2() * part.face.in_m2());
        let mass = mass + part.mass + protection;
        let (wide, high) = (wide.max(row.across + row.wide), high + part.thick.max(thick) - thick);
        Next { at, row, thick: part.thick.max(thick), outer: Outer { mass, long, wide, high } }
    }

    /// Lays a part where it was found to lie.
    fn lay(&mut self, part: &FlatPart, next: Next) {
        let Next { at, row, thick, outer } = next;
        let Row { layer, across, along, .. } = row;
        self.parts.push(Laid { id: part.id, layer, along, across });
        self.outer = outer;
        let row = Row { along: along + part.long, ..row };
        match self.rows.get_mut(at) {
            Some(known) => *known = row,
            None => self.rows.push(row),
        }
        match self.layers.get_mut(layer) {
            Some(known) => *known = thick,
            None => self.layers.push(thick),
        }
    }

    /// The same parts laid again, now that it is known which they are and how long and wide the package is: the longest come first,
    /// then the widest, each into the first room with place for it, layer by layer. As before where that would be higher, so it
    /// stays within every limit.
    fn laid_again(self, range: &Range, bill: &Bill) -> Self {
        let is_here = |part: &&FlatPart| self.parts.iter().any(|laid| laid.id == part.id);
        let mut parts: Vec<&FlatPart> = bill.flat.iter().filter(is_here).collect();
        parts.sort_by(|a, b| b.long.total_cmp(&a.long).then(b.wide.total_cmp(&a.wide)));
        let before = self.outer;
        let whole = Room { along: Length::ZERO, across: Length::ZERO, long: before.long, wide: before.wide };
        let mut again = Self::empty(range);
        let mut rooms: Vec<Vec<Room>> = Vec::new();
        let mut wide = Length::ZERO;
        for part in parts {
            let found = (0..).zip(&mut rooms).find_map(|(layer, rooms)| Some((layer, take_room(rooms, part)?)));
            let (layer, [along, across]) = found.unwrap_or_else(|| {
                rooms.push(whole.beside(part).into());
                (rooms.len() - 1, [Length::ZERO; 2])
            });
            again.parts.push(Laid { id: part.id, layer, along, across });
            wide = wide.max(across + part.wide);
            match again.layers.get_mut(layer) {
                Some(thick) => *thick = thick.max(part.thick),
                None => again.layers.push(part.thick),
            }
        }
        let high = again.layers.iter().copied().sum();
        if high > before.high + ROUNDING {
            return self;
        }
        again.outer = Outer { wide: wide.min(before.wide), high: before.high.min(high), ..before };
        again
    }
}

impl Room {
    /// What a part in its corner leaves of it: behind its end, as wide as it is, then beside it, as long as the room.
    fn beside(self, part: &FlatPart) -> [Self; 2] {
        let behind = Self { along: self.along + part.long, long: self.long - part.long, wide: part.wide, ..self };
        let beside = Self { across: self.across + part.wide, wide: self.wide - part.wide, ..self };
        [behind, beside]
    }
}

/// Puts a part into the corner of the first room of a layer with place for it, and says where that is: two smaller rooms
/// are left instead.
// Source: guillotine cuts of rectangles, as in J. Jylänki, A thousand ways to pack the bin (2010), section 2.2; from memory.
fn take_room(rooms: &mut Vec<Room>, part: &FlatPart) -> Option<[Length; 2]> {
    let has_place = |room: &Room| part.long <= room.long + ROUNDING && part.wide <= room.wide + ROUNDING;
    let at = rooms.iter().position(has_place)?;
    let room = *rooms.get(at)?;
    let [behind, beside] = room.beside(part);
    rooms.insert(at + 1, beside);
    if let Some(taken) = rooms.get_mut(at) {
        *taken = behind;
    }
    Some([room.along, room.across])
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
        self.packages.iter().find_map(|package| Some((package, most.excess(package.outer)?)))
    }
}

/// First-fit decreasing: each part, the heaviest first, goes into the first package that it leaves within the limits.
/// What is beyond them by itself has a package of its own. What lies in one is laid again at the end.
// Source: D. S. Johnson, Near-optimal bin packing algorithms, thesis, MIT (1973).
fn packages(range: &Range, carrier: &Carrier, bill: &Bill) -> Vec<Package> {
    let most = Most::of(range, carrier);
    let mut packages: Vec<Package> = Vec::new();
    for part in &bill.flat {
        let room = packages.iter_mut().find_map(|package| {
            let next = package.next(part, range);
            most.excess(next.outer).is_none().then_some((package, next))
        });
        if let Some((package, next)) = room {
            package.lay(part, next);
        } else {
            let mut package = Package::empty(range);
            package.lay(part, package.next(part, range));
            packages.push(package);
        }
    }
    packages.into_iter().map(|package| package.laid_again(range, bill)).collect()
}

#[cfg(test)]
mod tests;
