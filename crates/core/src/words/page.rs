//! What the page says beside findings, changes and names: headings, buttons, notices, and messages with figures.

use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::choice::{Bowed, Fill};
use crate::input::entry::Refused;
use crate::units::day::Day;
use crate::units::money::Money;
use crate::units::quantity::{Dim, Mass};

/// A text of the page that holds no figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[expect(missing_docs, reason = "each says in the catalogue what it stands for")]
pub enum Label {
    // The page as a whole.
    Skip,
    SkipToOrder,
    Questions,
    Cautions,
    Close,
    Mm,
    Kg,
    Inch,
    // Header and notices.
    OpenOrder,
    TakeItBack,
    SeeStops,
    Offline,
    Undo,
    Redo,
    BeginAfresh,
    Menu,
    Print,
    NothingOrdered,
    BuiltInRange,
    TryAgain,
    FetchingRange,
    RangeNotFetched,
    RangeUnread,
    RangeSilent,
    ForTheWorkshop,
    WithoutAdvice,
    FileUnread,
    FileNotSaved,
    FileNotShared,
    // Questions.
    WhereItStands,
    HowBig,
    WhatInEachBay,
    HowItLooks,
    FreeWall,
    Ceiling,
    ScreenOnTop,
    PlugToPass,
    Any,
    Model,
    Width,
    Height,
    Depth,
    BayCount,
    BayToLookAt,
    ShareOfWidth,
    PlaceOfHole,
    NoHole,
    NoDevice,
    Finish,
    Back,
    Corners,
    Square,
    Plinth,
    NoPlinth,
    /// Stands in a field that holds no size.
    Without,
    WithinHeight,
    Bow,
    BowedEnds,
    BothEnds,
    LeftEnd,
    RightEnd,
    Keep,
    // Fields at the beginning of a sentence.
    TheWidth,
    TheHeight,
    TheDepth,
    TheBow,
    ThePlinth,
    TheFreeWall,
    TheCeiling,
    TheScreen,
    ThePrice,
    TheWeight,
    TheDay,
    // Lines of what was found.
    CannotBeMade,
    Mind,
    Why,
    // Goals.
    FindOneThat,
    IsWidest,
    TakesScreen,
    CostsLeast,
    CostsAtMost,
    HasPartsUpTo,
    IsThereBy,
    NoDay,
    // The stage.
    Drawing,
    View,
    Solid,
    Sheet,
    Elevation,
    Plan,
    Section,
    NothingToDraw,
    NoSolid,
    Corner,
    Front,
    FromAbove,
    TurnLeft,
    TurnRight,
    LookFromHigher,
    LookFromLower,
    Nearer,
    Farther,
    DoorsOpen,
    Person,
    BuildItUp,
    StepBack,
    StepOn,
    Steps,
    Play,
    Pause,
    SceneKeys,
    LookFrom,
    Show,
    PullApart,
    Apart,
    More,
    // Taking it away, and standing it in the room.
    TakeAway,
    SaveSolid,
    StandInRoom,
    /// The device cannot do that.
    NoRoom,
    UnmadeNotWritten,
    WritingSolid,
    MakingSolid,
    ViewerNotLoaded,
    InYourRoom,
    RoomCautions,
    StandItHere,
    // The link.
    Link,
    MakingLink,
    LinkCopied,
    LinkNotCopied,
    // Drafts.
    Drafts,
    OpeningDrafts,
    Saved,
    Saving,
    NotSaved,
    OwnUnit,
    LeftUnit,
    StorageFull,
    StorageShut,
    ClearedForVisitor,
    // The strip.
    PriceWithTax,
    Weight,
    WithYouBy,
    NotJudgedYet,
    VerdictUnmakeable,
    NotOrderedNow,
    CanBeMade,
    MadeButUnsuited,
    Which,
    NoRangeFile,
    DateIsWrong,
    // The order.
    OrderSpec,
    Price,
    TotalWithTax,
    DoneBy,
    Material,
    Making,
    PackingAndCarriage,
    Tax,
    ForTheDelivery,
    Name,
    Contact,
    Address,
    Remark,
    SaveOrder,
    WritingOrder,
    DeskNotLoaded,
    DeskSilent,
}

/// A text of the page with what it is about.
#[derive(Clone, Copy, Debug)]
pub enum Message<'a> {
    /// The model that was chosen last time is gone.
    ModelGone(&'a str),
    /// Whose range it is.
    RangeNamed(&'a str),
    /// The device says that it is that day, which makes no sense.
    WrongClock(Day),
    /// A button that keeps the answer to a question.
    Keep(Question),
    /// A bay's card.
    BayCard(usize, Fill),
    /// What a bay holds, as a question.
    BayHolds(usize),
    /// Which cable hole a bay has, as a question.
    BayHole(usize),
    /// Which device stands in a bay, as a question.
    BayDevice(usize),
    /// Corners of that radius.
    Radius(Dim),
    /// Ends that are bowed so far.
    BowedBy(Dim, Bowed),
    /// A button for one less of what is named.
    Less(&'a str),
    /// A button for one more of what is named.
    More(&'a str),
    /// A button for one step less of what is named.
    StepLess(&'a str),
    /// A button for one step more of what is named.
    StepMore(&'a str),
    /// Leads to the questions of that bay.
    OnToBay(usize),
    /// Why a size cannot be had alone.
    AtSize(Dim, &'a str),
    /// Why an answer cannot be had.
    CannotBeHad {
        /// What is asked.
        asked: &'a str,
        /// The answer's name.
        answer: &'a str,
        /// Why.
        why: &'a str,
    },
    /// Why an answer does not go alone.
    NotAlone {
        /// What is asked.
        asked: &'a str,
        /// The answer's name.
        answer: &'a str,
        /// Why.
        why: &'a str,
    },
    /// What the looks of answers mean, in HTML: what goes with another change and what is shut are each an element of
    /// that name, with the look shown on a word.
    Looks {
        /// Name of the element about what goes with another change.
        shifts: &'a str,
        /// Name of the element about what is shut.
        shut: &'a str,
    },
    /// Where a figure comes from.
    Source(&'a str),
    /// The entry of the field of that name was not taken.
    NotTaken(Label, Refused),
    /// The stage that takes longest, and so decides the day.
    LongestStep(&'a str),
    /// So many hints.
    Hints(usize),
    /// So many reasons why it cannot be made.
    Reasons(usize),
    /// How much of the price is tax, with its currency.
    TaxOfIt(Money, &'a str),
    /// The heaviest part.
    Heaviest(PanelId, Mass),
    /// Price, weight and day of what can be made.
    Spoken {
        /// Price with tax.
        price: &'a str,
        /// Weight of the whole.
        mass: &'a str,
        /// The day on which it arrives.
        day: &'a str,
    },
    /// The same, with a verdict that is no plain yes.
    SpokenBut {
        /// The verdict.
        verdict: &'a str,
        /// Price with tax.
        price: &'a str,
        /// Weight of the whole.
        mass: &'a str,
        /// The day on which it arrives.
        day: &'a str,
    },
    /// The verdict, and what it is about.
    SpokenStop(&'a str, &'a str),
    /// What was answered, and what that did.
    SpokenStep(&'a str, &'a str),
    /// The entry that was not taken, and what would be.
    SpokenUnread(&'a str, &'a str),
    /// Why an answer does not go alone, and what a press of Enter takes with it: two lines.
    SpokenWay(&'a str, &'a str),
    /// Why nothing is ordered yet.
    NotOrderedYet(&'a str),
    /// What a second draft of the same unit is called.
    CopyOf(&'a str),
    /// A file was saved.
    Saved(&'a str),
    /// When the carrier of that name brings it.
    BroughtBy(&'a str),
    /// An order was saved.
    OrderSaved(&'a str),
}
