//! What can be asked of the tool.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand};
use slotwright_core::choice::question::Question;
use slotwright_core::units::day::Day;
use slotwright_core::words::help::Label;

use below::{below, below_with, long};
use typed::{day, measured, page, question};

mod below;
mod nest;
mod pack;
mod typed;

pub(crate) use nest::Nest;
pub(crate) use pack::Pack;
pub(crate) use typed::Measured;

/// The tool.
#[derive(Debug, Parser)]
#[command(
    name = "slotwright",
    version,
    max_term_width = 100,
    about = Label::Tool.text(),
    long_about = long(Label::Tool, Label::ToolMore),
    after_help = below(&[], Label::AllGood, Some(Label::NotAllGood)),
)]
pub(crate) struct Tool {
    #[command(subcommand)]
    pub(crate) command: Command,
}

/// What to do: each is said in the catalogue, with examples and exit codes.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    #[command(
        about = Label::Check.text(),
        long_about = long(Label::Check, Label::CheckMore),
        after_help = below(
            &[
                "slotwright check order.json",
                "slotwright check order.json --measured 'birch-18=17.61 17.68 17.72 17.66 17.70 17.64 17.69 17.70'",
                "slotwright check --json orders/*.json",
                "slotwright check --range 2026.toml --range 2027.toml orders/*.json",
                "slotwright order --today 2026-11-25 | slotwright check -",
            ],
            Label::AllHold,
            Some(Label::OneDiffers),
        ),
    )]
    Check(Check),
    #[command(
        about = Label::Derive.text(),
        long_about = long(Label::Derive, Label::DeriveMore),
        after_help = below(
            &[
                "slotwright derive --choice choice.json",
                "slotwright derive --choice order.json",
                "slotwright sample --count 1 | slotwright derive --today 2026-11-25 --choice -",
            ],
            Label::CanBeOrdered,
            Some(Label::CannotBeOrdered),
        ),
    )]
    Derive(Derive),
    #[command(
        about = Label::Range.text(),
        long_about = long(Label::Range, Label::RangeMore),
        after_help = below(
            &[
                "slotwright range my-range.toml",
                "slotwright range --json my-range.toml",
            ],
            Label::RangeRight,
            Some(Label::RangeFaulty),
        ),
    )]
    Range(RangeFile),
    #[command(
        about = Label::Sample.text(),
        after_help = below(
            &[
                "slotwright sample --count 100 --seed 7",
                "slotwright sample --any --count 1000 > choices.jsonl",
            ],
            Label::Printed,
            None,
        ),
    )]
    Sample(Sample),
    #[command(
        about = Label::Order.text(),
        long_about = long(Label::Order, Label::OrderMore),
        after_help = below(
            &[
                "slotwright order --today 2026-11-25 --choice choice.json --name 'A. Reed' --contact a@example.org --address '1 Dyke Lane' --out order.json",
                "slotwright order --today 2026-11-25",
            ],
            Label::OrderWritten,
            Some(Label::CannotBeMade),
        ),
    )]
    Order(Order),
    #[command(
        about = Label::Explain.text(),
        after_help = below(
            &[
                "slotwright explain",
                "slotwright explain shelf-sag --range my-range.toml",
            ],
            Label::Printed,
            None,
        ),
    )]
    Explain(Explain),
    #[command(
        about = Label::Fit.text(),
        long_about = long(Label::Fit, Label::FitMore),
        after_help = below(
            &[
                "slotwright fit",
                "slotwright fit --json",
                "slotwright fit --range my-range.toml --measured 'birch-18=17.61 17.68 17.72 17.66 17.70 17.64 17.69 17.70'",
            ],
            Label::FitsWell,
            Some(Label::TooManyTight),
        ),
    )]
    Fit(Fit),
    #[command(
        about = Label::Options.text(),
        long_about = long(Label::Options, Label::OptionsMore),
        after_help = below(
            &[
                "slotwright options --choice choice.json",
                "slotwright options --choice choice.json --pin width --pin device-2",
                "slotwright options --json",
            ],
            Label::CanBeMade,
            Some(Label::CannotBeMade),
        ),
    )]
    Options(Answers),
    #[command(
        about = Label::Solid.text(),
        after_help = below(
            &[
                "slotwright solid --choice choice.json --out unit.glb",
            ],
            Label::UnitWritten,
            Some(Label::CannotBeMade),
        ),
    )]
    Solid(Solid),
    #[command(
        about = Label::Assembly.text(),
        long_about = long(Label::Assembly, Label::AssemblyMore),
        after_help = below(
            &[
                "slotwright assembly --choice choice.json",
                "slotwright assembly --range my-range.toml --choice choice.json --out sheet",
                "slotwright sample --count 1 | slotwright assembly --choice - --out sheet",
            ],
            Label::SheetWritten,
            Some(Label::CannotBeMade),
        ),
    )]
    Assembly(Assembly),
    #[command(
        about = Label::Link.text(),
        long_about = long(Label::Link, Label::LinkMore),
        after_help = below(
            &[
                "slotwright link --choice choice.json",
                "slotwright link --choice order.json --page https://example.org/",
                "slotwright derive --choice '#1/teasel/1640x920x400/30/birch-18/chalk/2o,1s2,1l'",
            ],
            Label::LinkPrinted,
            Some(Label::LinkWithoutPrice),
        ),
    )]
    Link(Link),
    #[command(
        about = Label::Pack.text(),
        long_about = long(Label::Pack, Label::PackMore),
        after_help = below_with(
            &[
                "slotwright pack orders/*.json --out pack",
                "slotwright pack orders/*.json --measured 'birch-18=17.61 17.68 17.72 17.66 17.70 17.64 17.69 17.70' --out pack",
                "slotwright pack orders/*.json --offcuts before/offcuts.csv --sheets birch-18/small=12 --out pack",
                "slotwright pack orders/*.json --today 2026-12-01 --booked 'cut=10 h' --out pack",
                "slotwright pack orders/*.json --part 2/shelf-1-1 --from pack --out again",
            ],
            Label::PackWritten,
            Some(Label::PackWithout),
            Label::PackNotUsable,
        ),
    )]
    Pack(Box<Pack>),
    #[command(
        about = Label::Nest.text(),
        long_about = long(Label::Nest, Label::NestMore),
        after_help = below(
            &[
                "slotwright nest instance.json --out placement.json",
                "slotwright nest instance.json --seconds 20 --out placement.json --force",
            ],
            Label::PlacementWritten,
            Some(Label::PartFitsNowhere),
        ),
    )]
    Nest(Nest),
    #[command(
        about = Label::Schema.text(),
        after_help = below(
            &[
                "slotwright schema order-spec",
                "slotwright schema --out schemas",
            ],
            Label::Printed,
            None,
        ),
    )]
    Schema(Schema),
}

/// Which range, and what is booked.
#[derive(Args, Debug)]
pub(crate) struct Made {
    #[arg(long, value_name = "FILE", help = Label::OfRange.text())]
    pub(crate) range: Option<PathBuf>,
    #[arg(long, value_name = "FILE|LINK", help = Label::OfChoice.text())]
    pub(crate) choice: Option<PathBuf>,
    #[arg(long, value_name = "FILE", help = Label::OfBacklog.text())]
    pub(crate) backlog: Option<PathBuf>,
}

/// Batches that were measured after the range file was written.
#[derive(Args, Debug)]
pub(crate) struct Batches {
    #[arg(long = "measured", value_name = "BOARD=POINTS", value_parser = measured, help = Label::OfBatches.text())]
    pub(crate) batches: Vec<Measured>,
}

#[derive(Args, Debug)]
pub(crate) struct Fit {
    #[arg(long, value_name = "FILE", help = Label::OfRange.text())]
    pub(crate) range: Option<PathBuf>,
    #[arg(long, help = Label::ForMachines.text())]
    pub(crate) json: bool,
    #[command(flatten)]
    pub(crate) measured: Batches,
}

/// Whether files that are there may go.
#[derive(Args, Clone, Copy, Debug)]
pub(crate) struct Over {
    #[arg(long, help = Label::Force.text())]
    pub(crate) force: bool,
}

#[derive(Args, Debug)]
pub(crate) struct Check {
    #[arg(required = true, value_name = "FILE", help = Label::CheckFiles.text())]
    pub(crate) files: Vec<PathBuf>,
    #[arg(long = "range", value_name = "FILE", help = Label::CheckRanges.text())]
    pub(crate) ranges: Vec<PathBuf>,
    #[arg(long, help = Label::ForMachines.text())]
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
    #[arg(long, value_name = "YYYY-MM-DD", value_parser = day, help = Label::DeriveToday.text())]
    pub(crate) today: Option<Day>,
}

#[derive(Args, Debug)]
pub(crate) struct RangeFile {
    #[arg(value_name = "FILE", help = Label::RangeFile.text())]
    pub(crate) file: PathBuf,
    #[arg(long, help = Label::ForMachines.text())]
    pub(crate) json: bool,
}

/// Most choices of one sample: about as many as are printed in a minute.
const SAMPLES_MOST: i64 = 100_000;

#[derive(Args, Debug)]
pub(crate) struct Sample {
    #[arg(long, value_name = "FILE", help = Label::OfRange.text())]
    pub(crate) range: Option<PathBuf>,
    #[arg(long, default_value_t = 10, value_parser = clap::value_parser!(u32).range(..=SAMPLES_MOST), help = Label::SampleCount.text())]
    pub(crate) count: u32,
    #[arg(long, default_value_t = 1, help = Label::SampleSeed.text())]
    pub(crate) seed: u64,
    #[arg(long, help = Label::SampleAny.text())]
    pub(crate) any: bool,
}

#[derive(Args, Debug)]
pub(crate) struct Order {
    #[command(flatten)]
    pub(crate) made: Made,
    #[arg(long, value_name = "YYYY-MM-DD", value_parser = day, help = Label::OrderToday.text())]
    pub(crate) today: Day,
    #[arg(long, default_value = "Sample order", help = Label::OrderName.text())]
    pub(crate) name: String,
    #[arg(long, default_value = "none given", help = Label::OrderContact.text())]
    pub(crate) contact: String,
    #[arg(long, default_value = "to be collected", help = Label::OrderAddress.text())]
    pub(crate) address: Vec<String>,
    #[arg(long, default_value = "", help = Label::OrderRemark.text())]
    pub(crate) remark: String,
    #[arg(long, value_name = "FILE", help = Label::OrderOut.text())]
    pub(crate) out: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) over: Over,
}

#[derive(Args, Debug)]
pub(crate) struct Answers {
    #[command(flatten)]
    pub(crate) made: Made,
    #[arg(long = "pin", value_name = "QUESTION", value_parser = question, help = Label::OptionsPin.text())]
    pub(crate) pins: Vec<Question>,
    #[arg(long, help = Label::ForMachines.text())]
    pub(crate) json: bool,
}

#[derive(Args, Debug)]
pub(crate) struct Solid {
    #[command(flatten)]
    pub(crate) made: Made,
    #[command(flatten)]
    pub(crate) measured: Batches,
    #[arg(long, value_name = "FILE.glb", help = Label::SolidOut.text())]
    pub(crate) out: PathBuf,
    #[command(flatten)]
    pub(crate) over: Over,
}

#[derive(Args, Debug)]
pub(crate) struct Link {
    #[command(flatten)]
    pub(crate) made: Made,
    #[arg(long, value_name = "URL", value_parser = page, help = Label::LinkPage.text())]
    pub(crate) page: Option<String>,
    #[arg(long, value_name = "YYYY-MM-DD", value_parser = day, help = Label::LinkToday.text())]
    pub(crate) today: Option<Day>,
}

#[derive(Args, Debug)]
pub(crate) struct Assembly {
    #[command(flatten)]
    pub(crate) made: Made,
    #[command(flatten)]
    pub(crate) measured: Batches,
    #[arg(long, value_name = "FOLDER", help = Label::AssemblyOut.text())]
    pub(crate) out: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) over: Over,
}

#[derive(Args, Debug)]
pub(crate) struct Explain {
    #[arg(help = Label::ExplainRule.text())]
    pub(crate) rule: Option<String>,
    #[arg(long, value_name = "FILE", help = Label::ExplainRange.text())]
    pub(crate) range: Option<PathBuf>,
}

#[derive(Args, Debug)]
pub(crate) struct Schema {
    #[arg(help = Label::SchemaDocument.text())]
    pub(crate) document: Option<String>,
    #[arg(long, value_name = "FOLDER", conflicts_with = "document", help = Label::SchemaOut.text())]
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
