//! Other browsers than Chromium, and the programs that drive them.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use super::{apt, tools};
use crate::command::on_path;
use crate::root::Root;

/// Where Debian puts what belongs to libraries, by architecture.
const LIBRARIES: &str = "/usr/lib";

/// Firefox, `WebKit`, and what drives them.
#[derive(Debug)]
pub(crate) struct Engines {
    pub(crate) firefox: PathBuf,
    pub(crate) geckodriver: PathBuf,
    pub(crate) webkit: PathBuf,
    pub(crate) webkit_driver: PathBuf,
}

/// What is on PATH, else Debian's.
pub(crate) fn ready(root: &Root) -> Result<Engines> {
    let find =
        || Some((on_path(&["firefox-esr", "firefox"])?, on_path(&["WebKitWebDriver"])?, on_path(&["xvfb-run"])?));
    if find().is_none() {
        let packages = ["firefox-esr", "webkit2gtk-driver", "xvfb", "xauth"];
        apt::install(&packages, "other browsers, and a screen for one of them")?;
    }
    let (firefox, webkit_driver, _) = find().context("other browsers were installed but are not on PATH")?;
    let webkit = webkit().context("WebKit was installed, but its browser is not below /usr/lib")?;
    Ok(Engines { firefox, geckodriver: tools::geckodriver(root)?, webkit, webkit_driver })
}

/// The small browser that comes with `WebKit`, of the newest one that there is.
fn webkit() -> Option<PathBuf> {
    let folders = |of: &Path| -> Vec<PathBuf> {
        fs::read_dir(of).map(|entries| entries.flatten().map(|entry| entry.path()).collect()).unwrap_or_default()
    };
    let of_library =
        |folder: &PathBuf| folder.file_name().is_some_and(|name| name.to_string_lossy().starts_with("webkit"));
    let libraries = folders(Path::new(LIBRARIES)).into_iter().flat_map(|architecture| folders(&architecture));
    libraries.filter(of_library).map(|folder| folder.join("MiniBrowser")).filter(|browser| browser.is_file()).max()
}
