//! Joints that go in by hand and hold.

use super::dependencies::{Context, Dependencies};
use super::{Rule, RuleCard, Subject};
use crate::finding::{Figure, Finding, Limit, Severity};
use crate::fit::Clearance;
use crate::panel::{PanelId, Stock};
use crate::question::Question;

/// See [`check`] and [`advise`].
pub const JOINT_FIT: RuleCard = RuleCard {
    code: "joint-fit",
    what: "Of the joints of a measured batch in this finish, no larger share is expected to be too tight, or outside the wanted clearance, than the range allows.",
    why: "A joint that is too tight does not go in by hand or splits its film; one that is too loose rattles. Films differ from finish to finish.",
    source: "root of the summed squares of thickness, films and cutting, normally distributed; thickness as in EN 324-1:1993; tolerances and limits from the range file",
};

/// The joints of each measured board, for a figure of theirs that is over its limit.
fn over(unit: Subject<'_>, figure: impl Fn(Clearance) -> f64, most_per_mille: u32) -> Option<Finding> {
    let (range, most) = (unit.picked.range, f64::from(most_per_mille) / 1000.0);
    // Of equals the last one is taken: what the body has, another back cannot mend.
    let stocks = [(Stock::Back, PanelId::Back), (Stock::Body, PanelId::Top)];
    let shares = stocks.into_iter().filter_map(|(stock, part)| {
        let board = unit.picked.board(stock);
        board.measured_points_mm.as_ref()?;
        Some((figure(Clearance::of(range, board, unit.picked.finish)), part))
    });
    let (share, part) = shares.filter(|(share, _)| *share > most).max_by(|a, b| a.0.total_cmp(&b.0))?;
    let (found, allowed) = (Figure::share(share), Figure::share(most));
    Some(Finding::stops(Rule::JointFit, Question::Finish, found, Limit::AtMost, allowed).of([part]))
}

/// Joints that would not go in.
pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    out.extend(over(unit, Clearance::tight, unit.picked.range.fit.tight_most_per_mille));
}

/// Joints that would go in, but not as they should.
pub(crate) fn advise(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let build = &unit.picked.range.build;
    let outside = |fit: Clearance| fit.outside(build.clearance_least_mm, build.clearance_most_mm);
    let finding = over(unit, outside, unit.picked.range.fit.outside_most_per_mille);
    out.extend(finding.map(|finding| finding.but(Severity::Warns)));
}

/// The films, and the board of the back.
pub(super) fn dependencies(on: &mut Dependencies, finding: &Finding, _: Context<'_>) {
    on.answer(Question::Finish);
    if finding.parts.contains(&PanelId::Back) {
        on.answer(Question::Back);
    }
}
