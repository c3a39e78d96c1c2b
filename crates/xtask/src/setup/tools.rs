//! The cargo-made tools of the web build: Trunk, wasm-bindgen and the one that cuts a program into parts.

use std::path::{Path, PathBuf};
use std::{fmt, fs};

use anyhow::{Context, Result};

use crate::command::{cargo, on_path, run, version_of};
use crate::root::Root;
use crate::say;
use crate::version::Version;

struct Tool {
    program: &'static str,
    package: &'static str,
    version: Version,
    switches: &'static [&'static str],
}

/// The same as Cargo.toml pins; a house test compares them.
pub(crate) const WASM_BINDGEN: Version = Version(0, 2, 130);

/// They download nothing here, so they come without TLS.
const TOOLS: [Tool; 3] = [
    Tool {
        program: "wasm-bindgen",
        package: "wasm-bindgen-cli",
        version: WASM_BINDGEN,
        // Not --locked: its lock file names versions that a registry may have withdrawn.
        switches: &["--bin", "wasm-bindgen", "--no-default-features"],
    },
    Tool {
        program: "trunk",
        package: "trunk",
        version: Version(0, 21, 14),
        switches: &["--locked", "--no-default-features"],
    },
    Tool {
        program: "wasm-split-cli",
        package: "wasm_split_cli_support",
        version: Version(0, 2, 4),
        switches: &["--features", "build-binary"],
    },
];

/// Drives Firefox; only who tests in that needs it.
const GECKODRIVER: Tool =
    Tool { program: "geckodriver", package: "geckodriver", version: Version(0, 36, 0), switches: &["--locked"] };

/// A tool in its place.
#[derive(Debug)]
pub(super) struct Found {
    name: String,
    pub(super) folder: PathBuf,
}

impl fmt::Display for Found {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.name, self.folder.display())
    }
}

/// Finds or installs the tools; their folders must come first on PATH.
pub(super) fn ready(root: &Root) -> Result<Vec<Found>> {
    let own = root.tools().join("bin");
    // wasm-opt comes from npm and is there already.
    let mut all = vec![Found { name: "wasm-opt".to_owned(), folder: root.node_programs() }];
    for tool in &TOOLS {
        let elsewhere = on_path(&[tool.program]).filter(|program| tool.is(program));
        let folder = match elsewhere.as_deref().and_then(Path::parent) {
            _ if tool.is_installed(root) => own.clone(),
            Some(folder) => folder.to_owned(),
            None => {
                tool.install(root)?;
                own.clone()
            }
        };
        all.push(Found { name: tool.name(), folder });
    }
    Ok(all)
}

/// The program that drives Firefox, found or installed.
pub(super) fn geckodriver(root: &Root) -> Result<PathBuf> {
    if let Some(found) = on_path(&[GECKODRIVER.program]) {
        return Ok(found);
    }
    if !GECKODRIVER.is_installed(root) {
        GECKODRIVER.install(root)?;
    }
    Ok(root.tools().join("bin").join(GECKODRIVER.program))
}

impl Tool {
    /// Whether cargo has put it among this repository's tools: not every tool tells its version.
    fn is_installed(&self, root: &Root) -> bool {
        let list = fs::read_to_string(root.tools().join(".crates.toml")).unwrap_or_default();
        let Version(major, minor, patch) = self.version;
        let entry = format!("\"{} {major}.{minor}.{patch} (", self.package);
        root.tools().join("bin").join(self.program).is_file() && list.contains(&entry)
    }

    fn is(&self, program: &Path) -> bool {
        version_of(program).is_some_and(|line| Version::first_in(&line) == Some(self.version))
    }

    fn name(&self) -> String {
        let Version(major, minor, patch) = self.version;
        format!("{}@{major}.{minor}.{patch}", self.package)
    }

    fn install(&self, root: &Root) -> Result<()> {
        let package = self.name();
        say::step(&format!("Installing {package} with cargo (builds the page; takes a few minutes)"));
        let builds = root.tools().join("build");
        run(
            cargo(root)
                .args(["install", "--quiet", "--force", &package])
                .args(self.switches)
                .arg("--root")
                .arg(root.tools())
                .env("CARGO_TARGET_DIR", &builds)
                // The host's own compiler, quick to build rather than quick to run.
                .env_remove("RUSTC")
                .env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "0")
                .env("CARGO_PROFILE_RELEASE_LTO", "off")
                .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "256"),
            "see that cargo reaches its registry, or put exactly this version of the tool on PATH",
        )?;
        fs::remove_dir_all(&builds).with_context(|| format!("removing {}", builds.display()))
    }
}
