//! Rules about the repository's own files.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use crate::root::Root;

/// At this length look for the seam. Common practice: a file should fit in a head.
const LONGEST: usize = 400;

/// Files that no hand wrote, and texts that cannot be split.
fn may_be_long(path: &str) -> bool {
    let end = path.rsplit_once('.').map_or("", |(_, end)| end);
    matches!(path, "Cargo.lock" | "tests/package-lock.json" | "LICENSE")
        || path.starts_with("tests/golden/")
        || path.starts_with("crates/shop/schemas/")
        // Data and prose are read by section.
        || matches!(end, "toml" | "md" | "svg" | "json")
}

/// Parts of addresses that tie the repository to one registry or one machine. They are put
/// together here so that this file does not hold them itself.
fn forbidden() -> Vec<String> {
    let hosts = [
        ["registry.npm", "js.org"],
        ["registry.yarn", "pkg.com"],
        ["static.crates", ".io"],
        ["index.crates", ".io"],
        ["//crates", ".io"],
        ["deb.debian", ".org"],
        ["pypi", ".org"],
        ["files.python", "hosted.org"],
        ["proxy.go", "lang.org"],
    ];
    let folders = [["/work", "/main"], ["/work", "/shared"], ["/root", "/."], ["/home", "/"]];
    hosts.iter().chain(&folders).map(|parts| parts.concat()).collect()
}

/// Each text file of the repository: its path in it, its text.
pub(super) fn texts(root: &Root) -> Result<Vec<(String, String)>> {
    let mut found = Vec::new();
    let mut folders = vec![root.path().to_owned()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).with_context(|| folder.display().to_string())? {
            let path = entry?.path();
            if path.is_dir() && !is_made(&path) {
                folders.push(path);
            } else if let Some(text) = path.is_file().then(|| fs::read_to_string(&path).ok()).flatten() {
                found.push((inside(root, &path)?, text));
            }
        }
    }
    found.sort();
    Ok(found)
}

/// Folders whose content is made or fetched.
fn is_made(folder: &Path) -> bool {
    let name = folder.file_name().unwrap_or_default();
    ["target", "node_modules", ".git", "dist"].iter().any(|made| name == *made)
}

fn inside(root: &Root, path: &Path) -> Result<String> {
    let parts: PathBuf = path.strip_prefix(root.path())?.components().collect();
    Ok(parts.to_string_lossy().replace('\\', "/"))
}

#[test]
fn no_file_is_longer_than_a_reader_can_hold() -> Result<()> {
    let long: Vec<String> = texts(&Root::find()?)?
        .into_iter()
        .filter(|(path, _)| !may_be_long(path))
        .map(|(path, text)| (path, text.lines().count()))
        .filter(|(_, lines)| *lines > LONGEST)
        .map(|(path, lines)| format!("{path}: {lines} lines"))
        .collect();
    assert!(long.is_empty(), "longer than {LONGEST} lines:\n{}", long.join("\n"));
    Ok(())
}

#[test]
fn no_file_names_a_registry_or_a_folder_of_one_machine() -> Result<()> {
    let forbidden = forbidden();
    let mut named = Vec::new();
    for (path, text) in texts(&Root::find()?)? {
        for line in text.lines() {
            // Cargo writes its registry into its lock file; that is its own name for the default.
            let own = path == "Cargo.lock" && line.starts_with("source = \"registry+");
            if !own && let Some(part) = forbidden.iter().find(|part| line.contains(part.as_str())) {
                named.push(format!("{path}: {part}"));
            }
        }
    }
    assert!(named.is_empty(), "{}", named.join("\n"));
    Ok(())
}

/// The page is not compiled for the host, so nobody would run them.
#[test]
fn no_unit_test_stands_in_the_page() -> Result<()> {
    let marked = |path: &str, text: &str| path.starts_with("web/src/") && text.contains("#[cfg(test)]");
    let marked = texts(&Root::find()?)?.into_iter().filter(|(path, text)| marked(path, text)).map(|(path, _)| path);
    let marked: Vec<String> = marked.collect();
    assert!(marked.is_empty(), "move what is tested to the core: {}", marked.join(", "));
    Ok(())
}

#[test]
fn the_npm_lock_file_names_no_address() -> Result<()> {
    let lock = fs::read_to_string(Root::find()?.join("tests/package-lock.json"))?;
    assert!(!lock.contains("\"resolved\""), "run npm in tests/, where .npmrc leaves addresses out");
    Ok(())
}
