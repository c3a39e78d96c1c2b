//! Where this machine keeps sources, which concerns nobody who gets the app: the compiler leaves it out of messages of
//! panics, and a build that holds it all the same fails.

use std::fs;
use std::path::{Component, Path, PathBuf};

use anyhow::{Context, Result, ensure};

use crate::root::Root;
use crate::setup::wasm::host_sysroot;

/// Switches of the compiler by which a panic names `winnow-1.0.5/src/…` and not where that is here.
pub(crate) fn switches(root: &Root) -> Result<Vec<String>> {
    let folders = private(root)?;
    // Crates lie in a folder for each place that they come from.
    let sources = folders.iter().filter_map(|folder| fs::read_dir(folder.join("registry/src")).ok());
    let mut sources: Vec<PathBuf> = sources.flatten().flatten().map(|entry| entry.path()).collect();
    sources.sort();
    // The last folder that fits counts.
    Ok(folders.iter().chain(&sources).map(|folder| format!("--remap-path-prefix={}=", folder.display())).collect())
}

/// Fails if a wasm file of the app holds where this machine keeps sources.
pub(crate) fn ensure_absent(root: &Root) -> Result<()> {
    let private = private(root)?;
    let folder = |place: &Path| -> Result<Vec<PathBuf>> {
        let said = || place.display().to_string();
        let entries = fs::read_dir(place).with_context(said)?;
        entries.map(|entry| Ok(entry.with_context(said)?.path())).collect()
    };
    let mut files = folder(&root.dist())?;
    while let Some(file) = files.pop() {
        if file.is_dir() {
            files.extend(folder(&file)?);
        }
        if file.extension().is_some_and(|end| end == "wasm") {
            let bytes = fs::read(&file).with_context(|| file.display().to_string())?;
            let named = private.iter().find(|folder| holds(&bytes, folder));
            ensure!(
                named.is_none(),
                "{} holds {}. To do: see that no code puts a path into a text",
                file.display(),
                named.map(|folder| folder.display().to_string()).unwrap_or_default()
            );
        }
    }
    Ok(())
}

/// The repository, what cargo keeps, and the toolchain with its library's source; but no folder with a space, since cargo splits switches there, and none at the
/// root of the machine: a name like `/src` stands in the paths of others too, and tells nothing of a machine.
fn private(root: &Root) -> Result<Vec<PathBuf>> {
    let mut folders = vec![root.path().to_owned(), cargo_home()?, host_sysroot()?];
    folders.retain(|folder| is_telling(folder));
    Ok(folders)
}

fn is_telling(folder: &Path) -> bool {
    let names = folder.components().filter(|part| matches!(part, Component::Normal(_))).count();
    names > 1 && !folder.to_string_lossy().contains(char::is_whitespace)
}

// Source: The Cargo Book, "Cargo Home".
fn cargo_home() -> Result<PathBuf> {
    let usual = || std::env::home_dir().map(|home| home.join(".cargo"));
    std::env::var_os("CARGO_HOME").map(PathBuf::from).or_else(usual).context("this user has no home folder")
}

/// Whether a path into the folder stands anywhere.
fn holds(bytes: &[u8], folder: &Path) -> bool {
    let mut within = folder.as_os_str().as_encoded_bytes().to_vec();
    within.push(b'/');
    bytes.windows(within.len()).any(|window| window == within)
}

#[test]
fn folders_that_others_have_too_tell_nothing() {
    for (folder, expected) in
        [("/", false), ("/src", false), ("/a b/c", false), ("/somewhere/ada", true), ("/somewhere/.cargo", true)]
    {
        assert_eq!(is_telling(Path::new(folder)), expected, "{folder}");
    }
}

#[test]
fn a_path_is_found_wherever_it_stands() {
    let folder = Path::new("/somewhere/sources");
    for (bytes, expected) in [
        (&b"\0/somewhere/sources/lib.rs\0"[..], true),
        (b"/somewhere/sources/", true),
        (b"/somewhere/sourcesafe/", false),
        (b"\0/somewhere/source\0", false),
        (b"", false),
    ] {
        assert_eq!(holds(bytes, folder), expected, "{bytes:?}");
    }
}
