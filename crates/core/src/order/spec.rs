//! The order spec: the document that the workshop receives. Self-contained, sealed, and derived
//! again before it is believed.
//!
//! It is JSON; the seal is the SHA-256 of its canonical form (RFC 8785) without the member
//! `digest`. A reader takes any formatting, since the seal is over the canonical form; what the format leaves
//! out where it says nothing has to be left out, so that one order has one seal.

use serde::Serialize;

use crate::business::promise::Backlog;
use crate::choice::Choice;
use crate::input::seal::{Digest, canonical};
use crate::order::derive::{Derived, Orderable, derive};
use crate::order::parts::Parts;
use crate::range::{Key, Range};
use crate::rules::finding::Finding;
use crate::units::day::Day;
use crate::units::money::Money;

mod changed;
mod read;
mod sealing;
mod texts;

pub use changed::Changed;
pub use read::{BYTES_MOST, SpecError, read};
pub use texts::BadText;

/// What the member `format` says.
pub const FORMAT: &str = "slotwright-order";
/// The version that this program reads and writes.
pub const VERSION: u32 = 2;

/// The version of this program that reads an older order, if one does.
const fn read_by(version: i64) -> Option<&'static str> {
    match version {
        1 => Some("0.1.0"),
        _ => None,
    }
}

/// An order.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct OrderSpec {
    /// Always `slotwright-order`.
    #[cfg_attr(feature = "schema", schemars(extend("const" = FORMAT)))]
    pub format: String,
    /// Version of this format.
    #[cfg_attr(feature = "schema", schemars(extend("const" = VERSION)))]
    pub version: u32,
    /// The range that it was made with.
    pub range: RangeRef,
    /// The day of the order.
    pub ordered_on: Day,
    /// The work that was booked on that day, as far as it was known.
    pub backlog: Backlog,
    /// What was picked.
    pub choice: Choice,
    /// What was promised.
    pub promised: Promised,
    /// For whom.
    pub customer: Customer,
    /// A remark for workshop and driver.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    #[cfg_attr(feature = "schema", schemars(length(max = 500)))]
    pub remark: String,
    /// SHA-256 over the canonical JSON of all the other members.
    pub digest: Digest,
}

/// A range by its key and its digest.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct RangeRef {
    /// Its key.
    pub key: Key,
    /// SHA-256 over its canonical JSON.
    pub digest: Digest,
}

/// The figures that were promised.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Promised {
    /// Price with tax.
    pub price_minor: Money,
    /// ISO 4217 code.
    #[cfg_attr(feature = "schema", schemars(regex(pattern = "^[A-Z]{3}$")))]
    pub currency: String,
    /// Mass of the whole.
    pub mass_g: i64,
    /// The latest day on which it arrives.
    pub arrives_on: Day,
    /// Digest of all outlines and joints.
    pub parts_digest: Digest,
}

/// The least that delivery needs to know of a person.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Customer {
    /// A name for the delivery.
    #[cfg_attr(feature = "schema", schemars(length(min = 1, max = 100)))]
    pub name: String,
    /// An e-mail address or a telephone number, for the carrier.
    #[cfg_attr(feature = "schema", schemars(length(min = 1, max = 100)))]
    pub contact: String,
    /// The address, line by line.
    #[cfg_attr(feature = "schema", schemars(length(min = 1, max = 6), inner(length(min = 1, max = 100))))]
    pub address: Vec<String>,
}

impl OrderSpec {
    /// Makes the order of a unit that nothing stops.
    ///
    /// # Errors
    ///
    /// [`BadText`] if a text about the customer is missing, too long, or has control characters.
    pub fn new(orderable: Orderable<'_>, customer: Customer, remark: String) -> Result<Self, BadText> {
        texts::check(&customer, &remark)?;
        let range = orderable.range();
        let mut spec = Self {
            format: FORMAT.into(),
            version: VERSION,
            range: RangeRef { key: range.key.clone(), digest: range.digest() },
            ordered_on: orderable.today(),
            backlog: orderable.backlog().clone(),
            choice: orderable.choice().clone(),
            promised: Promised {
                price_minor: orderable.price().total_minor,
                currency: orderable.price().currency.clone(),
                mass_g: orderable.mass().to_gram(),
                arrives_on: orderable.promise().arrives,
                parts_digest: orderable.parts_digest(),
            },
            customer,
            remark,
            digest: Digest::of(b""),
        };
        spec.digest = sealing::seal_of(&spec);
        Ok(spec)
    }

    /// The file: canonical JSON, without a newline at its end.
    pub fn to_text(&self) -> String {
        canonical(self)
    }

    /// A file name: range, day and the beginning of the digest.
    pub fn file_name(&self) -> String {
        format!("{}-{}-{}.order.json", self.range.key, self.ordered_on, self.digest.short())
    }
}

/// Something promised that does not come out again.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Difference {
    /// Its JSON pointer in the spec.
    pub pointer: &'static str,
    /// What the spec says.
    pub promised: String,
    /// What is derived; nothing if the unit cannot be made.
    pub derived: Option<String>,
}

/// What checking an order came to.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Checked {
    /// Everything promised that does not come out again.
    pub differences: Vec<Difference>,
    /// The findings that stop the order.
    pub stops: Vec<Finding>,
}

impl Checked {
    /// Whether the order holds.
    pub fn holds(&self) -> bool {
        self.differences.is_empty() && self.stops.is_empty()
    }
}

/// Derives an order again, with its own day and backlog, and compares all that was promised.
///
/// The caller has looked up the range by its digest.
pub fn check(spec: &OrderSpec, range: &Range) -> Checked {
    compare(spec, &derive(range, &spec.choice, spec.ordered_on, &spec.backlog))
}

/// Compares all that was promised with what was derived of it again.
pub fn compare(spec: &OrderSpec, derived: &Derived<'_>) -> Checked {
    let (built, range) = (derived.built.as_ref(), derived.range);
    let promised = &spec.promised;
    let mut differences = Vec::new();
    let mut compare = |pointer, promised: String, derived: Option<String>| {
        if derived.as_ref() != Some(&promised) {
            differences.push(Difference { pointer, promised, derived });
        }
    };
    compare("/range/key", spec.range.key.to_string(), Some(range.key.to_string()));
    let price = built.map(|built| &built.price);
    let minor = |price: Money| price.in_minor().to_string();
    compare("/promised/price_minor", minor(promised.price_minor), price.map(|price| minor(price.total_minor)));
    compare("/promised/currency", promised.currency.clone(), price.map(|price| price.currency.clone()));
    let mass = built.map(|built| built.whole.mass.to_gram().to_string());
    compare("/promised/mass_g", promised.mass_g.to_string(), mass);
    let arrives = built.and_then(|built| built.promise.as_ref()).map(|promise| promise.arrives.to_string());
    compare("/promised/arrives_on", promised.arrives_on.to_string(), arrives);
    let parts = built.map(|built| Parts::of(built).digest().to_string());
    compare("/promised/parts_digest", promised.parts_digest.to_string(), parts);
    Checked { differences, stops: derived.stops().cloned().collect() }
}

#[cfg(test)]
mod tests;
