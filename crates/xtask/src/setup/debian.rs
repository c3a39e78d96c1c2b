//! The Debian way to compile for wasm32.
//!
//! Debian has the compiler and the library's source, but not the compiled library. It is built once
//! into `target/tools`, where the compiler finds it by `--sysroot`; nothing outside the repository
//! is written by hand.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, bail};

use super::wasm::{TARGET, Wasm, host_linker};
use super::{OLDEST_RUST, apt};
use crate::command::{cargo, read, run, version_of};
use crate::root::Root;
use crate::version::Version;
use crate::{paths, say};

pub(super) const RUSTC: &str = "/usr/bin/rustc";
pub(super) const CARGO_CLIPPY: &str = "/usr/bin/cargo-clippy";
const LIBRARY_SOURCE: &str = "/usr/lib/rustlib/src/rust/library/std/Cargo.toml";

/// Whether the library was built here, perhaps for an older compiler.
pub(super) fn has_it(root: &Root) -> bool {
    stamp(root).is_file()
}

/// Finds or installs compiler, source and library.
pub(super) fn ready(root: &Root) -> Result<Wasm> {
    if !compiler_is_there() || !Path::new(LIBRARY_SOURCE).is_file() {
        apt::install(&["rustc-web", "rust-web-src"], "a compiler with its library's source, for wasm32")?;
    }
    if !compiler_is_there() {
        bail!("{RUSTC} is missing or too old. To do: `apt-get install rustc-web`");
    }
    let linker = host_linker()?;
    let compiler = read(Command::new(RUSTC).arg("-vV"))?;
    let sysroot = sysroot(root);
    // A library that was built before paths were left out is built again.
    let wanted = format!("{compiler}without paths of this machine\n");
    if !fs::read_to_string(stamp(root)).is_ok_and(|built_for| built_for == wanted) {
        build_library(root, &linker).context("building the standard library for wasm32")?;
        fs::write(stamp(root), wanted).context("marking the library as built")?;
    }
    Ok(Wasm::Debian { linker, sysroot })
}

/// Finds or installs the clippy of Debian's compiler.
pub(super) fn clippy() -> Result<()> {
    if Path::new(CARGO_CLIPPY).is_file() {
        return Ok(());
    }
    apt::install(&["rust-web-clippy"], "clippy for wasm32")
}

fn compiler_is_there() -> bool {
    version_of(Path::new(RUSTC)).and_then(|line| Version::first_in(&line)).is_some_and(|version| version >= OLDEST_RUST)
}

fn sysroot(root: &Root) -> PathBuf {
    root.tools().join("wasm-sysroot")
}

fn stamp(root: &Root) -> PathBuf {
    sysroot(root).join("built-for.txt")
}

fn build_library(root: &Root, linker: &Path) -> Result<()> {
    say::step("Building the standard library for wasm32 from Debian's source (a minute)");
    let place = root.tools().join("wasm-library");
    fs::create_dir_all(place.join("src"))?;
    // The empty workspace table keeps cargo from looking for this repository's.
    fs::write(
        place.join("Cargo.toml"),
        "[package]\nname = \"throwaway\"\nedition = \"2024\"\n\
         [lib]\ncrate-type = [\"cdylib\"]\n[profile.release]\npanic = \"abort\"\n[workspace]\n",
    )?;
    fs::write(place.join("src/lib.rs"), "")?;
    let mut switches = paths::switches(root)?;
    // Without it link-time optimisation of the page finds no bitcode in the library.
    switches.push("-Cembed-bitcode=yes".to_owned());
    run(
        cargo(root)
            .current_dir(&place)
            .args(["build", "--quiet", "--release", "--target", TARGET, "-Zbuild-std=std,panic_abort"])
            .env("RUSTC", RUSTC)
            // Lets a stable compiler build its own library.
            .env("RUSTC_BOOTSTRAP", "1")
            .env("CARGO_TARGET_DIR", place.join("target"))
            .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", linker)
            .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS", switches.join(" ")),
        "see that cargo reaches its registry and that rustc-web and rust-web-src are of one version",
    )?;

    let sysroot = sysroot(root);
    remove(&sysroot)?;
    let library = sysroot.join("lib/rustlib").join(TARGET).join("lib");
    fs::create_dir_all(&library)?;
    for entry in fs::read_dir(place.join("target").join(TARGET).join("release/deps"))? {
        let file = entry?.path();
        if let Some(name) = file.file_name().filter(|_| file.extension().is_some_and(|end| end == "rlib")) {
            fs::copy(&file, library.join(name)).with_context(|| format!("copying {}", file.display()))?;
        }
    }
    remove(&place)?;
    // What was compiled against an earlier library does not fit this one.
    remove(&root.target().join(TARGET))
}

fn remove(folder: &Path) -> Result<()> {
    if folder.exists() {
        fs::remove_dir_all(folder).with_context(|| format!("removing {}", folder.display()))?;
    }
    Ok(())
}
