//! What a workshop wants to know of its range file before anybody orders: can all of it be sold?
//!
//! [`Range::parse`] refuses what cannot be read, or would break the program. An audit looks further. It judges
//! the unit that each model begins with, and searches for what nothing can use; that takes some milliseconds,
//! so only the workshop's tool does it.

use crate::range::parse::{located, place, read};
use crate::range::{Problem, Range, RangeProblems, ReadLog, Wrong};
use crate::words;
use crate::words::remark::Remark;

mod spelling;
mod stages;
mod start;
mod typos;
mod unused;

/// What an audit of a range file found.
#[derive(Clone, Debug, PartialEq)]
pub struct Audit {
    /// The range, if it could be read.
    pub range: Option<Range>,
    /// Why it cannot be read, or cannot be sold as it stands.
    pub faults: RangeProblems,
    /// What is probably not meant, and stops nothing.
    pub remarks: RangeProblems,
}

/// A place of a range file, and what is to be said of it.
type Said = (String, Remark);

/// Reads a range file and looks whether all of it can be sold.
pub fn audit(text: &str) -> Audit {
    let (read, log) = read(text);
    let range = match read {
        Some(range) if log.problems.is_empty() => range,
        read => {
            let faults = explained(text, &log, read.as_ref());
            return Audit { range: None, faults, remarks: RangeProblems(Vec::new()) };
        }
    };
    let (mut faults, mut remarks) = (Vec::new(), Vec::new());
    stages::check(&mut faults, &range);
    start::check(&mut faults, &range);
    unused::check(&mut remarks, &range);
    let placed = |said: Vec<Said>| {
        let problems =
            said.into_iter().map(|(path, remark)| (place(&log, &path), path, Wrong::Text(words::remark(&remark))));
        located(text, problems.collect())
    };
    let (faults, remarks) = (placed(faults), placed(remarks));
    Audit { range: Some(range), faults, remarks }
}

/// Why a range file cannot be read: with the names that were probably meant, and typos as what they are.
/// Nothing if it can be read.
pub fn faults(text: &str) -> RangeProblems {
    let (range, log) = read(text);
    explained(text, &log, range.as_ref())
}

fn explained(text: &str, log: &ReadLog, range: Option<&Range>) -> RangeProblems {
    typos::named(text, located(text, spelling::explained(&log.problems, &log.absent, range)))
}

impl Audit {
    /// Whether nothing is wrong with it.
    pub fn is_right(&self) -> bool {
        self.range.is_some() && self.faults.0.is_empty()
    }

    /// Everything that was found, with whether it stops anything.
    pub fn all(&self) -> impl Iterator<Item = (bool, &Problem)> {
        let faults = self.faults.0.iter().map(|fault| (true, fault));
        faults.chain(self.remarks.0.iter().map(|remark| (false, remark)))
    }
}

#[cfg(test)]
mod tests;
