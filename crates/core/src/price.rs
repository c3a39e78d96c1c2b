//! The price of one unit from its bill of work.
//!
//! Every line is rounded once to whole minor units, half away from zero; overhead, margin and tax
//! are computed from the rounded lines, so that the lines always sum to the total.

pub mod customer;

use serde::Serialize;

use crate::bill::Bill;
use crate::carriage::carriage;
use crate::money::Money;
use crate::range::{Board, Finish, Range};

/// What a line of the price is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Item {
    /// Sheets, offcuts included.
    Sheets,
    /// The machine with its operator.
    Machine,
    /// The finish itself.
    Finish,
    /// Work in the spray room.
    Spraying,
    /// Sanding and edges by hand.
    Bench,
    /// Packing, work and material.
    Packing,
    /// Overhead.
    Overhead,
    /// Margin.
    Margin,
    /// The carrier.
    Carriage,
    /// Tax.
    Tax,
}

/// One line of the price.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Line {
    /// What for.
    pub item: Item,
    /// How much.
    pub amount_minor: Money,
}

/// What a unit costs.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Price {
    /// ISO 4217 code.
    pub currency: String,
    /// The lines, tax last; they sum to the total.
    pub lines: Vec<Line>,
    /// The total with tax.
    pub total_minor: Money,
}

impl Price {
    /// The amount of one line.
    pub fn amount(&self, item: Item) -> Money {
        self.lines.iter().filter(|line| line.item == item).map(|line| line.amount_minor).sum()
    }
}

/// Prices a unit.
pub fn price(range: &Range, bill: &Bill, finish: &Finish) -> Price {
    let rates = &range.rates;
    let minutes = bill.minutes(rates, finish);
    let hours = |hour: Money, minutes: f64| Money::to_minor(in_minor(hour) * minutes / 60.0);
    let sheets = bill.blanks.iter().map(|(key, blanks)| {
        let per_m2 = range.board(key).and_then(price_per_m2).unwrap_or_default();
        per_m2 * bill.sheet_area(*blanks, rates).in_m2()
    });
    let packing = in_minor(rates.bench_hour_minor) * minutes.pack / 60.0
        + in_minor(rates.pack_minor_per_m2) * bill.faces.in_m2() / 2.0;
    let mut lines = vec![
        Line { item: Item::Sheets, amount_minor: Money::to_minor(sheets.sum()) },
        Line { item: Item::Machine, amount_minor: hours(rates.machine_hour_minor, minutes.cut) },
        Line {
            item: Item::Finish,
            amount_minor: Money::to_minor(in_minor(finish.litre_minor) * bill.litres(rates, finish)),
        },
        Line {
            item: Item::Spraying,
            amount_minor: hours(rates.spray_hour_minor, minutes.coat_before + minutes.coat_after),
        },
        Line { item: Item::Bench, amount_minor: hours(rates.bench_hour_minor, minutes.sand + minutes.edges) },
        Line { item: Item::Packing, amount_minor: Money::to_minor(packing) },
    ];
    let sum = |lines: &[Line]| lines.iter().map(|line| line.amount_minor).sum::<Money>();
    let made = sum(&lines);
    lines.push(Line { item: Item::Overhead, amount_minor: made.share(rates.overhead_per_mille) });
    let cost = sum(&lines);
    lines.push(Line { item: Item::Margin, amount_minor: cost.with_margin(rates.margin_per_mille) - cost });
    if let Some(carriage) = carriage(range, bill) {
        let packages = i64::from(carriage.packages);
        let amount = carriage.carrier.package_minor.in_minor().saturating_mul(packages);
        lines.push(Line { item: Item::Carriage, amount_minor: Money::minor(amount) });
    }
    lines.push(Line { item: Item::Tax, amount_minor: sum(&lines).share(rates.tax_per_mille) });
    Price { currency: range.currency.clone(), total_minor: sum(&lines), lines }
}

/// An amount as a factor, in minor units.
#[expect(clippy::cast_precision_loss, reason = "amounts stay under 2⁵³")]
fn in_minor(amount: Money) -> f64 {
    amount.in_minor() as f64
}

/// The best price of a square metre among the board's sheets, in minor units: parts are priced by area
/// over a stated yield, whichever format they will be nested on.
fn price_per_m2(board: &Board) -> Option<f64> {
    let prices =
        board.sheets.iter().map(|sheet| in_minor(sheet.price_minor) / (sheet.length_mm * sheet.width_mm).in_m2());
    prices.min_by(f64::total_cmp)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Area, Length, Mass};
    use crate::testing::demo;

    /// By hand from the demo range's rates; each line rounded once, half away from zero.
    #[test]
    fn the_lines_are_those_worked_by_hand() {
        let range = demo();
        let bill = Bill {
            blanks: [(range.boards[0].key.clone(), Area::mm2(5e6))].into(),
            cut: Length::mm(36_000.0),
            faces: Area::mm2(10e6),
            edges: Length::mm(30_000.0),
            parts: 10,
            heaviest: Mass::kg(9.0),
            mass: Mass::kg(48.0),
            footprint: (Length::mm(1640.0), Length::mm(460.0)),
            stack: Length::mm(180.0),
        };
        let price = price(&range, &bill, &range.finishes[0]);
        let expected = [
            // 5 m² / 0.78 at the small sheet's 9800 for 2.9768 m².
            (Item::Sheets, 21_103),
            // 36 m × 3 / 3.6 m/min = 30 min, and 6.410 m² / 2.9768 m² × 6 min = 12.92 min, at 6200 an hour.
            (Item::Machine, 4435),
            // 12.821 m² × 2 coats and 10 m² × 1, 100 µm each: 3.564 l, of which 0.6 reach the work: 5.940 l at 1900.
            (Item::Finish, 11_286),
            // 12.821 m² × 2 coats × 0.9 min and 10 m² × 0.9 min at 5200 an hour.
            (Item::Spraying, 2780),
            // 12.821 m² × 1.5 min and 30 m × 0.8 min at 4400 an hour.
            (Item::Bench, 3170),
            // 10 parts × 2.5 min at 4400 an hour, and 5 m² at 260.
            (Item::Packing, 3133),
            // 16 % of 45 907.
            (Item::Overhead, 7345),
            // 53 252 / 0.76 less 53 252.
            (Item::Margin, 16_816),
            // Two packages of the van: longer than a parcel may be.
            (Item::Carriage, 11_000),
            // 21 % of 81 068.
            (Item::Tax, 17_024),
        ];
        let lines: Vec<(Item, i64)> =
            price.lines.iter().map(|line| (line.item, line.amount_minor.in_minor())).collect();
        assert_eq!(lines, expected);
        assert_eq!(price.total_minor, Money::minor(98_092));
    }
}
