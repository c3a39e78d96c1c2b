//! What can be built of a choice: its parts with their masses, its price, its promise.

use crate::business::job::Job;
use crate::business::material::Material;
use crate::business::price::{Price, price};
use crate::business::promise::{Backlog, NoDay, Promise, promise};
use crate::cabinet::case::{Weighed, WeighedCase};
use crate::cabinet::layout::Layout;
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
    /// The sheets that it takes, board by board.
    pub materials: Vec<Material>,
    /// What it costs.
    pub price: Price,
    /// When it can be there; `None` if the calendar has no such day.
    pub promise: Option<Promise>,
}

impl Built {
    /// What a unit that is laid out and cut comes to as that job, asked for on a day with a backlog; and why it has no day, if it
    /// has none.
    pub(crate) fn of(
        layout: Layout,
        cut: WeighedCase,
        job: Job<'_>,
        (today, backlog): (Day, &Backlog),
    ) -> (Self, Option<NoDay>) {
        let whole = Weighed::whole(&cut.parts);
        let price = price(&job);
        let (promise, no_day) = match promise(&job, today, backlog) {
            Ok(promise) => (Some(promise), None),
            Err(none) => (None, Some(none)),
        };
        (Self { layout, cut, whole, materials: job.materials, price, promise }, no_day)
    }

    /// Mass of the heaviest part, and which it is.
    pub fn heaviest(&self) -> Option<(PanelId, Mass)> {
        let masses = self.cut.parts.iter().map(|(id, part)| (*id, part.mass));
        masses.max_by(|a, b| a.1.total_cmp(&b.1))
    }
}
