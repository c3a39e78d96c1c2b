//! The bill of work: how much of everything one unit takes, but for whole sheets. Price and promise are made from it.

use crate::business::nesting::Grained;
use crate::cabinet::case::WeighedCase;
use crate::cabinet::panel::{Ease, Feature, GrainAxis, Panel, PanelId, Stock};
use crate::units::quantity::{Area, Length, Mass};

/// Quantities of material and work for one unit.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bill {
    /// Length of all cuts: outer outlines and cut-outs.
    pub cut: Length,
    /// How many outlines these are.
    pub outlines: u32,
    /// Area of both faces of all parts.
    pub faces: Area,
    /// Length of the edges that are finished by hand: outer ones, and the walls of holes for cables and fingers.
    pub edges: Length,
    /// Length of the corners that are chamfered by hand, ends of tabs and rims of such holes with them: an edge has two, one at
    /// each face.
    pub chamfers: Length,
    /// Length of the corners that are rounded by hand: those of the leaves' upright edges.
    pub roundings: Length,
    /// Number of pivots, which are rounded by hand.
    pub pivots: u32,
    /// Number of joints, each of which is tried dry.
    pub joints: u32,
    /// Number of parts.
    pub parts: u32,
    /// The parts as they are packed, the heaviest first, of equals in reading order.
    pub flat: Vec<FlatPart>,
}

/// A part as it lies in a package.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlatPart {
    /// Which part.
    pub id: PanelId,
    /// What it is cut from.
    pub stock: Stock,
    /// The rectangle that it is cut from.
    pub blank: Grained,
    /// Its mass.
    pub mass: Mass,
    /// Area of one face.
    pub face: Area,
    /// The longer side of its blank.
    pub long: Length,
    /// The shorter side.
    pub wide: Length,
    /// Its thickness with its film.
    pub thick: Length,
}

impl Bill {
    /// That of the panels of a case.
    pub fn of(cut: &WeighedCase) -> Self {
        let mut bill = Self::default();
        for (panel, part) in cut.weighed() {
            bill.add(panel, part.mass);
        }
        bill.joints = u32::try_from(cut.case.joints.len()).unwrap_or(u32::MAX);
        bill
    }

    /// Adds a panel; its joints are not counted.
    pub fn add(&mut self, panel: &Panel, mass: Mass) {
        let (width, height) = panel.blank();
        self.cut += panel.outer_length() + panel.inner_length();
        self.outlines += 1 + panel.count_of_holes();
        self.edges += panel.finished_length();
        let face = panel.area();
        self.faces += face * 2.0;
        for (edge, ease) in panel.eased() {
            let corners = panel.eased_length(edge, ease) * 2.0;
            match ease {
                Ease::Chamfer(_) | Ease::TabEnds(_) => self.chamfers += corners,
                Ease::Rounding(_) => self.roundings += corners,
            }
        }
        self.chamfers += panel.rims().sum::<Length>() * 2.0;
        for feature in &panel.features {
            self.pivots += u32::from(matches!(feature, Feature::Pivot { .. }));
        }
        self.parts += 1;
        let (id, stock, thick) = (panel.id, panel.stock, panel.thickness);
        let blank = match panel.grain {
            GrainAxis::AlongU => Grained { along: width, across: height },
            GrainAxis::AlongV => Grained { along: height, across: width },
        };
        let (long, wide) = (width.max(height), width.min(height));
        let at = self.flat.partition_point(|known| known.mass >= mass);
        self.flat.insert(at, FlatPart { id, stock, blank, mass, face, long, wide, thick });
    }
}

#[cfg(test)]
mod tests {
    use core::f64::consts::PI;

    use super::*;
    use crate::cabinet::layout::{Layout, Picked};
    use crate::choice::Choice;
    use crate::testing::demo;

    /// Worked: a round hole of 60 mm has a wall of π · 60 mm and a rim as long on each face, a slotted one of 90 by 42 mm
    /// 2 · 48 mm more than a round one of 42 mm. Slots of joints and holes of pivots are eased by nobody.
    #[test]
    fn rims_of_holes_are_eased_and_their_walls_finished() {
        let range = demo();
        let mut choice = Choice::first_of(&range).unwrap();
        let bill = |choice: &Choice| {
            let picked = Picked::of(&range, choice).unwrap();
            let layout = Layout::of(picked, choice).unwrap();
            Bill::of(&WeighedCase::of(picked, choice, &layout).unwrap())
        };
        let with = bill(&choice);
        let mut holes = Vec::new();
        for bay in &mut choice.bays {
            holes.extend(bay.hole.take());
        }
        let without = bill(&choice);
        assert!(holes.len() == 2 && holes.iter().all(|hole| hole.kind.as_str() == "round-60"));
        let (walls, rims) = ((with.edges - without.edges).in_mm(), (with.chamfers - without.chamfers).in_mm());
        assert!((walls - 2.0 * PI * 60.0).abs() < 1e-6 && (rims - 2.0 * walls).abs() < 1e-6, "{walls} {rims}");
        choice.bays[1].hole = holes.pop();
        choice.bays[1].hole.as_mut().unwrap().kind = "slot-90".parse().unwrap();
        let slotted = (bill(&choice).edges - without.edges).in_mm();
        assert!((slotted - (PI * 42.0 + 2.0 * 48.0)).abs() < 1e-6, "{slotted}");
    }
}
