//! The seal of an order.

use serde::Serialize;
use serde_json::Value;

use crate::input::seal::Digest;

/// The digest of a document's canonical form without its member `digest`.
pub(super) fn seal_of(document: &impl Serialize) -> Digest {
    let mut value = serde_json::to_value(document).unwrap_or(Value::Null);
    seal_of_value(&mut value)
}

/// The same of a document as JSON, whose member is taken out.
pub(super) fn seal_of_value(value: &mut Value) -> Digest {
    if let Some(members) = value.as_object_mut() {
        members.remove("digest");
    }
    Digest::of_value(value)
}
