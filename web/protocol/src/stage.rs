//! What the page asks of the stage, and what that tells of itself. Nothing of it is answered: what is shown is told
//! whenever it has become another.

use slotwright_core::choice::Choice;
use slotwright_core::units::decimal::{Plain, read_decimal};

use crate::{Message, Parts, Writer};

/// A place to look from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum View {
    /// As furniture is photographed.
    Corner,
    /// Square on.
    Front,
    /// From above.
    Above,
}

/// What the page asks.
#[derive(Clone, Debug, PartialEq)]
pub enum Command {
    /// The range file's text: asked once, before all else.
    Range(String),
    /// Show a unit.
    Unit(Choice),
    /// The picture has this size.
    Extent {
        /// Its width in pixels of the page.
        across: f64,
        /// Its height in the same.
        down: f64,
        /// Device pixels for one of them.
        ratio: f64,
    },
    /// What the person's screen asks for.
    Mood {
        /// A dark page.
        dark: bool,
        /// No motion.
        still: bool,
    },
    /// Look from a place.
    Look(View),
    /// Turn by so much to the side and upwards, in radians.
    Turn(f64, f64),
    /// Move the picture by shares of its height.
    Shift(f64, f64),
    /// Come so many times nearer.
    Near(f64),
    /// A person comes or goes.
    Person,
    /// Doors open or shut.
    Leaves,
    /// Pull it apart, in hundredths.
    Apart(u8),
    /// Begin to build it up, or end that.
    Build,
    /// Go on building by itself, or stop.
    Play,
    /// One step of the building on, or back.
    Step {
        /// Whether it goes back.
        back: bool,
    },
}

/// What the stage tells.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum News {
    /// There is no picture, or none any more.
    Lost,
    /// There is one.
    Found,
    /// What is shown.
    Shown(Shown),
}

/// What is shown besides the picture.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Shown {
    /// Lines, figures and names over the picture, as SVG.
    pub lines: String,
    /// How the unit is shown, in words.
    pub words: String,
    /// Whether doors are open.
    pub open: bool,
    /// Whether a person stands by.
    pub person: bool,
    /// How far it is apart, in hundredths.
    pub apart: u8,
    /// The step of the assembly that is shown; none for the finished unit.
    pub step: Option<Step>,
}

/// A step of the assembly.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Step {
    /// What to do in it.
    pub sentence: String,
    /// Whether the assembly is playing.
    pub plays: bool,
    /// Whether it is the first step.
    pub first: bool,
    /// Whether it is the last one.
    pub last: bool,
}

impl View {
    const ALL: [Self; 3] = [Self::Corner, Self::Front, Self::Above];

    const fn word(self) -> &'static str {
        match self {
            Self::Corner => "corner",
            Self::Front => "front",
            Self::Above => "above",
        }
    }
}

/// To a thousandth: less is nothing that anybody sees.
fn figures(to: &mut Writer, word: &str, figures: &[f64]) {
    to.text(word);
    for figure in figures {
        to.say(&Plain::of(*figure, 3));
    }
}

fn figure(from: &mut Parts<'_>) -> Option<f64> {
    from.text().and_then(read_decimal)
}

impl Message for Command {
    fn write(&self, to: &mut Writer) {
        match *self {
            Self::Range(ref text) => {
                to.text("range");
                to.text(text);
            }
            Self::Unit(ref choice) => {
                to.text("unit");
                to.choice(choice);
            }
            Self::Extent { across, down, ratio } => figures(to, "extent", &[across, down, ratio]),
            Self::Mood { dark, still } => {
                to.text("mood");
                to.flag(dark);
                to.flag(still);
            }
            Self::Look(view) => {
                to.text("look");
                to.text(view.word());
            }
            Self::Turn(aside, up) => figures(to, "turn", &[aside, up]),
            Self::Shift(aside, up) => figures(to, "shift", &[aside, up]),
            Self::Near(times) => figures(to, "near", &[times]),
            Self::Person => to.text("person"),
            Self::Leaves => to.text("leaves"),
            Self::Apart(hundredths) => {
                to.text("apart");
                to.say(&hundredths);
            }
            Self::Build => to.text("build"),
            Self::Play => to.text("play"),
            Self::Step { back } => {
                to.text("step");
                to.flag(back);
            }
        }
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(match from.text()? {
            "range" => Self::Range(from.owned()?),
            "unit" => Self::Unit(from.choice()?),
            "extent" => Self::Extent { across: figure(from)?, down: figure(from)?, ratio: figure(from)? },
            "mood" => Self::Mood { dark: from.flag()?, still: from.flag()? },
            "look" => {
                let word = from.text()?;
                Self::Look(View::ALL.into_iter().find(|view| view.word() == word)?)
            }
            "turn" => Self::Turn(figure(from)?, figure(from)?),
            "shift" => Self::Shift(figure(from)?, figure(from)?),
            "near" => Self::Near(figure(from)?),
            "person" => Self::Person,
            "leaves" => Self::Leaves,
            "apart" => Self::Apart(from.parse()?),
            "build" => Self::Build,
            "play" => Self::Play,
            "step" => Self::Step { back: from.flag()? },
            _ => return None,
        })
    }
}

impl Step {
    fn write(&self, to: &mut Writer) {
        to.text(&self.sentence);
        for flag in [self.plays, self.first, self.last] {
            to.flag(flag);
        }
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(Self { sentence: from.owned()?, plays: from.flag()?, first: from.flag()?, last: from.flag()? })
    }
}

impl Message for News {
    fn write(&self, to: &mut Writer) {
        match self {
            Self::Lost => to.text("lost"),
            Self::Found => to.text("found"),
            Self::Shown(Shown { lines, words, open, person, apart, step }) => {
                to.text("shown");
                to.text(lines);
                to.text(words);
                to.flag(*open);
                to.flag(*person);
                to.say(apart);
                to.option(step.as_ref(), |to, step| step.write(to));
            }
        }
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(match from.text()? {
            "lost" => Self::Lost,
            "found" => Self::Found,
            "shown" => Self::Shown(Shown {
                lines: from.owned()?,
                words: from.owned()?,
                open: from.flag()?,
                person: from.flag()?,
                apart: from.parse()?,
                step: from.option(Step::read)?,
            }),
            _ => return None,
        })
    }
}

#[cfg(test)]
mod tests {
    use slotwright_core::range::Range;

    use super::*;
    use crate::passing::passes;

    #[test]
    fn every_command_passes() {
        let range = Range::parse(include_str!("../../ranges/fenland.toml")).unwrap();
        passes(Command::Range("1:2\u{1f}".into()));
        passes(Command::Unit(Choice::first_of(&range).unwrap()));
        passes(Command::Extent { across: 960.0, down: 540.0, ratio: 1.25 });
        for (dark, still) in [(false, true), (true, false)] {
            passes(Command::Mood { dark, still });
        }
        View::ALL.into_iter().map(Command::Look).for_each(passes);
        passes(Command::Turn(-0.15, 0.1));
        passes(Command::Shift(0.0, -0.05));
        passes(Command::Near(1.15));
        passes(Command::Apart(40));
        [Command::Person, Command::Leaves, Command::Build, Command::Play].into_iter().for_each(passes);
        for back in [true, false] {
            passes(Command::Step { back });
        }
    }

    #[test]
    fn all_that_is_told_passes() {
        let step = Step { sentence: "3 of 9".into(), last: true, ..Step::default() };
        for step in [None, Some(step)] {
            passes(News::Shown(Shown { words: "From above.".into(), open: true, apart: 40, step, ..Shown::default() }));
        }
        [News::Lost, News::Found].into_iter().for_each(passes);
    }
}
