//! What is typed into fields, and what is said of an entry that was not taken.

use leptos::prelude::*;
use slotwright_core::choice::change::Change;
use slotwright_core::input::entry::Refused;

use super::Desk;
use crate::browser::clock;
use crate::tally::Hindrance;
use crate::unread::Field;

impl Desk {
    /// Takes what was typed into a field, if it could be read.
    pub fn enter(self, field: Field, entry: String, read: Option<Change>) {
        match read {
            Some(change) => self.apply(&change),
            None => self.unread.add(field, entry),
        }
    }

    /// Why the entry of a field was not taken.
    fn refused(self, field: Field) -> Refused {
        let currency = self.range.with_value(|range| range.currency.clone());
        self.unread.entry(field).map_or(Refused::Unread, |typed| field.refused(&typed, &currency))
    }

    /// What a field says of its entry that was not taken; nothing if there is none.
    pub fn wrong(self, field: Field) -> String {
        if self.unread.entry(field).is_some() { field.wrong(self.refused(field)) } else { String::new() }
    }

    /// What stops an order, whatever is known about the unit.
    pub fn hindrance(self) -> Option<Hindrance> {
        let unread = self.unread.first_of_unit().map(|field| Hindrance::Unread(field, self.refused(field)));
        let no_range = self.built_in.then_some(Hindrance::NoRange);
        unread.or(no_range).or_else(|| clock::is_off(self.present_day()).then_some(Hindrance::WrongClock))
    }
}
