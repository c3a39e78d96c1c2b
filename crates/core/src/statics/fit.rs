//! How joints fit: what thickness, films and cutting make of a clearance.
//!
//! The clearance of a slot is normally distributed; tolerances are three standard deviations. Two things are not to be
//! mixed up: the mean of a batch may be off, for all its joints at once, and within it each joint differs. What share of
//! an order's joints is outside depends on its batch; so figures are told for the worse end of 95 % of all batches.

use crate::range::batch::sanded;
use crate::range::{Board, Finish, Range};
use crate::units::quantity::Length;

pub mod moisture;

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

    /// A share that is surely no less than that of the joints that do not go in: most fits are far from tight, and that
    /// is soon known.
    // Source: Markov's inequality by the eighth moment of the normal distribution, 105 σ⁸, half of it at each side.
    pub fn tight_at_most(self) -> f64 {
        if self.mean <= Length::ZERO {
            return 1.0;
        }
        let ratio = self.deviation() / self.mean;
        let fourth = ratio * ratio * ratio * ratio;
        (fourth * fourth * (105.0 / 2.0)).min(1.0)
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
            (None, None) => {
                let (least, most) = sanded(board.nominal_mm);
                let tolerance = (most - least) / 2.0;
                let over = (least + most) / 2.0 - board.nominal_mm;
                let furthest = board.nominal_mm - least;
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
    fn the_quick_bound_is_never_below_the_share() {
        for step in -40..160 {
            let fit = clearance(f64::from(step) / 200.0, 0.03, 0.04);
            assert!(fit.tight_at_most() >= fit.tight(), "{fit:?}");
        }
        let usual = clearance(0.15, 0.0, 0.04);
        assert!(usual.tight_at_most() < 0.002 && usual.tight() < usual.tight_at_most());
        assert!(clearance(0.15, 0.0, 0.0).tight_at_most() <= 0.0);
    }

    #[test]
    fn what_does_not_vary_is_as_wanted() {
        let fit = clearance(0.15, 0.0, 0.0);
        // What is beyond six standard deviations is left out of the integral.
        assert!(fit.tight().to_bits() == 0 && fit.any_tight(9) < 1e-8);
        let outside = |least, most| fit.outside(Length::mm(least), Length::mm(most)).to_bits();
        assert_eq!((outside(0.1, 0.2), outside(0.16, 0.2)), (0.0_f64.to_bits(), 1.0_f64.to_bits()));
    }
}
