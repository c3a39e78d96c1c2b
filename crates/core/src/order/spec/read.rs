//! Reading an order spec, whatever the bytes.

use serde::Serialize;
use serde_json::Value;

use super::{BadText, Customer, FORMAT, OrderSpec, Promised, RangeRef, VERSION, texts};
use crate::business::promise::Backlog;
use crate::choice::Choice;
use crate::input::members::{Place, ReadError, parse, quoted, whole};
use crate::input::seal::Digest;
use crate::range::Key;
use crate::units::money::Money;

/// Largest order spec that is read.
pub const BYTES_MOST: usize = 64 * 1024;

/// Why a file is no order spec.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SpecError {
    /// Too large.
    #[error("the file has {bytes} bytes; {BYTES_MOST} are the most that is read")]
    TooLarge {
        /// Its size.
        bytes: usize,
    },
    /// Not UTF-8.
    #[error("not text in UTF-8, from byte {at} on")]
    NotText {
        /// The first bad byte.
        at: usize,
    },
    /// Not JSON, or an unknown, missing or mistyped member.
    #[error(transparent)]
    Read(#[from] ReadError),
    /// JSON, but no order spec at all.
    #[error("/format: expected \"slotwright-order\", found {found}")]
    Format {
        /// What stands there.
        found: String,
    },
    /// A version that this program does not know.
    #[error("/version: this program reads version {VERSION}, found {found}")]
    Version {
        /// What stands there.
        found: String,
    },
    /// A text that cannot stand there.
    #[error(transparent)]
    Text(#[from] BadText),
    /// The seal does not fit.
    #[error("/digest: the file says {stated}, its content gives {computed}")]
    Seal {
        /// What the file says.
        stated: Digest,
        /// What its content gives.
        computed: Digest,
    },
    /// The range is not on file.
    #[error("/range/digest: the range {digest} of this order is not on file")]
    UnknownRange {
        /// Its digest.
        digest: Digest,
    },
    /// Work is booked where the range has nothing.
    #[error("/backlog/minutes/{stage}: the range of this order has no such stage")]
    UnknownStage {
        /// The stage.
        stage: Key,
    },
}

impl SpecError {
    /// What to do about it.
    pub const fn hint(&self) -> &'static str {
        match self {
            Self::TooLarge { .. }
            | Self::NotText { .. }
            | Self::Format { .. }
            | Self::Read(ReadError::NotJson { .. }) => "is this the file that was saved with the order?",
            Self::Version { .. } => "a newer version of this program may read it",
            Self::Read(ReadError::Field { .. }) | Self::Text(_) => "ask for the order to be saved again",
            Self::Seal { .. } => "the file was changed after it was saved; ask for the original",
            Self::UnknownStage { .. } => "ask those who wrote this order; the page writes none of these",
            Self::UnknownRange { .. } => "name the range file of that time; old ranges are kept for old orders",
        }
    }
}

/// Reads an order spec and proves its seal.
///
/// # Errors
///
/// The first thing that is wrong, from the outside in.
pub fn read(bytes: &[u8]) -> Result<OrderSpec, SpecError> {
    if bytes.len() > BYTES_MOST {
        return Err(SpecError::TooLarge { bytes: bytes.len() });
    }
    let text = core::str::from_utf8(bytes).map_err(|error| SpecError::NotText { at: error.valid_up_to() })?;
    let value = parse(text)?;
    let member = |name: &str| value.get(name).unwrap_or(&Value::Null);
    if *member("format") != FORMAT {
        return Err(SpecError::Format { found: quoted(member("format")) });
    }
    if whole(member("version")) != Some(i64::from(VERSION)) {
        return Err(SpecError::Version { found: quoted(member("version")) });
    }
    let mut content = value.clone();
    let computed = seal_of_value(&mut content);
    let spec = OrderSpec::from_place(Place::whole(value))?;
    texts::check(&spec.customer, &spec.remark)?;
    if spec.digest != computed {
        return Err(SpecError::Seal { stated: spec.digest, computed });
    }
    Ok(spec)
}

/// The digest of a document's canonical form without its member `digest`.
pub(super) fn seal_of(document: &impl Serialize) -> Digest {
    let mut value = serde_json::to_value(document).unwrap_or(Value::Null);
    seal_of_value(&mut value)
}

fn seal_of_value(value: &mut Value) -> Digest {
    if let Some(members) = value.as_object_mut() {
        members.remove("digest");
    }
    Digest::of_value(value)
}

impl OrderSpec {
    fn from_place(at: Place) -> Result<Self, ReadError> {
        let mut members = at.members()?;
        let spec = Self {
            format: members.take("format")?.text()?,
            version: u32::try_from(members.take("version")?.whole_between(0, i64::from(u32::MAX))?).unwrap_or(u32::MAX),
            range: RangeRef::from_place(members.take("range")?)?,
            ordered_on: members.take("ordered_on")?.parsed()?,
            backlog: Backlog::read(members.take("backlog")?)?,
            choice: Choice::read(members.take("choice")?)?,
            promised: Promised::from_place(members.take("promised")?)?,
            customer: Customer::from_place(members.take("customer")?)?,
            remark: members.maybe("remark").map(Place::text).transpose()?.unwrap_or_default(),
            digest: members.take("digest")?.parsed()?,
        };
        members.done()?;
        Ok(spec)
    }
}

impl RangeRef {
    fn from_place(at: Place) -> Result<Self, ReadError> {
        let mut members = at.members()?;
        let range = Self { key: members.take("key")?.parsed()?, digest: members.take("digest")?.parsed()? };
        members.done()?;
        Ok(range)
    }
}

/// Three capitals.
// Source: ISO 4217:2015, alphabetic codes.
struct CurrencyCode(String);

impl core::str::FromStr for CurrencyCode {
    type Err = &'static str;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let code = text.len() == 3 && text.bytes().all(|byte| byte.is_ascii_uppercase());
        if code { Ok(Self(text.into())) } else { Err("expected three capital letters of a currency (ISO 4217)") }
    }
}

impl Promised {
    fn from_place(at: Place) -> Result<Self, ReadError> {
        let most = Money::LARGEST.in_minor();
        let mut members = at.members()?;
        let promised = Self {
            price_minor: Money::minor(members.take("price_minor")?.whole_between(-most, most)?),
            currency: members.take("currency")?.parsed::<CurrencyCode>()?.0,
            mass_g: members.take("mass_g")?.whole_between(-most, most)?,
            arrives_on: members.take("arrives_on")?.parsed()?,
            parts_digest: members.take("parts_digest")?.parsed()?,
        };
        members.done()?;
        Ok(promised)
    }
}

impl Customer {
    fn from_place(at: Place) -> Result<Self, ReadError> {
        let mut members = at.members()?;
        let customer = Self {
            name: members.take("name")?.text()?,
            contact: members.take("contact")?.text()?,
            address: members.take("address")?.list(Place::text)?,
        };
        members.done()?;
        Ok(customer)
    }
}
