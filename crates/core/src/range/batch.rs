//! A measured batch of sheets.

use serde::{Serialize, Serializer};

use crate::input::entry::measured;
use crate::units::quantity::Length;
use crate::units::rounding::round_half_away;

/// The thickness of a batch of sheets, measured at eight points about 50 mm from the edge.
// Source: EN 324-1:1993: eight points, the mean to 0.05 mm.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(with = "Vec<Length>"))]
pub struct Batch {
    points: Vec<Length>,
    // Worked out once: every judgement asks for them.
    exact: Length,
    mean: Length,
    deviation: Length,
    furthest: Length,
}

/// How thick a sanded board of some nominal thickness is at least and at most.
// Source: EN 315:2000, sanded boards: −(0.4 + 0.03 t), +(0.2 + 0.03 t) mm.
pub(crate) fn sanded(nominal: Length) -> (Length, Length) {
    let (under, over) = (Length::mm(0.4) + nominal * 0.03, Length::mm(0.2) + nominal * 0.03);
    (nominal - under, nominal + over)
}

impl Batch {
    /// How many points are measured.
    pub const POINTS: usize = 8;

    /// From what was read; [`Batch::wrong_count`] says whether it is eight points.
    pub(crate) fn of(points: Vec<Length>) -> Self {
        let count: f64 = points.iter().map(|_| 1.0).sum();
        // Any other count is refused; nothing is divided by none.
        let exact = points.iter().copied().sum::<Length>() / count.max(1.0);
        let off = || points.iter().map(|point| (*point - exact).in_mm());
        let squares: f64 = off().map(|off| off * off).sum();
        let deviation = Length::mm((squares / (count - 1.0).max(1.0)).sqrt());
        let furthest = off().map(|off| Length::mm(off.abs())).fold(Length::ZERO, Length::max);
        let mean = Length::mm(round_half_away(exact.in_mm() * 20.0) / 20.0);
        Self { points, exact, mean, deviation, furthest }
    }

    /// The measured points.
    pub fn points(&self) -> &[Length] {
        &self.points
    }

    /// How many points there are, if not eight.
    pub(crate) fn wrong_count(&self) -> Option<usize> {
        Some(self.points.len()).filter(|count| *count != Self::POINTS)
    }

    /// The mean thickness to 0.05 mm.
    ///
    /// ```
    /// use slotwright_core::range::Batch;
    /// let batch: Batch = "17.61 17.68 17.72 17.66 17.70 17.64 17.69 17.70".parse().unwrap();
    /// assert_eq!(batch.mean().in_mm(), 17.7);
    /// ```
    pub const fn mean(&self) -> Length {
        self.mean
    }

    /// By how much the exact mean is above the rounded one.
    pub fn over(&self) -> Length {
        self.exact - self.mean
    }

    /// Standard deviation of the points, that of a sample.
    pub const fn deviation(&self) -> Length {
        self.deviation
    }

    /// The mean of the points, unrounded, and the least and the most that it may be on a board of this nominal
    /// thickness; nothing if it is within them.
    pub fn strays(&self, nominal: Length) -> Option<(Length, Length, Length)> {
        let (least, most) = sanded(nominal);
        // Eight points at a limit may add up to a little beyond it.
        let off = (least - self.exact).max(self.exact - most);
        (off > Length::mm(0.001)).then_some((self.exact, least, most))
    }

    /// The largest distance of a point from the mean.
    pub const fn furthest(&self) -> Length {
        self.furthest
    }
}

impl Serialize for Batch {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.points.serialize(serializer)
    }
}

/// A text that is no measured batch.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotABatch {
    /// Not eight points.
    Count(usize),
    /// Not a thickness.
    Point(String),
}

impl core::str::FromStr for Batch {
    type Err = NotABatch;

    /// Eight numbers in millimetres with spaces between them, or commas if there is no space.
    fn from_str(text: &str) -> Result<Self, NotABatch> {
        let between =
            if text.trim().contains(char::is_whitespace) { char::is_whitespace } else { |letter| letter == ',' };
        let words = text.split(between).map(|word| word.trim_matches([',', ';'])).filter(|word| !word.is_empty());
        let read = |word: &str| {
            let point = measured(word).filter(|point| (3.0..=60.0).contains(&point.in_mm()));
            point.ok_or_else(|| NotABatch::Point(word.chars().take(40).collect()))
        };
        let batch = Self::of(words.map(read).collect::<Result<_, _>>()?);
        batch.wrong_count().map_or(Ok(batch), |count| Err(NotABatch::Count(count)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // At 18 mm the standard gives 17.06 to 18.74 mm.
    #[test]
    fn a_batch_is_of_its_board() {
        let strays = |point: &str, nominal| {
            let batch: Batch = [point; 8].join(" ").parse().unwrap();
            batch.strays(Length::mm(nominal)).map(|(mean, ..)| mean.in_mm())
        };
        for point in ["17.06", "17.7", "18.74"] {
            assert_eq!(strays(point, 18.0), None, "{point}");
        }
        assert_eq!([strays("17.05", 18.0), strays("18.75", 18.0)], [Some(17.05), Some(18.75)]);
        assert_eq!([strays("25", 18.0), strays("18", 12.0)], [Some(25.0), Some(18.0)]);
    }

    #[test]
    fn a_batch_is_eight_points() {
        let batch: Batch = "17.6, 17.7, 17.8, 17.7, 17.6, 17.8, 17.7, 17.72".parse().unwrap();
        assert!((batch.mean().in_mm() - 17.7).abs() < 1e-9);
        assert!((batch.deviation().in_mm() - 0.075_923).abs() < 1e-5, "{:?}", batch.deviation());
        let commas: Batch = "17,600 17,7 17,8 17,7 17,6 17,8 17,7 17,72".parse().unwrap();
        assert_eq!(commas, batch);
        assert_eq!("17.6,17.7,17.8,17.7,17.6,17.8,17.7,17.72".parse(), Ok(batch));
        assert_eq!("17.6 17.7".parse::<Batch>(), Err(NotABatch::Count(2)));
        assert_eq!("17.6 0.7".parse::<Batch>(), Err(NotABatch::Point("0.7".into())));
    }
}
