//! What can be built of a choice: its parts with their masses, its price, its promise.

use crate::business::bill::Bill;
use crate::business::price::{Price, price};
use crate::business::promise::{Backlog, NoDay, Promise, promise};
use crate::cabinet::case::{Weighed, WeighedCase};
use crate::cabinet::layout::{Layout, Picked};
use crate::cabinet::panel::PanelId;
use crate::units::day::Day;
use crate::units::quantity::Mass;

/// The unit that a choice comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Built {
    /// Where everything stands.
    pub layout: Layout,
    /// Panels and joints, and what each panel weighs.
    pub cut: WeighedCase,
    /// Mass and centre of gravity of the whole, leaves closed.
    pub whole: Weighed,
    /// What it costs.
    pub price: Price,
    /// When it can be there; `None` if the calendar has no such day.
    pub promise: Option<Promise>,
}

impl Built {
    /// What a unit that is laid out and cut comes to, asked for on a day with a backlog; and why it has no day, if it
    /// has none.
    pub(crate) fn of(
        picked: Picked<'_>,
        layout: Layout,
        cut: WeighedCase,
        (today, backlog): (Day, &Backlog),
    ) -> (Self, Option<NoDay>) {
        let bill = Bill::of(&cut, picked);
        let whole = Weighed::whole(&cut.parts);
        let price = price(picked.range, &bill, picked.finish);
        let (promise, no_day) = match promise(picked.range, &bill, picked.finish, today, backlog) {
            Ok(promise) => (Some(promise), None),
            Err(none) => (None, Some(none)),
        };
        (Self { layout, cut, whole, price, promise }, no_day)
    }

    /// Mass of the heaviest part, and which it is.
    pub fn heaviest(&self) -> Option<(PanelId, Mass)> {
        let masses = self.cut.parts.iter().map(|(id, part)| (*id, part.mass));
        masses.max_by(|a, b| a.1.total_cmp(&b.1))
    }
}
