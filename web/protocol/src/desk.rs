//! What the page asks the order desk, and what that hands over.

mod text;

use slotwright_core::choice::Choice;
use slotwright_core::units::day::Day;
use slotwright_core::words::draft::Done;

/// A unit to make something of: the desk derives it anew.
#[derive(Clone, Debug, PartialEq)]
pub struct Unit {
    /// The range file's text.
    pub range: String,
    /// What is chosen.
    pub choice: Choice,
    /// The day of asking.
    pub today: Day,
}

/// For whom an order is, as it was typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Person {
    /// Who it is.
    pub name: String,
    /// An address of mail, or a number.
    pub contact: String,
    /// Where it goes, line by line.
    pub address: String,
    /// What else there is to say.
    pub remark: String,
}

/// What was there when a link came.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Before {
    /// Nothing that anybody had chosen.
    Nothing,
    /// The unit that the link is of.
    Same,
    /// Another unit, which is among the drafts.
    Other,
}

/// A question.
#[derive(Clone, Debug, PartialEq)]
pub enum Question {
    /// The unit as an order: its file.
    Write(Unit, Person),
    /// The unit as a solid: its file.
    Solid(Unit),
    /// What the text of an order's file holds, by the text of the range file.
    Read {
        /// The range file's text.
        range: String,
        /// The order's.
        file: String,
    },
    /// What is shown of a link.
    Link {
        /// The whole address.
        address: String,
        /// Whether the browser can share it.
        shared: bool,
    },
    /// The unit on a sheet of paper.
    Sheet {
        /// The unit.
        unit: Unit,
        /// The address that opens it.
        address: String,
    },
    /// What there is to say of a link that came.
    Came {
        /// The range file's text.
        range: String,
        /// What came.
        link: String,
        /// The day of asking.
        today: Day,
        /// What was there.
        before: Before,
    },
    /// What is kept in the browser, as a list or some of it side by side.
    Drafts {
        /// The range file's text.
        range: String,
        /// The day of asking.
        today: Day,
        /// What is ticked, by its names.
        picked: Vec<String>,
        /// What there is to tell.
        report: Report,
        /// All that is stored, first the present unit.
        stored: Vec<Stored>,
    },
    /// What is wrong with the text of a range file.
    Faults(String),
}

/// A draft as the browser stores it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stored {
    /// The name that it is stored by.
    pub id: String,
    /// Its text.
    pub text: String,
    /// Whether it is another tab's present unit.
    pub elsewhere: bool,
}

/// What there is to tell of a change of the drafts.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Report {
    /// What was done, if that is told.
    pub done: Option<Done>,
    /// The draft's name.
    pub name: String,
    /// Whether something can be brought back.
    pub back: bool,
}

impl Question {
    /// Whether who asks this one does not wait for the other one any more: of two orders that are opened, or links that
    /// come, the later one counts. Whoever asks for a file gets it.
    pub fn replaces(&self, other: &Self) -> bool {
        match self {
            Self::Write(..) | Self::Solid(_) => false,
            Self::Read { .. }
            | Self::Link { .. }
            | Self::Sheet { .. }
            | Self::Drafts { .. }
            | Self::Came { .. }
            | Self::Faults(_) => core::mem::discriminant(self) == core::mem::discriminant(other),
        }
    }
}

/// An answer; what a file holds comes beside it, a text or bytes.
#[derive(Clone, Debug, PartialEq)]
pub enum Answer {
    /// A file of that name, and what can be done with it, in HTML: `data-shared` stands where a button gives it to another
    /// program.
    File(String, String),
    /// An order that was opened.
    Order(Box<Opened>),
    /// HTML to show.
    Shown(String),
    /// A sentence, or nothing to say.
    Said(String),
    /// Why not.
    No(String),
}

/// What an order holds, and what came of opening it.
#[derive(Clone, Debug, PartialEq)]
pub struct Opened {
    /// What came of it.
    pub said: String,
    /// What is chosen in it.
    pub choice: Choice,
    /// For whom it is.
    pub person: Person,
}
