//! `slotwright nest`: the parts of a published instance on sheets or a strip, as well as the given time allows.
//!
//! One module, one kind of instance: here its search and its placement.

use std::time::Instant;

use slotwright_core::input::fault::ReadError;
use slotwright_core::input::members::{Place, parse};
use slotwright_core::words::file;

use crate::args::Nest;
use crate::error::FileError;
use crate::files;
use crate::output::{self, GOOD};
use instance::Instance;

mod instance;
mod rect_bins;
mod strip_polygons;

/// What was placed: the document, and a line that says how well.
struct Placement {
    document: String,
    said: String,
}

/// Exit code 1 if a part fits nowhere. Nothing is written that did not pass its check.
pub(super) fn run(asked: &Nest) -> Result<u8, FileError> {
    let until = Instant::now() + asked.seconds;
    if let Some(path) = &asked.out {
        files::free(path, asked.over.force)?;
    }
    let text = files::text(&asked.instance)?;
    let path = asked.instance.display().to_string();
    let bad = |error: ReadError| FileError::Json { path: path.clone(), what: file::Label::NoInstance, error };
    let instance = parse(&text).and_then(|value| instance::read(Place::whole(value))).map_err(bad)?;
    let Placement { document, said } = match &instance {
        Instance::RectBins(problem) => rect_bins::place(&path, problem, until)?,
        Instance::StripPolygons(drawn) => strip_polygons::place(&path, drawn, until)?,
    };
    match &asked.out {
        Some(path) => {
            files::write(path, document, asked.over.force)?;
            output::print([said])?;
        }
        None => output::print([document.trim_end()])?,
    }
    Ok(GOOD)
}
