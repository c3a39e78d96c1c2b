//! What is said of drafts: in their list, and side by side.

use crate::choice::Fill;
use crate::units::money::Money;
use crate::units::quantity::Dim;

/// A text about drafts; names are those that people gave.
#[derive(Clone, Copy, Debug)]
pub enum Message<'a> {
    /// The title of the list.
    Title,
    /// A button that closes it.
    Close,
    /// The present unit, as a heading.
    ThisUnit,
    /// That it is saved, whether it is kept or not.
    SavedAnyhow,
    /// The field with the name that it will have.
    Name,
    /// A button that keeps a copy of it.
    Keep,
    /// The heading of all that is kept beside it.
    KeptHere,
    /// There is none of that yet, and what it is good for.
    NoneYet,
    /// The field with a draft's name.
    NameOf(&'a str),
    /// What a draft is called that has no name: model, width and height.
    Unnamed(&'a str, Dim, Dim),
    /// It was left for another unit.
    Left,
    /// It is another tab's.
    OtherTab,
    /// Price, weight and day.
    Figures(&'a str, &'a str, &'a str),
    /// The price when it was kept, and now.
    OtherPrice {
        /// When it was kept.
        then: Money,
        /// Now.
        now: Money,
        /// In which currency.
        currency: &'a str,
    },
    /// It could be ordered when it was kept, and cannot be made now.
    NoLonger(&'a str),
    /// It cannot be made as it is.
    Unmade(&'a str),
    /// The range does not have its model.
    NoModel(&'a str),
    /// What can be done with a draft, as a button says it.
    Do(Deed),
    /// The same with the draft's name.
    DoWith(Deed, &'a str),
    /// What was done, with the draft's name.
    Done(Done, &'a str),
    /// A button that brings back what went last.
    BringBack,
    /// A button that shows what was picked side by side.
    Compare,
    /// How many have to be picked for that.
    PickSome,
    /// A button for a new visitor, and what it does.
    NewVisitor,
    /// What that does.
    NewVisitorMeans,
    /// The title of drafts side by side.
    SideBySide,
    /// How many of them there are, where not all are in sight.
    MoveToSee(u8),
    /// A button that leads back to the list.
    BackToList,
    /// How differences are marked.
    Marked,
    /// Stands before a value that differs from the first, for those who do not see its mark.
    Differs,
    /// The name of a row.
    Row(Row),
    /// What a bay holds.
    Bay {
        /// What it is.
        fill: Fill,
        /// The name of its hole.
        hole: Option<&'a str>,
        /// The name of the device in it.
        device: Option<&'a str>,
    },
    /// Corners without a radius.
    Square,
    /// It stands on its base.
    NoPlinth,
    /// What one loses and what it gains against another.
    Against {
        /// The name of the one.
        name: &'a str,
        /// The name of the other.
        against: &'a str,
        /// What the one has not.
        lost: &'a [Feature<'a>],
        /// What the other has not.
        gained: &'a [Feature<'a>],
    },
    /// What one does not suit: its name, and the sentence.
    Unsuited(&'a str, &'a str),
}

/// What can be done with a draft.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Deed {
    /// Go on with it from the list.
    Open,
    /// Make another one of it.
    Double,
    /// Its link to take away.
    Link,
    /// Take it from the list.
    Delete,
    /// Pick it to be compared.
    Pick,
    /// Go on with it once it was compared.
    GoOn,
}

/// What was done with a draft.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Done {
    /// The present unit is among them, or another one of a draft.
    Added,
    /// The same, in the place of one that had the name.
    Replaced,
    /// It has another name.
    Renamed,
    /// It is gone.
    Deleted,
    /// It is there again.
    Restored,
    /// Nothing: there was no name.
    Unnamed,
    /// Nothing: too few or too many were picked.
    Unpicked,
}

/// A row of drafts side by side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Row {
    /// Which model.
    Model,
    /// Price with tax.
    Price,
    /// Weight of the whole.
    Weight,
    /// The day on which it arrives.
    Day,
    /// Overall width.
    Width,
    /// Overall height.
    Height,
    /// Overall depth.
    Depth,
    /// The finish.
    Finish,
    /// The back's board.
    Back,
    /// The corners.
    Corners,
    /// What it stands on.
    Plinth,
    /// The ends.
    Ends,
    /// A bay, counted from 1.
    Bay(usize),
}

/// What a unit has that another one has not, or has less of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Feature<'a> {
    /// It can be made.
    Made,
    /// So many bays.
    Bays(u8),
    /// So many doors.
    Doors(u8),
    /// So many shelves.
    Shelves(u8),
    /// So many cable holes.
    Holes(u8),
    /// The place of a device.
    Device(&'a str),
}
