//! What the last step did, in a line that stands for a while. The adviser says it.

use std::time::Duration;

use leptos::prelude::*;
use slotwright_core::choice::Choice;
use slotwright_core::words::did::Step;
use slotwright_protocol::adviser::Question;

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
    pub(super) fn tell(self, before: &Choice, after: &Choice, step: Step, undid: bool) {
        let (before, after) = (before.clone(), after.clone());
        adviser::ask(Question::Did { before, after, today: self.today(), step });
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

    /// What came is another person's, who is told nothing of what was before.
    pub(super) fn tell_nothing(self) {
        self.last_step.gone.set(true);
    }

    /// Whether that still stands: for a while.
    pub fn shows_last_step(self) -> bool {
        !self.last_step.gone.get() && !self.did()[0].is_empty()
    }
}
