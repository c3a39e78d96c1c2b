//! Entries that could not be read: while there is one, nothing is said of the unit as a whole.

use leptos::prelude::*;
use slotwright_core::choice::Choice;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::input::entry::{Expected, Refused};
use slotwright_core::solver::Size;
use slotwright_core::units::quantity::Dim;
use slotwright_core::words::page::Label;
use slotwright_core::words::{self, entry};

/// A field that a person types into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// A size of the unit.
    Size(Size),
    /// The height of the plinth.
    Plinth,
    /// The free wall.
    Wall,
    /// The ceiling.
    Ceiling,
    /// The screen on top.
    Screen,
    /// The goal of a price.
    Price,
    /// The goal of a weight.
    Weight,
    /// The goal of a day.
    Day,
}

impl Field {
    const ALL: [Self; 11] = [
        Self::Size(Size::Width),
        Self::Size(Size::Height),
        Self::Size(Size::Depth),
        Self::Size(Size::Bow),
        Self::Plinth,
        Self::Wall,
        Self::Ceiling,
        Self::Screen,
        Self::Price,
        Self::Weight,
        Self::Day,
    ];

    /// What it is called at the beginning of a sentence.
    pub const fn label(self) -> Label {
        match self {
            Self::Size(Size::Width) => Label::TheWidth,
            Self::Size(Size::Height) => Label::TheHeight,
            Self::Size(Size::Depth) => Label::TheDepth,
            Self::Size(Size::Bow) => Label::TheBow,
            Self::Plinth => Label::ThePlinth,
            Self::Wall => Label::TheFreeWall,
            Self::Ceiling => Label::TheCeiling,
            Self::Screen => Label::TheScreen,
            Self::Price => Label::ThePrice,
            Self::Weight => Label::TheWeight,
            Self::Day => Label::TheDay,
        }
    }

    /// Why it does not take what was typed.
    pub fn refused(self, typed: &str, currency: &str) -> Refused {
        let refused = match self {
            Self::Size(_) | Self::Plinth | Self::Wall | Self::Ceiling => entry::size(typed).err(),
            Self::Screen => entry::diagonal(typed).err(),
            Self::Price => entry::money(typed, currency).err(),
            Self::Weight => entry::mass(typed).err(),
            Self::Day => None,
        };
        refused.unwrap_or(Refused::Unread)
    }

    /// What it says then.
    pub fn wrong(self, refused: Refused) -> String {
        let expected = match self {
            Self::Size(_) | Self::Plinth | Self::Wall | Self::Ceiling => Expected::Size,
            Self::Screen => Expected::Diagonal,
            Self::Price => Expected::Money,
            Self::Weight => Expected::Mass,
            Self::Day => return Label::NoDay.text().into(),
        };
        words::refused(expected, refused)
    }

    const fn name(self) -> &'static str {
        self.label().text()
    }

    /// What a choice holds of it; nothing of a goal, which is no part of a choice.
    fn value(self, choice: &Choice) -> Option<i32> {
        match self {
            Self::Size(size) => Some(size.of(choice).in_tenths()),
            Self::Plinth => choice.plinth_mm.map(Dim::in_tenths),
            Self::Wall => choice.place.wall_mm.map(Dim::in_tenths),
            Self::Ceiling => choice.place.ceiling_mm.map(Dim::in_tenths),
            Self::Screen => choice.place.screen_tenth_inch.map(i32::from),
            Self::Price | Self::Weight | Self::Day => None,
        }
    }

    fn is_goal(self) -> bool {
        matches!(self, Self::Price | Self::Weight | Self::Day)
    }

    fn is_answered_by(self, change: &Change) -> bool {
        match self {
            // Another model begins with sizes of its own.
            Self::Size(size) => change.question().is_none_or(|question| question == size.question()),
            Self::Plinth => change.question().is_none_or(|question| question == Question::Plinth),
            Self::Wall => matches!(change, Change::WallMm(_)),
            Self::Ceiling => matches!(change, Change::CeilingMm(_)),
            Self::Screen => matches!(change, Change::ScreenTenthInch(_)),
            Self::Price | Self::Weight | Self::Day => false,
        }
    }
}

/// The fields whose entry could not be read, in the order in which they were typed: each with its name and its entry.
/// Texts as what the adviser tells, since each type in a signal is code of its own.
#[derive(Clone, Copy, Debug)]
pub struct Unread(RwSignal<Vec<Vec<String>>>);

/// Whether that is the name and the entry of a field.
fn is_of(unread: &[String], field: Field) -> bool {
    unread.first().is_some_and(|name| name == field.name())
}

impl Unread {
    /// Everything can be read.
    pub fn new() -> Self {
        Self(RwSignal::new(Vec::new()))
    }

    /// The entry of a field that could not be read.
    pub fn entry(self, field: Field) -> Option<String> {
        self.0.with(|unread| unread.iter().find(|known| is_of(known, field))?.get(1).cloned())
    }

    /// The field whose entry has waited longest for being mended.
    pub fn first(self) -> Option<Field> {
        self.first_of(|_| true)
    }

    /// The same of the unit's own: a wish that cannot be read says nothing of the unit that is there.
    pub fn first_of_unit(self) -> Option<Field> {
        self.first_of(|field| !field.is_goal())
    }

    fn first_of(self, wanted: fn(Field) -> bool) -> Option<Field> {
        let field = |unread: &Vec<String>| Field::ALL.into_iter().find(|field| is_of(unread, *field) && wanted(*field));
        self.0.with(|unread| unread.iter().find_map(field))
    }

    /// An entry could not be read.
    pub fn add(self, field: Field, entry: String) {
        self.0.update(|unread| {
            unread.retain(|known| !is_of(known, field));
            unread.push(vec![field.name().into(), entry]);
        });
    }

    /// The entry of a field is of no account any more.
    pub fn forget(self, field: Field) {
        self.retain(&|known| known != field);
    }

    /// A change gives values anew: what was typed in their place is gone.
    pub fn answer(self, change: &Change) {
        self.retain(&|field| !field.is_answered_by(change));
    }

    /// One choice takes the place of another.
    pub fn follow(self, before: &Choice, after: &Choice) {
        self.retain(&|field| field.value(before) == field.value(after));
    }

    /// All that a choice holds is given anew; goals stay as they were typed.
    pub fn forget_choice(self) {
        self.retain(&Field::is_goal);
    }

    /// Nothing is left of any entry.
    pub fn clear(self) {
        self.retain(&|_| false);
    }

    /// What reads is run again only if something goes.
    fn retain(self, stays: &dyn Fn(Field) -> bool) {
        for field in Field::ALL.into_iter().filter(|field| !stays(*field)) {
            if self.0.with_untracked(|unread| unread.iter().any(|known| is_of(known, field))) {
                self.0.update(|unread| unread.retain(|known| !is_of(known, field)));
            }
        }
    }
}
