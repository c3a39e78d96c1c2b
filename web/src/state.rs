//! One choice is the state; everything else follows from it, in one memo.

mod advised;
mod did;
mod drafts;
mod entries;
mod kept;
mod snapshot;
mod steps;

use std::sync::{Arc, Mutex};
use std::time::Duration;

use leptos::prelude::*;
use slotwright_core::choice::Choice;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::range::Range;
use slotwright_core::units::day::Day;
use slotwright_core::words::page::Label;
use slotwright_protocol::adviser::{Bounds, LetGo, Outcome, Question as Asked};
use slotwright_protocol::desk::Unit;

use crate::browser::range_file::NoRange;
use crate::browser::{adviser, first_view};
use crate::customer::Customer;
use crate::debounce::debounce;
use crate::unread::Unread;
use advised::Advised;
use did::LastStep;
use steps::Steps;

pub use drafts::{Drafts, Own};
pub use snapshot::Snapshot;
pub use steps::Settings;

/// When a size has not moved for so long, the adviser is asked: nobody reads advice while dragging.
pub const PAUSE: Duration = Duration::from_millis(80);

/// What the page begins with.
#[derive(Clone, Debug)]
pub struct Loaded {
    /// The range.
    pub range: Arc<Range>,
    /// The file that it was read from.
    pub text: Arc<str>,
    /// What is known of the first choice.
    pub first: Snapshot,
    /// What of it is kept.
    pub pins: Vec<Question>,
    /// What a person should know about how it was loaded.
    pub banner: Option<String>,
    /// Why the range is the one that is built in; nothing if it is the workshop's.
    pub built_in: Option<NoRange>,
    /// The present day.
    pub today: Day,
    /// What is kept in the browser.
    pub own: Own,
}

/// Everything that components read, and the one way in which they change it.
#[derive(Clone, Copy, Debug)]
pub struct Desk {
    /// Entries that could not be read.
    pub unread: Unread,
    /// For whom the order is.
    pub customer: Customer,
    /// What a person should know, and the compact text of the choice that it is about: empty if it holds for any.
    pub banner: [RwSignal<String>; 2],
    /// What can be undone and done again.
    pub steps: Steps,
    /// What the last step did.
    pub last_step: LastStep,
    kept: StoredValue<Drafts>,
    built_in: bool,
    snapshot: Memo<Snapshot>,
    range: StoredValue<Arc<Range>>,
    text: StoredValue<Arc<str>>,
    today: RwSignal<Day>,
    choice: RwSignal<Choice>,
    pins: RwSignal<Vec<Question>>,
    /// What was given for this visit.
    bounds: RwSignal<Bounds>,
    compact: Memo<String>,
    /// What the adviser said.
    pub advised: Advised,
    lit: RwSignal<usize>,
    /// The bay that is looked at, as far as there is one.
    seen: Memo<usize>,
    begun: RwSignal<u32>,
}

impl Desk {
    /// Lays out the desk; called once.
    pub fn new(loaded: Loaded) -> Self {
        let Loaded { range, text, first, pins, today, banner, built_in, own } = loaded;
        let choice = first.choice.clone();
        let banner = [banner.unwrap_or_default(), String::new()].map(RwSignal::new);
        let (unread, customer, built_in) = (Unread::new(), Customer::new(), built_in.is_some());
        let text = StoredValue::new(text);
        let (steps, last_step) = (Steps::new(choice.clone(), pins.clone(), own.earlier.clone()), LastStep::new());
        let (choice, lit, range) = (RwSignal::new(choice), RwSignal::new(0), StoredValue::new(range));
        let bounds = RwSignal::new(Bounds::default());
        let (today, begun, pins) = (RwSignal::new(today), RwSignal::new(0), RwSignal::new(pins));
        let first = Mutex::new(Some(first));
        let snapshot = Memo::new(move |before| {
            let (choice, today) = (choice.get(), today.get());
            let known = first.lock().ok().and_then(|mut first| first.take());
            known.unwrap_or_else(|| range.with_value(|range| Snapshot::of(range, choice, today, before)))
        });
        let seen = Memo::new(move |_| {
            let last = snapshot.with(|snapshot: &Snapshot| snapshot.choice.bays.len().saturating_sub(1));
            lit.get().min(last)
        });
        let compact = Memo::new(move |_| choice.with(Choice::to_compact));
        let advised = Advised::new();
        let desk = Self {
            unread,
            customer,
            banner,
            steps,
            last_step,
            kept: StoredValue::new(Drafts::new(own)),
            built_in,
            snapshot,
            range,
            text,
            today,
            choice,
            pins,
            bounds,
            compact,
            advised,
            lit,
            seen,
            begun,
        };
        let on_answer = move |answer| match answer {
            Some((question, answer)) => desk.receive(question, answer),
            None => desk.go_on_alone(),
        };
        let advise = move |()| adviser::open(desk.range_text(), Callback::new(on_answer));
        first_view::once_shown(Callback::new(advise));
        let ask = |about| {
            adviser::ask(Asked::Findings(Clone::clone(&about)));
            adviser::ask(Asked::States(about));
        };
        debounce(PAUSE, move || desk.about(), Callback::new(ask));
        desk.listen();
        desk
    }

    /// The present choice as its compact text.
    pub fn compact(self) -> String {
        self.compact.get()
    }

    /// Nobody gives advice any more: that is said once, unless something else is being said.
    fn go_on_alone(self) {
        let [said, _] = self.banner;
        if !untrack(move || self.is_alone()) && said.with_untracked(String::is_empty) {
            self.show_banner(Label::WithoutAdvice.text().into(), String::new());
        }
        self.advised.end();
    }

    /// What is kept in the browser.
    pub fn drafts(self) -> Drafts {
        self.kept.get_value()
    }

    /// The desk of this page.
    pub fn here() -> Self {
        expect_context()
    }

    /// Reads what is known, together with the range; what reads is run again when it changes.
    pub fn read<T>(self, read: impl FnOnce(&Snapshot, &Range) -> T) -> T {
        self.snapshot.with(|snapshot| self.range.with_value(|range| read(snapshot, range)))
    }

    /// Reads it once.
    pub fn peek<T>(self, read: impl FnOnce(&Snapshot, &Range) -> T) -> T {
        self.snapshot.with_untracked(|snapshot| self.range.with_value(|range| read(snapshot, range)))
    }

    /// The bay that is looked at, from 0.
    pub fn lit(self) -> usize {
        self.seen.get()
    }

    /// Looks at a bay.
    pub fn look_at(self, bay: usize) {
        self.lit.set(bay);
    }

    /// Takes an answer.
    pub fn apply(self, change: &Change) {
        self.begin_answer(change.question());
        self.unread.answer(change);
        match change {
            Change::Model(key) => self.take_model(key),
            _ => self.replace(self.peek(|snapshot, range| snapshot.choice.with(change, range))),
        }
    }

    /// Whether the range is the one that is built in: nothing can be ordered then.
    pub fn is_built_in(self) -> bool {
        self.built_in
    }

    /// Whether nothing stops the unit, and every entry was read.
    pub fn is_free(self) -> bool {
        self.unread.first_of_unit().is_none() && self.read(|snapshot, _| snapshot.orderable)
    }

    /// Takes what comes of something that can be done.
    pub fn follow(self, Outcome { choice, let_go }: &Outcome) {
        self.begin_answer(None);
        if *let_go != LetGo::default() {
            self.bounds.update(|bounds| {
                bounds.budget = bounds.budget.filter(|_| !let_go.budget);
                bounds.by = bounds.by.filter(|_| !let_go.by);
            });
            self.keep_other(|pins| pins.retain(|pin| !let_go.pins.contains(pin)));
        }
        self.replace(choice.clone());
    }

    /// Takes another choice as a whole.
    pub fn replace(self, choice: Choice) {
        let alike = |known: &Choice| known.model == choice.model && known.bays.len() == choice.bays.len();
        let (same, alike) = self.peek(|snapshot, _| (snapshot.choice == choice, alike(&snapshot.choice)));
        if !alike {
            self.advised.forget_answers();
        }
        if self.peek(|snapshot, _| snapshot.choice.model != choice.model) {
            self.advised.forget_findings();
            self.pins.set(Vec::new());
        }
        // Of a bay that is gone nothing is kept: another one that comes later is not it.
        if self.pins.with_untracked(|pins| !pins.iter().all(|pin| choice.has(*pin))) {
            self.keep_other(|pins| pins.retain(|pin| choice.has(*pin)));
        }
        self.peek(|snapshot, _| self.unread.follow(&snapshot.choice, &choice));
        if !same {
            self.choice.set(choice);
        }
    }

    /// The present unit, for who makes something of it.
    pub fn unit(self) -> Unit {
        let choice = self.peek(|snapshot, _| snapshot.choice.clone());
        Unit { range: self.range_text(), choice, today: self.today() }
    }

    /// Is run again whenever something that is shown of the unit may come or go.
    pub fn stir(self) {
        self.choice.track();
        self.advised.track();
        self.banner[0].track();
        self.begun.track();
    }

    /// The range file as it was read.
    pub fn range_text(self) -> String {
        self.text.get_value().to_string()
    }

    /// The day of asking; what reads is run again when it changes.
    pub fn present_day(self) -> Day {
        self.today.get()
    }

    /// The day of asking.
    pub fn today(self) -> Day {
        self.today.get_untracked()
    }

    /// Looks at the calendar again: a page may stand open over night.
    pub fn ask_on(self, day: Day) {
        if self.today() != day {
            self.today.set(day);
        }
    }

    /// Tells something about the choice of a compact text, or about any.
    pub fn show_banner(self, text: String, about: String) {
        let [own, of] = self.banner;
        of.set(about);
        own.set(text);
    }
}
