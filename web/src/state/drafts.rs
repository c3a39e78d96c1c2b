//! What is kept in the browser: the unit of each tab, by itself, and drafts by a name. Each unit is written by one tab
//! alone; until something is answered in it, a second tab shows what the first has.

mod list;
mod own;
mod visitor;

use std::time::Duration;

use leptos::prelude::*;
use slotwright_core::choice::Choice;
use slotwright_core::choice::draft::Draft;
use slotwright_core::choice::link::Made;
use slotwright_core::words::page::Label;
use wasm_bindgen_futures::spawn_local;

use super::{Desk, Settings};
use crate::browser::drawer::{self, Earlier, Fault};
use crate::browser::{page, storage};
use crate::link;

pub use own::Own;

/// Names of units begin with this.
const UNIT: &str = "t";
/// Names of drafts begin with this.
const NAMED: &str = "d";

/// A change is kept so long after it, together with those that follow.
const SOON: Duration = Duration::from_millis(100);

/// What other tabs are told: that the list is another one, or that there is a new visitor; else it is a unit with its
/// name. What the page hears from the browser: that it is there again.
const LIST: &str = "list";
const VISITOR: &str = "visitor";
const BACK: &str = "back";

/// What the browser stores: its name, its text, and something if another tab has it.
pub type Stored = Vec<String>;

fn draft_of(kept: &Stored) -> Option<Draft> {
    Draft::of_text(kept.get(1)?)
}

/// What the page keeps.
#[derive(Clone, Copy, Debug)]
pub struct Drafts {
    /// How it stands with the present unit, in a word.
    pub told: RwSignal<String>,
    /// All that is kept of this range but the present unit, the last drafts first, then units that were left.
    pub others: RwSignal<Vec<Stored>>,
    state: StoredValue<State>,
}

/// What nobody is shown of it.
#[derive(Debug)]
struct State {
    own: Own,
    /// What was kept or shown last.
    kept: Option<Settings>,
    /// Whether a change waits to be kept.
    waits: bool,
    /// What was taken from the list: it can be brought back.
    gone: Vec<Stored>,
    /// What became of units that got a name: before, and now.
    named: Vec<[String; 2]>,
    /// What the visitor before had, and the step that cleared it: it can be taken back for a while.
    before: Option<(usize, Vec<Stored>)>,
}

impl Drafts {
    /// With what the page begins with.
    pub fn new(own: Own) -> Self {
        let own = Own { earlier: Earlier::default(), ..own };
        let state = State { own, kept: None, waits: false, gone: Vec::new(), named: Vec::new(), before: None };
        let (told, others) = (RwSignal::new(String::new()), RwSignal::new(Vec::new()));
        Self { told, others, state: StoredValue::new(state) }
    }

    /// The name that the present unit is kept by.
    pub fn name(self) -> String {
        self.state.with_value(|State { own, .. }| own.name.clone())
    }

    /// Whether the browser keeps what is to be kept.
    pub(super) fn are_kept(self) -> bool {
        self.told.with_untracked(|told| told != Label::NotSaved.text())
    }

    fn has_kept(self, now: &Settings) -> bool {
        self.state.with_value(|State { kept, .. }| {
            kept.as_ref().is_some_and(|kept| kept.choice == now.choice && kept.pins == now.pins)
        })
    }

    /// What comes now is another unit.
    fn begin_another(self) {
        let name = drawer::fresh(UNIT);
        drawer::note(&name, "");
        self.state.update_value(|state| state.own = Own { name: name.clone(), ..Own::default() });
        spawn_local(async move {
            drawer::hold(&name).await;
        });
    }
}

impl Desk {
    /// Keeps what changes from now on, and hears what other tabs keep.
    pub fn keep_drafts(self) {
        let drafts = self.drafts();
        let Some(Own { all, fault, is_kept, is_new, .. }) = drafts.state.try_with_value(|state| state.own.clone())
        else {
            return;
        };
        self.only_show();
        self.sort_drafts(all);
        match fault {
            Some(fault) => self.tell_unkept(fault),
            None if is_new => self.keep_unit(),
            None if is_kept => drafts.told.set(Label::Saved.text().into()),
            None => {}
        }
        Effect::new(move || {
            if !drafts.has_kept(&self.settings()) {
                drafts.told.set(Label::Saving.text().into());
                if !drafts.state.with_value(|state| state.waits) {
                    drafts.state.update_value(|state| state.waits = true);
                    set_timeout(move || self.keep_unit(), SOON);
                }
            }
        });
        drawer::hear(Callback::new(move |word: String| self.hear(&word)));
        let left = move |_| {
            if !drafts.has_kept(&untrack(move || self.settings())) {
                self.keep_unit();
                drawer::note(&drafts.name(), &self.unit_text());
            }
            self.forget_visitor();
            drawer::leave();
        };
        if let Some(window) = web_sys::window() {
            page::listen(&window, &["pagehide"], Callback::new(left));
        }
    }

    /// What is shown counts as kept: it is written once something is answered.
    pub fn only_show(self) {
        self.drafts().state.update_value(|state| state.kept = Some(untrack(move || self.settings())));
    }

    /// The present unit as it is kept.
    pub fn unit_text(self) -> String {
        self.present_draft().to_text()
    }

    fn present_draft(self) -> Draft {
        self.draft(self.steps.present().of)
    }

    pub(super) fn draft(self, name: String) -> Draft {
        let (range, pins) = (self.peek(|_, range| range.key.clone()), self.pins.get_untracked());
        Draft { stamp: drawer::stamp(), range, name, link: link::of(self), pins }
    }

    /// Keeps the present unit, and tells when that is done.
    fn keep_unit(self) {
        let drafts = self.drafts();
        let (name, draft) = (drafts.name(), self.present_draft());
        let text = draft.to_text();
        drafts.state.update_value(|state| state.waits = false);
        self.only_show();
        let followed = drafts.state.with_value(|State { own, .. }| !own.follows.is_empty());
        drafts.state.update_value(|State { own, .. }| {
            own.is_kept = true;
            own.made = draft.link.made;
            own.follows.clear();
        });
        if followed {
            self.show_banner(Label::OwnUnit.text().into(), String::new());
        }
        let begun = drawer::write(&[[&name, &text]]);
        spawn_local(async move {
            match drawer::written(begun).await {
                Some(fault) => {
                    // It is tried again with the next change, or when the page is left.
                    drafts.state.update_value(|state| state.kept = None);
                    self.tell_unkept(fault);
                }
                None if drafts.has_kept(&untrack(move || self.settings())) => {
                    drafts.told.set(Label::Saved.text().into());
                    storage::drop_former(&self.peek(|_, range| range.key.clone()));
                    drawer::say(&[&name, " ", &text].concat());
                }
                // The next change is being kept.
                None => {}
            }
        });
    }

    /// What the unit costs by the present range is kept with it, if it is kept: who comes back is told what became different
    /// since.
    pub fn keep_price(self, made: Option<Made>) {
        if self.drafts().state.with_value(|State { own, .. }| own.is_kept && own.made != made) {
            self.keep_unit();
        }
    }

    /// Whether a unit is among the drafts of this range.
    pub fn is_among_drafts(self, unit: &Choice) -> bool {
        let is_it = |kept: &Stored| draft_of(kept).is_some_and(|draft| draft.link.choice == *unit);
        self.drafts().others.with_untracked(|others| others.iter().any(is_it))
    }

    fn tell_unkept(self, fault: Fault) {
        self.drafts().told.set(Label::NotSaved.text().into());
        self.show_banner(fault.text().into(), String::new());
    }

    /// The present unit stays as it is, among the drafts, if anything was answered in it; what comes now is another one.
    /// Whether it is there.
    pub(super) fn leave_unit(self) -> bool {
        let drafts = self.drafts();
        if !drafts.has_kept(&untrack(move || self.settings())) {
            self.keep_unit();
        }
        let is_kept = drafts.state.with_value(|State { own, .. }| own.is_kept);
        if is_kept {
            // It is found there at once, unless nothing can be kept.
            if drafts.are_kept() {
                drafts.others.update(|others| others.push(vec![drafts.name(), self.unit_text(), String::new()]));
            }
            drafts.begin_another();
            self.renew_drafts();
        } else {
            // What comes now is no other tab's.
            drafts.state.update_value(|State { own, .. }| own.follows.clear());
        }
        is_kept
    }

    /// The page is there again after another one: what became of its unit meanwhile.
    async fn come_back(self) {
        let drafts = self.drafts();
        let name = drafts.name();
        let is_same = |draft: &Draft| self.peek(|snapshot, _| snapshot.choice == draft.link.choice);
        if let Ok(all) = drawer::read(drawer::begin()).await
            && drafts.state.with_value(|State { own, .. }| own.is_kept)
        {
            let own = all.iter().find(|kept| kept.first().is_some_and(|known| *known == name));
            if own.is_none() && !all.iter().filter_map(draft_of).any(|draft| is_same(&draft)) {
                // Nothing is left of it: somebody else came.
                return self.follow_visitor();
            }
            if own.and_then(draft_of).is_some_and(|draft| is_same(&draft)) && drawer::hold(&name).await {
                return self.renew_drafts();
            }
        } else if drawer::hold(&name).await {
            return self.renew_drafts();
        }
        // Another tab has taken it over, or has gone on with it.
        drafts.begin_another();
        self.keep_unit();
        self.renew_drafts();
    }

    fn hear(self, word: &str) {
        let drafts = self.drafts();
        match word {
            LIST => self.renew_drafts(),
            VISITOR => self.follow_visitor(),
            BACK => spawn_local(self.come_back()),
            unit => {
                let follows = |name: &str| drafts.state.with_value(|State { own, .. }| own.follows == name);
                if let Some((name, text)) = unit.split_once(' ')
                    && follows(name)
                    && drafts.has_kept(&untrack(move || self.settings()))
                    && let Some(draft) = Draft::of_text(text)
                {
                    self.follow_tab(draft);
                    self.only_show();
                }
            }
        }
    }
}
