//! What the tool prints keeps to the published schemas, by an independent validator.

use std::process::Command;

use serde_json::Value;

type Result<T> = std::result::Result<T, Box<dyn std::error::Error>>;

fn tool(arguments: &[&str]) -> Result<String> {
    Ok(String::from_utf8(Command::new(env!("CARGO_BIN_EXE_slotwright")).args(arguments).output()?.stdout)?)
}

fn schema(name: &str) -> Result<jsonschema::Validator> {
    let path = format!("{}/schemas/{name}.schema.json", env!("CARGO_MANIFEST_DIR"));
    let schema: Value = serde_json::from_str(&std::fs::read_to_string(path)?)?;
    Ok(jsonschema::draft202012::new(&schema)?)
}

fn faults(validator: &jsonschema::Validator, document: &Value) -> Vec<String> {
    validator.iter_errors(document).map(|error| format!("{}: {error}", error.instance_path())).collect()
}

fn check(name: &str, text: &str) -> Result<()> {
    let found = faults(&schema(name)?, &serde_json::from_str(text)?);
    assert_eq!(found, Vec::<String>::new(), "{name}");
    Ok(())
}

#[test]
fn documents_keep_to_their_schemas() -> Result<()> {
    let order = tool(&["order", "--today", "2026-11-25", "--remark", "by the window"])?;
    check("order-spec", &order)?;
    check("derived", &tool(&["derive", "--today", "2026-11-25"])?)?;
    check("assembly", &tool(&["assembly"])?)?;
    check("options", &tool(&["options", "--pin", "width", "--pin", "bays"])?)?;
    check("fit", &tool(&["fit", "--measured", &format!("birch-12={}", "12.1 ".repeat(8))])?)?;
    let folder = std::env::temp_dir().join(format!("slotwright-schemas-{}", std::process::id()));
    std::fs::create_dir_all(&folder)?;
    let path = folder.join("order.json");
    std::fs::write(&path, &order)?;
    let path = path.to_string_lossy().into_owned();
    check("check-report", &tool(&["check", "--json", &path, "absent.json"])?)?;
    let range = format!("{}/../../web/ranges/fenland.toml", env!("CARGO_MANIFEST_DIR"));
    check("range-report", &tool(&["range", "--json", &range])?)?;
    for line in tool(&["sample", "--any", "--count", "60", "--seed", "8"])?.lines() {
        check("choice", line)?;
    }
    Ok(())
}

/// The schema refuses what the reader refuses.
#[test]
fn the_order_schema_refuses_strange_members() -> Result<()> {
    let validator = schema("order-spec")?;
    let order: Value = serde_json::from_str(&tool(&["order", "--today", "2026-11-25"])?)?;
    let spoil = |pointer: &str, value: Value| {
        let mut spoiled = order.clone();
        if let Some(place) = spoiled.pointer_mut(pointer) {
            *place = value;
        }
        faults(&validator, &spoiled)
    };
    assert_eq!(faults(&validator, &order), Vec::<String>::new());
    for (pointer, value) in [
        ("/version", 2.into()),
        ("/digest", "short".into()),
        ("/choice/bays/0/fill", "closed".into()),
        ("/choice/width_mm", "wide".into()),
        ("/customer/name", "".into()),
        ("/ordered_on", "tomorrow".into()),
        ("/range", serde_json::json!({ "key": "fenland" })),
    ] {
        assert!(!spoil(pointer, value).is_empty(), "{pointer} passes");
    }
    Ok(())
}
