//! What `slotwright nest` can be asked.

use std::path::PathBuf;
use std::time::Duration;

use clap::Args;
use slotwright_core::words::help::Label;

use super::Over;
use super::typed::seconds;

#[derive(Args, Debug)]
pub(crate) struct Nest {
    #[arg(value_name = "INSTANCE.json", help = Label::NestInstance.text())]
    pub(crate) instance: PathBuf,
    #[arg(long, value_name = "S", default_value = "2", value_parser = seconds, help = Label::NestSeconds.text())]
    pub(crate) seconds: Duration,
    #[arg(long, value_name = "PLACEMENT.json", help = Label::NestOut.text())]
    pub(crate) out: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) over: Over,
}
