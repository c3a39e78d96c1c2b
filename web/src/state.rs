//! One choice is the state; everything else follows from it.

use std::sync::Arc;

use leptos::prelude::*;
use slotwright_core::change::Change;
use slotwright_core::choice::Choice;
use slotwright_core::day::Day;
use slotwright_core::derive::{Built, derive};
use slotwright_core::finding::{Finding, Question, Severity};
use slotwright_core::options::{Options, Run, Size, options, runs};
use slotwright_core::promise::Backlog;
use slotwright_core::range::Range;
use slotwright_core::spec::{BadText, Customer, OrderSpec};

/// What the page begins with.
#[derive(Clone, Debug)]
pub struct Loaded {
    /// The range.
    pub range: Arc<Range>,
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
    /// What the rules say.
    pub findings: Vec<Finding>,
    /// What can be built of it.
    pub built: Option<Built>,
    /// Whether nothing stops the order.
    pub orderable: bool,
}

impl Known {
    /// How many findings stop the order.
    pub fn stops(&self) -> usize {
        self.findings.iter().filter(|finding| finding.severity == Severity::Stops).count()
    }
}

/// Everything that components read, and the one way in which they change it.
#[derive(Clone, Copy, Debug)]
pub struct Desk {
    /// What is picked.
    pub choice: Signal<Choice>,
    /// What is known about it.
    pub known: Memo<Known>,
    /// What can be taken.
    pub options: Memo<Option<Options>>,
    /// The bay that is looked at, from 0.
    pub lit: Signal<usize>,
    range: StoredValue<Arc<Range>>,
    today: Day,
    write: WriteSignal<Choice>,
    light: WriteSignal<usize>,
}

impl Desk {
    /// Lays out the desk; called once.
    pub fn new(loaded: Loaded) -> Self {
        let Loaded { range, choice, today, .. } = loaded;
        let (choice, write) = signal(choice);
        let (lit, light) = signal(0);
        let range = StoredValue::new(range);
        let known = Memo::new(move |_| {
            choice.with(|choice| range.with_value(|range| known(range, choice, today)))
        });
        let options = Memo::new(move |_| choice.with(|choice| range.with_value(|range| options(range, choice))));
        let lit = Signal::derive(move || lit.get().min(choice.with(|choice| choice.bays.len().saturating_sub(1))));
        Self { choice: choice.into(), known, options, lit, range, today, write, light }
    }

    /// The desk of this page.
    pub fn here() -> Self {
        expect_context()
    }

    /// Takes an answer.
    pub fn apply(self, change: &Change) {
        let changed = self.choice.with_untracked(|choice| self.with_range(|range| choice.with(change, range)));
        self.replace(changed);
    }

    /// Takes another choice as a whole.
    pub fn replace(self, choice: Choice) {
        if self.choice.with_untracked(|now| *now != choice) {
            self.write.set(choice);
        }
    }

    /// Looks at a bay.
    pub fn look_at(self, bay: usize) {
        self.light.set(bay);
    }

    /// Reads the range.
    pub fn with_range<T>(self, read: impl FnOnce(&Range) -> T) -> T {
        self.range.with_value(|range| read(range))
    }

    /// The valid set of a size.
    pub fn runs(self, size: Size) -> Memo<Vec<Run>> {
        Memo::new(move |_| self.choice.with(|choice| self.with_range(|range| runs(range, choice, size))))
    }

    /// The findings about some questions.
    pub fn findings(self, about: impl Fn(Question) -> bool + Send + Sync + 'static) -> Memo<Vec<Finding>> {
        Memo::new(move |_| {
            self.known.with(|known| known.findings.iter().filter(|finding| about(finding.about)).cloned().collect())
        })
    }

    /// Makes the order spec of the present choice; `None` while something stops it.
    pub fn order(self, customer: Customer, remark: String) -> Option<Result<OrderSpec, BadText>> {
        self.choice.with_untracked(|choice| {
            self.with_range(|range| {
                let backlog = Backlog::default();
                let derived = derive(range, choice, self.today, &backlog);
                derived.orderable().map(|orderable| OrderSpec::new(orderable, customer, remark))
            })
        })
    }
}

fn known(range: &Range, choice: &Choice, today: Day) -> Known {
    let backlog = Backlog::default();
    let derived = derive(range, choice, today, &backlog);
    let orderable = derived.orderable().is_some();
    Known { orderable, findings: derived.findings, built: derived.built }
}
