//! The texts of what passes to the adviser and back.

use slotwright_core::input::wire;
use slotwright_core::rules::Rule;
use slotwright_core::rules::finding::Severity;
use slotwright_core::solver::Size;
use slotwright_core::solver::goals::Goal;
use slotwright_core::units::money::Money;
use slotwright_core::units::quantity::Dim;
use slotwright_core::words::did::Step;

use super::{About, Advice, Answer, Bounds, Cause, Explained, Going, LetGo, Outcome, Question, Wanted, Way};
use crate::{Message, Parts, Writer};

fn money(writer: &mut Writer, amount: Money) {
    writer.text(&wire::of_money(amount));
}

fn read_money(parts: &mut Parts<'_>) -> Option<Money> {
    parts.text().and_then(wire::money)
}

impl Bounds {
    fn write(&self, to: &mut Writer) {
        to.option(self.budget.as_ref(), |to, budget| money(to, *budget));
        to.option(self.by.as_ref(), Writer::say);
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(Self { budget: from.option(read_money)?, by: from.option(Parts::parse)? })
    }
}

impl About {
    fn write(&self, to: &mut Writer) {
        to.choice(&self.choice);
        to.list(&self.pins, Writer::say);
        self.bounds.write(to);
        to.say(&self.today);
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(Self {
            choice: from.choice()?,
            pins: from.list(Parts::parse)?,
            bounds: Bounds::read(from)?,
            today: from.parse()?,
        })
    }
}

impl Wanted {
    fn write(self, to: &mut Writer) {
        match self {
            Self::Answer(place) => {
                to.text("answer");
                to.say(&place);
            }
            Self::Size(size, value) => {
                to.say(&size.question());
                to.say(&value.in_tenths());
            }
        }
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        let word = from.text()?;
        if word == "answer" {
            return from.parse().map(Self::Answer);
        }
        let size = Size::ALL.into_iter().find(|size| size.question().to_string() == word)?;
        Some(Self::Size(size, Dim::tenths(from.parse()?)))
    }
}

fn write_goal(goal: Goal, to: &mut Writer) {
    match goal {
        Goal::Valid => to.text("valid"),
        Goal::Widest => to.text("widest"),
        Goal::Screen => to.text("screen"),
        Goal::Cheapest => to.text("cheapest"),
        Goal::Price(most) => {
            to.text("price");
            money(to, most);
        }
        Goal::Part(most) => {
            to.text("part");
            to.text(&wire::of_mass(most));
        }
        Goal::By(day) => {
            to.text("by");
            to.say(&day);
        }
    }
}

fn read_goal(from: &mut Parts<'_>) -> Option<Goal> {
    Some(match from.text()? {
        "valid" => Goal::Valid,
        "widest" => Goal::Widest,
        "screen" => Goal::Screen,
        "cheapest" => Goal::Cheapest,
        "price" => Goal::Price(read_money(from)?),
        "part" => Goal::Part(from.text().and_then(wire::mass)?),
        "by" => Goal::By(from.parse()?),
        _ => return None,
    })
}

impl Message for Question {
    fn write(&self, to: &mut Writer) {
        match self {
            Self::Range(text) => {
                to.text("range");
                to.text(text);
            }
            Self::Findings(about) => {
                to.text("findings");
                about.write(to);
            }
            Self::States(about) => {
                to.text("states");
                about.write(to);
            }
            Self::Why(about, wanted) => {
                to.text("why");
                about.write(to);
                wanted.write(to);
            }
            Self::Goal(about, goal) => {
                to.text("goal");
                about.write(to);
                write_goal(*goal, to);
            }
            Self::Did { before, after, today, step } => {
                to.text("did");
                to.choice(before);
                to.choice(after);
                to.say(today);
                to.text(step.word());
            }
        }
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(match from.text()? {
            "range" => Self::Range(from.owned()?),
            "findings" => Self::Findings(About::read(from)?),
            "states" => Self::States(About::read(from)?),
            "why" => Self::Why(About::read(from)?, Wanted::read(from)?),
            "goal" => Self::Goal(About::read(from)?, read_goal(from)?),
            "did" => Self::Did {
                before: from.choice()?,
                after: from.choice()?,
                today: from.parse()?,
                step: Step::of_word(from.text()?)?,
            },
            _ => return None,
        })
    }
}

impl Going {
    /// A letter: some hundred of them pass at once.
    const fn letter(self) -> char {
        match self {
            Self::Open => 'o',
            Self::Shifts => 'w',
            Self::Shut => 's',
            Self::Unfound => 'u',
        }
    }

    const fn of_letter(letter: char) -> Option<Self> {
        Some(match letter {
            'o' => Self::Open,
            'w' => Self::Shifts,
            's' => Self::Shut,
            'u' => Self::Unfound,
            _ => return None,
        })
    }

    fn write_all(all: &[Self], to: &mut Writer) {
        to.text(&all.iter().map(|going| going.letter()).collect::<String>());
    }

    fn read_all(from: &mut Parts<'_>) -> Option<Vec<Self>> {
        from.text()?.chars().map(Self::of_letter).collect()
    }
}

impl Way {
    fn write(&self, to: &mut Writer) {
        let Outcome { choice, let_go: LetGo { pins, budget, by } } = &self.outcome;
        to.text(&self.label);
        to.choice(choice);
        to.list(pins, Writer::say);
        to.flag(*budget);
        to.flag(*by);
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        let (label, choice) = (from.owned()?, from.choice()?);
        let let_go = LetGo { pins: from.list(Parts::parse)?, budget: from.flag()?, by: from.flag()? };
        Some(Self { label, outcome: Outcome { choice, let_go } })
    }
}

impl Cause {
    fn write(self, to: &mut Writer) {
        match self {
            // One program writes and reads it: the place of a rule is the same for both.
            Self::Rule(rule) => to.say(&(rule as u8)),
            Self::Budget => to.text("budget"),
            Self::Day => to.text("day"),
        }
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(match from.text()? {
            "budget" => Self::Budget,
            "day" => Self::Day,
            place => Self::Rule(*Rule::ALL.get(place.parse::<usize>().ok()?)?),
        })
    }
}

const SEVERITIES: [Severity; 3] = [Severity::Stops, Severity::Warns, Severity::Advises];

impl Advice {
    fn write(&self, to: &mut Writer) {
        self.cause.write(to);
        to.say(&self.about);
        to.say(&self.severity);
        for text in [&self.sentence, &self.why, &self.source] {
            to.text(text);
        }
        to.list(&self.ways, |to, way| way.write(to));
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(Self {
            cause: Cause::read(from)?,
            about: from.parse()?,
            severity: {
                let word = from.text()?;
                SEVERITIES.into_iter().find(|severity| severity.to_string() == word)?
            },
            sentence: from.owned()?,
            why: from.owned()?,
            source: from.owned()?,
            ways: from.list(Way::read)?,
        })
    }
}

impl Message for Answer {
    fn write(&self, to: &mut Writer) {
        match self {
            Self::Nothing => to.text(""),
            Self::Range(mark) => {
                to.text("range");
                to.say(mark);
            }
            Self::Findings(all) => {
                to.text("findings");
                to.list(all, |to, advice| advice.write(to));
            }
            Self::States(all) => {
                to.text("states");
                Going::write_all(all, to);
            }
            Self::Why(Explained { going, why, way }) => {
                to.text("why");
                Going::write_all(&[*going], to);
                to.text(why);
                to.option(way.as_ref(), |to, way| way.write(to));
            }
            Self::Goal(sentence, way) => {
                to.text("goal");
                to.text(sentence);
                to.option(way.as_ref(), |to, way| way.write(to));
            }
            Self::Did([what, effect, all]) => {
                to.text("did");
                to.text(what);
                to.text(effect);
                to.text(all);
            }
        }
    }

    fn read(from: &mut Parts<'_>) -> Option<Self> {
        Some(match from.text()? {
            "" => Self::Nothing,
            "range" => Self::Range(from.parse()?),
            "findings" => Self::Findings(from.list(Advice::read)?),
            "states" => Self::States(Going::read_all(from)?),
            "why" => Self::Why(Explained {
                going: Going::read_all(from)?.first().copied()?,
                why: from.owned()?,
                way: from.option(Way::read)?,
            }),
            "goal" => Self::Goal(from.owned()?, from.option(Way::read)?),
            "did" => Self::Did([from.owned()?, from.owned()?, from.owned()?]),
            _ => return None,
        })
    }
}

#[cfg(test)]
mod tests {
    use slotwright_core::choice::Choice;
    use slotwright_core::choice::question::Question as Pin;
    use slotwright_core::range::Range;
    use slotwright_core::units::quantity::Mass;

    use super::*;
    use crate::passing::passes;

    fn about() -> About {
        let range = Range::parse(include_str!("../../../ranges/fenland.toml")).unwrap();
        About {
            choice: Choice::first_of(&range).unwrap(),
            pins: vec![Pin::Width, Pin::Hole(2)],
            bounds: Bounds { budget: Some(Money::minor(120_050)), by: Some("2026-12-24".parse().unwrap()) },
            today: "2026-11-29".parse().unwrap(),
        }
    }

    #[test]
    fn every_question_passes() {
        let plain = About { pins: Vec::new(), bounds: Bounds::default(), ..about() };
        passes(Question::Range("[range]\nname = \"1:2\"".into()));
        passes(Question::Findings(about()));
        passes(Question::States(plain));
        passes(Question::Why(about(), Wanted::Answer(17)));
        for size in Size::ALL {
            passes(Question::Why(about(), Wanted::Size(size, Dim::tenths(12_345))));
        }
        for goal in [
            Goal::Valid,
            Goal::Widest,
            Goal::Screen,
            Goal::Cheapest,
            Goal::Price(Money::minor(9)),
            Goal::By(about().today),
        ] {
            passes(Question::Goal(about(), goal));
        }
        passes(Question::Goal(about(), Goal::Part(Mass::kg(12.5))));
        let (before, after) = (about().choice, about().choice);
        passes(Question::Did { before, after, today: about().today, step: Step::AfreshKept });
    }

    #[test]
    fn every_answer_passes() {
        let outcome =
            Outcome { choice: about().choice, let_go: LetGo { pins: vec![Pin::Bay(3)], budget: true, by: false } };
        let way = Way { label: "Make it 1\u{202f}400 mm wide".into(), outcome };
        let advice = |cause, severity| Advice {
            cause,
            about: Pin::Finish,
            severity,
            sentence: "One: 2".into(),
            why: String::new(),
            source: "three".into(),
            ways: vec![way.clone(), way.clone()],
        };
        passes(Answer::Nothing);
        passes(Answer::Range("a1b2c3d4".parse().unwrap()));
        passes(Answer::Findings(SEVERITIES.map(|severity| advice(Cause::Budget, severity)).to_vec()));
        passes(Answer::Findings(Rule::ALL.iter().map(|rule| advice(Cause::Rule(*rule), Severity::Stops)).collect()));
        passes(Answer::Findings(vec![advice(Cause::Day, Severity::Warns)]));
        passes(Answer::States(vec![Going::Open, Going::Shifts, Going::Shut, Going::Unfound]));
        passes(Answer::Why(Explained { going: Going::Shut, why: "Why".into(), way: Some(way.clone()) }));
        passes(Answer::Goal("It comes to".into(), Some(way)));
        passes(Answer::Goal(String::new(), None));
        passes(Answer::Did(["Height".into(), String::new(), "a\nb".into()]));
    }

    #[test]
    fn only_the_last_question_of_a_kind_is_waited_for() {
        let why = |wanted| Question::Why(about(), wanted);
        let width = |tenths| why(Wanted::Size(Size::Width, Dim::tenths(tenths)));
        assert!(width(1).replaces(&width(2)) && why(Wanted::Answer(1)).replaces(&why(Wanted::Answer(2))));
        assert!(!width(1).replaces(&why(Wanted::Answer(1))));
        assert!(!width(1).replaces(&why(Wanted::Size(Size::Depth, Dim::tenths(1)))));
        assert!(Question::States(about()).replaces(&Question::States(about())));
        assert!(!Question::States(about()).replaces(&Question::Findings(about())));
    }
}
