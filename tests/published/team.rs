//! What people carry together.

use slotwright_core::range::Range;
use slotwright_core::units::quantity::Mass;
use slotwright_tests::DEMO;

// Source: HSE L23, guidance to the Manual Handling Operations Regulations 1992, team handling: two people carry two
// thirds of the sum of what each could lift alone, three half of it; 25 and 25 kg give 33 kg. Worked example of a railway
// safety page: 20 and 20 kg give 26.6 kg. Figures there are cut off after the digits that they show.
#[test]
fn two_carry_two_thirds_and_three_half() {
    for (one, two, too_much, three) in [("25", "33", "33.4", 37.5), ("20", "26.6", "26.7", 30.0)] {
        let with = |two: &str| {
            let text = DEMO.replace("one_person_kg = 25", &format!("one_person_kg = {one}"));
            Range::parse(&text.replace("two_people_kg = 33", &format!("two_people_kg = {two}")))
        };
        let range = with(two).expect("what the guidance says is allowed");
        assert!((range.handling.together(3).in_kg() - three).abs() < 1e-9);
        assert!(
            range.handling.together(2) > range.handling.together(1) && range.handling.together(2) < Mass::kg(three)
        );
        let refused = with(too_much).expect_err("more than the guidance says is refused");
        assert!(refused.0.iter().any(|problem| problem.path.contains("handling.two_people_kg")), "{refused:?}");
    }
}
