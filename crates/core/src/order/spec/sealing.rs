//! The seal of an order.

use serde::Serialize;
use serde_json::Value;

use crate::input::seal::Digest;

/// The digest of a document's canonical form without its member `digest`.
pub(super) fn seal_of(document: &impl Serialize) -> Digest {
    Digest::of_value(&own_form(document))
}

/// A document as JSON without its member `digest`: what is sealed.
pub(super) fn own_form(document: &impl Serialize) -> Value {
    let mut value = serde_json::to_value(document).unwrap_or(Value::Null);
    unsealed(&mut value);
    value
}

/// The same of a document as JSON, whose member is taken out.
pub(super) fn seal_of_value(value: &mut Value) -> Digest {
    unsealed(value);
    Digest::of_value(value)
}

fn unsealed(value: &mut Value) {
    if let Some(members) = value.as_object_mut() {
        members.remove("digest");
    }
}
