use super::*;
use crate::pack::Settings;
use crate::pack::testing::{demo, holding, with_pack};

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
fn bridges_hold_every_part_and_nothing_cuts_them() {
    each_sheet(&demo(), |lot, sheet, program| {
        let Hold::Bridges { length_mm, thickness_mm, apart_mm } = lot.range.cutting.hold else { panic!("bridges") };
        assert_eq!(program.depths.outside, sheet.coated(lot) - thickness_mm);
        let radius = lot.range.build.cutter_mm / 2.0;
        for cut in &program.cuts {
            if cut.side == Side::Inside {
                assert!(cut.bridges.is_empty());
                continue;
            }
            let plain = sheet.placed[cut.part].rectangle_without_tabs();
            assert!(cut.bridges.len() >= 2 && cut.between.len() == cut.bridges.len());
            for bridge in &cut.bridges {
                assert!((distance(bridge[0], bridge[1]) - length_mm).abs() < Length::mm(1e-9));
                assert!(plain.has_side(bridge[0], bridge[1]));
                for way in &cut.between {
                    for at in way {
                        let near =
                            along(*bridge).map(|middle| distance(middle, at.at)).fold(Length::mm(1e9), Length::min);
                        assert!(near >= radius - Length::mm(1e-9), "{near:?}");
                    }
                }
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
