//! The texts of the tally strip and of the order, made from what is known: no signal, no page.

use slotwright_core::business::price::customer::{CustomerItem, customer_lines};
use slotwright_core::business::price::{Item, Price};
use slotwright_core::input::entry::Refused;
use slotwright_core::range::Range;
use slotwright_core::rules::place::breaches;
use slotwright_core::units::day::Day;
use slotwright_core::words;
use slotwright_core::words::page::{Label, Message};

use crate::state::Snapshot;
use crate::unread::Field;

/// What stops an order, whatever is known about the unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hindrance {
    /// An entry was not taken.
    Unread(Field, Refused),
    /// The workshop's range file is not there.
    NoRange,
    /// The device has a day that makes no sense.
    WrongClock,
}

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
    /// The stage that takes longest.
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

/// The strip for what is known on a day, and so many hints, and whether one of them is of what the customer gave.
pub fn tally_text(
    range: &Range,
    (snapshot, today): (&Snapshot, Day),
    (hints, beyond): (usize, bool),
    hindrance: Option<Hindrance>,
) -> TallyText {
    let mut text = TallyText { good: snapshot.orderable && hindrance.is_none(), ..TallyText::default() };
    let stops = snapshot.findings.len();
    text.but = text.good && (beyond || breaches(&snapshot.choice).next().is_some());
    let unread = match hindrance {
        Some(Hindrance::Unread(field, refused)) => Some((field, refused)),
        Some(Hindrance::NoRange | Hindrance::WrongClock) | None => None,
    };
    let state = match hindrance {
        _ if unread.is_some() => Label::NotJudgedYet,
        // That it has no day is only for that.
        Some(Hindrance::WrongClock) => Label::NotOrderedNow,
        _ if !snapshot.orderable => Label::VerdictUnmakeable,
        Some(_) => Label::NotOrderedNow,
        None if text.but => Label::MadeButUnsuited,
        None => Label::CanBeMade,
    };
    text.state = state.text().into();
    text.state_note = match (unread, stops, hints) {
        (Some((field, refused)), ..) => Message::NotTaken(field.label(), refused).text(),
        _ if hindrance == Some(Hindrance::WrongClock) => Label::DateIsWrong.text().into(),
        (_, 0, _) if hindrance.is_some() => Label::NoRangeFile.text().into(),
        (_, 0, 0) => String::new(),
        (_, 0, hints) => Message::Hints(hints).text(),
        (_, stops, _) => Message::Reasons(stops).text(),
    };
    let nothing = || String::from("\u{2013}");
    // Of what is not read yet nothing is known; the figures would be those of before.
    let Some(built) = snapshot.built.as_ref().filter(|_| unread.is_none()) else {
        (text.price, text.mass, text.day) = (nothing(), nothing(), nothing());
        return text;
    };
    text.price = words::money(built.price.total_minor, &built.price.currency);
    text.price_note = Message::TaxOfIt(built.price.amount(Item::Tax), &built.price.currency).text();
    text.mass = words::mass(built.whole.mass);
    if let Some((part, mass)) = built.heaviest() {
        text.mass_note = Message::Heaviest(part, mass).text();
    }
    let promise = built.promise.as_ref().filter(|_| hindrance != Some(Hindrance::WrongClock));
    match promise {
        None => text.day = nothing(),
        Some(promise) => {
            text.day = words::day(promise.arrives, today);
            let stage = range.stages.iter().find(|stage| stage.key == promise.decided_by);
            text.day_note = stage.map(|stage| Message::LongestStep(&stage.name).text()).unwrap_or_default();
        }
    }
    text
}

/// A sentence for a screen reader after a change.
pub fn spoken(text: &TallyText) -> String {
    let message = if text.but {
        Message::SpokenBut { verdict: &text.state, price: &text.price, mass: &text.mass, day: &text.day }
    } else if text.good {
        Message::Spoken { price: &text.price, mass: &text.mass, day: &text.day }
    } else {
        Message::SpokenStop(&text.state, &text.state_note)
    };
    message.text()
}

/// The lines of the price with their names, for a customer.
pub fn price_lines(price: &Price) -> Vec<(&'static str, String)> {
    let named = customer_lines(price).into_iter();
    named.map(|(item, amount)| (name(item), words::money(amount, &price.currency))).collect()
}

fn name(item: CustomerItem) -> &'static str {
    let label = match item {
        CustomerItem::Material => Label::Material,
        CustomerItem::Making => Label::Making,
        CustomerItem::Finish => Label::Finish,
        CustomerItem::PackingAndCarriage => Label::PackingAndCarriage,
        CustomerItem::Tax => Label::Tax,
    };
    label.text()
}
