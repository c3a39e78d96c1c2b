//! How joints fit: what thickness, films and cutting make of a clearance.
//!
//! The clearance of a slot is normally distributed; tolerances are three standard deviations. Two things are not to be
//! mixed up: the mean of a batch may be off, for all its joints at once, and within it each joint differs. What share of
//! an order's joints is outside depends on its batch; so figures are told for the worse end of 95 % of all batches.

use serde::{Serialize, Serializer};

use crate::entry::thickness;
use crate::quantity::{Length, round_half_away};
use crate::range::{Board, Finish, Range};

pub mod moisture;

/// The thickness of a batch of sheets, measured at eight points about 50 mm from the edge.
// Source: EN 324-1:1993: eight points, the mean to 0.05 mm.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(with = "Vec<Length>"))]
pub struct Batch {
    points: Vec<Length>,
    // Worked out once: every judgement asks for them.
    mean: Length,
    over: Length,
    deviation: Length,
    furthest: Length,
}

impl Batch {
    /// How many points are measured.
    pub const POINTS: usize = 8;

    /// From what was read; [`Batch::wrong_count`] says whether it is eight points.
    pub(crate) fn of(points: Vec<Length>) -> Self {
        let count: f64 = points.iter().map(|_| 1.0).sum();
        // Any other count is refused; nothing is divided by none.
        let mean = points.iter().copied().sum::<Length>() / count.max(1.0);
        let off = || points.iter().map(|point| (*point - mean).in_mm());
        let squares: f64 = off().map(|off| off * off).sum();
        let deviation = Length::mm((squares / (count - 1.0).max(1.0)).sqrt());
        let furthest = off().map(|off| Length::mm(off.abs())).fold(Length::ZERO, Length::max);
        let exact = mean;
        let mean = Length::mm(round_half_away(mean.in_mm() * 20.0) / 20.0);
        Self { points, mean, over: exact - mean, deviation, furthest }
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
    /// use slotwright_core::fit::Batch;
    /// let batch: Batch = "17.61 17.68 17.72 17.66 17.70 17.64 17.69 17.70".parse().unwrap();
    /// assert_eq!(batch.mean().in_mm(), 17.7);
    /// ```
    pub const fn mean(&self) -> Length {
        self.mean
    }

    /// By how much the exact mean is above the rounded one.
    pub const fn over(&self) -> Length {
        self.over
    }

    /// Standard deviation of the points, that of a sample.
    pub const fn deviation(&self) -> Length {
        self.deviation
    }

    /// The mean of the points, unrounded, and the least and the most that it may be on a board of this nominal
    /// thickness; nothing if it is within them.
    // Source: EN 315:2000, sanded boards: −(0.4 + 0.03 t), +(0.2 + 0.03 t).
    pub fn strays(&self, nominal: Length) -> Option<(Length, Length, Length)> {
        let mean = self.points.iter().copied().sum::<Length>() / self.points.iter().map(|_| 1.0).sum::<f64>();
        let (under, over) = (Length::mm(0.4) + nominal * 0.03, Length::mm(0.2) + nominal * 0.03);
        let (least, most) = (nominal - under, nominal + over);
        // Eight points at a limit may add up to a little beyond it.
        let off = (least - mean).max(mean - most);
        (off > Length::mm(0.001)).then_some((mean, least, most))
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
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NotABatch {
    /// Not eight points.
    #[error("{0} points were given; measure eight, about 50 mm from the edge (EN 324-1)")]
    Count(usize),
    /// Not a thickness.
    #[error("{0:?} is not a thickness from 3 to 60 mm")]
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
            let point = thickness(word).filter(|point| (3.0..=60.0).contains(&point.in_mm()));
            point.ok_or_else(|| NotABatch::Point(word.chars().take(40).collect()))
        };
        let batch = Self::of(words.map(read).collect::<Result<_, _>>()?);
        batch.wrong_count().map_or(Ok(batch), |count| Err(NotABatch::Count(count)))
    }
}

/// A clearance as it will be met over many joints.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clearance {
    /// The one to be expected: the wanted one, less the coat on the slot's walls and what the mean was rounded off by.
    pub mean: Length,
    /// Standard deviation of what all joints of a batch share: how far its mean may be off.
    pub shared: Length,
    /// Standard deviation of what each joint has for itself: thickness within the batch, films and cutting.
    pub own: Length,
    /// How far it may be off if everything is off at once.
    pub worst: Length,
}

impl Clearance {
    /// Of the joints of a board in a finish.
    pub fn of(range: &Range, board: &Board, finish: &Finish) -> Self {
        let thickness = Thickness::of(board, range.fit.within_batch_mm);
        let film = finish.dry_film() * (f64::from(range.fit.film_per_mille) / 1000.0);
        // A panel has a film on each face, a slot is cut once and has two walls.
        let own = root_of_squares(&[thickness.within * 3.0, film, film, range.fit.cut_mm]) / 3.0;
        let worst = thickness.furthest + film * 2.0 + range.fit.cut_mm;
        let walls = finish.film_after() * (f64::from(range.fit.slot_coat_per_mille) / 1000.0 * 2.0);
        let mean = range.build.clearance_mm - walls - thickness.over;
        Self { mean, shared: thickness.shared, own, worst }
    }

    /// A figure for the worse end of 95 % of all batches: one that is least where the mean is best.
    pub fn in_most_batches(self, figure: impl Fn(Self) -> f64) -> f64 {
        // Source: Student's t for the mean of eight points, seven degrees of freedom, 95 % between both ends: 2.3646.
        const OFF: f64 = 2.3646;
        let at = |off: f64| figure(Self { mean: self.mean + self.shared * off, shared: Length::ZERO, ..self });
        at(-OFF).max(at(OFF))
    }

    /// Standard deviation of a joint.
    pub fn deviation(self) -> Length {
        root_of_squares(&[self.shared, self.own])
    }

    /// Three standard deviations: the root of the summed squares of all tolerances.
    pub fn likely(self) -> Length {
        self.deviation() * 3.0
    }

    /// The share of joints that do not go in, to be expected over all batches.
    pub fn tight(self) -> f64 {
        below(Length::ZERO, self.mean, self.deviation())
    }

    /// The share of joints outside a window, to be expected over all batches.
    pub fn outside(self, least: Length, most: Length) -> f64 {
        let sigma = self.deviation();
        below(least, self.mean, sigma) + 1.0 - below(most, self.mean, sigma)
    }

    /// The expected share of panels of which a joint does not go in, with so many joints in one panel:
    /// 1 − ∫ φ(t) P(a joint goes in | t)ⁿ dt over the shared deviation.
    pub fn any_tight(self, joints: u16) -> f64 {
        /// Simpson's rule over six standard deviations to each side.
        const STEPS: u16 = 240;
        let each = |z: f64| 1.0 - below(Length::ZERO, self.mean + self.shared * z, self.own);
        let at = |step: u16| {
            let z = -6.0 + 12.0 * f64::from(step) / f64::from(STEPS);
            let weight = match step {
                0 | STEPS => 1.0,
                odd if odd % 2 == 1 => 4.0,
                _ => 2.0,
            };
            weight * libm::exp(-z * z / 2.0) * libm::pow(each(z), f64::from(joints))
        };
        let sum: f64 = (0..=STEPS).map(at).sum();
        let all = sum * (12.0 / f64::from(STEPS)) / 3.0 / core::f64::consts::TAU.sqrt();
        (1.0 - all).clamp(0.0, 1.0)
    }
}

/// How the thickness of a board varies about the one that is cut for.
#[derive(Clone, Copy, Debug)]
struct Thickness {
    /// By how much its mean is thicker than what is cut for.
    over: Length,
    /// Standard deviation of its mean.
    shared: Length,
    /// Standard deviation within a batch.
    within: Length,
    /// How far it may be off at a joint.
    furthest: Length,
}

impl Thickness {
    fn of(board: &Board, within_batch: Length) -> Self {
        // The mean of eight points is off by their deviation over the root of their number.
        let of_mean = |within: Length| within / 8.0_f64.sqrt();
        let (none, within) = (Length::ZERO, within_batch / 3.0);
        match (&board.measured_points_mm, board.measured_mm) {
            (Some(batch), _) => {
                let within = batch.deviation();
                let furthest = batch.furthest().max(within * 3.0);
                Self { over: batch.over(), shared: of_mean(within), within, furthest }
            }
            // A mean alone was rounded to 0.05 mm: anything within half of that is as likely.
            (None, Some(_)) => {
                let shared = root_of_squares(&[of_mean(within), Length::mm(0.05 / 12.0_f64.sqrt())]);
                Self { over: none, shared, within, furthest: within_batch }
            }
            // Source: EN 315:2000, sanded: +(0.2 + 0.03 t), −(0.4 + 0.03 t).
            (None, None) => {
                let tolerance = Length::mm(0.3) + board.nominal_mm * 0.03;
                let (over, furthest) = (Length::mm(-0.1), tolerance + Length::mm(0.1));
                Self { over, shared: tolerance / 3.0, within, furthest }
            }
        }
    }
}

fn root_of_squares(lengths: &[Length]) -> Length {
    Length::mm(lengths.iter().map(|length| length.in_mm() * length.in_mm()).sum::<f64>().sqrt())
}

/// Share of a normal distribution below a value: Φ((x − μ)/σ); a step where nothing varies.
pub fn below(value: Length, mean: Length, sigma: Length) -> f64 {
    let off = value - mean;
    if sigma > Length::ZERO {
        libm::erfc(-(off / sigma) / core::f64::consts::SQRT_2) / 2.0
    } else {
        f64::from(u8::from(off > Length::ZERO))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn clearance(mean: f64, shared: f64, own: f64) -> Clearance {
        let [mean, shared, own] = [mean, shared, own].map(Length::mm);
        Clearance { mean, shared, own, worst: (shared + own) * 3.0 }
    }

    // Worked: bearing N(1.005, 0.003), shaft N(0.995, 0.004): P(interference) = Φ(−2), P(at most 1 in 20) = 0.924967;
    // bearing N(2.010, 0.002), shaft N(2.004, 0.001): P(fit) = 0.996355; bearing N(5.40, 0.735), shaft
    // N(3.93, 0.413): P(no fit) = 0.0406149. Statements of textbook exercises, figures recomputed.
    #[test]
    fn textbook_fits() {
        let fit = clearance(0.010, 0.003, 0.004);
        assert!((fit.tight() - 0.022_750).abs() < 1e-6, "{}", fit.tight());
        let at_most = 1.0 - below(Length::mm(0.05), Length::mm(0.010), fit.deviation());
        assert!(at_most < 1e-9);
        assert!((1.0 - clearance(0.006, 0.002, 0.001).tight() - 0.996_355).abs() < 1e-6);
        assert!((clearance(1.47, 0.735, 0.413).tight() - 0.040_614_9).abs() < 1e-6);
    }

    // Worked: slot 18.3 ± 0.1, panel 18.0 ± 0.3 (three standard deviations): worst case ±0.4, root of the squares 0.3162, P(no
    // fit) = 0.0022133; twelve independent joints 0.026238, twelve joints of one panel 0.007943.
    #[test]
    fn joints_of_one_panel_share_its_thickness() {
        let fit = clearance(0.3, 0.1, 0.1 / 3.0);
        assert!((fit.likely().in_mm() - 0.316_23).abs() < 1e-5 && (fit.worst.in_mm() - 0.4).abs() < 1e-9);
        assert!((fit.tight() - 0.002_213_3).abs() < 1e-7, "{}", fit.tight());
        assert!((fit.any_tight(1) - fit.tight()).abs() < 1e-9, "{}", fit.any_tight(1));
        assert!((fit.any_tight(12) - 0.007_943).abs() < 1e-6, "{}", fit.any_tight(12));
        let independent = 1.0 - libm::pow(1.0 - fit.tight(), 12.0);
        assert!((independent - 0.026_238).abs() < 1e-6);
    }

    #[test]
    fn what_does_not_vary_is_as_wanted() {
        let fit = clearance(0.15, 0.0, 0.0);
        // What is beyond six standard deviations is left out of the integral.
        assert!(fit.tight().to_bits() == 0 && fit.any_tight(9) < 1e-8);
        let outside = |least, most| fit.outside(Length::mm(least), Length::mm(most)).to_bits();
        assert_eq!((outside(0.1, 0.2), outside(0.16, 0.2)), (0.0_f64.to_bits(), 1.0_f64.to_bits()));
    }

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
