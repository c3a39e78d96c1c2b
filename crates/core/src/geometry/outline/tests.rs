use super::*;

fn at(u: f64, v: f64) -> Point {
    Point::new(Length::mm(u), Length::mm(v))
}

fn close(found: f64, expected: f64) {
    assert!((found - expected).abs() < 1e-6, "{found} is not {expected}");
}

// Source: circle geometry, worked: chord 6, bulge 1 is a half circle of radius 3 and area
// 14.137167; chord 10 at 90° has radius 7.0710678 and area 14.269908.
#[test]
fn arcs_follow_their_bulge() {
    let half = Segment { from: at(-3.0, 0.0), to: at(3.0, 0.0), bulge: 1.0 };
    close(half.radius().in_mm(), 3.0);
    close(half.cap_area(), 14.137_166_941);
    let quarter = Segment { from: at(0.0, 0.0), to: at(10.0, 0.0), bulge: QUARTER };
    close(quarter.radius().in_mm(), 7.071_067_812);
    close(quarter.cap_area(), 14.269_908_170);
    close(quarter.length().in_mm(), 7.071_067_812 * core::f64::consts::FRAC_PI_2);
}

#[test]
fn a_circle_has_its_area_centre_and_length() {
    let circle = Outline::circle(at(40.0, -7.0), Length::mm(6.0));
    close(circle.area().in_mm2(), 28.274_333_882);
    close(circle.length().in_mm(), 6.0 * core::f64::consts::PI);
    close(circle.centroid().u.in_mm(), 40.0);
    close(circle.centroid().v.in_mm(), -7.0);
    close(circle.reversed().area().in_mm2(), -28.274_333_882);
}

/// A half disc's centroid lies 4r/(3π) from its flat side.
#[test]
fn a_half_disc_balances_where_the_textbook_says() {
    let half = Outline::through([Corner { at: at(3.0, 0.0), bulge: 1.0 }, Corner { at: at(-3.0, 0.0), bulge: 0.0 }]);
    close(half.centroid().v.in_mm(), 4.0 * 3.0 / (3.0 * core::f64::consts::PI));
    close(half.centroid().u.in_mm(), 0.0);
}

/// A third of half a circle round the origin, from 60 to 120 degrees, has the bulge of 60 degrees.
#[test]
fn a_part_of_an_arc_lies_on_it() {
    let half = Segment { from: at(3.0, 0.0), to: at(-3.0, 0.0), bulge: 1.0 };
    let part = half.part(1.0 / 3.0, 2.0 / 3.0);
    let high = 3.0 * libm::sqrt(0.75);
    for (found, expected) in [(part.from, at(1.5, high)), (part.to, at(-1.5, high))] {
        close(found.u.in_mm(), expected.u.in_mm());
        close(found.v.in_mm(), expected.v.in_mm());
    }
    close(part.bulge, libm::tan(core::f64::consts::PI / 12.0));
    close(half.direction().0, 0.0);
    close(half.direction().1, 1.0);
    close(part.direction().0, -libm::sqrt(0.75));
    close(part.direction().1, 0.5);
    let line = Segment { from: at(1.0, 1.0), to: at(5.0, 4.0), bulge: 0.0 };
    assert_eq!(line.part(0.5, 1.0), Segment { from: at(3.0, 2.5), ..line });
    assert_eq!(line.direction(), (0.8, 0.6));
}

#[test]
fn an_outline_keeps_its_shape_wherever_it_lies_and_begins() {
    let corners = [(0.0, 0.0, 0.0), (40.0, 0.0, QUARTER), (50.0, 10.0, 0.0), (50.0, 30.0, 0.0), (0.0, 30.0, 0.0)];
    let outline = Outline::through(corners.map(|(u, v, bulge)| Corner { at: at(u, v), bulge }));
    let placed = outline.placed(Quarters::One, at(100.0, 7.0));
    close(placed.area().in_mm2(), outline.area().in_mm2());
    close(placed.centroid().u.in_mm(), 100.0 - outline.centroid().v.in_mm());
    close(placed.centroid().v.in_mm(), 7.0 + outline.centroid().u.in_mm());
    let begun = placed.begun_within(2, 0.25);
    close(begun.area().in_mm2(), outline.area().in_mm2());
    close(begun.length().in_mm(), outline.length().in_mm());
    assert_eq!(begun.corners()[0].at, placed.segments().nth(2).unwrap().at(0.25));
    // Nothing begins within an arc.
    assert_eq!(placed.begun_within(1, 0.5), placed);
}

#[test]
fn corners_on_a_straight_edge_are_left_out() {
    let corners = [(5.0, 0.0), (10.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0), (0.0, 4.0), (0.0, 0.0), (2.0, 0.0)];
    let outline = Outline::through(corners.map(|(u, v)| Corner { at: at(u, v), bulge: 0.0 }));
    assert_eq!(outline.corners().len(), 4);
    close(outline.area().in_mm2(), 100.0);
}
