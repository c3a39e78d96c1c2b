//! Reading an order spec, whatever the bytes.

use serde::Serialize;
use serde_json::Value;
use serde_path_to_error::{Path, Segment};

use super::strict::Strict;
use super::{BadText, FORMAT, OrderSpec, VERSION, texts};
use crate::seal::Digest;

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
    /// Not JSON.
    #[error("not JSON: {reason}")]
    NotJson {
        /// What stands where.
        reason: String,
    },
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
    /// An unknown, missing or mistyped member.
    #[error("{pointer}: {reason}")]
    Field {
        /// Where, as a JSON pointer (RFC 6901).
        pointer: String,
        /// What is wrong.
        reason: String,
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
}

impl SpecError {
    /// What to do about it.
    pub const fn hint(&self) -> &'static str {
        match self {
            Self::TooLarge { .. } | Self::NotText { .. } | Self::NotJson { .. } | Self::Format { .. } => {
                "is this the file that was saved with the order?"
            }
            Self::Version { .. } => "a newer version of this program may read it",
            Self::Field { .. } | Self::Text(_) => "ask for the order to be saved again",
            Self::Seal { .. } => "the file was changed after it was saved; ask for the original",
            Self::UnknownRange { .. } => "name the range file of that time; old ranges are kept for old orders",
        }
    }
}

/// Outside text in a message: quoted, cut, escaped.
fn quoted(value: &Value) -> String {
    let text = value.to_string();
    let cut: String = text.chars().take(60).collect();
    if cut.len() < text.len() { format!("{cut}…") } else { cut }
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
    let Strict(value) = serde_json::from_str(text).map_err(|error| SpecError::NotJson { reason: error.to_string() })?;
    let member = |name: &str| value.get(name).cloned().unwrap_or(Value::Null);
    if member("format") != FORMAT {
        return Err(SpecError::Format { found: quoted(&member("format")) });
    }
    if member("version") != VERSION {
        return Err(SpecError::Version { found: quoted(&member("version")) });
    }
    let computed = seal_of(&value);
    let spec: OrderSpec = serde_path_to_error::deserialize(value).map_err(|error| {
        let reason: String = error.inner().to_string().chars().take(300).collect();
        SpecError::Field { pointer: pointer(error.path()), reason }
    })?;
    texts::check(&spec.customer, &spec.remark)?;
    if spec.digest != computed {
        return Err(SpecError::Seal { stated: spec.digest, computed });
    }
    Ok(spec)
}

/// The digest of a document's canonical form without its member `digest`.
pub(super) fn seal_of(document: &impl Serialize) -> Digest {
    let mut value = serde_json::to_value(document).unwrap_or(Value::Null);
    if let Some(members) = value.as_object_mut() {
        members.remove("digest");
    }
    Digest::of_value(&value)
}

/// A path as a JSON pointer (RFC 6901); the empty pointer is the whole document.
fn pointer(path: &Path) -> String {
    let mut pointer = String::new();
    for segment in path {
        let token = match segment {
            Segment::Seq { index } => index.to_string(),
            Segment::Map { key } => key.replace('~', "~0").replace('/', "~1").chars().take(60).collect(),
            // An enum's variant is the name of the only member, or a plain string.
            Segment::Enum { variant } => variant.clone(),
            Segment::Unknown => break,
        };
        pointer.push('/');
        pointer.push_str(&token);
    }
    pointer
}
