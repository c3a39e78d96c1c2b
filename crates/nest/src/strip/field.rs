//! How deep a shift is inside a no-fit polygon, at once: a grid over it whose cells know which edges can be nearest.
//!
//! The depth is how far the shift has to go, in any direction, until it is outside: the penetration depth of Imamichi,
//! Yagiura and Nagamochi, An iterated local search algorithm based on nonlinear programming for the irregular strip
//! packing problem, Discrete Optimization 6, 2009, section 3.2.

use super::nofit::Nofit;
use super::number::{cell, count, real};
use super::outline::{Plane, Segment, outline, planes};

/// The way out of a no-fit polygon: to the nearest shift that is not inside.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Exit {
    pub(crate) x: f64,
    pub(crate) y: f64,
}

impl Exit {
    /// The square of its length.
    pub(crate) fn squared(&self) -> f64 {
        self.x * self.x + self.y * self.y
    }
}

/// The depths of one no-fit polygon.
#[derive(Clone, Debug, Default)]
pub(crate) struct Field {
    left: f64,
    low: f64,
    right: f64,
    high: f64,
    /// Columns, and as many rows.
    side: usize,
    columns_per_length: f64,
    rows_per_length: f64,
    /// Where the list of a cell begins; 0 for one that is outside.
    cells: Vec<u32>,
    /// For each cell: how many numbers its parts have, how many edges; then for each part that a cell is partly in, how
    /// many half-planes decide and which ones; then the edges. A cell without parts is inside.
    lists: Vec<u16>,
    planes: Vec<Plane>,
    edges: Vec<Edge>,
}

/// An edge of the border, ready to be measured.
#[derive(Clone, Copy, Debug)]
struct Edge {
    segment: Segment,
    /// 1 over the square of its length; 0 for a point.
    inverse: f64,
}

impl Edge {
    fn new(segment: Segment) -> Self {
        let squared = segment.run * segment.run + segment.rise * segment.rise;
        Self { segment, inverse: if squared > 0.0 { 1.0 / squared } else { 0.0 } }
    }

    /// From a point to the nearest one of the edge.
    fn exit(&self, x: f64, y: f64) -> Exit {
        let Segment { x: from_x, y: from_y, run, rise } = self.segment;
        let (x, y) = (from_x - x, from_y - y);
        let share = (-(x * run + y * rise) * self.inverse).clamp(0.0, 1.0);
        Exit { x: x + share * run, y: y + share * rise }
    }
}

impl Field {
    /// The depths of a no-fit polygon on a grid of `side` × `side` cells, a power of two; none if it has too many edges.
    pub(crate) fn of(nofit: &Nofit, side: usize) -> Option<Self> {
        let planes = planes(nofit);
        let segments = outline(nofit, &planes);
        let many = planes.iter().map(Vec::len).sum::<usize>().max(segments.len());
        if many >= usize::from(u16::MAX) {
            return None;
        }
        let (width, height) = (real(nofit.high.x - nofit.low.x), real(nofit.high.y - nofit.low.y));
        let mut number = 0..u16::MAX;
        let parts = planes.iter().map(|part| number.by_ref().take(part.len()).collect()).collect();
        let mut field = Self {
            left: real(nofit.low.x),
            low: real(nofit.low.y),
            right: real(nofit.high.x),
            high: real(nofit.high.y),
            side,
            columns_per_length: count(side) / width,
            rows_per_length: count(side) / height,
            cells: vec![0; side * side],
            lists: vec![0],
            planes: planes.concat(),
            edges: segments.into_iter().map(Edge::new).collect(),
        };
        let near = Near { parts, edges: (0..u16::MAX).take(field.edges.len()).collect(), is_inside: false };
        field.divide((0, 0, side), (width, height), &near);
        Some(field)
    }

    /// The lists of all cells of a block, given by its first column, its first row and how many of both; `near` is what
    /// matters in a block around it, `size` that of all of the field.
    fn divide(&mut self, (column, row, many): (usize, usize, usize), size: (f64, f64), near: &Near) {
        let share = count(many) / count(self.side) / 2.0;
        let (half_width, half_height) = (size.0 * share, size.1 * share);
        let x = self.left + count(column) / self.columns_per_length + half_width;
        let y = self.low + count(row) / self.rows_per_length + half_height;
        let Some(near) = self.near((x, y), (half_width, half_height), near) else { return };
        if many > 1 {
            let half = many / 2;
            for (column, row) in
                [(column, row), (column + half, row), (column, row + half), (column + half, row + half)]
            {
                self.divide((column, row, half), size, &near);
            }
            return;
        }
        let short = |many: usize| u16::try_from(many).unwrap_or(0);
        let Ok(start) = u32::try_from(self.lists.len()) else { return };
        if let Some(cell) = self.cells.get_mut(row * self.side + column) {
            *cell = start;
        }
        let numbers = near.parts.iter().map(|part| part.len() + 1).sum();
        self.lists.extend([short(numbers), short(near.edges.len())]);
        for part in &near.parts {
            self.lists.push(short(part.len()));
            self.lists.extend(part);
        }
        self.lists.extend(&near.edges);
    }

    /// What matters in a block by its middle and half its size; none if the block is outside.
    fn near(&self, (x, y): (f64, f64), (half_width, half_height): (f64, f64), around: &Near) -> Option<Near> {
        let mut parts = Vec::new();
        let mut is_inside = around.is_inside;
        for part in around.parts.iter().filter(|_| !around.is_inside) {
            let mut is_out = false;
            let cuts = part.iter().copied().filter(|number| {
                let Some(plane) = self.planes.get(usize::from(*number)) else { return false };
                let (depth, reach) = (plane.depth(x, y), plane.x.abs() * half_width + plane.y.abs() * half_height);
                is_out |= depth <= -reach;
                depth < reach
            });
            let cuts: Vec<u16> = cuts.collect();
            if is_out {
                continue;
            }
            if cuts.is_empty() {
                is_inside = true;
                parts.clear();
                break;
            }
            parts.push(cuts);
        }
        if parts.is_empty() && !is_inside {
            return None;
        }
        let far = (half_width * half_width + half_height * half_height).sqrt();
        let measured: Vec<(f64, u16)> = around
            .edges
            .iter()
            .filter_map(|number| Some((self.edges.get(usize::from(*number))?.exit(x, y).squared().sqrt(), *number)))
            .collect();
        // Who is nearest to any point of the block is nearly as near to its middle as the nearest there.
        let least = measured.iter().map(|(distance, _)| *distance).fold(f64::MAX, f64::min);
        let most = (least + 2.0 * far) * (1.0 + 1e-9);
        let edges = measured.into_iter().filter(|(distance, _)| *distance <= most).map(|(_, number)| number).collect();
        Some(Near { parts, edges, is_inside })
    }

    /// The way out from a shift; none if it is outside.
    pub(crate) fn exit(&self, x: f64, y: f64) -> Option<Exit> {
        let is_near = x > self.left && x < self.right && y > self.low && y < self.high;
        if !is_near {
            return None;
        }
        let column = cell((x - self.left) * self.columns_per_length, self.side);
        let row = cell((y - self.low) * self.rows_per_length, self.side);
        let start = *self.cells.get(row * self.side + column)?;
        if start == 0 {
            return None;
        }
        let [numbers, many, rest @ ..] = self.lists.get(start as usize..)? else { return None };
        let (parts, rest) = rest.split_at_checked(usize::from(*numbers))?;
        if !parts.is_empty() && !self.is_in_any(parts, x, y) {
            return None;
        }
        let mut nearest = Exit { x: 0.0, y: 0.0 };
        let mut least = f64::MAX;
        for number in rest.get(..usize::from(*many))? {
            let exit = self.edges.get(usize::from(*number))?.exit(x, y);
            let squared = exit.squared();
            if squared < least {
                (nearest, least) = (exit, squared);
            }
        }
        (least < f64::MAX).then_some(nearest)
    }

    fn is_in_any(&self, mut parts: &[u16], x: f64, y: f64) -> bool {
        let is_in = |number: &u16| self.planes.get(usize::from(*number)).is_some_and(|plane| plane.depth(x, y) > 0.0);
        while let [many, rest @ ..] = parts {
            let Some((planes, rest)) = rest.split_at_checked(usize::from(*many)) else { return false };
            if planes.iter().all(is_in) {
                return true;
            }
            parts = rest;
        }
        false
    }
}

/// What matters in a block of cells.
struct Near {
    /// Of each part that the block is partly in, the half-planes that cut it.
    parts: Vec<Vec<u16>>,
    /// Edges that are nearest to some of its points.
    edges: Vec<u16>,
    /// Whether a part holds all of it.
    is_inside: bool,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::random::Random;
    use crate::strip::convex::parts;
    use crate::strip::point::Point;
    use crate::strip::polygon::Polygon;

    fn nofit(still: &[(i64, i64)], moved: &[(i64, i64)]) -> Nofit {
        let parts = |corners: &[(i64, i64)]| {
            let corners: Vec<Point> = corners.iter().map(|(x, y)| Point::new(1000 * x, 1000 * y)).collect();
            parts(Polygon::new(&corners).unwrap().corners())
        };
        Nofit::of(&parts(still), &parts(moved))
    }

    /// The slow twin: all parts, all edges.
    #[test]
    fn depths_are_those_of_all_edges() {
        let u = [(0, 0), (8, 0), (8, 4), (6, 4), (6, 1), (2, 1), (2, 4), (0, 4)];
        let star = [(0, 0), (3, 1), (6, -1), (4, 3), (5, 6), (2, 4), (-1, 5), (1, 2)];
        let mut random = Random::new(7);
        for (still, moved) in [(&u, &star), (&star, &star), (&u, &u), (&star, &u)] {
            let nofit = nofit(still, moved);
            let field = Field::of(&nofit, 32).unwrap();
            let segments = outline(&nofit, &planes(&nofit));
            let mut inside = 0;
            for _ in 0..4000 {
                let mut within = |low: i64, high: i64| {
                    low - 500 + i64::from(random.below(u32::try_from(high - low + 1000).unwrap()))
                };
                let shift = Point::new(within(nofit.low.x, nofit.high.x), within(nofit.low.y, nofit.high.y));
                let (x, y) = (real(shift.x), real(shift.y));
                let far = |segment: &Segment| Edge::new(*segment).exit(x, y).squared();
                let least = segments.iter().map(far).fold(f64::MAX, f64::min);
                let exit = field.exit(x, y);
                // On the border itself real numbers may say either.
                assert!(exit.is_some() == nofit.holds(shift) || least < 1e-6, "{shift:?}");
                let Some(exit) = exit else { continue };
                inside += 1;
                assert!((exit.squared().sqrt() - least.sqrt()).abs() < 1e-6, "{shift:?}");
                // A little less is still inside, a little more is out.
                let beyond = |share: f64| field.exit(x + share * exit.x, y + share * exit.y);
                assert!(least < 1.0 || beyond(0.99).is_some(), "{shift:?}");
            }
            assert!(inside > 1000, "{inside}");
        }
    }
}
