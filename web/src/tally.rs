//! The texts of the tally strip and of the order, made from what is known: no signal, no page.

use slotwright_core::price::{Item, Price};
use slotwright_core::range::Range;
use slotwright_core::rules::place::breaches;
use slotwright_core::words;

use crate::state::Known;

/// What the strip says.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TallyText {
    /// Price with tax.
    pub price: String,
    /// What of it is tax.
    pub price_note: String,
    /// Mass of the whole.
    pub mass: String,
    /// The heaviest part.
    pub mass_note: String,
    /// The latest day on which it arrives.
    pub day: String,
    /// The stage that decides it.
    pub day_note: String,
    /// Whether it can be made.
    pub state: String,
    /// How many hints or reasons there are.
    pub state_note: String,
    /// Whether nothing stops the order.
    pub good: bool,
    /// Whether it can be made, but does not suit wall, screen, budget or day.
    pub but: bool,
}

/// The strip for what is known and so many hints, and whether one of them is of what the customer gave.
pub fn tally_text(range: &Range, known: &Known, (hints, beyond): (usize, bool)) -> TallyText {
    let mut text = TallyText { good: known.orderable, ..TallyText::default() };
    let stops = known.findings.len();
    text.but = known.orderable && (beyond || breaches(&known.choice).next().is_some());
    let state = match (known.orderable, text.but) {
        (false, _) => "Cannot be made",
        (_, true) => "Can be made, but does not suit",
        _ => "Can be made",
    };
    text.state = state.into();
    text.state_note = match (stops, hints) {
        (0, 0) => String::new(),
        (0, 1) => "1 hint".into(),
        (0, hints) => format!("{hints} hints"),
        (1, _) => "1 reason".into(),
        (stops, _) => format!("{stops} reasons"),
    };
    let nothing = || String::from("\u{2013}");
    let Some(built) = &known.built else {
        (text.price, text.mass, text.day) = (nothing(), nothing(), nothing());
        return text;
    };
    text.price = words::money(built.price.total_minor, &built.price.currency);
    text.price_note = format!("{} of it tax", words::money(built.price.amount(Item::Tax), &built.price.currency));
    text.mass = words::mass(built.whole.mass);
    if let Some((part, mass)) = built.heaviest() {
        text.mass_note = format!("{}: {}", words::part(part), words::mass(mass));
    }
    match &built.promise {
        None => text.day = nothing(),
        Some(promise) => {
            text.day = words::day(promise.arrives);
            let stage = range.stages.iter().find(|stage| stage.key == promise.decided_by);
            text.day_note = stage.map(|stage| stage.name.clone()).unwrap_or_default();
        }
    }
    text
}

/// A sentence for a screen reader after a change.
pub fn spoken(text: &TallyText) -> String {
    if text.but {
        format!("{}. {}, {}, with you by {}.", text.state, text.price, text.mass, text.day)
    } else if text.good {
        format!("{}, {}, with you by {}.", text.price, text.mass, text.day)
    } else {
        format!("{}: {}.", text.state, text.state_note)
    }
}

/// The lines of the price with their names.
pub fn price_lines(price: &Price) -> Vec<(&'static str, String)> {
    let named = price.lines.iter().map(|line| (item(line.item), words::money(line.amount_minor, &price.currency)));
    named.collect()
}

fn item(item: Item) -> &'static str {
    match item {
        Item::Sheets => "Sheets",
        Item::Machine => "Cutting",
        Item::Finish => "Finish",
        Item::Spraying => "Spraying",
        Item::Bench => "Sanding and edges",
        Item::Packing => "Packing",
        Item::Overhead => "Overhead",
        Item::Margin => "Margin",
        Item::Carriage => "Carriage",
        Item::Tax => "Tax",
    }
}
