//! The help of the workshop's tool in English.

use crate::words::help::Label;

#[expect(clippy::too_many_lines, reason = "one line a text")]
pub(in crate::words) const fn label(of: Label) -> &'static str {
    match of {
        Label::Tool => "Checks orders of interlocking plywood cabinets, validates ranges, derives units",
        Label::ToolMore => "A calculation is guidance for a maker: it replaces no test and is no certificate.",
        Label::Examples => "Examples:",
        Label::ExitCodes => "Exit codes:",
        Label::AllGood => "all is well",
        Label::NotAllGood => "what was asked about does not hold, cannot be made or has faults",
        Label::NotUsable => "a file cannot be read, used or written, or an argument is wrong",
        Label::AllHold => "all orders hold",
        Label::OneDiffers => "an order differs, or cannot be made",
        Label::CanBeOrdered => "the unit can be ordered",
        Label::CannotBeOrdered => "something stops its order; what is known is printed all the same",
        Label::RangeRight => "the range is right; warnings alone stop nothing",
        Label::RangeFaulty => "the range has faults",
        Label::Printed => "printed",
        Label::OrderWritten => "the order is written",
        Label::FitsWell => "joints fit",
        Label::TooManyTight => "more joints of a measured board are too tight than the range allows",
        Label::CanBeMade => "the choice itself can be made",
        Label::CannotBeMade => "it cannot be made as it is",
        Label::UnitWritten => "the unit is written",
        Label::SheetWritten => "the sheet is written or printed",
        Label::PackWritten => "the pack is written, with all orders",
        Label::PackWithout => "the pack is written, without the orders that were set aside",
        Label::LinkPrinted => "the unit can be ordered, and its link has its price",
        Label::LinkWithoutPrice => "something stops its order; its link is printed all the same, without a price",
        Label::PlacementWritten => "the placement is written or printed",
        Label::PartFitsNowhere => "a part fits on no sheet",
        Label::Check => "Derive orders again and report every difference",
        Label::CheckMore => {
            "Each order is shown with its range, its boards as they are cut, how they fit, its mass, price and day."
        }
        Label::Derive => "Derive a choice and print everything that is known about it",
        Label::DeriveMore => "An order is derived with its own day and its own backlog, unless others are given.",
        Label::Range => {
            "Validate a range file: all that is wrong, cannot be sold or is of no use, with line and column"
        }
        Label::RangeMore => "Where other commands are given a range file with faults they do nothing, and exit with 2.",
        Label::Sample => "Print seeded choices, one a line, spread evenly over models and questions",
        Label::Order => "Write the order spec of a choice",
        Label::OrderMore => "Name, contact and address are for the delivery, by whichever carrier of the range.",
        Label::Explain => {
            "Explain a rule: what is checked, why, where its figures come from, and what the range says of it"
        }
        Label::Fit => {
            "Print how the joints of each board fit in each finish: worst, likely, and the share that does not"
        }
        Label::FitMore => {
            "A batch is measured at eight points about 50 mm from the edge (EN 324-1); cuts follow its mean to 0.05 mm."
        }
        Label::Options => {
            "Print the state of every answer to every question: open, with other changes, or shut and why"
        }
        Label::OptionsMore => "The answers are printed whether the choice itself can be made or not.",
        Label::Solid => "Write the assembled unit as a binary glTF 2.0 file: metres, +Y up, one node for each part",
        Label::Assembly => {
            "Print the assembly sheet of a unit as JSON: each step with its sentence, its figures and its picture"
        }
        Label::AssemblyMore => {
            "Pictures are SVG: isometric, hidden lines removed, all of a unit at one scale. The last step is that of the \
             whole unit: it is levelled and, where it has to be, fastened to the wall."
        }
        Label::Link => "Print the link that opens the page with a choice",
        Label::LinkMore => {
            "Wherever a choice is read, a link is read too. It holds the unit and its price, nothing of a person."
        }
        Label::Pack => "Turn orders into a cut pack: sheets with their parts, drawings for the machine, lists",
        Label::PackMore => {
            "Each order is checked first, and set aside if it does not hold. Orders of one board and one finish share \
             sheets. The same orders, ranges and settings give the same bytes. A cutter turns fast, sheets are heavy and \
             dust harms: guards, extraction and the rules of the place belong to every cut."
        }
        Label::Nest => "Place the parts of a published instance on sheets or a strip, as well as the given time allows",
        Label::NestMore => {
            "Instances are JSON documents. `rect-bins`: rectangles on equal sheets, the fewest sheets are best. \
             `strip-polygons`: polygons on a strip of fixed height, the shortest piece of it is best. \
             The same seconds may give another placement on another machine."
        }
        Label::Schema => "Print the JSON Schema of a document, or write all of them",
        Label::OfRange => "The range file; the demo range if there is none",
        Label::OfChoice => {
            "The choice as JSON, an order that holds one, or a link, `-` for standard input; a link may also stand here \
             itself; the first model as it begins if there is none"
        }
        Label::OfBacklog => "The work that is booked already, as JSON: {\"minutes\": {\"cut\": 600}}",
        Label::OfBatches => {
            "A board and the eight measured points of the batch that it is cut from, in mm; may be given for several \
             boards"
        }
        Label::ForMachines => "Print a document for machines",
        Label::Force => "Write over files that are there already",
        Label::CheckFiles => "The order specs, one a file, `-` for standard input",
        Label::CheckRanges => {
            "A range file that orders may refer to, instead of the demo range; may be given several times"
        }
        Label::DeriveToday => "The day of asking; if none is given that of the order, or the present day (UTC)",
        Label::RangeFile => "The range file",
        Label::SampleCount => "How many choices, up to 100000",
        Label::SampleSeed => "The seed: the same seed gives the same choices",
        Label::SampleAny => "Unfiltered choices, absurd ones among them",
        Label::OrderToday => "The day of the order",
        Label::OrderName => "A name for the delivery",
        Label::OrderContact => "An e-mail address or a telephone number",
        Label::OrderAddress => "A line of the address; may be given up to six times",
        Label::OrderRemark => "A remark for workshop and driver",
        Label::OrderOut => "Where to write it; standard output if nowhere",
        Label::OptionsPin => {
            "A question whose answer is never shifted: width, height, depth, bays, shares, back, finish, corners, bay-1, \
             hole-1, device-1; may be given several times"
        }
        Label::SolidOut => "Where to write it",
        Label::AssemblyOut => "Write `assembly.json` and one `step-01.svg` for each step into this folder",
        Label::LinkPage => {
            "The address of the page; what begins with # in it is replaced. Without it the link alone is printed"
        }
        Label::LinkToday => "The day of the price; if none is given that of the order, or the present day (UTC)",
        Label::NestInstance => "The instance as JSON, `-` for standard input",
        Label::NestSeconds => {
            "How long to look for a better placement, 0 to 3600 seconds; it ends earlier if none is better"
        }
        Label::NestOut => "Where to write the placement, as a JSON list; standard output if nowhere",
        Label::ExplainRule => "The rule's code; all rules if there is none",
        Label::ExplainRange => "The range file whose figures are shown; the demo range if there is none",
        Label::SchemaDocument => "The document; the list of documents if there is none",
        Label::SchemaOut => "Write all schemas into this folder",
        Label::PackFiles => "Order specs, or - for one from standard input",
        Label::PackOut => "Write the pack into this new folder",
        Label::PackPart => {
            "Cut only this part again: its mark on the label, with the same orders in the same order, or what the code of the label says; with --from as the pack before was cut"
        }
        Label::PackCutter => "Diameter of the cutter in millimetres, as 6 or 6.35, instead of the range's",
        Label::PackAllowance => "Between parts, beyond the cutter's diameter, in millimetres, instead of the range's",
        Label::PackToday => {
            "The day after which work on the orders begins, for the batch sheet and job cards; that of \
             the last order if none is given. Work never begins before that: an earlier day is told, and does not count"
        }
        Label::PackBooked => {
            "Work that is booked at a stage already, in minutes or hours, as cut=600 or 'cut=10 h'; may be given for several stages, and \
             counts beside that of --backlog"
        }
        Label::PackFrom => {
            "With --part, the folder of the pack before: numbers of orders, measured boards, cutter, allowance, paper and labels are those of its \
             manifest, unless others are given"
        }
        Label::PackNotUsable => "nothing could be cut, a file cannot be read, used or written, or an argument is wrong",
        Label::PackOffcuts => "Offcuts in the rack: the offcuts.csv of the pack before",
        Label::PackSheets => "How many sheets of a format there are, if few: birch-18/small=12",
        Label::PackEffort => "How long nests are looked for, in steps of the search; the same effort, the same pack",
        Label::PackPaper => "On which paper documents are: a4, unless another is given, or letter",
        Label::PackLabels => {
            "On which labels: sheets a4-3x8 (70 by 37 mm), a4-2x7 (99.1 by 38.1 mm) or letter-3x10 (66.7 by 25.4 mm), single \
             ones 100x50 or 62x29; a4-3x8 unless others are given"
        }
        Label::PackForce => "Replace a pack that is there already",
    }
}
