//! Wood round cable holes, at its edge.

use super::*;

#[test]
fn holes_keep_wood_round_them() {
    let range = demo();
    // Bays are 506.8 mm clear: a 60 mm hole with 20 mm of wood may be 203 mm off the middle.
    for (change, rules) in [
        (hole(3, "round-60", 203), &[][..]),
        (hole(3, "round-60", 204), &[Rule::HoleEdge]),
        (hole(3, "round-60", -203), &[]),
        (hole(3, "round-60", -900), &[Rule::HoleEdge, Rule::HoleStile]),
        (hole(3, "round-99", 0), &[Rule::Known]),
    ] {
        assert_eq!(found(&range, &changed(&range, "sedge", std::slice::from_ref(&change))).0, rules, "{change:?}");
    }
    // The third bay's left stile covers 14 mm of it: with 5 mm of wood enough, a hole may be 209 mm off to the left. In the first one
    // a stile covers 28 and the open leaf 27.45 mm: 167 mm.
    let mut range = demo();
    range.build.ligament_mm = Length::mm(5.0);
    for (bay, off, rules) in
        [(3, -209, &[][..]), (3, -210, &[Rule::HoleStile]), (1, -167, &[]), (1, -168, &[Rule::HoleStile])]
    {
        assert_eq!(found(&range, &changed(&range, "sedge", &[hole(bay, "round-60", off)])).0, rules, "{bay} {off}");
    }
}

/// The slot of a shelf in the back is wider than the shelf by the play. A hole ends 100 mm over the base; with two films a shelf begins
/// 20.02 mm over that and its slot 19.945.
#[test]
fn holes_keep_wood_up_to_the_slots_of_shelves() {
    let mut range = demo();
    let sizes = [Change::WidthMm(Dim::mm(900)), Change::HeightMm(Dim::mm(450)), Change::DepthMm(Dim::mm(420))];
    let open = [Change::BayCount(4)].into_iter().chain((1..=4).map(|bay| fill(bay, Fill::Open)));
    let even = (1..=4).flat_map(|bay| [Change::Share { bay, share: 1 }, Change::Hole { bay, hole: None }]);
    let holed = [fill(2, Fill::Shelves(2)), hole(2, "round-60", 0), Change::Finish("sallow".parse().unwrap())];
    let changes: Vec<_> = sizes.into_iter().chain(open).chain(even).chain(holed).collect();
    let choice = changed(&range, "sedge", &changes);
    let layout = judge(&range, &choice).layout.unwrap();
    let wood = layout.bays[1].shelves[0] - layout.floor - Length::mm(100.0) - range.build.clearance_mm / 2.0;
    assert!((wood.in_mm() - 19.945).abs() < 0.001, "{wood:?}");
    for (least, rules) in [
        (wood - Length::mm(1e-6), &[][..]),
        (wood + Length::mm(0.01), &[Rule::HoleShelf]),
        (Length::mm(20.0), &[Rule::HoleShelf]),
    ] {
        range.build.ligament_mm = least;
        assert_eq!(found(&range, &choice).0, rules, "{least:?}");
    }
}
