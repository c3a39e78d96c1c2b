//! Pictures of seeded units, against a slow twin and an independent reader.

use std::collections::BTreeSet;

use slotwright_core::business::promise::Backlog;
use slotwright_core::cabinet::assembly::Direction;
use slotwright_core::cabinet::joint::JointKind;
use slotwright_core::cabinet::panel::{Panel, PanelId};
use slotwright_core::geometry::space::Block;
use slotwright_core::order::derive::derive;
use slotwright_core::range::Range;
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::rules::tether::Tethers;
use slotwright_core::units::quantity::Length;
use slotwright_solid::mesh::Mesh;

use super::view::{Bounds, Seen};
use super::*;
use crate::plain;

mod behind;

/// Checks seeded valid units.
fn units(seed: u64, count: usize, mut check: impl FnMut(&Built, &Assembly, bool)) {
    let range = Range::parse(include_str!("../../../../web/ranges/fenland.toml")).unwrap();
    let backlog = Backlog::default();
    for choice in choices(&range, seed, Wanted::Valid).take(count) {
        let derived = derive(&range, &choice, "2026-11-25".parse().unwrap(), &backlog);
        check(derived.built.as_ref().unwrap(), derived.assembly.as_ref().unwrap(), derived.is_tethered());
    }
}

/// Every number of an attribute's text.
fn numbers(text: &str) -> Vec<f64> {
    let parts = text.split(|letter: char| !"0123456789.-".contains(letter)).filter(|part| !part.is_empty());
    parts.map(|part| part.parse().unwrap()).collect()
}

fn corners(path: roxmltree::Node<'_, '_>) -> Vec<[f64; 2]> {
    numbers(path.attribute("d").unwrap()).chunks_exact(2).map(|pair| [pair[0], pair[1]]).collect()
}

#[test]
fn pictures_are_well_formed_and_on_their_paper() {
    let mut kinds = BTreeSet::new();
    units(9, 12, |built, assembly, tethered| {
        let pictures = steps(built, assembly, tethered);
        assert_eq!(pictures.len(), assembly.count());
        for picture in &pictures {
            assert!(picture.svg.len() < 40_000, "{} bytes", picture.svg.len());
            let document = roxmltree::Document::parse(&picture.svg).unwrap();
            let root = document.root_element();
            let [left, top, wide, high] = numbers(root.attribute("viewBox").unwrap())[..] else { panic!() };
            assert!((wide - picture.width_mm).abs() < 0.01 && (high - picture.height_mm).abs() < 0.01);
            assert!(wide <= 180.0 && high <= 230.0, "{wide} by {high}");
            assert_eq!(root.attribute("role"), Some("img"));
            let said = |name| root.children().find(|node| node.has_tag_name(name)).and_then(|node| node.text());
            assert_eq!(said("desc"), Some(picture.sentence.as_str()));
            assert!(said("title").unwrap().starts_with(&format!("Step {} of {}: ", picture.number, picture.of)));
            for path in document.descendants().filter(|node| node.has_tag_name("path")) {
                kinds.insert(path.attribute("class").unwrap().to_owned());
                plain::check(path);
                // Half the heaviest line and a little white.
                let inside = |[x, y]: [f64; 2]| x > left + 1.0 && x < wide - 1.0 && y > top + 1.0 && y < high - 1.0;
                assert!(corners(path).into_iter().all(inside), "{path:?}");
            }
        }
    });
    assert_eq!(
        kinds.into_iter().collect::<Vec<_>>(),
        ["arrow", "goes-in", "guide", "hidden-rim", "rim", "stands", "tone"]
    );
}

/// Down is down on paper; to the rear is 30 degrees above the level, to the left.
#[test]
fn arrows_point_along_the_move() {
    let mut ways = BTreeSet::new();
    units(3, 24, |built, assembly, tethered| {
        for picture in steps(built, assembly, tethered) {
            let document = roxmltree::Document::parse(&picture.svg).unwrap();
            let arrow = document.descendants().find(|node| node.attribute("class") == Some("arrow"));
            let Some(arrow) = arrow else {
                assert!(picture.step.is_none(), "{}", picture.sentence);
                continue;
            };
            let moves: Vec<Direction> = picture.step.unwrap().way.iter().map(|leg| leg.moves).collect();
            let cosine = 30.0_f64.to_radians().cos();
            let (corners, mut before) = (corners(arrow), None);
            assert_eq!(corners.len(), 7 * moves.len(), "an arrow for each move");
            for (arrow, moves) in corners.chunks_exact(7).zip(&moves) {
                let [tip, _, _, [ax, ay], [bx, by], _, _] = *arrow else { panic!() };
                let tail = [ax.midpoint(bx), ay.midpoint(by)];
                let way = [tip[0] - tail[0], tip[1] - tail[1]];
                let length = way[0].hypot(way[1]);
                let expected = match moves {
                    Direction::Down => [0.0, 1.0],
                    Direction::Back => [-cosine, -0.5],
                    Direction::Forwards => [cosine, 0.5],
                    other => panic!("{other:?} is new: say where its arrow points"),
                };
                ways.insert(format!("{moves:?}"));
                assert!(length > 5.0, "{length}");
                assert!((way[0] / length - expected[0]).hypot(way[1] / length - expected[1]) < 0.01, "{way:?}");
                let apart = before.map_or(0.0, |[x, y]: [f64; 2]| (tail[0] - x).hypot(tail[1] - y));
                assert!(apart < 0.1, "it begins where the one before it ends: {apart}");
                before = Some(tip);
            }
        }
    });
    assert_eq!(ways.len(), 3, "{ways:?}");
}

/// The last picture has the whole unit: the wall only where it is fastened to it, with the tone, beyond the unit to
/// both sides and above.
#[test]
fn the_last_picture_has_the_unit_and_its_wall() {
    let mut told = 0;
    units(7, 6, |built, assembly, _| {
        for tethered in [true, false] {
            let last = step(built, assembly, tethered, assembly.steps.len()).unwrap();
            assert!(last.step.is_none() && last.number == last.of);
            assert_eq!(last.sentence, words::last_step(tethered));
            let document = roxmltree::Document::parse(&last.svg).unwrap();
            let path = |class| document.descendants().find(|node| node.attribute("class") == Some(class));
            let wide = |of: Vec<[f64; 2]>| {
                let across = || of.iter().map(|[x, _]| *x);
                (
                    across().fold(f64::INFINITY, f64::min),
                    across().fold(0.0, f64::max),
                    of.iter().map(|[_, y]| *y).fold(f64::INFINITY, f64::min),
                )
            };
            let unit = wide(corners(path("stands").unwrap()));
            if tethered {
                let (rim, tone) = (wide(corners(path("rim").unwrap())), wide(corners(path("tone").unwrap())));
                assert!(rim.0 < unit.0 - 0.5 && rim.2 < unit.2 - 0.5, "{rim:?} {unit:?}");
                assert!((rim.0 - tone.0).abs() < 0.1 && (rim.1 - tone.1).abs() < 0.1 && (rim.2 - tone.2).abs() < 0.1);
                assert!(path("arrow").is_none());
            } else {
                assert!(["rim", "tone", "arrow", "goes-in"].into_iter().all(|class| path(class).is_none()));
            }
            told += 1;
        }
    });
    assert_eq!(told, 12);
}

/// Two rings at the uppermost hooks show where tethers go, on the back of a unit that is fastened and on no other; a strip before each
/// door, and before all of them with the top, shows its card.
#[test]
fn rings_show_tethers_and_strips_cards() {
    let mut doors = 0;
    units(11, 12, |built, assembly, _| {
        let case = &built.cut.case;
        let parts = parts(built, assembly);
        let at = |id| parts.iter().position(|part| part.step.part == id).unwrap();
        let tethers = Tethers::of(&built.layout, case).unwrap();
        let shown = |id, tethered: bool| {
            Beside::of(case, tethered.then_some(tethers), &parts[at(id)], &parts[..at(id)]).goes_in
        };
        assert!(shown(PanelId::Back, false).is_empty());
        let rings = shown(PanelId::Back, true);
        let back = &parts[at(PanelId::Back)];
        let hooks =
            || case.joints.iter().filter(|joint| joint.id.takes == PanelId::Back && joint.kind == JointKind::Hook);
        let highest = hooks().map(|hook| hook.shared.to.z.in_mm()).fold(0.0, f64::max);
        assert_eq!(rings.len(), 2);
        for Shape { lines: ring, .. } in &rings {
            // Every other side is drawn, since it is seen through the back.
            assert_eq!(ring.len(), 6);
            let Bounds { low, high } = Bounds::of(ring.iter().flat_map(|line| [line.from, line.to]));
            let Bounds { low: left, high: right } = back.lifted.bounds;
            assert!(low.x > left.x && high.x < right.x && low.y > left.y && high.y < right.y, "within the back");
            // Its middle is beside the hook that is highest: one of them is there at that height.
            let middle = [low.x.midpoint(high.x), low.y.midpoint(high.y)];
            let [dx, dy, dz] = arrow::back(&back.runs);
            let beside = hooks().filter(|hook| (hook.shared.to.z.in_mm() - highest).abs() < 1e-6).any(|hook| {
                let Block { from, to } = hook.shared;
                let x = ((from.x + to.x) / 2.0).in_mm();
                [x - 45.0, x + 45.0].into_iter().any(|x| {
                    let at = Seen::of([x + dx, from.y.in_mm() + dy, ((from.z + to.z) / 2.0).in_mm() + dz]);
                    (at.x - middle[0]).hypot(at.y - middle[1]) < 0.5
                })
            });
            assert!(beside, "{middle:?}");
        }
        let leaves = || parts.iter().filter(|part| matches!(part.step.part, PanelId::Leaf(_)));
        for leaf in leaves() {
            let card = shown(leaf.step.part, false);
            let [Shape { lines: card, .. }] = &card[..] else { panic!("{card:?}") };
            assert_eq!(card.len(), 4);
            let [[left, front, _], [right, ..]] = leaf.placed.extent;
            let pivots = case.joints.iter().filter(|joint| joint.id.goes_in == leaf.step.part);
            let pivot = pivots.map(|joint| joint.shared.from.x.in_mm()).next().unwrap();
            // Its nearest corner, before the leaf, is nearer to the free side than to the pivot.
            let free = if (pivot - left).abs() < (pivot - right).abs() { right } else { left };
            let [_, [_, _, floor]] = parts[at(PanelId::BaseUpper)].placed.extent;
            let corner = Seen::of([free, front - 60.0, floor]);
            assert!(card.iter().any(|line| line.from.apart(corner) < 0.5 || line.to.apart(corner) < 0.5), "{card:?}");
            doors += 1;
        }
        assert_eq!(shown(PanelId::Top, true).len(), leaves().count());
    });
    assert!(doors > 4, "{doors}");
}

/// Rings and cards are in the drawn pictures: without them these have fewer heavy lines.
#[test]
fn rings_and_cards_are_drawn() {
    let rims = |picture: StepPicture<'_>| {
        let document = roxmltree::Document::parse(&picture.svg).unwrap();
        let rim = document.descendants().find(|node| node.attribute("class") == Some("rim")).unwrap();
        rim.attribute("d").unwrap().matches('M').count()
    };
    let mut drawn = [0, 0];
    units(11, 12, |built, assembly, _| {
        let back = assembly.steps.iter().position(|step| step.part == PanelId::Back).unwrap();
        let [with, without] = [true, false].map(|tethered| rims(step(built, assembly, tethered, back).unwrap()));
        // Uprights may stand before one of them.
        assert!(with > without + 3, "{with} {without}");
        drawn[0] += 1;
        let mut bare = assembly.clone();
        bare.steps.iter_mut().for_each(|step| step.card = None);
        for (at, step) in assembly.steps.iter().enumerate().filter(|(_, step)| matches!(step.part, PanelId::Leaf(_))) {
            let [with, without] =
                [assembly, &bare].map(|assembly| rims(super::step(built, assembly, false, at).unwrap()));
            assert!(with > without, "{}: {with} {without}", step.part);
            drawn[1] += 1;
        }
    });
    assert!(drawn[0] == 12 && drawn[1] > 4, "{drawn:?}");
}

#[test]
fn one_step_alone_is_the_same_picture() {
    units(5, 3, |built, assembly, tethered| {
        let all = steps(built, assembly, tethered);
        for (at, picture) in all.iter().enumerate() {
            let alone = step(built, assembly, tethered, at).unwrap();
            assert!(alone.svg == picture.svg && alone.number == picture.number, "{at}");
        }
        assert!(
            step(built, assembly, tethered, all.len()).is_none()
                && step(built, assembly, tethered, usize::MAX).is_none()
        );
    });
}

/// Absurd choices that can be built at all have pictures too, or none; nothing fails on them.
#[test]
fn every_unit_that_can_be_built_has_its_pictures() {
    let range = Range::parse(include_str!("../../../../web/ranges/fenland.toml")).unwrap();
    let backlog = Backlog::default();
    let mut drawn = 0;
    for choice in choices(&range, 21, Wanted::Any).take(60) {
        let derived = derive(&range, &choice, "2026-11-25".parse().unwrap(), &backlog);
        let Some((built, assembly)) = derived.built.as_ref().zip(derived.assembly.as_ref()) else { continue };
        let pictures = steps(built, assembly, derived.is_tethered());
        assert_eq!(pictures.len(), assembly.count(), "{choice:?}");
        assert!(pictures.iter().all(|picture| !picture.svg.contains("NaN") && !picture.svg.contains("inf")));
        drawn += 1;
    }
    assert!(drawn > 20, "{drawn}");
}

/// All triangles of parts in the case, as the mesh has them.
fn triangles(built: &Built, lifted: Option<&Part<'_>>, parts: &[Part<'_>]) -> Vec<[[f64; 3]; 3]> {
    let mut all = Vec::new();
    for part in parts {
        let panel = built.cut.case.panel(part.step.part).unwrap();
        // The same arcs and no reliefs, as in the pictures.
        let panel = Panel { cutter: Length::mm(1e6), ..panel.clone() };
        let mesh = Mesh::of(&panel, Length::mm(0.1)).in_case(panel.case_from_panel);
        let up = lifted.filter(|lifted| lifted.step.part == part.step.part);
        let by = up.map_or([0.0; 3], |part| arrow::back(&part.runs));
        let at = |index: u32| {
            let at = mesh.vertices[index as usize].at;
            [at[0] + by[0], at[1] + by[1], at[2] + by[2]]
        };
        all.extend(mesh.triangles().map(|corners| corners.map(at)));
    }
    all
}

/// How a ray from a place to the eye meets a triangle: least share of a corner, and how far away.
// Source: Möller and Trumbore, Fast, Minimum Storage Ray/Triangle Intersection, Journal of Graphics Tools 2 (1), 1997.
fn meets(from: [f64; 3], [a, b, c]: [[f64; 3]; 3]) -> Option<(f64, f64)> {
    let minus = |p: [f64; 3], q: [f64; 3]| [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
    let dot = |p: [f64; 3], q: [f64; 3]| p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
    let cross =
        |p: [f64; 3], q: [f64; 3]| [p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]];
    let third = (1.0_f64 / 3.0).sqrt();
    let eye = [-third, -third, third];
    let (ab, ac, to) = (minus(b, a), minus(c, a), minus(from, a));
    let across = cross(eye, ac);
    let whole = dot(ab, across);
    if whole.abs() < 1e-9 {
        return None;
    }
    let along = cross(to, ab);
    let (second, third) = (dot(to, across) / whole, dot(eye, along) / whole);
    Some((second.min(third).min(1.0 - second - third), dot(ac, along) / whole))
}

/// The place in the case: the view's three directions are at right angles and of length 1.
fn place(seen: Seen) -> [f64; 3] {
    let (half, sixth, third) = (0.5_f64.sqrt(), (1.0_f64 / 6.0).sqrt(), (1.0_f64 / 3.0).sqrt());
    let Seen { x, y, near } = seen;
    [x * half + y * sixth - near * third, -x * half + y * sixth - near * third, 2.0 * y * sixth + near * third]
}

/// Places on the lines are drawn where nothing stands between them and the eye, and only there.
#[test]
fn hidden_lines_are_those_that_a_ray_finds_hidden() {
    let (mut shown, mut hidden) = (0, 0);
    units(11, 6, |built, assembly, _| {
        let parts = parts(built, assembly);
        for at in [parts.len() / 3, parts.len() / 2, parts.len() - 1] {
            let (before, part) = (&parts[..at], &parts[at]);
            let shapes: Vec<&Shape> = before.iter().map(|other| &other.placed).chain([&part.lifted]).collect();
            let triangles = triangles(built, Some(part), &parts[..=at]);
            let all = shapes.iter().flat_map(|shape| lines(shape, shapes.iter().copied()));
            // Every seventh line, at shares of its way that are no simple fractions.
            for drawn in all.step_by(7) {
                for share in [0.137, 0.381, 0.713] {
                    let from = place(drawn.line.at(share));
                    let met: Vec<(f64, f64)> = triangles.iter().filter_map(|triangle| meets(from, *triangle)).collect();
                    let surely = met.iter().any(|(inside, far)| *inside > 1e-6 && *far > 0.01);
                    let perhaps = met.iter().any(|(inside, far)| *inside > -1e-4 && *far > 1e-5);
                    let seen = drawn.seen.iter().any(|[from, to]| (*from..=*to).contains(&share));
                    if surely {
                        assert!(!seen, "{from:?} is drawn though it is hidden");
                        hidden += 1;
                    } else if !perhaps {
                        assert!(seen, "{from:?} is not drawn though it is seen");
                        shown += 1;
                    }
                }
            }
        }
    });
    assert!(shown > 1000 && hidden > 1000, "{shown} seen, {hidden} hidden");
}

/// The same for the tone: middles of the facets of the part that goes in.
#[test]
fn the_tone_covers_what_is_seen() {
    let (mut covered, mut bare) = (0, 0);
    units(11, 6, |built, assembly, _| {
        let parts = parts(built, assembly);
        for at in 0..parts.len() {
            let (before, part) = (&parts[..at], &parts[at]);
            let triangles = triangles(built, None, before);
            let areas = tone::seen(&part.lifted, &before.iter().map(|other| &other.placed).collect::<Vec<_>>());
            for facet in &part.lifted.facets {
                let [a, b, c] = facet.corners;
                let middle = a.towards(b, 0.41).towards(c, 0.31);
                let from = place(middle);
                let met: Vec<(f64, f64)> = triangles.iter().filter_map(|triangle| meets(from, *triangle)).collect();
                let is_hidden = met.iter().any(|(inside, far)| *inside > 1e-6 && *far > 0.01);
                let left = |from: &Seen, to: &Seen| {
                    (to.x - from.x) * (middle.y - from.y) - (to.y - from.y) * (middle.x - from.x)
                };
                // What splitting leaves on its line has no size and may lie anywhere.
                let inside = |area: &Vec<Seen>| {
                    let sides = || area.iter().zip(area.iter().cycle().skip(1));
                    let size: f64 = sides().map(|(a, b)| a.x * b.y - a.y * b.x).sum();
                    size > 1e-6 && sides().all(|(a, b)| left(a, b) > -1e-9)
                };
                // Of the areas of this facet: those of others may lie over the same place.
                let own =
                    |area: &&Vec<Seen>| area.iter().all(|corner| (facet.near(*corner) - corner.near).abs() < 1e-6);
                let toned = areas.iter().filter(own).any(inside);
                if is_hidden {
                    assert!(!toned, "{from:?} has a tone though it is hidden");
                    bare += 1;
                } else if !met.iter().any(|(inside, far)| *inside > -1e-4 && *far > 1e-5) {
                    assert!(toned, "{from:?} has no tone though it is seen");
                    covered += 1;
                }
            }
        }
    });
    assert!(covered > 1000 && bare > 50, "{covered} covered, {bare} bare");
}
