//! `slotwright sample`: seeded choices, one a line.

use slotwright_core::input::seal::canonical;
use slotwright_core::rules::sample::{Wanted, choices};

use crate::args::Sample;
use crate::error::FileError;
use crate::inputs;
use crate::output::{self, GOOD};

pub(super) fn run(asked: &Sample) -> Result<u8, FileError> {
    let range = inputs::range(asked.range.as_deref())?;
    let wanted = if asked.any { Wanted::Any } else { Wanted::Valid };
    let sample = choices(&range, asked.seed, wanted).take(usize::try_from(asked.count).unwrap_or(usize::MAX));
    output::print(sample.map(|choice| canonical(&choice)))?;
    Ok(GOOD)
}
