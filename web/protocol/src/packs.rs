//! What the workshop's page asks of the worker that makes packs, and what that tells. Files come beside a question and beside an
//! answer, as bytes.

use crate::{Message, Parts, Writer};

/// What was typed or picked of a setting, by its name; the worker made the fields.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Field {
    /// Its name.
    pub name: String,
    /// What stands in it.
    pub text: String,
}

/// What is said of a setting.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Told {
    /// Its name.
    pub name: String,
    /// The sentence.
    pub text: String,
    /// Whether it was not taken.
    pub wrong: bool,
}

/// What is taken away as a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum What {
    /// All of the pack.
    Pack,
    /// The files whose path has this in it: one by itself, several as one file.
    Some(String),
    /// Each document by itself, to be printed.
    Documents,
}

/// What was found by the code of a label.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Found {
    /// What it is, in a sentence.
    pub told: String,
    /// The number of its order; none for an offcut.
    pub order: Option<u32>,
    /// Its mark.
    pub mark: String,
    /// Its lot, by its place, and its sheet; none if it lies on none.
    pub sheet: Option<(u32, u32)>,
}

/// A question.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Question {
    /// The page is there, with the text of the range file.
    Begin(String),
    /// Files came, of these names.
    Files(Vec<String>),
    /// The file that came as that goes out again.
    Leave(u32),
    /// All settings as they are now.
    Set(Vec<Field>),
    /// Better nests are looked for, or no longer.
    Look(bool),
    /// Something is taken away.
    Take(What),
    /// What is being written is not wanted any more.
    Halt,
    /// The code of a label was read.
    Find(String),
}

impl Question {
    /// Whether what is shown becomes another: answers about what was there before come too late then.
    pub const fn changes(&self) -> bool {
        match self {
            Self::Begin(_) | Self::Files(_) | Self::Leave(_) | Self::Set(_) => true,
            Self::Look(_) | Self::Take(_) | Self::Halt | Self::Find(_) => false,
        }
    }
}

/// The sheets of one board in one finish.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Lot {
    /// What its tab says.
    pub name: String,
    /// Its sheets as HTML.
    pub html: String,
}

/// All that is shown.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Shown {
    /// What is said of each setting.
    pub told: Vec<Told>,
    /// The orders as HTML.
    pub orders: String,
    /// The lots.
    pub lots: Vec<Lot>,
    /// What there is to make as HTML.
    pub figures: String,
    /// What was done, in a sentence.
    pub done: String,
    /// Whether better nests are looked for.
    pub looks: bool,
    /// Whether there is a pack.
    pub packed: bool,
}

/// An answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    /// The range was read: the name of the workshop, and the fields of the settings as HTML.
    Begun(String, String),
    /// Everything anew.
    Shown(Box<Shown>),
    /// How far it is, while nothing else has changed: what was done, and whether it looks on.
    Done(String, bool),
    /// How far the writing is, in a sentence.
    Writing(String),
    /// It was halted.
    Halted,
    /// Files of these names.
    Files(Vec<String>),
    /// Documents to be printed: what people call each.
    Documents(Vec<String>),
    /// What was found.
    Found(Found),
    /// Why not.
    No(String),
}

impl Field {
    fn write(&self, to: &mut Writer) {
        to.text(&self.name);
        to.text(&self.text);
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(Self { name: from.owned()?, text: from.owned()? })
    }
}

impl Message for Question {
    fn write(&self, to: &mut Writer) {
        match self {
            Self::Begin(range) => {
                to.text("begin");
                to.text(range);
            }
            Self::Files(names) => {
                to.text("files");
                to.list(names, |to, name| to.text(name));
            }
            Self::Leave(at) => {
                to.text("leave");
                to.say(at);
            }
            Self::Set(fields) => {
                to.text("set");
                to.list(fields, |to, field| field.write(to));
            }
            Self::Look(on) => {
                to.text("look");
                to.flag(*on);
            }
            Self::Halt => to.text("halt"),
            Self::Find(code) => {
                to.text("find");
                to.text(code);
            }
            Self::Take(What::Pack) => to.text("pack"),
            Self::Take(What::Documents) => to.text("documents"),
            Self::Take(What::Some(path)) => {
                to.text("some");
                to.text(path);
            }
        }
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(match from.text()? {
            "begin" => Self::Begin(from.owned()?),
            "files" => Self::Files(from.list(Parts::owned)?),
            "leave" => Self::Leave(from.parse()?),
            "set" => Self::Set(from.list(Field::read)?),
            "look" => Self::Look(from.flag()?),
            "halt" => Self::Halt,
            "find" => Self::Find(from.owned()?),
            "pack" => Self::Take(What::Pack),
            "documents" => Self::Take(What::Documents),
            "some" => Self::Take(What::Some(from.owned()?)),
            _ => return None,
        })
    }
}

impl Found {
    fn write(&self, to: &mut Writer) {
        to.text(&self.told);
        to.text(&self.mark);
        to.list(self.order.as_slice(), Writer::say);
        to.list(self.sheet.as_slice(), |to, (lot, sheet)| {
            to.say(lot);
            to.say(sheet);
        });
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        let [told, mark] = [from.owned()?, from.owned()?];
        let order = from.list(Parts::parse)?.pop();
        let sheet = from.list(|from| Some((from.parse()?, from.parse()?)))?.pop();
        Some(Self { told, order, mark, sheet })
    }
}

impl Shown {
    fn write(&self, to: &mut Writer) {
        for text in [&self.orders, &self.figures, &self.done] {
            to.text(text);
        }
        to.list(&self.told, |to, told| {
            to.text(&told.name);
            to.text(&told.text);
            to.flag(told.wrong);
        });
        to.list(&self.lots, |to, lot| {
            to.text(&lot.name);
            to.text(&lot.html);
        });
        to.flag(self.looks);
        to.flag(self.packed);
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        let [orders, figures, done] = [from.owned()?, from.owned()?, from.owned()?];
        Some(Self {
            orders,
            figures,
            done,
            told: from.list(|from| Some(Told { name: from.owned()?, text: from.owned()?, wrong: from.flag()? }))?,
            lots: from.list(|from| Some(Lot { name: from.owned()?, html: from.owned()? }))?,
            looks: from.flag()?,
            packed: from.flag()?,
        })
    }
}

impl Message for Answer {
    fn write(&self, to: &mut Writer) {
        match self {
            Self::Begun(workshop, settings) => {
                to.text("begun");
                to.text(workshop);
                to.text(settings);
            }
            Self::Shown(shown) => {
                to.text("shown");
                shown.write(to);
            }
            Self::Done(done, looks) => {
                to.text("done");
                to.text(done);
                to.flag(*looks);
            }
            Self::Writing(told) => {
                to.text("writing");
                to.text(told);
            }
            Self::Halted => to.text("halted"),
            Self::Files(names) => {
                to.text("files");
                to.list(names, |to, name| to.text(name));
            }
            Self::Documents(names) => {
                to.text("documents");
                to.list(names, |to, name| to.text(name));
            }
            Self::Found(found) => {
                to.text("found");
                found.write(to);
            }
            Self::No(why) => {
                to.text("no");
                to.text(why);
            }
        }
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(match from.text()? {
            "begun" => Self::Begun(from.owned()?, from.owned()?),
            "shown" => Self::Shown(Box::new(Shown::read(from)?)),
            "done" => Self::Done(from.owned()?, from.flag()?),
            "writing" => Self::Writing(from.owned()?),
            "halted" => Self::Halted,
            "files" => Self::Files(from.list(Parts::owned)?),
            "documents" => Self::Documents(from.list(Parts::owned)?),
            "found" => Self::Found(Found::read(from)?),
            "no" => Self::No(from.owned()?),
            _ => return None,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::passing::passes;

    #[test]
    fn questions_pass() {
        let field = || Field { name: "measured/birch-18".into(), text: "17.6 17,7:\n".into() };
        for question in [
            Question::Begin("[range]\n".into()),
            Question::Files(vec!["a.json".into(), "\u{e4}:1.json".into()]),
            Question::Leave(3),
            Question::Set(vec![field(), Field::default()]),
            Question::Look(true),
            Question::Look(false),
            Question::Halt,
            Question::Find("0a1b2c3d/top".into()),
            Question::Take(What::Pack),
            Question::Take(What::Documents),
            Question::Take(What::Some("labels.pdf".into())),
        ] {
            passes(question);
        }
    }

    #[test]
    fn answers_pass() {
        let lot = Lot { name: "Clear, 18 mm: 5".into(), html: "<p>1:</p>".into() };
        let told = vec![Told { name: "cutter".into(), text: "no length".into(), wrong: true }];
        let shown = Shown { lots: vec![lot], told, looks: true, done: "done".into(), ..Shown::default() };
        passes(Answer::Shown(Box::new(shown)));
        passes(Answer::Begun("Odd".into(), "<label>".into()));
        passes(Answer::Done("3 orders".into(), true));
        passes(Answer::Writing("40 %".into()));
        passes(Answer::Halted);
        passes(Answer::Files(vec!["pack.zip".into()]));
        passes(Answer::Documents(vec!["1 Ada: delivery".into(), "2".into()]));
        passes(Answer::No("why".into()));
        for sheet in [Some((0, 3)), None] {
            let (told, mark, order) = ("2-07: here".into(), "2-07".into(), sheet.map(|_| 2));
            passes(Answer::Found(Found { told, order, mark, sheet }));
        }
    }
}
