//! Units that come from elsewhere: from an order, a link, a draft, another tab.

use leptos::prelude::*;
use slotwright_core::choice::Choice;
use slotwright_core::choice::draft::Draft;
use slotwright_core::words::page::Label;
use slotwright_protocol::adviser::Bounds;
use slotwright_protocol::desk::Person;

use super::{Begun, Settings};
use crate::browser::page;
use crate::state::Desk;

impl Desk {
    /// Takes over an order that was opened: its choice, for whom it is, and what came of opening it. A budget and a day of
    /// this visit are not its own.
    pub fn open(self, sentence: String, choice: Choice, person: Person) {
        self.settle();
        self.leave_unit();
        let before = self.steps.present();
        self.bounds.set(Bounds::default());
        self.unread.forget_choice();
        let about = choice.to_compact();
        self.replace(choice);
        self.customer.set(person);
        self.show_banner(sentence, about);
        self.hand_over(before, Begun::No);
    }

    /// Shows the unit of a link that was put into the address. It is no dialog's any more, and nothing of it is kept.
    pub fn open_link(self, choice: Choice) {
        self.settle();
        if let Some(dialog) = page::open_dialog() {
            page::show(&dialog, false);
        }
        self.leave_unit();
        self.unread.forget_choice();
        self.replace(choice);
        self.keep_other(Vec::clear);
    }

    /// Goes on with a draft, in one step.
    pub(in crate::state) fn take_draft(self, draft: Draft) {
        self.settle();
        let is_new = !self.is_among_drafts(&self.steps.present().choice);
        if self.leave_unit() && is_new {
            self.show_banner(Label::LeftUnit.text().into(), draft.link.choice.to_compact());
        }
        self.unread.forget_choice();
        let before = self.steps.present();
        self.replace(draft.link.choice);
        self.keep_other(|pins| *pins = draft.pins);
        let now = Settings { of: draft.name, ..untrack(move || self.settings()) };
        if before.is_like(&now) {
            self.steps.change(|record| record.history.amend(now));
        } else {
            self.step(&before, now);
        }
    }

    /// The unit comes from the draft of that name.
    pub(in crate::state) fn call(self, name: &str) {
        let now = Settings { of: name.into(), ..self.steps.present() };
        self.steps.change(|record| record.history.amend(now));
    }

    /// Shows what another tab shows: that is no step here.
    pub(in crate::state) fn follow_tab(self, draft: Draft) {
        self.replace(draft.link.choice);
        self.keep_other(|pins| *pins = draft.pins);
        let now = Settings { of: draft.name, ..untrack(move || self.settings()) };
        self.steps.change(|record| record.history.amend(now));
    }
}
