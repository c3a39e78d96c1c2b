//! What a scene holds, over seeded units.

use glam::vec3;
use slotwright_core::cabinet::assembly::Assembly;
use slotwright_core::cabinet::case::Case;
use slotwright_core::cabinet::layout::{Layout, Picked};
use slotwright_core::choice::{Bowed, Choice};
use slotwright_core::range::Range;
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::units::quantity::Dim;

use super::{Part, Prop, STRIDE, Scene, Stretch, What};
use crate::bounds::Bounds;
use crate::pose::Pose;
use crate::{Vec3, single};

const DEMO: &str = include_str!("../../../../web/ranges/fenland.toml");

fn scene_of(range: &Range, choice: &Choice) -> (Layout, Scene) {
    let (layout, scene, _) = shown(range, choice);
    (layout, scene)
}

fn shown(range: &Range, choice: &Choice) -> (Layout, Scene, Assembly) {
    let picked = Picked::of(range, choice).unwrap();
    let layout = Layout::of(picked, choice).unwrap();
    let case = Case::of(picked, choice, &layout).unwrap();
    let scene = Scene::of(picked, &layout, &case, choice);
    let assembly = Assembly::of(picked, &case);
    (layout, scene, assembly)
}

/// The places of what a stretch draws.
fn places(scene: &Scene, stretch: Stretch) -> impl Iterator<Item = Vec3> {
    let indices = &scene.indices[stretch.first as usize..(stretch.first + stretch.count) as usize];
    indices.iter().map(|index| {
        let at = *index as usize * STRIDE;
        vec3(scene.vertices[at], scene.vertices[at + 1], scene.vertices[at + 2])
    })
}

/// Lowest and highest place of what a stretch draws.
fn extent(scene: &Scene, stretch: Stretch) -> (Vec3, Vec3) {
    let Bounds { low, high } = Bounds::of(places(scene, stretch));
    (low, high)
}

#[test]
fn every_index_leads_to_a_vertex_and_every_part_is_within_the_unit() {
    let range = Range::parse(DEMO).unwrap();
    for choice in choices(&range, 31, Wanted::Valid).take(60) {
        let (_, scene) = scene_of(&range, &choice);
        let count = scene.vertices.len() / STRIDE;
        assert_eq!(scene.vertices.len() % STRIDE, 0);
        assert!(scene.indices.iter().all(|index| (*index as usize) < count));
        let near = Vec3::splat(1e-4);
        for part in &scene.parts {
            assert!(part.triangles.count > 0 && part.triangles.count % 3 == 0, "{}", part.id);
            let (low, high) = extent(&scene, part.triangles);
            let corner = vec3(0.0, 0.0, scene.size.z);
            let far = vec3(scene.size.x, scene.size.y, 0.0);
            assert!(low.cmpge(corner - near).all() && high.cmple(far + near).all(), "{} {low} {high}", part.id);
        }
    }
}

/// The wall is dark between the end uprights alone: behind a bowed end, which light goes through, it is not.
#[test]
fn the_wall_is_dark_between_the_end_uprights() {
    let range = Range::parse(DEMO).unwrap();
    let square = Choice::first_of(&range).unwrap();
    let ends = |choice: &Choice| {
        let (_, scene) = scene_of(&range, choice);
        (scene.ends.0, scene.size.x - scene.ends.1)
    };
    let (left, right) = ends(&square);
    assert!((0.0..0.03).contains(&left) && (left - right).abs() < 1e-4, "{left} {right}");
    let bowed = Choice { bow_mm: Dim::mm(100), bowed: Bowed::Left, ..square };
    let (bow, other) = ends(&bowed);
    assert!(bow > 0.1 && (other - right).abs() < 1e-4, "{bow} {other}");
}

/// A device stands in its own bay, on the base, clear of the back; a screen on the top.
#[test]
fn what_stands_by_stands_where_it_belongs() {
    let range = Range::parse(DEMO).unwrap();
    let mut devices = 0;
    for choice in choices(&range, 32, Wanted::Valid).take(300) {
        let (layout, scene) = scene_of(&range, &choice);
        let mut standing = scene.props.iter().filter(|prop| prop.what == What::Device);
        for (bay, span) in choice.bays.iter().zip(&layout.bays) {
            let Some(key) = &bay.device else { continue };
            let device = range.device(key).unwrap();
            let Prop { triangles, .. } = standing.next().unwrap();
            let (low, high) = extent(&scene, *triangles);
            let [left, right] = [span.access_left, span.access_right].map(|at| single(at.in_m()));
            assert!(low.x >= left - 1e-4 && high.x <= right + 1e-4, "{low} {high} {left} {right}");
            assert!(low.y > single(layout.floor.in_m()) && high.y < single(layout.ceiling.in_m()));
            let [front, back] = [layout.upright_front, layout.back_front].map(|at| -single(at.in_m()));
            assert!(high.z <= front + 1e-4 && low.z >= back + single(device.plug_behind_mm.in_m()) - 1e-4);
            devices += 1;
        }
        assert!(standing.next().is_none(), "no device but those that were named");
        let screen = scene.props.iter().find(|prop| prop.what == What::Screen);
        assert_eq!(screen.is_some(), choice.place.screen_tenth_inch.is_some());
        if let Some(screen) = screen {
            let (low, _) = extent(&scene, screen.triangles);
            assert!((low.y - scene.size.y).abs() < 1e-4, "its feet on the top");
        }
    }
    assert!(devices > 20, "{devices} devices were looked at");
}

/// Whatever is shown, on every way into it, is within its bounds; and no bounds are larger than needed.
#[test]
fn everything_that_is_shown_is_within_its_bounds() {
    let range = Range::parse(DEMO).unwrap();
    let whole = Pose::default();
    // The first one is all but at the beginning.
    let shares = || (0..=20u8).map(|step| (f32::from(step) / 20.0).max(0.001));
    let (mut leaves, mut wide_screens) = (0, 0);
    for choice in choices(&range, 33, Wanted::Valid).take(40) {
        let (_, scene, assembly) = shown(&range, &choice);
        let steps = u8::try_from(assembly.steps.len()).unwrap();
        let open: Vec<Pose> = shares().map(|open| Pose { open, ..whole }).collect();
        let built = |at: u8, share: f32| Pose { built: Some(f32::from(at) + share), ..whole };
        let building = (0..steps).map(|at| (built(at, 1.0), shares().map(|share| built(at, share)).collect(), false));
        let still = [
            (whole, vec![whole], true),
            (Pose { open: 1.0, ..whole }, open, false),
            (Pose { apart: 1.0, ..whole }, vec![Pose { apart: 1.0, ..whole }], false),
        ];
        for (goal, ways, person) in still.into_iter().chain(building) {
            let bounds = scene.reach(goal, &assembly, person);
            let of_part = |way: &Pose, part: &Part| {
                let stand = way.stand(part, &assembly)?;
                Some(Bounds::of(places(&scene, part.triangles).map(|at| stand.transform_point3(at))))
            };
            let parts = ways.iter().flat_map(|way| scene.parts.iter().filter_map(|part| of_part(way, part)));
            let company = scene.company(goal, person).map(|prop| Bounds::of(places(&scene, prop.triangles)));
            let seen = parts.chain(company).fold(Bounds::default(), Bounds::with);
            let near = 1e-4;
            assert!(seen.low.cmpge(bounds.low - near).all() && seen.high.cmple(bounds.high + near).all(), "{goal:?}");
            // The ways are seen in steps: a leaf's tip and a part's start may lie between two. While it is built there is
            // room for the parts of later steps, so that the picture stays as it is.
            let rest = scene.parts.iter().filter(|_| goal.built.is_some());
            let seen = rest.map(|part| part.bounds).fold(seen, Bounds::with);
            assert!(
                seen.low.cmple(bounds.low + 0.01).all() && seen.high.cmpge(bounds.high - 0.01).all(),
                "{goal:?} {seen:?} {bounds:?}"
            );
        }
        leaves += usize::from(scene.has_leaves());
        let screen = scene.props.iter().find(|prop| prop.what == What::Screen);
        wide_screens += usize::from(screen.is_some_and(|screen| screen.bounds.low.x < 0.0));
    }
    assert!(leaves > 5, "{leaves} units with leaves");
    assert!(wide_screens > 0, "a screen wider than its unit");
}

/// Every vertex knows where it lies in the wood: depth within the board, faces apart from edges, an edge with or across the grain.
/// A part is cut from the same place whatever the unit's size, and no two from one.
#[test]
fn grain_and_plies_are_the_parts_own() {
    let range = Range::parse(DEMO).unwrap();
    let start = Choice::first_of(&range).unwrap();
    let wider = Choice { width_mm: Dim::mm(1700), ..start.clone() };
    let wood = |scene: &Scene, part: &Part| {
        let indices = part.triangles.first as usize..(part.triangles.first + part.triangles.count) as usize;
        let of = |index: &u32| <[f32; 4]>::try_from(&scene.vertices[*index as usize * STRIDE + 6..][..4]).unwrap();
        scene.indices[indices].iter().map(of).collect::<Vec<_>>()
    };
    let [(_, first), (_, second)] = [&start, &wider].map(|choice| scene_of(&range, choice));
    let mut begins = Vec::new();
    for part in &first.parts {
        let seen = wood(&first, part);
        assert!(seen.iter().all(|[.., depth, _]| (-1e-4..1.0001).contains(depth)), "{}", part.id);
        let edges: Vec<f32> = seen.iter().map(|place| place[3]).filter(|kind| *kind > 0.0).collect();
        assert!(edges.len() < seen.len() && edges.iter().all(|kind| (0.999..2.001).contains(kind)), "{}", part.id);
        // Both ways of a plate's edge are there: along the grain and across it.
        assert!(edges.iter().any(|kind| *kind < 1.01) && edges.iter().any(|kind| *kind > 1.9), "{}", part.id);
        let begin = |seen: &[[f32; 4]]| seen.iter().map(|place| place[0]).fold(f32::MAX, f32::min);
        let again = second.parts.iter().find(|other| other.id == part.id).unwrap();
        assert!((begin(&seen) - begin(&wood(&second, again))).abs() < 1e-4, "{}", part.id);
        assert!(begins.iter().all(|other: &f32| (other - begin(&seen)).abs() > 0.01), "{}", part.id);
        begins.push(begin(&seen));
    }
    assert!(first.parts.iter().all(|part| part.plies == 13), "18 mm");
}

/// The wall stands behind all that is shown before it, and is gone before parts go through it.
#[test]
fn no_part_stands_in_the_wall() {
    let range = Range::parse(DEMO).unwrap();
    for choice in choices(&range, 34, Wanted::Valid).take(20) {
        let (_, scene, assembly) = shown(&range, &choice);
        for hundredth in 0..=100u8 {
            let pose = Pose { apart: f32::from(hundredth) / 100.0, open: 1.0, built: None };
            let within = scene.parts.iter().any(|part| {
                let stand = pose.stand(part, &assembly).unwrap();
                places(&scene, part.triangles).any(|at| stand.transform_point3(at).z < scene.wall_at())
            });
            assert!(!within || pose.wall() <= 0.0, "{pose:?}");
        }
        assert!(Pose::default().wall() >= 1.0);
        assert!(Pose { built: Some(1.0), ..Pose::default() }.wall() <= 0.0);
    }
}
