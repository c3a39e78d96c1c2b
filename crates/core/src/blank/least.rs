//! What is left of a blank at least: everything that is cut into a part, counted from the layout alone.
//!
//! Tabs are left out, and what two cuts share is counted twice: the part itself weighs more.

use core::f64::consts::{FRAC_PI_4, PI};

use super::{Blank, Blanks, Coated};
use crate::choice::{Choice, Fill};
use crate::leaf;
use crate::panel::PanelId;
use crate::quantity::{Area, Length, Mass};

impl Blanks<'_> {
    /// What a part weighs at least with its film.
    pub(crate) fn least_mass(self, blank: &Blank, choice: &Choice, coated: Coated) -> Mass {
        let (width, height) = blank.size;
        let left = (width * height).in_m2() - self.cut(blank, choice).in_m2();
        // As there, the rounding of a sum of pieces must not come out on the other side.
        let each = coated.of_stock(blank.stock).in_kg_per_m2() * (1.0 - 4e-9);
        Mass::kg(left.max(0.0) * each)
    }

    /// Most that is cut out of a part's rectangle.
    fn cut(self, blank: &Blank, choice: &Choice) -> Area {
        let (build, relief) = (self.build(), self.relief());
        match blank.id {
            PanelId::BaseLower => self.rounded(choice) + self.tabs(),
            PanelId::BaseUpper | PanelId::Top => {
                let play = build.clearance_mm;
                let stile = (self.layout.stile / 2.0 + play) * (self.layout.body + play) + relief * 4.0;
                let bore = disc(self.picked.body.thickness() + build.pivot_clearance_mm);
                let stiles = self.layout.stiles.iter().filter(|stile| **stile).map(|_| stile);
                let leaves = choice.bays.iter().filter(|bay| matches!(bay.fill, Fill::Leaf(_))).map(|_| bore);
                self.rounded(choice) + self.tabs() + stiles.chain(leaves).sum()
            }
            PanelId::Upright(number) => {
                let slot = self.layout.clear_depth() * (f64::from(build.shelf_slot_per_mille) / 1000.0);
                let slot = (self.layout.body + build.clearance_mm) * (slot + build.clearance_mm) + relief * 4.0;
                // Two tabs at each end have an inside corner at either side.
                self.lap() + slot * self.slots(number) + relief * 8.0
            }
            PanelId::Back => self.back_cut(choice),
            // Two ears and up to two tabs, each with two inside corners.
            PanelId::Shelf { .. } => relief * 8.0,
            PanelId::Stile(_) => relief * 4.0,
            PanelId::Leaf(_) => {
                let rounding = leaf::rounding(build, self.layout.body);
                let edges = rounding * rounding * (4.0 - PI) / self.layout.body * blank.size.1;
                disc(build.finger_hole_mm) + edges + relief * 4.0
            }
        }
    }

    /// Most that a relief takes at one inside corner: half a disc.
    fn relief(self) -> Area {
        disc(self.build().cutter_mm) / 2.0
    }

    /// The corners of a plate, rounded.
    fn rounded(self, choice: &Choice) -> Area {
        let radius = choice.corner_radius_mm.length();
        radius * radius * (4.0 - PI)
    }

    /// Two slots for the tabs of each upright.
    fn tabs(self) -> Area {
        let play = self.build().clearance_mm;
        let tab = (self.build().tab_mm + play) * (self.layout.body + play) + self.relief() * 4.0;
        self.layout.stiles.iter().map(|_| tab * 2.0).sum()
    }

    /// The lap of an upright with the back, in either of them.
    fn lap(self) -> Area {
        let (layout, play) = (self.layout, self.build().clearance_mm);
        (layout.body.max(layout.back) + play) * (layout.clear_height() / 2.0 + play) + self.relief() * 4.0
    }

    /// How many shelf slots an upright has: neighbours with as many shelves share them.
    fn slots(self, number: u8) -> f64 {
        let shelves = |bay: Option<u8>| {
            let span = bay.and_then(|bay| self.layout.bays.get(usize::from(bay)));
            span.map_or(0.0, |span| span.shelves.iter().map(|_| 1.0).sum::<f64>())
        };
        let (left, right) = (shelves(number.checked_sub(2)), shelves(number.checked_sub(1)));
        if left.total_cmp(&right).is_eq() { left } else { left + right }
    }

    /// Laps, cable holes, and slots for the rear tabs of shelves.
    fn back_cut(self, choice: &Choice) -> Area {
        let (layout, play) = (self.layout, self.build().clearance_mm);
        let laps: Area = layout.stiles.iter().map(|_| self.lap()).sum();
        let holes = choice.bays.iter().filter_map(|bay| self.picked.range.hole(&bay.hole.as_ref()?.kind));
        let holes = holes.map(|hole| hole.shape.extent()).map(|(length, height)| length * height);
        let slot = (self.build().tab_mm + play) * (layout.body + play) + self.relief() * 4.0;
        let slots = layout.bays.iter().flat_map(|bay| &bay.shelves).map(|_| slot * 2.0);
        laps + holes.chain(slots).sum()
    }
}

fn disc(diameter: Length) -> Area {
    diameter * diameter * FRAC_PI_4
}

#[cfg(test)]
mod tests;
