//! Orders as a workshop takes them in: each is read, its range found, and all that it promises derived again, with the
//! batches of boards that it will be cut from.

use crate::input::seal::Digest;
use crate::order::derive::{Derived, derive};
use crate::order::spec::{self, Checked, Difference, OrderSpec, SpecError, read};
use crate::range::Range;

/// A range that orders may be of.
#[derive(Clone, Debug)]
pub struct KnownRange {
    digest: Digest,
    range: Range,
    cut_by: Option<Range>,
}

/// What came of an order.
#[derive(Clone, Debug)]
pub struct Verified<'a> {
    /// What does not come out as it was promised, and what stops the order, also as it is cut.
    pub checked: Checked,
    /// The unit as it is cut: from the measured batches, if there are any, and by the cutter that is set.
    pub cut: Derived<'a>,
    /// What these make different from what was promised: parts, and with them mass, as they should.
    pub differs_as_cut: Vec<Difference>,
    /// Whether it holds as it was promised, and only what is measured or cut by otherwise stops it.
    pub stops_as_cut: bool,
}

impl KnownRange {
    /// A range, and the same as parts are cut by it: with the batches that were measured since, and with another cutter.
    pub fn of(range: Range, cut_by: Range) -> Self {
        let digest = range.digest();
        let cut_by = Some(cut_by).filter(|cut_by| *cut_by != range);
        Self { digest, range, cut_by }
    }

    /// The digest by which orders name it.
    pub const fn digest(&self) -> Digest {
        self.digest
    }

    /// The range as its file has it.
    pub const fn range(&self) -> &Range {
        &self.range
    }

    /// The range by which parts are cut.
    pub fn cut_by(&self) -> &Range {
        self.cut_by.as_ref().unwrap_or(&self.range)
    }

    /// Derives an order of this range again, and whether it can be cut as that is set.
    ///
    /// # Errors
    ///
    /// Work is booked at a stage that the range does not have.
    pub fn verify<'a>(&'a self, spec: &'a OrderSpec) -> Result<Verified<'a>, SpecError> {
        if let Some(stage) = spec.backlog.strange(&self.range) {
            return Err(SpecError::UnknownStage { stage: stage.clone() });
        }
        let derived = |range| derive(range, &spec.choice, spec.ordered_on, &spec.backlog);
        let promised = derived(&self.range);
        let mut checked = spec::compare(spec, &promised);
        let Some(cut_by) = &self.cut_by else {
            return Ok(Verified { checked, cut: promised, differs_as_cut: Vec::new(), stops_as_cut: false });
        };
        let cut = derived(cut_by);
        let differs_as_cut = spec::compare(spec, &cut);
        let holds_as_promised = checked.holds();
        for stop in differs_as_cut.stops {
            if !checked.stops.iter().any(|known| known.is_like(&stop)) {
                checked.stops.push(stop);
            }
        }
        let stops_as_cut = holds_as_promised && !checked.holds();
        Ok(Verified { checked, cut, differs_as_cut: differs_as_cut.differences, stops_as_cut })
    }
}

/// Reads an order and finds its range among those that are known.
///
/// # Errors
///
/// It is no order, it was changed after it was written, or nobody knows its range.
pub fn read_known<'k>(
    bytes: &[u8],
    known: &(impl Iterator<Item = &'k KnownRange> + Clone),
) -> Result<(OrderSpec, &'k KnownRange), SpecError> {
    let range = |digest| known.clone().find(|known| known.digest == digest);
    let changed = |spec: &OrderSpec| range(spec.range.digest).map(|known| spec::check(spec, &known.range));
    let spec = read(bytes).map_err(|error| error.with_change(changed))?;
    let digest = spec.range.digest;
    let known = range(digest).ok_or(SpecError::UnknownRange { digest })?;
    Ok((spec, known))
}
