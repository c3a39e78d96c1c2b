//! What the page asks the adviser, and what that says.

mod text;

use slotwright_core::choice::Choice;
use slotwright_core::choice::link::Mark;
use slotwright_core::choice::question::Question as Pin;
use slotwright_core::rules::Rule;
use slotwright_core::rules::finding::Severity;
use slotwright_core::solver::Size;
use slotwright_core::solver::goals::Goal;
use slotwright_core::units::day::Day;
use slotwright_core::units::money::Money;
use slotwright_core::units::quantity::Dim;
use slotwright_core::words::did::Step;

/// What was given for a visit, which is no part of a choice.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Bounds {
    /// It costs no more, with tax.
    pub budget: Option<Money>,
    /// It arrives on that day or before.
    pub by: Option<Day>,
}

/// What a question is about: a choice, and what of it is kept whatever is asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct About {
    /// What is chosen.
    pub choice: Choice,
    /// The answers that are kept.
    pub pins: Vec<Pin>,
    /// What was given.
    pub bounds: Bounds,
    /// The day of asking.
    pub today: Day,
}

/// An answer that somebody wants to take.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// The one at that place among all of the choice's answers.
    Answer(u16),
    /// A size.
    Size(Size, Dim),
}

impl Wanted {
    /// Whether both are answers to questions of a kind, of which the page asks about one at a time.
    pub fn is_like(self, other: Self) -> bool {
        match (self, other) {
            (Self::Answer(_), Self::Answer(_)) => true,
            (Self::Size(own, _), Self::Size(other, _)) => own == other,
            (Self::Answer(_), Self::Size(..)) | (Self::Size(..), Self::Answer(_)) => false,
        }
    }
}

/// A question.
#[derive(Clone, Debug, PartialEq)]
pub enum Question {
    /// Asked once, with the range file's text: what do links call the range?
    Range(String),
    /// What is good to know, and what can be done about what stops the order?
    Findings(About),
    /// How does each answer go?
    States(About),
    /// Why does one answer not go alone, and how does it?
    Why(About, Wanted),
    /// Which is the nearest unit that meets a goal?
    Goal(About, Goal),
    /// What was answered anew, and what did that do?
    Did {
        /// The choice before.
        before: Choice,
        /// The present one.
        after: Choice,
        /// The day of asking.
        today: Day,
        /// By what kind of step.
        step: Step,
    },
}

impl Question {
    /// The choice that it is about; none if it is about the range.
    pub fn choice(&self) -> Option<&Choice> {
        match self {
            Self::Range(_) => None,
            Self::Findings(about) | Self::States(about) | Self::Why(about, _) | Self::Goal(about, _) => {
                Some(&about.choice)
            }
            Self::Did { after, .. } => Some(after),
        }
    }

    /// Whether who asks this one does not wait for the other one any more.
    pub fn replaces(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Why(_, own), Self::Why(_, other)) => own.is_like(*other),
            _ => core::mem::discriminant(self) == core::mem::discriminant(other),
        }
    }
}

/// How an answer goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Going {
    /// As things are.
    Open,
    /// With other changes.
    Shifts,
    /// Not at all, or not with what is kept.
    Shut,
    /// Nobody knows a way, and nobody knows that there is none.
    Unfound,
}

/// What is kept no longer.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct LetGo {
    /// Answers.
    pub pins: Vec<Pin>,
    /// The budget.
    pub budget: bool,
    /// The day.
    pub by: bool,
}

/// What comes of something that can be done.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// The choice.
    pub choice: Choice,
    /// What is let go for it.
    pub let_go: LetGo,
}

/// Something that can be done.
#[derive(Clone, Debug, PartialEq)]
pub struct Way {
    /// What to press.
    pub label: String,
    /// What comes of it.
    pub outcome: Outcome,
}

/// What is behind a finding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cause {
    /// A rule.
    Rule(Rule),
    /// The budget of the visit.
    Budget,
    /// Its day.
    Day,
}

/// What is said of a finding.
#[derive(Clone, Debug, PartialEq)]
pub struct Advice {
    /// What is behind it.
    pub cause: Cause,
    /// The question concerned.
    pub about: Pin,
    /// How much it matters.
    pub severity: Severity,
    /// The sentence.
    pub sentence: String,
    /// Why it is asked.
    pub why: String,
    /// Where its figures come from.
    pub source: String,
    /// What can be done about it.
    pub ways: Vec<Way>,
}

/// What is told of one answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Explained {
    /// How it goes.
    pub going: Going,
    /// Why not alone; nothing if it does.
    pub why: String,
    /// How to take it all the same.
    pub way: Option<Way>,
}

/// An answer.
#[derive(Clone, Debug, PartialEq)]
pub enum Answer {
    /// The question was not understood, or is about nothing that there is.
    Nothing,
    /// What links call the range.
    Range(Mark),
    /// What is said of each finding.
    Findings(Vec<Advice>),
    /// How each answer of each question goes, in their order.
    States(Vec<Going>),
    /// What is told of one answer.
    Why(Explained),
    /// What a goal comes to, and how to get there.
    Goal(String, Option<Way>),
    /// What was answered anew, what that did, and each answer on a line of its own where these are only counted.
    Did([String; 3]),
}
