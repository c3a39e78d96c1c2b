//! The questions that a customer answers.

use core::fmt;

use serde::{Serialize, Serializer};

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
}

impl Question {
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
        }
    }
}

/// A text that is no question.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{0:?} is no question: width, height, depth, bays, shares, back, finish, corners, or bay-1, hole-1, device-1")]
pub struct NotAQuestion(String);

impl core::str::FromStr for Question {
    type Err = NotAQuestion;

    fn from_str(text: &str) -> Result<Self, NotAQuestion> {
        let bare = [Self::Place, Self::Model, Self::Width, Self::Height, Self::Depth, Self::Bays, Self::Shares];
        let bare = bare.into_iter().chain([Self::Back, Self::Finish, Self::Corners]);
        let numbered = (1..=9).flat_map(|bay| [Self::Bay(bay), Self::Hole(bay), Self::Device(bay)]);
        let mut all = bare.chain(numbered);
        all.find(|question| question.to_string() == text).ok_or_else(|| NotAQuestion(text.chars().take(40).collect()))
    }
}

impl Serialize for Question {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}
