//! Joints that go in by hand and hold.

use super::dependencies::{Context, Dependencies};
use super::{Rule, Subject};
use crate::cabinet::panel::{PanelId, Stock};
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit, Severity};
use crate::statics::fit::Clearance;
use crate::statics::fit::moisture::over_joints;
use crate::units::quantity::Length;

/// The joints of each board, or of each that was measured, for a figure of theirs that is over its limit.
fn over(unit: Subject<'_>, measured: bool, figure: impl Fn(Clearance) -> f64, most_per_mille: u32) -> Option<Finding> {
    let (range, most) = (unit.picked.range, f64::from(most_per_mille) / 1000.0);
    // Of equals the last one is taken: what the body has, another back cannot mend.
    let stocks = [(Stock::Back, PanelId::Back), (Stock::Body, PanelId::Top)];
    let boards = stocks.map(|(stock, part)| (unit.picked.board(stock), part)).into_iter();
    let shares = boards
        .filter(|(board, _)| board.is_measured() || !measured)
        .map(|(board, part)| (Clearance::of(range, board, unit.picked.finish).in_most_batches(&figure), part));
    let (share, part) = shares.filter(|(share, _)| *share > most).max_by(|a, b| a.0.total_cmp(&b.0))?;
    let (found, allowed) = (Figure::share(share), Figure::share(most));
    Some(Finding::stops(Rule::JointFit, Question::Finish, found, Limit::AtMost, allowed).of([part]))
}

/// Joints that would not go in. A board that nobody measured yet stops nothing: cuts follow what will be measured.
pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let most_per_mille = unit.picked.range.fit.tight_most_per_mille;
    let most = f64::from(most_per_mille) / 1000.0;
    // Every answer that is tried comes here: the share is worked out where it may matter.
    let share = |fit: Clearance| if fit.tight_at_most() <= most { 0.0 } else { fit.tight() };
    out.extend(over(unit, true, share, most_per_mille));
}

/// Joints that would go in, but not as they should, and parts that move with the moisture.
pub(crate) fn advise(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let build = &unit.picked.range.build;
    let outside = |fit: Clearance| fit.outside(build.clearance_least_mm, build.clearance_most_mm);
    let finding = over(unit, false, outside, unit.picked.range.fit.outside_most_per_mille);
    out.extend(finding.map(|finding| finding.but(Severity::Warns)));
    let over = over_joints(unit.picked, unit.layout).into_iter().max_by(|a, b| a.1.total_cmp(&b.1));
    let (part, lacks) = over.unwrap_or((PanelId::Top, Length::ZERO));
    let most = unit.picked.range.moisture.lacks_most_mm;
    if lacks > most {
        let (found, most) = (Figure::length(lacks), Figure::length(most));
        let finding = Finding::stops(Rule::PartMoisture, Question::Width, found, Limit::AtMost, most);
        out.push(finding.of([part]).but(Severity::Warns));
    }
}

/// The films, and the board of the back.
pub(super) fn dependencies(on: &mut Dependencies, finding: &Finding, _: Context<'_>) {
    on.answer(Question::Finish);
    if finding.parts.contains(&PanelId::Back) {
        on.answer(Question::Back);
    }
}

#[cfg(test)]
mod tests {
    use core::cell::OnceCell;

    use proptest::prelude::*;

    use super::*;
    use crate::cabinet::blank::Coated;
    use crate::cabinet::layout::{Layout, Picked};
    use crate::choice::Choice;
    use crate::testing::demo;
    use crate::units::quantity::Length;

    proptest! {
        /// The quick bound spares work and decides nothing: what is found is what the exact share says.
        #[test]
        fn a_fit_is_found_tight_by_its_exact_share(
            clearance in -0.1..0.4_f64, cut in 0.0..0.4_f64, within in 0.0..0.4_f64, most_per_mille in 0_u32..=300,
        ) {
            let mut range = demo();
            range.boards.iter_mut().for_each(|board| board.measured_mm = Some(board.nominal_mm));
            range.build.clearance_mm = Length::mm(clearance);
            (range.fit.cut_mm, range.fit.within_batch_mm) = (Length::mm(cut), Length::mm(within));
            range.fit.tight_most_per_mille = most_per_mille;
            let choice = Choice::first_of(&range).unwrap();
            let picked = Picked::of(&range, &choice).unwrap();
            let (layout, cut) = (Layout::of(picked, &choice).unwrap(), OnceCell::new());
            let (coated, work) = (Coated::of(picked), OnceCell::new());
            let mut out = Vec::new();
            let (choice, layout, cut, work) = (&choice, &layout, &cut, &work);
            check(&mut out, Subject { picked, choice, layout, blanks: &[], coated, cut, work });
            let exact = [Stock::Back, Stock::Body].map(|stock| {
                Clearance::of(&range, picked.board(stock), picked.finish).in_most_batches(Clearance::tight)
            });
            let (exact, most) = (exact[0].max(exact[1]), f64::from(most_per_mille) / 1000.0);
            prop_assert_eq!(!out.is_empty(), exact > most, "{} {}", exact, most);
        }
    }
}
