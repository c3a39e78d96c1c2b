//! Sizes as they are typed: what lies between those that are offered becomes the nearest, and that is said.

use leptos::prelude::*;
use slotwright_core::choice::change::Change;
use slotwright_core::range::DimRange;
use slotwright_core::units::quantity::Dim;
use slotwright_core::words::{self, entry};

use crate::browser::speech;
use crate::state::Desk;
use crate::unread::Field;

/// What a size that lies between those that are offered became, and with which choice: another one makes it old.
#[derive(Clone, Copy, Debug)]
pub struct Settled(RwSignal<Option<(String, String)>>);

impl Settled {
    /// Nothing was typed yet.
    pub fn new() -> Self {
        let own = Self(RwSignal::new(None));
        let desk = Desk::here();
        speech::follow(Callback::new(move |()| own.text(desk)));
        own
    }

    /// What is said of it; nothing where the size is one that is offered.
    pub fn text(self, desk: Desk) -> String {
        let note = self.0.get().filter(|(_, compact)| *compact == desk.compact());
        note.map(|(note, _)| note).unwrap_or_default()
    }

    /// Takes what was typed into a field: the nearest size within limits.
    pub fn enter(self, desk: Desk, field: Field, text: String, limits: Option<DimRange>, to: &dyn Fn(Dim) -> Change) {
        let read = entry::size(&text).ok();
        let taken = read.map(|read| limits.map_or(read, |limits| limits.settle(read)));
        desk.enter(field, text, taken.map(to));
        let between = read.zip(taken).filter(|(read, taken)| read != taken);
        self.0.set(between.map(|(read, taken)| (words::between_sizes(read, taken), untrack(move || desk.compact()))));
    }
}
