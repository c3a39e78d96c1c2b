//! The questions that a customer answers.

use core::fmt;

use serde::{Serialize, Serializer};

use crate::range::BAYS_MOST;

/// A question; bays count from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Question {
    /// Where it stands, what has to suit.
    Place,
    /// Which model.
    Model,
    /// How wide.
    Width,
    /// How high.
    Height,
    /// How deep.
    Depth,
    /// How many bays.
    Bays,
    /// What a bay holds.
    Bay(u8),
    /// How the width is shared among the bays.
    Shares,
    /// The cable hole of a bay.
    Hole(u8),
    /// The device in a bay.
    Device(u8),
    /// Board of the back.
    Back,
    /// The finish.
    Finish,
    /// The corners of top and base.
    Corners,
    /// What it stands on.
    Plinth,
    /// How far bowed ends rise.
    Bow,
    /// Which ends are bowed.
    Bowed,
}

impl Question {
    /// Those that are asked once of a unit.
    pub const OF_UNIT: [Self; 13] = [
        Self::Place,
        Self::Model,
        Self::Width,
        Self::Height,
        Self::Depth,
        Self::Bays,
        Self::Shares,
        Self::Back,
        Self::Finish,
        Self::Corners,
        Self::Plinth,
        Self::Bow,
        Self::Bowed,
    ];

    /// Those that are asked of each bay.
    pub const fn of_bay(bay: u8) -> [Self; 3] {
        [Self::Bay(bay), Self::Hole(bay), Self::Device(bay)]
    }

    /// The bay that it asks about, if it is about one.
    pub const fn bay(self) -> Option<u8> {
        match self {
            Self::Bay(bay) | Self::Hole(bay) | Self::Device(bay) => Some(bay),
            _ => None,
        }
    }
}

impl fmt::Display for Question {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Place => f.write_str("place"),
            Self::Model => f.write_str("model"),
            Self::Width => f.write_str("width"),
            Self::Height => f.write_str("height"),
            Self::Depth => f.write_str("depth"),
            Self::Bays => f.write_str("bays"),
            Self::Bay(number) => write!(f, "bay-{number}"),
            Self::Shares => f.write_str("shares"),
            Self::Hole(number) => write!(f, "hole-{number}"),
            Self::Device(number) => write!(f, "device-{number}"),
            Self::Back => f.write_str("back"),
            Self::Finish => f.write_str("finish"),
            Self::Corners => f.write_str("corners"),
            Self::Plinth => f.write_str("plinth"),
            Self::Bow => f.write_str("bow"),
            Self::Bowed => f.write_str("bowed"),
        }
    }
}

/// A text that is no question.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotAQuestion(pub String);

impl NotAQuestion {
    /// What could have been written: the questions of a unit, and those of its first bay.
    pub fn known() -> [Vec<Question>; 2] {
        [Question::OF_UNIT.to_vec(), Question::of_bay(1).to_vec()]
    }
}

impl core::str::FromStr for Question {
    type Err = NotAQuestion;

    fn from_str(text: &str) -> Result<Self, NotAQuestion> {
        let of_bays = (1..=u8::MAX).take(BAYS_MOST).flat_map(Self::of_bay);
        let mut all = Self::OF_UNIT.into_iter().chain(of_bays);
        all.find(|question| question.to_string() == text).ok_or_else(|| NotAQuestion(text.chars().take(40).collect()))
    }
}

impl Serialize for Question {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The kind that stands after this one in the enum; a new one has to stand between its neighbours here to compile.
    fn next(question: Question) -> Option<Question> {
        Some(match question {
            Question::Place => Question::Model,
            Question::Model => Question::Width,
            Question::Width => Question::Height,
            Question::Height => Question::Depth,
            Question::Depth => Question::Bays,
            Question::Bays => Question::Bay(1),
            Question::Bay(_) => Question::Shares,
            Question::Shares => Question::Hole(1),
            Question::Hole(bay) => Question::Device(bay),
            Question::Device(_) => Question::Back,
            Question::Back => Question::Finish,
            Question::Finish => Question::Corners,
            Question::Corners => Question::Plinth,
            Question::Plinth => Question::Bow,
            Question::Bow => Question::Bowed,
            Question::Bowed => return None,
        })
    }

    #[test]
    fn every_question_is_read_and_named_where_none_is_understood() {
        let refusal = crate::words::file::Message::Question(&"breadth".parse::<Question>().unwrap_err()).text();
        let listed = [&Question::OF_UNIT[..], &Question::of_bay(1)].concat();
        let kinds: Vec<Question> = core::iter::successors(Some(Question::Place), |kind| next(*kind)).collect();
        for question in &kinds {
            let word = question.to_string();
            assert!(listed.contains(question), "{word} stands neither in OF_UNIT nor in of_bay");
            assert!(refusal.split([' ', ',']).any(|named| named == word), "{word}: {refusal}");
            assert_eq!(word.parse(), Ok(*question));
        }
        assert_eq!(kinds.len(), listed.len(), "a kind that was left out, or is listed twice");
        let last = u8::try_from(BAYS_MOST).unwrap();
        assert_eq!(format!("hole-{last}").parse(), Ok(Question::Hole(last)));
        for none in [format!("hole-{}", last + 1), "hole-0".into(), "bay".into(), "Width".into(), String::new()] {
            assert!(none.parse::<Question>().is_err(), "{none}");
        }
    }
}
