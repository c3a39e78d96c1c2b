//! What is kept whatever is asked for: pinned answers, and what was given for the visit.

use leptos::prelude::*;
use slotwright_core::choice::question::Question;
use slotwright_protocol::adviser::Bounds;

use super::Desk;
use crate::browser::adviser;

impl Desk {
    /// Changes what is kept: what the adviser says with something else kept is no advice any more.
    pub(super) fn keep_other(self, change: impl FnOnce(&mut Vec<Question>)) {
        adviser::forget(|question| question.choice().is_some());
        self.advised.grow_old();
        self.pins.update(change);
    }

    /// Gives something for this visit, or lets it go.
    pub fn give(self, change: impl FnOnce(&mut Bounds)) {
        self.begin_answer(None);
        self.keep_other(|_| {});
        self.bounds.update(change);
    }

    /// Is run again whenever something else is kept.
    pub fn track_pins(self) {
        self.pins.track();
    }

    /// What was given for it.
    pub fn bounds(self) -> Bounds {
        self.bounds.get()
    }

    /// Keeps the answer to a question whatever else is asked for, or no longer.
    pub fn keep(self, question: Question) {
        self.begin_answer(None);
        self.keep_other(|pins| match pins.iter().position(|pin| *pin == question) {
            Some(at) => {
                pins.remove(at);
            }
            None => pins.push(question),
        });
    }

    /// Whether the answer to a question is kept.
    pub fn keeps(self, question: Question) -> bool {
        self.pins.with(|pins| pins.contains(&question))
    }
}
