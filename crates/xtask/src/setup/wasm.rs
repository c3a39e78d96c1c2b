//! The compiler and the standard library for wasm32.
//!
//! Two sources: rustup's ready-made library, or, where rustup reaches no server, Debian's compiler
//! with a library built here from Debian's source. The page itself has a library of its own, built with it
//! from either source.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, bail};

use super::debian;
use crate::command::{in_ci, read, run};
use crate::root::Root;
use crate::say;

pub(crate) const TARGET: &str = "wasm32-unknown-unknown";

/// Where the wasm32 library comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Source {
    Rustup,
    Apt,
}

impl Source {
    pub(crate) fn parse(word: &str) -> Result<Self> {
        match word {
            "rustup" => Ok(Self::Rustup),
            "apt" => Ok(Self::Apt),
            _ => bail!("--wasm-from wants rustup or apt, not {word:?}"),
        }
    }
}

/// A way to compile for wasm32.
#[derive(Debug)]
pub(crate) enum Wasm {
    /// The host's own compiler has the library.
    Rustup,
    /// Debian's compiler, a library built here, and the linker that comes with rustup's toolchain.
    Debian { linker: PathBuf, sysroot: PathBuf },
}

impl Wasm {
    /// Puts the compiler and its switches into a program's environment. Every wasm32 build but the page's must
    /// have the same, else cargo builds everything anew.
    pub(crate) fn equip(&self, command: &mut Command, switches: &[String]) {
        let mut switches = switches.to_vec();
        if let Self::Debian { linker, sysroot } = self {
            command.env("RUSTC", debian::RUSTC).env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", linker);
            switches.push(format!("--sysroot={}", sysroot.display()));
        }
        // Cargo adds those of its own file.
        command.env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS", switches.join(" "));
    }

    /// Has cargo build the library along with the program, small and without the texts of panics: 25 kB (brotli) of a
    /// visit. A panic stops the program all the same.
    ///
    /// The switches are not stable yet; the variable lets a stable compiler take them.
    // Source: The Cargo Book, "Unstable Features", build-std; The Rust Unstable Book, "panic: immediate-abort" (names as
    // of Rust 1.95).
    pub(crate) fn equip_with_library(&self, command: &mut Command, switches: &[String]) {
        let mut switches = switches.to_vec();
        if let Self::Debian { linker, .. } = self {
            command.env("RUSTC", debian::RUSTC).env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", linker);
        }
        switches.extend(["-Zunstable-options", "-Cpanic=immediate-abort", "-Zlocation-detail=none"].map(str::to_owned));
        command.env("RUSTC_BOOTSTRAP", "1");
        command.env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS", switches.join(" "));
    }

    /// Which way it is, for people.
    pub(crate) fn name(&self) -> String {
        match self {
            Self::Rustup => "rustup's library".to_owned(),
            Self::Debian { sysroot, .. } => {
                format!("Debian's compiler with the library in {}", sysroot.display())
            }
        }
    }

    /// The program that does `cargo clippy` with this compiler: a clippy reads only the library
    /// that its own compiler built.
    pub(crate) fn clippy(&self) -> &'static str {
        match self {
            Self::Rustup => "cargo-clippy",
            Self::Debian { .. } => debian::CARGO_CLIPPY,
        }
    }

    /// Sees that this compiler's clippy is there.
    pub(crate) fn ready_to_lint(&self) -> Result<()> {
        match self {
            Self::Rustup => Ok(()),
            Self::Debian { .. } => debian::clippy(),
        }
    }
}

/// Finds or installs a way to compile for wasm32.
pub(crate) fn ready(root: &Root, wish: Option<Source>) -> Result<Wasm> {
    match wish.or_else(|| in_ci().then_some(Source::Apt)) {
        Some(Source::Apt) => debian::ready(root),
        Some(Source::Rustup) | None if rustup_has_it()? => Ok(Wasm::Rustup),
        Some(Source::Rustup) => rustup(),
        None if debian::has_it(root) => debian::ready(root),
        None => rustup().or_else(|error| {
            say::step(&format!("{error:#}"));
            say::step("Taking Debian's compiler for wasm32 instead");
            debian::ready(root)
        }),
    }
}

fn rustup() -> Result<Wasm> {
    say::step(&format!(
        "Installing {TARGET} and rust-src with rustup (the library for the page's compiler, and its source)"
    ));
    for what in [["target", "add", TARGET], ["component", "add", "rust-src"]] {
        run(Command::new("rustup").args(what), "see that rustup reaches its server, or use `--wasm-from apt`")?;
    }
    Ok(Wasm::Rustup)
}

fn rustup_has_it() -> Result<bool> {
    let library = host_sysroot()?.join("lib/rustlib");
    Ok(library.join(TARGET).join("lib").is_dir() && library.join("src/rust/library/std/Cargo.toml").is_file())
}

/// The folder of the host's own toolchain.
pub(crate) fn host_sysroot() -> Result<PathBuf> {
    let text = read(Command::new("rustc").args(["--print", "sysroot"]))?;
    Ok(Path::new(text.trim()).to_owned())
}

/// The linker for wasm32 that comes with the host's own toolchain.
pub(super) fn host_linker() -> Result<PathBuf> {
    let about = read(Command::new("rustc").arg("-vV"))?;
    let host = about.lines().find_map(|line| line.strip_prefix("host: ")).context("rustc does not name its host")?;
    let linker = host_sysroot()?.join("lib/rustlib").join(host).join("bin/rust-lld");
    if !linker.is_file() {
        bail!("{} is missing. To do: install Rust's stable toolchain with rustup", linker.display());
    }
    Ok(linker)
}
