//! One choice is the state; everything else follows from it, in one memo.

mod kept;
mod known;
mod note;

use std::sync::Arc;
use std::time::Duration;

use leptos::prelude::*;
use slotwright_core::change::Change;
use slotwright_core::choice::Choice;
use slotwright_core::day::Day;
use slotwright_core::question::Question;
use slotwright_core::range::Range;

use crate::browser::ways;
use crate::customer::Customer;
use crate::rest::at_rest;
use crate::tally::Hindrance;
use crate::unread::{Field, Unread};
use note::NOTE;

pub use known::Known;
pub use note::Note;

/// What the adviser says of an answer that was asked for: how it goes, why not alone, what to press, the note of the choice
/// that comes of it, and what of that which is kept is let go.
pub type Explained = [String; 5];

/// When a size has not moved for so long, the adviser is asked and the choice is saved: nobody reads advice while
/// dragging.
pub const PAUSE: Duration = Duration::from_millis(80);

/// What the page begins with.
#[derive(Clone, Debug)]
pub struct Loaded {
    /// The range.
    pub range: Arc<Range>,
    /// The file that it was read from.
    pub text: Arc<str>,
    /// The first choice.
    pub choice: Choice,
    /// What of it is kept.
    pub pins: Vec<Question>,
    /// What a person should know about how it was loaded.
    pub notice: Option<String>,
    /// Why the range is the one that is built in; nothing if it is the workshop's.
    pub built_in: Option<String>,
    /// The present day.
    pub today: Day,
}

/// Everything that components read, and the one way in which they change it.
#[derive(Clone, Copy, Debug)]
pub struct Desk {
    /// Entries that could not be read.
    pub unread: Unread,
    /// For whom the order is.
    pub customer: Customer,
    /// What a person should know, and the note of the choice that it is about: empty if it holds for any.
    pub notice: [RwSignal<String>; 2],
    built_in: bool,
    known: Memo<Known>,
    range: StoredValue<Arc<Range>>,
    text: StoredValue<Arc<str>>,
    today: RwSignal<Day>,
    choice: RwSignal<Choice>,
    pins: RwSignal<Vec<Question>>,
    /// What was given for this visit: the word of a goal and its figure.
    given: RwSignal<Vec<(&'static str, String)>>,
    told: RwSignal<Vec<Vec<String>>>,
    notes: RwSignal<Vec<Note>>,
    /// The choice that they are about.
    noted: RwSignal<String>,
    note: Memo<String>,
    /// Whether there is no adviser, or none any more.
    alone: RwSignal<bool>,
    lit: RwSignal<usize>,
    /// The bay that is looked at, as far as there is one.
    seen: Memo<usize>,
    begun: RwSignal<u32>,
}

impl Desk {
    /// Lays out the desk; called once.
    pub fn new(loaded: Loaded) -> Self {
        let Loaded { range, text, choice, pins, today, notice, built_in } = loaded;
        let notice = [notice.unwrap_or_default(), String::new()].map(RwSignal::new);
        let (unread, customer, built_in) = (Unread::new(), Customer::new(), built_in.is_some());
        let text = StoredValue::new(text);
        let (choice, lit, range) = (RwSignal::new(choice), RwSignal::new(0), StoredValue::new(range));
        let given = RwSignal::new(Vec::new());
        let (today, begun, pins) = (RwSignal::new(today), RwSignal::new(0), RwSignal::new(pins));
        let alone = RwSignal::new(false);
        let known =
            Memo::new(move |before| range.with_value(|range| Known::of(range, choice.get(), today.get(), before)));
        let seen = Memo::new(move |_| {
            let last = known.with(|known: &Known| known.choice.bays.len().saturating_sub(1));
            lit.get().min(last)
        });
        let note = Memo::new(move |_| choice.with(Choice::to_note));
        let (told, notes, noted) = (RwSignal::new(Vec::new()), RwSignal::new(Vec::new()), RwSignal::new(String::new()));
        let desk = Self {
            unread,
            customer,
            notice,
            built_in,
            known,
            range,
            text,
            today,
            choice,
            pins,
            given,
            told,
            notes,
            noted,
            note,
            alone,
            lit,
            seen,
            begun,
        };
        ways::open(desk.range_text(), Callback::new(move |texts: Vec<String>| desk.hear(texts)));
        let questions = move || ["notes", "all"].map(|word| desk.question(word, &[]));
        at_rest(PAUSE, questions, Callback::new(|questions: [_; 2]| questions.into_iter().for_each(ways::ask)));
        desk
    }

    /// The present choice as a short text.
    pub fn note(self) -> String {
        self.note.get()
    }

    /// A question to the adviser about the present choice, with what is kept at its end.
    pub fn question(self, word: &str, more: &[String]) -> Vec<String> {
        let mut pins = self.pins.with(|pins| pins.iter().map(ToString::to_string).collect::<Vec<_>>());
        self.given.with(|given| {
            if !given.is_empty() {
                pins.push(["today=", &self.today.get().to_string()].concat());
            }
            pins.extend(given.iter().map(|(name, figure)| [name, "=", figure].concat()));
        });
        [word.to_string(), self.note()].into_iter().chain(more.iter().cloned()).chain(pins).collect()
    }

    /// Takes what the adviser says; what is about an earlier choice is of no use any more, but notes stay until there
    /// are newer ones, so that nothing comes and goes while a size is dragged.
    fn hear(self, texts: Vec<String>) {
        if texts.first().is_some_and(|word| word == "notes") {
            // One that fails says notes about nothing: what it said before is no advice any more.
            if texts.get(1).is_some_and(String::is_empty) {
                self.told.set(Vec::new());
                self.alone.set(true);
            }
            self.noted.set(texts.get(1).cloned().unwrap_or_default());
            let notes = texts.get(2..).unwrap_or_default().chunks(NOTE).filter_map(Note::of).collect();
            if self.notes.with_untracked(|known| *known != notes) {
                self.notes.set(notes);
            }
        } else if texts.get(1).is_some_and(|note| self.note.with_untracked(|own| own == note)) {
            self.told.update(|told| {
                told.retain(|known| known.first() != texts.first());
                told.push(texts);
            });
        }
    }

    /// What the adviser says in answer to a word about the present choice.
    pub fn told(self, word: &str) -> Vec<String> {
        let (texts, fresh) = self.told_last(word, 0..usize::MAX);
        if fresh { texts } else { Vec::new() }
    }

    /// The same in answer to a word about one answer, by what that is called, if that was the last one asked for.
    pub fn explained(self, word: &str, which: &str) -> Option<Explained> {
        let told = self.told(word);
        let (of, told) = told.split_first()?;
        Explained::try_from(told.to_vec()).ok().filter(|_| of == which)
    }

    /// Some texts of the same of whichever choice it said it last, and whether that is the present one.
    pub fn told_last(self, word: &str, which: core::ops::Range<usize>) -> (Vec<String>, bool) {
        self.note.with(|note| {
            self.told.with(|told| match told.iter().find(|texts| texts.first().is_some_and(|first| first == word)) {
                Some(texts) => {
                    let own = texts.iter().skip(2).skip(which.start).take(which.len());
                    (own.cloned().collect(), texts.get(1) == Some(note))
                }
                None => (Vec::new(), false),
            })
        })
    }

    /// What the adviser says of the findings: of what stops the order, and of what is good to know.
    pub fn notes<T>(self, read: impl FnOnce(&[Note]) -> T) -> T {
        self.notes.with(|notes| read(notes))
    }

    /// Whether the notes are about an earlier choice.
    pub fn are_notes_old(self) -> bool {
        self.note.with(|note| self.noted.with(|noted| noted != note))
    }

    /// Whether nobody gives advice.
    pub fn is_alone(self) -> bool {
        self.alone.get()
    }

    /// Takes a way out of a note; none of an earlier choice.
    pub fn take_way(self, [_, after, gone]: &[String; 3]) {
        if self.note.with_untracked(|note| self.noted.with_untracked(|noted| noted == note)) {
            self.follow(after, gone);
        }
    }

    /// The desk of this page.
    pub fn here() -> Self {
        expect_context()
    }

    /// Reads what is known, together with the range; what reads is run again when it changes.
    pub fn read<T>(self, read: impl FnOnce(&Known, &Range) -> T) -> T {
        self.known.with(|known| self.range.with_value(|range| read(known, range)))
    }

    /// Reads it once.
    pub fn peek<T>(self, read: impl FnOnce(&Known, &Range) -> T) -> T {
        self.known.with_untracked(|known| self.range.with_value(|range| read(known, range)))
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
        self.unread.answer(change);
        self.replace(self.peek(|known, range| known.choice.with(change, range)));
    }

    /// Takes what was typed into a field, if it could be read.
    pub fn enter(self, field: Field, entry: String, read: Option<Change>) {
        match read {
            Some(change) => self.apply(&change),
            None => self.unread.add(field, entry),
        }
    }

    /// What stops an order, whatever is known about the unit.
    pub fn hindrance(self) -> Option<Hindrance> {
        self.unread.first().map(Hindrance::Unread).or(self.built_in.then_some(Hindrance::NoRange))
    }

    /// Whether the range is the one that is built in: nothing can be ordered then.
    pub fn is_built_in(self) -> bool {
        self.built_in
    }

    /// Whether nothing stops the unit, and every entry was read.
    pub fn is_free(self) -> bool {
        self.unread.first().is_none() && self.read(|known, _| known.orderable)
    }

    /// Takes the choice of a note of the adviser's; these questions are kept no longer.
    pub fn follow(self, note: &str, gone: &str) {
        if let Some(choice) = Choice::of_note(note) {
            if !gone.is_empty() {
                self.given.update(|given| given.retain(|(name, _)| !gone.split(' ').any(|gone| gone == *name)));
                self.keep_other(|pins| pins.retain(|pin| !gone.split(' ').any(|gone| gone == pin.to_string())));
            }
            self.replace(choice);
        }
    }

    /// Takes another choice as a whole.
    pub fn replace(self, choice: Choice) {
        let alike = |known: &Choice| known.model == choice.model && known.bays.len() == choice.bays.len();
        let (same, alike) = self.peek(|known, _| (known.choice == choice, alike(&known.choice)));
        if !alike {
            // These are other questions: what was said of the old ones is not even a look of theirs.
            self.told.set(Vec::new());
        }
        if self.peek(|known, _| known.choice.model != choice.model) {
            self.notes.set(Vec::new());
            self.pins.set(Vec::new());
        }
        // Of a bay that is gone nothing is kept: another one that comes later is not it.
        if self.pins.with_untracked(|pins| !pins.iter().all(|pin| choice.has(*pin))) {
            self.keep_other(|pins| pins.retain(|pin| choice.has(*pin)));
        }
        self.peek(|known, _| self.unread.follow(&known.choice, &choice));
        if !same {
            self.choice.set(choice);
        }
    }

    /// The range file as it was read.
    pub fn range_text(self) -> String {
        self.text.get_value().to_string()
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

    /// Begins the present model afresh: nothing stays of the person before. Gives what was kept.
    pub fn begin_afresh(self) -> Vec<Question> {
        let kept = self.pins.get_untracked();
        self.given.set(Vec::new());
        self.keep_other(Vec::clear);
        let begun = self.peek(|known, range| {
            range.model(&known.choice.model).and_then(Choice::starting).or_else(|| Choice::first_of(range))
        });
        if let Some(begun) = begun {
            self.replace(begun);
        }
        self.unread.clear();
        self.customer.set(&[]);
        self.tell(String::new(), String::new());
        self.begun.update(|times| *times += 1);
        kept
    }

    /// Tells something about the choice of a note, or of any.
    pub fn tell(self, text: String, about: String) {
        let [own, of] = self.notice;
        of.set(about);
        own.set(text);
    }

    /// Takes over an order that was opened: its choice, for whom it is, and what came of opening it.
    pub fn open(self, sentence: String, choice: Choice, customer: &[String]) {
        self.unread.forget_choice();
        let about = choice.to_note();
        self.replace(choice);
        self.customer.set(customer);
        self.tell(sentence, about);
    }

    /// Takes a choice back that was begun afresh, with what was kept. Who the person before was does not come back.
    pub fn go_back(self, choice: Choice, kept: Vec<Question>) {
        self.unread.forget_choice();
        self.replace(choice);
        self.keep_other(|pins| *pins = kept);
    }

    /// How often the questions were begun afresh; what reads is run again when they are.
    pub fn begun(self) -> u32 {
        self.begun.get()
    }
}
