//! What a step did.

use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::choice::changed::changed;
use slotwright_core::order::derive::derive_unproven;
use slotwright_core::range::Range;
use slotwright_core::units::day::Day;
use slotwright_core::words::did::{Did, Step, Sum};

/// What was answered to come from one choice to another, what that did, and all answers where they are only counted.
pub(crate) fn answer(range: &Range, [before, after]: [&Choice; 2], today: Day, step: Step) -> [String; 3] {
    let backlog = Backlog::default();
    let sum = |choice: &Choice| {
        let derived = derive_unproven(range, choice, today, &backlog);
        let built = if derived.is_free() { derived.built? } else { return None };
        let day = built.promise.map(|promise| promise.arrives);
        Some(Sum { price: built.price.total_minor, mass: built.whole.mass, day })
    };
    let changed = changed(before, after);
    Did { changed: &changed, step, before: sum(before), after: sum(after) }.texts(range)
}
