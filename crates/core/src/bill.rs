//! The bill of work: how much of everything one unit takes. Price and promise are made from it.

use alloc::collections::BTreeMap;

use crate::quantity::{Area, Length, Mass};
use crate::range::{Finish, Key, Rates, Work};

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
    /// Number of parts.
    pub parts: u32,
    /// Mass of the heaviest part.
    pub heaviest: Mass,
    /// Mass of all parts.
    pub mass: Mass,
    /// Longest blank side and the widest shorter side: the flat pack's footprint.
    pub footprint: (Length, Length),
    /// Sum of the thicknesses of the parts, as if they were stacked.
    pub stack: Length,
}

/// Minutes of work on one unit.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Minutes {
    /// Sanding the sheets.
    pub sand: f64,
    /// Spraying the coats before cutting.
    pub coat_before: f64,
    /// Loading sheets and cutting.
    pub cut: f64,
    /// Finishing edges by hand.
    pub edges: f64,
    /// Spraying the coats after cutting.
    pub coat_after: f64,
    /// Packing.
    pub pack: f64,
}

impl Minutes {
    /// Minutes of one kind of work.
    pub fn of(&self, work: Work) -> f64 {
        match work {
            Work::Sheets => self.sand + self.coat_before,
            Work::Cut => self.cut,
            Work::Edges => self.edges + self.coat_after,
            Work::Pack => self.pack,
        }
    }
}

impl Bill {
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
        let passes = f64::from(rates.passes);
        Minutes {
            sand: sheet_faces * rates.sand_minutes_per_m2,
            coat_before: sheet_faces * f64::from(finish.coats_before) * rates.coat_minutes_per_m2,
            cut: self.cut.in_mm() * passes / rates.feed_mm_per_min + sheets * rates.sheet_minutes,
            edges: self.edges.in_m() * rates.edge_minutes_per_m,
            coat_after: faces * f64::from(finish.coats_after) * rates.coat_minutes_per_m2,
            pack: f64::from(self.parts) * rates.pack_minutes_per_part,
        }
    }

    /// How many packages of at most that mass the unit fills; at least one.
    pub fn packages(&self, most: Mass) -> u32 {
        let needed = libm::ceil(self.mass / most);
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole; `as` saturates")]
        let packages = needed as u32;
        packages.max(1)
    }
}
