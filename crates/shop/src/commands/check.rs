//! `slotwright check`: derives orders again and reports every difference.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

use slotwright_core::order::intake::{KnownRange, Verified, read_known};
use slotwright_core::order::spec::{BYTES_MOST, SpecError};
use slotwright_core::range::Range;
use slotwright_core::words::tool::Label;

use crate::args::{Batches, Check};
use crate::error::FileError;
use crate::output::{self, DIFFERS, GOOD, UNREADABLE};
use crate::{files, inputs};

mod report;
mod text;

pub(crate) use report::Report;
use report::{FileReport, OrderReport, Outcome, RangeAtHand};

/// A range that orders may be of, and what reports say of it.
struct RangeOnFile {
    known: KnownRange,
    shown: RangeAtHand,
}

impl RangeOnFile {
    fn of(range: Range, file: &Path, batches: &Batches) -> Self {
        let mut measured = range.clone();
        batches.put_into(&mut measured);
        Self { shown: RangeAtHand::of(&range, file), known: KnownRange::of(range, measured) }
    }
}

pub(super) fn run(asked: &Check) -> Result<u8, FileError> {
    let mut ranges = Vec::new();
    if asked.ranges.is_empty() {
        ranges.push((Path::new(inputs::DEMO_NAME), inputs::range(None)?));
    }
    for path in &asked.ranges {
        ranges.push((path, inputs::range(Some(path))?));
    }
    asked.measured.check(&ranges.iter().map(|(_, range)| range).collect::<Vec<_>>())?;
    let known: Vec<RangeOnFile> =
        ranges.into_iter().map(|(file, range)| RangeOnFile::of(range, file, &asked.measured)).collect();
    let mut files = check_all(&asked.files, &known);
    say_same(&mut files);
    let codes = files.iter().map(|file| match file.result {
        Outcome::Holds { .. } => GOOD,
        Outcome::Differs { .. } => DIFFERS,
        Outcome::Unreadable { .. } => UNREADABLE,
    });
    let code = codes.max().unwrap_or(GOOD);
    if asked.json {
        output::document(&Report::of(files))?;
    } else {
        output::print(files.iter().flat_map(text::lines))?;
    }
    Ok(code)
}

/// Names for every order that was given before the file that held it first.
fn say_same(files: &mut [FileReport]) {
    let mut first: BTreeMap<String, String> = BTreeMap::new();
    for FileReport { file, result } in files {
        if let Outcome::Holds { order } | Outcome::Differs { order, .. } = result {
            match first.get(&order.digest.to_string()) {
                Some(first) => order.same_as = Some(first.clone()),
                None => drop(first.insert(order.digest.to_string(), file.clone())),
            }
        }
    }
}

/// Checks the files on all cores; the answers stay in the order of the files.
fn check_all<P: AsRef<Path> + Sync>(files: &[P], known: &[RangeOnFile]) -> Vec<FileReport> {
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
    let result =
        || Outcome::Unreadable { reason: Label::BrokeOff.text().into(), hint: Label::CheckOneByOne.text().into() };
    files.iter().map(|file| FileReport { file: file.as_ref().display().to_string(), result: result() }).collect()
}

fn check_one(path: &Path, known: &[RangeOnFile]) -> Outcome {
    let most = u64::try_from(BYTES_MOST).unwrap_or(u64::MAX);
    let bytes = match files::bytes(path, most) {
        Ok(bytes) => bytes,
        Err(fault) => return Outcome::Unreadable { reason: fault.to_string(), hint: fault.hint().text().into() },
    };
    let checked = read_known(&bytes, &known.iter().map(|on_file| &on_file.known)).and_then(|(spec, range)| {
        let Verified { checked, cut, differs_as_cut, .. } = range.verify(&spec)?;
        let shown = known.iter().find(|on_file| on_file.known.digest() == range.digest()).map(|on_file| &on_file.shown);
        let shown = shown.cloned().ok_or(SpecError::UnknownRange { digest: range.digest() })?;
        Ok(Outcome::of(checked, OrderReport::of(&spec, &cut, differs_as_cut, shown)))
    });
    checked.unwrap_or_else(|error| Outcome::Unreadable { reason: error.to_string(), hint: error.hint().into() })
}
