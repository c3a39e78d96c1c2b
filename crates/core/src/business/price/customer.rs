//! The price as its customer reads it: the same total in five lines.
//!
//! Overhead and margin are no work of their own. They are computed from what the unit costs to make and pack, so they
//! are spread over those lines by their amounts, as they arose; carriage and tax bear none of them.

use super::{Item, Line, Price};
use crate::units::money::Money;

/// What a customer pays for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CustomerItem {
    /// Sheets, offcuts included.
    Material,
    /// Cutting, and the work by hand.
    Making,
    /// The finish and its work.
    Finish,
    /// Packing and the carrier.
    PackingAndCarriage,
    /// Tax.
    Tax,
}

impl CustomerItem {
    /// All of them, in the order in which they are read.
    pub const ALL: [Self; 5] = [Self::Material, Self::Making, Self::Finish, Self::PackingAndCarriage, Self::Tax];

    /// The line to which an item belongs; none for what is spread.
    const fn of(item: Item) -> Option<Self> {
        match item {
            Item::Sheets => Some(Self::Material),
            Item::Machine | Item::Bench => Some(Self::Making),
            Item::Finish | Item::Spraying => Some(Self::Finish),
            Item::Packing | Item::Carriage => Some(Self::PackingAndCarriage),
            Item::Tax => Some(Self::Tax),
            Item::Overhead | Item::Margin => None,
        }
    }
}

/// Whether an item bears its part of overhead and margin.
const fn bears(item: Item) -> bool {
    match item {
        Item::Sheets | Item::Machine | Item::Bench | Item::Finish | Item::Spraying | Item::Packing => true,
        Item::Overhead | Item::Margin | Item::Carriage | Item::Tax => false,
    }
}

/// The lines for a customer; they sum to the total as exactly as the maker's lines do.
///
/// What is spread is rounded on its running sum, half away from zero: each line is within one minor unit of its
/// exact share, and nothing is left over. Where nothing bears it, it is making.
pub fn customer_lines(price: &Price) -> [(CustomerItem, Money); 5] {
    let sum = |of: &dyn Fn(Item) -> bool| {
        let lines = price.lines.iter().filter(|line| of(line.item));
        lines.map(|Line { amount_minor, .. }| amount_minor.in_minor()).sum::<i64>()
    };
    let spread = sum(&|item| CustomerItem::of(item).is_none());
    let base = sum(&bears);
    let (mut below, mut given) = (0, 0);
    CustomerItem::ALL.map(|own| {
        let bearing = sum(&|item| bears(item) && CustomerItem::of(item) == Some(own));
        below += bearing;
        let due = match base {
            0 if own == CustomerItem::Making => spread,
            0 => given,
            base => share(spread, below, base),
        };
        let part = due - given;
        given = due;
        (own, Money::minor(sum(&|item| CustomerItem::of(item) == Some(own)) + part))
    })
}

/// `amount` × `part` ÷ `whole`, half away from zero; `whole` is not zero.
fn share(amount: i64, part: i64, whole: i64) -> i64 {
    let (product, whole) = (i128::from(amount) * i128::from(part) * 2, i128::from(whole));
    let half = if product < 0 { -whole } else { whole };
    // A share of what is spread is no larger than that.
    i64::try_from((product + half) / (2 * whole)).unwrap_or(amount)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::business::promise::Backlog;
    use crate::order::derive::derive_unproven;
    use crate::rules::sample::{Wanted, choices};
    use crate::testing::demo;

    fn of(lines: &[(Item, i64)]) -> Price {
        let lines: Vec<Line> =
            lines.iter().map(|(item, minor)| Line { item: *item, amount_minor: Money::minor(*minor) }).collect();
        let total_minor = lines.iter().map(|line| line.amount_minor).sum();
        Price { currency: "EUR".into(), lines, total_minor }
    }

    fn amounts(price: &Price) -> [i64; 5] {
        customer_lines(price).map(|(_, amount)| amount.in_minor())
    }

    /// By hand: 300 are spread over 100 + 400 + 200 + 300.
    #[test]
    fn overhead_and_margin_go_where_they_arose() {
        let price = of(&[
            (Item::Sheets, 100),
            (Item::Machine, 150),
            (Item::Finish, 120),
            (Item::Spraying, 80),
            (Item::Bench, 250),
            (Item::Packing, 300),
            (Item::Overhead, 100),
            (Item::Margin, 200),
            (Item::Carriage, 1000),
            (Item::Tax, 77),
        ]);
        assert_eq!(amounts(&price), [130, 520, 260, 1390, 77]);
    }

    /// By hand: thirds of 100 on the running sum are 33.3, 66.7 and 100.
    #[test]
    fn what_does_not_divide_is_rounded_on_the_running_sum() {
        let thirds = of(&[(Item::Sheets, 10), (Item::Bench, 10), (Item::Packing, 10), (Item::Margin, 100)]);
        assert_eq!(amounts(&thirds), [43, 44, 0, 43, 0]);
        assert_eq!(amounts(&of(&[(Item::Overhead, 7), (Item::Carriage, 5)])), [0, 7, 0, 5, 0]);
    }

    proptest! {
        #[test]
        fn the_lines_sum_to_the_total(minor in proptest::array::uniform10(0i64..1_000_000_000)) {
            const ALL: [Item; 10] = [
                Item::Sheets, Item::Machine, Item::Finish, Item::Spraying, Item::Bench, Item::Packing,
                Item::Overhead, Item::Margin, Item::Carriage, Item::Tax,
            ];
            let price = of(&ALL.into_iter().zip(minor).collect::<Vec<_>>());
            let lines = customer_lines(&price);
            prop_assert_eq!(lines.iter().map(|(_, amount)| *amount).sum::<Money>(), price.total_minor);
            // Each is within one minor unit of its exact share.
            let own = |of: &[Item]| of.iter().map(|item| price.amount(*item).in_minor()).sum::<i64>();
            let spread = i128::from(own(&[Item::Overhead, Item::Margin]));
            let base = i128::from(own(&ALL[..6]));
            for (line, bearing, other) in [
                (0, own(&[Item::Sheets]), 0),
                (1, own(&[Item::Machine, Item::Bench]), 0),
                (2, own(&[Item::Finish, Item::Spraying]), 0),
                (3, own(&[Item::Packing]), own(&[Item::Carriage])),
                (4, 0, own(&[Item::Tax])),
            ] {
                let part = i128::from(lines[line].1.in_minor() - bearing - other);
                let apart = (part * base - spread * i128::from(bearing)).abs();
                prop_assert!(apart <= base.max(1), "line {line} is {apart} ÷ {base} from its share");
            }
        }

        /// As prices really come out.
        #[test]
        fn every_unit_has_lines_that_sum_and_none_below_nothing(seed in any::<u64>()) {
            let range = demo();
            let (today, backlog) = ("2026-11-25".parse().unwrap(), Backlog::default());
            for choice in choices(&range, seed, Wanted::Valid).take(3) {
                let derived = derive_unproven(&range, &choice, today, &backlog);
                let price = &derived.built.as_ref().unwrap().price;
                let lines = customer_lines(price);
                prop_assert_eq!(lines.iter().map(|(_, amount)| *amount).sum::<Money>(), price.total_minor);
                prop_assert!(lines.iter().all(|(_, amount)| *amount > Money::ZERO), "{lines:?}");
            }
        }
    }
}
