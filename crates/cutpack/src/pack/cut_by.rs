//! What a workshop cuts by, other than its range file says.

use slotwright_core::input::entry::measured;
use slotwright_core::order::intake::KnownRange;
use slotwright_core::range::{Batch, Key, Range};
use slotwright_core::units::quantity::Length;
use slotwright_core::words::pack::Message;

/// Batches that were measured, and another cutter or allowance.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CutBy {
    /// Measured batches by their boards; boards of other ranges are none of a range's own.
    pub batches: Vec<(Key, Batch)>,
    /// Diameter of the cutter, if it is another one.
    pub cutter: Option<Length>,
    /// Between parts beyond the cutter's diameter, if it is another one.
    pub allowance: Option<Length>,
}

impl CutBy {
    /// Reads the diameter of a cutter, in millimetres.
    ///
    /// # Errors
    ///
    /// Says what is wrong with it.
    pub fn read_cutter(text: &str) -> Result<Length, String> {
        length(text, 1, 25)
    }

    /// Reads what lies between parts beyond the cutter's diameter, in millimetres.
    ///
    /// # Errors
    ///
    /// Says what is wrong with it.
    pub fn read_allowance(text: &str) -> Result<Length, String> {
        length(text, 0, 100)
    }

    /// A range, as its orders name it and as they are cut.
    pub fn known(&self, range: Range) -> KnownRange {
        let mut cut_by = range.clone();
        for board in &mut cut_by.boards {
            if let Some((_, batch)) = self.batches.iter().find(|(key, _)| *key == board.key) {
                board.measure(batch.clone());
            }
        }
        // The range's own goes as the range says, with its passes.
        if let Some(cutter) = self.cutter.filter(|cutter| *cutter != range.build.cutter_mm) {
            cut_by.build.cutter_mm = cutter;
            // At most a diameter deep each: tooling practice.
            let thickest = cut_by.boards.iter().map(|board| board.thickness() / cutter).fold(1.0, f64::max);
            cut_by.rates.passes = cut_by.rates.passes.max(passes(thickest));
        }
        if let Some(allowance) = self.allowance {
            cut_by.cutting.allowance_mm = allowance;
        }
        KnownRange::of(range, cut_by)
    }
}

/// So many passes, rounded up.
fn passes(diameters: f64) -> u8 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole; `as` saturates")]
    let whole = libm::ceil(diameters) as u8;
    whole
}

/// A length in millimetres within its bounds.
fn length(text: &str, least: u8, most: u8) -> Result<Length, String> {
    let read = measured(text).filter(|mm| (f64::from(least)..=f64::from(most)).contains(&mm.in_mm()));
    read.ok_or_else(|| Message::LengthWanted { text, least: &least.to_string(), most: &most.to_string() }.text())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cutters_are_read_with_either_mark() {
        let micrometres = |text: &str| CutBy::read_cutter(text).map(|cutter| (cutter.in_mm() * 1000.0).round());
        for (text, wanted) in [("6", 6000.0), ("6.35", 6350.0), ("6,35", 6350.0), ("6,350 mm", 6350.0)] {
            assert_eq!(micrometres(text), Ok(wanted), "{text}");
        }
        for text in ["0.5", "26", "thick", "", "-6"] {
            let wrong = micrometres(text).unwrap_err();
            assert!(wrong.contains("is no length from 1 to 25 mm: write it as 6, 6.35 or 6,35"), "{wrong}");
        }
        assert_eq!(CutBy::read_allowance("0"), Ok(Length::ZERO));
    }
}
