use slotwright_core::geometry::outline::{Corner, QUARTER};

use super::*;

fn outline(corners: &[(f64, f64, f64)]) -> Outline {
    Outline::through(
        corners.iter().map(|(u, v, bulge)| Corner { at: Point::new(Length::mm(*u), Length::mm(*v)), bulge: *bulge }),
    )
}

/// Arcs to both sides, of less and of more than half a circle.
#[test]
fn bounds_hold_their_arcs() {
    for bulge in [QUARTER, -QUARTER, 1.0, -1.0, 2.5, -2.5] {
        let segment = Segment {
            from: Point::new(Length::mm(3.0), Length::mm(-4.0)),
            to: Point::new(Length::mm(10.0), Length::mm(20.0)),
            bulge,
        };
        let [along, across] = around(segment);
        // From the centre, which lies on the line through the middle of the chord.
        let (radius, angle) = (segment.radius().in_mm(), 4.0 * libm::atan(bulge));
        let apothem = radius * libm::cos(angle / 2.0) * bulge.signum() / 25.0;
        let (middle_u, middle_v) = (6.5 - 24.0 * apothem, 8.0 + 7.0 * apothem);
        let start = libm::atan2(-4.0 - middle_v, 3.0 - middle_u);
        for step in 0..=100 {
            let at = start + angle * f64::from(step) / 100.0;
            for ([low, high], place) in
                [(along, middle_u + radius * libm::cos(at)), (across, middle_v + radius * libm::sin(at))]
            {
                assert!(mm(low) <= place + 1e-6 && place <= mm(high) + 1e-6, "{bulge}: {place}");
            }
        }
    }
}

fn mm(hundredths: i64) -> f64 {
    slotwright_core::business::nesting::length(hundredths).in_mm()
}

/// A part of 100 × 60 mm with a tab of 20 × 10 mm at its right end, from 10 to 30 mm: two of them, one upside down, with
/// 8 mm between. Moved up by 8 mm or down by 48 mm the tabs pass each other; less far they meet.
#[test]
fn tabs_that_pass_each_other_let_parts_come_nearer() {
    let upright = [
        (0.0, 0.0, 0.0),
        (90.0, 0.0, 0.0),
        (90.0, 10.0, 0.0),
        (100.0, 10.0, 0.0),
        (100.0, 30.0, 0.0),
        (90.0, 30.0, 0.0),
        (90.0, 60.0, 0.0),
        (0.0, 60.0, 0.0),
    ];
    let upside_down = upright.map(|(u, v, bulge)| (100.0 - u, 60.0 - v, bulge));
    let facing = |corners: &[(f64, f64, f64)]| Facing::of(&bounds(&outline(corners)), [10_000, 6000], 800);
    let ([first, _], [second, _]) = (facing(&upright), facing(&upside_down));
    assert_eq!((first.reach, first.length), (10_000, 6000));
    // Upside down the tab lies from 30 to 50 mm.
    let saved = |offset: i64| first.high.saved(&second.low, offset, -1);
    assert_eq!([0, -4799, -4800, 799, 800].map(saved), [Some(0), Some(0), Some(1000), Some(0), Some(1000)]);
    // Nobody asks for less than this, and past the end there is no neighbour.
    assert_eq!(first.high.saved(&second.low, 800, 1000), None);
    assert_eq!(saved(6800), None);
    assert_eq!(saved(6799), Some(2000));
}
