//! Sets of questions, in the order of their importance: what a person would rather see changed comes first.

use crate::choice::BAYS_MOST;
use crate::choice::question::Question;

/// A set of questions.
///
/// Sets of one size are compared by their most important question, then by the next.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct QuestionSet(u64);

/// Bays of which questions are told apart; all beyond them are one.
const BAYS: u8 = 7;

const _: () = assert!(BAYS_MOST < BAYS as usize, "the last one stands for all bays beyond the most");

/// The first place of a question that each bay has.
const HOLES: u8 = 7;
const FILLS: u8 = HOLES + BAYS;
const DEVICES: u8 = FILLS + BAYS + 4;

/// The place of a question: the less important it is, the lower.
// Our own order: what nobody sees first, then sizes, then what the unit is for.
pub(crate) const fn place(question: Question) -> u8 {
    const fn of(first: u8, bay: u8) -> u8 {
        let bay = if bay == 0 { 0 } else { bay - 1 };
        first + if bay < BAYS { bay } else { BAYS - 1 }
    }
    match question {
        Question::Corners => 0,
        Question::Back => 1,
        Question::Shares => 2,
        Question::Plinth => 3,
        Question::Depth => 4,
        Question::Height => 5,
        Question::Width => 6,
        Question::Hole(bay) => of(HOLES, bay),
        Question::Bay(bay) => of(FILLS, bay),
        Question::Bays => FILLS + BAYS,
        Question::Bowed => FILLS + BAYS + 1,
        Question::Bow => FILLS + BAYS + 2,
        Question::Finish => FILLS + BAYS + 3,
        Question::Device(bay) => of(DEVICES, bay),
        Question::Place => DEVICES + BAYS,
        Question::Model => DEVICES + BAYS + 1,
    }
}

/// The question at a place.
pub(crate) const fn question(place: u8) -> Question {
    const LAST_HOLE: u8 = HOLES + BAYS - 1;
    const LAST_FILL: u8 = FILLS + BAYS - 1;
    const LAST_DEVICE: u8 = DEVICES + BAYS - 1;
    const COUNT: u8 = FILLS + BAYS;
    const BOWED: u8 = COUNT + 1;
    const BOW: u8 = COUNT + 2;
    const FINISH: u8 = COUNT + 3;
    const PLACE: u8 = DEVICES + BAYS;
    match place {
        0 => Question::Corners,
        1 => Question::Back,
        2 => Question::Shares,
        3 => Question::Plinth,
        4 => Question::Depth,
        5 => Question::Height,
        6 => Question::Width,
        HOLES..=LAST_HOLE => Question::Hole(place - HOLES + 1),
        FILLS..=LAST_FILL => Question::Bay(place - FILLS + 1),
        COUNT => Question::Bays,
        BOWED => Question::Bowed,
        BOW => Question::Bow,
        FINISH => Question::Finish,
        DEVICES..=LAST_DEVICE => Question::Device(place - DEVICES + 1),
        PLACE => Question::Place,
        _ => Question::Model,
    }
}

impl QuestionSet {
    /// How many places there are.
    pub(crate) const PLACES: usize = (DEVICES + BAYS) as usize + 2;

    /// No question.
    pub(crate) const NONE: Self = Self(0);

    /// The questions at these places.
    pub(crate) const fn at(place: u8) -> Self {
        Self(1 << place)
    }

    /// A question alone.
    pub(crate) const fn of(asked: Question) -> Self {
        Self::at(place(asked))
    }

    /// All these questions.
    pub(crate) fn of_all(asked: &[Question]) -> Self {
        asked.iter().fold(Self::NONE, |all, asked| all.and(Self::of(*asked)))
    }

    /// Every question.
    pub(crate) const fn all() -> Self {
        Self((1 << Self::PLACES) - 1)
    }

    /// The questions of a bay.
    pub(crate) const fn of_bay(bay: u8) -> Self {
        Self::of(Question::Bay(bay)).and(Self::of(Question::Hole(bay))).and(Self::of(Question::Device(bay)))
    }

    /// Both together.
    pub(crate) const fn and(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }

    /// What both have.
    pub(crate) const fn meeting(self, other: Self) -> Self {
        Self(self.0 & other.0)
    }

    /// All but those of another set.
    pub(crate) const fn minus(self, other: Self) -> Self {
        Self(self.0 & !other.0)
    }

    /// All but the one at a place.
    pub(crate) const fn without(self, place: u8) -> Self {
        self.minus(Self::at(place))
    }

    /// Whether the one at a place is in it.
    pub(crate) const fn has(self, place: u8) -> bool {
        self.0 & (1 << place) != 0
    }

    /// How many of its places are before that one.
    pub(crate) const fn before(self, place: u8) -> usize {
        (self.0 & ((1 << place) - 1)).count_ones() as usize
    }

    /// How many there are.
    pub(crate) const fn len(self) -> u32 {
        self.0.count_ones()
    }

    /// Whether there is none.
    pub(crate) const fn is_empty(self) -> bool {
        self.0 == 0
    }

    /// The place of the most important one.
    pub(crate) const fn last(self) -> Option<u8> {
        match self.0.checked_ilog2() {
            #[expect(clippy::cast_possible_truncation, reason = "below 64")]
            Some(place) => Some(place as u8),
            None => None,
        }
    }

    /// All places, the least important first.
    pub(crate) fn places(self) -> impl Iterator<Item = u8> + Clone {
        let mut left = self;
        core::iter::from_fn(move || {
            #[expect(clippy::cast_possible_truncation, reason = "at most 64")]
            let place = left.0.trailing_zeros() as u8;
            (!left.is_empty()).then(|| {
                left = left.without(place);
                place
            })
        })
    }
}
