use super::*;
use crate::pack::testing::{demo, holding, order, with_orders, with_pack};
use crate::pack::{Nesting, Settings};

/// Whether a point lies within an outline, an arc taken as two chords: what is asked about is farther from it.
fn is_within(outline: &Outline, at: Point) -> bool {
    let halves = outline.segments().flat_map(|Segment { from, to, bulge }| {
        let (du, dv) = (to.u - from.u, to.v - from.v);
        // The middle of an arc that turns left lies to the right of its chord.
        let middle = Point::new(from.u + du / 2.0 + dv * (bulge / 2.0), from.v + dv / 2.0 - du * (bulge / 2.0));
        [(from, middle), (middle, to)]
    });
    let crosses = |(from, to): &(Point, Point)| {
        let spans = (from.v > at.v) != (to.v > at.v);
        spans && at.u < from.u + (to.u - from.u) * ((at.v - from.v) / (to.v - from.v))
    };
    halves.filter(crosses).count() % 2 == 1
}

/// Points along a way.
fn along([from, to]: [Point; 2]) -> impl Iterator<Item = Point> {
    (0..=8).map(move |step| Segment { from, to, bulge: 0.0 }.at(f64::from(step) / 8.0))
}

fn each_sheet(range: &Range, mut check: impl FnMut(&Lot<'_>, &Sheet<'_>, &Program)) {
    with_pack(range, &Settings::default(), |pack| {
        pack.sheets().for_each(|(lot, sheet, program)| check(lot, sheet, program));
    });
}

#[test]
fn holes_come_before_outlines_and_small_parts_before_large_ones() {
    let (mut holes, mut parts) = (0, 0);
    each_sheet(&demo(), |_, sheet, Program { cuts, .. }| {
        let sides: Vec<Side> = cuts.iter().map(|cut| cut.side).collect();
        assert!(sides.is_sorted(), "{sides:?}");
        let outside: Vec<&Cut> = cuts.iter().filter(|cut| cut.side == Side::Outside).collect();
        let areas: Vec<f64> = outside.iter().map(|cut| sheet.placed[cut.part].part.panel.area().in_mm2()).collect();
        assert!(areas.is_sorted(), "{areas:?}");
        let mut cut: Vec<usize> = outside.iter().map(|cut| cut.part).collect();
        cut.sort_unstable();
        assert_eq!(cut, (0..sheet.placed.len()).collect::<Vec<_>>());
        (holes, parts) = (holes + cuts.len() - outside.len(), parts + outside.len());
    });
    assert!(holes > 10 && parts > 5, "{holes} {parts}");
}

#[test]
fn the_cutter_goes_down_in_the_waste() {
    each_sheet(&demo(), |lot, sheet, Program { cuts, .. }| {
        let radius = lot.range.build.cutter_mm / 2.0;
        for cut in cuts {
            // It ends a cutter's radius from where the outline begins.
            let begin = cut.outline.corners()[0].at;
            assert!((distance(cut.lead_in[1], begin) - radius).abs() < Length::mm(1e-9));
            for at in along(cut.lead_in) {
                if cut.side == Side::Inside {
                    assert!(is_within(&cut.outline, at), "{at:?}");
                } else {
                    assert!(!sheet.placed.iter().any(|placed| is_within(&placed.outline(), at)), "{at:?}");
                }
            }
        }
    });
}

#[test]
fn a_vacuum_holds_without_anything_left() {
    each_sheet(&holding("\"vacuum\""), |lot, sheet, program| {
        assert_eq!(program.depths.outside, program.depths.through);
        assert_eq!(program.depths.through, sheet.coated(lot) + lot.range.cutting.below_mm);
        assert!(program.cuts.iter().all(|cut| cut.bridges.is_empty() && cut.between.is_empty()));
    });
}

#[test]
fn a_skin_is_left_under_outlines_and_under_no_hole() {
    each_sheet(&holding("{ skin = { thickness_mm = 0.4 } }"), |lot, sheet, program| {
        assert_eq!(program.depths.outside, sheet.coated(lot) - Length::mm(0.4));
        assert!(program.depths.through > sheet.coated(lot));
        assert!(program.cuts.iter().all(|cut| cut.bridges.is_empty() && cut.between.is_empty()));
    });
}

#[test]
fn bridges_hold_every_part() {
    each_sheet(&demo(), |lot, sheet, program| {
        let Hold::Bridges { length_mm, thickness_mm, apart_mm } = lot.range.cutting.hold else { panic!("bridges") };
        assert_eq!(program.depths.outside, sheet.coated(lot) - thickness_mm);
        for cut in &program.cuts {
            if cut.side == Side::Inside {
                assert!(cut.bridges.is_empty());
                continue;
            }
            let plain = sheet.placed[cut.part].rectangle_without_tabs();
            assert!(cut.bridges.len() >= 2);
            for bridge in &cut.bridges {
                assert!((distance(bridge[0], bridge[1]) - length_mm).abs() < Length::mm(1e-9));
                assert!(plain.has_side(bridge[0], bridge[1]));
            }
            // Neighbours on one side are as near as the range wants them.
            for edge in cut.outline.segments().filter(|edge| edge.bulge == 0.0) {
                let on = cut.bridges.iter().filter(|bridge| {
                    let whole = distance(edge.from, bridge[0]) + distance(bridge[0], edge.to);
                    (whole - edge.length()).abs() < Length::mm(1e-6)
                });
                let mut places: Vec<f64> = on.map(|bridge| distance(edge.from, bridge[0]).in_mm()).collect();
                places.sort_by(f64::total_cmp);
                assert!(places.windows(2).all(|two| two[1] - two[0] <= apart_mm.in_mm() + 1e-6), "{places:?}");
            }
        }
    });
}

/// How far a place is from a bridge, which is as wide as the cutter on the left of its edge.
fn from_bridge(at: Point, [from, to]: [Point; 2], width: Length) -> Length {
    let edge = Segment { from, to, bulge: 0.0 };
    let ((du, dv), (u, v)) = (edge.direction(), (at.u - from.u, at.v - from.v));
    let beyond = |place: Length, most: Length| (place - most).max(-place).max(Length::ZERO);
    let (along, across) = (beyond(u * du + v * dv, edge.length()), beyond(v * du - u * dv, width));
    Length::mm(libm::hypot(along.in_mm(), across.in_mm()))
}

/// Places of the cutter's centre along a way, a radius to the left of it and round its corners.
fn centres(way: &[Corner], radius: Length) -> Vec<Point> {
    let beside = |at: Point, (u, v): (f64, f64)| Point::new(at.u - radius * v, at.v + radius * u);
    let segments = way.windows(2).map(|two| Segment { from: two[0].at, to: two[1].at, bulge: two[0].bulge });
    let (mut centres, mut before) = (Vec::new(), None);
    for segment in segments {
        let (u, v) = segment.direction();
        if let Some((from_u, from_v)) = before {
            // Round a corner to the right the centre goes about it.
            let angle = libm::atan2(from_u * v - from_v * u, from_u * u + from_v * v);
            centres.extend((0..=8).filter(|_| angle < -1e-6).map(|step| {
                let (sine, cosine) = libm::sincos(angle * f64::from(step) / 8.0);
                beside(segment.from, (from_u * cosine - from_v * sine, from_v * cosine + from_u * sine))
            }));
        }
        let steps = whole(segment.length().in_mm() * 4.0).max(1);
        centres.extend((0..steps).map(|step| {
            let rest = segment.part(f64::from(step) / f64::from(steps), 1.0);
            beside(rest.from, rest.direction())
        }));
        let back = Segment { from: segment.to, to: segment.from, bulge: -segment.bulge }.direction();
        before = Some((-back.0, -back.1));
        centres.push(beside(segment.to, (-back.0, -back.1)));
    }
    centres
}

/// The cutter takes nothing of any bridge of the sheet, and cuts through everywhere else.
#[test]
fn nothing_cuts_a_bridge_of_any_part() {
    let (mut alone, mut for_neighbours) = (0, 0);
    let mut check = |lot: &Lot<'_>, program: &Program| {
        let cutter = lot.range.build.cutter_mm;
        let radius = cutter / 2.0;
        let bridges: Vec<[Point; 2]> = program.cuts.iter().flat_map(|cut| cut.bridges.iter().copied()).collect();
        let nearest =
            |at| bridges.iter().map(|bridge| from_bridge(at, *bridge, cutter)).fold(Length::mm(1e9), Length::min);
        for cut in program.cuts.iter().filter(|cut| cut.side == Side::Outside) {
            for at in cut.between.iter().flat_map(|way| centres(way, radius)) {
                assert!(nearest(at) >= radius - Length::mm(1e-6), "{at:?} {:?}", nearest(at));
            }
            let cut_through: Vec<Segment> = cut
                .between
                .iter()
                .flat_map(|way| way.windows(2))
                .map(|two| Segment { from: two[0].at, to: two[1].at, bulge: two[0].bulge })
                .collect();
            let places =
                cut.outline.segments().flat_map(|edge| [0.1, 0.5, 0.9].map(|share| edge.part(share, 1.0).from));
            for at in places.filter(|at| nearest(*at) > radius * 5.0) {
                let on = |segment: &Segment| {
                    let (one, other) = (distance(segment.from, at), distance(at, segment.to));
                    one + other < segment.length() + Length::mm(1e-6)
                };
                assert!(cut_through.iter().any(on), "{at:?} is not cut through");
            }
            let more = cut.between.len() > cut.bridges.len();
            (alone, for_neighbours) = (alone + usize::from(!more), for_neighbours + usize::from(more));
        }
    };
    let range = demo();
    let orders: Vec<String> =
        (0..range.models.len()).flat_map(|model| [0, 1].map(|finish| order(&range, model, finish))).collect();
    with_orders(core::slice::from_ref(&range), &orders, |orders| {
        let settings = Settings::default();
        let pack = Nesting::begin(orders, &settings, None).unwrap().pack();
        pack.sheets().for_each(|(lot, _, program)| check(lot, program));
    });
    assert!(alone > 20 && for_neighbours > 20, "{alone} {for_neighbours}");
}
