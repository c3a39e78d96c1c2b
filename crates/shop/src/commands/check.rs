//! `slotwright check`: derives orders again and reports every difference.

use std::path::Path;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

use serde::Serialize;
use slotwright_core::finding::Severity;
use slotwright_core::range::Range;
use slotwright_core::rules::judge;
use slotwright_core::seal::Digest;
use slotwright_core::spec::{self, BYTES_MOST, Checked, OrderSpec, SpecError};
use slotwright_core::words;

use crate::args::{Batches, Check, Measured};
use crate::files::{self, FileError};
use crate::output::{self, DIFFERS, GOOD, Tone, UNREADABLE, tinted};

/// The report of `slotwright check --json`.
#[derive(Debug, Serialize, schemars::JsonSchema)]
pub(crate) struct Report {
    /// Always `slotwright-check`.
    format: &'static str,
    /// Version of this format.
    version: u32,
    /// The files in the order in which they were named.
    files: Vec<FileReport>,
}

/// What came of one file.
#[derive(Debug, Serialize, schemars::JsonSchema)]
struct FileReport {
    /// Its name.
    file: String,
    /// What came of it.
    #[serde(flatten)]
    result: Outcome,
}

/// What came of one file.
#[derive(Debug, Serialize, schemars::JsonSchema)]
#[serde(tag = "result", rename_all = "kebab-case")]
enum Outcome {
    /// Everything that was promised comes out again.
    Holds,
    /// Something does not.
    Differs(Checked),
    /// It is no order spec that this tool can check.
    Unreadable {
        /// Why not.
        reason: String,
        /// What to do.
        hint: String,
    },
}

/// Ranges by their digests, and batches that orders will be cut from.
struct Known<'a> {
    ranges: Vec<(Digest, Range)>,
    measured: &'a Batches,
}

impl Known<'_> {
    /// Checks an order against its range, and whether it can be cut from the measured batches; their parts differ from
    /// those that were promised, as they should.
    fn check(&self, spec: &OrderSpec, range: &Range) -> Checked {
        let mut checked = spec::check(spec, range);
        // Boards of other ranges are none of this order's.
        let own = |measured: &&Measured| range.board(&measured.board).is_some();
        let batches = Batches { batches: self.measured.batches.iter().filter(own).cloned().collect() };
        if let Ok(range) = files::measured(range.clone(), &batches)
            && !batches.batches.is_empty()
        {
            let stops = judge(&range, &spec.choice).findings;
            let stops = stops.into_iter().filter(|finding| finding.severity == Severity::Stops);
            checked.stops.extend(stops.filter(|finding| !checked.stops.contains(finding)).collect::<Vec<_>>());
        }
        checked
    }
}

impl Outcome {
    const fn code(&self) -> u8 {
        match self {
            Self::Holds => GOOD,
            Self::Differs(_) => DIFFERS,
            Self::Unreadable { .. } => UNREADABLE,
        }
    }
}

pub(super) fn run(asked: &Check) -> Result<u8, FileError> {
    let mut ranges = vec![files::range(None)?];
    for path in &asked.ranges {
        ranges.push(files::range(Some(path))?);
    }
    let known: Vec<(Digest, Range)> = ranges.into_iter().map(|range| (range.digest(), range)).collect();
    let files = check_all(&asked.files, &Known { ranges: known, measured: &asked.measured });
    let code = files.iter().map(|file| file.result.code()).max().unwrap_or(GOOD);
    if asked.json {
        let report = Report { format: "slotwright-check", version: 1, files };
        output::print([serde_json::to_string_pretty(&report).unwrap_or_default()])?;
    } else {
        output::print(files.iter().flat_map(lines))?;
    }
    Ok(code)
}

/// Checks the files on all cores; the answers stay in the order of the files.
fn check_all<P: AsRef<Path> + Sync>(files: &[P], known: &Known<'_>) -> Vec<FileReport> {
    let cores = thread::available_parallelism().map_or(1, usize::from);
    let share = files.len().div_ceil(cores).max(1);
    let (done, all) = (AtomicUsize::new(0), files.len());
    let check_share = |files: &[P]| -> Vec<FileReport> {
        files
            .iter()
            .map(|file| {
                let path = file.as_ref();
                let report = FileReport { file: path.display().to_string(), result: check_one(path, known) };
                output::progress(done.fetch_add(1, Ordering::Relaxed) + 1, all);
                report
            })
            .collect()
    };
    thread::scope(|scope| {
        let shares: Vec<_> = files.chunks(share).map(|files| (files, scope.spawn(|| check_share(files)))).collect();
        let done = shares.into_iter().flat_map(|(files, share)| share.join().unwrap_or_else(|_| given_up(files)));
        done.collect()
    })
}

/// Every file that was named gets an answer, even if checking one of them went wrong in our own code.
fn given_up<P: AsRef<Path>>(files: &[P]) -> Vec<FileReport> {
    let result = || Outcome::Unreadable {
        reason: "checking this file, or one beside it, broke off: an error of this program".into(),
        hint: "check the files one by one, and tell those who keep this program which one it was".into(),
    };
    files.iter().map(|file| FileReport { file: file.as_ref().display().to_string(), result: result() }).collect()
}

fn check_one(path: &Path, known: &Known<'_>) -> Outcome {
    let most = u64::try_from(BYTES_MOST).unwrap_or(u64::MAX);
    let bytes = match files::bytes(path, most) {
        Ok(bytes) => bytes,
        Err(error) => {
            let hint = "is the name right, and may this file be read?".into();
            return Outcome::Unreadable { reason: error.to_string(), hint };
        }
    };
    let checked = spec::read(&bytes).and_then(|spec| {
        let digest = spec.range.digest;
        let range = known.ranges.iter().find(|(known, _)| *known == digest);
        range.map(|(_, range)| known.check(&spec, range)).ok_or(SpecError::UnknownRange { digest })
    });
    match checked {
        Ok(checked) if checked.holds() => Outcome::Holds,
        Ok(checked) => Outcome::Differs(checked),
        Err(error) => Outcome::Unreadable { reason: error.to_string(), hint: error.hint().into() },
    }
}

fn lines(file: &FileReport) -> Vec<String> {
    let terminal = output::is_terminal();
    let head = |tone, word| format!("{}: {}", file.file, tinted(tone, word, terminal));
    match &file.result {
        Outcome::Holds => vec![head(Tone::Good, "holds")],
        Outcome::Differs(checked) => {
            let mut lines = vec![head(Tone::Bad, "does not hold")];
            lines.extend(checked.stops.iter().map(|finding| format!("  {}", words::sentence(finding))));
            lines.extend(checked.differences.iter().map(|difference| {
                let derived = difference.derived.as_deref().unwrap_or("nothing, it cannot be made");
                format!("  {}: promised {}, derived {derived}", difference.pointer, difference.promised)
            }));
            lines
        }
        Outcome::Unreadable { reason, hint } => vec![
            format!("{}: {reason}", head(Tone::Bad, "unreadable")),
            format!("  {}: {hint}", tinted(Tone::Soft, "hint", terminal)),
        ],
    }
}
