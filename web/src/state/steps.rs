//! Steps: what a person would call one, and the way back and forward through them. Beginning afresh, opening an order, a
//! link or a draft are steps too.

mod opened;

use leptos::prelude::*;
use slotwright_core::choice::Choice;
use slotwright_core::choice::draft::Draft;
use slotwright_core::choice::history::History;
use slotwright_core::choice::question::Question;
use slotwright_core::range::Key;
use slotwright_core::solver::carry::carried;
use slotwright_core::words::did::Step as Kind;
use slotwright_protocol::adviser::Bounds;
use slotwright_protocol::desk::Person;

use super::Desk;
use crate::browser::drawer::{self, Earlier};
use crate::browser::shortcuts::{self, Stroke};
use crate::browser::steps;

/// With what somebody began.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Begun {
    /// Not at all: it was answered, opened or kept.
    No,
    /// The model that was there; `kept` if the unit that was there is among the drafts.
    Afresh {
        /// Whether it is.
        kept: bool,
    },
    /// The first model, and nothing of who was there before.
    Visitor,
}

impl Begun {
    /// What is told of it as a step; nothing of who was there before.
    const fn step(self) -> Option<Kind> {
        match self {
            Self::No | Self::Visitor => None,
            Self::Afresh { kept: false } => Some(Kind::Afresh),
            Self::Afresh { kept: true } => Some(Kind::AfreshKept),
        }
    }
}

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
    begun: Begun,
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
    /// What was done before the page was loaded anew, if anything was, with what is chosen and kept now.
    pub fn new(choice: Choice, pins: Vec<Question>, earlier: Earlier) -> Self {
        let settings =
            |choice, pins, of| Settings { choice, pins, bounds: Bounds::default(), person: 0, begun: Begun::No, of };
        let Earlier { first, at, steps } = earlier;
        let mut states = steps.into_iter().map(|Draft { link, pins, name, .. }| settings(link.choice, pins, name));
        let history = match states.next() {
            None => History::new(settings(choice, pins, String::new())),
            Some(begun) => {
                let mut history = History::numbered(begun, first);
                states.for_each(|state| history.push(state));
                history.go_to(at);
                history
            }
        };
        let (behind, ahead) = (RwSignal::new(history.behind()), RwSignal::new(history.ahead()));
        let record = StoredValue::new(Record { history, asked: None, persons: 0 });
        Self { held: RwSignal::new(false), record, behind, ahead }
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
        drawer::forget_steps(self.number() - self.behind.get_untracked());
    }

    /// The step with which the last new visitor came, of those that were done again since the one of that number.
    fn came(self, from: usize) -> Option<usize> {
        self.record.with_value(|Record { history, .. }| {
            let again = history.number().saturating_sub(from);
            let back = history.backwards().take(again).position(|state| state.begun == Begun::Visitor)?;
            history.number().checked_sub(back)
        })
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
        let (number, ahead) = (self.steps.number(), self.steps.ahead.get_untracked());
        steps::listen(number, number + ahead, Callback::new(move |number| self.go_to(number)));
        if number == 0 && ahead == 0 {
            drawer::begin_steps(&self.unit_text());
        }
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
        Settings { choice, pins, bounds, person, begun: Begun::No, of }
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
        let is_visitor = now.begun == Begun::Visitor;
        if is_visitor {
            self.tell_nothing();
        } else {
            let answers = if recalled { Kind::Recalled } else { Kind::Answers };
            self.tell(&before.choice, &now.choice, now.begun.step().unwrap_or(answers), false);
        }
        let text = self.draft(now.of.clone()).to_text();
        self.steps.change(|record| {
            record.history.push(now);
            record.asked = None;
        });
        let number = self.steps.number();
        drawer::step(&self.drafts().name(), number, &text, is_visitor);
        steps::push(number);
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

    pub(super) fn walk_to(self, number: usize) {
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
        let came = self.steps.came(from);
        let left = self.take_back_visitor(number) || came.is_some();
        let cleared = came.map(|came| (came, self.clear_kept()));
        self.unread.clear();
        self.replace(now.choice.clone());
        self.bounds.set(now.bounds);
        self.keep_other(|kept| *kept = now.pins);
        if left {
            self.tell_nothing();
        } else {
            let undid = number < from;
            let afresh = if undid { before.begun.step().map(|_| Kind::NotAfresh) } else { now.begun.step() };
            let step = afresh.filter(|_| number.abs_diff(from) == 1).unwrap_or(Kind::Recalled);
            self.tell(&before.choice, &now.choice, step, undid);
        }
        drawer::go_to(&self.drafts().name(), number);
        if let Some((came, kept)) = cleared {
            self.remember_visitor(came, kept);
        }
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
    fn hand_over(self, before: Settings, begun: Begun) {
        self.steps.record.update_value(|record| record.persons += 1);
        let person = self.steps.record.with_value(|record| record.persons);
        let now = Settings { person, begun, of: String::new(), ..untrack(move || self.settings()) };
        if before.is_like(&now) && begun != Begun::Visitor {
            self.steps.change(|record| record.history.amend(Settings { person, ..before }));
        } else {
            self.step(&before, now);
        }
    }

    /// Begins the present model afresh: the unit that was there stays among the drafts, and nothing of the person.
    pub fn begin_afresh(self) {
        let kept = self.leave_unit() && self.drafts().are_kept();
        self.begin_for(Begun::Afresh { kept });
    }

    /// Begins with the first unit of the range, for somebody who finds nothing of who was there before: that is a step,
    /// whatever was there.
    pub(super) fn begin_for_visitor(self) {
        self.begin_for(Begun::Visitor);
    }

    fn begin_for(self, begun: Begun) {
        self.settle();
        let before = self.steps.present();
        self.bounds.set(Bounds::default());
        self.keep_other(Vec::clear);
        let first = self.peek(|snapshot, range| {
            let same = range.model(&snapshot.choice.model).filter(|_| begun != Begun::Visitor);
            same.and_then(Choice::starting).or_else(|| Choice::first_of(range))
        });
        if let Some(first) = first {
            self.replace(first);
        }
        self.unread.clear();
        self.forget_person();
        self.begun.update(|times| *times += 1);
        self.hand_over(before, begun);
    }

    /// Whether the last step was to begin afresh, and nothing has been answered, kept or given since.
    pub fn has_just_begun(self) -> bool {
        let now = self.settings();
        let is_it = |begun: &Settings| begun.begun != Begun::No && begun.is_like(&now);
        self.steps.behind.get() > 0 && self.steps.record.with_value(|record| is_it(record.history.present()))
    }

    /// How often the questions were begun afresh; what reads is run again when they are.
    pub fn begun(self) -> u32 {
        self.begun.get()
    }
}
