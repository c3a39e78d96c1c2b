use super::*;
use crate::random::Random;
use crate::strip::convex::parts;
use crate::strip::layout::Placed;
use crate::strip::nofit::Nofit;
use crate::strip::polygon::Polygon;
use crate::strip::problem::Item;

fn polygon(corners: &[(i64, i64)]) -> Polygon {
    let corners: Vec<Point> = corners.iter().map(|(x, y)| Point::new(*x, *y)).collect();
    Polygon::new(&corners).unwrap()
}

/// Two triangles that make a square of 4, and a bar.
fn strip() -> Strip {
    let triangle = Item { polygon: polygon(&[(0, 0), (4, 0), (0, 4)]), turns: vec![Turn::None, Turn::Half], count: 2 };
    let bar = Item { polygon: polygon(&[(0, 0), (1, 0), (1, 5), (0, 5)]), turns: vec![Turn::None], count: 1 };
    Strip { height: 5, items: vec![triangle, bar] }
}

fn placed(item: u32, turn: Turn, x: i64, y: i64) -> Placed {
    Placed { item, turn, at: Point::new(x, y) }
}

fn layout() -> Layout {
    let placed = vec![placed(0, Turn::None, 0, 0), placed(0, Turn::Half, 4, 4), placed(1, Turn::None, 4, 0)];
    Layout { length: 5, placed }
}

#[test]
fn what_only_touches_holds() {
    assert_eq!(check(&layout(), &strip()), Ok(()));
    assert!((layout().density(&strip()) - 21.0 / 25.0).abs() < 1e-12);
}

/// Each planted fault is found.
#[test]
fn the_check_finds_faults() {
    let broken = |change: &dyn Fn(&mut Layout)| {
        let mut broken = layout();
        change(&mut broken);
        check(&broken, &strip())
    };
    assert_eq!(broken(&|it| it.placed[2].at.x -= 1), Err(Fault::Overlap { placed: 0, other: 2 }));
    assert_eq!(broken(&|it| it.placed[0].at.y += 1), Err(Fault::Overlap { placed: 0, other: 1 }));
    assert_eq!(broken(&|it| it.placed[1] = placed(0, Turn::None, 0, 0)), Err(Fault::Overlap { placed: 0, other: 1 }));
    assert_eq!(broken(&|it| it.placed[1].at.y += 2), Err(Fault::Outside { placed: 1 }));
    assert_eq!(broken(&|it| it.placed[0].at.x -= 1), Err(Fault::Outside { placed: 0 }));
    assert_eq!(broken(&|it| it.length = 4), Err(Fault::Outside { placed: 2 }));
    assert_eq!(broken(&|it| it.length = 6), Err(Fault::Length));
    assert_eq!(broken(&|it| it.placed[0].turn = Turn::Quarter), Err(Fault::Turned { placed: 0 }));
    assert_eq!(broken(&|it| it.placed[0].item = 2), Err(Fault::NoItem { placed: 0 }));
    assert_eq!(broken(&|it| it.placed.truncate(2)), Err(Fault::Count { item: 1 }));
    assert_eq!(broken(&|it| it.placed.push(placed(1, Turn::None, 5, 0))), Err(Fault::Outside { placed: 3 }));
    let twice = |it: &mut Layout| {
        it.placed.push(placed(1, Turn::None, 5, 0));
        it.length = 6;
    };
    assert_eq!(broken(&twice), Err(Fault::Count { item: 1 }));
}

/// Its plain twin: no-fit polygons, which share no code with it. Corners are few whole numbers, so that many touch.
#[test]
fn it_agrees_with_no_fit_polygons() {
    let mut random = Random::new(11);
    let (mut shapes, mut overlapping, mut apart) = (Vec::new(), 0, 0);
    while shapes.len() < 24 {
        let many = 3 + random.place(5);
        let corners: Vec<Point> =
            (0..many).map(|_| Point::new(i64::from(random.below(6)), i64::from(random.below(6)))).collect();
        shapes.extend(Polygon::new(&corners));
    }
    for one in &shapes {
        for other in &shapes {
            let nofit = Nofit::of(&parts(one.corners()), &parts(other.corners()));
            for x in -6..=6 {
                for y in -6..=6 {
                    let moved = other.corners().iter().map(|corner| *corner + Point::new(x, y));
                    let found = Outline::new(one.corners().iter().copied()).overlaps(&Outline::new(moved));
                    assert_eq!(found, nofit.holds(Point::new(x, y)), "{one:?} {other:?} {x} {y}");
                    if found { overlapping += 1 } else { apart += 1 }
                }
            }
        }
    }
    assert!(overlapping > 9000 && apart > 9000, "{overlapping} {apart}");
}
