//! Which body stops which, and how far each may go before it does.
//!
//! Directional blocking: body P is stopped by Q along d if P, moved along d, runs into Q.
// Source: R. H. Wilson and J.-C. Latombe, Geometric reasoning about mechanical assembly, Artificial
// Intelligence 71 (1994): directional blocking graphs.

use serde::Serialize;

use crate::geometry::space::{Block, Spot};
use crate::units::quantity::Length;

/// One of the six directions of the case.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Direction {
    /// Upwards, +z.
    Up,
    /// To the front, −y.
    Forwards,
    /// To the left, −x.
    Left,
    /// To the right, +x.
    Right,
    /// To the rear, +y.
    Back,
    /// Downwards, −z.
    Down,
}

impl Direction {
    /// All six, in the order in which hands prefer to pull.
    pub const ALL: [Self; 6] = [Self::Up, Self::Forwards, Self::Left, Self::Right, Self::Back, Self::Down];

    /// The other way.
    #[must_use]
    pub const fn opposite(self) -> Self {
        match self {
            Self::Up => Self::Down,
            Self::Down => Self::Up,
            Self::Forwards => Self::Back,
            Self::Back => Self::Forwards,
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }

    const fn axis(self) -> (Axis, bool) {
        match self {
            Self::Right => (Axis::X, true),
            Self::Left => (Axis::X, false),
            Self::Back => (Axis::Y, true),
            Self::Forwards => (Axis::Y, false),
            Self::Up => (Axis::Z, true),
            Self::Down => (Axis::Z, false),
        }
    }

    /// A step of that length along it.
    pub fn step(self, by: Length) -> Spot {
        let zero = Length::ZERO;
        match self {
            Self::Right => Spot::new(by, zero, zero),
            Self::Left => Spot::new(-by, zero, zero),
            Self::Back => Spot::new(zero, by, zero),
            Self::Forwards => Spot::new(zero, -by, zero),
            Self::Up => Spot::new(zero, zero, by),
            Self::Down => Spot::new(zero, zero, -by),
        }
    }
}

#[derive(Clone, Copy, Debug)]
enum Axis {
    X,
    Y,
    Z,
}

/// A box as plain millimetres.
#[derive(Clone, Copy, Debug)]
struct Cell {
    x: (f64, f64),
    y: (f64, f64),
    z: (f64, f64),
}

/// Overlaps and gaps below this are none: positions equal on paper differ in their last bits.
const SAME_MM: f64 = 1e-6;

fn overlaps(a: (f64, f64), b: (f64, f64)) -> bool {
    a.0 + SAME_MM < b.1 && b.0 + SAME_MM < a.1
}

impl Cell {
    fn of(block: Block) -> Self {
        let Block { from, to } = block;
        let span = |a: Length, b: Length| (a.in_mm(), b.in_mm());
        Self { x: span(from.x, to.x), y: span(from.y, to.y), z: span(from.z, to.z) }
    }

    fn around(self, other: Self) -> Self {
        let span = |a: (f64, f64), b: (f64, f64)| (a.0.min(b.0), a.1.max(b.1));
        Self { x: span(self.x, other.x), y: span(self.y, other.y), z: span(self.z, other.z) }
    }

    /// Along how many axes two boxes overlap.
    fn overlaps(self, other: Self) -> [bool; 3] {
        [overlaps(self.x, other.x), overlaps(self.y, other.y), overlaps(self.z, other.z)]
    }

    /// Whether one runs into the other along some axis.
    fn meets(self, other: Self) -> bool {
        let [x, y, z] = self.overlaps(other);
        (x && (y || z)) || (y && z)
    }

    fn shares_room(self, other: Self) -> bool {
        self.overlaps(other) == [true; 3]
    }
}

/// A rigid body: a union of boxes.
#[derive(Clone, Debug)]
pub struct Body {
    cells: Vec<Cell>,
    hull: Option<Cell>,
}

impl Body {
    /// The body of these boxes.
    pub fn of(blocks: impl IntoIterator<Item = Block>) -> Self {
        let cells: Vec<Cell> = blocks.into_iter().map(Cell::of).collect();
        let hull = cells.iter().copied().reduce(Cell::around);
        Self { cells, hull }
    }

    /// Its boxes that can meet the bounding box of another body at all.
    fn near<'a>(&'a self, other: &Self) -> impl Iterator<Item = Cell> + 'a {
        let hull = other.hull;
        self.cells.iter().copied().filter(move |cell| hull.is_some_and(|hull| cell.meets(hull)))
    }

    /// How far it has to go along a direction until its bounding box is past that of another body in
    /// its way; nothing if the other one is not.
    pub fn clear_of(&self, other: &Self, direction: Direction) -> Length {
        let (Some(own), Some(others)) = (self.hull, other.hull) else { return Length::ZERO };
        let (axis, forwards) = direction.axis();
        let (own_span, others_span, beside) = match axis {
            Axis::X => (own.x, others.x, [(own.y, others.y), (own.z, others.z)]),
            Axis::Y => (own.y, others.y, [(own.x, others.x), (own.z, others.z)]),
            Axis::Z => (own.z, others.z, [(own.x, others.x), (own.y, others.y)]),
        };
        let in_way = beside.into_iter().all(|(own, others)| overlaps(own, others));
        let far = if forwards { others_span.1 - own_span.0 } else { own_span.1 - others_span.0 };
        if in_way { Length::mm(far.max(0.0)) } else { Length::ZERO }
    }

    /// Whether two bodies are in the same place somewhere.
    pub fn shares_room(&self, other: &Self) -> bool {
        let apart = self.hull.zip(other.hull).is_none_or(|(own, others)| !own.shares_room(others));
        !apart && self.cells.iter().any(|cell| other.cells.iter().any(|other| cell.shares_room(*other)))
    }
}

/// How far each body may go before it runs into each other one.
#[derive(Clone, Debug)]
pub struct Blocking {
    count: usize,
    /// For each ordered pair of bodies: the gaps towards larger x, y and z; infinite if there is none.
    gaps: Vec<[f64; 3]>,
}

impl Blocking {
    /// Compares all bodies, each a union of boxes.
    pub fn of(bodies: &[Body]) -> Self {
        let count = bodies.len();
        let mut blocking = Self { count, gaps: vec![[f64::INFINITY; 3]; count * count] };
        let (mut own, mut others) = (Vec::new(), Vec::new());
        for (at, body) in bodies.iter().enumerate() {
            for (to, other) in bodies.iter().enumerate().skip(at + 1) {
                let meet = body.hull.zip(other.hull).is_some_and(|(own, others)| own.meets(others));
                if !meet {
                    continue;
                }
                own.clear();
                own.extend(body.near(other));
                others.clear();
                others.extend(other.near(body));
                let (ahead, behind) = gaps(&own, &others);
                blocking.set(at, to, ahead);
                blocking.set(to, at, behind);
            }
        }
        blocking
    }

    fn set(&mut self, from: usize, to: usize, gaps: [f64; 3]) {
        if let Some(known) = self.gaps.get_mut(from * self.count + to) {
            *known = gaps;
        }
    }

    /// How far a body may go along a direction before another stops it; `None` if it never does.
    pub fn travel(&self, body: usize, direction: Direction, other: usize) -> Option<Length> {
        let (axis, forwards) = direction.axis();
        let (from, to) = if forwards { (body, other) } else { (other, body) };
        let [x, y, z] = *self.gaps.get(from * self.count + to)?;
        let gap = match axis {
            Axis::X => x,
            Axis::Y => y,
            Axis::Z => z,
        };
        gap.is_finite().then(|| Length::mm(gap))
    }

    /// Everything that must come along when a body moves that way, itself included: others that stand
    /// within `play` ahead of it, those ahead of them, and so on.
    pub fn moves_with(&self, body: usize, direction: Direction, play: Length) -> Vec<usize> {
        let mut known = vec![false; self.count];
        let mut open = vec![body];
        while let Some(next) = open.pop() {
            let Some(seen) = known.get_mut(next).filter(|seen| !**seen) else { continue };
            *seen = true;
            let ahead = |other: &usize| self.travel(next, direction, *other).is_some_and(|travel| travel <= play);
            open.extend((0..self.count).filter(ahead));
        }
        (0..self.count).filter(|at| known.get(*at) == Some(&true)).collect()
    }

    /// How many bodies there are.
    pub fn count(&self) -> usize {
        self.count
    }
}

/// The least gaps from boxes to others towards larger x, y and z, and from the others to them.
fn gaps(own: &[Cell], others: &[Cell]) -> ([f64; 3], [f64; 3]) {
    let (mut ahead, mut behind) = ([f64::INFINITY; 3], [f64::INFINITY; 3]);
    for cell in own {
        for other in others {
            let [x, y, z] = cell.overlaps(*other);
            // Most boxes of two plates have nothing to do with each other.
            if !(x && (y || z) || y && z) {
                continue;
            }
            let axes = [(y && z, cell.x, other.x), (z && x, cell.y, other.y), (x && y, cell.z, other.z)];
            for ((ahead, behind), (faces, own, others)) in ahead.iter_mut().zip(&mut behind).zip(axes) {
                if faces && others.1 > own.0 + SAME_MM {
                    *ahead = ahead.min((others.0 - own.1).max(0.0));
                }
                if faces && own.1 > others.0 + SAME_MM {
                    *behind = behind.min((own.0 - others.1).max(0.0));
                }
            }
        }
    }
    (ahead, behind)
}
