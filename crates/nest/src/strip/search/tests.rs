use super::*;
use crate::strip::check::check;
use crate::strip::point::Turn;
use crate::strip::polygon::Polygon;
use crate::strip::problem::{Item, Strip};

/// Lengths are given in units of which each is so many of ours.
const UNIT: i64 = 1_000_000_000;

fn polygon(corners: &[(i64, i64)]) -> Polygon {
    let corners: Vec<Point> = corners.iter().map(|(x, y)| Point::new(UNIT * x, UNIT * y)).collect();
    Polygon::new(&corners).unwrap()
}

fn item(corners: &[(i64, i64)], turns: &[Turn], count: u32) -> Item {
    Item { polygon: polygon(corners), turns: turns.to_vec(), count }
}

/// Searches until nothing is shorter or the effort is spent, and checks each layout on the way.
fn found(strip: &Strip, efforts: &[u32]) -> (Layout, Progress) {
    let shapes = Shapes::of(strip).unwrap();
    let mut search = Search::new(&shapes, 1);
    check(&search.best(), strip).unwrap();
    let mut progress = Progress::Same;
    for effort in efforts {
        let before = search.length();
        progress = search.step(*effort);
        check(&search.best(), strip).unwrap();
        assert!(search.length() <= before);
    }
    (search.best(), progress)
}

const U: [(i64, i64); 8] = [(0, 0), (6, 0), (6, 4), (4, 4), (4, 1), (2, 1), (2, 4), (0, 4)];
const SQUARE: [(i64, i64); 4] = [(0, 0), (2, 0), (2, 2), (0, 2)];
const WEDGE: [(i64, i64); 3] = [(0, 0), (5, 1), (1, 4)];

#[test]
fn nothing_takes_nothing() {
    let (layout, progress) = found(&Strip { height: UNIT, items: vec![] }, &[10]);
    assert_eq!((layout, progress), (Layout::default(), Progress::Done));
}

/// By area: two triangles that fill a rectangle, and bars that fill another one.
#[test]
fn what_fits_without_waste_is_put_together() {
    let triangles = item(&[(0, 0), (4, 0), (0, 3)], &[Turn::None, Turn::Half], 4);
    let (layout, progress) = found(&Strip { height: 3 * UNIT, items: vec![triangles] }, &[400_000]);
    assert_eq!((layout.length, progress), (8 * UNIT, Progress::Done));
    let bars = item(&[(0, 0), (3, 0), (3, 1), (0, 1)], &[Turn::None, Turn::Quarter], 6);
    let (layout, progress) = found(&Strip { height: 3 * UNIT, items: vec![bars] }, &[400_000]);
    assert_eq!((layout.length, progress), (6 * UNIT, Progress::Done));
}

/// Worked by hand: a square fits exactly into a U, so that the strip is as long as the U alone.
#[test]
fn a_square_is_put_into_a_u() {
    let items = vec![item(&U, &[Turn::None], 1), item(&SQUARE, &[Turn::None], 1)];
    let (layout, progress) = found(&Strip { height: 4 * UNIT, items }, &[400_000]);
    assert_eq!((layout.length, progress), (6 * UNIT, Progress::Done));
}

/// A search gets better than the layout by one rule, and depends on its effort alone.
#[test]
fn a_search_depends_on_its_effort_alone() {
    let turns = [Turn::None, Turn::Half];
    let items = vec![item(&U, &turns, 3), item(&WEDGE, &turns, 6), item(&SQUARE, &turns, 3)];
    let strip = Strip { height: 11 * UNIT, items };
    let (at_once, _) = found(&strip, &[0]);
    let (layout, _) = found(&strip, &[60_000]);
    assert!(layout.length < at_once.length, "{} {}", layout.length, at_once.length);
    assert_eq!(found(&strip, &[10_000, 1, 19_999, 30_000]).0, layout);
}

/// Generated polygons, few and whole numbers, so that much fits exactly; turned or not.
#[test]
fn every_layout_holds() {
    let mut random = Random::new(3);
    let mut shorter = 0;
    for _ in 0..12 {
        let mut items = Vec::new();
        while items.len() < 4 {
            let many = 3 + random.place(6);
            let corners: Vec<Point> = (0..many)
                .map(|_| Point::new(UNIT * i64::from(random.below(6)), UNIT * i64::from(random.below(6)) / 2))
                .collect();
            let turns: Vec<Turn> =
                Turn::ALL.into_iter().filter(|turn| *turn == Turn::None || random.below(2) == 0).collect();
            if let Ok(polygon) = Polygon::new(&corners) {
                items.push(Item { polygon, turns, count: 1 + random.below(4) });
            }
        }
        let strip = Strip { height: UNIT * i64::from(5 + random.below(5)), items };
        let (at_once, _) = found(&strip, &[0]);
        let (layout, _) = found(&strip, &[4_000; 5]);
        shorter += i32::from(layout.length < at_once.length);
    }
    assert!(shorter >= 6, "{shorter}");
}

#[test]
fn a_shorter_layout_is_taken_over() {
    let strip = Strip { height: 9 * UNIT, items: vec![item(&WEDGE, &[Turn::None, Turn::Half], 9)] };
    let shapes = Shapes::of(&strip).unwrap();
    let (mut one, mut other) = (Search::new(&shapes, 1), Search::new(&shapes, 2));
    one.step(60_000);
    other.adopt(&one.best());
    assert_eq!(other.best(), one.best());
    other.finish();
    other.step(60_000);
    check(&other.best(), &strip).unwrap();
    assert!(other.length() <= one.length());
    // A longer one is not.
    let longer = Search::new(&shapes, 3).best();
    let before = other.best();
    other.adopt(&longer);
    assert_eq!(other.best(), before);
}
