//! A simple polygon as convex parts.
//!
//! Ears are cut off, then triangles that share an edge are put together as long as that stays convex (Hertel and
//! Mehlhorn, Fast triangulation of simple polygons, FCT 1983): at most four times as many parts as there have to be.

use super::point::{Point, edges, side};
use super::polygon::triples;

/// Convex polygons, counter-clockwise, that overlap nowhere and together are a simple polygon.
pub(crate) fn parts(polygon: &[Point]) -> Vec<Vec<Point>> {
    let mut parts = triangles(polygon);
    loop {
        let before = parts.len();
        parts = joined(parts);
        if parts.len() == before {
            return parts;
        }
    }
}

fn triangles(polygon: &[Point]) -> Vec<Vec<Point>> {
    let (mut left, mut found) = (polygon.to_vec(), Vec::new());
    while left.len() > 2 {
        let ear = triples(&left).position(|(before, at, after)| {
            let area = side(before, at, after);
            area == 0 || area > 0 && !left.iter().any(|other| is_within(*other, [before, at, after]))
        });
        // A simple polygon has two ears at least (Meisters, Polygons have ears, 1975).
        debug_assert!(ear.is_some(), "a polygon without an ear");
        let Some(ear) = ear else { break };
        if let Some((before, at, after)) = triples(&left).nth(ear).filter(|(a, b, c)| side(*a, *b, *c) > 0) {
            found.push(vec![before, at, after]);
        }
        left.remove(ear);
    }
    found
}

/// Whether another point lies in a triangle or on its border.
fn is_within(point: Point, [a, b, c]: [Point; 3]) -> bool {
    ![a, b, c].contains(&point) && side(a, b, point) >= 0 && side(b, c, point) >= 0 && side(c, a, point) >= 0
}

/// Parts put together where that stays convex.
fn joined(mut parts: Vec<Vec<Point>>) -> Vec<Vec<Point>> {
    let mut done = Vec::new();
    while let Some(mut part) = parts.pop() {
        while let Some((at, both)) = parts.iter().enumerate().find_map(|(at, other)| Some((at, join(&part, other)?))) {
            parts.swap_remove(at);
            part = both;
        }
        done.push(part);
    }
    done
}

/// Two polygons that share an edge as one, if that is convex.
fn join(one: &[Point], other: &[Point]) -> Option<Vec<Point>> {
    edges(one).enumerate().find_map(|(at, (from, to))| {
        let back = edges(other).position(|edge| edge == (to, from))?;
        // All of one from the end of its edge, then what the other has besides the edge.
        let first = one.iter().cycle().skip(at + 1).take(one.len());
        let second = other.iter().cycle().skip(back + 2).take(other.len().saturating_sub(2));
        let both: Vec<Point> = first.chain(second).copied().collect();
        let is_convex = triples(&both).all(|(before, at, after)| side(before, at, after) >= 0);
        is_convex.then(|| {
            let bends = triples(&both).filter(|(before, at, after)| side(*before, *at, *after) > 0);
            bends.map(|(_, at, _)| at).collect()
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strip::polygon::Polygon;

    fn parts_of(corners: &[(i64, i64)]) -> (i128, Vec<Vec<Point>>) {
        let corners: Vec<Point> = corners.iter().map(|(x, y)| Point::new(*x, *y)).collect();
        let polygon = Polygon::new(&corners).unwrap();
        (polygon.double_area(), parts(polygon.corners()))
    }

    /// Of diagonals that cannot be taken out, each corner that bends inwards has two at most.
    fn holds(corners: &[(i64, i64)], bends_inwards: usize) {
        let (area, parts) = parts_of(corners);
        assert!(parts.len() <= 2 * bends_inwards + 1, "{parts:?}");
        let of = |part: &Vec<Point>| edges(part).map(|(from, to)| from.cross(to)).sum::<i128>();
        assert_eq!(parts.iter().map(of).sum::<i128>(), area);
        for part in &parts {
            assert!(triples(part).all(|(before, at, after)| side(before, at, after) > 0), "{part:?}");
        }
    }

    #[test]
    fn parts_are_convex_and_have_all_of_the_area() {
        holds(&[(0, 0), (4, 0), (4, 4), (0, 4)], 0);
        // A U, a cross, a comb, a spiral.
        holds(&[(0, 0), (2, 0), (2, 3), (12, 3), (12, 0), (14, 0), (14, 5), (0, 5)], 2);
        #[rustfmt::skip]
        holds(&[(0, 0), (2, 0), (2, -2), (4, -2), (4, 0), (6, 0), (6, 2), (4, 2), (4, 4), (2, 4), (2, 2), (0, 2)], 4);
        holds(&[(0, 0), (7, 0), (7, 5), (6, 1), (5, 5), (4, 1), (3, 5), (2, 1), (1, 5)], 3);
        holds(&[(0, 0), (9, 0), (9, 9), (2, 9), (2, 4), (5, 4), (5, 6), (4, 6), (4, 7), (7, 7), (7, 2), (0, 2)], 4);
    }
}
