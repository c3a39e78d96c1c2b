//! One choice is the state; everything else follows from it, in one memo.

use std::sync::Arc;

use leptos::prelude::*;
use slotwright_core::change::Change;
use slotwright_core::choice::Choice;
use slotwright_core::day::Day;
use slotwright_core::derive::{Built, look};
use slotwright_core::finding::{Finding, Question, Severity};
use slotwright_core::options::{Options, Run, Size, options, runs};
use slotwright_core::promise::Backlog;
use slotwright_core::range::Range;

/// What the page begins with.
#[derive(Clone, Debug)]
pub struct Loaded {
    /// The range.
    pub range: Arc<Range>,
    /// The file that it was read from.
    pub text: Arc<str>,
    /// The first choice.
    pub choice: Choice,
    /// What a person should know about how it was loaded.
    pub notice: Option<String>,
    /// The present day.
    pub today: Day,
}

/// What is known about the present choice.
#[derive(Clone, Debug, PartialEq)]
pub struct Known {
    /// What is picked.
    pub choice: Choice,
    /// The questions whose answers are kept whatever is asked for.
    pub pins: Vec<Question>,
    /// What the rules say.
    pub findings: Vec<Finding>,
    /// What can be built of it.
    pub built: Option<Built>,
    /// Whether nothing stops the order; the desk proves the assembly when it is ordered.
    pub orderable: bool,
    /// What can be taken.
    pub options: Option<Options>,
    /// The valid sets of width, height and depth.
    pub runs: [Vec<Run>; 3],
}

impl Known {
    fn of(range: &Range, choice: Choice, pins: Vec<Question>, today: Day) -> Self {
        let backlog = Backlog::default();
        let derived = look(range, &choice, today, &backlog);
        let orderable = derived.is_free();
        let (findings, built) = (derived.findings, derived.built);
        let options = options(range, &choice, &pins);
        let runs = [Size::Width, Size::Height, Size::Depth].map(|size| runs(range, &choice, size, &pins));
        Self { choice, pins, findings, built, orderable, options, runs }
    }

    /// How many findings stop the order.
    pub fn stops(&self) -> usize {
        self.findings.iter().filter(|finding| finding.severity == Severity::Stops).count()
    }

    /// The valid set of a size.
    pub fn runs(&self, size: Size) -> &[Run] {
        let [width, height, depth] = &self.runs;
        match size {
            Size::Width => width,
            Size::Height => height,
            Size::Depth => depth,
        }
    }
}

/// Everything that components read, and the one way in which they change it.
#[derive(Clone, Copy, Debug)]
pub struct Desk {
    known: Memo<Known>,
    range: StoredValue<Arc<Range>>,
    text: StoredValue<Arc<str>>,
    today: RwSignal<Day>,
    choice: RwSignal<Choice>,
    pins: RwSignal<Vec<Question>>,
    lit: RwSignal<usize>,
    begun: RwSignal<u32>,
}

impl Desk {
    /// Lays out the desk; called once.
    pub fn new(loaded: Loaded) -> Self {
        let Loaded { range, text, choice, today, .. } = loaded;
        let text = StoredValue::new(text);
        let (choice, lit, range) = (RwSignal::new(choice), RwSignal::new(0), StoredValue::new(range));
        let (today, begun, pins) = (RwSignal::new(today), RwSignal::new(0), RwSignal::new(Vec::new()));
        let known =
            Memo::new(move |_| range.with_value(|range| Known::of(range, choice.get(), pins.get(), today.get())));
        Self { known, range, text, today, choice, pins, lit, begun }
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
        let last = self.known.with(|known| known.choice.bays.len().saturating_sub(1));
        self.lit.get().min(last)
    }

    /// Looks at a bay.
    pub fn look_at(self, bay: usize) {
        self.lit.set(bay);
    }

    /// Takes an answer.
    pub fn apply(self, change: &Change) {
        self.replace(self.peek(|known, range| known.choice.with(change, range)));
    }

    /// Takes an answer with the changes that it needs.
    pub fn apply_all(self, changes: &[Change]) {
        self.replace(self.peek(|known, range| {
            changes.iter().fold(known.choice.clone(), |choice, change| choice.with(change, range))
        }));
    }

    /// Keeps the answer to a question whatever else is asked for, or no longer.
    pub fn keep(self, question: Question) {
        self.pins.update(|pins| match pins.iter().position(|pin| *pin == question) {
            Some(at) => {
                pins.remove(at);
            }
            None => pins.push(question),
        });
    }

    /// Whether the answer to a question is kept.
    pub fn keeps(self, question: Question) -> bool {
        self.pins.with(|pins| pins.contains(&question))
    }

    /// Takes another choice as a whole.
    pub fn replace(self, choice: Choice) {
        if self.peek(|known, _| known.choice != choice) {
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

    /// Begins the present model afresh; entries that could not be read are gone too.
    pub fn begin_afresh(self) {
        self.pins.update(Vec::clear);
        self.apply(&Change::Model(self.peek(|known, _| known.choice.model.clone())));
        self.begun.update(|times| *times += 1);
    }

    /// How often the questions were begun afresh; what reads is run again when they are.
    pub fn begun(self) -> u32 {
        self.begun.get()
    }
}
