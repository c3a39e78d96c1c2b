//! What people type, read with the words of the present language for units.

use super::english;
use super::locale::Locale;
use crate::input::entry::{self, Refused, Spoken, TimeUnit};
use crate::units::money::Money;
use crate::units::quantity::{Dim, Mass};

const SPOKEN: &Spoken = match super::LOCALE {
    Locale::English => &english::entry::SPOKEN,
};

/// Apart from the others, which the customers' page has from its first frame on.
const TIMES: &[(&str, TimeUnit)] = match super::LOCALE {
    Locale::English => english::entry::TIMES,
};

/// Reads a size: see [`entry::size`].
///
/// # Errors
///
/// As there.
///
/// ```
/// use slotwright_core::{units::quantity::Dim, words::entry};
/// assert_eq!(entry::size("64 1/2 in"), Ok(Dim::tenths(16_383)));
/// assert_eq!(entry::size("1,64"), Ok(Dim::mm(1640)));
/// ```
pub fn size(text: &str) -> Result<Dim, Refused> {
    entry::size(text, SPOKEN)
}

/// Reads a screen's diagonal: see [`entry::diagonal`].
///
/// # Errors
///
/// As there.
pub fn diagonal(text: &str) -> Result<u16, Refused> {
    entry::diagonal(text, SPOKEN)
}

/// Reads an amount of money: see [`entry::money`].
///
/// # Errors
///
/// As there.
///
/// ```
/// use slotwright_core::{units::money::Money, words::entry};
/// assert_eq!(entry::money("€1,400", "EUR"), Ok(Money::minor(140_000)));
/// ```
pub fn money(text: &str, currency: &str) -> Result<Money, Refused> {
    entry::money(text, currency, SPOKEN)
}

/// Reads a mass: see [`entry::mass`].
///
/// # Errors
///
/// As there.
///
/// ```
/// use slotwright_core::{units::quantity::Mass, words::entry};
/// assert_eq!(entry::mass("12,5 kg"), Ok(Mass::kg(12.5)));
/// ```
pub fn mass(text: &str) -> Result<Mass, Refused> {
    entry::mass(text, SPOKEN)
}

/// Reads how long something takes, in whole minutes: see [`entry::minutes`].
///
/// # Errors
///
/// As there.
///
/// ```
/// use slotwright_core::words::entry;
/// assert_eq!(entry::minutes("1 200"), Ok(1200));
/// assert_eq!(entry::minutes("10 h 30 min"), Ok(630));
/// ```
pub fn minutes(text: &str) -> Result<u32, Refused> {
    entry::minutes(text, TIMES)
}
