//! What the last step did, in a line that stands for a while. The adviser says it.

use std::time::Duration;

use leptos::prelude::*;
use slotwright_core::choice::Choice;

use super::Desk;
use crate::browser::adviser;

/// How long the line stands, if nothing else happens.
const STANDS: Duration = Duration::from_secs(10);

/// The line of the last step.
#[derive(Clone, Copy, Debug)]
pub struct LastStep {
    /// Whether it undid something.
    pub undid: RwSignal<bool>,
    /// How many there were.
    pub told: RwSignal<u32>,
    gone: RwSignal<bool>,
}

impl LastStep {
    /// There was none.
    pub fn new() -> Self {
        Self { undid: RwSignal::new(false), told: RwSignal::new(0), gone: RwSignal::new(false) }
    }
}

impl Desk {
    /// Has it told what came of a step.
    pub(super) fn tell(self, before: &Choice, after: &Choice, recalled: bool, undid: bool) {
        let recalled = if recalled { "recalled" } else { "" };
        let day = self.today().to_string();
        adviser::ask(vec!["did".into(), after.to_compact(), before.to_compact(), day, recalled.into()]);
        let own = self.last_step;
        own.undid.set(undid);
        own.gone.set(false);
        own.told.update(|told| *told += 1);
        let told = own.told.get_untracked();
        let go = move || {
            if own.told.try_get_untracked() == Some(told) {
                own.gone.set(true);
            }
        };
        set_timeout(go, STANDS);
    }

    /// What was answered in the last step, and what that did; nothing once something else has changed.
    pub fn did(self) -> [String; 2] {
        self.answer("did").try_into().unwrap_or_default()
    }

    /// Whether that still stands: for a while.
    pub fn shows_last_step(self) -> bool {
        !self.last_step.gone.get() && !self.did()[0].is_empty()
    }
}
