//! The list of drafts: all that is kept but the present unit.

use core::cmp::Reverse;

use leptos::prelude::*;
use slotwright_core::choice::draft;
use slotwright_core::units::short;
use slotwright_core::words::draft::Done;
use slotwright_protocol::desk::Report;
use wasm_bindgen_futures::spawn_local;

use super::{Desk, LIST, NAMED, State, Stored, UNIT, draft_of};
use crate::browser::{drawer, fragment};

/// What there is to tell of a change that was made.
fn done(done: Done, name: String) -> Report {
    Report { done: Some(done), name, back: false }
}

fn is_unit(kept: &Stored) -> bool {
    kept.first().is_some_and(|name| name.starts_with(UNIT))
}

fn is_called(kept: &Stored, name: &str) -> bool {
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
    pub(super) fn sort_drafts(self, all: Vec<Stored>) {
        let drafts = self.drafts();
        let (own, range) = (drafts.name(), self.peek(|_, range| range.key.clone()));
        let of_range = |kept: &Stored| draft_of(kept).is_some_and(|draft| draft.range == range);
        let mut others: Vec<Stored> = all.into_iter().filter(of_range).collect();
        // The present unit comes before all others.
        let key = |kept: &Stored| (!is_called(kept, &own), is_unit(kept), Reverse(kept.first().cloned()));
        short::sort(&mut others, key);
        let (mut known, mut twice) = (Vec::new(), Vec::new());
        others.retain(|kept| {
            let Some(draft) = draft_of(kept) else { return false };
            let is_free = is_unit(kept) && !is_called(kept, &own) && kept.get(2).is_some_and(String::is_empty);
            let is_twice = is_free && known.contains(&draft.link.choice);
            if is_twice {
                twice.extend(kept.iter().take(2).cloned());
            }
            known.push(draft.link.choice);
            !is_twice && !is_called(kept, &own)
        });
        drawer::drop_twice(twice);
        drafts.others.set(others);
    }

    /// The one of that id, or what that became when it got a name.
    fn other(self, id: &str) -> Option<Stored> {
        let find = |id: &str| {
            self.drafts().others.with_untracked(|others| others.iter().find(|kept| is_called(kept, id)).cloned())
        };
        let became = || {
            let of = |[before, now]: &[String; 2]| (before == id).then(|| now.clone());
            self.drafts().state.with_value(|state| state.named.iter().find_map(of))
        };
        find(id).or_else(|| find(&became()?))
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
    pub async fn keep_as_draft(self, typed: &str) -> Report {
        let name = draft::name(typed);
        if name.is_empty() {
            return done(Done::Unnamed, name);
        }
        drawer::persist();
        let text = self.draft(name.clone()).to_text();
        let same = self.drafts().others.with_untracked(|others| {
            let is_same = |kept: &&Stored| !is_unit(kept) && draft_of(kept).is_some_and(|draft| draft.name == name);
            others.iter().find(is_same).cloned()
        });
        let fresh = drawer::fresh(NAMED);
        let mut pairs = vec![[fresh.as_str(), text.as_str()]];
        pairs.extend(same.iter().filter_map(|same| Some([same.first()?.as_str(), ""])));
        if !self.change_drafts(&pairs).await {
            return Report::default();
        }
        self.call(&name);
        let what = if same.is_some() { Done::Replaced } else { Done::Added };
        self.drafts().state.update_value(|State { gone, .. }| gone.extend(same));
        done(what, name)
    }

    /// Gives another name; what had none becomes a draft. With its id by then.
    pub async fn rename_draft(self, which: &str, typed: &str) -> (Report, String) {
        let (name, known) = (draft::name(typed), self.other(which));
        let draft = known.as_ref().and_then(draft_of).filter(|draft| !name.is_empty() && draft.name != name);
        let (Some(known), Some(mut draft)) = (known, draft) else { return (Report::default(), which.into()) };
        let is_elsewhere = known.get(2).is_some_and(|tab| !tab.is_empty());
        let before = known.into_iter().next().unwrap_or_default();
        draft.name.clone_from(&name);
        let text = draft.to_text();
        let is_new = is_elsewhere || before.starts_with(UNIT);
        let now = if is_new { drawer::fresh(NAMED) } else { before.clone() };
        let mut pairs = vec![[now.as_str(), text.as_str()]];
        // A tab that has it goes on with its own: this is another one of the same unit.
        if is_new && !is_elsewhere {
            pairs.push([&before, ""]);
        }
        if !self.change_drafts(&pairs).await {
            return (Report::default(), before);
        }
        if !is_elsewhere && is_new {
            self.drafts().state.update_value(|state| state.named.push([before, now.clone()]));
        }
        (done(Done::Renamed, name), now)
    }

    /// Makes another draft of the same unit.
    pub async fn double_draft(self, which: &str, called: String) -> Report {
        let Some(mut draft) = self.other(which).as_ref().and_then(draft_of) else { return Report::default() };
        let called = draft::name(&called);
        draft.name.clone_from(&called);
        let written = self.change_drafts(&[[&drawer::fresh(NAMED), &draft.to_text()]]).await;
        if written { done(Done::Added, called) } else { Report::default() }
    }

    /// Takes a draft from the list; it can be brought back while the page is there.
    pub async fn delete_draft(self, which: &str) -> Report {
        let Some(kept) = self.other(which) else { return Report::default() };
        let name = draft_of(&kept).map(|draft| draft.name).unwrap_or_default();
        let id = kept.first().cloned().unwrap_or_default();
        if !self.change_drafts(&[[&id, ""]]).await {
            return Report::default();
        }
        self.drafts().state.update_value(|State { gone, .. }| gone.push(kept));
        done(Done::Deleted, name)
    }

    /// Whether there is something to bring back.
    pub fn has_deleted(self) -> bool {
        self.drafts().state.with_value(|State { gone, .. }| !gone.is_empty())
    }

    /// Brings back what was taken away last.
    pub async fn restore_draft(self) -> Report {
        let kept = self.drafts().state.try_update_value(|state| state.gone.pop()).flatten().unwrap_or_default();
        let [name, text, ..] = kept.as_slice() else { return Report::default() };
        if !self.change_drafts(&[[name, text]]).await {
            self.drafts().state.update_value(|State { gone, .. }| gone.push(kept));
            return Report::default();
        }
        done(Done::Restored, draft_of(&kept).map(|draft| draft.name).unwrap_or_default())
    }

    /// The address that opens a draft.
    pub fn address_of_draft(self, which: &str) -> Option<String> {
        let draft = self.other(which).as_ref().and_then(draft_of)?;
        Some(fragment::address(&draft.link.to_link()))
    }

    /// Goes on with a draft: what was there stays, and is a step before.
    pub fn open_draft(self, which: &str) {
        if let Some(draft) = self.other(which).as_ref().and_then(draft_of) {
            self.take_draft(draft);
        }
    }
}
