//! Parts that go in behind others, and what lies before doors meanwhile.

use super::super::content::{SEEN_LEAST, seen_share};
use super::*;

/// The share of its rim that a part shows as it goes in.
fn share(parts: &[Part<'_>], at: usize) -> f64 {
    let lifted = &parts[at].lifted;
    let own = lines(lifted, [lifted].into_iter());
    let before = parts[..at].iter().map(|other| &other.placed);
    seen_share(&own, &lines(lifted, before.chain([lifted])))
}

fn path<'a>(document: &'a roxmltree::Document<'a>, class: &str) -> Option<roxmltree::Node<'a, 'a>> {
    document.descendants().find(|node| node.attribute("class") == Some(class))
}

/// A part that hardly shows has its hidden rim, with dashes, from one side of the part to the other; no other part has one.
#[test]
fn a_part_that_hardly_shows_has_its_hidden_rim() {
    let mut met = [0, 0];
    units(11, 16, |built, assembly, tethered| {
        let parts = parts(built, assembly);
        let wall = tethered.then(|| last::wall(size(built)));
        let frame = Frame::around(bounds(&parts, wall.as_ref())).unwrap();
        for (at, picture) in steps(built, assembly, tethered).iter().enumerate().take(parts.len()) {
            let share = share(&parts, at);
            let document = roxmltree::Document::parse(&picture.svg).unwrap();
            let hidden = path(&document, "hidden-rim");
            assert_eq!(hidden.is_some(), share < SEEN_LEAST, "{} {share}", picture.sentence);
            met[usize::from(hidden.is_some())] += 1;
            let Some(hidden) = hidden else { continue };
            assert_eq!(hidden.attribute("stroke-dasharray"), Some("3 0.75 3 0.75"));
            // All of it is told apart: what shows and what does not reach as far as the part does.
            let shown = path(&document, "rim").map(corners).unwrap_or_default();
            let low = |low: f64, [x, _]: &[f64; 2]| low.min(*x);
            let left = corners(hidden).iter().chain(&shown).fold(f64::INFINITY, low);
            let Bounds { low: part, .. } = parts[at].lifted.bounds;
            let wanted = frame.dot(part)[0];
            assert!(left < wanted + 8.0, "{} {left} {wanted}", picture.sentence);
        }
    });
    assert!(met.iter().all(|met| *met > 4), "{met:?}");
}

/// The foot of a part behind others is level, as far over the floor as the plate on which it stands, and as wide as the part is there.
#[test]
fn a_hidden_part_shows_its_foot_in_its_place() {
    let mut met = 0;
    units(11, 16, |built, assembly, _| {
        let parts = parts(built, assembly);
        let case = &built.cut.case;
        for at in (0..parts.len()).filter(|at| share(&parts, *at) < SEEN_LEAST) {
            let Part { step, runs, lifted, placed } = &parts[at];
            let (foot, guides) = arrow::foot(lifted, runs).unwrap();
            let floor = case.panel(PanelId::BaseUpper).map(|base| base.case_from_panel.origin.z + base.thickness);
            let floor = floor.unwrap().in_mm();
            for end in [foot.from, foot.to] {
                assert!((end.height() - floor).abs() < 0.5, "{} stands at {} over {floor}", step.part, end.height());
                assert!(guides.iter().any(|guide| guide.to == end));
            }
            let Bounds { low, high } = placed.bounds;
            assert!(foot.from.x < foot.to.x && foot.from.x > low.x - 1e-6 && foot.to.x < high.x + 1e-6);
            met += 1;
        }
    });
    assert!(met > 4, "{met}");
}

/// The strip before a door lies there from its step until the top is on, thin where no hand moves it; the last picture has none.
#[test]
fn cards_lie_before_doors_until_the_top_is_on() {
    let mut between = 0;
    units(11, 12, |built, assembly, _| {
        let parts = parts(built, assembly);
        for (at, part) in parts.iter().enumerate() {
            let before = &parts[..at];
            let Beside { goes_in, lie } = Beside::of(&built.cut.case, None, part, before);
            let leaves = before.iter().filter(|part| matches!(part.step.part, PanelId::Leaf(_))).count();
            let is_top = part.step.part == PanelId::Top;
            let is_leaf = matches!(part.step.part, PanelId::Leaf(_));
            assert_eq!(lie.len(), if is_top { 0 } else { leaves }, "{}", part.step.part);
            assert_eq!(goes_in.len(), if is_top { leaves } else { usize::from(is_leaf) }, "{}", part.step.part);
        }
        // They are drawn: without them a picture in between is another one, and the last one is the same.
        let mut bare = assembly.clone();
        bare.steps.iter_mut().for_each(|step| step.card = None);
        for (at, step) in assembly.steps.iter().enumerate().skip(1) {
            let follows = matches!(assembly.steps[at - 1].part, PanelId::Leaf(_)) && step.part != PanelId::Top;
            if follows {
                let [with, without] =
                    [assembly, &bare].map(|all| super::super::step(built, all, false, at).unwrap().svg);
                assert_ne!(with, without, "{}", step.part);
                between += 1;
            }
        }
        let [with, without] =
            [assembly, &bare].map(|all| super::super::step(built, all, false, all.steps.len()).unwrap().svg);
        assert_eq!(with, without);
    });
    assert!(between > 3, "{between}");
}

/// The picture of the whole unit has what the last one has, without a wall, as large as its room.
#[test]
fn the_whole_unit_fills_its_room() {
    units(7, 4, |built, assembly, _| {
        let last = step(built, assembly, false, assembly.steps.len()).unwrap();
        let whole = whole(built, assembly).unwrap();
        assert_eq!(whole.marks.len(), last.vector().marks.len());
        let larger = |whole: Length, last: f64| whole.in_mm() > last - 1e-6;
        assert!(larger(whole.width, last.width_mm) || larger(whole.height, last.height_mm), "{whole:?}");
    });
}
