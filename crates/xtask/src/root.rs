//! Where things are in this repository.

use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

/// The repository's folder.
#[derive(Debug, Clone)]
pub(crate) struct Root(PathBuf);

impl Root {
    /// The repository that this program was built in, or that cargo now runs it in.
    pub(crate) fn find() -> Result<Self> {
        let own = std::env::var_os("CARGO_MANIFEST_DIR")
            .map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")), PathBuf::from);
        let root = own.ancestors().nth(2).context("xtask lies outside its workspace")?;
        Ok(Self(root.to_owned()))
    }

    pub(crate) fn path(&self) -> &Path {
        &self.0
    }

    pub(crate) fn join(&self, part: &str) -> PathBuf {
        self.0.join(part)
    }

    /// The one target folder, unless the user moved it.
    pub(crate) fn target(&self) -> PathBuf {
        std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| self.join("target"), |folder| self.0.join(folder))
    }

    /// What set-up installs for this repository alone.
    pub(crate) fn tools(&self) -> PathBuf {
        self.join("target/tools")
    }

    /// The built app, where Trunk puts it.
    pub(crate) fn dist(&self) -> PathBuf {
        self.join("dist")
    }

    /// The programs of the npm packages.
    pub(crate) fn node_programs(&self) -> PathBuf {
        self.join("tests/node_modules/.bin")
    }

    /// Whether the page's crate is there.
    pub(crate) fn has_web(&self) -> bool {
        self.join("web/Cargo.toml").is_file()
    }
}
