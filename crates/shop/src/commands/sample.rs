//! `slotwright sample`: seeded choices, one a line.

use slotwright_core::sample::{Wanted, choices};
use slotwright_core::seal::canonical;

use crate::args::Sample;
use crate::files::{self, FileError};
use crate::output::{self, GOOD};

pub(super) fn run(asked: &Sample) -> Result<u8, FileError> {
    let range = files::range(asked.range.as_deref())?;
    let wanted = if asked.any { Wanted::Any } else { Wanted::Valid };
    let sample = choices(&range, asked.seed, wanted).take(asked.count);
    output::print(sample.map(|choice| canonical(&choice)))?;
    Ok(GOOD)
}
