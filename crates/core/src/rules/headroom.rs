//! The height that a unit takes while it is put together.

use super::dependencies::{Context, Dependencies, Direction, ONE};
use super::{Proof, Rule, Subject};
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit};
use crate::units::quantity::{Dim, Length};

/// A unit whose parts cannot be lifted over each other under the ceiling that the customer gave is not sold for that room.
pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let Some(ceiling) = unit.choice.place.ceiling_mm.map(Dim::length) else { return };
    out.extend(over(Rule::CeilingHeight, unit.layout.lifted(&unit.picked.range.build), ceiling));
}

/// No step takes more height than the unit and what the range allows beyond it.
pub(crate) fn prove(out: &mut Vec<Finding>, proof: Proof<'_>) {
    let most = proof.layout.height + proof.build.headroom_mm;
    out.extend(over(Rule::Headroom, proof.assembly.reaches(), most));
}

fn over(rule: Rule, found: Length, most: Length) -> Option<Finding> {
    let (height, allowed) = (Figure::length(found), Figure::length(most));
    (found > most).then(|| Finding::stops(rule, Question::Height, height, Limit::AtMost, allowed))
}

/// The ceiling, and what the height comes from: uprights are lifted over two base plates.
pub(super) fn dependencies(on: &mut Dependencies, _: &Finding, context: Context<'_>) {
    on.size(Question::Height, Direction::Down, ONE);
    on.answer(Question::Place);
    on.film(context);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cabinet::assembly::Assembly;
    use crate::cabinet::case::Case;
    use crate::cabinet::layout::{Layout, Picked};
    use crate::choice::Choice;
    use crate::choice::change::Change;
    use crate::rules::sample::{Wanted, choices};
    use crate::rules::{can_be_made, judge_stops, prove};
    use crate::testing::demo;

    /// What is judged from the layout alone is what the proof finds, part by part.
    #[test]
    fn the_height_that_is_judged_is_the_one_that_is_proven() {
        let mut range = demo();
        for (short, rise) in [(0.5, 20.0), (0.0, 20.0), (5.0, 45.0)] {
            (range.build.tab_short_mm, range.build.hook_rise_mm) = (Length::mm(short), Length::mm(rise));
            for choice in choices(&range, 71, Wanted::Valid).take(40) {
                let picked = Picked::of(&range, &choice).unwrap();
                let layout = Layout::of(picked, &choice).unwrap();
                let assembly = Assembly::of(picked, &Case::of(picked, &choice, &layout).unwrap());
                let apart = (assembly.reaches() - layout.lifted(&range.build)).abs();
                assert!(apart < Length::mm(1e-6), "{apart:?} {choice:?}");
            }
        }
    }

    /// Under a ceiling as high as the lifted upright it can be made, a tenth of a millimetre below it cannot, and a lower
    /// unit is the way out.
    #[test]
    fn a_unit_goes_together_under_its_ceiling() {
        let range = demo();
        let model = range.models.iter().find(|model| model.key.as_str() == "bulrush").unwrap();
        let choice = Choice::starting(model).unwrap();
        // 1 800 mm, two base plates of 17.892 mm, twice 0.5 mm: 1 834.784 mm.
        let under = |tenths| choice.with(&Change::CeilingMm(Some(Dim::tenths(tenths))), &range);
        assert!(can_be_made(&range, &under(18_348)));
        let found = judge_stops(&range, &under(18_347)).findings;
        let [finding] = &found[..] else { panic!("{found:?}") };
        assert_eq!(
            (finding.rule, finding.about, finding.found.value),
            (Rule::CeilingHeight, Question::Height, 1834.78)
        );
        let derived = crate::order::derive::advise(&range, &under(18_347), None);
        let remedies = &derived.iter().find(|finding| finding.rule == Rule::CeilingHeight).unwrap().remedies;
        assert_eq!(remedies.first(), Some(&Change::HeightMm(Dim::mm(1790))));
    }

    /// A range that allows less height than an upright takes over the base has its units stopped by the proof.
    #[test]
    fn a_unit_that_takes_more_height_than_the_range_allows_is_stopped() {
        let range = demo();
        let choice = Choice::first_of(&range).unwrap();
        let picked = Picked::of(&range, &choice).unwrap();
        let layout = Layout::of(picked, &choice).unwrap();
        let assembly = Assembly::of(picked, &Case::of(picked, &choice, &layout).unwrap());
        let takes = assembly.reaches() - layout.height;
        for (headroom, rules) in [(takes + Length::mm(0.01), &[][..]), (takes - Length::mm(0.01), &[Rule::Headroom])] {
            let mut build = range.build.clone();
            build.headroom_mm = headroom;
            let mut out = Vec::new();
            prove(&mut out, Proof { assembly: &assembly, layout: &layout, build: &build });
            assert_eq!(out.iter().map(|finding| finding.rule).collect::<Vec<_>>(), rules);
        }
    }
}
