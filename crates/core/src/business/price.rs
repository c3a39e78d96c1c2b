//! The price of one unit from its bill of work.
//!
//! Every line is rounded once to whole minor units, half away from zero; overhead, margin and tax
//! are computed from the rounded lines, so that the lines always sum to the total.

pub mod customer;

use serde::Serialize;

use crate::business::carriage::carriage;
use crate::business::job::Job;
use crate::units::money::Money;

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
    /// Work in the spray room, turning and masking included.
    Spraying,
    /// Sanding, edges and the dry fit, by hand.
    Bench,
    /// Labels and packing, work and material.
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
pub fn price(job: &Job<'_>) -> Price {
    let Job { range, finish, bill, materials } = job;
    let (rates, minutes) = (&range.rates, job.minutes());
    let hours = |hour: Money, minutes: f64| Money::to_minor(in_minor(hour) * minutes / 60.0);
    let sheets = materials.iter().map(|material| material.cost);
    let packing = in_minor(rates.bench_hour_minor) * minutes.pack / 60.0
        + in_minor(rates.pack_minor_per_m2) * bill.faces.in_m2() / 2.0;
    let bench = minutes.sand + minutes.edges + minutes.dry_fit + minutes.sand_after;
    let mut lines = vec![
        Line { item: Item::Sheets, amount_minor: Money::to_minor(sheets.sum()) },
        Line { item: Item::Machine, amount_minor: hours(rates.machine_hour_minor, minutes.load + minutes.cut) },
        Line { item: Item::Finish, amount_minor: Money::to_minor(in_minor(finish.litre_minor) * job.litres()) },
        Line {
            item: Item::Spraying,
            amount_minor: hours(rates.spray_hour_minor, minutes.coat_before + minutes.coat_after),
        },
        Line { item: Item::Bench, amount_minor: hours(rates.bench_hour_minor, bench) },
        Line { item: Item::Packing, amount_minor: Money::to_minor(packing) },
    ];
    let sum = |lines: &[Line]| lines.iter().map(|line| line.amount_minor).sum::<Money>();
    let made = sum(&lines);
    lines.push(Line { item: Item::Overhead, amount_minor: made.share(rates.overhead_per_mille) });
    let cost = sum(&lines);
    lines.push(Line { item: Item::Margin, amount_minor: cost.with_margin(rates.margin_per_mille) - cost });
    if let Some(carriage) = carriage(range, bill) {
        let packages = i64::try_from(carriage.packages.len()).unwrap_or(i64::MAX);
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::business::bill::{Bill, FlatPart};
    use crate::business::material::Material;
    use crate::business::nesting::Grained;
    use crate::cabinet::panel::{PanelId, Stock};
    use crate::testing::demo;
    use crate::units::quantity::{Area, Length, Mass};

    /// By hand from the demo range's rates; each line rounded once, half away from zero.
    #[test]
    fn the_lines_are_those_worked_by_hand() {
        let range = demo();
        let part = FlatPart {
            id: PanelId::Top,
            stock: Stock::Body,
            blank: Grained { along: Length::mm(1640.0), across: Length::mm(460.0) },
            mass: Mass::kg(4.8),
            face: Area::mm2(0.5e6),
            long: Length::mm(1640.0),
            wide: Length::mm(460.0),
            thick: Length::mm(18.0),
        };
        let bill = Bill {
            cut: Length::mm(36_000.0),
            outlines: 40,
            faces: Area::mm2(10e6),
            edges: Length::mm(30_000.0),
            chamfers: Length::mm(40_000.0),
            roundings: Length::mm(2000.0),
            pivots: 2,
            joints: 45,
            parts: 10,
            flat: (1..=10).map(|number| FlatPart { id: PanelId::Upright(number), ..part }).collect(),
        };
        let per_m2 = 9800.0 / 2.9768;
        let counted = Area::mm2(5e6 / 0.78);
        let (board, cost) = (range.boards[0].key.clone(), per_m2 * counted.in_m2());
        let sheets = Material { board, sheets: counted.in_m2() / 2.9768, counted, cost, least_used: None };
        let price = price(&Job { range: &range, finish: &range.finishes[0], bill, materials: vec![sheets] });
        let expected = [
            // 5 m² / 0.78 at the small sheet's 9800 for 2.9768 m².
            (Item::Sheets, 21_103),
            // 25 min, 6.410 m² / 2.9768 m² × 6 min = 12.92 min, 36 m × 3 / 3.6 m/min = 30 min, and 40 outlines × 0.08 min, at
            // 6200 an hour.
            (Item::Machine, 7349),
            // 12.821 m² × 2 coats and 10 m² × 1, 100 µm each: 3.564 l, of which 0.6 reach the work: 5.940 l at 1900.
            (Item::Finish, 11_286),
            // Before: 12 min, 12.821 m² × 2 coats × 0.9 min, 2.153 sheets × 2 coats × 2 min; after: 12 min, 10 parts × 2
            // min, 10 m² × 0.9 min: 84.69 min at 5200 an hour.
            (Item::Spraying, 7340),
            // 12.821 m² × (1.5 + 1) min; 30 m × 0.8, 40 m × 0.4, 2 m × 3 and 2 × 4 min; 45 joints × 1 min; 10 m² × 1 min:
            // 141.05 min at 4400 an hour.
            (Item::Bench, 10_344),
            // 10 parts × 3 min at 4400 an hour, and 5 m² at 260.
            (Item::Packing, 3500),
            // 16 % of 60 922.
            (Item::Overhead, 9748),
            // 70 670 / 0.76 less 70 670.
            (Item::Margin, 22_317),
            // Longer than a parcel may be. Six parts of 4.8 kg with 0.2 kg of card, and 0.8 kg, are 30.8 kg, seven would be
            // more than the van's two people lift: two packages.
            (Item::Carriage, 11_000),
            // 21 % of 103 987.
            (Item::Tax, 21_837),
        ];
        let lines: Vec<(Item, i64)> =
            price.lines.iter().map(|line| (line.item, line.amount_minor.in_minor())).collect();
        assert_eq!(lines, expected);
        assert_eq!(price.total_minor, Money::minor(125_824));
    }
}
