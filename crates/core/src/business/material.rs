//! What a unit takes of its boards: whole sheets from a nest of its parts, less what is kept of them; or its area over a
//! stated yield.
//!
//! The nest is the quick one, which answers at once and always the same. What a workshop saves by a longer nest, or by
//! cutting several units from the same sheets, is its own: the price is that of the unit alone.

use slotwright_nest::quick::quick;

use crate::business::nesting::{self, Grained};
use crate::range::{Board, Key, MaterialBy, Range, Sheet};
use crate::units::quantity::Area;

/// What a unit takes of a board.
#[derive(Clone, Debug, PartialEq)]
pub struct Material {
    /// The board.
    pub board: Key,
    /// How many sheets are loaded.
    pub sheets: f64,
    /// Area that is paid for, sanded and coated: that of the sheets, less what the kept of them is worth.
    pub counted: Area,
    /// What it costs, in minor units.
    pub cost: f64,
    /// The share of the sheet that is used least, where there are several.
    pub least_used: Option<f64>,
}

impl Material {
    /// That of some parts.
    pub fn of(range: &Range, board: &Board, parts: &[Grained]) -> Self {
        let area: Area = parts.iter().map(|part| part.along * part.across).sum();
        match range.rates.material {
            MaterialBy::Nest => Self::nested(range, board, parts),
            MaterialBy::Yield { per_mille } => Some(Self::by_area(board, area * (1000.0 / f64::from(per_mille)))),
        }
        // A part that fits no sheet stops the order; until then it counts by its area.
        .unwrap_or_else(|| Self::by_area(board, area))
    }

    /// What those parts take at least, whatever nest is found: their area alone. Nothing is nested for it.
    pub fn at_least(board: &Board, parts: &[Grained]) -> Self {
        let area = parts.iter().map(|part| part.along * part.across).sum();
        let largest = board.sheets.iter().map(Sheet::area).fold(Area::ZERO, Area::max);
        Self { sheets: area / largest, ..Self::by_area(board, area) }
    }

    /// From a nest; `None` where a part fits no sheet.
    fn nested(range: &Range, board: &Board, parts: &[Grained]) -> Option<Self> {
        let problem = nesting::problem(range, board, parts.iter().copied());
        let packing = quick(&problem, &nesting::worth(range)).ok()?;
        let figures = packing.figures(&problem);
        let mm2 = |hundredths: i64| in_f64(hundredths) / 1e4;
        let kept = range.offcuts.worth(Area::mm2(mm2(figures.offcut_area)));
        let used = packing.sheets.iter().map(|sheet| {
            let figures = sheet.figures(&problem);
            in_f64(figures.part_area) / in_f64(figures.sheet_area)
        });
        let least_used = (packing.sheets.len() > 1).then(|| used.fold(1.0, f64::min));
        Some(Self {
            board: board.key.clone(),
            sheets: figures.sheets.into(),
            counted: Area::mm2(mm2(figures.sheet_area)) - kept,
            cost: in_f64(figures.net()),
            least_used,
        })
    }

    /// So much of a board, at the best price of a square metre among its formats.
    fn by_area(board: &Board, area: Area) -> Self {
        let cheapest = board.cheapest();
        let of = |figure: fn(&Sheet) -> f64| cheapest.map_or(0.0, figure);
        Self {
            board: board.key.clone(),
            sheets: area.in_m2() / of(|sheet| sheet.area().in_m2()).max(f64::MIN_POSITIVE),
            counted: area,
            cost: of(Sheet::per_m2) * area.in_m2(),
            least_used: None,
        }
    }
}

#[expect(clippy::cast_precision_loss, reason = "amounts and areas stay under 2⁵³")]
fn in_f64(value: i64) -> f64 {
    value as f64
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::business::job::Job;
    use crate::cabinet::case::WeighedCase;
    use crate::cabinet::layout::{Layout, Picked};
    use crate::rules::sample::{Wanted, choices};
    use crate::testing::demo;
    use crate::units::quantity::Length;

    fn part(along: f64, across: f64) -> Grained {
        Grained { along: Length::mm(along), across: Length::mm(across) }
    }

    /// By hand on a sheet of 2440 × 1220 mm for 9800, of which 2420 × 1200 are used, parts 8 mm apart.
    #[test]
    fn sheets_less_what_is_kept() {
        let mut range = demo();
        let board = range.boards.first_mut().unwrap();
        board.sheets.truncate(1);
        let (range, board) = (range.clone(), range.boards.first().unwrap());
        let of = |parts: &[Grained]| Material::of(&range, board, parts);
        // 500 + 8 + 500 + 8 + 150 = 1166 mm; beside the short one 1412 × 184 mm are left, too narrow to be kept.
        let full = of(&[part(2400.0, 500.0), part(2400.0, 500.0), part(1000.0, 150.0)]);
        assert!((full.sheets - 1.0).abs() + (full.cost - 9800.0).abs() < 1e-9, "{full:?}");
        assert!((full.counted.in_m2() - 2.9768).abs() < 1e-9 && full.least_used.is_none());
        // 2420 × 692 mm are kept, at half of their price.
        let half = of(&[part(2400.0, 500.0)]);
        let kept = 2.42 * 0.692;
        assert!((half.counted.in_m2() - (2.9768 - kept / 2.0)).abs() < 1e-9, "{half:?}");
        // What is kept is worth whole cents, rounded down.
        let cost = 9800.0 - 4900.0 * kept / 2.9768;
        assert!((cost..cost + 1.0).contains(&half.cost), "{half:?}");
        // Three of them take two sheets, the second of which is used by one: 1.2 of 2.9768 m².
        let two = of(&[part(2400.0, 500.0); 3]);
        assert!((two.sheets - 2.0).abs() < 1e-9);
        assert!((two.least_used.unwrap() - 1.2 / 2.9768).abs() < 1e-9);
        // What fits no sheet counts by its area.
        let large = of(&[part(3000.0, 1300.0)]);
        assert!((large.cost - 9800.0 * 3.9 / 2.9768).abs() < 1e-6 && (large.counted.in_m2() - 3.9).abs() < 1e-9);
    }

    #[test]
    fn the_bound_by_area_is_never_above_the_nest() {
        let range = demo();
        let mut seen = 0;
        for choice in choices(&range, 181, Wanted::Valid).take(150) {
            let picked = Picked::of(&range, &choice).unwrap();
            let layout = Layout::of(picked, &choice).unwrap();
            let cut = WeighedCase::of(picked, &choice, &layout).unwrap();
            let (least, nested) = (Job::at_least(&cut, picked), Job::of(&cut, picked));
            for (least, nested) in least.materials.iter().zip(&nested.materials) {
                assert!(least.cost <= nested.cost + 0.5 && least.counted.in_m2() <= nested.counted.in_m2() + 1e-9);
                assert!(least.sheets <= nested.sheets, "{least:?} {nested:?}");
                seen += 1;
            }
            let total = |job: &Job<'_>| crate::business::price::price(job).total_minor;
            assert!(total(&least) <= total(&nested));
        }
        assert!(seen > 150);
    }
}
