//! Descriptions for people who write files: the first paragraph of what the code says, never code.

use serde_json::Value;

/// Leaves the first paragraph of every description, on one line.
pub(super) fn descriptions(schema: &mut Value) {
    match schema {
        Value::Object(members) => {
            if let Some(Value::String(text)) = members.get_mut("description") {
                *text = text.split("\n\n").next().unwrap_or_default().replace('\n', " ");
            }
            members.values_mut().for_each(descriptions);
        }
        Value::Array(elements) => elements.iter_mut().for_each(descriptions),
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    /// Every description in a document, wherever it stands.
    fn all<'a>(schema: &'a Value, out: &mut Vec<&'a str>) {
        match schema {
            Value::Object(members) => {
                out.extend(members.get("description").and_then(Value::as_str));
                members.values().for_each(|value| all(value, out));
            }
            Value::Array(elements) => elements.iter().for_each(|value| all(value, out)),
            _ => {}
        }
    }

    #[test]
    fn no_description_holds_code() {
        for (name, schema) in crate::schemas::all() {
            let schema: Value = serde_json::from_str(&schema).unwrap();
            let mut found = Vec::new();
            all(&schema, &mut found);
            assert!(!found.is_empty(), "{name} describes nothing");
            for text in found {
                for code in ["```", "::", "[`", "`]", "assert", "slotwright_core", "\n"] {
                    assert!(!text.contains(code), "{name}: {text:?}");
                }
            }
        }
    }

    #[test]
    fn the_first_paragraph_stays() {
        let mut schema =
            json!({ "description": "A day\nof a year.\n\n```\ncode\n```", "items": [{ "description": "Short." }] });
        descriptions(&mut schema);
        assert_eq!(schema, json!({ "description": "A day of a year.", "items": [{ "description": "Short." }] }));
    }
}
