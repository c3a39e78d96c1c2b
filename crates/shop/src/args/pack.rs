//! What `slotwright pack` can be asked.

use std::path::PathBuf;

use clap::Args;
use slotwright_core::range::Key;
use slotwright_core::units::day::Day;
use slotwright_core::units::quantity::Length;
use slotwright_core::words::help::Label;
use slotwright_cutpack::pack::nest::SheetsInStock;
use slotwright_cutpack::pack::{CutBy, EFFORT, EFFORT_MOST, OnePart};
use slotwright_cutpack::paper::{Format, Labels};

use super::Batches;
use super::typed::{booked, day, label_sheet, paper, sheets};

#[derive(Args, Debug)]
pub(crate) struct Pack {
    #[arg(required = true, value_name = "ORDER", help = Label::PackFiles.text())]
    pub(crate) files: Vec<PathBuf>,
    #[arg(long, value_name = "FOLDER", help = Label::PackOut.text())]
    pub(crate) out: PathBuf,
    #[arg(long = "range", value_name = "FILE", help = Label::CheckRanges.text())]
    pub(crate) ranges: Vec<PathBuf>,
    #[command(flatten)]
    pub(crate) measured: Batches,
    #[arg(long, value_name = "MM", value_parser = CutBy::read_cutter, help = Label::PackCutter.text())]
    pub(crate) cutter: Option<Length>,
    #[arg(long, value_name = "MM", value_parser = CutBy::read_allowance, help = Label::PackAllowance.text())]
    pub(crate) allowance: Option<Length>,
    #[arg(long, value_name = "FILE.csv", help = Label::PackOffcuts.text())]
    pub(crate) offcuts: Option<PathBuf>,
    #[arg(long, value_name = "BOARD/FORMAT=COUNT", value_parser = sheets, help = Label::PackSheets.text())]
    pub(crate) sheets: Vec<SheetsInStock>,
    #[arg(long, default_value_t = EFFORT, value_parser = clap::value_parser!(u32).range(..=i64::from(EFFORT_MOST)), help = Label::PackEffort.text())]
    pub(crate) effort: u32,
    #[arg(long, value_name = "ORDER/PART", help = Label::PackPart.text())]
    pub(crate) part: Option<OnePart>,
    #[arg(long, value_name = "FOLDER", requires = "part", help = Label::PackFrom.text())]
    pub(crate) from: Option<PathBuf>,
    #[arg(long, value_name = "YYYY-MM-DD", value_parser = day, help = Label::PackToday.text())]
    pub(crate) today: Option<Day>,
    #[arg(long, value_name = "FILE", help = Label::OfBacklog.text())]
    pub(crate) backlog: Option<PathBuf>,
    #[arg(long = "booked", value_name = "STAGE=TIME", value_parser = booked, help = Label::PackBooked.text())]
    pub(crate) booked: Vec<(Key, u32)>,
    #[arg(long, help = Label::PackForce.text())]
    pub(crate) force: bool,
    #[arg(long, value_name = "A4|LETTER", value_parser = paper, help = Label::PackPaper.text())]
    pub(crate) paper: Option<Format>,
    #[arg(long, value_name = "SIZE", value_parser = label_sheet, help = Label::PackLabels.text())]
    pub(crate) labels: Option<Labels>,
}
