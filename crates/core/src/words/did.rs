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

/// A change: its answers, and what the unit comes to before and after; nothing where it cannot be made.
#[derive(Clone, Copy, Debug)]
pub struct Did<'a> {
    /// The answers that differ.
    pub changed: &'a [Changed],
    /// Whether another model is as it was left earlier.
    pub recalled: bool,
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
