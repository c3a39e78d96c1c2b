//! What figures, lists and texts of a range file may be, as its parser holds it: an editor shows it while somebody
//! writes. Bounds between figures are beyond a schema.

use serde_json::{Map, Value};
use slotwright_core::range::{Limits, Range, TEXT_MOST};

/// Writes the bounds that are held for a range into the schema of ranges.
pub(super) fn set(schema: &mut Value, range: &Range) {
    for bound in range.bounds() {
        let path: Vec<&str> = bound.path.split('.').collect();
        let place = find(schema, String::new(), &path);
        let Some(Value::Object(node)) = place.and_then(|place| schema.pointer_mut(&place)) else { continue };
        match bound.limits {
            Limits::Figure(least, most) => {
                node.insert("minimum".into(), number(least));
                node.insert("maximum".into(), number(most));
            }
            Limits::Entries(least, most) => {
                node.insert("minItems".into(), least.into());
                node.insert("maxItems".into(), most.into());
            }
            Limits::Distinct => {
                node.insert("uniqueItems".into(), true.into());
            }
        }
    }
    texts(schema);
}

/// The place of a node, once it is no reference any more.
fn resolved(schema: &Value, mut place: String) -> String {
    while let Some(to) = schema.pointer(&place).and_then(|node| node.get("$ref")).and_then(Value::as_str) {
        place = to.trim_start_matches('#').into();
    }
    place
}

/// Where the schema describes what stands at a path of a range file.
fn find(schema: &Value, place: String, path: &[&str]) -> Option<String> {
    let [first, rest @ ..] = path else { return Some(place) };
    let place = resolved(schema, place);
    let node = schema.pointer(&place)?;
    if node.get("properties").is_some_and(|properties| properties.get(first).is_some()) {
        return find(schema, format!("{place}/properties/{first}"), rest);
    }
    if node.get("items").is_some() {
        return find(schema, format!("{place}/items"), rest);
    }
    let branches = ["oneOf", "anyOf"].into_iter().flat_map(|word| {
        let count = node.get(word).and_then(Value::as_array).map_or(0, Vec::len);
        (0..count).map(move |number| format!("{word}/{number}"))
    });
    branches.map(|branch| find(schema, format!("{place}/{branch}"), path)).find_map(|found| found)
}

/// A whole number without a point.
fn number(value: f64) -> Value {
    #[expect(clippy::cast_possible_truncation, reason = "bounds are far below 2^53")]
    let whole = value as i64;
    if value.fract() == 0.0 { whole.into() } else { value.into() }
}

/// Texts that say nothing of themselves: neither blank nor too long.
fn texts(schema: &mut Value) {
    match schema {
        Value::Object(members) => {
            let says = |word: &str| members.contains_key(word);
            let free = !["enum", "const", "pattern", "format"].into_iter().any(says);
            if free && members.get("type").is_some_and(|of| of == "string") {
                members.insert("minLength".into(), 1.into());
                members.insert("maxLength".into(), TEXT_MOST.into());
                members.insert("pattern".into(), "\\S".into());
                // An empty text stands for none only where the key is left out.
                remove_blank(members);
            }
            members.values_mut().for_each(texts);
        }
        Value::Array(elements) => elements.iter_mut().for_each(texts),
        _ => {}
    }
}

fn remove_blank(members: &mut Map<String, Value>) {
    if members.get("default").is_some_and(|default| default == "") {
        members.remove("default");
    }
}

#[cfg(test)]
mod tests;
