//! What the page asks the order desk, and what that hands over.

use slotwright_core::choice::Choice;
use slotwright_core::units::day::Day;

use crate::{Message, Parts, Writer};

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
    /// Another unit, which stays saved.
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
    /// What is wrong with the text of a range file.
    Faults(String),
}

impl Question {
    /// Whether who asks this one does not wait for the other one any more: of two orders that are opened, or links that
    /// come, the later one counts. Whoever asks for a file gets it.
    pub fn replaces(&self, other: &Self) -> bool {
        match self {
            Self::Write(..) | Self::Solid(_) => false,
            Self::Read { .. } | Self::Link { .. } | Self::Sheet { .. } | Self::Came { .. } | Self::Faults(_) => {
                core::mem::discriminant(self) == core::mem::discriminant(other)
            }
        }
    }
}

/// An answer; what a file holds comes beside it, a text or bytes.
#[derive(Clone, Debug, PartialEq)]
pub enum Answer {
    /// A file of that name.
    File(String),
    /// What an order holds, and what came of opening it.
    Order {
        /// What came of it.
        said: String,
        /// What is chosen in it.
        choice: Choice,
        /// For whom it is.
        person: Person,
    },
    /// HTML to show.
    Shown(String),
    /// A sentence, or nothing to say.
    Said(String),
    /// Why not.
    No(String),
}

impl Unit {
    fn write(&self, to: &mut Writer) {
        to.text(&self.range);
        to.choice(&self.choice);
        to.say(&self.today);
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(Self { range: from.owned()?, choice: from.choice()?, today: from.parse()? })
    }
}

impl Person {
    fn write(&self, to: &mut Writer) {
        for text in [&self.name, &self.contact, &self.address, &self.remark] {
            to.text(text);
        }
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        let (name, contact, address, remark) = (from.owned()?, from.owned()?, from.owned()?, from.owned()?);
        Some(Self { name, contact, address, remark })
    }
}

impl Before {
    const ALL: [Self; 3] = [Self::Nothing, Self::Same, Self::Other];

    const fn word(self) -> &'static str {
        match self {
            Self::Nothing => "nothing",
            Self::Same => "same",
            Self::Other => "other",
        }
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        let word = from.text()?;
        Self::ALL.into_iter().find(|before| before.word() == word)
    }
}

impl Message for Question {
    fn write(&self, to: &mut Writer) {
        match self {
            Self::Write(unit, person) => {
                to.text("write");
                unit.write(to);
                person.write(to);
            }
            Self::Solid(unit) => {
                to.text("solid");
                unit.write(to);
            }
            Self::Read { range, file } => {
                to.text("read");
                to.text(range);
                to.text(file);
            }
            Self::Link { address, shared } => {
                to.text("link");
                to.text(address);
                to.flag(*shared);
            }
            Self::Sheet { unit, address } => {
                to.text("sheet");
                unit.write(to);
                to.text(address);
            }
            Self::Came { range, link, today, before } => {
                to.text("came");
                to.text(range);
                to.text(link);
                to.say(today);
                to.text(before.word());
            }
            Self::Faults(range) => {
                to.text("faults");
                to.text(range);
            }
        }
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(match from.text()? {
            "write" => Self::Write(Unit::read(from)?, Person::read(from)?),
            "solid" => Self::Solid(Unit::read(from)?),
            "read" => Self::Read { range: from.owned()?, file: from.owned()? },
            "link" => Self::Link { address: from.owned()?, shared: from.flag()? },
            "sheet" => Self::Sheet { unit: Unit::read(from)?, address: from.owned()? },
            "came" => Self::Came {
                range: from.owned()?,
                link: from.owned()?,
                today: from.parse()?,
                before: Before::read(from)?,
            },
            "faults" => Self::Faults(from.owned()?),
            _ => return None,
        })
    }
}

impl Message for Answer {
    fn write(&self, to: &mut Writer) {
        match self {
            Self::File(name) => {
                to.text("file");
                to.text(name);
            }
            Self::Order { said, choice, person } => {
                to.text("order");
                to.text(said);
                to.choice(choice);
                person.write(to);
            }
            Self::Shown(html) => {
                to.text("shown");
                to.text(html);
            }
            Self::Said(sentence) => {
                to.text("said");
                to.text(sentence);
            }
            Self::No(why) => {
                to.text("no");
                to.text(why);
            }
        }
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(match from.text()? {
            "file" => Self::File(from.owned()?),
            "order" => Self::Order { said: from.owned()?, choice: from.choice()?, person: Person::read(from)? },
            "shown" => Self::Shown(from.owned()?),
            "said" => Self::Said(from.owned()?),
            "no" => Self::No(from.owned()?),
            _ => return None,
        })
    }
}

#[cfg(test)]
mod tests {
    use slotwright_core::range::Range;

    use super::*;
    use crate::passing::passes;

    fn unit() -> Unit {
        let text = include_str!("../../ranges/fenland.toml");
        let choice = Choice::first_of(&Range::parse(text).unwrap()).unwrap();
        Unit { range: text.get(..40).unwrap().into(), choice, today: "2026-11-29".parse().unwrap() }
    }

    fn person() -> Person {
        let [name, contact, address, remark] =
            ["Ada Reed", "ada@example.org", "1 Dyke Lane\n\u{1f}Fenby", ""].map(String::from);
        Person { name, contact, address, remark }
    }

    #[test]
    fn every_question_and_every_answer_passes() {
        let Unit { range, choice, today } = unit();
        passes(Question::Write(unit(), person()));
        passes(Question::Solid(unit()));
        passes(Question::Read { range: range.clone(), file: "{}\u{1f}\0".into() });
        passes(Question::Link { address: "https://example.org/#1".into(), shared: true });
        passes(Question::Sheet { unit: unit(), address: "https://example.org/#1".into() });
        for before in Before::ALL {
            passes(Question::Came { range: range.clone(), link: "1/teasel".into(), today, before });
        }
        passes(Question::Faults(range));
        passes(Answer::File("fenland.json".into()));
        passes(Answer::Order { said: "It is open.".into(), choice, person: person() });
        passes(Answer::Shown("<p>".into()));
        passes(Answer::Said(String::new()));
        passes(Answer::No("Why".into()));
    }

    #[test]
    fn who_asks_for_a_file_gets_it() {
        let read = |file: &str| Question::Read { range: String::new(), file: file.into() };
        assert!(read("a").replaces(&read("b")));
        assert!(!read("a").replaces(&Question::Solid(unit())));
        assert!(!Question::Solid(unit()).replaces(&Question::Solid(unit())));
    }
}
