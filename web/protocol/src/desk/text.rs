//! The texts of what passes to the order desk and back.

use slotwright_core::words::draft::Done;

use super::{Answer, Before, Opened, Person, Question, Report, Stored, Unit};
use crate::{Message, Parts, Writer};

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

impl Stored {
    fn write(&self, to: &mut Writer) {
        to.text(&self.id);
        to.text(&self.text);
        to.flag(self.elsewhere);
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(Self { id: from.owned()?, text: from.owned()?, elsewhere: from.flag()? })
    }
}

const DONE: [Option<Done>; 8] = [
    None,
    Some(Done::Unpicked),
    Some(Done::Added),
    Some(Done::Replaced),
    Some(Done::Renamed),
    Some(Done::Deleted),
    Some(Done::Restored),
    Some(Done::Unnamed),
];

const fn word(done: Option<Done>) -> &'static str {
    match done {
        None => "nothing",
        Some(Done::Unpicked) => "unpicked",
        Some(Done::Added) => "added",
        Some(Done::Replaced) => "replaced",
        Some(Done::Renamed) => "renamed",
        Some(Done::Deleted) => "deleted",
        Some(Done::Restored) => "restored",
        Some(Done::Unnamed) => "unnamed",
    }
}

impl Report {
    fn write(&self, to: &mut Writer) {
        to.text(word(self.done));
        to.text(&self.name);
        to.flag(self.back);
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        let own = from.text()?;
        let done = DONE.into_iter().find(|done| word(*done) == own)?;
        Some(Self { done, name: from.owned()?, back: from.flag()? })
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
            Self::Drafts { range, today, picked, report, stored } => {
                to.text("drafts");
                to.text(range);
                to.say(today);
                to.list(picked, |to, id| to.text(id));
                report.write(to);
                to.list(stored, |to, stored| stored.write(to));
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
            "drafts" => Self::Drafts {
                range: from.owned()?,
                today: from.parse()?,
                picked: from.list(Parts::owned)?,
                report: Report::read(from)?,
                stored: from.list(Stored::read)?,
            },
            "faults" => Self::Faults(from.owned()?),
            _ => return None,
        })
    }
}

impl Message for Answer {
    fn write(&self, to: &mut Writer) {
        match self {
            Self::File(name, ways) => {
                to.text("file");
                to.text(name);
                to.text(ways);
            }
            Self::Order(order) => {
                to.text("order");
                to.text(&order.said);
                to.choice(&order.choice);
                order.person.write(to);
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
            "file" => Self::File(from.owned()?, from.owned()?),
            "order" => {
                let (said, choice, person) = (from.owned()?, from.choice()?, Person::read(from)?);
                Self::Order(Box::new(Opened { said, choice, person }))
            }
            "shown" => Self::Shown(from.owned()?),
            "said" => Self::Said(from.owned()?),
            "no" => Self::No(from.owned()?),
            _ => return None,
        })
    }
}

#[cfg(test)]
mod tests {
    use slotwright_core::choice::Choice;
    use slotwright_core::range::Range;

    use super::*;
    use crate::passing::passes;

    fn unit() -> Unit {
        let text = include_str!("../../../ranges/fenland.toml");
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
        for done in DONE {
            let stored = |elsewhere| Stored { id: "t1".into(), text: "1\u{1f}fenland".into(), elsewhere };
            passes(Question::Drafts {
                range: range.clone(),
                today,
                picked: vec!["t1".into(), "d2".into()],
                report: Report { done, name: "Window, bowed".into(), back: true },
                stored: vec![stored(true), stored(false)],
            });
        }
        passes(Question::Faults(range));
        passes(Answer::File("fenland.json".into(), "<a>".into()));
        passes(Answer::Order(Box::new(Opened { said: "It is open.".into(), choice, person: person() })));
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
