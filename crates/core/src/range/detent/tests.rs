use super::*;
use crate::testing::demo;

// Worked for boards of 18 mm: the leaf's front face is 19 mm before the stop, the nose begins 0.4 before that. At a slope of 0.8
// the sine is 0.624 695 and the cosine 0.780 869. The fillet, of 3.1 mm, takes 3.1 × 0.219 131 / 0.624 695 = 1.087 42 mm; the flank
// goes down 1.8 − 2.166 667 × 0.219 131 = 1.325 216 over 1.656 520 mm; the tip is 2.166 667 × 0.624 695 = 1.353 506 further out.
// The front flank goes up from 9.625 216 to 1.8 + 3.25 × 1.780 869 = 7.587 824, so over 2.546 740 mm, and the round end of 3.25 mm
// stands 3.25 − 3.25 × 0.624 695 = 1.219 741 beyond that.
#[test]
fn a_tongue_measures_as_by_hand() {
    let detent = Detent::of(&demo().build, Length::mm(18.0)).unwrap();
    let close = |found: Length, expected: f64| assert!((found.in_mm() - expected).abs() < 1e-4, "{found:?} {expected}");
    let (foot, (rear, low), tip) = detent.rear_flank();
    close(foot, 20.487_42);
    close(rear, 22.143_94);
    close(low, 9.625_22);
    close(tip, 23.497_45);
    close(detent.out(), 23.497_45 + 1.353_51 + 2.546_74 + 1.219_74);
    close(detent.lever(), 85.9 + 23.497_45);
    // The round end begins 1.870 mm beyond the nose: 1.8 / (1 + 1.5 × 1.870 / 109.397).
    close(detent.lifts_by(), 1.755_00);
    let mut build = demo().build;
    build.detent_rise_mm = Length::ZERO;
    assert_eq!(Detent::of(&build, Length::mm(18.0)), None);
}

/// The bound of a height is that height's own: a tongue as high as it says has the lever that was asked for, whatever the height
/// was before.
#[test]
fn a_height_is_found_for_a_lever() {
    for height in [4.0, 6.5, 9.0].map(Length::mm) {
        let mut build = demo().build;
        build.detent_tongue_mm = height;
        let detent = Detent::of(&build, Length::mm(18.0)).unwrap();
        build.detent_tongue_mm = detent.tongue_for(14.0);
        let found = Detent::of(&build, Length::mm(18.0)).unwrap();
        assert!((found.lever() / found.tongue - 14.0).abs() < 1e-9, "{height:?} {found:?}");
        assert!((detent.tongue_for(detent.lever() / height) - height).abs() < Length::mm(1e-9));
    }
}
