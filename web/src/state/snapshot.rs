//! All that follows from a choice.

use slotwright_core::business::built::Built;
use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::order::derive::derive_unproven;
use slotwright_core::range::Range;
use slotwright_core::rules::finding::Finding;
use slotwright_core::solver::{Options, Run, Size, options, runs};
use slotwright_core::units::day::Day;

use crate::browser::first_view::turn;

/// What is known about the present choice.
#[derive(Clone, Debug, PartialEq)]
pub struct Snapshot {
    /// What is picked.
    pub choice: Choice,
    /// What stops the order.
    pub findings: Vec<Finding>,
    /// What can be built of it.
    pub built: Option<Built>,
    /// Whether nothing stops the order; the desk proves the assembly when it is ordered.
    pub orderable: bool,
    /// What can be taken.
    pub options: Option<Options<Option<Finding>>>,
    /// The valid sets of width, height, depth and the bow of the ends.
    pub runs: [Vec<Run<Option<Finding>>>; Size::ALL.len()],
}

/// What stops a choice, what can be built of it, and whether nothing stops it.
fn judged(range: &Range, choice: &Choice, today: Day) -> (Vec<Finding>, Option<Built>, bool) {
    let backlog = Backlog::default();
    let derived = derive_unproven(range, choice, today, &backlog);
    let orderable = derived.is_free();
    (derived.findings, derived.built, orderable)
}

impl Snapshot {
    /// What is known about the first choice, found out in several turns: people wait for the page as it begins.
    pub async fn first(range: &Range, choice: Choice, today: Day) -> Self {
        turn().await;
        let (findings, built, orderable) = judged(range, &choice, today);
        turn().await;
        let options = options(range, &choice);
        turn().await;
        let runs = Size::ALL.map(|size| runs(range, &choice, size));
        turn().await;
        Self { choice, findings, built, orderable, options, runs }
    }

    /// What is known about a choice; what it has in common with the one before is taken from there.
    pub(super) fn of(range: &Range, choice: Choice, today: Day, before: Option<&Self>) -> Self {
        let (findings, built, orderable) = judged(range, &choice, today);
        let options = options(range, &choice);
        // The set of a size does not depend on that size: while one is dragged, its own stays.
        let alike = |before: &&Self, size: Size| before.choice.with(&size.to(size.of(&choice)), range) == choice;
        let runs = Size::ALL.map(|size| match before.filter(|before| alike(before, size)) {
            Some(before) => before.runs(size).to_vec(),
            None => runs(range, &choice, size),
        });
        Self { choice, findings, built, orderable, options, runs }
    }

    /// The valid set of a size.
    pub fn runs(&self, size: Size) -> &[Run<Option<Finding>>] {
        let [width, height, depth, bow] = &self.runs;
        match size {
            Size::Width => width,
            Size::Height => height,
            Size::Depth => depth,
            Size::Bow => bow,
        }
    }
}
