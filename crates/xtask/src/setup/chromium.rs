//! The browser of the browser tests.

use std::path::PathBuf;

use anyhow::{Context, Result, ensure};

use super::apt;
use crate::command::on_path;

const NAMES: [&str; 4] = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

/// A Chromium: the one that `CHROMIUM` names, one on PATH, or Debian's, installed now.
pub(crate) fn ready() -> Result<PathBuf> {
    if let Some(named) = std::env::var_os("CHROMIUM") {
        let named = PathBuf::from(named);
        ensure!(named.is_file(), "CHROMIUM names {}, which is no file", named.display());
        return Ok(named);
    }
    if let Some(found) = on_path(&NAMES) {
        return Ok(found);
    }
    apt::install(&["chromium"], "the browser of the browser tests")
        .context("no Chromium is on PATH and CHROMIUM names none")?;
    on_path(&NAMES).context("chromium was installed but is not on PATH")
}
