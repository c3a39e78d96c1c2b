//! What the tests of packs share: orders of the demo range.

use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::order::derive::derive;
use slotwright_core::order::intake::KnownRange;
use slotwright_core::order::spec::{Customer, OrderSpec};
use slotwright_core::range::Range;

use super::{Nesting, OrderRead, Orders, Pack, Settings};

const DEMO: &str = include_str!("../../../../web/ranges/fenland.toml");
/// How the demo range holds parts.
const BRIDGES: &str = "hold = { bridges = { length_mm = 8, thickness_mm = 3, apart_mm = 450 } }";
/// The day of all orders.
pub(super) const DAY: &str = "2026-11-25";

/// The demo range.
pub(super) fn demo() -> Range {
    Range::parse(DEMO).unwrap()
}

/// The demo range with something else that holds parts.
pub(super) fn holding(hold: &str) -> Range {
    assert!(DEMO.contains(BRIDGES));
    Range::parse(&DEMO.replace(BRIDGES, &format!("hold = {hold}"))).unwrap()
}

/// An order of the first unit of a model, in a finish, both by their places in the range.
pub(super) fn order(range: &Range, model: usize, finish: usize) -> String {
    let mut choice = Choice::starting(&range.models[model]).unwrap();
    choice.finish = range.finishes[finish].key.clone();
    order_of(range, &choice)
}

/// An order of a choice that holds.
pub(super) fn order_of(range: &Range, choice: &Choice) -> String {
    order_remarked(range, choice, "")
}

/// The same with a remark.
pub(super) fn order_remarked(range: &Range, choice: &Choice, remark: &str) -> String {
    let backlog = Backlog::default();
    let derived = derive(range, choice, DAY.parse().unwrap(), &backlog);
    let customer = Customer { name: "ada".into(), contact: "-".into(), address: vec!["1".into()] };
    OrderSpec::new(derived.orderable().unwrap(), customer, remark.into()).unwrap().to_text()
}

/// Does something with orders of some ranges, which are cut as they stand.
pub(super) fn with_orders<T>(ranges: &[Range], texts: &[String], what: impl FnOnce(&Orders<'_>) -> T) -> T {
    let known: Vec<KnownRange> = ranges.iter().map(|range| KnownRange::of(range.clone(), range.clone())).collect();
    let numbered = (1..).zip(texts);
    let read: Vec<OrderRead<'_>> = numbered
        .map(|(number, text)| OrderRead::of(number, format!("{number}.json"), text.as_bytes(), &known))
        .collect();
    what(&Orders::of(&read))
}

/// Does something with the first pack of an order of the first model, held in that way.
pub(super) fn with_pack<T>(range: &Range, settings: &Settings, what: impl FnOnce(&Pack<'_>) -> T) -> T {
    with_orders(core::slice::from_ref(range), &[order(range, 0, 0)], |orders| {
        what(&Nesting::begin(orders, settings, None).unwrap().pack())
    })
}
