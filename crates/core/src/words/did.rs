//! What a change did to the unit, in one line.

use crate::choice::changed::Changed;
use crate::range::Range;
use crate::units::day::Day;
use crate::units::money::Money;
use crate::units::quantity::Mass;

use super::locale::Locale;
use super::names::Names;
use super::{LOCALE, english};

/// What a unit that can be made comes to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sum {
    /// Price with tax.
    pub price: Money,
    /// Mass of the whole.
    pub mass: Mass,
    /// The day on which it arrives, if there is one.
    pub day: Option<Day>,
}

/// What kind of step it was.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// Answers were given, or come with a unit that was opened.
    Answers,
    /// A unit that was there before is there again, as it was left.
    Recalled,
    /// A unit was begun afresh. What was there is gone but for a way back, since nothing was answered in it or nothing can be kept.
    Afresh,
    /// The same, and what was there is among the drafts.
    AfreshKept,
    /// That was undone.
    NotAfresh,
}

impl Step {
    /// All of them, each with the word by which it passes between page and adviser.
    pub(super) const WORDS: [(&'static str, Self); 5] = [
        ("answers", Self::Answers),
        ("recalled", Self::Recalled),
        ("afresh", Self::Afresh),
        ("afresh-kept", Self::AfreshKept),
        ("not-afresh", Self::NotAfresh),
    ];

    /// Its word.
    pub fn word(self) -> &'static str {
        Self::WORDS.into_iter().find(|(_, step)| *step == self).map_or("", |(word, _)| word)
    }

    /// The one of that word.
    pub fn of_word(word: &str) -> Option<Self> {
        Self::WORDS.into_iter().find(|(own, _)| *own == word).map(|(_, step)| step)
    }
}

/// A change: its answers, and what the unit comes to before and after; nothing where it cannot be made.
#[derive(Clone, Copy, Debug)]
pub struct Did<'a> {
    /// The answers that differ.
    pub changed: &'a [Changed],
    /// By what kind of step it came.
    pub step: Step,
    /// What it came to.
    pub before: Option<Sum>,
    /// What it comes to.
    pub after: Option<Sum>,
}

impl Did<'_> {
    /// What was answered, and what that did: two texts that make one line. `Width 1 640 to 1 520:` and
    /// `€ 41.20 less, 2.1 kg lighter, 2 days sooner`. Then each answer on a line of its own, where they are only counted.
    pub fn texts(&self, range: &Range) -> [String; 3] {
        match LOCALE {
            Locale::English => english::did::texts(self, Names(range), &range.currency),
        }
    }
}
