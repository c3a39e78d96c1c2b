//! Points of whole numbers, and turns by quarters.

use core::ops::{Add, Neg, Sub};

/// A corner or a shift, in the caller's unit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Point {
    /// Along the strip.
    pub x: i64,
    /// Across the strip.
    pub y: i64,
}

impl Point {
    /// A point by both coordinates.
    pub const fn new(x: i64, y: i64) -> Self {
        Self { x, y }
    }

    /// The cross product: above 0 if `other` is to the left of this direction. Exact.
    pub(crate) fn cross(self, other: Self) -> i128 {
        i128::from(self.x) * i128::from(other.y) - i128::from(self.y) * i128::from(other.x)
    }

    /// The scalar product. Exact.
    pub(crate) fn dot(self, other: Self) -> i128 {
        i128::from(self.x) * i128::from(other.x) + i128::from(self.y) * i128::from(other.y)
    }

    /// The lesser of both coordinates.
    pub(crate) fn low(self, other: Self) -> Self {
        Self::new(self.x.min(other.x), self.y.min(other.y))
    }

    /// The greater of both coordinates.
    pub(crate) fn high(self, other: Self) -> Self {
        Self::new(self.x.max(other.x), self.y.max(other.y))
    }
}

impl Add for Point {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y)
    }
}

impl Sub for Point {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y)
    }
}

impl Neg for Point {
    type Output = Self;

    fn neg(self) -> Self {
        Self::new(-self.x, -self.y)
    }
}

/// Twice the area of a triangle: above 0 if `c` is to the left of the way from `a` to `b`. Exact.
pub(crate) fn side(a: Point, b: Point, c: Point) -> i128 {
    (b - a).cross(c - a)
}

/// The edges of a polygon, the last one back to its first corner.
pub(crate) fn edges(corners: &[Point]) -> impl Iterator<Item = (Point, Point)> {
    corners.iter().copied().zip(corners.iter().copied().cycle().skip(1))
}

/// The box of some points: its lower left and its upper right corner.
pub(crate) fn bounds(points: &[Point]) -> (Point, Point) {
    let first = points.first().copied().unwrap_or_default();
    points.iter().fold((first, first), |(low, high), point| (low.low(*point), high.high(*point)))
}

/// A turn about the origin, counter-clockwise by whole quarters.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Turn {
    /// As drawn.
    #[default]
    None,
    /// By 90 degrees.
    Quarter,
    /// By 180 degrees.
    Half,
    /// By 270 degrees.
    ThreeQuarters,
}

impl Turn {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::None, Self::Quarter, Self::Half, Self::ThreeQuarters];

    /// How many degrees it has.
    ///
    /// ```
    /// use slotwright_nest::strip::point::{Point, Turn};
    ///
    /// assert_eq!(Turn::Quarter.degrees(), 90);
    /// assert_eq!(Turn::Quarter.of(Point::new(3, 1)), Point::new(-1, 3));
    /// ```
    pub const fn degrees(self) -> u16 {
        90 * self.quarters() as u16
    }

    /// Where a point comes to be.
    pub const fn of(self, point: Point) -> Point {
        let Point { x, y } = point;
        match self {
            Self::None => point,
            Self::Quarter => Point { x: -y, y: x },
            Self::Half => Point { x: -x, y: -y },
            Self::ThreeQuarters => Point { x: y, y: -x },
        }
    }

    /// How many quarters it has.
    pub(crate) const fn quarters(self) -> u8 {
        match self {
            Self::None => 0,
            Self::Quarter => 1,
            Self::Half => 2,
            Self::ThreeQuarters => 3,
        }
    }

    /// The turn that leads from this one to another.
    pub(crate) const fn to(self, other: Self) -> Self {
        match (other.quarters() + 4 - self.quarters()) % 4 {
            0 => Self::None,
            1 => Self::Quarter,
            2 => Self::Half,
            _ => Self::ThreeQuarters,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn turns_add_up() {
        let point = Point::new(5, -2);
        for one in Turn::ALL {
            for other in Turn::ALL {
                assert_eq!(one.to(other).of(one.of(point)), other.of(point));
            }
        }
        assert_eq!(Turn::ALL.map(Turn::degrees), [0, 90, 180, 270]);
    }

    #[test]
    fn left_is_above_zero() {
        let [a, b] = [Point::new(0, 0), Point::new(4, 0)];
        assert_eq!(side(a, b, Point::new(1, 3)), 12);
        assert_eq!(side(a, b, Point::new(1, -3)), -12);
        assert_eq!(side(a, b, Point::new(9, 0)), 0);
    }
}
