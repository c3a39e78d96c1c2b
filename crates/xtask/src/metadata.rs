//! What `cargo metadata` says about this workspace.

use anyhow::{Context, Result};
use serde_json::Value;

use crate::command::{cargo, read};
use crate::root::Root;

/// A crate of the workspace.
#[derive(Debug)]
#[cfg_attr(not(test), expect(dead_code, reason = "house tests read more of it than tasks do"))]
pub(crate) struct Crate {
    pub(crate) name: String,
    pub(crate) license: Option<String>,
    /// Workspace crates that it needs to run; tests may need more.
    pub(crate) needs: Vec<String>,
    /// Its benches, by name.
    pub(crate) benches: Vec<String>,
}

/// Crates that make sense in WebAssembly alone; Leptos takes minutes to compile.
pub(crate) const FOR_THE_WEB: [&str; 2] = ["slotwright-web", "slotwright-parity"];

/// All crates of the workspace.
pub(crate) fn crates(root: &Root) -> Result<Vec<Crate>> {
    let text = read(cargo(root).args(["metadata", "--no-deps", "--offline", "--format-version", "1"]))?;
    let all: Value = serde_json::from_str(&text).context("cargo metadata wrote no JSON")?;
    list(&all, "packages").map(one).collect()
}

fn one(package: &Value) -> Result<Crate> {
    // A dependency with a path lies in this repository.
    let needs = list(package, "dependencies")
        .filter(|needed| text(needed, "path").is_some() && text(needed, "kind") != Some("dev"));
    let benches =
        list(package, "targets").filter(|target| list(target, "kind").any(|kind| kind.as_str() == Some("bench")));
    let names = |values: &mut dyn Iterator<Item = &Value>| {
        values.filter_map(|value| text(value, "name")).map(str::to_owned).collect()
    };
    Ok(Crate {
        name: text(package, "name").context("a package without a name")?.to_owned(),
        license: text(package, "license").map(str::to_owned),
        needs: names(&mut { needs }),
        benches: names(&mut { benches }),
    })
}

fn list<'a>(value: &'a Value, key: &str) -> impl Iterator<Item = &'a Value> + use<'a> {
    value.get(key).and_then(Value::as_array).into_iter().flatten()
}

fn text<'a>(value: &'a Value, key: &str) -> Option<&'a str> {
    value.get(key).and_then(Value::as_str)
}
