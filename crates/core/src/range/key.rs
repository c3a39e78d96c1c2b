//! Names by which the parts of a range refer to each other.

use alloc::borrow::Borrow;
use alloc::sync::Arc;
use core::fmt;

use serde::Serialize;

use crate::input::fault::Fault;

/// A short name: lower-case letters, digits and hyphens, at most 32, a letter first.
///
/// Cheap to clone: choices are changed and judged by the thousand.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(with = "String", extend("pattern" = "^[a-z][a-z0-9-]{0,31}$")))]
#[serde(into = "String")]
pub struct Key(Arc<str>);

/// A text that is no key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotAKey(pub String);

impl From<NotAKey> for Fault {
    fn from(wrong: NotAKey) -> Self {
        Self::Key(wrong.0)
    }
}

impl Key {
    /// Stands for a key that could not be read, so that problems of the rest have their place; never part of a range.
    pub(super) fn unread(place: &str) -> Self {
        Self(place.into())
    }

    /// The key as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl TryFrom<String> for Key {
    type Error = NotAKey;

    fn try_from(text: String) -> Result<Self, NotAKey> {
        let mut letters = text.bytes();
        let first = letters.next().is_some_and(|byte| byte.is_ascii_lowercase());
        let rest = letters.all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-');
        if first && rest && text.len() <= 32 {
            Ok(Self(text.into()))
        } else {
            Err(NotAKey(text.chars().take(40).collect()))
        }
    }
}

impl core::str::FromStr for Key {
    type Err = NotAKey;

    fn from_str(text: &str) -> Result<Self, NotAKey> {
        String::from(text).try_into()
    }
}

impl From<Key> for String {
    fn from(key: Key) -> Self {
        key.0.as_ref().into()
    }
}

impl Borrow<str> for Key {
    fn borrow(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl fmt::Debug for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}
