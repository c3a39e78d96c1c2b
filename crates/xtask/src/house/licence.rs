//! Licence, version and minimum Rust are said once, at the root.

use anyhow::{Context, Result};

use crate::metadata;
use crate::root::Root;
use crate::setup::OLDEST_RUST;
use crate::setup::tools::WASM_BINDGEN;
use crate::version::Version;

fn manifest(root: &Root, path: &str) -> Result<toml::Table> {
    let text = std::fs::read_to_string(root.join(path)).with_context(|| path.to_owned())?;
    text.parse().with_context(|| path.to_owned())
}

fn workspace_package(root: &Root, key: &str) -> Result<String> {
    let manifest = manifest(root, "Cargo.toml")?;
    let package = manifest.get("workspace").and_then(|workspace| workspace.get("package"));
    let value = package.and_then(|package| package.get(key)).and_then(toml::Value::as_str);
    value.map(str::to_owned).with_context(|| format!("Cargo.toml has no workspace.package.{key}"))
}

#[test]
fn every_crate_has_the_licence_of_the_repository() -> Result<()> {
    let root = Root::find()?;
    assert!(root.join("LICENSE").is_file(), "LICENSE is missing");
    let licence = workspace_package(&root, "license")?;
    for member in metadata::crates(&root)? {
        assert_eq!(member.license.as_deref(), Some(licence.as_str()), "{}", member.name);
    }
    Ok(())
}

#[test]
fn set_up_asks_for_the_rust_that_the_workspace_names() -> Result<()> {
    let named = workspace_package(&Root::find()?, "rust-version")?;
    assert_eq!(Version::first_in(&format!("{named}.0")), Some(OLDEST_RUST));
    Ok(())
}

#[test]
fn set_up_installs_the_wasm_bindgen_that_the_workspace_pins() -> Result<()> {
    let cargo = manifest(&Root::find()?, "Cargo.toml")?;
    let pinned = cargo
        .get("workspace")
        .and_then(|workspace| workspace.get("dependencies")?.get("wasm-bindgen")?.as_str())
        .context("the workspace does not pin wasm-bindgen")?;
    assert_eq!(pinned.strip_prefix('=').and_then(Version::first_in), Some(WASM_BINDGEN));
    Ok(())
}
