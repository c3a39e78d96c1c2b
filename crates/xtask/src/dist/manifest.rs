//! The manifest by which a device installs the page as a program of its own.

use std::fs;

use anyhow::{Context, Result};
use serde_json::{Value, json};
use slotwright_core::words::page;
use slotwright_core::words::shell::Label;

use crate::root::Root;

/// As `index.html` names it.
const NAME: &str = "app.webmanifest";

/// The paper of the light page: a manifest has no second colour for the dark one.
const PAPER: &str = "#f4efe6";

/// Writes it beside the page.
pub(super) fn write(root: &Root) -> Result<()> {
    fs::write(root.dist().join(NAME), format!("{}\n", manifest())).context(NAME)
}

/// All addresses are beside it, wherever that is put.
// Source: Web Application Manifest (W3C), its members and how addresses in it are resolved.
fn manifest() -> Value {
    let icon = |file: &str, sizes: &str, kind: &str, purpose: &str| json!({ "src": format!("icons/{file}"), "sizes": sizes, "type": kind, "purpose": purpose });
    json!({
        "id": "./",
        "start_url": "./",
        "scope": "./",
        "name": Label::Title.text(),
        "short_name": Label::Name.text(),
        "description": Label::Description.text(),
        "lang": Label::Language.text(),
        "dir": "ltr",
        "display": "standalone",
        "background_color": PAPER,
        "theme_color": PAPER,
        "icons": [
            icon("icon.svg", "any", "image/svg+xml", "any"),
            icon("192.png", "192x192", "image/png", "any"),
            icon("512.png", "512x512", "image/png", "any"),
            icon("whole.png", "512x512", "image/png", "maskable"),
        ],
        "shortcuts": [{ "name": page::Label::BeginAfresh.text(), "url": "./#afresh" }],
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_icon_is_there_in_the_size_that_it_says() -> Result<()> {
        let (root, manifest) = (Root::find()?, manifest());
        let icons = manifest["icons"].as_array().context("no icons")?;
        assert_eq!(icons.len(), 4);
        for icon in icons {
            let text = |key: &str| icon[key].as_str().with_context(|| format!("an icon without {key}"));
            let (file, sizes) = (text("src")?, text("sizes")?);
            let bytes = fs::read(root.join("web").join(file)).context(file.to_owned())?;
            if text("type")? == "image/png" {
                assert_eq!(sizes, size(&bytes).with_context(|| format!("{file} is no PNG"))?, "{file}");
            }
        }
        Ok(())
    }

    /// What a PNG says of its size.
    // Source: PNG (W3C, third edition), 5.2 and 11.2.1: width and height follow the signature and the name of `IHDR`.
    fn size(png: &[u8]) -> Option<String> {
        let figure = |at: usize| Some(u32::from_be_bytes(png.get(at..at + 4)?.try_into().ok()?));
        png.starts_with(b"\x89PNG\r\n\x1a\n").then_some(())?;
        Some(format!("{}x{}", figure(16)?, figure(20)?))
    }

    #[test]
    fn every_address_is_beside_the_manifest() {
        let manifest = manifest();
        let shortcuts = manifest["shortcuts"].as_array().into_iter().flatten().map(|shortcut| &shortcut["url"]);
        for address in [&manifest["id"], &manifest["start_url"], &manifest["scope"]].into_iter().chain(shortcuts) {
            assert!(address.as_str().is_some_and(|address| address.starts_with("./")), "{address}");
        }
    }
}
