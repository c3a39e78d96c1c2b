//! Steps: what a person would call one, and the way back and forward through them. Beginning afresh, opening an order, a
//! link or a draft are steps too.

use leptos::prelude::*;
use slotwright_core::choice::Choice;
use slotwright_core::choice::draft::Draft;
use slotwright_core::choice::history::History;
use slotwright_core::choice::question::Question;
use slotwright_core::range::Key;
use slotwright_core::solver::carry::carried;
use slotwright_protocol::adviser::Bounds;
use slotwright_protocol::desk::Person;

use super::Desk;
use crate::browser::shortcuts::{self, Stroke};
use crate::browser::{page, steps};

/// What can come back: what was chosen, kept and given. Who the person was does not.
#[derive(Clone, Debug, PartialEq)]
pub struct Settings {
    /// What was chosen.
    pub choice: Choice,
    /// What of it was kept.
    pub pins: Vec<Question>,
    pub(super) bounds: Bounds,
    /// Whose it is: it begins afresh, or an order is opened, for somebody else.
    person: u32,
    /// Whether that somebody began with it.
    begun: bool,
    /// The name of the draft that it comes from; empty if it comes from none.
    pub(super) of: String,
}

impl Settings {
    fn is_like(&self, other: &Self) -> bool {
        self.choice == other.choice && self.pins == other.pins && self.bounds == other.bounds
    }
}

/// What was done so far.
#[derive(Clone, Debug)]
struct Record {
    /// About 200 bytes a step of a unit with three bays, since choices share their keys: a thousand steps take less than a
    /// picture.
    history: History<Settings>,
    /// What was answered since the last step.
    asked: Option<Question>,
    /// How many persons there were.
    persons: u32,
}

/// What was done, and how much of it can be undone and done again.
#[derive(Clone, Copy, Debug)]
pub struct Steps {
    /// Whether a slider is held: what moves then is no step yet.
    pub held: RwSignal<bool>,
    record: StoredValue<Record>,
    behind: RwSignal<usize>,
    ahead: RwSignal<usize>,
}

impl Steps {
    /// Nothing was done yet.
    pub fn new(choice: Choice, pins: Vec<Question>) -> Self {
        let bounds = Bounds::default();
        let first = Settings { choice, pins, bounds, person: 0, begun: false, of: String::new() };
        let record = Record { history: History::new(first), asked: None, persons: 0 };
        let (behind, ahead) = (RwSignal::new(0), RwSignal::new(0));
        Self { held: RwSignal::new(false), record: StoredValue::new(record), behind, ahead }
    }

    /// Whether there is one to do again.
    pub fn can_redo(self) -> bool {
        self.ahead.get() > 0
    }

    pub(super) fn present(self) -> Settings {
        self.record.with_value(|record| record.history.present().clone())
    }

    pub(super) fn number(self) -> usize {
        self.record.with_value(|record| record.history.number())
    }

    /// Forgets all steps before that one.
    pub(super) fn forget(self, number: usize) {
        self.change(|record| record.history.forget(number));
    }

    fn change(self, change: impl FnOnce(&mut Record)) {
        self.record.update_value(change);
        let (behind, ahead) = self.record.with_value(|record| (record.history.behind(), record.history.ahead()));
        self.behind.set(behind);
        self.ahead.set(ahead);
    }
}

impl Desk {
    /// Hears keys, hands and the browser's buttons.
    pub(super) fn listen(self) {
        steps::listen(Callback::new(move |number| self.go_to(number)));
        let on_stroke = move |stroke| match stroke {
            Stroke::Undo => self.undo(),
            Stroke::Redo => self.redo(),
            Stroke::Hold => self.hold(true),
            Stroke::Release => self.hold(false),
        };
        shortcuts::listen(Callback::new(on_stroke));
    }

    fn hold(self, held: bool) {
        if self.steps.held.get_untracked() != held {
            self.steps.held.set(held);
        }
    }

    /// What is chosen, kept and given; what reads is run again when it changes.
    pub fn settings(self) -> Settings {
        let (choice, pins, bounds) = (self.choice.get(), self.pins.get(), self.bounds.get());
        let Settings { person, of, .. } = self.steps.present();
        Settings { choice, pins, bounds, person, begun: false, of }
    }

    /// Nothing has changed for a while: that makes it a step, unless a slider is still held. Whether things are at rest.
    pub fn rest(self) -> bool {
        let at_rest = !self.steps.held.get_untracked();
        if at_rest {
            self.settle();
        }
        at_rest
    }

    /// What has changed since the last step is one.
    pub(super) fn settle(self) {
        let (before, now) = (self.steps.present(), untrack(move || self.settings()));
        if !before.is_like(&now) {
            self.step(&before, now);
        }
    }

    fn step(self, before: &Settings, now: Settings) {
        let is_like = |earlier: &Settings| {
            Choice { place: now.choice.place.clone(), ..earlier.choice.clone() } == now.choice
                && earlier.person == now.person
        };
        let recalled = before.choice.model != now.choice.model
            && self.steps.record.with_value(|record| record.history.backwards().any(is_like));
        self.tell(&before.choice, &now.choice, recalled, false);
        self.steps.change(|record| {
            record.history.push(now);
            record.asked = None;
        });
        steps::push(self.steps.number());
    }

    /// A question is going to be answered: what was answered of another one is a step by itself.
    pub(super) fn begin_answer(self, question: Option<Question>) {
        if question.is_none() || self.steps.record.with_value(|record| record.asked != question) {
            self.settle();
            self.steps.record.update_value(|record| record.asked = question);
        }
    }

    /// Whether there is anything to undo.
    pub fn can_undo(self) -> bool {
        self.steps.behind.get() > 0 || self.unread.first().is_some()
    }

    /// Undoes the last step; what was typed since then and could not be read goes first.
    pub fn undo(self) {
        self.settle();
        if untrack(move || self.unread.first()).is_some() {
            self.unread.clear();
        } else if self.steps.record.with_value(|record| record.history.behind() > 0) {
            self.walk_to(self.steps.number() - 1);
        }
    }

    /// Does again what was undone last.
    pub fn redo(self) {
        self.settle();
        if self.steps.record.with_value(|record| record.history.ahead() > 0) {
            self.walk_to(self.steps.number() + 1);
        }
    }

    fn walk_to(self, number: usize) {
        self.go_to(number);
        steps::follow(number);
    }

    /// Goes to the state after so many steps, if there is one.
    fn go_to(self, number: usize) {
        let (before, from) = (self.steps.present(), self.steps.number());
        self.steps.change(|record| {
            record.history.go_to(number);
        });
        if self.steps.number() == from {
            return;
        }
        let now = self.steps.present();
        if now.person != before.person {
            self.forget_person();
        }
        self.take_back_visitor(number);
        self.unread.clear();
        self.replace(now.choice.clone());
        self.bounds.set(now.bounds);
        self.keep_other(|kept| *kept = now.pins);
        self.tell(&before.choice, &now.choice, true, number < from);
    }

    /// Takes another model: as it was left, or with what fits of the present one.
    pub(super) fn take_model(self, key: &Key) {
        let now = self.steps.present();
        if now.choice.model == *key {
            return;
        }
        let left = self.steps.record.with_value(|record| {
            let mut own = record.history.backwards().take_while(|earlier| earlier.person == now.person);
            own.find(|earlier| earlier.choice.model == *key).cloned()
        });
        if let Some(Settings { choice, pins, .. }) = left {
            // The room is the same for all of them.
            self.replace(Choice { place: now.choice.place, ..choice });
            self.keep_other(|kept| *kept = pins);
        } else if let Some(choice) = self.peek(|_, range| carried(range, &now.choice, range.model(key)?)) {
            self.replace(choice);
        }
    }

    /// Nothing stays of the person before, nor comes back.
    fn forget_person(self) {
        self.customer.set(Person::default());
        self.show_banner(String::new(), String::new());
    }

    /// What is there now is another person's, and one step after what was before.
    fn hand_over(self, before: Settings, begun: bool, always: bool) {
        self.steps.record.update_value(|record| record.persons += 1);
        let person = self.steps.record.with_value(|record| record.persons);
        let now = Settings { person, begun, of: String::new(), ..untrack(move || self.settings()) };
        if before.is_like(&now) && !always {
            self.steps.change(|record| record.history.amend(Settings { person, ..before }));
        } else {
            self.step(&before, now);
        }
    }

    /// Begins the present model afresh: the unit that was there stays among the drafts, and nothing of the person.
    pub fn begin_afresh(self) {
        self.leave_unit();
        self.begin_for(false);
    }

    /// Begins afresh for somebody else; `always` as a step, whatever was there.
    pub(super) fn begin_for(self, always: bool) {
        self.settle();
        let before = self.steps.present();
        self.bounds.set(Bounds::default());
        self.keep_other(Vec::clear);
        let begun = self.peek(|snapshot, range| {
            range.model(&snapshot.choice.model).and_then(Choice::starting).or_else(|| Choice::first_of(range))
        });
        if let Some(begun) = begun {
            self.replace(begun);
        }
        self.unread.clear();
        self.forget_person();
        self.begun.update(|times| *times += 1);
        self.hand_over(before, true, always);
    }

    /// Whether the last step was to begin afresh, and nothing has been answered, kept or given since.
    pub fn has_just_begun(self) -> bool {
        let now = self.settings();
        let is_it = |begun: &Settings| begun.begun && begun.is_like(&now);
        self.steps.behind.get() > 0 && self.steps.record.with_value(|record| is_it(record.history.present()))
    }

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
        self.hand_over(before, false, false);
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
    pub(super) fn take_draft(self, draft: Draft) {
        self.settle();
        self.leave_unit();
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
    pub(super) fn call(self, name: &str) {
        let now = Settings { of: name.into(), ..self.steps.present() };
        self.steps.change(|record| record.history.amend(now));
    }

    /// Shows what another tab shows: that is no step here.
    pub(super) fn follow_tab(self, draft: Draft) {
        self.replace(draft.link.choice);
        self.keep_other(|pins| *pins = draft.pins);
        let now = Settings { of: draft.name, ..untrack(move || self.settings()) };
        self.steps.change(|record| record.history.amend(now));
    }

    /// How often the questions were begun afresh; what reads is run again when they are.
    pub fn begun(self) -> u32 {
        self.begun.get()
    }
}
