//! The order of leaves and their stops.

use super::*;

/// The tongue of a detent reaches over its leaf, so that goes in first; without one it goes in last, as doors do. Neither is lifted
/// by more than its tabs and pivots take.
#[test]
fn a_leaf_goes_in_before_its_stop_where_that_has_a_detent() {
    let mut range = demo();
    let mut seen = 0;
    for rise in [range.build.detent_rise_mm, Length::ZERO] {
        range.build.detent_rise_mm = rise;
        for choice in choices(&range, 5, Wanted::Valid).take(60) {
            let (picked, case) = made(&range, &choice);
            let assembly = Assembly::of(picked, &case);
            assert!(assembly.is_proven(), "{choice:?}");
            let step = |part| assembly.steps.iter().position(|step| step.part == part);
            for bay in (1..=6).filter(|bay| step(PanelId::Leaf(*bay)).is_some()) {
                let [leaf, stop] = [PanelId::Leaf(bay), PanelId::Stop(bay)].map(|part| step(part).unwrap());
                assert_eq!(leaf < stop, rise > Length::ZERO, "{choice:?}");
                for step in [leaf, stop].map(|at| &assembly.steps[at]) {
                    assert_eq!(step.detent, rise > Length::ZERO);
                    let travel: Length = step.way.iter().map(|leg| leg.travel).sum();
                    assert!(step.way.len() == 1 && travel < Length::mm(25.0), "{travel:?} of {choice:?}");
                }
                seen += 1;
            }
        }
    }
    assert!(seen > 60, "{seen}");
}
