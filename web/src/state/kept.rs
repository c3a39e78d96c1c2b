//! What is kept whatever is asked for: pinned answers, and what was given for the visit.

use leptos::prelude::*;
use slotwright_core::choice::question::Question;

use super::Desk;
use crate::browser::adviser;

impl Desk {
    /// Changes what is kept: what the adviser says with something else kept is no advice any more.
    pub(super) fn keep_other(self, change: impl FnOnce(&mut Vec<Question>)) {
        adviser::forget();
        self.answers.update(|answers| answers.iter_mut().filter_map(|texts| texts.get_mut(1)).for_each(String::clear));
        self.advised.set(String::new());
        self.pins.update(change);
    }

    /// Keeps to a budget or a day for this visit; an empty figure lets it go.
    pub fn give(self, name: &'static str, figure: String) {
        self.begin_answer(None);
        self.keep_other(|_| {});
        self.given.update(|given| {
            given.retain(|(known, _)| *known != name);
            if !figure.is_empty() {
                given.push((name, figure));
            }
        });
    }

    /// What was given of that name.
    pub fn given(self, name: &str) -> String {
        self.given
            .with(|given| given.iter().find(|(known, _)| *known == name).map(|(_, figure)| figure.clone()))
            .unwrap_or_default()
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
