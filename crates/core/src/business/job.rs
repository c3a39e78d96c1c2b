//! The job that a unit is: its bill of work and the sheets that it takes, and the minutes and litres that follow.

use crate::business::bill::Bill;
use crate::business::material::Material;
use crate::business::nesting::Grained;
use crate::cabinet::case::WeighedCase;
use crate::cabinet::layout::Picked;
use crate::cabinet::panel::Stock;
use crate::range::{Board, Finish, Range, Work};
use crate::units::quantity::Area;

/// One unit as work.
#[derive(Clone, Debug, PartialEq)]
pub struct Job<'a> {
    /// The range whose rates count.
    pub range: &'a Range,
    /// The finish.
    pub finish: &'a Finish,
    /// How much of everything.
    pub bill: Bill,
    /// The sheets, board by board.
    pub materials: Vec<Material>,
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

impl<'a> Job<'a> {
    /// That of the panels of a case.
    pub fn of(cut: &WeighedCase, picked: Picked<'a>) -> Self {
        Self::with(cut, picked, |board, blanks| Material::of(picked.range, board, blanks))
    }

    /// The same on the sheets that were found for it before.
    pub fn on(cut: &WeighedCase, picked: Picked<'a>, materials: Vec<Material>) -> Self {
        Self { range: picked.range, finish: picked.finish, bill: Bill::of(cut), materials }
    }

    /// The same with no more sheets than the parts' area asks for: it costs and takes no more than the job itself, and
    /// nothing is nested for it.
    pub fn at_least(cut: &WeighedCase, picked: Picked<'a>) -> Self {
        Self::with(cut, picked, Material::at_least)
    }

    fn with(cut: &WeighedCase, picked: Picked<'a>, material: impl Fn(&Board, &[Grained]) -> Material) -> Self {
        let bill = Bill::of(cut);
        let of_stock = |stock: Stock| bill.flat.iter().filter(move |part| part.stock == stock);
        let (body, back) = (picked.board(Stock::Body), picked.board(Stock::Back));
        let blanks = |stocks: &[Stock]| -> Vec<Grained> {
            stocks.iter().flat_map(|stock| of_stock(*stock)).map(|part| part.blank).collect()
        };
        // A back of the body's board comes from the same sheets.
        let needed = if body.key == back.key {
            vec![(body, blanks(&[Stock::Body, Stock::Back]))]
        } else {
            vec![(body, blanks(&[Stock::Body])), (back, blanks(&[Stock::Back]))]
        };
        let materials = needed.iter().map(|(board, blanks)| material(board, blanks)).collect();
        Self { range: picked.range, finish: picked.finish, bill, materials }
    }

    /// Both faces of the sheets that count, in square metres.
    fn sheet_faces(&self) -> f64 {
        let counted: Area = self.materials.iter().map(|material| material.counted).sum();
        counted.in_m2() * 2.0
    }

    /// Litres of the coats before cutting, with what misses the sheets.
    pub fn litres_before(&self) -> f64 {
        self.with_loss(self.sheet_faces() * f64::from(self.finish.coats_before))
    }

    /// Litres of the coats after cutting, with what misses the parts.
    pub fn litres_after(&self) -> f64 {
        self.with_loss(self.bill.faces.in_m2() * f64::from(self.finish.coats_after))
    }

    /// Litres for so many square metres of coats: area × wet film, and what misses the work.
    fn with_loss(&self, coated_m2: f64) -> f64 {
        let on_the_work = coated_m2 * self.finish.wet_film_um / 1e6 * 1000.0;
        on_the_work * 1000.0 / f64::from(1000 - self.finish.loss_per_mille.min(999))
    }

    /// Litres of finish: area × coats × wet film, and what misses the work. Sheets are coated whole,
    /// parts after cutting.
    pub fn litres(&self) -> f64 {
        self.litres_before() + self.litres_after()
    }

    /// The minutes that the unit takes; sheets are sanded and coated whole, offcuts too.
    pub fn minutes(&self) -> Minutes {
        let (range, finish, bill) = (self.range, self.finish, &self.bill);
        let rates = &range.rates;
        let sheet_faces = self.sheet_faces();
        let faces = self.bill.faces.in_m2();
        let sheets: f64 = self.materials.iter().map(|material| material.sheets).sum();
        let parts = f64::from(bill.parts);
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
            cut: range.machine_minutes(bill.cut, bill.outlines),
            edges: bill.edges.in_m() * rates.edge_minutes_per_m
                + bill.chamfers.in_m() * rates.chamfer_minutes_per_m
                + bill.roundings.in_m() * rates.rounding_minutes_per_m
                + f64::from(bill.pivots) * rates.pivot_minutes,
            dry_fit: f64::from(bill.joints) * rates.dry_fit_minutes_per_joint,
            sand_after: faces * between_after * rates.between_coats_minutes_per_m2,
            coat_after: setup(finish.coats_after) + mask + faces * after * rates.coat_minutes_per_m2,
            pack: parts * (rates.label_minutes_per_part + rates.pack_minutes_per_part),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cabinet::panel::PanelId;
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
        let job = Job::of(&WeighedCase::of(picked, &choice, &layout).unwrap(), picked);
        let (minutes, bill) = (job.minutes(), &job.bill);
        assert!((240.0..=360.0).contains(&minutes.hands()), "{minutes:?}");
        // One leaf with two pivots; its two upright edges have two corners each.
        let leaf = bill.flat.iter().find(|part| part.id == PanelId::Leaf(1)).unwrap();
        assert_eq!(bill.pivots, 2);
        assert!(bill.roundings > leaf.long * 3.6 && bill.roundings < leaf.long * 4.0, "{:?}", bill.roundings);
        // Coats that are not sprayed take no time, nor does what belongs to them.
        let mut bare = picked.finish.clone();
        (bare.coats_before, bare.coats_after) = (0, 0);
        let bare = Job { finish: &bare, ..job }.minutes();
        assert!(bare.coat_before.abs() + bare.coat_after.abs() + bare.sand_after.abs() < 1e-9, "{bare:?}");
    }
}
