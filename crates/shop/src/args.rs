//! What can be asked of the tool.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand};
use slotwright_core::choice::question::Question;
use slotwright_core::range::{Batch, Key, NotABatch, NotAKey};
use slotwright_core::units::day::Day;

/// Checks orders of interlocking plywood cabinets, validates ranges, derives units.
///
/// A calculation is guidance for a maker: it replaces no test and is no certificate.
#[derive(Debug, Parser)]
#[command(name = "slotwright", version, max_term_width = 100)]
pub(crate) struct Tool {
    /// What to do.
    #[command(subcommand)]
    pub(crate) command: Command,
}

/// What to do.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Derive orders again and report every difference.
    ///
    /// Each order is shown with its range, its boards as they are cut, how they fit, its mass, price and day.
    /// Exit code: 0 all hold, 1 one differs or cannot be made, 2 one cannot be read.
    #[command(
        after_help = "Examples:\n  slotwright check order.json\n  slotwright check order.json --measured 'birch-18=17.61 17.68 17.72 17.66 17.70 17.64 17.69 17.70'\n  slotwright check --json orders/*.json\n  slotwright check --range 2026.toml --range 2027.toml orders/*.json\n  slotwright order --today 2026-11-25 | slotwright check -"
    )]
    Check(Check),
    /// Derive a choice and print everything that is known about it.
    #[command(
        after_help = "Examples:\n  slotwright derive --choice choice.json\n  slotwright derive --choice order.json\n  slotwright sample --count 1 | slotwright derive --today 2026-11-25 --choice -"
    )]
    Derive(Derive),
    /// Validate a range file: all that is wrong, cannot be sold or is of no use, with line and column.
    #[command(after_help = "Examples:\n  slotwright range my-range.toml\n  slotwright range --json my-range.toml")]
    Range(RangeFile),
    /// Print seeded choices, one a line, spread evenly over models and questions.
    #[command(
        after_help = "Examples:\n  slotwright sample --count 100 --seed 7\n  slotwright sample --any --count 1000 > choices.jsonl"
    )]
    Sample(Sample),
    /// Write the order spec of a choice.
    #[command(
        after_help = "Examples:\n  slotwright order --today 2026-11-25 --choice choice.json --name 'A. Reed' --contact a@example.org --address '1 Dyke Lane' --out order.json\n  slotwright order --today 2026-11-25"
    )]
    Order(Order),
    /// Explain a rule: what is checked, why, where its figures come from, and what the range says of it.
    #[command(after_help = "Examples:\n  slotwright explain\n  slotwright explain shelf-sag --range my-range.toml")]
    Explain(Explain),
    /// Print how the joints of each board fit in each finish: worst, likely, and the share that does not.
    ///
    /// A batch is measured at eight points about 50 mm from the edge (EN 324-1); cuts follow its mean to 0.05 mm.
    /// Exit code: 0 good, 1 more joints of a measured board are too tight than the range allows.
    #[command(
        after_help = "Examples:\n  slotwright fit\n  slotwright fit --json\n  slotwright fit --range my-range.toml --measured 'birch-18=17.61 17.68 17.72 17.66 17.70 17.64 17.69 17.70'"
    )]
    Fit(Fit),
    /// Print the state of every answer to every question: open, with other changes, or shut and why.
    ///
    /// Exit code: 0 the choice itself can be made, 1 it cannot.
    #[command(
        after_help = "Examples:\n  slotwright options --choice choice.json\n  slotwright options --choice choice.json --pin width --pin device-2\n  slotwright options --json"
    )]
    Options(Answers),
    /// Write the assembled unit as a binary glTF 2.0 file: metres, +Y up, one node for each part.
    #[command(after_help = "Examples:\n  slotwright solid --choice choice.json --out unit.glb")]
    Solid(Solid),
    /// Print the assembly sheet of a unit as JSON: each step with its sentence, its figures and its picture.
    ///
    /// Pictures are SVG: isometric, hidden lines removed, all of a unit at one scale.
    #[command(
        after_help = "Examples:\n  slotwright assembly --choice choice.json\n  slotwright assembly --range my-range.toml --choice choice.json --out sheet\n  slotwright sample --count 1 | slotwright assembly --choice - --out sheet"
    )]
    Assembly(Assembly),
    /// Print the JSON Schema of a document, or write all of them.
    #[command(after_help = "Examples:\n  slotwright schema order-spec\n  slotwright schema --out schemas")]
    Schema(Schema),
}

/// Which range, and what is booked.
#[derive(Args, Debug)]
pub(crate) struct Made {
    /// The range file; the demo range if there is none.
    #[arg(long, value_name = "FILE")]
    pub(crate) range: Option<PathBuf>,
    /// The choice as JSON, or an order that holds one, `-` for standard input; the first model as it begins if there
    /// is none.
    #[arg(long, value_name = "FILE")]
    pub(crate) choice: Option<PathBuf>,
    /// The work that is booked already, as JSON: {"minutes": {"cut": 600}}.
    #[arg(long, value_name = "FILE")]
    pub(crate) backlog: Option<PathBuf>,
}

/// Batches that were measured after the range file was written.
#[derive(Args, Debug)]
pub(crate) struct Batches {
    /// A board and the eight measured points of the batch that it is cut from, in mm; may be given for several boards.
    #[arg(long = "measured", value_name = "BOARD=POINTS")]
    pub(crate) batches: Vec<Measured>,
}

/// The measured batch of a board.
#[derive(Clone, Debug)]
pub(crate) struct Measured {
    /// The board.
    pub(crate) board: Key,
    /// Its batch.
    pub(crate) batch: Batch,
}

impl core::str::FromStr for Measured {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let (board, points) = text.split_once('=').ok_or("write it as birch-18='17.6 17.7 …', eight points")?;
        let board = board.trim().parse().map_err(|wrong: NotAKey| wrong.to_string())?;
        Ok(Self { board, batch: points.parse().map_err(|wrong: NotABatch| wrong.to_string())? })
    }
}

#[derive(Args, Debug)]
pub(crate) struct Fit {
    /// The range file; the demo range if there is none.
    #[arg(long, value_name = "FILE")]
    pub(crate) range: Option<PathBuf>,
    /// Print a document for machines.
    #[arg(long)]
    pub(crate) json: bool,
    #[command(flatten)]
    pub(crate) measured: Batches,
}

/// Whether files that are there may go.
#[derive(Args, Clone, Copy, Debug)]
pub(crate) struct Over {
    /// Write over files that are there already.
    #[arg(long)]
    pub(crate) force: bool,
}

#[derive(Args, Debug)]
pub(crate) struct Check {
    /// The order specs, `-` for standard input.
    #[arg(required = true, value_name = "FILE")]
    pub(crate) files: Vec<PathBuf>,
    /// A range file that orders may refer to, instead of the demo range; may be given several times.
    #[arg(long = "range", value_name = "FILE")]
    pub(crate) ranges: Vec<PathBuf>,
    /// Print a report for machines.
    #[arg(long)]
    pub(crate) json: bool,
    #[command(flatten)]
    pub(crate) measured: Batches,
}

#[derive(Args, Debug)]
pub(crate) struct Derive {
    #[command(flatten)]
    pub(crate) made: Made,
    #[command(flatten)]
    pub(crate) measured: Batches,
    /// The day of asking; if none is given that of the order, or the present day (UTC).
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub(crate) today: Option<Day>,
}

#[derive(Args, Debug)]
pub(crate) struct RangeFile {
    /// The range file.
    #[arg(value_name = "FILE")]
    pub(crate) file: PathBuf,
    /// Print a report for machines.
    #[arg(long)]
    pub(crate) json: bool,
}

/// Most choices of one sample: about as many as are printed in a minute.
const SAMPLES_MOST: i64 = 100_000;

#[derive(Args, Debug)]
pub(crate) struct Sample {
    /// The range file; the demo range if there is none.
    #[arg(long, value_name = "FILE")]
    pub(crate) range: Option<PathBuf>,
    /// How many choices, up to 100000.
    #[arg(long, default_value_t = 10, value_parser = clap::value_parser!(u32).range(..=SAMPLES_MOST))]
    pub(crate) count: u32,
    /// The seed: the same seed gives the same choices.
    #[arg(long, default_value_t = 1)]
    pub(crate) seed: u64,
    /// Unfiltered choices, absurd ones among them.
    #[arg(long)]
    pub(crate) any: bool,
}

#[derive(Args, Debug)]
pub(crate) struct Order {
    #[command(flatten)]
    pub(crate) made: Made,
    /// The day of the order.
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub(crate) today: Day,
    /// A name for the parcel.
    #[arg(long, default_value = "Sample order")]
    pub(crate) name: String,
    /// An e-mail address or a telephone number.
    #[arg(long, default_value = "none given")]
    pub(crate) contact: String,
    /// A line of the address; may be given up to six times.
    #[arg(long, default_value = "to be collected")]
    pub(crate) address: Vec<String>,
    /// A remark to the workshop.
    #[arg(long, default_value = "")]
    pub(crate) remark: String,
    /// Where to write it; standard output if nowhere.
    #[arg(long, value_name = "FILE")]
    pub(crate) out: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) over: Over,
}

#[derive(Args, Debug)]
pub(crate) struct Answers {
    #[command(flatten)]
    pub(crate) made: Made,
    /// A question whose answer is never shifted: width, height, depth, bays, shares, back, finish, corners,
    /// bay-1, hole-1, device-1; may be given several times.
    #[arg(long = "pin", value_name = "QUESTION")]
    pub(crate) pins: Vec<Question>,
    /// Print a document for machines.
    #[arg(long)]
    pub(crate) json: bool,
}

#[derive(Args, Debug)]
pub(crate) struct Solid {
    #[command(flatten)]
    pub(crate) made: Made,
    #[command(flatten)]
    pub(crate) measured: Batches,
    /// Where to write it.
    #[arg(long, value_name = "FILE.glb")]
    pub(crate) out: PathBuf,
    #[command(flatten)]
    pub(crate) over: Over,
}

#[derive(Args, Debug)]
pub(crate) struct Assembly {
    #[command(flatten)]
    pub(crate) made: Made,
    #[command(flatten)]
    pub(crate) measured: Batches,
    /// Write `assembly.json` and one `step-01.svg` for each step into this folder.
    #[arg(long, value_name = "FOLDER")]
    pub(crate) out: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) over: Over,
}

#[derive(Args, Debug)]
pub(crate) struct Explain {
    /// The rule's code; all rules if there is none.
    pub(crate) rule: Option<String>,
    /// The range file whose figures are shown; the demo range if there is none.
    #[arg(long, value_name = "FILE")]
    pub(crate) range: Option<PathBuf>,
}

#[derive(Args, Debug)]
pub(crate) struct Schema {
    /// The document; the list of documents if there is none.
    pub(crate) document: Option<String>,
    /// Write all schemas into this folder.
    #[arg(long, value_name = "FOLDER", conflicts_with = "document")]
    pub(crate) out: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) over: Over,
}

/// Reads the arguments.
///
/// # Errors
///
/// Help, version, or what is wrong with the arguments.
pub(crate) fn parse() -> Result<Tool, clap::Error> {
    Tool::try_parse()
}
