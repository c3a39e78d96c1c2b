//! The cargo-made tools of the web build: Trunk and wasm-bindgen.

use std::fs;
use std::path::PathBuf;

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

const TOOLS: [Tool; 2] = [
    Tool {
        program: "wasm-bindgen",
        package: "wasm-bindgen-cli",
        version: Version(0, 2, 130),
        // Not --locked: its lock file names versions that a registry may have withdrawn.
        switches: &["--bin", "wasm-bindgen"],
    },
    Tool {
        program: "trunk",
        package: "trunk",
        version: Version(0, 21, 14),
        // It downloads nothing here, so the smallest TLS will do.
        switches: &["--locked", "--no-default-features", "--features", "rustls"],
    },
];

/// Finds or installs the tools; the folders that must come first on PATH.
pub(super) fn ready(root: &Root) -> Result<Vec<PathBuf>> {
    let own = root.tools().join("bin");
    let mut folders = vec![root.node_programs()];
    for tool in &TOOLS {
        let installed = own.join(tool.program);
        if tool.is(&installed) {
            folders.push(own.clone());
        } else if let Some(found) = on_path(&[tool.program]).filter(|found| tool.is(found)) {
            folders.extend(found.parent().map(PathBuf::from));
        } else {
            tool.install(root)?;
            folders.push(own.clone());
        }
    }
    folders.dedup();
    Ok(folders)
}

impl Tool {
    fn is(&self, program: &std::path::Path) -> bool {
        version_of(program).is_some_and(|line| Version::first_in(&line) == Some(self.version))
    }

    fn install(&self, root: &Root) -> Result<()> {
        let Version(major, minor, patch) = self.version;
        let package = format!("{}@{major}.{minor}.{patch}", self.package);
        say::step(&format!(
            "Installing {package} with cargo (builds the page; takes a few minutes)"
        ));
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
                .env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "1")
                .env("CARGO_PROFILE_RELEASE_LTO", "off")
                .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16"),
            "see that cargo reaches its registry, or put exactly this version of the tool on PATH",
        )?;
        fs::remove_dir_all(&builds).with_context(|| format!("removing {}", builds.display()))
    }
}
