//! The list of drafts: all that is kept but the present unit.

use core::cmp::Reverse;

use leptos::prelude::*;
use slotwright_core::choice::draft;
use slotwright_core::units::short;
use slotwright_core::words::draft::Done;
use slotwright_protocol::desk::{Deed, Told};
use wasm_bindgen_futures::spawn_local;

use super::{Desk, Kept, LIST, NAMED, State, UNIT, draft_of};
use crate::browser::drawer;

/// What there is to tell of a change that was made.
fn done(done: Done, name: String) -> Told {
    Told { done: Deed::Done(done), name, back: false }
}

fn is_unit(kept: &Kept) -> bool {
    kept.first().is_some_and(|name| name.starts_with(UNIT))
}

fn is_called(kept: &Kept, name: &str) -> bool {
    kept.first().is_some_and(|own| own == name)
}

impl Desk {
    /// Has the list read anew.
    pub(super) fn renew_drafts(self) {
        spawn_local(async move { self.read_drafts().await });
    }

    /// Reads the list anew.
    pub async fn read_drafts(self) {
        if let Ok(all) = drawer::read(drawer::begin()).await {
            self.sort_drafts(all);
        }
    }

    /// Takes the list out of all that is kept. A unit that no tab has, and that is kept as another one as well, goes.
    pub(super) fn sort_drafts(self, all: Vec<Kept>) {
        let drafts = self.drafts();
        let (own, range) = (drafts.name(), self.peek(|_, range| range.key.clone()));
        let of_range = |kept: &Kept| draft_of(kept).is_some_and(|draft| draft.range == range);
        let mut others: Vec<Kept> = all.into_iter().filter(of_range).collect();
        // The present unit comes before all others.
        let key = |kept: &Kept| (!is_called(kept, &own), is_unit(kept), Reverse(kept.first().cloned()));
        short::sort(&mut others, key);
        let (mut known, mut twice) = (Vec::new(), Vec::new());
        others.retain(|kept| {
            let Some(draft) = draft_of(kept) else { return false };
            let is_free = is_unit(kept) && !is_called(kept, &own) && kept.get(2).is_some_and(String::is_empty);
            let is_twice = is_free && known.contains(&draft.link.choice);
            if is_twice {
                twice.extend(kept.first().cloned());
            }
            known.push(draft.link.choice);
            !is_twice && !is_called(kept, &own)
        });
        if !twice.is_empty() {
            let _started = drawer::write(&twice.iter().map(|name| [name.as_str(), ""]).collect::<Vec<_>>());
        }
        drafts.others.set(others);
    }

    fn other(self, name: &str) -> Option<Kept> {
        self.drafts().others.with_untracked(|others| others.iter().find(|kept| is_called(kept, name)).cloned())
    }

    /// Writes texts by their names, all or none, and reads the list anew; whether that was done.
    async fn change_drafts(self, pairs: &[[&str; 2]]) -> bool {
        let fault = drawer::written(drawer::write(pairs)).await;
        if let Some(fault) = fault {
            self.tell_unkept(fault);
        } else {
            drawer::say(LIST);
        }
        self.read_drafts().await;
        fault.is_none()
    }

    /// Keeps the present unit as a draft of that name, in the place of one that has it already.
    pub async fn keep_as_draft(self, typed: &str) -> Told {
        let name = draft::name(typed);
        if name.is_empty() {
            return done(Done::Unnamed, name);
        }
        drawer::persist();
        let text = self.draft(name.clone()).to_text();
        let same = self.drafts().others.with_untracked(|others| {
            let is_same = |kept: &&Kept| !is_unit(kept) && draft_of(kept).is_some_and(|draft| draft.name == name);
            others.iter().find(is_same).cloned()
        });
        let fresh = drawer::fresh(NAMED);
        let mut pairs = vec![[fresh.as_str(), text.as_str()]];
        pairs.extend(same.iter().filter_map(|same| Some([same.first()?.as_str(), ""])));
        if !self.change_drafts(&pairs).await {
            return Told::default();
        }
        self.call(&name);
        let what = if same.is_some() { Done::Replaced } else { Done::Kept };
        self.drafts().state.update_value(|State { gone, .. }| gone.extend(same));
        done(what, name)
    }

    /// Gives another name; what had none becomes a draft.
    pub async fn rename_draft(self, which: &str, typed: &str) -> Told {
        let (name, known) = (draft::name(typed), self.other(which).as_ref().and_then(draft_of));
        let Some(mut draft) = known.filter(|draft| !name.is_empty() && draft.name != name) else {
            return Told::default();
        };
        draft.name.clone_from(&name);
        let (text, fresh) = (draft.to_text(), drawer::fresh(NAMED));
        let is_elsewhere = self.other(which).is_some_and(|kept| kept.get(2).is_some_and(|tab| !tab.is_empty()));
        let written = if is_elsewhere {
            // That tab goes on with its own: this is another one of the same unit.
            self.change_drafts(&[[&fresh, &text]]).await
        } else if which.starts_with(UNIT) {
            self.change_drafts(&[[which, ""], [&fresh, &text]]).await
        } else {
            self.change_drafts(&[[which, &text]]).await
        };
        if written { done(Done::Renamed, name) } else { Told::default() }
    }

    /// Makes another draft of the same unit.
    pub async fn double_draft(self, which: &str, called: String) -> Told {
        let Some(mut draft) = self.other(which).as_ref().and_then(draft_of) else { return Told::default() };
        let called = draft::name(&called);
        draft.name.clone_from(&called);
        let written = self.change_drafts(&[[&drawer::fresh(NAMED), &draft.to_text()]]).await;
        if written { done(Done::Kept, called) } else { Told::default() }
    }

    /// Takes a draft from the list; it can be brought back while the page is there.
    pub async fn delete_draft(self, which: &str) -> Told {
        let Some(kept) = self.other(which) else { return Told::default() };
        let name = draft_of(&kept).map(|draft| draft.name).unwrap_or_default();
        if !self.change_drafts(&[[which, ""]]).await {
            return Told::default();
        }
        self.drafts().state.update_value(|State { gone, .. }| gone.push(kept));
        done(Done::Deleted, name)
    }

    /// Whether there is something to bring back.
    pub fn has_deleted(self) -> bool {
        self.drafts().state.with_value(|State { gone, .. }| !gone.is_empty())
    }

    /// Brings back what was taken away last.
    pub async fn restore_draft(self) -> Told {
        let kept = self.drafts().state.try_update_value(|state| state.gone.pop()).flatten().unwrap_or_default();
        let [name, text, ..] = kept.as_slice() else { return Told::default() };
        if !self.change_drafts(&[[name, text]]).await {
            self.drafts().state.update_value(|State { gone, .. }| gone.push(kept));
            return Told::default();
        }
        done(Done::Restored, draft_of(&kept).map(|draft| draft.name).unwrap_or_default())
    }

    /// Goes on with a draft: what was there stays, and is a step before.
    pub fn open_draft(self, which: &str) {
        if let Some(draft) = self.other(which).as_ref().and_then(draft_of) {
            self.take_draft(draft);
        }
    }
}
