//! One choice is the state; everything else follows from it, in one memo.

mod advice;
mod did;
mod drafts;
mod entries;
mod kept;
mod snapshot;
mod steps;

use std::sync::Arc;
use std::time::Duration;

use leptos::prelude::*;
use slotwright_core::choice::Choice;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::link::Mark;
use slotwright_core::choice::question::Question;
use slotwright_core::range::Range;
use slotwright_core::units::day::Day;

use crate::browser::adviser;
use crate::browser::range_file::NoRange;
use crate::customer::Customer;
use crate::debounce::debounce;
use crate::unread::Unread;
use advice::TEXTS;
use did::LastStep;
use steps::Steps;

pub use advice::FindingAdvice;
pub use drafts::{Changed, Drafts, Own};
pub use snapshot::Snapshot;
pub use steps::Settings;

/// What the adviser says of an answer that was asked for: how it goes, why not alone, what to press, the compact text
/// of the choice that comes of it, and what of that which is kept is let go.
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
    /// What was given for this visit: the word of a goal and its figure.
    given: RwSignal<Vec<(&'static str, String)>>,
    answers: RwSignal<Vec<Vec<String>>>,
    advice: RwSignal<Vec<FindingAdvice>>,
    /// The choice that it is about.
    advised: RwSignal<String>,
    compact: Memo<String>,
    /// Whether there is no adviser, or none any more.
    alone: RwSignal<bool>,
    /// What links call the range, once the adviser has said it.
    pub mark: RwSignal<Option<Mark>>,
    lit: RwSignal<usize>,
    /// The bay that is looked at, as far as there is one.
    seen: Memo<usize>,
    begun: RwSignal<u32>,
}

impl Desk {
    /// Lays out the desk; called once.
    pub fn new(loaded: Loaded) -> Self {
        let Loaded { range, text, choice, pins, today, banner, built_in, own } = loaded;
        let banner = [banner.unwrap_or_default(), String::new()].map(RwSignal::new);
        let (unread, customer, built_in) = (Unread::new(), Customer::new(), built_in.is_some());
        let text = StoredValue::new(text);
        let (steps, last_step) = (Steps::new(choice.clone(), pins.clone()), LastStep::new());
        let (choice, lit, range) = (RwSignal::new(choice), RwSignal::new(0), StoredValue::new(range));
        let given = RwSignal::new(Vec::new());
        let (today, begun, pins) = (RwSignal::new(today), RwSignal::new(0), RwSignal::new(pins));
        let (alone, mark) = (RwSignal::new(false), RwSignal::new(None));
        let snapshot =
            Memo::new(move |before| range.with_value(|range| Snapshot::of(range, choice.get(), today.get(), before)));
        let seen = Memo::new(move |_| {
            let last = snapshot.with(|snapshot: &Snapshot| snapshot.choice.bays.len().saturating_sub(1));
            lit.get().min(last)
        });
        let compact = Memo::new(move |_| choice.with(Choice::to_compact));
        let (answers, advice, advised) =
            (RwSignal::new(Vec::new()), RwSignal::new(Vec::new()), RwSignal::new(String::new()));
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
            given,
            answers,
            advice,
            advised,
            compact,
            alone,
            mark,
            lit,
            seen,
            begun,
        };
        adviser::open(desk.range_text(), Callback::new(move |texts: Vec<String>| desk.receive(texts)));
        let questions = move || ["findings", "all"].map(|word| desk.question(word, &[]));
        debounce(PAUSE, questions, Callback::new(|questions: [_; 2]| questions.into_iter().for_each(adviser::ask)));
        desk.listen();
        desk
    }

    /// The present choice as its compact text.
    pub fn compact(self) -> String {
        self.compact.get()
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
        [word.to_string(), self.compact()].into_iter().chain(more.iter().cloned()).chain(pins).collect()
    }

    /// Takes what the adviser says; what is about an earlier choice is of no use any more, but advice on findings stays
    /// until there are newer ones, so that nothing comes and goes while a size is dragged.
    fn receive(self, texts: Vec<String>) {
        if texts.first().is_some_and(|word| word == "range") {
            self.mark.set(texts.get(1).and_then(|mark| mark.parse().ok()));
        } else if texts.first().is_some_and(|word| word == "findings") {
            // One that fails advises about nothing: what it said before is no advice any more.
            if texts.get(1).is_some_and(String::is_empty) {
                self.answers.set(Vec::new());
                self.alone.set(true);
            }
            self.advised.set(texts.get(1).cloned().unwrap_or_default());
            let advice = texts.get(2..).unwrap_or_default().chunks(TEXTS).filter_map(FindingAdvice::of).collect();
            if self.advice.with_untracked(|known| *known != advice) {
                self.advice.set(advice);
            }
        } else if texts.get(1).is_some_and(|compact| self.compact.with_untracked(|own| own == compact)) {
            self.answers.update(|answers| {
                answers.retain(|known| known.first() != texts.first());
                answers.push(texts);
            });
        }
    }

    /// What the adviser says in answer to a word about the present choice.
    pub fn answer(self, word: &str) -> Vec<String> {
        let (texts, fresh) = self.last_answer(word, 0..usize::MAX);
        if fresh { texts } else { Vec::new() }
    }

    /// The same in answer to a word about one answer, by what that is called, if that was the last one asked for.
    pub fn explained(self, word: &str, which: &str) -> Option<Explained> {
        let answer = self.answer(word);
        let (of, texts) = answer.split_first()?;
        Explained::try_from(texts.to_vec()).ok().filter(|_| of == which)
    }

    /// Some texts of the same of whichever choice it said it last, and whether that is the present one.
    pub fn last_answer(self, word: &str, which: core::ops::Range<usize>) -> (Vec<String>, bool) {
        self.compact.with(|compact| {
            self.answers.with(|answers| {
                match answers.iter().find(|texts| texts.first().is_some_and(|first| first == word)) {
                    Some(texts) => {
                        let own = texts.iter().skip(2).skip(which.start).take(which.len());
                        (own.cloned().collect(), texts.get(1) == Some(compact))
                    }
                    None => (Vec::new(), false),
                }
            })
        })
    }

    /// What the adviser says of the findings: of what stops the order, and of what is good to know.
    pub fn advice<T>(self, read: impl FnOnce(&[FindingAdvice]) -> T) -> T {
        self.advice.with(|advice| read(advice))
    }

    /// Whether the advice on findings is about an earlier choice.
    pub fn is_advice_old(self) -> bool {
        self.compact.with(|compact| self.advised.with(|advised| advised != compact))
    }

    /// Whether nobody gives advice.
    pub fn is_alone(self) -> bool {
        self.alone.get()
    }

    /// Takes a remedy that the adviser names; none of an earlier choice.
    pub fn take_remedy(self, [_, after, gone]: &[String; 3]) {
        if self.compact.with_untracked(|compact| self.advised.with_untracked(|advised| advised == compact)) {
            self.follow(after, gone);
        }
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
        self.unread.first().is_none() && self.read(|snapshot, _| snapshot.orderable)
    }

    /// Takes the choice of a compact text of the adviser's; these questions are kept no longer.
    pub fn follow(self, compact: &str, gone: &str) {
        if let Some(choice) = Choice::of_compact(compact) {
            self.begin_answer(None);
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
        let (same, alike) = self.peek(|snapshot, _| (snapshot.choice == choice, alike(&snapshot.choice)));
        if !alike {
            // These are other questions: what was said of the old ones is not even a look of theirs.
            self.answers.set(Vec::new());
        }
        if self.peek(|snapshot, _| snapshot.choice.model != choice.model) {
            self.advice.set(Vec::new());
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
