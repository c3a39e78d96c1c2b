//! `slotwright range`: validates a range file.

use serde::Serialize;
use slotwright_core::range::Range;

use crate::args::RangeFile;
use crate::error::FileError;
use crate::inputs;
use crate::output::{self, DIFFERS, GOOD};

/// The report of `slotwright range --json`.
#[derive(Debug, Serialize, schemars::JsonSchema)]
pub(crate) struct RangeReport {
    /// Always `slotwright-range-report`.
    format: &'static str,
    /// Version of this format.
    version: u32,
    /// The file.
    file: String,
    /// SHA-256 over the canonical JSON of the range, if it is right.
    digest: Option<String>,
    /// Everything wrong with it.
    problems: Vec<ProblemReport>,
}

/// One thing wrong.
#[derive(Debug, Serialize, schemars::JsonSchema)]
struct ProblemReport {
    /// Line, from 1.
    line: u32,
    /// Column, from 1.
    column: u32,
    /// The place in the file's own names.
    path: String,
    /// What is wrong.
    wrong: String,
}

pub(super) fn run(asked: &RangeFile) -> Result<u8, FileError> {
    let read = inputs::range(Some(&asked.file));
    if asked.json {
        let (range, problems) = match read {
            Ok(range) => (Some(range), Vec::new()),
            Err(FileError::Range { problems, .. }) => (None, problems.0),
            Err(error) => return Err(error),
        };
        let count = |number: usize| u32::try_from(number).unwrap_or(u32::MAX);
        let code = if problems.is_empty() { GOOD } else { DIFFERS };
        let report = RangeReport {
            format: "slotwright-range-report",
            version: 1,
            file: asked.file.display().to_string(),
            digest: range.map(|range| range.digest().to_string()),
            problems: problems
                .into_iter()
                .map(|problem| ProblemReport {
                    line: count(problem.line),
                    column: count(problem.column),
                    wrong: problem.wrong.to_string(),
                    path: problem.path,
                })
                .collect(),
        };
        output::print([serde_json::to_string_pretty(&report).unwrap_or_default()])?;
        return Ok(code);
    }
    output::print(summary(&read?))?;
    Ok(GOOD)
}

fn summary(range: &Range) -> Vec<String> {
    let names = |names: Vec<&str>| names.join(", ");
    vec![
        format!("{} of {}: right", range.name, range.workshop),
        format!("  models    {}", names(range.models.iter().map(|model| model.name.as_str()).collect())),
        format!("  boards    {}", names(range.boards.iter().map(|board| board.name.as_str()).collect())),
        format!("  finishes  {}", names(range.finishes.iter().map(|finish| finish.name.as_str()).collect())),
        format!("  digest    {}", range.digest()),
    ]
}
