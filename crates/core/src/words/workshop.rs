//! What the workshop's page says: orders that come in, their sheets, what there is to make, and the papers.

use crate::units::quantity::Dim;

/// A text that holds no figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each says in the catalogue what it stands for")]
pub enum Label {
    // The page before its program.
    Title,
    Description,
    AtTheSaw,
    Loading,
    Stopped,
    Missing,
    TooOld,
    NoScript,
    Trouble,
    TryAgain,
    ToTheShop,
    Skip,
    // Its parts.
    Orders,
    Sheets,
    ToMake,
    Papers,
    AddOrders,
    Settings,
    // What stands there while nothing was brought.
    DropHere,
    NothingYet,
    Local,
    ScanHow,
    Gone,
    // Orders.
    SetAside,
    AskAgain,
    AlsoHere,
    TakeOut,
    // Sheets.
    Parts,
    NoSheets,
    ShowLarge,
    Smaller,
    Larger,
    Close,
    Lots,
    Part,
    Size,
    KeptOffcut,
    NoneKept,
    // What there is to make.
    Pack,
    InParts,
    Cost,
    FromRack,
    Machine,
    Packages,
    Finish,
    ByStage,
    Promises,
    Cautions,
    Guidance,
    // The strip.
    LookLonger,
    Stop,
    StopWriting,
    Halted,
    NotInPack,
    PrintAll,
    TakePack,
    Reading,
    Writing,
    // Papers.
    Labels,
    CutList,
    Finishing,
    Batch,
    JobCards,
    PackingLists,
    DeliveryNotes,
    AssemblySheets,
    Lists,
    PrintHow,
    // Settings.
    Measured,
    CutAndPaper,
    OnePartAgain,
    OnePartHow,
    OnePart,
    OnePartHint,
    MeasuredHow,
    Cutter,
    Allowance,
    ByRange,
    InStock,
    InStockHow,
    PaperFormat,
    LabelFormat,
    Rack,
    RackHow,
    WantsCount,
    DayAndBooked,
    DayAndBookedHow,
    FromDay,
    FromDayHint,
    // What goes wrong.
    NotSaved,
    WorkerGone,
    RangeGone,
    NoPackYet,
}

/// The same with what it is about; money, masses, lengths and days are texts already.
#[derive(Clone, Copy, Debug)]
pub enum Message<'a> {
    /// An order that is cut: what it is.
    Unit {
        /// The model.
        model: &'a str,
        /// Its sides.
        sides: &'a str,
        /// What it stands on, if that is a plinth.
        plinth: Option<Dim>,
        /// Its finish.
        finish: &'a str,
    },
    /// That it holds: so many parts, promised for that day.
    Holds {
        /// How many parts.
        parts: usize,
        /// The day.
        day: &'a str,
    },
    /// So many of its figures are others as it is cut.
    AsCut(usize),
    /// So many offcuts of a list of the rack.
    RackOf(&'a str, usize),
    /// A range that came with the orders.
    RangeOf(&'a str, &'a str),
    /// A file that is neither.
    NotRead(&'a str, &'a str),
    /// Takes this out again.
    TakeOut(&'a str),
    /// A lot's tab.
    Lot {
        /// Its finish.
        finish: &'a str,
        /// By what its board is sold.
        thickness: &'a str,
        /// How many sheets.
        sheets: usize,
    },
    /// How a lot is cut.
    CutBy {
        /// How thick its board is without coats.
        uncoated: &'a str,
        /// And with them.
        coated: &'a str,
        /// The cutter.
        cutter: &'a str,
        /// What stays free between parts, the cutter's diameter included.
        spacing: &'a str,
    },
    /// The title of a sheet.
    Sheet(u32),
    /// What stands beneath its picture.
    SheetFigures {
        /// Its sides.
        sides: &'a str,
        /// The share in parts, in percent.
        used: &'a str,
        /// Minutes of the machine.
        minutes: &'a str,
    },
    /// It comes from the rack.
    FromRack(&'a str),
    /// The name of its picture.
    SheetPicture {
        /// Its number.
        number: u32,
        /// How many parts.
        parts: usize,
        /// How its grain runs.
        along: bool,
    },
    /// So many offcuts are worth keeping.
    KeptCount(usize),
    /// An offcut worth keeping, on which sheet.
    Kept(&'a str, u32),
    /// A share in percent.
    Percent(&'a str),
    /// So many sheets for so many parts.
    SheetsFor(usize, usize),
    /// Metres and minutes of the machine.
    Machine(&'a str, &'a str),
    /// Packages: how many, the lightest and the heaviest.
    Packages(usize, &'a str, &'a str),
    /// Litres before and after cutting.
    Litres(&'a str, &'a str),
    /// A stage's load: time, and whole days of its own.
    Days(u32),
    /// What breaks: which order, when it would arrive, and what was promised.
    Late(u32, &'a str, &'a str),
    /// What was done, at once or in so many steps of the search.
    Done {
        /// Orders taken.
        taken: usize,
        /// Orders set aside.
        aside: usize,
        /// Parts.
        parts: usize,
        /// How much cheaper than at once, if it is.
        less: Option<&'a str>,
        /// Whether it looked for better than what there was at once.
        searched: bool,
        /// Whether it goes on.
        looks: bool,
    },
    /// Only what was set aside is there.
    AllAside(usize),
    /// What was saved.
    Saved(&'a str),
    /// So much of a pack is written, in percent.
    Written(usize),
    /// Of a customer, a document or a file.
    PaperOf(&'a str, &'a str),
    /// A drawing in a format, of what.
    DrawingOf(&'a str, &'a str),
    /// These settings are not taken as they stand.
    SettingsWrong(&'a [String]),
    /// The measured thickness of a board.
    ThicknessOf(&'a str),
    /// The sheets in stock of a board.
    StockOf(&'a str),
    /// Where a part is whose code was read.
    Found {
        /// Its mark.
        mark: &'a str,
        /// What it is.
        part: &'a str,
        /// Whose.
        customer: &'a str,
        /// Its sheet, if it is cut.
        sheet: Option<u32>,
        /// The step of the assembly.
        step: u32,
    },
    /// An offcut whose code was read.
    FoundOffcut {
        /// Its name.
        name: &'a str,
        /// Its sides.
        sides: &'a str,
        /// The sheet that it is kept of, unless it lies in the rack.
        sheet: Option<u32>,
    },
    /// A code of nothing that is here.
    NotHere(&'a str),
    /// Time that is booked at a stage.
    BookedAt(&'a str),
    /// What was understood of a time, in minutes.
    Booked(u32),
    /// Whether any promise breaks, if all orders are made in turn.
    InTurn {
        /// Whether none does.
        all: bool,
        /// The day after which work begins.
        from: &'a str,
        /// Whether other work is booked before it.
        is_booked: bool,
    },
    /// Offcuts of the rack.
    RackUsed {
        /// How many are cut.
        used: usize,
        /// How many are of the boards, finishes and thicknesses that are cut.
        fit: usize,
        /// How many there are.
        there: usize,
    },
    /// A format of paper or labels by its name in settings.
    FormatNamed(&'a str),
    /// A format of a board.
    Format(&'a str, &'a str),
    /// What is said once a batch was measured.
    Mean(&'a str, &'a str),
}
