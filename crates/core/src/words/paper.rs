//! What stands on the workshop's paper.

use crate::cabinet::panel::PanelId;

/// A text of the paper that holds no figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each says in the catalogue what it stands for")]
pub enum Label {
    // Titles of documents.
    Labels,
    CutList,
    Finishing,
    PackingList,
    DeliveryNote,
    Assembly,
    JobCard,
    BatchSheet,
    // Heads of columns and names of figures.
    Mark,
    Part,
    Along,
    Across,
    Step,
    People,
    Mass,
    Sheet,
    Size,
    Uncoated,
    Coated,
    Parts,
    Used,
    Cuts,
    Machine,
    Stock,
    Cutter,
    Spacing,
    Through,
    Outside,
    Bridges,
    Passes,
    Feed,
    Coats,
    Litres,
    Faces,
    Edges,
    Chamfer,
    Rounding,
    TabsAndPivots,
    Tabs,
    Pivots,
    TurnAfter,
    NextAfter,
    Order,
    Ordered,
    Arrives,
    Carrier,
    Package,
    To,
    From,
    Contact,
    Unit,
    Board,
    Finish,
    Remark,
    Stage,
    Minutes,
    PerDay,
    Days,
    Begins,
    Ends,
    PromisedEnd,
    Promised,
    Planned,
    Sheets,
    Packages,
    Digest,
    Kept,
    Orders,
    // Headings.
    HowItIsCut,
    Machining,
    BeforeCutting,
    AfterCutting,
    WhileSpraying,
    Lifting,
    LiftedBy,
    Lifter,
    Mind,
    First,
    Steps,
    ByStage,
    ByOrder,
    CutOtherwise,
    Lots,
    // Sentences of the cut list.
    OutlinesAreEdges,
    CutsInOrder,
    LeadIns,
    ZeroPoint,
    WasteFalls,
    MeasureFirst,
    CutBridges,
    CutSkin,
    MachineCaution1,
    MachineCaution2,
    MachineCaution3,
    NothingKept,
    // Sentences of the finishing sheet.
    SandSheets,
    CoatSheets,
    SheetsHarden,
    MarkParts,
    MaskParts,
    StaysUncoated,
    HowFar,
    CoatParts,
    PartsHarden,
    NoCoatsBefore,
    NoCoatsAfter,
    Climate,
    SprayCaution,
    DustCaution,
    Diisocyanates,
    NoDiisocyanates,
    DiisocyanatesUnknown,
    OffcutsCoated,
    // Sentences of the other documents.
    PackInLayers,
    Niosh,
    Recommended,
    LiftingIndex,
    Layer,
    Row,
    OfItPacking,
    TwoLift,
    ThreeLift,
    OneLifts,
    ReceivedWhole,
    DayAndName,
    TetherFirst,
    Children,
    Guidance,
    NoHurry,
    Needed,
    WholeUnit,
    SharedSheets,
    ForTheFirst,
    Late,
    SprayFoot,
    MachineFoot,
    GuidanceFoot,
    AssemblySheet,
    BeyondEquation,
    SetAside,
    PackFoot,
    PackedSizes,
    GoesAlong,
    CoatedFaces,
    StopTongue,
    LiftingMeans,
    NotForOne,
    LieFlat,
    ToDriver,
    CollectedInstead,
    InTime,
    NoDay,
    NothingToMind,
}

/// The same with figures; lengths, masses, days and shares are texts already.
#[derive(Clone, Copy, Debug)]
pub enum Message<'a> {
    /// Which pack it is.
    Pack(&'a str),
    /// Which order of the pack.
    Order(u32),
    /// Which page of how many.
    Page(u32, u32),
    /// A sheet: its number, board and finish.
    Sheet {
        /// Its number.
        number: u32,
        /// Name of the board.
        board: &'a str,
        /// Name of the finish.
        finish: &'a str,
    },
    /// Where a part is on its way: order, sheet, step.
    PartOf {
        /// The order.
        order: u32,
        /// The sheet.
        sheet: u32,
        /// The step of the assembly.
        step: u32,
        /// The pack.
        pack: &'a str,
    },
    /// A board in a finish.
    Lot {
        /// Name of the board.
        board: &'a str,
        /// Name of the finish.
        finish: &'a str,
    },
    /// A new sheet of that format.
    Bought(&'a str),
    /// An offcut of that name.
    FromRack(&'a str),
    /// Millimetres.
    Millimetres(&'a str),
    /// Two or three sides in millimetres.
    Sides(&'a [String]),
    /// Metres.
    Metres(&'a str),
    /// Square metres.
    SquareMetres(&'a str),
    /// Litres.
    Litres(&'a str),
    /// Minutes.
    Minutes(&'a str),
    /// Hours and minutes.
    Hours(u32, u32),
    /// Millimetres in a minute.
    Feed(&'a str),
    /// Bridges: how long, how thick, how far apart.
    Bridges(&'a str, &'a str, &'a str),
    /// So many coats on both faces.
    Coats(u32),
    /// A package: its number, how many there are.
    Package(u32, u32),
    /// The mass of a package, and how much of it is packing.
    Packed(&'a str, &'a str),
    /// What packing weighs, in kilograms: for each square metre of parts, and for each package.
    PackingWeighs(&'a str, &'a str),
    /// The picture of layers of a package for who does not see it: the package, the first and the last of them.
    LayersPicture(u32, (usize, usize)),
    /// The last coat hardens on the sheets for so many working days.
    SheetsHarden(u32),
    /// The last coat hardens on the parts for so many working days.
    PartsHarden(u32),
    /// What goes along for the wall: the longest screw for the back.
    Tether(&'a str),
    /// What goes along for doors to stand on until the top is on: how many strips of card, and how thick.
    Cards(usize, &'a str),
    /// So many people.
    People(u8),
    /// So many people put a unit together.
    PeopleForIt(u8),
    /// So many people carry something only because it is long; for its mass fewer could.
    ForLength(&'a str),
    /// The picture of a part for who does not see it.
    PartPicture(&'a str),
    /// The picture of a sheet for who does not see it.
    SheetPicture(u32, usize),
    /// The code that leads back to a part, or to an offcut.
    Code(&'a str),
    /// Where a part's label is stuck.
    StickOn(PanelId),
    /// What opens a door against its detent, in newtons.
    DoorOpens(&'a str),
    /// The sides of an offcut, the one along its grain first.
    ByGrain(&'a [String]),
    /// How thick an offcut is with its coats, and without them by the batch that it comes from, if that was measured.
    OffcutThickness {
        /// With its coats.
        coated: &'a str,
        /// Without them.
        measured: Option<&'a str>,
    },
    /// Which sheet of which pack an offcut comes from.
    OffcutOf {
        /// The sheet.
        sheet: u32,
        /// The pack.
        pack: &'a str,
    },
    /// The picture of an offcut for who does not see it.
    OffcutPicture(&'a str),
    /// In which order the orders are made.
    InTurn {
        /// The day after which work begins.
        from: &'a str,
        /// Whether other work is booked before it.
        is_booked: bool,
    },
    /// Work begins later than it was set to, since it was ordered only then.
    SetBefore {
        /// The day that was set.
        set: &'a str,
        /// The day after which it begins.
        from: &'a str,
    },
    /// A step: its number of how many.
    Step(u32, u32),
    /// Something promised is other, since a batch was measured: what was promised and what is cut.
    Other {
        /// What.
        place: &'a str,
        /// As it was promised.
        promised: &'a str,
        /// As it is.
        derived: &'a str,
    },
    /// A letter that no face of the paper has, and where it stands.
    Lacking(char, &'a str),
    /// A text of which only the beginning had room.
    Cut(&'a str),
    /// Pictures of a document that had no room.
    Missing {
        /// The path of the document.
        path: &'a str,
        /// How many.
        count: usize,
        /// What the first one would show.
        first: &'a str,
    },
}
