//! Reading an order spec, whatever the bytes.

use alloc::collections::BTreeSet;
use core::fmt;

use serde_json::Value;

use super::sealing::{own_form, seal_of_value};
use super::{BadText, Changed, Checked, Customer, FORMAT, OrderSpec, Promised, RangeRef, VERSION, read_by, texts};
use crate::business::promise::Backlog;
use crate::choice::Choice;
use crate::input::fault::{Fault, NotJson, ReadError};
use crate::input::members::{Place, parse, quoted, whole};
use crate::input::seal::{Digest, canonical};
use crate::range::Key;
use crate::units::money::Money;
use crate::words::reader::{Label, Message};

/// Largest order spec that is read.
pub const BYTES_MOST: usize = 64 * 1024;

/// Why a file is no order spec.
#[derive(Clone, Debug, PartialEq)]
pub enum SpecError {
    /// Too large.
    TooLarge {
        /// Its size.
        bytes: usize,
    },
    /// Not UTF-8.
    NotText {
        /// The first bad byte.
        at: usize,
    },
    /// Not JSON, or an unknown, missing or mistyped member.
    Read(ReadError),
    /// JSON, but no order spec at all.
    Format {
        /// What it says that it is, if anything.
        found: Option<String>,
    },
    /// What was picked, and nothing promised.
    Choice,
    /// A version that this program does not know.
    Version {
        /// What stands there.
        found: String,
        /// The version of this program that reads it, if it is an older one.
        read_by: Option<&'static str>,
    },
    /// A text that cannot stand there.
    Text(BadText),
    /// The seal does not fit.
    Seal {
        /// The order as it stands there: nothing of it is to be believed.
        order: Box<OrderSpec>,
        /// What the file says.
        stated: Digest,
        /// What its content gives.
        computed: Digest,
        /// What was changed, as far as that was looked for.
        changed: Changed,
    },
    /// The range is not on file.
    UnknownRange {
        /// Its digest.
        digest: Digest,
    },
    /// Work is booked where the range has nothing.
    UnknownStage {
        /// The stage.
        stage: Key,
    },
}

impl SpecError {
    /// The same error; where the seal does not fit, with what was changed, as far as it is found from what is derived.
    #[must_use]
    pub fn with_change(self, derived: impl FnOnce(&OrderSpec) -> Option<Checked>) -> Self {
        match self {
            Self::Seal { order, stated, computed, changed: _ } => {
                let changed = derived(&order).map_or(Changed::Unknown, |checked| Changed::of(&order, checked));
                Self::Seal { order, stated, computed, changed }
            }
            other => other,
        }
    }

    /// What to do about it.
    pub const fn hint(&self) -> &'static str {
        let label = match self {
            Self::Read(ReadError::NotJson(NotJson::Empty)) => Label::EmptyOrder,
            Self::Read(ReadError::NotJson(NotJson::Several { .. })) => Label::OneOrderAFile,
            Self::TooLarge { .. } | Self::NotText { .. } | Self::Format { .. } | Self::Read(ReadError::NotJson(_)) => {
                Label::IsItTheOrder
            }
            Self::Choice => Label::MakeAnOrder,
            Self::Version { read_by: Some(_), .. } => Label::OlderProgram,
            Self::Version { read_by: None, .. } => Label::NewerProgram,
            Self::Read(ReadError::Field { .. }) | Self::Text(_) => Label::SaveAgain,
            Self::Seal { .. } => Label::Original,
            Self::UnknownStage { .. } => Label::AskTheWriter,
            Self::UnknownRange { .. } => Label::NameTheRange,
        };
        label.text()
    }
}

impl fmt::Display for SpecError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let message = match self {
            Self::TooLarge { bytes } => Message::TooLarge { bytes: *bytes, most: BYTES_MOST },
            Self::NotText { at } => Message::NotText(*at),
            Self::Read(error) => Message::Unread(error),
            Self::Format { found: None } => Message::NoFormat,
            Self::Format { found: Some(found) } => Message::OtherFormat { found, known: FORMAT },
            Self::Choice => Message::Choice,
            Self::Version { found, read_by } => Message::Version { found, known: VERSION, read_by: *read_by },
            Self::Text(bad) => bad.message(),
            Self::Seal { order, stated, computed, changed } => {
                return f.write_str(&changed.said(order, *stated, *computed));
            }
            Self::UnknownRange { digest } => return f.write_str(&Message::UnknownRange(&digest.to_string()).text()),
            Self::UnknownStage { stage } => Message::UnknownStage(stage),
        };
        f.write_str(&message.text())
    }
}

impl From<ReadError> for SpecError {
    fn from(error: ReadError) -> Self {
        Self::Read(error)
    }
}

impl From<BadText> for SpecError {
    fn from(bad: BadText) -> Self {
        Self::Text(bad)
    }
}

impl core::error::Error for SpecError {}

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
        let of_choice = ["model", "width_mm", "bays"].into_iter().all(|name| value.get(name).is_some());
        let found = Some(member("format")).filter(|format| !format.is_null()).map(quoted);
        return Err(if found.is_none() && of_choice { SpecError::Choice } else { SpecError::Format { found } });
    }
    let version = whole(member("version"));
    if version != Some(i64::from(VERSION)) {
        return Err(SpecError::Version { found: quoted(member("version")), read_by: version.and_then(read_by) });
    }
    let mut content = value.clone();
    let computed = seal_of_value(&mut content);
    let spec = OrderSpec::from_place(Place::whole(value))?;
    one_way(&content, &own_form(&spec), "")?;
    texts::check(&spec.customer, &spec.remark)?;
    if spec.digest != computed {
        let stated = spec.digest;
        return Err(SpecError::Seal { order: Box::new(spec), stated, computed, changed: Changed::Unknown });
    }
    Ok(spec)
}

/// Nothing if a file says what it says in the one way that this format has: else one order would have two seals.
///
/// A member that says nothing is left out.
fn one_way(found: &Value, own: &Value, pointer: &str) -> Result<(), ReadError> {
    let differs = |pointer: &str, own: Option<&Value>| {
        let fault = Fault::OtherWay { own: own.map(quoted) };
        Err(ReadError::Field { pointer: pointer.into(), fault })
    };
    match (found, own) {
        (Value::Object(found), Value::Object(own)) => {
            let names: BTreeSet<&String> = found.keys().chain(own.keys()).collect();
            names.into_iter().try_for_each(|name| {
                let pointer = format!("{pointer}/{name}");
                match (found.get(name), own.get(name)) {
                    (Some(found), Some(own)) => one_way(found, own, &pointer),
                    (_, own) => differs(&pointer, own),
                }
            })
        }
        (Value::Array(found), Value::Array(own)) if found.len() == own.len() => {
            let mut both = found.iter().zip(own).enumerate();
            both.try_for_each(|(at, (found, own))| one_way(found, own, &format!("{pointer}/{at}")))
        }
        // As they are sealed: `1.0` and `1` are one number.
        _ if canonical(found) == canonical(own) => Ok(()),
        _ => differs(pointer, Some(own)),
    }
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
    type Err = Fault;

    fn from_str(text: &str) -> Result<Self, Fault> {
        let code = text.len() == 3 && text.bytes().all(|byte| byte.is_ascii_uppercase());
        if code { Ok(Self(text.into())) } else { Err(Fault::Currency) }
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
