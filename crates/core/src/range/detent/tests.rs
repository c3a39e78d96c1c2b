use super::*;
use crate::testing::demo;

// Worked for boards of 18 mm: the leaf's front face is 19 mm before the stop, the nose begins 0.4 before that. At a slope of 0.6
// the sine is 0.514 496 and the cosine 0.857 493. The fillet, of 3.1 mm, takes 3.1 × 0.142 507 / 0.514 496 = 0.858 65 mm; the flank
// goes down 2.1 − 2 × 0.142 507 = 1.814 986 over 3.024 977 mm; the tip is 2 × 0.514 496 = 1.028 992 further out.
// The front flank goes up from 10.014 986 to 2.2 + 3 × 1.857 493 = 7.772 478, so over 3.737 512 mm, and the round end of 3 mm
// stands 3 − 3 × 0.514 496 = 1.456 512 beyond that.
#[test]
fn a_tongue_measures_as_by_hand() {
    let detent = Detent::of(&demo().build, Length::mm(18.0)).unwrap();
    let close = |found: Length, expected: f64| assert!((found.in_mm() - expected).abs() < 1e-4, "{found:?} {expected}");
    let (foot, (rear, low), tip) = detent.rear_flank();
    close(foot, 20.258_65);
    close(rear, 23.283_63);
    close(low, 10.014_99);
    close(tip, 24.312_62);
    close(detent.out(), 24.312_62 + 1.028_99 + 3.737_51 + 1.456_51);
    close(detent.lever(), 65.9 + 24.312_62);
    // 6.223 mm beyond the nose: 2.2 / (1 + 1.5 × 6.223 / 90.213).
    close(detent.lifts_by(), 1.993_73);
    let mut build = demo().build;
    build.detent_rise_mm = Length::ZERO;
    assert_eq!(Detent::of(&build, Length::mm(18.0)), None);
}
