//! What is left of a blank at least: everything that is cut into a part, counted from the layout alone.
//!
//! Tabs are left out, and what two cuts share is counted twice: the part itself weighs more.

use core::f64::consts::{FRAC_PI_4, PI};

use super::{Blank, Blanks, Coated};
use crate::cabinet::layout::Layout;
use crate::cabinet::panel::PanelId;
use crate::cabinet::swing;
use crate::choice::{Choice, Fill};
use crate::range::{Detent, relief_radius};
use crate::units::quantity::{Area, Length, Mass};

/// The most that is cut out of the rectangle of each kind of part.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Cuts {
    lower: Area,
    /// Front and rear board of a plinth.
    long: Area,
    bearer: Area,
    plate: Area,
    upright: Area,
    back: Area,
    shelf: Area,
    stile: Area,
    /// The slit of a detent and the gap over its tongue as well.
    stop: Area,
    /// Finger hole, roots of the pivots, and the corner before a detent.
    leaf: Area,
    /// For each length of a leaf's upright edges, both of them rounded.
    edges: Length,
}

impl Cuts {
    /// Of a unit that is laid out.
    pub(crate) fn of(blanks: Blanks<'_>, choice: &Choice) -> Self {
        let (build, layout, play) = (blanks.build(), blanks.layout, blanks.build().clearance_mm);
        // A relief takes half a disc at most at each inside corner.
        let relief = disc(relief_radius(build.cutter_mm) * 2.0) / 2.0;
        let cut = |long: Length, wide: Length, play: Length| (long + play) * (wide + play) + relief * 4.0;
        let slot = |long: Length, wide: Length| cut(long, wide, play);
        // Those of the top are wider.
        let loose = |long: Length, wide: Length| cut(long, wide, build.clearance_loose_mm);
        let count = |many: usize| f64::from(u32::try_from(many).unwrap_or(u32::MAX));
        let radius = choice.corner_radius_mm.length();
        let tabs = |many: f64| slot(build.tab_mm, layout.body) * many;
        let lower = radius * radius * (4.0 - PI) + tabs(count(layout.stiles.len()) * 2.0);
        let stiles = layout.stiles.iter().filter(|stile| **stile).count();
        let leaves = choice.bays.iter().filter(|bay| matches!(bay.fill, Fill::Leaf(_))).count();
        let staves = layout.bows.iter().flatten().map(|bow| f64::from(bow.count)).sum::<f64>();
        let bore = disc(blanks.picked.body.thickness() + build.pivot_clearance_mm);
        let hooks = f64::from(layout.hooks.count);
        let ear = slot(layout.clear_depth() * (f64::from(build.shelf_slot_per_mille) / 1000.0), layout.body);
        let holes = choice.bays.iter().filter(|bay| bay.hole.is_some()).count();
        let extents = blanks.picked.range.holes.iter().map(|hole| hole.shape.extent());
        let largest = extents.map(|(length, height)| length * height).fold(Area::ZERO, Area::max);
        let shelves = layout.bays.iter().map(|bay| bay.shelves.len()).sum();
        let rounding = swing::rounding(build, layout.body);
        // A lap has two inside corners, a tab one at either side.
        let (clear, crossings) = (layout.body + play, count(layout.stiles.len()));
        let lap = layout.plinth.map_or(Area::ZERO, |plinth| plinth.lap(play) * clear + relief * 2.0);
        let plinth = if layout.plinth.is_some() { tabs(4.0) } else { Area::ZERO };
        // What plates have beyond their rectangles, along bows, counts against what is cut out of these.
        let caps = |lower: bool| layout.bows.iter().flatten().map(|bow| bow.cap(lower).0).sum::<Area>();
        let stop_tab = build.stop_tab().1.max(build.stop_upper_tab().1);
        let (slit, corner) = Detent::of(build, layout.body).map_or((Area::ZERO, Area::ZERO), |detent| {
            // As far as a stop reaches behind its leaf at most, and what is cut off beside that.
            let covered = (build.ligament_mm + build.clearance_loose_mm).max(rounding + build.stop_overlap_mm);
            let wide = covered + layout.body + build.leaf_gap_mm + detent.relief();
            let gap = (detent.root + detent.relief()) * detent.travel;
            (detent.root * detent.slit + gap, wide * (detent.deep() - detent.overlap))
        });
        Self {
            lower: lower + plinth - caps(true),
            long: lap * crossings + relief * 4.0,
            bearer: lap * 2.0,
            plate: lower
                + (loose(build.tab_mm, layout.body) - slot(build.tab_mm, layout.body))
                    * (count(layout.stiles.len()) * 2.0)
                + loose(layout.stile / 2.0, layout.body) * count(stiles)
                + loose(build.tab_mm, layout.back) * count(layout.bays.len())
                + loose(blanks.picked.range.bow.tab_mm, layout.body) * staves
                + (bore + loose(stop_tab, layout.body)) * count(leaves)
                - caps(false),
            // Two tabs at each end have an inside corner at either side, and so have ears, rear tabs and pivots; a hook
            // has two at its root and one under its nose.
            upright: ear * count(slots(layout)) + relief * (8.0 + hooks * 3.0),
            back: slot(layout.hooks.slot(), layout.body) * (hooks * count(layout.stiles.len()))
                + largest * count(holes)
                + tabs(count(shelves) * 2.0)
                + relief * (count(layout.bays.len()) * 4.0),
            shelf: relief * 8.0,
            stile: relief * 4.0,
            stop: relief * 4.0 + slit,
            leaf: disc(build.finger_hole_mm) + relief * 4.0 + corner,
            edges: rounding * rounding * (4.0 - PI) / layout.body,
        }
    }

    /// What a part weighs at least with its film.
    pub(crate) fn least_mass(&self, blank: &Blank, coated: Coated) -> Mass {
        let (width, height) = blank.size;
        let cut = match blank.id {
            PanelId::PlinthFront | PanelId::PlinthRear => self.long,
            PanelId::Bearer(_) => self.bearer,
            PanelId::BaseLower => self.lower,
            PanelId::BaseUpper | PanelId::Top => self.plate,
            PanelId::Upright(_) => self.upright,
            PanelId::Back => self.back,
            PanelId::Shelf { .. } => self.shelf,
            // Two roots of a tab at each end, as a stile.
            PanelId::Stile(_) | PanelId::Stave { .. } => self.stile,
            PanelId::Stop(_) => self.stop,
            PanelId::Leaf(_) => self.leaf + self.edges * height,
        };
        let left = ((width * height).in_m2() - cut.in_m2()).max(0.0);
        // The rounding of a sum of pieces must not come out on the other side.
        Mass::kg(left * coated.of_stock(blank.stock).in_kg_per_m2() * (1.0 - 4e-9))
    }
}

/// The most shelf slots in one upright: neighbours with as many shelves share them.
fn slots(layout: &Layout) -> usize {
    let (mut most, mut left) = (0, 0);
    for right in layout.bays.iter().map(|bay| bay.shelves.len()).chain([0]) {
        most = most.max(if left == right { left } else { left + right });
        left = right;
    }
    most
}

fn disc(diameter: Length) -> Area {
    diameter * diameter * FRAC_PI_4
}

#[cfg(test)]
mod tests;
