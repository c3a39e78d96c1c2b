//! `slotwright range`: validates a range file.

use serde::Serialize;
use slotwright_core::audit::Audit;
use slotwright_core::range::Range;
use slotwright_core::words;
use slotwright_core::words::tool::{Label, Message};

use crate::args::RangeFile;
use crate::error::FileError;
use crate::inputs;
use crate::output::{self, DIFFERS, GOOD};
use crate::table;

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
    /// Everything that is to be said of it.
    problems: Vec<ProblemReport>,
}

/// One thing to be said of it.
#[derive(Debug, Serialize, schemars::JsonSchema)]
struct ProblemReport {
    /// How much it matters.
    severity: Severity,
    /// Line, from 1.
    line: u32,
    /// Column, from 1.
    column: u32,
    /// The place in the file's own names.
    path: String,
    /// What it is.
    wrong: String,
}

/// How much a problem matters.
#[derive(Clone, Copy, Debug, Serialize, schemars::JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum Severity {
    /// The range cannot be read, or cannot be sold as it stands.
    Error,
    /// Probably not meant, but it stops nothing.
    Warning,
}

/// Exit code 1 if anything is wrong; warnings alone stop nothing.
pub(super) fn run(asked: &RangeFile) -> Result<u8, FileError> {
    let audit = inputs::audited(&asked.file)?;
    if asked.json {
        output::print([serde_json::to_string_pretty(&report(asked, &audit)).unwrap_or_default()])?;
        return Ok(if audit.is_right() { GOOD } else { DIFFERS });
    }
    let path = asked.file.display().to_string();
    let warnings = || audit.remarks.0.iter().map(|remark| Message::Warning(&path, &words::problem(remark)).text());
    match &audit.range {
        Some(range) if audit.is_right() => {
            let right =
                Message::Right { range: &range.name, workshop: &range.workshop, warnings: audit.remarks.0.len() };
            output::print(core::iter::once(right.text()).chain(warnings()).chain(summary(range)))?;
            Ok(GOOD)
        }
        _ => {
            output::print(warnings())?;
            Err(FileError::Faulty { path, problems: audit.faults })
        }
    }
}

fn report(asked: &RangeFile, audit: &Audit) -> RangeReport {
    let count = |number: usize| u32::try_from(number).unwrap_or(u32::MAX);
    let problems = audit.all().map(|(stops, problem)| ProblemReport {
        severity: if stops { Severity::Error } else { Severity::Warning },
        line: count(problem.line),
        column: count(problem.column),
        path: problem.path.clone(),
        wrong: words::wrong(&problem.wrong),
    });
    let range = audit.range.as_ref().filter(|_| audit.is_right());
    RangeReport {
        format: "slotwright-range-report",
        version: 1,
        file: asked.file.display().to_string(),
        digest: range.map(|range| range.digest().to_string()),
        problems: problems.collect(),
    }
}

fn summary(range: &Range) -> Vec<String> {
    let names = |names: Vec<&str>| names.join(", ");
    let row = |head: Label, what: String| [head.text().into(), what];
    let mut rows = vec![
        row(Label::Models, names(range.models.iter().map(|model| model.name.as_str()).collect())),
        row(Label::Boards, names(range.boards.iter().map(|board| board.name.as_str()).collect())),
        row(Label::Finishes, names(range.finishes.iter().map(|finish| finish.name.as_str()).collect())),
    ];
    rows.extend(range.orders_until.map(|last| row(Label::OrdersUntil, last.to_string())));
    rows.push(row(Label::Digest, range.digest().to_string()));
    table::lines("  ", &rows)
}
