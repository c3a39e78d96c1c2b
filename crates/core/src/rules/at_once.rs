//! A part that meets many joints at the same moment is hard to bring in: tabs of one length, with nobody to guide each.

use super::{Proof, Rule};
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit};

/// No part meets more of its joints at once than the range says; what is staggered is met one after another.
pub(crate) fn prove(out: &mut Vec<Finding>, proof: Proof<'_>) {
    let most = u32::from(proof.build.joints_at_once_most);
    let worst = proof.assembly.steps.iter().max_by_key(|step| step.at_once);
    if let Some(step) = worst.filter(|step| step.at_once > most) {
        let (found, most) = (Figure::count(step.at_once), Figure::count(most));
        out.push(Finding::stops(Rule::AtOnce, Question::Bays, found, Limit::AtMost, most).of([step.part]));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cabinet::assembly::Assembly;
    use crate::cabinet::case::Case;
    use crate::cabinet::layout::{Layout, Picked};
    use crate::cabinet::panel::PanelId;
    use crate::choice::Choice;
    use crate::testing::demo;

    // Worked: the low unit as it begins has four uprights with two hooks each, so its back meets eight of them at once; its top
    // meets the rear tabs of four uprights and three of the back, then four, then what stands before the uprights.
    #[test]
    fn joints_are_counted_rank_by_rank() {
        let range = demo();
        let choice = Choice::first_of(&range).unwrap();
        let picked = Picked::of(&range, &choice).unwrap();
        let layout = Layout::of(picked, &choice).unwrap();
        let assembly = Assembly::of(picked, &Case::of(picked, &choice, &layout).unwrap());
        let at = |id| assembly.steps.iter().find(|step| step.part == id).unwrap().at_once;
        assert_eq!((at(PanelId::Back), at(PanelId::Top), at(PanelId::BaseUpper)), (8, 7, 0));
        for (most, rules) in [(8, &[][..]), (7, &[Rule::AtOnce])] {
            let mut build = range.build.clone();
            build.joints_at_once_most = most;
            let mut out = Vec::new();
            prove(&mut out, Proof { assembly: &assembly, layout: &layout, build: &build });
            assert_eq!(out.iter().map(|finding| finding.rule).collect::<Vec<_>>(), rules);
        }
    }
}
