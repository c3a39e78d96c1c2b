//! Meshes are closed and hold what the panel's own measures say.

use std::collections::BTreeMap;

use proptest::prelude::*;
use slotwright_core::cabinet::case::Case;
use slotwright_core::cabinet::layout::{Layout, Picked};
use slotwright_core::cabinet::panel::{Panel, PanelId};
use slotwright_core::choice::change::Change;
use slotwright_core::choice::{Choice, Fill, Hung};
use slotwright_core::range::Range;
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::units::quantity::Length;

use super::Mesh;

const DEMO: &str = include_str!("../../../../web/ranges/fenland.toml");

/// Every edge between two corners is run once each way: the mesh is closed and all one side out.
fn check_closed(id: PanelId, mesh: &Mesh) {
    #[expect(clippy::cast_possible_truncation, reason = "a millionth of a millimetre as a whole number")]
    let key = |index: u32| mesh.vertices[index as usize].at.map(|mm| (mm * 1e6).round() as i64);
    let mut runs: BTreeMap<_, i32> = BTreeMap::new();
    for [a, b, c] in mesh.triangles() {
        for (from, to) in [(a, b), (b, c), (c, a)] {
            *runs.entry((key(from), key(to))).or_default() += 1;
            *runs.entry((key(to), key(from))).or_default() -= 1;
        }
    }
    assert!(runs.values().all(|count| *count == 0), "{id} is open");
}

/// Checks every panel of a seeded valid unit.
fn panels(seed: u64, check: impl Fn(&Panel)) {
    let range = Range::parse(DEMO).unwrap();
    let choice = choices(&range, seed, Wanted::Valid).next().unwrap();
    let picked = Picked::of(&range, &choice).unwrap();
    let layout = Layout::of(picked, &choice).unwrap();
    Case::of(picked, &choice, &layout).unwrap().panels.iter().for_each(check);
}

/// A finger hole lies in the flat of its leaf, whatever the range says of roundings and wood beside holes.
#[test]
fn a_leaf_with_any_hole_is_closed() {
    for (ligament, rounding, hole) in
        [(0.0, 0.0, 34.0), (0.0, 50.0, 60.0), (9.0, 9.0, 34.0), (6.0, 6.0, 25.0), (8.5, 50.0, 33.3), (240.0, 6.0, 34.0)]
    {
        let mut range = Range::parse(DEMO).unwrap();
        let build = &mut range.build;
        [build.ligament_mm, build.leaf_rounding_mm, build.finger_hole_mm] = [ligament, rounding, hole].map(Length::mm);
        let start = Choice::first_of(&range).unwrap();
        for hung in [Hung::Left, Hung::Right] {
            let choice = start.with(&Change::Fill { bay: 1, fill: Fill::Leaf(hung) }, &range);
            let picked = Picked::of(&range, &choice).unwrap();
            let layout = Layout::of(picked, &choice).unwrap();
            let case = Case::of(picked, &choice, &layout).unwrap();
            let leaf = case.panel(PanelId::Leaf(1)).unwrap();
            assert_eq!(leaf.holes().count(), usize::from(ligament < 100.0), "{ligament} {rounding} {hole}");
            for tolerance in [0.01, 0.1, 0.3] {
                let mesh = Mesh::of(leaf, Length::mm(tolerance));
                check_closed(leaf.id, &mesh);
                let stated = leaf.solid().0.in_mm2() * leaf.thickness.in_mm();
                assert!((mesh.volume_mm3() / stated - 1.0).abs() < 1e-3, "{ligament} {rounding} {hole} {hung:?}");
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn every_mesh_is_closed_and_weighs_as_stated(seed in any::<u64>()) {
        panels(seed, |panel| {
            let mesh = Mesh::of(panel, Length::mm(0.01));
            check_closed(panel.id, &mesh);
            let stated = panel.solid().0.in_mm2() * panel.thickness.in_mm();
            let off = mesh.volume_mm3() / stated - 1.0;
            assert!(off.abs() < 2e-4, "{}: {off}", panel.id);
        });
    }

    /// Normals stand off their triangles' outer side.
    #[test]
    fn normals_point_outwards(seed in any::<u64>()) {
        panels(seed, |panel| {
            let mesh = Mesh::of(panel, Length::mm(0.3));
            for triangle in mesh.triangles() {
                let [a, b, c] = triangle.map(|index| mesh.vertices[index as usize]);
                let edge = |to: [f64; 3]| [to[0] - a.at[0], to[1] - a.at[1], to[2] - a.at[2]];
                let (p, q) = (edge(b.at), edge(c.at));
                let across = [p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]];
                let towards: f64 = across.iter().zip(a.normal).map(|(x, n)| x * n).sum();
                assert!(towards >= -1e-6, "{} {triangle:?}", panel.id);
            }
        });
    }
}
