//! The bill of work: how much of everything one unit takes. Price and promise are made from it.

use alloc::collections::BTreeMap;

use crate::cabinet::case::WeighedCase;
use crate::cabinet::layout::Picked;
use crate::cabinet::panel::{Ease, Feature, PanelId};
use crate::range::{Finish, Key, Rates, Work};
use crate::units::quantity::{Area, Length, Mass};

/// Quantities of material and work for one unit.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bill {
    /// Area of the blanks (the rectangle that each part is cut from), by board.
    pub blanks: BTreeMap<Key, Area>,
    /// Length of all cuts: outer outlines and cut-outs.
    pub cut: Length,
    /// Area of both faces of all parts.
    pub faces: Area,
    /// Length of the outer edges that are finished by hand.
    pub edges: Length,
    /// Length of the corners that are chamfered by hand: an edge has two, one at each face.
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

/// Minutes of work on one unit.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Minutes {
    /// Sanding the sheets, before the first coat and between coats.
    pub sand: f64,
    /// Spraying the coats before cutting, and turning the sheets for them.
    pub coat_before: f64,
    /// Setting up the machine and loading sheets.
    pub load: f64,
    /// Cutting.
    pub cut: f64,
    /// Edges, chamfers, roundings and pivots, by hand.
    pub edges: f64,
    /// Trying the unit together, dry.
    pub dry_fit: f64,
    /// Sanding parts between the coats.
    pub sand_after: f64,
    /// Masking parts and spraying the coats after cutting.
    pub coat_after: f64,
    /// Labelling and packing.
    pub pack: f64,
}

impl Minutes {
    /// Minutes of one kind of work.
    pub fn of(&self, work: Work) -> f64 {
        match work {
            Work::Sheets => self.sand + self.coat_before,
            Work::Cut => self.load + self.cut,
            Work::Edges => self.edges + self.dry_fit + self.sand_after + self.coat_after,
            Work::Pack => self.pack,
        }
    }

    /// All that hands do: everything but the run of the cutter.
    pub fn hands(&self) -> f64 {
        self.of(Work::Sheets) + self.load + self.of(Work::Edges) + self.pack
    }
}

impl Bill {
    /// That of the panels of a case.
    pub fn of(cut: &WeighedCase, picked: Picked<'_>) -> Self {
        let mut bill = Self::default();
        for (panel, part) in cut.weighed() {
            let (width, height) = panel.blank();
            let board = picked.board(panel.stock);
            *bill.blanks.entry(board.key.clone()).or_default() += width * height;
            bill.cut += panel.outer_length() + panel.inner_length();
            bill.edges += panel.outer_length();
            let face = panel.area();
            bill.faces += face * 2.0;
            for (edge, ease) in panel.eased() {
                let corners = panel.length_of(edge) * 2.0;
                match ease {
                    Ease::Chamfer(_) => bill.chamfers += corners,
                    Ease::Rounding(_) => bill.roundings += corners,
                }
            }
            for feature in &panel.features {
                bill.pivots += u32::from(matches!(feature, Feature::Pivot { .. }));
            }
            bill.parts += 1;
            let (id, thick, mass) = (panel.id, panel.thickness, part.mass);
            let (long, wide) = (width.max(height), width.min(height));
            let at = bill.flat.partition_point(|known| known.mass >= mass);
            bill.flat.insert(at, FlatPart { id, mass, face, long, wide, thick });
        }
        bill.joints = u32::try_from(cut.case.joints.len()).unwrap_or(u32::MAX);
        bill
    }

    /// The area of sheet bought: blanks over the share of a sheet that ends up in parts.
    pub fn sheet_area(&self, blanks: Area, rates: &Rates) -> Area {
        blanks * (1000.0 / f64::from(rates.sheet_yield_per_mille))
    }

    /// Both faces of the sheets bought, in square metres.
    fn sheet_faces(&self, rates: &Rates) -> f64 {
        let blanks: Area = self.blanks.values().copied().sum();
        self.sheet_area(blanks, rates).in_m2() * 2.0
    }

    /// Litres of finish: area × coats × wet film, and what misses the work. Sheets are coated whole,
    /// parts after cutting.
    pub fn litres(&self, rates: &Rates, finish: &Finish) -> f64 {
        let wet_m = finish.wet_film_um / 1e6;
        let before = self.sheet_faces(rates) * f64::from(finish.coats_before);
        let after = self.faces.in_m2() * f64::from(finish.coats_after);
        let on_the_work = (before + after) * wet_m * 1000.0;
        on_the_work * 1000.0 / f64::from(1000 - finish.loss_per_mille.min(999))
    }

    /// The minutes that the unit takes; sheets are sanded and coated whole, offcuts too.
    pub fn minutes(&self, rates: &Rates, finish: &Finish) -> Minutes {
        let blanks: Area = self.blanks.values().copied().sum();
        let sheet_faces = self.sheet_faces(rates);
        let faces = self.faces.in_m2();
        // A sheet of the usual format, 1220 × 2440 mm (common practice), for the time of loading.
        let sheets = self.sheet_area(blanks, rates).in_m2() / 2.9768;
        let (passes, parts) = (f64::from(rates.passes), f64::from(self.parts));
        let (before, after) = (f64::from(finish.coats_before), f64::from(finish.coats_after));
        // Every coat but the first of all lies on one that was sanded.
        let (between, between_after) = match finish.coats_before {
            0 => (0.0, (after - 1.0).max(0.0)),
            _ => (before - 1.0, after),
        };
        // Nothing is set up or masked for coats that are not sprayed.
        let setup = |coats: u8| if coats == 0 { 0.0 } else { rates.spray_setup_minutes };
        let mask = if finish.coats_after == 0 { 0.0 } else { parts * rates.mask_minutes_per_part };
        Minutes {
            sand: sheet_faces * (rates.sand_minutes_per_m2 + between * rates.between_coats_minutes_per_m2),
            coat_before: setup(finish.coats_before)
                + sheet_faces * before * rates.coat_minutes_per_m2
                + sheets * before * rates.turn_minutes_per_sheet,
            load: rates.setup_minutes + sheets * rates.sheet_minutes,
            cut: self.cut.in_mm() * passes / rates.feed_mm_per_min,
            edges: self.edges.in_m() * rates.edge_minutes_per_m
                + self.chamfers.in_m() * rates.chamfer_minutes_per_m
                + self.roundings.in_m() * rates.rounding_minutes_per_m
                + f64::from(self.pivots) * rates.pivot_minutes,
            dry_fit: f64::from(self.joints) * rates.dry_fit_minutes_per_joint,
            sand_after: faces * between_after * rates.between_coats_minutes_per_m2,
            coat_after: setup(finish.coats_after) + mask + faces * after * rates.coat_minutes_per_m2,
            pack: parts * (rates.label_minutes_per_part + rates.pack_minutes_per_part),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::choice::Choice;
    use crate::rules::judge;
    use crate::testing::demo;

    /// The starting unit of the demo range is four to six hours of work by hand, as a maker would guess.
    #[test]
    fn a_unit_is_half_a_day_and_more_by_hand() {
        let range = demo();
        let choice = Choice::first_of(&range).unwrap();
        let judged = judge(&range, &choice);
        let (picked, layout) = (judged.picked.unwrap(), judged.layout.unwrap());
        let bill = Bill::of(&WeighedCase::of(picked, &choice, &layout).unwrap(), picked);
        let minutes = bill.minutes(&range.rates, picked.finish);
        assert!((240.0..=360.0).contains(&minutes.hands()), "{minutes:?}");
        // One leaf with two pivots; its two upright edges have two corners each.
        let leaf = bill.flat.iter().find(|part| part.id == PanelId::Leaf(1)).unwrap();
        assert_eq!(bill.pivots, 2);
        assert!(bill.roundings > leaf.long * 3.6 && bill.roundings < leaf.long * 4.0, "{:?}", bill.roundings);
        // Coats that are not sprayed take no time, nor does what belongs to them.
        let mut bare = picked.finish.clone();
        (bare.coats_before, bare.coats_after) = (0, 0);
        let bare = bill.minutes(&range.rates, &bare);
        assert!(bare.coat_before.abs() + bare.coat_after.abs() + bare.sand_after.abs() < 1e-9, "{bare:?}");
    }
}
