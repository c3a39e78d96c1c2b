use std::collections::BTreeSet;

use slotwright_core::range::Wrong;

use super::*;
use crate::inputs::DEMO;

fn schema() -> Value {
    let published = crate::schemas::all().into_iter().find(|(name, _)| *name == "range").unwrap().1;
    serde_json::from_str(&published).unwrap()
}

/// A document as the text of a range file, all on one line each.
fn toml(value: &Value) -> String {
    match value {
        Value::Object(members) => {
            let members: Vec<String> = members.iter().map(|(key, value)| format!("{key} = {}", toml(value))).collect();
            format!("{{ {} }}", members.join(", "))
        }
        Value::Array(elements) => format!("[{}]", elements.iter().map(toml).collect::<Vec<_>>().join(", ")),
        other => other.to_string(),
    }
}

fn file(document: &Value) -> String {
    let lines = document.as_object().unwrap().iter().map(|(key, value)| format!("{key} = {}", toml(value)));
    lines.collect::<Vec<_>>().join("\n")
}

/// What stands at a path of a range, entries of lists by key or number.
fn at<'a>(document: &'a mut Value, path: &str) -> Option<&'a mut Value> {
    path.split('.').try_fold(document, |value, part| match value {
        Value::Array(elements) => {
            let by_key = elements.iter().position(|element| element.get("key").is_some_and(|key| key == part));
            elements.get_mut(by_key.unwrap_or_else(|| part.parse::<usize>().unwrap() - 1))
        }
        other => other.get_mut(part),
    })
}

/// The schema says of every figure what the parser holds: a step beyond is refused there, and the bound itself is not.
#[test]
fn the_schema_and_the_parser_have_the_same_bounds() {
    let (schema, range) = (schema(), Range::parse(DEMO).unwrap());
    let document = serde_json::to_value(&range).unwrap();
    assert_eq!(Range::parse(&file(&document)).as_ref(), Ok(&range));
    let mut seen = BTreeSet::new();
    for bound in range.bounds() {
        let path: Vec<&str> = bound.path.split('.').collect();
        let place =
            find(&schema, String::new(), &path).unwrap_or_else(|| panic!("{} is not in the schema", bound.path));
        let node = schema.pointer(&place).unwrap().clone();
        let Limits::Figure(least, most) = bound.limits else { continue };
        let Some(now) = at(&mut document.clone(), &bound.path).cloned() else { continue };
        if !seen.insert(place) {
            continue;
        }
        let figure = |word: &str| node[word].as_f64().unwrap();
        let (said_least, said_most) = (figure("minimum"), figure("maximum"));
        assert_eq!((said_least, said_most), (least, most), "{}", bound.path);
        let step = if now.is_f64() { 0.1 } else { 1.0 };
        let found = |value: f64| {
            let mut changed = document.clone();
            *at(&mut changed, &bound.path).unwrap() = number((value * 10.0).round() / 10.0);
            let problems = Range::parse(&file(&changed)).err().map_or_else(Vec::new, |problems| problems.0);
            problems
                .into_iter()
                .filter(|problem| problem.path == bound.path)
                .map(|problem| problem.wrong)
                .collect::<Vec<_>>()
        };
        for beyond in [said_least - step, said_most + step] {
            assert!(!found(beyond).is_empty(), "{} of {beyond} is beyond its bounds and taken", bound.path);
        }
        for within in [said_least, said_most] {
            let own = |wrong: &Wrong| {
                matches!(wrong, Wrong::Kind { .. })
                    || matches!(wrong, Wrong::Bounds { least: a, most: b, .. } if (*a, *b) == (least, most))
            };
            assert!(!found(within).iter().any(own), "{} of {within} is within its bounds and refused", bound.path);
        }
    }
    assert!(seen.len() > 100, "{} figures", seen.len());
}

/// Every figure, list and text of the schema, with its place.
fn each(schema: &Value, place: &str, out: &mut Vec<(String, Map<String, Value>)>) {
    match schema {
        Value::Object(members) => {
            out.push((place.into(), members.clone()));
            members.iter().for_each(|(name, value)| each(value, &format!("{place}/{name}"), out));
        }
        Value::Array(elements) => {
            (0..).zip(elements).for_each(|(at, value): (usize, _)| each(value, &format!("{place}/{at}"), out));
        }
        _ => {}
    }
}

#[test]
fn nothing_of_a_range_is_without_bounds() {
    let schema = schema();
    let mut nodes = Vec::new();
    each(&schema, "", &mut nodes);
    let mut figures = 0;
    for (place, node) in nodes {
        let is = |kind: &str| match node.get("type") {
            Some(Value::Array(kinds)) => kinds.iter().any(|of| of == kind),
            Some(of) => of == kind,
            None => false,
        };
        let money = node.get("$ref").is_some_and(|to| to == "#/$defs/Money");
        if (is("number") || is("integer") || money) && place != "/$defs/Money" {
            figures += 1;
            let most = node.get("maximum").and_then(Value::as_f64);
            let fixed = node.contains_key("const");
            // The widths of integers are no bounds of the trade.
            let own = most.is_some_and(|most| ![255.0, 65_535.0].contains(&most)) && node.contains_key("minimum");
            assert!(own || fixed, "{place} has no bounds: {node:?}");
        }
        if is("array") {
            assert!(node.contains_key("maxItems") || place == "/$defs/Batch", "{place} has no end");
        }
        if is("string") {
            let told = ["enum", "const", "pattern"].into_iter().any(|word| node.contains_key(word));
            assert!(told, "{place} takes any text");
        }
    }
    assert!(figures > 100, "{figures}");
}
