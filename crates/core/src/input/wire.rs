//! Figures that pass between a page and its workers: whole numbers of the core's own units, as no locale writes them.
//!
//! What a person typed is read once, by [`super::entry`]. From there on money is exact; a mass is right to the gram, and
//! never above what was typed. Days pass as ISO 8601.

use crate::units::money::Money;
use crate::units::quantity::Mass;

/// By less than this many grams a float may be off that stands for a whole number of them.
const GRAM_TOLERANCE: f64 = 1e-6;

/// An amount of money in minor units.
pub fn of_money(amount: Money) -> String {
    amount.in_minor().to_string()
}

/// What [`of_money`] wrote.
pub fn money(text: &str) -> Option<Money> {
    text.parse().ok().map(Money::minor)
}

/// A mass in whole grams, what is left of one let off: a limit that a person gave is never raised.
///
/// ```
/// use slotwright_core::{input::wire, words::entry};
/// // 26 lb are 11.793 402 kg.
/// assert_eq!(entry::mass("26 lb").map(wire::of_mass).as_deref(), Ok("11793"));
/// ```
pub fn of_mass(mass: Mass) -> String {
    #[expect(clippy::cast_possible_truncation, reason = "whole; `as` saturates")]
    let grams = libm::floor(mass.in_kg() * 1000.0 + GRAM_TOLERANCE) as i64;
    grams.to_string()
}

/// What [`of_mass`] wrote.
pub fn mass(text: &str) -> Option<Mass> {
    let grams: i64 = text.parse().ok().filter(|grams| *grams >= 0)?;
    #[expect(clippy::cast_precision_loss, reason = "what people type is far below 2⁵³ grams")]
    let grams = grams as f64;
    Some(Mass::kg(grams / 1000.0))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::words::entry;

    #[test]
    fn money_arrives_as_typed_and_a_mass_to_the_gram_never_above_it() {
        for (typed, sent) in
            [("26 lb", "11793"), ("11.8", "11800"), ("1,005 kg", "1005"), ("0.29 kg", "290"), ("800 g", "800")]
        {
            let read = entry::mass(typed).unwrap();
            assert_eq!(of_mass(read), sent, "{typed}");
            let arrived = mass(sent).unwrap();
            assert!(arrived <= read + Mass::kg(1e-9) && arrived > read - Mass::kg(0.001), "{typed}: {arrived:?}");
        }
        for (typed, sent) in [("950,50", "95050"), ("\u{20ac}9,000", "900000"), ("1\u{202f}400.05", "140005")] {
            let read = entry::money(typed, "EUR").unwrap();
            assert_eq!((of_money(read).as_str(), money(sent)), (sent, Some(read)), "{typed}");
        }
        for none in ["", "11.8", "11,8", "1 400", "kg", "-1"] {
            assert_eq!(mass(none), None, "{none}");
        }
        assert_eq!([money(""), money("9.50"), money("\u{20ac}9")], [None; 3]);
    }

    proptest! {
        #[test]
        fn what_was_written_is_read(grams in 0_u32..=4_000_000_000, minor in -1_000_000_000_000_i64..1_000_000_000_000) {
            let sent = of_mass(Mass::kg(f64::from(grams) / 1000.0));
            prop_assert_eq!(&sent, &grams.to_string());
            prop_assert_eq!(mass(&sent).map(of_mass), Some(sent));
            prop_assert_eq!(money(&of_money(Money::minor(minor))), Some(Money::minor(minor)));
        }
    }
}
