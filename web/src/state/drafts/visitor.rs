//! A new visitor: nothing of the one before stays in the browser. For a minute it can be taken back.

use std::time::Duration;

use leptos::prelude::*;
use slotwright_core::words::page::Label;

use super::{Desk, LIST, State, Stored, VISITOR};
use crate::browser::{drawer, page, storage};

/// So long it can be taken back.
const MINUTE: Duration = Duration::from_mins(1);

impl Desk {
    /// Clears the unit, what was typed for the order, and all drafts, in all tabs. What was kept is deleted at once, and
    /// only this page knows it for another minute.
    pub fn begin_visitor(self) {
        self.forget_visitor();
        let kept = self.clear_kept();
        self.begin_for_visitor();
        self.remember_visitor(self.steps.number(), kept);
    }

    /// Deletes all that is kept in the browser; gives what the page knew of it.
    pub(in crate::state) fn clear_kept(self) -> Vec<Stored> {
        let drafts = self.drafts();
        let mut kept = drafts.others.get_untracked();
        let own = drafts.name();
        if drafts.state.with_value(|State { own, .. }| own.is_kept) {
            kept.push(vec![own, self.unit_text()]);
        }
        self.write_all(&kept, false);
        self.peek(|_, range| storage::drop_former(&range.key));
        self.clear();
        kept
    }

    /// Keeps in mind for a minute what the visitor before had, and tells that it can be taken back: they left with the step
    /// of that number.
    pub(in crate::state) fn remember_visitor(self, number: usize, kept: Vec<Stored>) {
        let drafts = self.drafts();
        drawer::say(VISITOR);
        drafts.state.update_value(|state| state.before = Some((number, kept)));
        self.show_banner(Label::ClearedForVisitor.text().into(), String::new());
        let forget = move || {
            if drafts.state.with_value(|State { before, .. }| before.as_ref().is_some_and(|(of, _)| *of == number)) {
                self.forget_visitor();
            }
        };
        set_timeout(forget, MINUTE);
    }

    fn write_all(self, all: &[Vec<String>], back: bool) {
        let pairs: Vec<[&str; 2]> = all
            .iter()
            .filter_map(|kept| Some([kept.first()?.as_str(), if back { kept.get(1)?.as_str() } else { "" }]))
            .collect();
        let begun = drawer::write(&pairs);
        wasm_bindgen_futures::spawn_local(async move {
            if let Some(fault) = drawer::written(begun).await {
                self.tell_unkept(fault);
            }
            if back {
                drawer::say(LIST);
            } else if let Ok(left) = drawer::read(drawer::begin()).await {
                // Those of another range, and those that this page cannot read.
                let own = self.drafts().name();
                let names = left.iter().filter_map(|kept| kept.first()).filter(|name| **name != own);
                let _started = drawer::write(&names.map(|name| [name.as_str(), ""]).collect::<Vec<_>>());
            }
            self.renew_drafts();
        });
    }

    /// Nothing of what is here is anybody's any more.
    fn clear(self) {
        let drafts = self.drafts();
        drafts.begin_another();
        drafts.state.update_value(|state| state.gone = Vec::new());
        drafts.others.set(Vec::new());
        // What is not kept yet is not to be kept.
        self.only_show();
    }

    /// Takes it back that there is a new visitor.
    pub fn take_back(self) {
        let number = self.drafts().state.with_value(|State { before, .. }| before.as_ref().map(|(number, _)| *number));
        if let Some(before) = number.and_then(|number| number.checked_sub(1)) {
            self.settle();
            self.walk_to(before);
        }
    }

    /// The visitor before does not come back: neither are the steps before theirs.
    pub(super) fn forget_visitor(self) {
        if let Some((number, _)) = self.drafts().state.try_update_value(|state| state.before.take()).flatten() {
            self.steps.forget(number);
            self.drafts().state.update_value(|state| state.gone = Vec::new());
            if self.banner[0].with_untracked(|text| text == Label::ClearedForVisitor.text()) {
                self.show_banner(String::new(), String::new());
            }
        }
    }

    /// It was a mistake, if a person goes back to a step before it: all that was kept is there again. Whether that is so.
    pub(in crate::state) fn take_back_visitor(self, number: usize) -> bool {
        let drafts = self.drafts();
        let is_back =
            drafts.state.with_value(|State { before, .. }| before.as_ref().is_some_and(|(of, _)| number < *of));
        if is_back && let Some((_, kept)) = drafts.state.try_update_value(|state| state.before.take()).flatten() {
            self.write_all(&kept, true);
        }
        is_back
    }

    /// Another tab has a new visitor, so this one has as well.
    pub(super) fn follow_visitor(self) {
        if let Some(dialog) = page::open_dialog() {
            page::show(&dialog, false);
        }
        // What is on its way to be kept is not kept either.
        let _started = drawer::write(&[[&self.drafts().name(), ""]]);
        self.clear();
        self.begin_for_visitor();
        self.steps.forget(usize::MAX);
    }
}
