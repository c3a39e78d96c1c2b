use super::*;

mod sweep;

// Worked: 34 mm in a leaf of 400 × 600 mm, 20 mm of wood beside it and a rounding of 6: 43 mm from the free edge,
// half way up, beside a stop that reaches over less than that.
#[test]
fn a_finger_hole_stands_at_the_free_edge() {
    let mut build = crate::testing::demo().build;
    let behind = |covered, build: &Build, width, hung| {
        let [left, right, under, over, covered] = [100.0, 100.0 + width, 40.0, 640.0, covered].map(Length::mm);
        let hole = Leaf { left, right, under, over, axis: left, covered }.finger_hole(build, Length::mm(18.0), hung);
        hole.map(|hole| (hole.u.in_mm(), hole.v.in_mm()))
    };
    let of = |build: &Build, width, hung| behind(22.0, build, width, hung);
    assert_eq!(of(&build, 400.0, Hung::Left), Some((357.0, 300.0)));
    assert_eq!(of(&build, 400.0, Hung::Right), Some((43.0, 300.0)));
    assert_eq!(of(&build, 86.0, Hung::Right), Some((43.0, 300.0)));
    assert_eq!(of(&build, 85.9, Hung::Right), None, "no wood is left beside it");
    // A stop that reaches further moves it: no finger goes into wood.
    assert_eq!(behind(30.0, &build, 400.0, Hung::Right), Some((47.0, 300.0)));
    build.finger_hole_mm = Length::ZERO;
    assert_eq!(of(&build, 400.0, Hung::Left), None);
}
